"""The volumes of all parts of both examples agree with an independent sum within 0.01 %."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from benchalong.plan.model import Part
from benchalong.plan.resolve import resolve
from benchalong.reading.project import read_project
from benchalong.workings.solids import shaped, solid_of
from workings.independent import volume_of

CONTENT = Path(__file__).parent.parent.parent / "content"
EXAMPLES = ("seed-cupboard", "step-stool")


@cache
def shapes_of(example: str) -> dict[str, Part]:
    reading = read_project(CONTENT / example)
    plan = resolve(reading.project, reading.unreadable).plan
    assert plan is not None
    return {name: shaped(plan, shape) for name, shape in plan.shapes.items()}


@pytest.mark.parametrize("example", EXAMPLES)
def test_volumes_agree_with_an_independent_sum(example: str) -> None:
    wrong = {}
    for name, part in shapes_of(example).items():
        expected, found = volume_of(part), solid_of(part).volume
        if abs(found - expected) > 1e-4 * expected:
            wrong[name] = (found, expected, found / expected - 1)
    assert not wrong


@pytest.mark.parametrize("example", EXAMPLES)
def test_there_is_something_to_compare(example: str) -> None:
    assert any(part.cuts for part in shapes_of(example).values())
