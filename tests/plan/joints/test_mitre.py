"""Mitres: from inner to outer corner whatever the widths, and room for a spline."""

from __future__ import annotations

from fractions import Fraction
from math import hypot

import pytest
from hypothesis import given, settings

from benchalong.plan.model import Turn
from benchalong.plan.turns import UNTURNED
from benchalong.workings.cut_check import check_cuts
from plan.joints.shop import (
    Board,
    Number,
    as_typed,
    assert_fits,
    assert_play,
    cut_sizes,
    eighths,
    joint_sizes,
    plan_of,
    project_text,
    shape_cuts,
    solid,
    standing,
    turns,
)

SIDES = "kind: mitre, cut_in: [side end b], takes: [top end a]"


def frame(joint: str, *, side: Number = 60, top: Number = 60, turn: Turn = UNTURNED) -> str:
    """Of a frame: a stile and the rail on top of it, so wide."""
    boards = {
        "side": Board((400, side, 20), along="up", face="front"),
        "top": Board((300, top, 20), along="right", face="front", at=(0, 0, 400 - top)),
    }
    return project_text(boards, ", ".join(filter(None, (SIDES, joint))), turn)


def case(joint: str, *, side: Number = 20, top: Number = 20, turn: Turn = UNTURNED) -> str:
    """Of a case: a side and the top on it, so thick and 150 deep."""
    boards = {
        "side": Board((400, 150, side), along="up", face="left"),
        "top": Board((300, 150, top), along="right", face="up", at=(0, 0, 400 - top)),
    }
    return project_text(boards, ", ".join(filter(None, (SIDES, joint))), turn)


@pytest.mark.parametrize(
    ("scene", "kind", "least", "most"), [(frame, "taper", 20, 90), (case, "bevel", 10, 40)]
)
@given(eighths(0, 70), eighths(0, 70), turns)
@settings(max_examples=40, deadline=None)
def test_the_two_slopes_lie_on_each_other(scene, kind, least, most, a, b, turn) -> None:  # type: ignore[no-untyped-def]
    side, top = least + a * (most - least) / 70, least + b * (most - least) / 70
    plan = assert_fits(scene("", side=side, top=top, turn=turn))
    assert [cut.kind for mark in ("L/side", "R/top") for cut in shape_cuts(plan, mark)] == [kind, kind]
    assert_play(plan, "L/side", "L/top", "left down", 0, turn)
    depth = 20 if scene is frame else 150
    half = float(side * top * depth / 2)
    whole = solid(plan, "L/side").volume + half
    assert whole == pytest.approx(float(400 * side * depth), rel=1e-12), "half of the corner goes"
    assert solid(plan, "R/top").volume + half == pytest.approx(float(300 * top * depth), rel=1e-12)


@given(eighths(15, 70), eighths(15, 70), eighths(2, 6), eighths(3, 10), turns)
@settings(max_examples=40, deadline=None)
def test_a_spline_in_a_frame_lies_in_the_middle_of_the_thickness(side, top, thick, deep, turn) -> None:  # type: ignore[no-untyped-def]
    plan = assert_fits(frame(_spline(thick, deep), side=side, top=top, turn=turn))
    strip = float(thick * deep) * hypot(side, top)
    assert solid(plan, "L/side").volume == pytest.approx(
        float(400 * side * 20 - side * top * 10) - strip, rel=1e-9
    )
    assert solid(plan, "R/top").volume == pytest.approx(
        float(300 * top * 20 - side * top * 10) - strip, rel=1e-9
    )


@given(eighths(18, 30), eighths(18, 30), eighths(2, 4), eighths(2, 5), turns)
@settings(max_examples=40, deadline=None)
def test_a_spline_in_a_case_runs_from_edge_to_edge(side, top, thick, deep, turn) -> None:  # type: ignore[no-untyped-def]
    plan = assert_fits(case(_spline(thick, deep), side=side, top=top, turn=turn))
    slot = float(thick * deep * 150)
    assert solid(plan, "L/side").volume == pytest.approx(
        float(400 * side * 150 - side * top * 75) - slot, rel=1e-9
    )
    assert solid(plan, "R/top").volume == pytest.approx(
        float(300 * top * 150 - side * top * 75) - slot, rel=1e-9
    )


@pytest.mark.parametrize("scene", [frame, case])
def test_both_slots_together_hold_one_spline(scene) -> None:  # type: ignore[no-untyped-def]
    """The plain corner less the splined one is a block: spline thickness and its play by twice the depth."""
    plain, splined = (plan_of(scene(joint)) for joint in ("", f"{_spline(3, 5)}, play: 1/8"))
    whole, rest = ((standing(plan, "L/side") + standing(plan, "L/top")) for plan in (plain, splined))
    (spline,) = (whole - rest).decompose()
    run = 60 * 2**0.5 if scene is frame else 150
    assert spline.volume() == pytest.approx(Fraction(13, 4) * 2 * 5 * run, rel=1e-9)


def test_the_volume_of_a_splined_mitre() -> None:
    """A case top with both ends mitred: L W T - W T^2 - 2 t d W."""
    boards = {
        "side": Board((400, 150, 20), along="up", face="left"),
        "other": Board((400, 150, 20), along="up", face="left", at=(280, 0, 0)),
        "top": Board((300, 150, 20), along="right", face="up", at=(0, 0, 380)),
    }
    sides = "kind: mitre, cut_in: [side top end, other top end], takes: [top both ends]"
    text = project_text(boards, f"{sides}, {_spline(3, 5)}").replace("mirror: left to right", "")
    plan = assert_fits(text)
    expected = 300 * 150 * 20 - 150 * 20**2 - 2 * 3 * 5 * 150
    assert solid(plan, "L/top").volume == pytest.approx(expected, rel=1e-9)


def test_the_spline_is_as_wide_as_both_slots_less_its_end_play() -> None:
    plan = plan_of(case(f"{_spline(3, 5)}, end_play: 1/2"))
    assert joint_sizes(plan)["spline_width"] == 9
    assert "spline_width" not in joint_sizes(plan_of(case("")))


def test_where_the_slot_is_is_told() -> None:
    plan = plan_of(case(_spline(3, 5)))
    _, slot = shape_cuts(plan, "L/top")
    assert (slot.kind, slot.name, slot.where) == ("slot", "spline", "in the mitre at end a, centred")
    assert cut_sizes(plan, "L/top")[1] == {"width": 3, "depth": 5}


@pytest.mark.parametrize(
    "joint", ["spline_thickness: 40, spline_depth: 5", "spline_thickness: 3, spline_depth: 60"]
)
@pytest.mark.parametrize("scene", [frame, case])
def test_a_spline_larger_than_the_wood_is_no_crash(scene, joint: str) -> None:  # type: ignore[no-untyped-def]
    plan = plan_of(scene(joint))
    check_cuts(plan, None)  # type: ignore[arg-type]
    assert solid(plan, "L/top").volume > 0


def test_ends_that_make_no_corner_are_left_alone() -> None:
    plan = plan_of(frame("").replace("takes: [top end a]", "takes: [top end b]"))
    assert all(shape.cuts == () for shape in plan.shapes.values())


def _spline(thickness: Number, depth: Number) -> str:
    return f"spline_thickness: {as_typed(thickness)}, spline_depth: {as_typed(depth)}"
