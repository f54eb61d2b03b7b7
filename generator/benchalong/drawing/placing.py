"""Puts numbers, leaders and words round one view so that nothing lies on anything else.

Each size has a handful of places it could stand: which side, how far out, number in the middle of its line
or beside it. Places where something would be covered are refused; of the rest the cheapest is taken: near the
view, on the outer side, without making the sheet wider. Shortest sizes are placed first, so they end nearest.
Works in px with the view's own upper left corner at the origin.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Literal, TypeAlias

import numpy as np

from benchalong.drawing.text import NUMBER, WORD, text_width
from benchalong.ground.lengths import Length
from benchalong.workings.bodies import Floats

Side: TypeAlias = Literal["above", "below", "left", "right"]
Rect: TypeAlias = tuple[float, float, float, float]
"""Left, top, right, bottom."""
Segment: TypeAlias = tuple[float, float, float, float]

FIRST_INNER, FIRST_OUTER = 8.0, 22.0
"""From the view to the first size line: where its number stands beyond the line, and where it stands between."""
STEP = 19.0
"""From one size line to the next."""
LEVELS = 12
AIR = 2.0
"""Kept free round every number."""
OVERRUN = 3.0
"""Extension lines run this far over, and begin this far from the wood."""
STROKE = 4.0
"""Half the length of the oblique stroke that ends a size line, along the line."""


@dataclass(frozen=True)
class Number:
    """A size on the sheet."""

    length: Length
    sign: str
    x: float
    """Middle of the number, before it is turned."""
    y: float
    """Its base line."""
    upright: bool
    """Whether it is read from the right."""
    room: Rect
    key: str = ""
    """The letter that stands for it, when the number itself found no room."""


@dataclass(frozen=True)
class Word:
    text: str
    x: float
    y: float
    anchor: Literal["start", "middle", "end"]
    room: Rect
    kind: str = "label"


@dataclass(frozen=True)
class Stretch:
    """A straight size in this view: along x or along y, from p to q, with the depth its feature reaches."""

    what: str
    length: Length
    is_upright: bool
    """Whether it runs along y."""
    start: float
    end: float
    near: float
    """Where its feature begins on the other axis of the sheet."""
    far: float
    width: float
    """Of the number."""


@dataclass
class Board:
    """One view with what is placed round it so far."""

    width: float
    height: float
    drawn: Floats
    """Its lines, in px."""
    numbers: list[Number] = field(default_factory=list)
    words: list[Word] = field(default_factory=list)
    thin: list[Segment] = field(default_factory=list)
    taken: list[Rect] = field(default_factory=list)
    """Rooms of numbers and words."""
    corridors: list[tuple[bool, float]] = field(default_factory=list)
    """Where extension lines will still come: across (upright lines at x) or up and down."""

    def extent(self) -> Rect:
        """Everything placed, the view included."""
        boxes = [(0.0, 0.0, self.width, self.height), *self.taken, *(_room_of(line) for line in self.thin)]
        return (
            min(box[0] for box in boxes), min(box[1] for box in boxes),
            max(box[2] for box in boxes), max(box[3] for box in boxes),
        )  # fmt: skip


@dataclass(frozen=True)
class Candidate:
    """One place a stretch could stand."""

    cost: float
    room: Rect
    lines: tuple[Segment, ...]
    """The size line first."""
    strokes: tuple[Segment, ...]
    x: float
    y: float
    upright: bool


def best_place(board: Board, stretch: Stretch, sides: Sequence[Side]) -> Candidate | None:
    """The cheapest place that covers nothing; None when there is none."""
    found = [
        candidate
        for rank, side in enumerate(sides)
        for level in range(LEVELS)
        for candidate in _candidates(board, stretch, side=side, level=level, rank=rank)
    ]
    for candidate in sorted(found, key=lambda one: one.cost):
        if _is_free(board, candidate):
            return candidate
    return None


def put(board: Board, stretch: Stretch, place: Candidate, *, key: str = "") -> None:
    """Draw the size at its place."""
    board.thin += [*place.lines, *place.strokes]
    board.taken.append(place.room)
    board.numbers.append(Number(stretch.length, "", place.x, place.y, place.upright, place.room, key))


def _candidates(board: Board, stretch: Stretch, *, side: Side, level: int, rank: int) -> Iterator[Candidate]:
    inner = side in ("below", "right")
    out = (FIRST_OUTER if inner else FIRST_INNER) + level * STEP
    low, high = min(stretch.start, stretch.end), max(stretch.start, stretch.end)
    base = level * 6.0 + rank * 14.0
    middle, half = (low + high) / 2, stretch.width / 2
    text = (out - 2 - NUMBER, out - 2) if inner else (out + 2, out + 2 + NUMBER)
    if stretch.width + 4 <= high - low:
        yield _candidate(board, stretch, side, out, text, (middle - half, middle + half), (low, high), base)
        return
    after, before = (high + 5, high + 5 + stretch.width), (low - 5 - stretch.width, low - 5)
    yield _candidate(board, stretch, side, out, text, after, (low, after[1]), base + 4)
    yield _candidate(board, stretch, side, out, text, before, (before[0], high), base + 5)
    if stretch.is_upright:
        beside = (out + 6, out + 6 + stretch.width)
        tall = (middle - NUMBER / 2, middle + NUMBER / 2)
        yield _candidate(board, stretch, side, out, beside, tall, (low, high), base + 1, flat=True)
        wide = (out - half, out + half)
        below, above = (high + 5, high + 5 + NUMBER), (low - 5 - NUMBER, low - 5)
        yield _candidate(board, stretch, side, out, wide, above, (low, high), base + 3, flat=True)
        yield _candidate(board, stretch, side, out, wide, below, (low, high), base + 3, flat=True)


def _candidate(
    board: Board,
    stretch: Stretch,
    side: Side,
    out: float,
    text: tuple[float, float],
    along: tuple[float, float],
    line: tuple[float, float],
    cost: float,
    *,
    flat: bool = False,
) -> Candidate:
    """From (along the size line, outwards from the view) to the sheet."""
    room = _turned(board, side, (along[0], text[0]), (along[1], text[1]))
    low, high = min(stretch.start, stretch.end), max(stretch.start, stretch.end)
    main = _turned_line(board, side, (line[0] - STROKE, out), (line[1] + STROKE, out))
    begin = _begin(board, stretch, side)
    extensions = [
        _turned_line(board, side, (p, begin), (p, out + OVERRUN)) for p in (low, high) if out + OVERRUN > begin
    ]
    strokes = [_stroke(*_turned(board, side, (p, out), (p, out))[:2]) for p in (low, high)]
    upright = stretch.is_upright and not flat
    x = (room[0] + room[2]) / 2 if not upright else room[2] - 3
    y = room[3] - 3 if not upright else (room[1] + room[3]) / 2
    lines = (main, *extensions)
    return Candidate(cost + _growth(board, room, lines) + _crossed(board, room, lines), room, lines, tuple(strokes), x, y, upright)


def _begin(board: Board, stretch: Stretch, side: Side) -> float:
    """How far out from the view's border the feature ends on this side, below zero inside."""
    if side == "below":
        return stretch.far - board.height + OVERRUN
    if side == "right":
        return stretch.far - board.width + OVERRUN
    return -stretch.near + OVERRUN


