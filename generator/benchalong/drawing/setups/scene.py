"""A sketch being put together: boxes, words and sizes, in px, down the sheet."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from itertools import pairwise

from benchalong.drawing.board import Rect, Segment, around
from benchalong.ground.lengths import Length

SPACING = 5.0
"""Between hatching lines, px."""
GAP, ZIG, OVER = 7.0, 3.0, 4.0
"""Of a break: between its two lines, their zigzag, how far they run over; px."""


@dataclass(frozen=True)
class Size:
    """A number to stand outside the sketch."""

    key: str
    length: Length
    is_upright: bool
    start: float
    end: float
    near: float
    far: float
    """Its feature on the other direction: extension lines start there."""


@dataclass(frozen=True)
class Said:
    text: str
    spot: tuple[float, float]
    is_upright: bool = False


@dataclass
class Scene:
    """Lines by kind, words, sizes."""

    lines: dict[str, list[Segment]] = field(default_factory=dict)
    words: list[Said] = field(default_factory=list)
    sizes: list[Size] = field(default_factory=list)
    name: str = ""
    """Over the sketch, where there are several."""

    def add(self, kind: str, *lines: Segment) -> None:
        self.lines.setdefault(kind, []).extend(line for line in lines if line[:2] != line[2:])

    def box(self, kind: str, room: Rect) -> None:
        left, top, right, bottom = room
        self.add(
            kind,
            (left, top, right, top),
            (right, top, right, bottom),
            (left, bottom, right, bottom),
            (left, top, left, bottom),
        )

    def hatched(self, room: Rect, *, other: bool = False) -> None:
        """A box filled with slanting lines; `other` slants the other way."""
        self.box("visible", room)
        self.add("cut-face", *hatching(room, other=other))

    def piece(self, room: Rect, breaks: Iterable[float] = ()) -> None:
        """The workpiece, its long stretches broken by upright zigzags at these places."""
        left, top, right, bottom = room
        edges = [left]
        for middle in breaks:
            edges += [middle - GAP / 2, middle + GAP / 2]
            self.add(
                "break", *_zigzag(middle - GAP / 2, top, bottom), *_zigzag(middle + GAP / 2, top, bottom)
            )
        edges.append(right)
        for start, end in zip(edges[::2], edges[1::2], strict=True):
            self.add("visible", (start, top, end, top), (start, bottom, end, bottom))
        self.add("visible", (left, top, left, bottom), (right, top, right, bottom))

    def word(self, text: str, x: float, y: float, *, is_upright: bool = False) -> None:
        if text:
            self.words.append(Said(text, (x, y), is_upright))

    def across(self, key: str, value: Length, x: tuple[float, float], y: tuple[float, float]) -> None:
        """A level size over a feature that reaches from y to y."""
        self.sizes.append(Size(key, value, False, min(x), max(x), min(y), max(y)))

    def up(self, key: str, value: Length, y: tuple[float, float], x: tuple[float, float]) -> None:
        """An upright size beside a feature that reaches from x to x."""
        self.sizes.append(Size(key, value, True, min(y), max(y), min(x), max(x)))

    @property
    def extent(self) -> Rect:
        rooms = [
            (min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))
            for lines in self.lines.values()
            for x0, y0, x1, y1 in lines
        ]
        return around(rooms)


def hatching(room: Rect, *, other: bool = False) -> list[Segment]:
    """Lines at half a right angle, clipped to a box, on one grid for the whole sheet."""
    left, top, right, bottom = room
    found: list[Segment] = []
    # Along a line x + y (or x - y) stays the same.
    low, high = (left - bottom, right - top) if other else (left + top, right + bottom)
    step = SPACING * 2**0.5
    number = int(low // step) + 1
    while number * step < high:
        level = number * step
        x0, x1 = (
            (max(left, level + top), min(right, level + bottom))
            if other
            else (max(left, level - bottom), min(right, level - top))
        )
        if x0 < x1:
            y0, y1 = (x0 - level, x1 - level) if other else (level - x0, level - x1)
            found.append((x0, y0, x1, y1))
        number += 1
    return found


def _zigzag(x: float, top: float, bottom: float) -> list[Segment]:
    middle = (top + bottom) / 2
    points = [
        (x, top - OVER),
        (x, middle - 5),
        (x + ZIG, middle - 2),
        (x - ZIG, middle + 2),
        (x, middle + 5),
        (x, bottom + OVER),
    ]
    return [(*a, *b) for a, b in pairwise(points)]
