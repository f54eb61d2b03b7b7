"""The room between two joined solids is the play their joint states: at random sizes, in both hands, turned.

It is measured by moving one solid towards the other until they clash, and again as the plan check measures
it for the pages; both must be what was typed.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction

import pytest
from hypothesis import given, settings, strategies
from hypothesis.strategies import DrawFn, SearchStrategy, composite, integers, sampled_from

from benchalong.plan.model import Plan, Turn
from benchalong.plan.turns import UNTURNED, WAYS, turned
from benchalong.workings.fit import Fit
from benchalong.workings.meetings import MEETINGS
from benchalong.workings.order import WORKINGS
from benchalong.workings.working import work_all
from plan.joints.shop import (
    Board,
    Number,
    as_typed,
    clashes,
    eighths,
    plan_of,
    project_text,
    shared,
    standing,
    turns,
)

FURTHEST = 8.0
"""In mm: more room than this isn't measured."""
EXACTLY = 2e-3
"""In mm, of what is measured by moving."""
STEPS = 14
SURFACE = 2e-4
"""In mm: what two solids share counts as a clash when it is thicker than this over a square cm."""


def plays(most: int = 1) -> SearchStrategy[Fraction]:
    """Up to so many mm, by 64ths."""
    return integers(0, 64 * most).map(lambda n: Fraction(n, 64))


@dataclass(frozen=True)
class Corner:
    """Two boards and what their joint states."""

    boards: Mapping[str, Board]
    joint: str
    states: Mapping[str, Number]
    """By way in the unturned corner, the room that the second board has to move so."""
    fit: Mapping[str, tuple[Number, Number] | Number]
    """What the plan check measures: `end`, `slope`, and the two sides of `thickness`, `width`, `length`."""


@composite
def tongues(draw: DrawFn) -> Corner:
    width, depth = draw(eighths(5, 9)), draw(eighths(6, 15))
    play, end_play = draw(plays()), draw(plays(3))
    stopped = draw(sampled_from(["", ", stopped: end b, stop_by: 15", ", stopped: both ends, stop_by: 40"]))
    boards = {
        "stile": Board((400, 60, 20), along="up", face="front"),
        "rail": Board((300, 60, 20), along="right", face="front", at=(60 - depth + end_play, 0, 100)),
    }
    joint = f"kind: tongue and groove, cut_in: [stile edge b], takes: [rail end a], width: {as_typed(width)}"
    return Corner(
        boards,
        f"{joint}, depth: {as_typed(depth)}, {_both(play, end_play)}{stopped}",
        {"front": play, "back": play, "left": 0},
        {"end": end_play, "thickness": (play, play)},
    )


@composite
def dadoes(draw: DrawFn) -> Corner:
    depth, thick = draw(eighths(5, 12)), draw(eighths(8, 20))
    play, end_play = draw(plays()), draw(plays(3))
    boards = {
        "side": Board((400, 200, 20), along="up", face="left"),
        "shelf": Board((300, 200, thick), along="right", face="up", at=(20 - depth + end_play, 0, 150)),
    }
    stopped = draw(sampled_from(["", ", stopped: edge a, stop_by: 12", ", stopped: edge b, stop_by: 25"]))
    joint = f"kind: dado, cut_in: [side back], takes: [shelf end a], depth: {as_typed(depth)}"
    return Corner(
        boards,
        f"{joint}, {_both(play, end_play)}{stopped}",
        {"up": play, "down": play, "left": 0 if stopped else end_play},  # a notch's shoulder closes
        {"end": end_play, "thickness": (play, play)},
    )


