"""What several rooms' tests share: the examples as published, a browser, the checkers from npm.

A test that needs something this machine lacks is skipped and says so; in CI (`CI=true`) it fails, since
a check that quietly didn't run looks like one that passed.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import NoReturn

import pytest
from hypothesis import settings
from playwright.sync_api import Browser, sync_playwright

settings.register_profile("untimed", deadline=None)
settings.load_profile("untimed")
"""How long one case takes on a shared machine says nothing of it."""

ROOT = Path(__file__).resolve().parent.parent
EXAMPLES = ("seed-cupboard", "step-stool")
BROWSER_NAMES = ("chromium", "chromium-browser", "google-chrome")
BROWSER_ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
]


def not_run(why: str) -> NoReturn:
    """Skips, or fails where everything must be there."""
    if os.environ.get("CI") == "true":
        pytest.fail(f"not run: {why}, and CI must run everything")
    pytest.skip(f"not run: {why}")


def publish(project: Path, into: Path) -> Path:
    """The project as its author would publish it, in a process of its own."""
    command = [sys.executable, "-m", "benchalong", "publish", str(project), "--into", str(into)]
    done = subprocess.run(command, cwd=ROOT, env=_environment(), capture_output=True, text=True, check=False)
    assert done.returncode == 0, f"publish {project.name} gave {done.returncode}\n{done.stdout}{done.stderr}"
    return into


def _environment() -> dict[str, str]:
    return {**os.environ, "PYTHONPATH": str(ROOT / "generator")}


@pytest.fixture(scope="session")
def sites(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """Both examples, published once a session: name -> the site's folder."""
    folder = tmp_path_factory.mktemp("sites")
    return {name: publish(ROOT / "content" / name, folder / name) for name in EXAMPLES}


@pytest.fixture(params=EXAMPLES)
def site(request: pytest.FixtureRequest, sites: dict[str, Path]) -> Path:
    """Each example's site in turn; to be read only."""
    return sites[request.param]


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """One Chromium for the whole session; a test opens a context of its own."""
    path = _browser_path()
    if path is None:
        not_run("no browser")
    with sync_playwright() as playwright:
        opened = playwright.chromium.launch(executable_path=path, args=BROWSER_ARGUMENTS)
        yield opened
        opened.close()


def _browser_path() -> str | None:
    named = os.environ.get("BENCHALONG_CHROMIUM")
    found = (shutil.which(name) for name in ([named] if named else BROWSER_NAMES))
    return next((path for path in found if path), None)


@pytest.fixture(scope="session")
def axe_script() -> Path:
    return npm_tool("axe-core/axe.min.js")


@pytest.fixture(scope="session")
def nu_jar() -> Path:
    if shutil.which("java") is None:
        not_run("no java")
    return npm_tool("vnu-jar/build/dist/vnu.jar")


@pytest.fixture(scope="session")
def typescript() -> Path:
    if shutil.which("node") is None:
        not_run("no node")
    return npm_tool("typescript/lib/tsc.js")


def npm_tool(inside: str) -> Path:
    """A file of an npm package, from BENCHALONG_TOOLS or `.tools/node_modules`."""
    folder = Path(os.environ.get("BENCHALONG_TOOLS") or ROOT / ".tools" / "node_modules")
    if not (folder / inside).is_file():
        not_run(f"no {inside.split('/', maxsplit=1)[0]}")
    return folder / inside
