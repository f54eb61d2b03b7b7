"""`outline`: stages and steps from the order of work, gaps filled, nothing written over."""

from __future__ import annotations

import json
import re
import shutil
from pathlib import Path

import pytest

from benchalong.commands import run
from benchalong.road import Travelled, travel
from benchalong.workings.step_check.done_in import DONE_IN
from conftest import ROOT

STEP_CODES = {
    "cut-out-of-reach", "glued-before-finished", "used-before-cut", "step-too-early", "work-in-no-step",
    "work-in-two-steps", "setup-made-again", "jig-used-before-made", "rest-too-short", "steps-say-no-work",
}  # fmt: skip


def without_steps(example: str, folder: Path) -> Path:
    for part in ("both", "inch") if example == "starter" else ("",):
        shutil.copytree(ROOT / "content" / example / part, folder, dirs_exist_ok=True)
    for gone in ("steps", "questions"):
        shutil.rmtree(folder / gone, ignore_errors=True)
    return folder


def place(travelled: Travelled, task: str) -> tuple[int, int]:
    line = travelled.worked[DONE_IN].first(task)
    assert line is not None, task
    return line.step, line.line


@pytest.mark.parametrize("example", ["seed-cupboard", "step-stool", "starter"])
def test_an_outlined_plan_has_no_fault_and_does_all_the_work(
    example: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = without_steps(example, tmp_path / "it")
    assert run(["outline", str(folder)]) == 0
    capsys.readouterr()
    travelled = travel(folder)
    assert not [finding for finding in travelled.worked.findings if finding.level == "fault"]
    assert not [finding for finding in travelled.worked.findings if finding.code in STEP_CODES]
    for step in travelled.plan.steps.values():
        assert step.does
        assert step.minutes


def test_stages_that_a_woodworker_would_accept(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    folder = without_steps("seed-cupboard", tmp_path / "it")
    run(["outline", str(folder)])
    capsys.readouterr()
    travelled = travel(folder)
    thick = ["side", "case_end", "shelf", "hanging_rail", "hinge_stile", "meeting_stile", "top_rail"]
    assert len({place(travelled, f"mill/{part}") for part in thick}) == 1
    grooves, tongues = (
        place(travelled, "cut/hinge_stile/frame"),
        place(travelled, "cut/top_rail/frame/tongue"),
    )
    assert grooves[0] < tongues[0] < place(travelled, "rip/door_panel")[0]
    assert place(travelled, "finish/insides/side")[0] < place(travelled, "glue-up/case")[0]
    assert place(travelled, "finish/panels/door_panel")[0] < place(travelled, "glue-up/door")[0]
    assert place(travelled, "dry-assemble/case")[0] < place(travelled, "glue-up/case")[0]
    assert place(travelled, "glue-up/case")[0] < place(travelled, "measure-and-fit/door")[0]
    assert place(travelled, "resaw/door_panel")[0] == place(travelled, "rest/door_panel")[0]
    assert place(travelled, "rest/door_panel")[0] < place(travelled, "glue-up/door_panel")[0]
    assert place(travelled, "finish/outsides/door")[0] < place(travelled, "hang/cupboard")[0]


def test_restless_wood_is_drafted_with_its_rests(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    folder = tmp_path / "it"
    shutil.copytree(ROOT / "tests" / "workings" / "step_check" / "restless", folder)
    shutil.rmtree(folder / "steps")
    assert run(["outline", str(folder)]) == 0
    capsys.readouterr()
    travelled = travel(folder)
    assert not [finding for finding in travelled.worked.findings if finding.code in STEP_CODES]
    split, flatten, mill = (place(travelled, f"{job}/rail")[0] for job in ("split-rough", "flatten", "mill"))
    assert split == place(travelled, "rest/rail")[0]
    assert split < flatten < mill
    steps = list(travelled.plan.steps.values())
    assert (steps[split].wait, steps[flatten].wait) == ("1 day", "1 day")


def contents(folder: Path) -> dict[str, bytes]:
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_gaps_are_filled_and_what_is_written_stays(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / "it"
    shutil.copytree(ROOT / "content" / "step-stool", folder)
    drill = folder / "steps" / "05-drill-holes.md"
    drill.unlink()
    shutil.rmtree(folder / "questions")
    before = contents(folder)
    assert run(["outline", str(folder), "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["wrote"] == ["steps/05-drill.md"]
    after = contents(folder)
    assert {name: after[name] for name in before} == before
    assert set(after) - set(before) == set(told["wrote"])
    assert not [f for f in travel(folder).worked.findings if f.level == "fault"]
    assert run(["outline", str(folder)]) == 0
    assert "nothing to draft" in capsys.readouterr().out
    assert contents(folder) == after


def test_where_no_number_is_free_it_says_where_the_step_belongs(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / "it"
    shutil.copytree(ROOT / "content" / "step-stool", folder)
    note = folder / "steps" / "02-saw-straight.md"
    note.write_text(re.sub(r"  - crosscut: .*\n", "", note.read_text("utf-8")), "utf-8")
    assert run(["outline", str(folder), "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["belongs_before"] == [{"file": told["wrote"][0], "before": "drill-holes"}]


def test_stages_on_one_line_are_refused_and_nothing_is_written(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = without_steps("step-stool", tmp_path / "it")
    project = folder / "project.yaml"
    text = project.read_text("utf-8")
    project.write_text(text[: text.index("\nstages:")] + "\nstages: {all: {title: All}}\n", "utf-8")
    before = contents(folder)
    assert run(["outline", str(folder)]) == 3
    assert "each on its own line" in capsys.readouterr().err
    assert contents(folder) == before


def test_a_note_that_stands_in_the_way_stops_all_of_it(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The disk fails at the last file: what was there stands as it was."""
    folder = without_steps("step-stool", tmp_path / "it")
    before = contents(folder)

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("benchalong.command_line.outlining.os.replace", full)
    assert run(["outline", str(folder)]) == 3
    capsys.readouterr()
    assert contents(folder) == before
    assert not (folder / "steps").exists()
