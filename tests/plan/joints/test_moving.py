"""Partners that move: hinges, slides and stays, with what is cut for them and how they go."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings

from benchalong.plan.model import Cut, Moves, Plan, Turn
from benchalong.plan.turns import UNTURNED, WAYS, moved, room_of, turned, turned_way
from plan.joints.shop import (
    Board,
    Number,
    as_typed,
    clashes,
    copy_called,
    eighths,
    plan_of,
    project_text,
    shape_cuts,
    turns,
    understood,
)

DOOR = "kind: hinge, cut_in: [side back], takes: [door edge a], length: 50, width: 12, closed: 5"


def door(
    joint: str = "", *, gap: Number = 2, tall: Number = 500, turn: Turn = UNTURNED, barrel: str = "front"
) -> str:
    boards = {
        "side": Board((600, 200, 20), along="up", face="left"),
        "door": Board((tall, 300, 18), along="up", face="front", at=(20 + gap, 0, 50)),
    }
    way = _turned_word(barrel, turn)
    return project_text(boards, f"{DOOR}, gap: {as_typed(gap)}, barrel: {way}, {joint}", turn)


def _turned_word(way: str, turn: Turn) -> str:
    found = turned_way(WAYS[way], turn)
    return next(word for word, other in WAYS.items() if other == found)


def gains(plan: Plan, mark: str) -> list[tuple[tuple[Fraction, ...], tuple[Fraction, ...]]]:
    """The room of every gain in the piece."""
    copy = copy_called(plan, mark)
    found = []
    for cut in shape_cuts(plan, mark):
        for prism in cut.takes:
            spans = [[c.at[n] for c in prism.shape.corners] for n in range(2)]  # type: ignore[union-attr]
            ranges = [(min(s), max(s)) for s in spans]
            ranges.insert(("along", "across", "down").index(prism.axis), (prism.start, prism.end))
            near, far = ((r[0] for r in ranges), (r[1] for r in ranges))
            room = room_of((tuple(near), tuple(far)), copy.turn)  # type: ignore[arg-type]
            found.append((moved(room[0], copy.at), moved(room[1], copy.at)))
    return sorted(found)


@given(eighths(0, 4), turns)
@settings(max_examples=25, deadline=None)
def test_both_gains_and_the_gap_come_to_the_closed_hinge(gap: Fraction, turn: Turn) -> None:
    plan = plan_of(door(gap=gap, turn=turn))
    assert clashes(plan) == []
    for hand in "LR":
        in_side, in_door = gains(plan, f"{hand}/side"), gains(plan, f"{hand}/door")
        assert len(in_side) == len(in_door) == 2
        for one, other in zip(in_side, in_door, strict=True):
            near = [min(one[0][n], other[0][n]) for n in range(3)]
            far = [max(one[1][n], other[1][n]) for n in range(3)]
            assert sorted(b - a for a, b in zip(near, far, strict=True)) == [5, 12, 50]


@pytest.mark.parametrize(("tall", "count"), [(500, 2), (1000, 2), (1001, 3)])
def test_a_tall_door_takes_three(tall: int, count: int) -> None:
    plan = plan_of(door(tall=tall).replace("length: 600/1", "length: 1200/1"))
    found = sorted(lengths(cut)["at"] for cut in shape_cuts(plan, "L/door"))
    assert len(found) == count
    assert found[0] == 75
    assert found[-1] == tall - 75 - 50


def lengths(cut: Cut) -> dict[str, Fraction]:
    return {size.name: size.length for size in cut.sizes}


def swing(moves: Moves, point: tuple[Fraction, ...]) -> tuple[Fraction, ...]:
    """Which way a point of what turns sets out: the axis crossed with the way to the point."""
    assert moves.at is not None
    assert moves.way is not None
    (a, b, c), (x, y, z) = moves.way, (p - q for p, q in zip(point, moves.at, strict=True))
    return (b * z - c * y, c * x - a * z, a * y - b * x)


@given(turns)
@settings(max_examples=24, deadline=None)
def test_a_door_opens_towards_its_barrel_in_both_hands(turn: Turn) -> None:
    plan = plan_of(door("opens: 110 degrees", turn=turn))
    assert [moves.goes for moves in plan.joints["corner"].moves] == ["L/door", "R/door"]
    for moves in plan.joints["corner"].moves:
        assert moves.how == "turns"
        assert moves.angle == 110
        copy = copy_called(plan, moves.goes)
        far_edge = moved(turned((Fraction(250), Fraction(300), Fraction(9)), copy.turn), copy.at)
        face = tuple(-row[2] for row in copy.turn)
        assert sum(a * b for a, b in zip(swing(moves, far_edge), face, strict=True)) > 0


def test_the_axis_stands_in_the_middle_of_the_gap() -> None:
    (moves, _) = plan_of(door(gap=2)).joints["corner"].moves
    assert moves.at is not None
    assert list(moves.at[:2]) == [21, 0]
    assert moves.angle == 90


def test_what_turns_is_the_whole_door() -> None:
    whole = """