@composite
def tenons(draw: DrawFn) -> Corner:
    kind, play = draw(sampled_from(["stub", "through", "haunched"])), draw(plays())
    end_play = Fraction(0) if kind == "through" else draw(plays(3))
    depth = Fraction(60) if kind == "through" else draw(eighths(15, 45))
    width, thick = draw(eighths(40, 90)), draw(eighths(4, 10))
    up = 400 - width if kind == "haunched" else draw(eighths(10, 300))
    boards = {
        "stile": Board((400, 60, 22), along="up", face="front"),
        "rail": Board((300, width, 20), along="right", face="front", at=(60 - depth + end_play, 1, up)),
    }
    sizes = "" if kind == "through" else f", depth: {as_typed(depth)}, end_play: {as_typed(end_play)}"
    joint = "kind: mortise and tenon, cut_in: [stile edge b], takes: [rail end a]"
    states = {"front": play, "back": play, "left": Fraction(0), "down": play}
    fit: dict[str, tuple[Number, Number] | Number] = {"thickness": (play, play)}
    return Corner(
        boards,
        f"{joint}, tenon: {kind}, thickness: {as_typed(thick)}, play: {as_typed(play)}{sizes}",
        states if kind == "haunched" else states | {"up": play},
        fit if kind != "stub" else fit | {"end": end_play, "width": (play, play)},
    )


@composite
def laps(draw: DrawFn) -> Corner:
    play, depth = draw(plays()), draw(eighths(4, 18))
    boards = {
        "post": Board((400, 60, 22), along="up", face="front"),
        "rail": Board((300, 70, 22), along="right", face="front", at=(-100, 0, 200)),
    }
    joint = f"kind: half lap, cut_in: [rail face], takes: [post back], depth: {as_typed(depth)}"
    return Corner(
        boards,
        f"{joint}, play: {as_typed(play)}",
        {"left": play, "right": play, "up": play, "down": play, "front": 0},
        {"width": (play, play), "length": (play, play)},
    )


@composite
def fingers(draw: DrawFn) -> Corner:
    play, count, finger = draw(plays()), draw(integers(3, 9)), draw(eighths(5, 15))
    side, top = draw(eighths(6, 20)), draw(eighths(6, 20))
    boards = {
        "side": Board((200, count * finger, side), along="up", face="left"),
        "top": Board((300, count * finger, top), along="right", face="up", at=(0, 0, 200 - top)),
    }
    joint = f"kind: box joint, cut_in: [side end b], takes: [top end a], finger: {as_typed(finger)}"
    return Corner(
        boards,
        f"{joint}, play: {as_typed(play)}",
        {"front": play, "back": play, "left": 0, "down": 0},
        {"width": (play, play)},
    )


@composite
def dovetails(draw: DrawFn) -> Corner:
    play, tails = draw(plays()), draw(integers(1, 5))
    front, side = draw(eighths(14, 24)), draw(eighths(8, 16))
    kind, slope = draw(sampled_from(["through", "half-blind"])), draw(sampled_from(["1/8", "1/6"]))
    lap = Fraction(0) if kind == "through" else Fraction(5)
    boards = {
        "front": Board((400, 40 * tails, front), along="right", face="front"),
        "side": Board((300, 40 * tails, side), along="back", face="right", at=(400 - side, lap, 0)),
    }
    sizes = f"dovetail: {kind}, tails: {tails}, slope: {slope}, pin: 6, play: {as_typed(play)}"
    return Corner(
        boards,
        f"kind: dovetail, cut_in: [front end b], takes: [side end a], {sizes}{', lap: 5' if lap else ''}",
        {"up": play, "down": play, "left": 0},
        {},
    )


FAMILIES: Mapping[str, Callable[[], SearchStrategy[Corner]]] = {
    "tongue and groove": tongues,
    "dado": dadoes,
    "mortise and tenon": tenons,
    "half lap": laps,
    "box joint": fingers,
    "dovetail": dovetails,
}


@pytest.mark.parametrize("family", FAMILIES)
@given(data=strategies.data(), turn=turns, hand=sampled_from("LR"))
@settings(max_examples=15, deadline=None)
def test_the_room_is_the_play_stated(family: str, data: strategies.DataObject, turn: Turn, hand: str) -> None:
    assert_states(data.draw(FAMILIES[family]()), turn, hand)


