"""Is a shaped outline one that a saw can follow: three corners, no crossing, room for each rounding?"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations
from math import hypot

from benchalong.ground.lengths import Length, Point2
from benchalong.plan.model import Corner, Outline

CLOSE = 1e-6
"""In mm. Roundings may come this much beyond meeting, since how far they reach is no exact number."""


def trouble_with(outline: Outline) -> tuple[str, str] | None:
    """What is wrong and what to do about it; None when nothing is."""
    points = [corner.at for corner in outline.corners]
    if len(points) < 3:
        return "has fewer than three corners", "give it three corners or more"
    doubled = _doubled(points)
    if doubled is not None:
        return f"has two corners in one place, the {_nth(doubled)} and the next", "leave one of them out"
    if _crosses(points):
        return "crosses itself", "give its corners in order, once round"
    tight = _too_round(outline.corners)
    if tight is not None:
        return f"has no room for the rounding of its {_nth(tight)} corner", "make the radius smaller"
    return None


def _doubled(points: Sequence[Point2]) -> int | None:
    return next((number for number, (a, b) in enumerate(_sides(points)) if a == b), None)


def _sides(points: Sequence[Point2]) -> list[tuple[Point2, Point2]]:
    return list(zip(points, [*points[1:], points[0]], strict=True))


def _crosses(points: Sequence[Point2]) -> bool:
    """Whether two sides that aren't neighbours have a point in common, or two neighbours fold back."""
    sides = _sides(points)
    for (i, one), (j, other) in combinations(enumerate(sides), 2):
        if j == i + 1 or (i == 0 and j == len(sides) - 1):
            first, second = (one, other) if j == i + 1 else (other, one)
            if _folds(first, second):
                return True
        elif _touch(one, other):
            return True
    return False


def _folds(first: tuple[Point2, Point2], second: tuple[Point2, Point2]) -> bool:
    """Whether the path turns right back at the corner between two sides."""
    (a, b), (_, c) = first, second
    return _side_of(a, b, c) == 0 and (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]) < 0


def _touch(one: tuple[Point2, Point2], other: tuple[Point2, Point2]) -> bool:
    (a, b), (c, d) = one, other
    turns = (_side_of(a, b, c), _side_of(a, b, d), _side_of(c, d, a), _side_of(c, d, b))
    if turns[0] * turns[1] < 0 and turns[2] * turns[3] < 0:
        return True
    ends = ((turns[0], one, c), (turns[1], one, d), (turns[2], other, a), (turns[3], other, b))
    return any(turn == 0 and _is_between(point, *side) for turn, side, point in ends)


def _side_of(a: Point2, b: Point2, point: Point2) -> Length:
    """Above 0 to one side of the line, below 0 to the other, 0 on it."""
    return (b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0])


def _is_between(point: Point2, a: Point2, b: Point2) -> bool:
    return all(min(a[axis], b[axis]) <= point[axis] <= max(a[axis], b[axis]) for axis in (0, 1))


def _too_round(corners: Sequence[Corner]) -> int | None:
    """The first corner whose rounding, with its neighbour's, is longer than the side between them."""
    reaches = [_reach(corners, number) for number in range(len(corners))]
    for number, (corner, following) in enumerate(zip(corners, [*corners[1:], corners[0]], strict=True)):
        side = hypot(*(float(b - a) for a, b in zip(corner.at, following.at, strict=True)))
        both = reaches[number] + reaches[(number + 1) % len(corners)]
        if both > side + CLOSE:
            return (
                number
                if reaches[number] >= reaches[(number + 1) % len(corners)]
                else (number + 1) % len(corners)
            )
    return None


def _reach(corners: Sequence[Corner], number: int) -> float:
    """How far from the corner the arc begins: radius / tan(half the angle between the sides)."""
    corner = corners[number]
    if not corner.radius:
        return 0.0
    x, y = corner.at
    (ax, ay), (bx, by) = corners[number - 1].at, corners[(number + 1) % len(corners)].at
    u, v = (float(ax - x), float(ay - y)), (float(bx - x), float(by - y))
    cross, dot = abs(u[0] * v[1] - u[1] * v[0]), u[0] * v[0] + u[1] * v[1]
    lengths = hypot(*u) * hypot(*v)
    return float(corner.radius) * (lengths + dot) / cross if cross else 0.0


def _nth(number: int) -> str:
    words = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")
    return words[number] if number < len(words) else f"{number + 1}th"