title: Door
units: millimetre
piece: all
stock: {oak: {kind: board, thickness: 20}}
parts:
  side: {stock: oak, length: 600, width: 200}
  stile: {stock: oak, length: 500, width: 50}
joints:
  hang:
    {kind: hinge, cut_in: [side inner face], takes: [stile outer edge], length: 50, width: 12, closed: 5,
     gap: 2}
assemblies:
  case:
    place:
      - {part: side, mark: S, at: [0, 0, 0], along: up, face: left}
      - {part: side, mark: T, at: [400, 0, 0], along: up, face: right}
  door: {place: [{part: stile, mark: H, at: [0, 0, 0], along: up, face: front}]}
  all:
    place:
      - {assembly: case, mark: C, at: [0, 0, 0]}
      - {assembly: door, mark: LD, at: [22, 0, 50]}
      - {assembly: door, mark: RD, at: [348, 0, 50], mirror: left to right}
stages: {all: {title: All}}
"""
    moves = plan_of(whole).joints["hang"].moves
    assert [(one.stays, one.goes) for one in moves] == [("C/S", "LD"), ("C/T", "RD")]
    ways = [one.way for one in moves]
    assert ways == [(0, 0, -1), (0, 0, 1)], "left and right hand open away from each other"


def test_a_lid_hangs_at_the_back() -> None:
    boards = {
        "rear": Board((400, 200, 20), along="right", face="back", at=(0, 280, 0)),
        "lid": Board((400, 300, 18), along="right", face="up", at=(0, 0, 200)),
    }
    joint = (
        "kind: hinge, cut_in: [rear top edge], takes: [lid back], length: 50, width: 12, closed: 4, gap: 0"
    )
    plan = plan_of(project_text(boards, f"{joint}, barrel: back"))
    assert clashes(plan) == []
    moves = plan.joints["corner"].moves[0]
    assert moves.at is not None
    assert list(moves.at[1:]) == [300, 200]
    assert swing(moves, (Fraction(200), Fraction(0), Fraction(218)))[2] > 0, "its front edge goes up"


def test_a_barrel_cant_look_where_the_sides_look() -> None:
    _, said = understood(door(barrel="right"))
    assert said == ["the barrel can't look to the right of sides that look right"]


DRAWER = {
    "side": Board((200, 500, 20), along="up", face="left"),
    "box": Board((480, 100, 12), along="back", face="left", at=(33, 10, 50)),
}
SLIDE = "kind: slide, cut_in: [side back], takes: [box face], travel: 400, clearance: 13"


def test_a_drawer_slides_to_the_front() -> None:
    plan = plan_of(project_text(DRAWER, SLIDE))
    (left, right) = plan.joints["corner"].moves
    assert (left.how, left.stays, left.goes, left.way) == ("slides", "L/side", "L/box", (0, -1, 0))
    assert left.travel == 400
    assert right.way == (0, -1, 0)
    assert shape_cuts(plan, "L/side") == (), "it is screwed on"


def test_a_slide_that_is_let_in() -> None:
    boards = {**DRAWER, "side": Board((500, 200, 20), along="back", face="left")}
    plan = plan_of(project_text(boards, f"{SLIDE}, width: 30, depth: 4"))
    (groove,) = shape_cuts(plan, "L/side")
    assert groove.kind == "groove"
    assert lengths(groove)["width"] == 30
    low, high = gains(plan, "L/side")[0]
    assert (low[2] + high[2]) / 2 == 100, "in the middle of the drawer's height"


def test_a_slide_cant_pull_into_the_side() -> None:
    _, said = understood(project_text(DRAWER, f"{SLIDE}, pulls: left"))
    assert said == ["it can't pull out to the left: the sides look that way"]


def test_a_stay_says_how_far() -> None:
    boards = {
        "side": Board((200, 300, 20), along="up", face="left"),
        "lid": Board((400, 300, 18), along="right", face="up", at=(0, 0, 200)),
    }
    text = project_text(boards, "kind: stay, cut_in: [side back], takes: [lid back], opens: 95 degrees")
    moves = plan_of(text).joints["corner"].moves[0]
    assert (moves.how, moves.stays, moves.goes) == ("is held", "L/side", "L/lid")
    assert moves.angle == 95


@pytest.mark.parametrize("opens", ["far", "0", "400 degrees", "-5"])
def test_an_angle_that_is_none(opens: str) -> None:
    _, said = understood(door(f"opens: {opens}"))
    assert said == [f"{opens} is not an angle"]
