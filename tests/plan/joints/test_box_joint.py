"""Box joints: fingers that alternate, whatever the width leaves for the last one."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

import pytest
from hypothesis import given, settings
from hypothesis.strategies import sampled_from

from benchalong.plan.model import Turn
from benchalong.plan.turns import UNTURNED
from plan.joints.shop import (
    Board,
    Number,
    as_typed,
    assert_fits,
    assert_play,
    cut_sizes,
    eighths,
    plan_of,
    project_text,
    shape_cuts,
    shared,
    solid,
    standing,
    turns,
)

SIDES = "kind: box joint, cut_in: [side end b], takes: [top end a]"


def box(joint: str, *, side: Number = 12, top: Number = 12, wide: Number = 100, turn: Turn = UNTURNED) -> str:
    """A side and what lies on top of it, so thick and so wide."""
    boards = {
        "side": Board((200, wide, side), along="up", face="left"),
        "top": Board((300, wide, top), along="right", face="up", at=(0, 0, 200 - top)),
    }
    return project_text(boards, f"{SIDES}, {joint}", turn)


@given(
    finger=eighths(4, 30),
    play=sampled_from([0, Fraction(1, 8), Fraction(1, 4)]),
    side=eighths(6, 20),
    top=eighths(6, 20),
    wide=eighths(40, 150),
    turn=turns,
)
@settings(max_examples=50, deadline=None)
def test_fingers_go_between_each_other(finger, play, side, top, wide, turn) -> None:  # type: ignore[no-untyped-def]
    joint = f"finger: {as_typed(finger)}, play: {as_typed(play)}"
    plan = assert_fits(box(joint, side=side, top=top, wide=wide, turn=turn))
    places = ceil(wide / finger)
    assert len(shape_cuts(plan, "L/side")) == places // 2
    assert len(shape_cuts(plan, "R/top")) == places - places // 2
    if places > 2 and (wide % finger == 0 or wide % finger > play):
        assert_play(plan, "L/side", "L/top", "front back", play, turn)
    if play == 0:
        corner = standing(plan, "L/side") + standing(plan, "L/top")
        whole = float(wide * (200 * side + 300 * top - side * top))
        assert corner.volume() == pytest.approx(whole, rel=1e-9), "no hole is left"


def test_the_first_finger_at_the_front_is_that_of_what_is_cut_in() -> None:
    """Edge a of the side is at the back, so its fingers are counted from edge b."""
    plan = plan_of(box("finger: 30"))
    slots = cut_sizes(plan, "L/side")
    assert [(slot["width"], slot.get("at", 0)) for slot in slots] == [(30, 40), (10, 0)]
    assert [cut.surfaces for cut in shape_cuts(plan, "L/top")] == [("end a", "edge b"), ("end a",)]


def test_what_a_wider_board_has_more_stays_whole() -> None:
    text = box("finger: 10, play: 1/4").replace(
        "width: 100/1, thickness: 12/1", "width: 130, thickness: 12", 1
    )
    plan = assert_fits(text)
    side, top = standing(plan, "L/side"), standing(plan, "L/top")
    assert shared(side, top.translate([0, 0.2, 0])) < 1e-3


@pytest.mark.parametrize("finger", ["0 mm", "-3", "1/100"])
def test_no_fingers_from_a_size_that_makes_none(finger: str) -> None:
    plan = plan_of(box(f"finger: {finger}"))
    assert all(shape.cuts == () for shape in plan.shapes.values())


def test_one_finger_as_wide_as_the_board_takes_all_of_the_other() -> None:
    plan = assert_fits_once(box("finger: 100"))
    assert solid(plan, "L/top").volume == pytest.approx((300 - 12) * 100 * 12)


def assert_fits_once(text: str):  # type: ignore[no-untyped-def]
    plan = plan_of(text)
    assert shape_cuts(plan, "L/side") == ()
    return plan
