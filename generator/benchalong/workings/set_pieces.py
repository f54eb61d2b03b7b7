"""One triangle drawn across parts that lie side by side, cut into the piece of each.

Lengths are floating numbers in mm: where a pencil mark stands is no size of the plan.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import accumulate, pairwise

import numpy as np

from benchalong.workings.bodies import Floats

INSET, OF_A_PART = 0.1, 0.25
"""How far the triangle stays inside the set: of the whole breadth, and at most of the outer part's."""
TALL = 1.2
"""How tall it is for its breadth, or how broad for its height where the parts lie across it."""
LEAST, MOST = 0.08, 0.3
"""Of the parts' length that it takes up."""


@dataclass(frozen=True)
class Layout:
    """Parts side by side, from left to right, from below up or from the nearest on."""

    breadths: tuple[float, ...]
    length: float
    is_row_up: bool
    """Whether the point lies in the direction in which the parts follow each other."""

    @property
    def borders(self) -> list[float]:
        return [0.0, *accumulate(self.breadths)]


def carried(layout: Layout) -> list[str]:
    """What each part has of the triangle, in words."""
    count, middle = len(layout.breadths), (len(layout.breadths) - 1) / 2
    first, last = ("base", "point") if layout.is_row_up else ("left corner", "right corner")
    if count == 2 and not layout.is_row_up:
        return ["left half", "right half"]
    between = [_between(number, layout, is_middle=number == middle) for number in range(1, count - 1)]
    return [first, *between, last]


def _between(number: int, layout: Layout, *, is_middle: bool) -> str:
    if is_middle and not layout.is_row_up:
        return "point"
    if is_middle and len(layout.breadths) == 3:
        return "middle"
    return f"{_nth(number + 1)} piece from {'the base' if layout.is_row_up else 'the left'}"


def _nth(number: int) -> str:
    ends = {1: "st", 2: "nd", 3: "rd"}
    return f"{number}{'th' if number % 100 in (11, 12, 13) else ends.get(number % 10, 'th')}"


def across_the_set(layout: Layout, centre: float) -> list[list[Floats]]:
    """For each part its lines, (2, 2): from its own lower side across it, and from its start along it."""
    corners = _corners(layout, centre)
    sides = [np.array(pair) for pair in pairwise([*corners, corners[0]])]
    found = []
    for low, high in pairwise(layout.borders):
        own = [piece for side in sides if (piece := _between_borders(side, low, high)) is not None]
        found.append([piece - np.array([low, 0.0]) for piece in own])
    return found


def _corners(layout: Layout, centre: float) -> list[tuple[float, float]]:
    """The two ends of the base, then the point: across the set, along its parts."""
    whole = layout.borders[-1]
    low = min(INSET * whole, OF_A_PART * layout.breadths[0])
    high = whole - min(INSET * whole, OF_A_PART * layout.breadths[-1])
    along = min(max(TALL * (high - low), LEAST * layout.length), MOST * layout.length)
    if layout.is_row_up:
        return [(low, centre - along / 2), (low, centre + along / 2), (high, centre)]
    tip = layout.breadths[0] if len(layout.breadths) == 2 else whole / 2
    return [(low, centre - along / 2), (high, centre - along / 2), (tip, centre + along / 2)]


def _between_borders(side: Floats, low: float, high: float) -> Floats | None:
    """What of a line lies on one part; None for nothing, or for one along another's border."""
    start, run = side[0], side[1] - side[0]
    if abs(run[0]) < 1e-9:
        return side if low <= start[0] < high else None
    first, last = sorted(((low - start[0]) / run[0], (high - start[0]) / run[0]))
    first, last = max(first, 0.0), min(last, 1.0)
    return start + np.array([[first], [last]]) * run if last - first > 1e-6 else None
