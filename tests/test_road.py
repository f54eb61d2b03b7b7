"""The whole road: from a folder to a plan worked out, or to every problem at once."""

from __future__ import annotations

import os
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from benchalong.ground.lengths import INCH
from benchalong.ground.problems import Unreadable
from benchalong.ground.report import problem_text
from benchalong.plan.resolve import resolve
from benchalong.reading.project import read_project
from benchalong.reading.written import Size
from benchalong.road import Travelled, travel
from benchalong.workings.cut_list import CUT_LIST
from benchalong.workings.extent import EXTENT
from benchalong.workings.order import WORKINGS
from benchalong.workings.working import work_all
from conftest import EXAMPLES, ROOT

PROJECT = """\
title: Box
units: inch
sizes:
  wide: 6 in
stock:
  oak: {kind: board, thickness: 3/4 in}
parts:
  lid: {stock: oak, width: wide, length: 2*wide}
assemblies:
  box:
    place:
      - {part: lid, at: [0, 0, 0], along: right, face: up}
stages:
  all: {title: All of it}
"""
STEP = "---\nstage: all\ntitle: Cut the lid\n---\nIt is (=wide) wide.\n"


def lay_down(folder: Path, project: str = PROJECT, step: str = STEP) -> Path:
    (folder / "steps").mkdir(parents=True, exist_ok=True)
    (folder / "project.yaml").write_text(project, encoding="utf-8")
    (folder / "steps" / "01-cut.md").write_text(step, encoding="utf-8")
    return folder


def test_a_folder_becomes_a_plan_worked_out(tmp_path: Path) -> None:
    travelled = travel(lay_down(tmp_path))
    extent = travelled.worked[EXTENT]
    assert extent is not None
    assert (extent.piece.width, extent.piece.depth) == (12 * INCH, 6 * INCH)
    assert [row.part for group in travelled.worked[CUT_LIST].groups for row in group.rows] == ["lid"]
    assert [finding.code for finding in travelled.worked.findings] == ["steps-say-no-work"]


def test_problems_of_reading_and_of_the_plan_come_together_in_the_order_of_lines(tmp_path: Path) -> None:
    faulty = PROJECT.replace("width: wide", "width: wade").replace("units: inch", "unit: inch")
    with pytest.raises(Unreadable) as unreadable:
        travel(lay_down(tmp_path, faulty, STEP.replace("(=wide)", "(=wied)")))
    found = unreadable.value
    said = [problem_text(problem, found.marks) for problem in found.problems]
    assert [text.split(":")[:2] for text in said] == [
        ["project.yaml", "2"],
        ["project.yaml", "8"],
        ["steps/01-cut.md", "5"],
    ]


def edition(folder: Path, project: str = PROJECT, step: str = STEP) -> str:
    return travel(lay_down(folder, project, step)).edition


def test_an_edition_changes_with_the_plan_and_not_with_comments(tmp_path: Path) -> None:
    first = edition(tmp_path)
    assert len(first) == 8
    assert int(first, 16) >= 0
    commented = "# a comment\n" + PROJECT.replace("wide: 6 in", "wide: 6 in   # another")
    assert edition(tmp_path, commented) == first
    assert edition(tmp_path, PROJECT.replace("wide: 6 in", "wide: 7 in")) != first
    assert edition(tmp_path, step=STEP.replace("wide.", "broad.")) != first


def test_a_question_makes_no_new_edition(tmp_path: Path) -> None:
    first = edition(tmp_path)
    (tmp_path / "questions").mkdir()
    question = "---\nstep: cut\nby: robin\nwhen: 2026-03-02\ntitle: Why?\n---\nWhy?\n"
    (tmp_path / "questions" / "why.md").write_text(question, encoding="utf-8")
    assert edition(tmp_path) == first


PRINT_EDITION = """
import sys, pathlib
from benchalong.road import travel
print(travel(pathlib.Path(sys.argv[1])).edition)
"""


@pytest.mark.parametrize("seed", ["0", "4711"])
def test_an_edition_is_the_same_in_every_process(tmp_path: Path, seed: str) -> None:
    here = edition(tmp_path)
    env = {**os.environ, "PYTHONPATH": str(ROOT / "generator"), "PYTHONHASHSEED": seed}
    command = [sys.executable, "-c", PRINT_EDITION, str(tmp_path)]
    done = subprocess.run(command, env=env, capture_output=True, text=True, check=True)
    assert done.stdout.strip() == here


@pytest.fixture(scope="module", params=EXAMPLES)
def example(request: pytest.FixtureRequest) -> Travelled:
    return travel(ROOT / "content" / request.param)


def test_the_examples_go_the_whole_road(example: Travelled) -> None:
    assert not [finding for finding in example.worked.findings if finding.level == "fault"]
    extent = example.worked[EXTENT]
    assert extent is not None
    assert min(extent.piece.width, extent.piece.depth, extent.piece.height) > 0


def test_no_part_of_an_example_is_lost(example: Travelled) -> None:
    rows = [row.part for group in example.worked[CUT_LIST].groups for row in group.rows]
    assert sorted(rows) == sorted(example.plan.parts)


SIZES = [(name, factor) for name in EXAMPLES for factor in ("1.05", "0.95")]


@pytest.mark.parametrize(("name", "factor"), SIZES)
def test_each_size_a_little_larger_or_smaller_works_or_a_finding_names_it(name: str, factor: str) -> None:
    """Resolved from the written project with one formula changed, so that no file is touched."""
    written = read_project(ROOT / "content" / name).project
    for size, told in written.sizes.items():
        changed = replace(written, sizes={**written.sizes, size: Size(f"({told.formula})*{factor}")})
        resolved = resolve(changed)
        if resolved.plan is None:
            assert any(size in problem.message for problem in resolved.problems), size
            continue
        found = work_all(resolved.plan, WORKINGS).findings
        faults = [finding for finding in found if finding.level == "fault"]
        assert not faults or any(size in finding.sizes for finding in faults), size