def _turned(board: Board, side: Side, one: tuple[float, float], two: tuple[float, float]) -> Rect:
    (x0, y0), (x1, y1) = _spot(board, side, *one), _spot(board, side, *two)
    return (min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))


def _turned_line(board: Board, side: Side, one: tuple[float, float], two: tuple[float, float]) -> Segment:
    return (*_spot(board, side, *one), *_spot(board, side, *two))


def _spot(board: Board, side: Side, along: float, out: float) -> tuple[float, float]:
    if side == "above":
        return along, -out
    if side == "below":
        return along, board.height + out
    if side == "left":
        return -out, along
    return board.width + out, along


def _stroke(x: float, y: float) -> Segment:
    return (x - STROKE, y + STROKE, x + STROKE, y - STROKE)


def _growth(board: Board, room: Rect, lines: Sequence[Segment]) -> float:
    """What it costs to make the block larger: width is dear on a phone."""
    old = board.extent()
    boxes = [room, *(_room_of(line) for line in lines)]
    wide = max(0.0, old[0] - min(box[0] for box in boxes)) + max(0.0, max(box[2] for box in boxes) - old[2])
    tall = max(0.0, old[1] - min(box[1] for box in boxes)) + max(0.0, max(box[3] for box in boxes) - old[3])
    return wide * 0.35 + tall * 0.15


