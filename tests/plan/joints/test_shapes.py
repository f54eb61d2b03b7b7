"""Which copies are the same piece of wood follows from the cuts that joints give them."""

from __future__ import annotations

from typing import TypeAlias

import pytest

from benchalong.plan.model import Plan
from plan.joints.shop import clashes, plan_of

Told: TypeAlias = tuple[str, str, tuple[str, ...], set[str]]
"""Shape, hand, marks, and those turned."""
FRAME = """
title: Frame
units: millimetre
stock: {{oak: {{kind: board, thickness: 20}}}}
parts:
  stile: {{stock: oak, length: 400, width: 60}}
  rail: {{stock: oak, length: 198, width: 60}}
joints:
  frame:
    {{kind: tongue and groove, cut_in: [stile {edge}], takes: [rail both ends], depth: 10,
      end_play: 1 {more}}}
assemblies:
  whole:
    place:
      - {{part: stile, mark: L, at: [0, 0, 0], along: up, face: front}}
      - {{part: stile, mark: R, at: [240, 0, 0], along: {along}, face: {face}{mirror}}}
      - {{part: rail, mark: T, at: [51, 0, 100], along: right, face: front}}
"""


def shapes(
    edge: str = "inner edge", more: str = "", along: str = "up", face: str = "front", mirror: str = ""
) -> list[Told]:
    plan = plan_of(
        FRAME.format(
            edge=edge,
            more=more and f", {more}",
            along=along,
            face=face,
            mirror=mirror and f", mirror: {mirror}",
        )
    )
    assert clashes(plan) == []
    return described(plan, "stile")


def described(plan: Plan, part: str) -> list[Told]:
    return [
        (shape.id, shape.hand, shape.marks, set(shape.turned))
        for shape in plan.shapes.values()
        if shape.part == part
    ]


SAME: list[Told] = [("stile", "", ("L", "R"), set())]
TURNED: list[Told] = [("stile", "", ("L", "R"), {"R"})]
HANDS: list[Told] = [("stile", "left", ("L",), set()), ("stile-2", "right", ("R",), set())]


def test_the_same_as_it_lies() -> None:
    assert shapes(along="down") == SAME, "turned end for end in its place, so that its groove looks in"


def test_the_same_after_a_half_turn() -> None:
    assert shapes() == TURNED


def test_a_mirrored_copy_of_a_symmetric_part_is_the_same_part() -> None:
    assert shapes(mirror="left to right") == TURNED


@pytest.mark.parametrize("mirror", ["", "left to right"])
def test_to_one_side_and_stopped_there_are_two_hands(mirror: str) -> None:
    """A groove off the middle that stops short of the top: no turn makes the one into the other."""
    assert shapes(more="across: 4, stopped: top end, stop_by: 15", mirror=mirror) == HANDS


def test_to_one_side_alone_it_can_be_turned() -> None:
    """The groove runs right through, so end for end it is the same."""
    assert shapes(more="across: 4") == TURNED
