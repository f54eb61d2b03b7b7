"""One view with what has been placed round it so far, and what is still free.

Works in px with the view's own upper left corner at the origin. Rooms are kept apart by a little air;
lines that are still to come (extension lines of sizes not placed yet) are foreseen, so that words and
numbers keep out of their way where they can.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from math import hypot
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from benchalong.drawing.text import NUMBER, WORD, text_width
from benchalong.ground.lengths import Length
from benchalong.workings.bodies import Floats

Rect: TypeAlias = tuple[float, float, float, float]
"""Left, top, right, bottom."""
Segment: TypeAlias = tuple[float, float, float, float]
"""x, y, x, y."""
Spot: TypeAlias = tuple[float, float]

AIR = 2.0
"""Kept free round every number and word, in px."""


@dataclass(frozen=True)
class Number:
    """A size on the sheet."""

    what: str
    length: Length
    sign: str
    """`ø`, `R` or nothing."""
    spot: Spot
    """Middle of its base line, before it is turned."""
    is_upright: bool
    """Whether it is read from the right."""
    room: Rect
    key: str = ""
    """The letter that stands for it, when the number itself found no room."""


@dataclass(frozen=True)
class Word:
    text: str
    spot: Spot
    """Middle of its base line, before it is turned."""
    is_upright: bool
    room: Rect
    kind: str
    """Its class on the sheet."""


@dataclass(frozen=True)
class Coming:
    """Lines that will be wanted later, and what it costs to stand in their way."""

    lines: tuple[Segment, ...]
    cost: float


class Lines:
    """Many lines, quick to ask whether any runs through a room."""

    def __init__(self, rows: Floats) -> None:
        self._rows = rows.tolist()
        x, y = np.sort(rows[:, [0, 2]], axis=1), np.sort(rows[:, [1, 3]], axis=1)
        self._left, self._right = np.ascontiguousarray(x[:, 0]), np.ascontiguousarray(x[:, 1])
        self._top, self._bottom = np.ascontiguousarray(y[:, 0]), np.ascontiguousarray(y[:, 1])

    def meet(self, room: Rect) -> bool:
        return bool(self._rows) and any(
            line_meets(tuple(self._rows[i]), room) for i in self._near(room).nonzero()[0].tolist()
        )

    def crossed_by(self, line: Segment) -> int:
        """How many of them a level or upright line crosses."""
        return int(self._near(room_of(line)).sum()) if self._rows else 0

    def _near(self, room: Rect) -> NDArray[np.bool_]:
        return np.asarray(
            (self._left < room[2])
            & (self._right > room[0])
            & (self._top < room[3])
            & (self._bottom > room[1])
        )


@dataclass
class Board:
    """A view that is being filled."""

    width: float
    height: float
    drawn: Floats
    """Its own lines: rows (x, y, x, y)."""
    numbers: list[Number] = field(default_factory=list)
    words: list[Word] = field(default_factory=list)
    thin: list[Segment] = field(default_factory=list)
    mains: list[Segment] = field(default_factory=list)
    """The size lines among the thin ones."""
    leaders: list[Segment] = field(default_factory=list)
    """Lines from a number or letter to its point, among the thin ones."""
    grain: list[Segment] = field(default_factory=list)
    taken: list[Rect] = field(default_factory=list)
    """Rooms of numbers and words."""
    foreseen: dict[object, Coming] = field(default_factory=dict)
    """Extension lines still to come, by the size they belong to."""

    def __post_init__(self) -> None:
        self.extent: Rect = (0.0, 0.0, self.width, self.height)
        self._drawn = Lines(self.drawn)
        self._thin = Lines(np.zeros((0, 4)))

    @property
    def view(self) -> Rect:
        return (0.0, 0.0, self.width, self.height)

    def take(self, room: Rect) -> None:
        """Keep a room free from now on."""
        self.taken.append(room)
        self.extent = around([self.extent, room])

    def draw(self, lines: Iterable[Segment]) -> None:
        """Add thin lines."""
        self.thin += lines
        self._thin = Lines(np.array(self.thin, dtype=float).reshape(-1, 4))
        self.extent = around([self.extent, *(room_of(line) for line in self.thin)])

    def is_on_paper(self, room: Rect) -> bool:
        """Whether no number, word or thin line is in a room."""
        roomy = grown(room, AIR)
        return not any(meets(roomy, other) for other in self.taken) and not self._thin.meet(roomy)

    def is_clear(self, room: Rect) -> bool:
        """Whether, besides, no line of the view itself is there."""
        return self.is_on_paper(room) and not self._drawn.meet(grown(room, AIR))

    def would_cross(self, lines: Sequence[Segment]) -> bool:
        """Whether a line would run through a number or word."""
        return any(line_meets(line, grown(room, AIR)) for room in self.taken for line in lines)

    def would_cross_leader(self, lines: Sequence[Segment]) -> bool:
        """Whether a line would cross a leader."""
        return any(cross(line[:2], line[2:], led[:2], led[2:]) for led in self.leaders for line in lines)

    def coming(self, room: Rect, *, but: object = None) -> float:
        """What foreseen lines through a room cost; `but` says whose don't count."""
        roomy = grown(room, AIR)
        return sum(
            coming.cost * sum(line_meets(line, roomy) for line in coming.lines)
            for key, coming in self.foreseen.items()
            if key != but
        )

    def crossings(self, line: Segment) -> int:
        """How many thin lines a line would cross."""
        return self._thin.crossed_by(line)

    def growth(self, rooms: Sequence[Rect]) -> tuple[float, float]:
        """By how much the block would become wider and taller."""
        new, old = around([self.extent, *rooms]), self.extent
        return old[0] - new[0] + new[2] - old[2], old[1] - new[1] + new[3] - old[3]

    def put_word(self, text: str, spot: Spot, *, kind: str, is_upright: bool = False) -> None:
        """A word with its middle at a spot."""
        room = word_room(text, spot, is_upright=is_upright)
        self.take(room)
        base = (spot[0] + 4, spot[1]) if is_upright else (spot[0], spot[1] + 4)
        self.words.append(Word(text, base, is_upright, room, kind))


