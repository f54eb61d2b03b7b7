"""What is installed is whole: the wheel holds themes, content and the schema, and runs from anywhere."""

from __future__ import annotations

import os
import subprocess
import sys
import tomllib
import zipfile
from pathlib import Path

import pytest

import benchalong

ROOT = Path(__file__).resolve().parent.parent


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel, built as pip would and unpacked far from the checkout."""
    folder = tmp_path_factory.mktemp("wheel")
    build = "import sys; from hatchling.build import build_wheel; build_wheel(sys.argv[1])"
    subprocess.run([sys.executable, "-c", build, str(folder)], cwd=ROOT, check=True, capture_output=True)
    (wheel,) = folder.glob("*.whl")
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(folder / "site-packages")
    return folder / "site-packages"


def run(unpacked: Path, *words: str, cwd: Path) -> subprocess.CompletedProcess[str]:
    around = {**os.environ, "PYTHONPATH": str(unpacked), "XDG_CACHE_HOME": str(cwd / "cache")}
    return subprocess.run(
        [sys.executable, "-m", "benchalong", *words],
        cwd=cwd,
        env=around,
        capture_output=True,
        text=True,
        check=False,
    )


def listed(folder: Path) -> set[str]:
    return {str(path.relative_to(folder)) for path in folder.rglob("*") if path.is_file()}


@pytest.mark.parametrize("name", ["themes", "content"])
def test_the_wheel_holds_what_travels_along(unpacked: Path, name: str) -> None:
    kept = {path for path in listed(ROOT / name) if "__pycache__" not in path}
    assert kept == listed(unpacked / "benchalong" / name)


def test_the_wheel_holds_the_schema_the_licence_and_nothing_of_the_tests(unpacked: Path) -> None:
    names = listed(unpacked)
    assert "benchalong/publishing/plan.schema.json" in names
    assert any(name.endswith("licenses/LICENSE") for name in names)
    assert {name.split("/", 1)[0] for name in names} == {
        "benchalong",
        f"benchalong-{benchalong.__version__}.dist-info",
    }


def test_it_runs_far_from_the_checkout(unpacked: Path, tmp_path: Path) -> None:
    begun = run(unpacked, "begin", "shelf", cwd=tmp_path)
    assert begun.returncode == 0, begun.stderr
    done = run(unpacked, "publish", "shelf", "--into", "site", cwd=tmp_path)
    assert done.returncode == 0, done.stderr
    assert (tmp_path / "site" / "index.html").is_file()
    assert "generator" not in run(unpacked, "check", "shelf", cwd=tmp_path).stdout


def test_a_read_only_installation_still_lays_down_a_project_to_write_in(
    unpacked: Path, tmp_path: Path
) -> None:
    starter = unpacked / "benchalong" / "content" / "starter" / "inch" / "project.yaml"
    starter.chmod(0o444)
    assert run(unpacked, "begin", "shelf", cwd=tmp_path).returncode == 0
    assert os.access(tmp_path / "shelf" / "project.yaml", os.W_OK)
    assert (tmp_path / "shelf" / "project.yaml").stat().st_mode & 0o200


def test_one_version_everywhere() -> None:
    said = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    assert said["version"] == benchalong.__version__
    assert said["scripts"] == {"benchalong": "benchalong.__main__:main"}
