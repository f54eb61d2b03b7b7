"""Tongue and groove: the tongue slides in with its play and never reaches the bottom."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis.strategies import sampled_from

from benchalong.ground.lengths import INCH
from benchalong.plan.model import Turn
from benchalong.plan.turns import UNTURNED
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

SIDES = "kind: tongue and groove, cut_in: [stile edge b, rail edge a], takes: [rail end a]"


def corner(joint: str, reach: Number, *, thick: Number = 20, turn: Turn = UNTURNED) -> str:
    stile = Board((400, 60, thick), along="up", face="front")
    rail = Board((300, 60, thick), along="right", face="front", at=(60 - reach, 0, 100))
    return project_text({"stile": stile, "rail": rail}, f"{SIDES}, {joint}", turn)


@given(eighths(4, 8), eighths(5, 15), eighths(0, 3), sampled_from([0, Fraction(1, 8), Fraction(1, 4)]), turns)
@settings(max_examples=25, deadline=None)
def test_a_tongue_has_its_play(
    width: Fraction, depth: Fraction, end_play: Fraction, play: Number, turn: Turn
) -> None:
    joint = ", ".join(
        f"{key}: {as_typed(size)}"
        for key, size in (("width", width), ("depth", depth), ("end_play", end_play), ("play", play))
    )
    plan = assert_fits(corner(joint, depth - end_play, turn=turn))
    assert_play(plan, "L/stile", "L/rail", "front back", play, turn)
    assert_play(plan, "R/stile", "R/rail", "front back" if turn == UNTURNED else "", play, turn)


@given(eighths(1, 6), turns)
@settings(max_examples=15, deadline=None)
def test_off_the_middle_both_sides_match(across: Fraction, turn: Turn) -> None:
    joint = f"width: 6, depth: 10, end_play: 1, play: 1/8, across: {as_typed(across)}"
    plan = assert_fits(corner(joint, 9, turn=turn))
    assert_play(plan, "L/stile", "L/rail", "front back", Fraction(1, 8), turn)


def test_a_tongue_as_long_as_the_groove_bottoms_out() -> None:
    plan = plan_of(corner("width: 6, depth: 10, end_play: 1", 9))
    (groove,) = shape_cuts(plan, "L/stile")
    _, tongue = shape_cuts(plan, "L/rail")
    sizes = {size.name: size.length for size in (*groove.sizes, *tongue.sizes)}
    assert [sizes[key] for key in ("depth", "length", "thickness")] == [10, 9, 6]
    assert_play(plan, "L/stile", "L/rail", "", 0, UNTURNED)


def test_the_wood_that_is_left() -> None:
    plan = plan_of(corner("width: 6, depth: 10, end_play: 1, play: 0", 9))
    assert solid(plan, "L/stile").volume == pytest.approx(400 * (60 * 20 - 6 * 10), rel=1e-9)
    # the rail's own groove runs through the tongue, too: it is the tongue that stands in it there
    assert solid(plan, "L/rail").volume == pytest.approx(291 * (1200 - 60) + 9 * (60 - 10) * 6, rel=1e-9)


@pytest.mark.parametrize(
    ("stopped", "runs"),
    [
        ("top end", {"to": 385}),
        ("bottom end", {"from": 15}),
        ("both ends", {"from": 15, "to": 385}),
        ("end a", {"from": 15}),
    ],
)
def test_a_groove_stops_short_of_the_side_named(stopped: str, runs: dict[str, int]) -> None:
    text = corner(f"width: 6, depth: 10, end_play: 1, stopped: {stopped}, stop_by: 15", 9)
    plan = plan_of(text.replace(", rail edge a]", "]"))
    (groove,) = shape_cuts(plan, "L/stile")
    assert {s.name: s.length for s in groove.sizes if s.name in ("from", "to")} == runs


def test_common_practice_a_groove_in_the_middle_leaves_the_same_on_both_sides() -> None:
    """Common practice, no source: 5/16 in wide, 7/16 in deep in 7/8 in stock leaves 9/32 in on each side."""
    joint = "width: 5/16 in, depth: 7/16 in, end_play: 1/32 in"
    reach = Fraction(13, 32) * INCH
    plan = assert_fits(corner(joint, reach, thick=Fraction(7, 8) * INCH))
    (groove,) = shape_cuts(plan, "L/stile")
    (prism,) = groove.takes
    down = sorted({c.at[1] for c in prism.shape.corners})  # type: ignore[union-attr]
    assert down[0] == Fraction(7, 8) * INCH - down[1] == Fraction(9, 32) * INCH
