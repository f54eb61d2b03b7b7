"""Puts straight sizes round a view so that no number lies on anything else (ISO 129).

Each size has a handful of places it could stand: which side, how far out, its number in the middle of
the line or beside it. Places where something would be covered are refused; of the rest the cheapest is
taken: near the view, on the outer side, without making the sheet wider. Shortest sizes are placed
first, so they end nearest.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

from benchalong.drawing.board import (
    AIR,
    Board,
    Coming,
    Number,
    Rect,
    Segment,
    Spot,
    around,
    grown,
    meets,
    room_of,
)
from benchalong.drawing.text import NUMBER
from benchalong.ground.lengths import Length

Side: TypeAlias = Literal["above", "below", "left", "right"]

FIRST: dict[Side, float] = {"above": 9.0, "left": 9.0, "below": 22.0, "right": 22.0}
"""From the view to its first size line, in px. Numbers stand above their lines: below and right, between."""
STEP = 19.0
"""From one size line to the next, in px."""
LEVELS = 14
FORESIGHT = LEVELS + 4
"""How many levels out the extension lines of sizes to come are kept free."""
OVERRUN = 3.0
"""Extension lines run this far over, and begin this far from the wood, in px."""
STROKE = 4.0
"""Half the oblique stroke that ends a size line, measured along the line, in px."""
BESIDE = 6.0
"""Between the end of a size line and a number beside it, in px."""

LEVEL_COST, SIDE_COST = 5.0, 9.0
WIDER_COST, TALLER_COST = 0.9, 0.15
COMING_COST, WHOLE_COMING_COST, CROSS_COST, INSIDE_COST = 18.0, 34.0, 5.0, 0.15
"""What makes a place worse: further out, another side, a wider or taller sheet (by the px), in the way of
sizes to come (of the whole part above all), across other lines, extension lines that run through the
view (by the px)."""


@dataclass(frozen=True)
class Stretch:
    """A straight size in one view, in px."""

    what: str
    length: Length
    is_upright: bool
    """Whether it runs up and down the sheet."""
    start: float
    end: float
    near: float
    """Where its feature begins on the sheet's other direction; extension lines start from there."""
    far: float
    width: float
    """Of its number."""


@dataclass(frozen=True)
class Place:
    """Where a stretch could stand."""

    cost: float
    room: Rect
    """Of the number."""
    spot: Spot
    is_upright: bool
    """Whether the number is read from the right."""
    line: Segment
    others: tuple[Segment, ...]
    """Extension lines and end strokes."""


@dataclass(frozen=True)
class Sketch:
    """A place before it is laid on its side of the view: from and to, along the line and outwards."""

    text_along: tuple[float, float]
    text_out: tuple[float, float]
    line: tuple[float, float]
    cost: float
    is_level: bool = False
    """Whether the number is level though the line is upright."""


def best_place(board: Board, stretch: Stretch, sides: Sequence[Side]) -> Place | None:
    """The cheapest place that covers nothing; None when there is none."""
    best: Place | None = None
    limit = math.inf
    for level in range(LEVELS):
        if limit <= level * LEVEL_COST:
            break
        for rank, side in enumerate(sides):
            out, base = FIRST[side] + level * STEP, level * LEVEL_COST + rank * SIDE_COST
            for sketch in _sketches(stretch, out, side):
                cost = base + sketch.cost
                place = _place(board, stretch, side=side, out=out, sketch=sketch, cost=cost, limit=limit)
                if place is not None and _is_free(board, place):
                    best, limit = place, place.cost
    return best


def put(board: Board, stretch: Stretch, place: Place, *, key: str = "") -> None:
    """Draw the size at its place."""
    board.draw([place.line, *place.others])
    board.mains.append(place.line)
    board.take(place.room)
    number = Number(stretch.what, stretch.length, "", place.spot, place.is_upright, place.room, key)
    board.numbers.append(number)


def foreseen(board: Board, stretch: Stretch, sides: Sequence[Side], *, is_whole: bool) -> Coming:
    """The extension lines it will need on its best side; on both when it is a size of the whole part."""
    ways = sides if is_whole else sides[:1]
    lines = tuple(line for side in ways for line in _extensions_to_come(board, stretch, side))
    return Coming(lines, WHOLE_COMING_COST if is_whole else COMING_COST)


def _extensions_to_come(board: Board, stretch: Stretch, side: Side) -> list[Segment]:
    out = FIRST[side] + FORESIGHT * STEP
    begin = _begin(board, stretch, side)
    return [_laid_line(board, side, (p, begin), (p, out)) for p in (stretch.start, stretch.end)]