def _crossed(board: Board, room: Rect, lines: Sequence[Segment]) -> float:
    """What it costs to stand where extension lines will come, and to cross lines that are there."""
    cost = 0.0
    for upright, at in board.corridors:
        low, high = (room[0], room[2]) if upright else (room[1], room[3])
        outside = (room[3] < 0 or room[1] > board.height) if upright else (room[2] < 0 or room[0] > board.width)
        cost += 6.0 if low - AIR < at < high + AIR and outside else 0.0
    main = lines[0]
    return cost + sum(3.0 for line in board.thin if _cross(main, line))


def _is_free(board: Board, place: Candidate) -> bool:
    room = grown(place.room, AIR)
    if meets(room, (0.0, 0.0, board.width, board.height)):
        return False
    if any(meets(room, other) for other in board.taken):
        return False
    if any(line_meets(line, room) for line in board.thin):
        return False
    if any(line_meets(line, grown(other, AIR)) for line in (*place.lines, *place.strokes) for other in board.taken):
        return False
    main = _room_of(place.lines[0])
    slim = grown(main, 7.0 if main[1] == main[3] else -STROKE - 0.5, 7.0 if main[0] == main[2] else -STROKE - 0.5)
    if main[1] == main[3]:
        slim = (main[0] + STROKE + 0.5, main[1] - 7, main[2] - STROKE - 0.5, main[3] + 7)
    else:
        slim = (main[0] - 7, main[1] + STROKE + 0.5, main[2] + 7, main[3] - STROKE - 0.5)
    return not any(_is_parallel(line, place.lines[0]) and meets(_room_of(line), slim) for line in board.thin)


def _is_parallel(one: Segment, two: Segment) -> bool:
    return (one[0] == one[2]) == (two[0] == two[2]) and (one[1] == one[3]) == (two[1] == two[3])


def _cross(one: Segment, two: Segment) -> bool:
    a, b = _room_of(one), _room_of(two)
    return not _is_parallel(one, two) and meets(grown(a, -0.5, -0.5) if False else a, b)


def _room_of(line: Segment) -> Rect:
    return (min(line[0], line[2]), min(line[1], line[3]), max(line[0], line[2]), max(line[1], line[3]))


def grown(room: Rect, by: float, by_y: float | None = None) -> Rect:
    """A rectangle larger on all sides."""
    tall = by if by_y is None else by_y
    return (room[0] - by, room[1] - tall, room[2] + by, room[3] + tall)


def meets(one: Rect, two: Rect) -> bool:
    """Whether two rectangles share more than a border."""
    return one[0] < two[2] and two[0] < one[2] and one[1] < two[3] and two[1] < one[3]


def line_meets(line: Segment, room: Rect) -> bool:
    """Whether a line passes through a rectangle."""
    first, last = 0.0, 1.0
    for at, run, low, high in (
        (line[0], line[2] - line[0], room[0], room[2]),
        (line[1], line[3] - line[1], room[1], room[3]),
    ):
        if run == 0:
            if not low < at < high:
                return False
            continue
        one, two = sorted(((low - at) / run, (high - at) / run))
        first, last = max(first, one), min(last, two)
    return first < last


