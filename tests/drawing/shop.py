"""A little shop for the tests: parts by their box and cuts, copies put in place by trade words."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from benchalong.ground.lengths import Point3
from benchalong.plan.model import Circle, Corner, Cut, Outline, Part, Prism, Turn

WAYS: dict[str, tuple[int, int, int]] = {
    "right": (1, 0, 0),
    "left": (-1, 0, 0),
    "back": (0, 1, 0),
    "front": (0, -1, 0),
    "up": (0, 0, 1),
    "down": (0, 0, -1),
}

Number = int | Fraction


@dataclass(frozen=True)
class PlacedCopy:
    """As the workings' copies."""

    part: str
    mark: str
    assemblies: tuple[str, ...]
    turn: Turn
    at: Point3


def slot(axis: str, first: Sequence[Number], second: Sequence[Number], start: Number, end: Number) -> Prism:
    """A straight-sided body: from and to in the two directions square to the axis, in their order."""
    (a, b), (c, d) = first, second
    corners = tuple(Corner((Fraction(x), Fraction(y))) for x, y in ((a, c), (b, c), (b, d), (a, d)))
    return Prism(axis, Outline(corners), Fraction(start), Fraction(end))  # type: ignore[arg-type]


def bore(axis: str, centre: Sequence[Number], diameter: Number, start: Number, end: Number) -> Prism:
    x, y = centre
    circle = Circle((Fraction(x), Fraction(y)), Fraction(diameter))
    return Prism(axis, circle, Fraction(start), Fraction(end))  # type: ignore[arg-type]


def part(name: str, length: Number, width: Number, thickness: Number, *takes: Prism) -> Part:
    cuts = tuple(Cut("groove", "groove", ("face",), "", (), (prism,)) for prism in takes)
    box = Fraction(thickness), Fraction(width), Fraction(length)
    return Part(name, name.replace("_", " ").capitalize(), "oak", *box, 1, (), cuts)


def turn(along: str, face: str) -> Turn:
    u, n = WAYS[along], WAYS[face]
    d = (-n[0], -n[1], -n[2])
    v = (d[1] * u[2] - d[2] * u[1], d[2] * u[0] - d[0] * u[2], d[0] * u[1] - d[1] * u[0])
    return ((u[0], v[0], d[0]), (u[1], v[1], d[1]), (u[2], v[2], d[2]))


def put(
    one: Part,
    mark: str,
    at: Sequence[Number],
    along: str,
    face: str,
    *,
    within: tuple[str, ...] = ("piece",),
    mirrored: bool = False,
) -> PlacedCopy:
    """The copy whose room starts `at` its left, front, bottom corner; mirrored left to right in place."""
    way = turn(along, face)
    if mirrored:
        way = ((-way[0][0], -way[0][1], -way[0][2]), way[1], way[2])
    low = [sum(min(0, row[k]) * one.box[k] for k in range(3)) for row in way]
    x, y, z = (Fraction(at[i]) - low[i] for i in range(3))
    return PlacedCopy(one.id, mark, within, way, (x, y, z))
