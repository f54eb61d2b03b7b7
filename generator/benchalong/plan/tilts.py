"""Turns that aren't square: what is turned after it is placed, by degrees, seen from a side.

Sines and cosines are kept as the plan's arithmetic keeps them (`roots.py`), so a turn is a matrix of
fractions and everything that reads the plan gets the same numbers. What lies under one such turn keeps its
own exact places; only the way from there into the room is rounded, to 1e-12.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
from itertools import product
from typing import cast

from benchalong.ground.lengths import Length, Point3
from benchalong.plan.model import Rows, Tilt, Turn
from benchalong.plan.roots import cosine, sine
from benchalong.plan.turns import Room, moved, turned

SEEN_FROM: Mapping[str, tuple[int, int, int]] = {
    "front": (0, 2, 1),
    "back": (0, 2, -1),
    "right": (1, 2, 1),
    "left": (1, 2, -1),
    "top": (0, 1, 1),
    "bottom": (0, 1, -1),
}
"""The two axes of the room that are seen, across and up, and whether clockwise leads from the second to the
first (1) or back (-1)."""
ABOUT: Mapping[str, tuple[int, int]] = {
    "left": (0, 0),
    "right": (0, 1),
    "front": (1, 0),
    "back": (1, 1),
    "bottom": (2, 0),
    "top": (2, 1),
}
"""A side of a room: its axis, and whether it is the near or the far one."""


def rows_of(degrees: Fraction, seen_from: str) -> Rows:
    """The turn by so many degrees clockwise."""
    first, second, sign = SEEN_FROM[seen_from]
    cos, sin = cosine(degrees), sign * sine(degrees)
    rows = [[Fraction(int(n == m)) for m in range(3)] for n in range(3)]
    rows[first][first], rows[first][second] = cos, sin
    rows[second][first], rows[second][second] = -sin, cos
    return as_rows(rows)


def as_rows(rows: Iterable[Iterable[Fraction | int]]) -> Rows:
    return cast(Rows, tuple(tuple(Fraction(value) for value in row) for row in rows))


def square(rows: Rows) -> Turn | None:
    """The same turn in whole numbers; None when it isn't square."""
    if any(value.denominator != 1 for row in rows for value in row):
        return None
    return cast(Turn, tuple(tuple(int(value) for value in row) for row in rows))


def point_in(room: Room, about: str) -> Point3:
    """Which point of a room stays where it is: its middle, the middle of one side, or its corner."""
    if about == "corner":
        return room[0]
    point = [(low + high) / 2 for low, high in zip(*room, strict=True)]
    if about in ABOUT:
        axis, far = ABOUT[about]
        point[axis] = room[far][axis]
    return (point[0], point[1], point[2])


def about_point(rows: Rows, point: Point3) -> Tilt:
    x, y, z = (stays - goes for stays, goes in zip(point, times(rows, point), strict=True))
    return Tilt(rows, (x, y, z))


def times(rows: Rows, point: Point3) -> Point3:
    x, y, z = (sum((a * b for a, b in zip(row, point, strict=True)), start=Length(0)) for row in rows)
    return (x, y, z)


def tilted(point: Point3, tilt: Tilt | None) -> Point3:
    return point if tilt is None else moved(times(tilt.turn, point), tilt.at)


def after_tilt(first: Tilt | None, then: Tilt | None) -> Tilt | None:
    """One after another, as one."""
    if first is None or then is None:
        return first or then
    return Tilt(_product(then.turn, first.turn), tilted(first.at, then))


def carried(tilt: Tilt | None, turn: Turn, at: Point3) -> Tilt | None:
    """The same turn of something whose surroundings are put elsewhere: point -> turn * point + at."""
    if tilt is None:
        return None
    rows, back = as_rows(turn), as_rows(zip(*turn, strict=True))
    turned_so = _product(_product(rows, tilt.turn), back)
    moves, x = moved(turned(tilt.at, turn), at), times(turned_so, at)
    return Tilt(turned_so, (moves[0] - x[0], moves[1] - x[1], moves[2] - x[2]))


def carried_back(tilt: Tilt | None) -> Tilt | None:
    """The turn back again: a turn's rows are its columns then, to 1e-12."""
    if tilt is None:
        return None
    back = as_rows(zip(*tilt.turn, strict=True))
    x, y, z = times(back, tilt.at)
    return Tilt(back, (-x, -y, -z))


def turned_rows(then: Turn, rows: Rows, first: Turn) -> Rows:
    """A turn between two square ones."""
    return _product(_product(as_rows(then), rows), as_rows(first))


def corners_of(room: Room) -> tuple[Point3, ...]:
    return tuple(cast(Point3, corner) for corner in product(*zip(*room, strict=True)))


def room_around(points: Iterable[Point3]) -> Room:
    """The least room that holds the points."""
    low, high = zip(*((min(values), max(values)) for values in zip(*points, strict=True)), strict=True)
    return (cast(Point3, low), cast(Point3, high))


def tilted_room(room: Room, tilt: Tilt | None) -> Room:
    """What a box takes up in the room once it is turned."""
    return room if tilt is None else room_around(tilted(corner, tilt) for corner in corners_of(room))


def _product(one: Rows, other: Rows) -> Rows:
    columns = tuple(zip(*other, strict=True))
    return as_rows(
        [sum((a * b for a, b in zip(row, column, strict=True)), start=Fraction(0)) for column in columns]
        for row in one
    )