def lines_meet(lines: Floats, room: Rect) -> bool:
    """Whether any of many lines passes through a rectangle."""
    if not len(lines):
        return False
    low = np.array([room[0], room[1]])
    high = np.array([room[2], room[3]])
    start, run = lines[:, :2], lines[:, 2:] - lines[:, :2]
    safe = np.where(run == 0, 1e-12, run)
    one, two = (low - start) / safe, (high - start) / safe
    first = np.maximum(np.minimum(one, two).max(axis=1), 0.0)
    last = np.minimum(np.maximum(one, two).min(axis=1), 1.0)
    return bool((first < last).any())


def is_clear(board: Board, room: Rect) -> bool:
    """Whether a word could stand there: on no line, number or word, and not across the view's border."""
    around = grown(room, AIR)
    if any(meets(around, other) for other in board.taken):
        return False
    if any(line_meets(line, around) for line in board.thin):
        return False
    return not lines_meet(board.drawn, around)


def put_word(board: Board, text: str, spots: Sequence[tuple[float, float]], *, kind: str = "label") -> bool:
    """The word with its middle at the first spot that is clear; False when none is."""
    half = text_width(text, WORD) / 2
    for x, y in spots:
        room = (x - half, y - WORD / 2 - 1, x + half, y + WORD / 2 + 1)
        if is_clear(board, room):
            board.taken.append(room)
            board.words.append(Word(text, x, y + 4, "middle", room, kind))
            return True
    return False


def put_leader(
    board: Board, length: Length, sign: str, *, centre: tuple[float, float], radius: float, width: float, key: str = ""
) -> bool:
    """A round size at the end of a slanting line that points at its centre."""
    whole = width + text_width(sign + " ", NUMBER)
    best: tuple[float, Rect, tuple[Segment, ...]] | None = None
    for reach in (14.0, 24.0, 36.0, 52.0, 72.0, 96.0, 124.0):
        for step in range(16):
            angle = 2 * np.pi * (step + 0.5) / 16
            dx, dy = float(np.cos(angle)), float(np.sin(angle))
            if abs(dy) < 0.3:
                continue
            foot = (centre[0] + dx * radius, centre[1] + dy * radius)
            knee = (centre[0] + dx * (radius + reach), centre[1] + dy * (radius + reach))
            way = 1 if dx >= 0 else -1
            shelf = (knee[0], knee[1], knee[0] + way * (whole + 4), knee[1])
            left = knee[0] + 2 if way > 0 else knee[0] - whole - 2
            room = (left, knee[1] - 2 - NUMBER, left + whole, knee[1] - 2)
            lines = ((*foot, *knee), shelf)
            cost = reach * 0.3 + _growth(board, room, lines) + _crossed(board, room, lines)
            if (best is None or cost < best[0]) and _is_leader_free(board, room, lines):
                best = (cost, room, lines)
    if best is None:
        return False
    _, room, lines = best
    board.thin += [*lines, *_arrow(lines[0])]
    board.taken.append(room)
    board.numbers.append(Number(length, sign, (room[0] + room[2]) / 2, room[3] - 3, False, room, key))
    return True


def _is_leader_free(board: Board, room: Rect, lines: tuple[Segment, ...]) -> bool:
    around = grown(room, AIR)
    border = (0.0, 0.0, board.width, board.height)
    inside = room[0] > 2 and room[1] > 2 and room[2] < board.width - 2 and room[3] < board.height - 2
    if not inside and meets(around, border):
        return False
    if not is_clear(board, (room[0], room[1], room[2], room[3] + 2)):
        return False
    return not any(line_meets(line, grown(other, AIR)) for line in lines for other in board.taken)


def _arrow(line: Segment) -> tuple[Segment, ...]:
    """Two short lines at the start of a leader."""
    x, y, run, rise = line[0], line[1], line[2] - line[0], line[3] - line[1]
    far = float(np.hypot(run, rise)) or 1.0
    ux, uy = run / far * 7, rise / far * 7
    return ((x, y, x + ux - uy * 0.35, y + uy + ux * 0.35), (x, y, x + ux + uy * 0.35, y + uy - ux * 0.35))
