"""Dovetails: tails and sockets from the same lines, through and half-blind."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import assume, given, settings
from hypothesis.strategies import integers, sampled_from

from benchalong.plan.model import Turn
from benchalong.plan.turns import UNTURNED, turned
from plan.joints.shop import (
    TOUCHING,
    Board,
    Number,
    as_typed,
    assert_fits,
    assert_play,
    clashes,
    cut_sizes,
    eighths,
    joint_sizes,
    plan_of,
    project_text,
    shape_cuts,
    shared,
    solid,
    standing,
    turns,
    understood,
)

SIDES = "kind: dovetail, cut_in: [front end b], takes: [side end a]"


def drawer(
    joint: str,
    *,
    front: Number = 20,
    side: Number = 12,
    wide: Number = 120,
    lap: Number = 0,
    turn: Turn = UNTURNED,
) -> str:
    """A drawer's front with a side on its right that ends so far behind its face."""
    boards = {
        "front": Board((400, wide, front), along="right", face="front"),
        "side": Board((300, wide, side), along="back", face="right", at=(400 - side, lap, 0)),
    }
    return project_text(boards, f"{SIDES}, {joint}", turn)


@pytest.mark.parametrize("kind", ["through", "half-blind"])
@given(
    tails=integers(1, 5),
    slope=sampled_from(["1/8", "1/6", "1/7"]),
    pin=eighths(2, 8),
    play=sampled_from([0, Fraction(1, 8), Fraction(1, 4)]),
    front=eighths(14, 24),
    side=eighths(8, 16),
    wide=eighths(60, 160),
    turn=turns,
)
@settings(max_examples=40, deadline=None)
def test_tails_go_into_their_sockets(kind, tails, slope, pin, play, front, side, wide, turn) -> None:  # type: ignore[no-untyped-def]
    tail = (wide - (tails + 1) * pin) / tails
    assume(tail - 2 * Fraction(slope) * front > 4)
    lap = Fraction(0) if kind == "through" else Fraction(5)
    joint = f"dovetail: {kind}, tails: {tails}, slope: {slope}, pin: {as_typed(pin)}, play: {as_typed(play)}"
    joint += "" if kind == "through" else ", lap: 5"
    plan = assert_fits(drawer(joint, front=front, side=side, wide=wide, lap=lap, turn=turn))
    assert len(shape_cuts(plan, "L/front")) == tails
    assert len(shape_cuts(plan, "R/side")) == tails + 1
    assert_play(plan, "L/front", "L/side", "up down", play, turn)
    assert_play(plan, "L/front", "L/side", "left front" if lap else "left", 0, turn)
    if play == 0:
        corner = standing(plan, "L/front") + standing(plan, "L/side")
        whole = float(wide * (400 * front + 300 * side - side * (front - lap)))
        assert corner.volume() == pytest.approx(whole, rel=1e-9), "no hole is left"


@given(slope=sampled_from(["1/6", "1/8"]), tails=integers(1, 4), turn=turns)
@settings(max_examples=30, deadline=None)
def test_a_dovetailed_side_cant_be_pulled_off_backwards(slope: str, tails: int, turn: Turn) -> None:
    """The tails bind at once; without a slope they slide out."""
    sloping, straight = (plan_of(drawer(f"slope: {s}, tails: {tails}", turn=turn)) for s in (slope, "0"))
    assert_play(sloping, "L/front", "L/side", "back", 0, turn)
    x, y, z = turned((Fraction(0), Fraction(1), Fraction(0)), turn)
    slid = standing(straight, "L/side").translate([float(x), float(y), float(z)])
    assert shared(standing(straight, "L/front"), slid) < TOUCHING


def test_the_volume_of_a_dovetailed_drawer_side() -> None:
    """L W T less, at both ends, the pins' room: T D ((n + 1) p + n s D)."""
    boards = {
        "front": Board((400, 120, 20), along="right", face="front"),
        "rear": Board((400, 120, 18), along="right", face="front", at=(0, 282, 0)),
        "side": Board((300, 120, 12), along="back", face="left"),
    }
    sides = "kind: dovetail, cut_in: [front left end, rear left end], takes: [side both ends]"
    text = project_text(boards, f"{sides}, tails: 3, pin: 5, slope: 1/8").replace("mirror: left to right", "")
    plan = assert_fits(text)
    pins = sum(depth * (4 * 5 + 3 * depth / 8) for depth in (20, 18)) * 12
    assert solid(plan, "L/side").volume == pytest.approx(300 * 120 * 12 - pins, rel=1e-9)


