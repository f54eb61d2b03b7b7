"""One side of a part named for both: where the copies sit tells who receives, and nothing is cut twice."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings

from benchalong.plan.model import Plan
from plan.joints.shop import clashes, eighths, plan_of, shape_cuts, solid

FRAME = """
title: Frame
units: millimetre
stock: {{oak: {{kind: board, thickness: 20}}}}
sizes: {{wide: {wide}, strip: {strip}}}
parts:
  piece: {{stock: oak, width: strip, length: wide}}
joints:
  corner: {{cut_in: [piece both ends], takes: [piece both ends], {joint}}}
assemblies:
  frame:
    place:
{places}
stages: {{all: {{title: All}}}}
"""
FLAT = """
      - {part: piece, mark: L, at: [0, 0, 0], along: up, face: front}
      - {part: piece, mark: R, at: [wide - strip, 0, 0], along: down, face: front}
      - {part: piece, mark: T, at: [0, 0, wide - strip], along: right, face: front}
      - {part: piece, mark: B, at: [0, 0, 0], along: left, face: front}"""
BOX = """
      - {part: piece, mark: F, at: [0, 0, 0], along: right, face: front}
      - {part: piece, mark: B, at: [0, wide - 20, 0], along: left, face: back}
      - {part: piece, mark: L, at: [0, 0, 0], along: front, face: left}
      - {part: piece, mark: R, at: [wide - 20, 0, 0], along: back, face: right}"""


def four(joint: str, places: str = FLAT, *, wide: object = 400, strip: object = 60) -> Plan:
    return plan_of(FRAME.format(joint=joint, places=places.strip("\n"), wide=wide, strip=strip))


@given(eighths(200, 500), eighths(30, 90))
@settings(max_examples=10, deadline=None)
def test_four_equal_mitred_sides_are_one_piece_of_wood(wide: Fraction, strip: Fraction) -> None:
    """No marks needed: each end is cut once, and the four are the same."""
    plan = four("kind: mitre", wide=wide, strip=strip)
    assert len(plan.joints["corner"].meetings) == 4
    assert plan.joints["corner"].unmet == plan.joints["corner"].unfilled == ()
    assert [cut.kind for cut in shape_cuts(plan, "L")] == ["taper", "taper"]
    assert list(plan.shapes) == ["piece"]
    assert clashes(plan) == []
    whole = float(wide * wide - (wide - 2 * strip) ** 2) * 20
    assert 4 * solid(plan, "L").volume == pytest.approx(whole)


@pytest.mark.parametrize("kind", ["box joint", "dovetail"])
def test_of_four_equal_sides_of_a_box_front_and_back_receive(kind: str) -> None:
    plan = four(f"kind: {kind}", BOX, wide=300, strip=120)
    meetings = plan.joints["corner"].meetings
    assert {m.cut_in.copy for m in meetings} == {"F", "B"}
    assert {m.takes.copy for m in meetings if m.takes} == {"L", "R"}
    assert clashes(plan) == []
    volume = sum(solid(plan, mark).volume for mark in "FBLR")
    assert volume == pytest.approx((300 * 300 - 260 * 260) * 120)


def test_in_a_frame_what_stands_upright_receives() -> None:
    plan = four("kind: half lap")
    assert {m.cut_in.copy for m in plan.joints["corner"].meetings} == {"L", "R"}


def test_one_that_meets_nothing_is_told_of_once() -> None:
    plan = four("kind: mitre", "\n".join(FLAT.strip("\n").splitlines()[:3]))
    joint = plan.joints["corner"]
    open_ends = {(side.copy, side.surfaces) for side in (*joint.unfilled, *joint.unmet)}
    assert len(open_ends) == len(joint.unfilled) + len(joint.unmet) == 2
