"""Dado: where the shelf sits is where its channel lies; a stopped one leaves a notch in front."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis.strategies import booleans, sampled_from

from benchalong.plan.model import Turn
from benchalong.plan.turns import UNTURNED, WAYS, turned
from plan.joints.shop import (
    Board,
    Number,
    as_typed,
    assert_play,
    clashes,
    eighths,
    plan_of,
    project_text,
    shape_cuts,
    solid,
    turns,
)

SIDES = "kind: dado, cut_in: [side back], takes: [shelf end a]"
LOOKS = {"up": "top", "down": "bottom"}


def corner(joint: str, reach: Number, *, up: Number = 150, thick: Number = 18, turn: Turn = UNTURNED) -> str:
    side = Board((400, 200, 20), along="up", face="left")
    shelf = Board((300, 200, thick), along="right", face="up", at=(20 - reach, 0, up))
    return project_text({"side": side, "shelf": shelf}, f"{SIDES}, {joint}", turn)


def front(turn: Turn) -> str:
    """The word for where the front of the unturned corner looks."""
    x, y, z = (Fraction(value) for value in WAYS["front"])
    found = tuple(int(value) for value in turned((x, y, z), turn))
    way = next(word for word, other in WAYS.items() if other == found)
    return LOOKS.get(way, way)


@given(
    eighths(3, 12),
    eighths(0, 2),
    sampled_from([0, Fraction(1, 8), Fraction(1, 4)]),
    eighths(0, 380),
    eighths(8, 20),
    booleans(),
    turns,
)
@settings(max_examples=30, deadline=None)
def test_a_shelf_goes_in_with_its_play(
    depth: Fraction, end_play: Fraction, play: Number, up: Fraction, thick: Fraction, stops: bool, turn: Turn
) -> None:
    stopped = f", stopped: {front(turn)} edge, stop_by: 12" if stops else ""
    sizes = f"depth: {as_typed(depth)}, end_play: {as_typed(end_play)}, play: {as_typed(play)}"
    plan = plan_of(corner(f"{sizes}{stopped}", depth - end_play, up=up, thick=thick, turn=turn))
    assert clashes(plan) == []
    ways = [way for way, room in (("down", up), ("up", 400 - thick - up)) if room > 1]
    assert_play(plan, "L/side", "L/shelf", " ".join(ways), play, turn)
    assert [cut.kind for cut in shape_cuts(plan, "L/shelf")] == (["notch"] if stops else [])


def test_a_through_dado_leaves_the_shelf_whole() -> None:
    text = corner("depth: 6, end_play: 0", 6)
    plan = plan_of(text)
    assert shape_cuts(plan, "L/shelf") == ()
    assert solid(plan, "L/side").volume == pytest.approx(400 * 200 * 20 - 200 * 18 * 6, rel=1e-9)


def test_the_notch_clears_the_round_end_that_the_bit_leaves() -> None:
    plan = plan_of(corner("depth: 6, end_play: 1/2, stopped: front edge, stop_by: 10", Fraction(11, 2)))
    (notch,) = shape_cuts(plan, "L/shelf")
    assert {size.name: size.length for size in notch.sizes} == {"length": Fraction(11, 2), "width": 19}


def test_a_rail_stood_on_edge_lies_in_a_housing_along_the_grain() -> None:
    side = Board((400, 200, 20), along="up", face="left")
    rail = Board((300, 70, 18), along="right", face="front", at=(14, 90, 300))
    plan = plan_of(project_text({"side": side, "shelf": rail}, f"{SIDES}, depth: 6, end_play: 0"))
    assert clashes(plan) == []
    (housing,) = shape_cuts(plan, "L/side")
    assert housing.kind == "groove"
    assert {s.name: s.length for s in housing.sizes if s.name in ("from", "to")} == {"from": 300, "to": 370}


def test_what_touches_the_other_face_is_no_shelf_of_this_side() -> None:
    """It lies against the outside of the side; the inside gets no channel for it."""
    side = Board((400, 200, 20), along="up", face="left")
    shelf = Board((300, 200, 18), along="right", face="up", at=(-300, 0, 100))
    plan = plan_of(project_text({"side": side, "shelf": shelf}, f"{SIDES}, depth: 6"))
    assert plan.joints["corner"].meetings == ()
    assert shape_cuts(plan, "L/side") == ()
