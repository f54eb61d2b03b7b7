"""Both examples read without a problem and without a fault, and are as large as they say they are."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from PIL import Image

from benchalong.reading.project import read_project
from benchalong.road import Travelled, travel
from content.conftest import CONTENT

NAMES = ("seed-cupboard", "step-stool")
HANDLES = re.compile(r"[a-z]+")


@pytest.mark.parametrize("name", NAMES)
def test_nothing_is_found_against_it(name: str) -> None:
    found = travel(CONTENT / name).worked.findings
    assert [(finding.code, finding.subject) for finding in found] == []


def test_the_cupboard_has_its_parts_stages_steps_and_questions(cupboard: Travelled) -> None:
    plan = cupboard.plan
    assert len(plan.parts) == 12
    assert len(plan.stages) == 7
    assert len(plan.steps) == 25
    assert len(plan.questions) == 13
    assert {change.kind for change in plan.changes} == {"size", "part", "stock"}
    assert all(change.was and change.why for change in plan.changes)
    assert len(read_project(CONTENT / "seed-cupboard").project.builders) == 3


def test_the_stool_has_its_parts_stages_steps_and_questions(stool: Travelled) -> None:
    plan = stool.plan
    assert (len(plan.parts), len(plan.stages), len(plan.steps), len(plan.questions)) == (6, 4, 10, 5)
    assert plan.projection == "first angle"
    assert plan.units == "millimetre"


@pytest.mark.parametrize("name", NAMES)
def test_every_step_says_why_what_and_how_to_check(name: str) -> None:
    for step in travel(CONTENT / name).plan.steps.values():
        assert step.why, step.id
        assert step.does, step.id
        assert step.tools, step.id
        assert step.minutes, step.id
        assert len(step.checks) >= 2, step.id
        assert step.amiss, step.id


@pytest.mark.parametrize("name", NAMES)
def test_every_part_is_touched_by_a_step(name: str) -> None:
    plan = travel(CONTENT / name).plan
    assert set(plan.parts) == {part for step in plan.steps.values() for part in step.parts}


@pytest.mark.parametrize("name", NAMES)
def test_every_note_is_a_page_at_the_bench(name: str) -> None:
    for file in sorted((CONTENT / name / "steps").glob("*.md")):
        note = file.read_text(encoding="utf-8").split("\n---\n", maxsplit=1)[1]
        assert 80 <= len(note.split()) <= 260, f"{file.name}: {len(note.split())} words"


@pytest.mark.parametrize("name", NAMES)
def test_a_machine_cut_comes_with_a_caution(name: str) -> None:
    machine = re.compile(r"table saw|router|planer|jointer|bandsaw|jigsaw|mitre saw")
    for step in travel(CONTENT / name).plan.steps.values():
        if machine.search(" ".join(step.tools)) and any(
            job.kind in ("cut", "rip", "mill") for job in step.does
        ):
            assert step.cautions, step.id


@pytest.mark.parametrize("name", NAMES)
def test_only_handles_speak(name: str) -> None:
    for question in travel(CONTENT / name).plan.questions.values():
        for handle in (question.by, *(reply.by for reply in question.replies)):
            assert HANDLES.fullmatch(handle), handle


@pytest.mark.parametrize("file", sorted(CONTENT.glob("*/pictures/*")), ids=lambda file: file.name)
def test_a_picture_is_small_and_carries_nothing_but_itself(file: Path) -> None:
    assert file.stat().st_size <= 80_000
    with Image.open(file) as picture:
        assert picture.format == "PNG"
        assert not picture.getexif()