def _sketches(stretch: Stretch, out: float, side: Side) -> Iterator[Sketch]:
    low, high, width = stretch.start, stretch.end, stretch.width
    middle, half = (low + high) / 2, width / 2
    above = (out - 2 - NUMBER, out - 2) if side in ("below", "right") else (out + 2, out + 2 + NUMBER)
    if width + 5 <= high - low:
        yield Sketch((middle - half, middle + half), above, (low, high), 0.0)
        return
    if side in ("above", "left"):
        over = (out + OVERRUN + AIR + 0.5, out + OVERRUN + AIR + 0.5 + NUMBER)
        yield Sketch((middle - half, middle + half), over, (low, high), 1.5)
    if stretch.is_upright:
        yield from _level_sketches(stretch, out)
    after, before = (high + BESIDE, high + BESIDE + width), (low - BESIDE - width, low - BESIDE)
    extra = 7.0 if stretch.is_upright else 2.0
    yield Sketch(after, above, (low, after[1]), extra)
    yield Sketch(before, above, (before[0], high), extra + 0.5)


def _level_sketches(stretch: Stretch, out: float) -> Iterator[Sketch]:
    """A level number for a short upright line: outwards of its middle, over it, under it."""
    low, high, width = stretch.start, stretch.end, stretch.width
    middle, half, line = (low + high) / 2, width / 2, (low, high)
    tall = (middle - NUMBER / 2, middle + NUMBER / 2)
    yield Sketch(tall, (out + BESIDE, out + BESIDE + width), line, 0.0, is_level=True)
    for along in ((low - BESIDE - NUMBER, low - BESIDE), (high + BESIDE, high + BESIDE + NUMBER)):
        yield Sketch(along, (out - half, out + half), line, 3.0, is_level=True)


def _place(
    board: Board,
    stretch: Stretch,
    *,
    side: Side,
    out: float,
    sketch: Sketch,
    cost: float,
    limit: float,
) -> Place | None:
    """The sketch laid on its side of the view; None when it costs as much as the limit."""
    begin = _begin(board, stretch, side)
    cost += max(0.0, -begin) * INSIDE_COST
    if cost >= limit:
        return None
    room = _laid_room(board, side, sketch)
    line = _laid_line(board, side, (sketch.line[0] - STROKE, out), (sketch.line[1] + STROKE, out))
    ends = (stretch.start, stretch.end)
    extensions = [_laid_line(board, side, (p, begin), (p, out + OVERRUN)) for p in ends]
    wider, taller = board.growth([room, room_of(line), room_of(extensions[0])])
    cost += wider * WIDER_COST + taller * TALLER_COST
    if cost < limit:
        cost += board.coming(room, but=(stretch.what, stretch.length))
    if cost < limit:
        cost += board.crossings(line) * CROSS_COST
    if cost >= limit:
        return None
    is_upright = stretch.is_upright and not sketch.is_level
    middle = ((room[0] + room[2]) / 2, (room[1] + room[3]) / 2)
    spot = (room[2] - 3, middle[1]) if is_upright else (middle[0], room[3] - 3)
    strokes = [_stroke(*_laid(board, side, p, out)) for p in ends]
    return Place(cost, room, spot, is_upright, line, (*extensions, *strokes))


def _is_free(board: Board, place: Place) -> bool:
    if meets(grown(place.room, AIR), board.view) or not board.is_on_paper(place.room):
        return False
    if board.would_cross([place.line, *place.others]):
        return False
    return not any(_too_close(place.line, main) for main in board.mains)


def _too_close(line: Segment, other: Segment) -> bool:
    """Whether two size lines that run the same way overlap with less than a number's height between."""
    level, other_level = line[1] == line[3], other[1] == other[3]
    if level != other_level:
        return False
    slack = -2 * STROKE - 0.5
    return meets(
        grown(room_of(line), slack, 8.0) if level else grown(room_of(line), 8.0, slack), room_of(other)
    )


def _begin(board: Board, stretch: Stretch, side: Side) -> float:
    """How far outside the view's border an extension line begins; below zero inside."""
    if side == "below":
        return stretch.far - board.height + OVERRUN
    if side == "right":
        return stretch.far - board.width + OVERRUN
    return -stretch.near + OVERRUN


def _laid(board: Board, side: Side, along: float, out: float) -> Spot:
    if side == "above":
        return along, -out
    if side == "below":
        return along, board.height + out
    return (-out, along) if side == "left" else (board.width + out, along)


def _laid_line(board: Board, side: Side, one: Spot, two: Spot) -> Segment:
    return (*_laid(board, side, *one), *_laid(board, side, *two))


def _laid_room(board: Board, side: Side, sketch: Sketch) -> Rect:
    corners = zip(sketch.text_along, sketch.text_out, strict=True)
    return around([(*spot, *spot) for spot in (_laid(board, side, *corner) for corner in corners)])


def _stroke(x: float, y: float) -> Segment:
    return (x - STROKE, y + STROKE, x + STROKE, y - STROKE)