def test_how_many_tails_follows_from_the_width() -> None:
    assert len(shape_cuts(assert_fits(drawer("play: 0")), "L/front")) == 3, "one for each two thicknesses"


def test_the_lap_is_left_in_front_and_gives_the_tails_length() -> None:
    plan = assert_fits(drawer("dovetail: half-blind, tails: 3", lap=5))
    sizes = joint_sizes(plan)
    assert (sizes["lap"], sizes["tail_length"]) == (5, 15)
    assert solid(plan, "L/front").volume == pytest.approx(
        400 * 120 * 20 - sum(_socket_area(15, 3)) * 12, rel=1e-9
    )
    through = joint_sizes(plan_of(drawer("play: 0")))
    assert through["tail_length"] == 20
    assert "lap" not in through


def test_a_side_that_reaches_into_the_lap_clashes() -> None:
    assert clashes(plan_of(drawer("dovetail: half-blind, lap: 5", lap=4))) != []


def test_what_a_drawing_needs_is_told() -> None:
    """A slope of 1 in 8 over 20 mm: a tail is 5 narrower at its root than at its end, and a pin 5 wider."""
    plan = plan_of(drawer("tails: 2, pin: 5"))
    (socket, _), (half_pin, pin, _) = cut_sizes(plan, "L/front"), cut_sizes(plan, "L/side")
    assert (socket["width"], socket["narrow width"], socket["length"]) == (
        Fraction(105, 2),
        Fraction(95, 2),
        12,
    )
    assert (pin["width"], pin["narrow width"], pin["length"]) == (10, 5, 20)
    assert (half_pin["width"], half_pin["narrow width"]) == (Fraction(15, 2), 5)


def test_a_lap_says_nothing_of_a_through_one() -> None:
    assert_fits(drawer("dovetail: through, lap: 5"))


def test_tails_are_on_an_end() -> None:
    text = drawer("play: 0").replace("side end a", "side edge a")
    assert understood(text)[1] == ["a dovetail joint enters with an end, not with edge a"]


@pytest.mark.parametrize(
    "joint",
    [
        "pin: 60",
        "pin: 0 mm",
        "pin: -1",
        "slope: 3",
        "slope: -1/8",
        "tails: 40",
        "dovetail: half-blind, lap: 30",
    ],
)
def test_tails_that_cant_be_made_give_no_cuts_and_a_clash(joint: str) -> None:
    plan = plan_of(drawer(joint))
    assert shape_cuts(plan, "L/front") == ()
    assert clashes(plan) != []


def _socket_area(depth: int, tails: int) -> list[float]:
    """Each socket's, with the default pin of 5 and slope of 1/8, in 120 mm of width."""
    wide = (120 - (tails + 1) * 5) / tails
    return [depth * (wide - depth / 8)] * tails


DRAWER = """
title: Drawer
units: millimetre
piece: drawer
stock: {oak: {kind: board, thickness: 20}, thin: {kind: board, thickness: 12}}
parts:
  front: {stock: oak, width: 120, length: 400}
  rear: {stock: thin, width: 100, length: 400}
  side: {stock: thin, width: 120, length: 300}
joints:
  blind:
    {kind: dovetail, dovetail: half-blind, cut_in: [front both ends], takes: [side front end], tails: 3}
  through: {kind: dovetail, cut_in: [rear both ends], takes: [side back end], tails: 2}
assemblies:
  drawer:
    place:
      - {part: front, mark: F, at: [0, 0, 0], along: right, face: front}
      - {part: rear, mark: B, at: [0, top - rear.thickness, 20], along: right, face: back}
      - {part: side, mark: L, at: [0, blind.lap, 0], along: back, face: left}
      - {part: side, mark: R, at: [400 - side.thickness, blind.lap, 0], along: back, face: right}
sizes: {top: blind.lap + side.length}
stages: {all: {title: All}}
"""


def test_a_whole_drawer_of_both_kinds() -> None:
    """The rear is lower than the sides, so that its tails lie in their upper part."""
    plan = plan_of(DRAWER)
    assert clashes(plan) == []
    assert {copy.mark: len(shape_cuts(plan, copy.mark)) for copy in plan.copies} == {
        "F": 6,
        "B": 4,
        "L": 7,
        "R": 7,
    }
    assert list(plan.shapes) == ["front", "rear", "side"], "all goes right through: the left one turned over"