DOOR = """
title: Door
units: millimetre
piece: pair
stock: {oak: {kind: board, thickness: 20}}
parts:
  upright: {stock: oak, length: 500, width: 60}
  rail: {stock: oak, length: 180 + 2*frame.tongue_length, width: 60}
  panel: {stock: oak, thickness: frame.width - 0.2 mm, width: fits frame, length: fits frame}
joints:
  frame:
    {kind: tongue and groove, cut_in: [upright inner edge, rail inner edge], takes: [rail both ends],
     floats: [panel], width: 6, depth: 12, end_play: 1, panel_side_play: SIDE, panel_end_play: END}
assemblies:
  door:
    place:
      - {part: upright, mark: H, at: [0, 0, 0], along: up, face: front}
      - {part: upright, mark: M, at: [240, 0, 0], along: up, face: front}
      - {part: rail, mark: T, at: [60 - frame.tongue_length, 0, 440], along: right, face: front}
      - {part: rail, mark: B, at: [60 - frame.tongue_length, 0, 0], along: right, face: front}
      - {part: panel, mark: P, along: up, face: front}
  pair:
    place:
      - {assembly: door, mark: L, at: [0, 0, 0]}
      - {assembly: door, mark: R, at: [303, 0, 0], mirror: left to right}
stages: {all: {title: All}}
"""


@given(side=plays(5), end=plays(5), hand=sampled_from("LR"))
@settings(max_examples=15, deadline=None)
def test_a_panel_has_the_room_stated_at_its_edges_and_ends(side: Fraction, end: Fraction, hand: str) -> None:
    plan = plan_of(DOOR.replace("SIDE", as_typed(side)).replace("END", as_typed(end)))
    assert clashes(plan) == []
    for still, way, room in (("H", "left", side), ("M", "right", side), ("T", "up", end), ("B", "down", end)):
        found = room_to_move(plan, f"{hand}/{still}", f"{hand}/P", way, UNTURNED)
        assert found == pytest.approx(float(room), abs=EXACTLY), way
    for way in ("front", "back"):
        found = room_to_move(plan, f"{hand}/H", f"{hand}/P", way, UNTURNED)
        assert found == pytest.approx(0.1, abs=EXACTLY), way


def _both(play: Fraction, end_play: Fraction) -> str:
    return f"play: {as_typed(play)}, end_play: {as_typed(end_play)}"


def assert_states(corner: Corner, turn: Turn, hand: str) -> None:
    plan = plan_of(project_text(corner.boards, corner.joint, turn))
    assert clashes(plan) == []
    still, moves = (f"{hand}/{name}" for name in corner.boards)
    for way, room in corner.states.items():
        assert room_to_move(plan, still, moves, way, turn) == pytest.approx(float(room), abs=EXACTLY), way
    (fit,) = (fit for fit in measured(plan) if still in fit.marks)
    for key, said in corner.fit.items():
        found = fit.end if key == "end" else fit.play.get(key)
        assert found == said, key


def measured(plan: Plan) -> tuple[Fit, ...]:
    return work_all(plan, WORKINGS)[MEETINGS]["corner"].fits


def room_to_move(plan: Plan, still: str, moves: str, way: str, turn: Turn) -> float:
    """How far the second goes before the two share more than a touch, in mm; the right hand is mirrored."""
    one, other = standing(plan, still), standing(plan, moves)
    x, y, z = turned(tuple(map(Fraction, WAYS[way])), turn)  # type: ignore[arg-type]
    step = (float(-x if still.startswith("R/") else x), float(y), float(z))

    def is_clash(by: float) -> bool:
        return shared(one, other.translate([by * value for value in step])) > 100 * SURFACE

    low, high = 0.0, FURTHEST
    assert is_clash(high), f"nothing in the way {way}"
    for _ in range(STEPS):
        middle = (low + high) / 2
        low, high = (low, middle) if is_clash(middle) else (middle, high)
    return high
