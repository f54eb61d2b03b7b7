"""Where two flat sides lie against each other, and a row of points spread evenly over it."""

from __future__ import annotations

from math import ceil

from benchalong.ground.lengths import Length, Point3
from benchalong.plan.joints.member import Side
from benchalong.plan.model import Axis
from benchalong.plan.turns import Room, Way, axis_of


def contact(one: Side, other: Side) -> Room:
    """The room that lies over both sides, as far as both parts reach behind them."""
    rooms = (one.member.room, other.member.room)
    near = [max(room[0][n] for room in rooms) for n in range(3)]
    far = [min(room[1][n] for room in rooms) for n in range(3)]
    return ((near[0], near[1], near[2]), (far[0], far[1], far[2]))


def longest(room: Room, looks: Way) -> int:
    """The way, of the two square to where a side looks, in which it is longer."""
    flat = [n for n in range(3) if n != axis_of(looks)]
    return max(flat, key=lambda n: (room[1][n] - room[0][n], -n))


def row_of_points(room: Room, looks: Way, places: tuple[Length, ...]) -> tuple[Point3, ...]:
    """Points in the middle of its width, so far along its length."""
    run = longest(room, looks)
    middle = [(near + far) / 2 for near, far in zip(*room, strict=True)]
    return tuple(_with(middle, run, room[0][run] + place) for place in places)


def length_of(room: Room, looks: Way) -> Length:
    run = longest(room, looks)
    return room[1][run] - room[0][run]


def spread(length: Length, *, from_end: Length, every: Length, count: int | None) -> tuple[Length, ...]:
    """Places along a length, the same from both ends: so many, or as many as leave no more than `every`
    between two. One alone, or where there is no room for two, sits in the middle."""
    between = length - 2 * from_end
    number = count or (ceil(between / every) + 1 if between > 0 else 1)
    if number == 1 or between <= 0:
        return (length / 2,)
    return tuple(from_end + between * n / (number - 1) for n in range(number))


def on_surface(point: Point3, side: Side) -> dict[Axis, Length]:
    """A point of the assembly in the part's own directions."""
    return {axis: low for axis, (low, _) in side.member.own((point, point)).items()}


def _with(point: list[Length], axis: int, value: Length) -> Point3:
    changed = [value if n == axis else point[n] for n in range(3)]
    return (changed[0], changed[1], changed[2])
