"""The command line as a stranger meets it: what it prints, where, and how it ends."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from benchalong.command_line.beginning import lay_down
from benchalong.commands import run

ROOT = Path(__file__).resolve().parent.parent
PROGRAM = [sys.executable, "-m", "benchalong"]


@pytest.fixture
def project(tmp_path: Path) -> Path:
    folder = tmp_path / "shelf"
    lay_down(folder, units="inch")
    return folder


@pytest.fixture(autouse=True)
def _own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


def change(project: Path, old: str, new: str) -> None:
    file = project / "project.yaml"
    text = file.read_text(encoding="utf-8")
    assert old in text
    file.write_text(text.replace(old, new, 1), encoding="utf-8")


def faulty(project: Path) -> None:
    """A rabbet deeper than the shelf is thick."""
    change(project, "width: thick, depth: rabbet_depth", "width: thick, depth: 2 * thick")


def in_a_process(*words: str | Path, **environment: str) -> subprocess.CompletedProcess[bytes]:
    around = {**os.environ, "PYTHONPATH": str(ROOT / "generator"), **environment}
    return subprocess.run([*PROGRAM, *map(str, words)], env=around, capture_output=True, check=False)


def said(capsys: pytest.CaptureFixture[str], *words: str | Path) -> tuple[int, str, str]:
    code = run([str(word) for word in words])
    out, err = capsys.readouterr()
    return code, out, err


def test_check_says_what_it_looked_at(project: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = said(capsys, "check", project)
    assert code == 0
    assert out.startswith("no findings\nlooked at 15 sizes, 4 parts, 5 cuts, 4 steps, and asked:\n  ")
    assert err == ""


def test_check_in_json(project: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = said(capsys, "check", project, "--json")
    assert code == 0
    assert set(json.loads(out)) == {"findings", "checked"}
    assert err == ""


def test_a_fault_gives_one(project: Path, capsys: pytest.CaptureFixture[str]) -> None:
    faulty(project)
    code, out, _ = said(capsys, "check", project)
    assert code == 1
    assert "project.yaml:" in out
    assert ": fault: " in out
    code, out, _ = said(capsys, "check", project, "--json")
    assert code == 1
    (finding, *_) = json.loads(out)["findings"]
    assert finding["level"] == "fault"
    keys = {"code", "level", "file", "line", "column", "subject", "message", "remedy", "numbers", "sizes"}
    assert set(finding) == keys


def test_problems_give_two_with_their_places(project: Path, capsys: pytest.CaptureFixture[str]) -> None:
    change(project, "stock: oak\n", "stock: aok\n")
    change(project, "rail_height: 4 in", "rail_height: 4 inn")
    code, out, err = said(capsys, "check", project)
    assert code == 2
    assert out == ""
    assert "project.yaml:" in err
    assert "did you mean oak?" in err
    code, out, err = said(capsys, "check", project, "--json")
    assert code == 2
    assert err == ""
    problems = json.loads(out)["problems"]
    assert len(problems) >= 2
    assert all(problem["file"] == "project.yaml" and problem["line"] > 1 for problem in problems)


@pytest.mark.parametrize(
    ("words", "text"),
    [
        (["chekc", "x"], "1:12: there is no verb chekc\n    benchalong chekc x\n               ^^^^^\n"),
        (["chekc", "x"], "did you mean check?"),
        (["check", "x", "--jsn"], "there is no option --jsn here"),
        (["check", "x", "--jsn"], "did you mean --json?"),
        (["check"], "PROJECT is missing"),
        (["publish", "x"], "the option --into is missing"),
        (["begin", "x", "--units", "inches"], "did you mean inch?"),
        (["open", "x", "--port=99999"], "--port can't be 99999"),
        (["check", "no-such-folder"], "there is no folder no-such-folder"),
        (["check", "a", "b"], "got unexpected extra argument (b)"),
    ],
)
def test_a_wrong_word_is_shown_with_the_right_one(
    words: list[str], text: str, capsys: pytest.CaptureFixture[str]
) -> None:
    code, out, err = said(capsys, *words)
    assert code == 2
    assert out == ""
    assert err.startswith("command line:1:")
    assert text in err


def test_a_wrong_word_in_json(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = said(capsys, "chekc", "--json")
    assert (code, err) == (2, "")
    (problem,) = json.loads(out)["problems"]
    assert (problem["line"], problem["column"], problem["meant"]) == (1, 12, ["check"])


def test_a_folder_s_name_mistyped(project: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, _, err = said(capsys, "check", project.with_name("shefl"))
    assert code == 2
    assert f"did you mean {project}?" in err
    code, _, err = said(capsys, "check", project / "project.yaml")
    assert code == 2
    assert f"did you mean {project}?" in err
    code, _, err = said(capsys, "check", project.parent)
    assert code == 2
    assert "holds no project.yaml" in err


def test_nothing_typed_gives_help(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = said(capsys)
    assert (code, out) == (2, "")
    assert "begin" in err
    assert said(capsys, "--help")[0] == 0


def test_begin_check_publish(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for units in ("inch", "millimetre"):
        folder, site = tmp_path / units, tmp_path / f"site-{units}"
        code, out, _ = said(capsys, "begin", folder, "--units", units)
        assert code == 0
        assert f"  benchalong check {folder}\n  benchalong open {folder}\n" in out
        code, out, _ = said(capsys, "check", folder)
        assert code == 0
        assert out.startswith("no findings")
        code, _, err = said(capsys, "publish", folder, "--into", site)
        assert (code, err) == (0, "")
        assert (site / "index.html").is_file()


def test_publish_in_json(project: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = said(capsys, "publish", project, "--into", tmp_path / "site", "--json")
    assert (code, err) == (0, "")
    assert set(json.loads(out)) == {"published", "pages", "pictures", "findings", "checked"}


def test_with_a_fault_the_old_site_stays(
    project: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    site = tmp_path / "site"
    assert said(capsys, "publish", project, "--into", site)[0] == 0
    before = (site / "plan.json").read_bytes()
    faulty(project)
    code, out, err = said(capsys, "publish", project, "--into", site)
    assert (code, out) == (1, "")
    assert "not published" in err
    assert (site / "plan.json").read_bytes() == before
    assert said(capsys, "publish", project, "--into", site, "--with-faults")[0] == 0
    assert (site / "plan.json").read_bytes() != before


@pytest.mark.parametrize("into", [".", "site", "..", "../notes", "project.yaml"])
def test_into_what_is_not_ours_gives_three(
    project: Path, into: str, capsys: pytest.CaptureFixture[str]
) -> None:
    (project.parent / "notes").mkdir()
    (project.parent / "notes" / "letter").write_text("keep me")
    code, out, err = said(capsys, "publish", project, "--into", project / into)
    assert (code, out) == (3, "")
    assert err.count("\n") == 1
    assert (project / "project.yaml").is_file()
    assert (project.parent / "notes" / "letter").is_file()


@pytest.mark.parametrize("verb", ["begin", "publish"])
def test_where_nothing_can_be_written_gives_three(
    verb: str, project: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "closed").write_text("a file where a folder should be")
    inside = tmp_path / "closed" / "new"
    words: list[str | Path] = [verb, inside] if verb == "begin" else [verb, project, "--into", inside]
    code, out, err = said(capsys, *words)
    assert (code, out) == (3, "")
    assert err.startswith(f"{tmp_path / 'closed'} can't be written into: ")
    assert err.endswith("; name a folder elsewhere.\n")


def test_what_is_refused_is_said_in_json_too(project: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = said(capsys, "publish", project, "--into", project, "--json")
    assert (code, err) == (3, "")
    assert json.loads(out)["refused"].startswith(f"{project} is the project itself;")


def test_begin_here(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "here").mkdir()
    monkeypatch.chdir(tmp_path / "here")
    assert said(capsys, "begin", ".")[0] == 0
    assert said(capsys, "check", ".")[0] == 0


def test_begin_leaves_what_is_there(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "full").mkdir()
    (tmp_path / "full" / "letter").write_text("keep me")
    code, out, err = said(capsys, "begin", tmp_path / "full")
    assert (code, out) == (3, "")
    assert "holds files already" in err
    assert [entry.name for entry in (tmp_path / "full").iterdir()] == ["letter"]
    (tmp_path / "empty").mkdir()
    assert said(capsys, "begin", tmp_path / "empty")[0] == 0
    assert (tmp_path / "empty" / "project.yaml").is_file()


def test_a_fault_of_ours_is_said_without_a_traceback(
    project: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def break_down(*_: object) -> None:
        raise KeyError("deep inside")

    monkeypatch.setattr("benchalong.road.travel", break_down)
    code, out, err = said(capsys, "check", project)
    assert (code, out) == (3, "")
    assert err.startswith("Something went wrong inside benchalong. It is a fault of ours, not of your plan;")
    assert "Traceback" not in err
    details = Path(err.rstrip(".\n").rsplit(" ", 1)[1])
    assert "deep inside" in details.read_text(encoding="utf-8")
    details.unlink()


def test_ctrl_c_is_quiet(
    project: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def interrupted(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("benchalong.road.travel", interrupted)
    code, _, err = said(capsys, "check", project)
    assert code == 3
    assert err.strip() == "stopped; what stood before still stands."


def test_a_reader_that_goes_away_is_nothing_to_speak_of(project: Path) -> None:
    command = f"{sys.executable} -m benchalong check {project} --json | head -c 1"
    around = {**os.environ, "PYTHONPATH": str(ROOT / "generator")}
    done = subprocess.run(["sh", "-c", command], env=around, capture_output=True, check=False)
    assert done.stderr == b""


def test_a_closed_output_is_nothing_to_speak_of(project: Path) -> None:
    command = f"{sys.executable} -m benchalong check {project} >&-"
    around = {**os.environ, "PYTHONPATH": str(ROOT / "generator")}
    done = subprocess.run(["sh", "-c", command], env=around, capture_output=True, check=False)
    assert (done.returncode, done.stderr) == (0, b"")


def test_a_narrow_alphabet_is_enough(project: Path) -> None:
    change(project, "stock: oak\n", "stock: ök\n")
    done = in_a_process("check", project, PYTHONIOENCODING="ascii", LC_ALL="C")
    assert done.returncode == 2
    assert b"Traceback" not in done.stderr
    assert b"stock: ?k" in done.stderr
