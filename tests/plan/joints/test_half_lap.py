"""Half laps: corner, T and cross follow from where the parts lie; both lose their share, faces end flush."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis.strategies import sampled_from

from benchalong.plan.model import Turn
from benchalong.plan.turns import UNTURNED
from benchalong.workings.cut_check import check_cuts
from plan.joints.shop import (
    Board,
    Number,
    as_typed,
    assert_fits,
    assert_play,
    eighths,
    plan_of,
    project_text,
    shape_cuts,
    solid,
    turns,
)

SIDES = "kind: half lap, cut_in: [rail face], takes: [post back]"
PLAYS = sampled_from([0, Fraction(1, 8), Fraction(1, 2)])


def lap(
    joint: str, *, left: Number, up: Number, wide: Number = 60, tall: Number = 70, turn: Turn = UNTURNED
) -> str:
    """A post, and a rail 300 long and flush with it that begins so far left of it and up."""
    post = Board((400, wide, 22), along="up", face="front")
    rail = Board((300, tall, 22), along="right", face="front", at=(-left, 0, up))
    return project_text({"post": post, "rail": rail}, f"{SIDES}, {joint}", turn)


@pytest.mark.parametrize(
    ("left", "up", "rail", "post", "ways"),
    [
        (100, 200, "dado", "dado", "right left up down"),
        (0, 200, "rabbet", "dado", "up down left"),
        (0, 330, "rabbet", "rabbet", "left down"),
        (100, 330, "dado", "rabbet", "right left down"),
        (-20, 200, "rabbet", "dado", "up down left"),
    ],
    ids=["cross", "T", "corner", "T upside down", "T that stops short"],
)
@given(depth=eighths(4, 18), play=PLAYS, turn=turns)
@settings(max_examples=30, deadline=None)
def test_parts_that_cross_fit(left, up, rail, post, ways, depth, play, turn) -> None:  # type: ignore[no-untyped-def]
    plan = assert_fits(lap(f"depth: {as_typed(depth)}, play: {as_typed(play)}", left=left, up=up, turn=turn))
    assert [cut.kind for cut in shape_cuts(plan, "L/rail")] == [rail]
    assert [cut.kind for cut in shape_cuts(plan, "R/post")] == [post]
    assert_play(plan, "L/post", "L/rail", ways, play, turn)
    assert_play(plan, "L/post", "L/rail", "front", 0, turn)


@given(wide=eighths(20, 90), tall=eighths(20, 90), left=eighths(0, 200), up=eighths(0, 300), turn=turns)
@settings(max_examples=40, deadline=None)
def test_at_any_place_each_loses_half_of_where_they_cross(wide, tall, left, up, turn) -> None:  # type: ignore[no-untyped-def]
    plan = assert_fits(lap("play: 0", left=left, up=up, wide=wide, tall=tall, turn=turn))
    crossing = wide * tall * 22 / 2
    assert solid(plan, "L/rail").volume == pytest.approx(float(300 * tall * 22 - crossing), rel=1e-9)
    assert solid(plan, "R/post").volume == pytest.approx(float(400 * wide * 22 - crossing), rel=1e-9)


@given(depth=eighths(5, 55), play=PLAYS, turn=turns)
@settings(max_examples=30, deadline=None)
def test_boards_on_edge_are_notched_from_their_edges(depth, play, turn) -> None:  # type: ignore[no-untyped-def]
    boards = {
        "long": Board((300, 60, 12), along="right", face="front", at=(0, 100, 0)),
        "short": Board((250, 60, 10), along="back", face="left", at=(120, 0, 0)),
    }
    # edge a of the long one is on top; of the short one it is at the bottom
    sides = "kind: half lap, cut_in: [long edge a], takes: [short edge a]"
    text = project_text(boards, f"{sides}, depth: {as_typed(depth)}, play: {as_typed(play)}", turn)
    plan = assert_fits(text)
    assert [cut.kind for mark in ("L/long", "R/short") for cut in shape_cuts(plan, mark)] == [
        "notch",
        "notch",
    ]
    assert_play(plan, "L/long", "L/short", "left right front back", play, turn)


def test_parts_that_pass_each_other_lose_nothing() -> None:
    plan = plan_of(lap("play: 0", left=-100, up=100))
    assert all(shape.cuts == () for shape in plan.shapes.values())


@pytest.mark.parametrize("depth", [22, 30])
def test_a_lap_that_takes_all_is_found(depth: int) -> None:
    plan = plan_of(lap(f"depth: {depth}", left=100, up=200))
    assert [finding.code for finding in check_cuts(plan, None)[1]] != []  # type: ignore[arg-type]
