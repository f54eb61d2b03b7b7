"""A leaf let into each of two sides, so that the one turns on the other.

What is cut in stays where it is, what it takes turns. The barrel stands at the front of what turns, unless it
is said to look another way, in the middle of the gap; that is the axis. Each side gives up half of what
the closed hinge is thicker than the gap.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from benchalong.ground.lengths import METRE, Length, Point3
from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.joints.families.holes import holes
from benchalong.plan.joints.families.opening import opens_by
from benchalong.plan.joints.family import CantMove, Family, Given, Loss
from benchalong.plan.joints.member import Side
from benchalong.plan.model import Moves
from benchalong.plan.turns import WAYS, Room, Way, axis_of

TALL = METRE
"""What is longer along its hinges takes three: common practice, no source."""
RIGHT_ANGLE = 90


@dataclass(frozen=True)
class _Lies:
    """How a hinge lies between two sides, in the directions of their assembly."""

    looks: int
    """The axis in which the sides look at each other."""
    line: int
    """The axis that it turns about."""
    barrel: Way


def gains(joint: Given, side: Side, partners: tuple[Side, ...]) -> Iterable[Loss]:
    """In what stays."""
    for partner in partners:
        yield from _gains(joint, side, turns=partner)


def gains_in_what_turns(joint: Given, side: Side, partners: tuple[Side, ...]) -> Iterable[Loss]:
    if partners:
        yield from _gains(joint, side, turns=side)


def turning(joint: Given, stays: Side, turns: Side) -> Moves:
    """The axis in the barrel; it opens towards where the barrel looks."""
    lies, room = _lies(joint, stays), turns.member.room
    at = [near + (far - near) / 2 for near, far in zip(*room, strict=True)]
    at[axis_of(lies.barrel)] = _plane(room, lies.barrel)
    at[lies.looks] = (_plane(room, turns.looks[0]) + _plane(stays.member.room, stays.looks[0])) / 2
    away = turns.looks[0][lies.looks] * -1
    way = _cross(_unit(lies.looks, away), lies.barrel)
    return Moves("turns", "", "", (at[0], at[1], at[2]), way, opens_by(joint) or Length(RIGHT_ANGLE))


def _gains(joint: Given, side: Side, *, turns: Side) -> Iterable[Loss]:
    lies = _lies_or_none(joint, side)
    if lies is None:
        return
    surface = SURFACES[side.surfaces[0]]
    for room in _leaves(joint, turns.member.room, lies):
        own = side.member.own(room)
        run, across = own[surface.run], own[surface.across]
        lengths = {
            "at": run[0],
            "length": run[1] - run[0],
            "across": across[0],
            "width": across[1] - across[0],
            "depth": joint["gain"],
        }
        yield Loss("mortise", side.surfaces, lengths)
        yield from holes(joint, side, _screw_points(joint, side, room, lies))


def _screw_points(joint: Given, side: Side, leaf: Room, lies: _Lies) -> Iterable[Point3]:
    """Where its screws go in, counted from the middle of the leaf and away from the barrel."""
    barrel, looks = axis_of(lies.barrel), axis_of(side.looks[0])
    for bore in joint.bores:
        point = [(near + far) / 2 for near, far in zip(*leaf, strict=True)]
        point[lies.line] += bore.along
        point[barrel] -= lies.barrel[barrel] * bore.across
        point[looks] = _plane(side.member.room, side.looks[0])
        yield point[0], point[1], point[2]


def _lies(joint: Given, side: Side) -> _Lies:
    said = joint.words.get("barrel", "front")
    barrel, looks = WAYS[said], axis_of(side.looks[0])
    if barrel[looks]:
        others = [way for way in WAYS if not WAYS[way][looks]]
        message = f"the barrel can't look to the {said} of sides that look {_called(side.looks[0])}"
        raise CantMove("barrel", message, f"barrel: {', '.join(others[:-1])} or {others[-1]}")
    line = next(n for n in range(3) if n != looks and not barrel[n])
    return _Lies(looks, line, barrel)


def _leaves(joint: Given, room: Room, lies: _Lies) -> Iterable[Room]:
    """The room each leaf takes up over the side, flat as a sheet: it is as deep as the gain."""
    barrel = axis_of(lies.barrel)
    edge = _plane(room, lies.barrel)
    inner = edge - lies.barrel[barrel] * joint["width"]
    for start in _starts(joint, room[0][lies.line], room[1][lies.line]):
        near, far = list(room[0]), list(room[0])
        near[lies.line], far[lies.line] = start, start + joint["length"]
        near[barrel], far[barrel] = min(edge, inner), max(edge, inner)
        yield (near[0], near[1], near[2]), (far[0], far[1], far[2])


def _starts(joint: Given, near: Length, far: Length) -> list[Length]:
    """Where each hinge begins: two the same from both ends, a third in the middle; more spread evenly."""
    count = int(joint.words.get("count") or (3 if far - near > TALL else 2))
    first, last = near + joint["set"], far - joint["set"] - joint["length"]
    if count == 1:
        return [(near + far - joint["length"]) / 2]
    return [first + (last - first) * n / (count - 1) for n in range(count)]


def _plane(room: Room, way: Way) -> Length:
    """Where the side of a room lies that looks this way."""
    axis = axis_of(way)
    return room[way[axis] > 0][axis]


def _unit(axis: int, sign: int) -> Way:
    x, y, z = (sign * (n == axis) for n in range(3))
    return (x, y, z)


def _cross(a: Way, b: Way) -> Way:
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def _called(way: Way) -> str:
    return next(name for name, other in WAYS.items() if other == way)


def how_many(joint: Given, _: Side, turns: Side) -> int:
    """As many as stand along what turns."""
    lies, room = _lies_or_none(joint, turns), turns.member.room
    return len(_starts(joint, room[0][lies.line], room[1][lies.line])) if lies else 0


def _lies_or_none(joint: Given, side: Side) -> _Lies | None:
    try:
        return _lies(joint, side)
    except CantMove:
        return None


FAMILY = Family(cut_in=gains, takes=gains_in_what_turns, apart="gap", moves=turning, pieces=how_many)