def word_room(text: str, spot: Spot, *, is_upright: bool = False) -> Rect:
    """The room a word takes with its middle at a spot."""
    half, tall = text_width(text, WORD) / 2 + 2, WORD / 2 + 1
    across, down = (tall, half) if is_upright else (half, tall)
    return (spot[0] - across, spot[1] - down, spot[0] + across, spot[1] + down)


def number_room(left: float, base: float, width: float) -> Rect:
    """The room of a level number."""
    return (left, base - NUMBER + 2, left + width, base + 3)


def around(rooms: Sequence[Rect]) -> Rect:
    """The smallest room that holds all."""
    return (
        min(room[0] for room in rooms),
        min(room[1] for room in rooms),
        max(room[2] for room in rooms),
        max(room[3] for room in rooms),
    )


def room_of(line: Segment) -> Rect:
    return (min(line[0], line[2]), min(line[1], line[3]), max(line[0], line[2]), max(line[1], line[3]))


def grown(room: Rect, wide: float, tall: float | None = None) -> Rect:
    """A room larger on all sides."""
    tall = wide if tall is None else tall
    return (room[0] - wide, room[1] - tall, room[2] + wide, room[3] + tall)


def meets(one: Rect, two: Rect) -> bool:
    """Whether two rooms share more than a border."""
    return one[0] < two[2] and two[0] < one[2] and one[1] < two[3] and two[1] < one[3]


def holds(outer: Rect, inner: Rect) -> bool:
    return outer[0] <= inner[0] and outer[1] <= inner[1] and inner[2] <= outer[2] and inner[3] <= outer[3]


def cross(a: Spot, b: Spot, c: Spot, d: Spot) -> bool:
    """Whether the lines from a to b and from c to d meet."""
    turns = _turn(a, b, c), _turn(a, b, d), _turn(c, d, a), _turn(c, d, b)
    if not any(turns):
        ends = (distance(c, a, b), distance(d, a, b), distance(a, c, d), distance(b, c, d))
        return min(ends) < 1e-9
    return turns[0] * turns[1] <= 0 and turns[2] * turns[3] <= 0


def _turn(a: Spot, b: Spot, c: Spot) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def distance(point: Spot, start: Spot, end: Spot) -> float:
    """From a point to a straight line with two ends."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    part = ((point[0] - start[0]) * dx + (point[1] - start[1]) * dy) / max(dx * dx + dy * dy, 1e-12)
    part = min(1.0, max(0.0, part))
    return hypot(point[0] - start[0] - part * dx, point[1] - start[1] - part * dy)


def line_meets(line: Segment, room: Rect) -> bool:
    """Whether a line passes through a room."""
    if max(line[0], line[2]) <= room[0] or min(line[0], line[2]) >= room[2]:
        return False
    if max(line[1], line[3]) <= room[1] or min(line[1], line[3]) >= room[3]:
        return False
    if line[0] == line[2] or line[1] == line[3]:
        return True
    first, last = 0.0, 1.0
    for at, run, low, high in (
        (line[0], line[2] - line[0], room[0], room[2]),
        (line[1], line[3] - line[1], room[1], room[3]),
    ):
        one, two = sorted(((low - at) / run, (high - at) / run))
        first, last = max(first, one), min(last, two)
    return first < last
