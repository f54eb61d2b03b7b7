"""Square turns and mirrors in the room: x to the right, y to the back, z up."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import product
from typing import TypeAlias

from benchalong.ground.lengths import Length, Point3
from benchalong.plan.model import Turn

Way: TypeAlias = tuple[int, int, int]
Room: TypeAlias = tuple[Point3, Point3]
"""The least and the greatest corner of the room something takes up."""

WAYS: Mapping[str, Way] = {
    "right": (1, 0, 0),
    "left": (-1, 0, 0),
    "back": (0, 1, 0),
    "front": (0, -1, 0),
    "up": (0, 0, 1),
    "down": (0, 0, -1),
}
UNTURNED: Turn = ((1, 0, 0), (0, 1, 0), (0, 0, 1))
MIRRORS: Mapping[str, Turn] = {
    "": UNTURNED,
    "left to right": ((-1, 0, 0), (0, 1, 0), (0, 0, 1)),
    "front to back": ((1, 0, 0), (0, -1, 0), (0, 0, 1)),
    "top to bottom": ((1, 0, 0), (0, 1, 0), (0, 0, -1)),
}


def are_square(along: str, face: str) -> bool:
    """Whether the length can point one way while the face looks the other."""
    return not any(a and b for a, b in zip(WAYS[along], WAYS[face], strict=True))


def turn_of_part(along: str, face: str) -> Turn:
    """The turn that points the length `along` and makes the face look to `face`; the two must be square."""
    length = WAYS[along]
    down = opposite(WAYS[face])
    across = _cross(down, length)
    return ((length[0], across[0], down[0]), (length[1], across[1], down[1]), (length[2], across[2], down[2]))


def way_through(way: str, mirror: Turn) -> str:
    """What looks this way after the mirror looked the way that is returned before it: `along` and `face`
    say how a mirrored part ends up, as they do for any other."""
    seen = tuple(sum(row[n] * WAYS[way][n] for n in range(3)) for row in mirror)
    return next(name for name, other in WAYS.items() if other == seen)


def after(first: Turn, then: Turn) -> Turn:
    """One turn after another, as one."""
    rows = [tuple(sum(row[k] * first[k][column] for k in range(3)) for column in range(3)) for row in then]
    return (_way(rows[0]), _way(rows[1]), _way(rows[2]))


def turned(point: Point3, turn: Turn) -> Point3:
    x, y, z = (_along_row(row, point) for row in turn)
    return (x, y, z)


def turned_way(way: Way, turn: Turn) -> Way:
    x, y, z = (sum(entry * part for entry, part in zip(row, way, strict=True)) for row in turn)
    return (x, y, z)


def moved(point: Point3, by: Point3) -> Point3:
    return (point[0] + by[0], point[1] + by[1], point[2] + by[2])


def room_of(room: Room, turn: Turn) -> Room:
    """The room taken up after turning."""
    corners = [turned((x, y, z), turn) for x, y, z in product(*zip(*room, strict=True))]
    least, greatest = ([pick(corner[axis] for corner in corners) for axis in range(3)] for pick in (min, max))
    return ((least[0], least[1], least[2]), (greatest[0], greatest[1], greatest[2]))


def around(rooms: list[Room]) -> Room:
    """The room that holds them all; there must be one at least."""
    least = [min(room[0][axis] for room in rooms) for axis in range(3)]
    greatest = [max(room[1][axis] for room in rooms) for axis in range(3)]
    return ((least[0], least[1], least[2]), (greatest[0], greatest[1], greatest[2]))


def _along_row(row: Way, point: Point3) -> Length:
    """A row of a square turn has one entry, so no sum is needed."""
    for entry, value in zip(row, point, strict=True):
        if entry:
            return value if entry > 0 else -value
    return Length(0)


def opposite(way: Way) -> Way:
    return (-way[0], -way[1], -way[2])


def axis_of(way: Way) -> int:
    """Along which a way lies that is square to the other two: 0 across, 1 to the back, 2 up."""
    return next(n for n in range(3) if way[n])


def is_nearer(room: Room, way: Way, other: Room) -> bool:
    """Whether the side that looks this way lies as near to another room as the side behind it: the far end
    of a part whose near end stands in the wood doesn't go into it."""
    n = axis_of(way)

    def away(plane: Length) -> Length:
        return max(other[0][n] - plane, plane - other[1][n], Length(0))

    return away(room[way[n] > 0][n]) <= away(room[way[n] < 0][n])


def _cross(a: Way, b: Way) -> Way:
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def _way(row: tuple[int, ...]) -> Way:
    return (row[0], row[1], row[2])
