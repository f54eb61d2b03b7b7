"""Labels round a drawing, each joined to its point by a straight leader.

The labels stand outside a frame that holds the drawing, in columns left and right and, where asked, in rows
above and below; every leader runs inside the frame, so none can touch a label. Points get their places by
the shortest total length of leaders, and shortest leaders never cross: if two did, swapping their places
would make them shorter. Then each label moves towards its point as far as the others let it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot
from typing import Literal, TypeAlias

from benchalong.drawing.board import cross, distance
from benchalong.drawing.text import text_width

Point: TypeAlias = tuple[float, float]
Side: TypeAlias = Literal["left", "right", "above", "below"]

TEXT = 13.0
"""Height of the letters' body, px."""
PITCH = 18.0
"""From label to label in a column, px."""
APART = 8.0
"""Between labels in a row, px."""
OFF = 3.0
"""Between the frame and a label, px."""
ROW = TEXT + 2 * OFF
"""Height of a row of labels, px."""
CLEAR = 4.0
"""A leader that moved keeps this far from other points, px."""


@dataclass(frozen=True)
class Frame:
    """In px, down the sheet."""

    left: float
    top: float
    right: float
    bottom: float


@dataclass(frozen=True)
class Pointed:
    """A text and the point it is for."""

    text: str
    point: Point


@dataclass(frozen=True)
class Label:
    text: str
    side: Side
    point: Point
    """Where the leader ends, in the drawing."""
    start: Point
    """Where it starts, on the frame."""

    @property
    def box(self) -> Frame:
        """The room the text takes up."""
        return _box(self.side, self.start, width_of(self.text))

    @property
    def baseline(self) -> Point:
        """Where the text is set: on the left by its right end, on the right by its left, else its middle."""
        box = self.box
        x = {"left": box.right, "right": box.left}.get(self.side, (box.left + box.right) / 2)
        return (x, (box.top + box.bottom) / 2 + 0.35 * TEXT)

    @property
    def length(self) -> float:
        return hypot(self.point[0] - self.start[0], self.point[1] - self.start[1])


def width_of(text: str) -> float:
    """px."""
    return text_width(text, TEXT)


def _box(side: Side, start: Point, width: float) -> Frame:
    x, y = start
    if side == "left":
        return Frame(x - OFF - width, y - TEXT / 2, x - OFF, y + TEXT / 2)
    if side == "right":
        return Frame(x + OFF, y - TEXT / 2, x + OFF + width, y + TEXT / 2)
    middle = y - OFF - TEXT / 2 if side == "above" else y + OFF + TEXT / 2
    return Frame(x - width / 2, middle - TEXT / 2, x + width / 2, middle + TEXT / 2)


@dataclass(frozen=True)
class _Slot:
    side: Side
    at: Point


def slots(frame: Frame, sides: Sequence[Side], widest: float) -> tuple[_Slot, ...]:
    """Every place a label no wider than `widest` can stand without touching another."""
    found: list[_Slot] = []
    for side in sides:
        if side in ("left", "right"):
            x = frame.left if side == "left" else frame.right
            found += [_Slot(side, (x, y)) for y in _spread(frame.top, frame.bottom, PITCH)]
        else:
            y = frame.top if side == "above" else frame.bottom
            found += [_Slot(side, (x, y)) for x in _spread(frame.left, frame.right, widest + APART)]
    return tuple(found)


def _spread(low: float, high: float, pitch: float) -> list[float]:
    count = int((high - low) // pitch)
    first = (low + high - (count - 1) * pitch) / 2
    return [first + pitch * i for i in range(count)]


def placed(pointed: Sequence[Pointed], frame: Frame, sides: Sequence[Side]) -> tuple[Label, ...]:
    """A place for every label, in the order given. Raises ValueError when the frame has too few."""
    widest = max((width_of(one.text) for one in pointed), default=0.0)
    places = slots(frame, sides, widest)
    if len(places) < len(pointed):
        raise ValueError(f"{len(pointed)} labels, {len(places)} places")
    costs = [[hypot(one.point[0] - s.at[0], one.point[1] - s.at[1]) for s in places] for one in pointed]
    labels = [
        Label(one.text, places[slot].side, one.point, places[slot].at)
        for one, slot in zip(pointed, cheapest(costs), strict=True)
    ]
    return tuple(_moved(_moved(labels, frame), frame))


def cheapest(costs: Sequence[Sequence[float]]) -> list[int]:
    """For each row its column, no column twice, so that the sum of costs is least.

    Rows are taken one by one; each finds the cheapest chain of swaps to a free column, with prices on
    rows and columns that keep every chain's cost at or above zero (the assignment problem's classic way,
    Kuhn 1955 and Munkres 1957). No fewer columns than rows.
    """
    columns = len(costs[0]) if costs else 0
    row_price, column_price = [0.0] * len(costs), [0.0] * columns
    holder: list[int | None] = [None] * columns
    for row in range(len(costs)):
        _give_way(row, costs, row_price, column_price, holder)
    chosen = [0] * len(costs)
    for column, of in enumerate(holder):
        if of is not None:
            chosen[of] = column
    return chosen


def _give_way(
    row: int,
    costs: Sequence[Sequence[float]],
    row_price: list[float],
    column_price: list[float],
    holder: list[int | None],
) -> None:
    """Find the row a column, moving others along a cheapest chain."""
    columns = len(column_price)
    reach, came = [float("inf")] * columns, [-1] * columns
    done: list[int] = []
    open_columns = set(range(columns))
    here, before, so_far = row, -1, 0.0
    while True:
        for column in open_columns:
            cost = so_far + costs[here][column] - row_price[here] - column_price[column]
            if cost < reach[column]:
                reach[column], came[column] = cost, before
        nearest = min(open_columns, key=lambda column: (reach[column], column))
        so_far = reach[nearest]
        open_columns.remove(nearest)
        if (next_row := holder[nearest]) is None:
            break
        done.append(nearest)
        here, before = next_row, nearest
    row_price[row] += so_far
    for column in done:
        held = holder[column]
        assert held is not None
        row_price[held] += so_far - reach[column]
        column_price[column] -= so_far - reach[column]
    while nearest >= 0:
        previous = came[nearest]
        holder[nearest] = row if previous < 0 else holder[previous]
        nearest = previous


# Moving labels towards their points


def _moved(labels: list[Label], frame: Frame) -> list[Label]:
    """Each label in turn as near to straight across from its point as the others let it."""
    labels = list(labels)
    for number in sorted(range(len(labels)), key=lambda n: -labels[n].length):
        others = labels[:number] + labels[number + 1 :]
        for part in (1.0, 0.75, 0.5, 0.25):
            moved = _towards(labels[number], part, frame)
            if all(_agree(moved, other) for other in others):
                labels[number] = moved
                break
    return labels


def _towards(label: Label, part: float, frame: Frame) -> Label:
    x, y = label.start
    if label.side in ("left", "right"):
        to = min(max(label.point[1], frame.top), frame.bottom)
        return Label(label.text, label.side, label.point, (x, y + part * (to - y)))
    half = width_of(label.text) / 2
    to = min(max(label.point[0], frame.left + half), max(frame.right - half, frame.left + half))
    return Label(label.text, label.side, label.point, (x + part * (to - x), y))


def _agree(one: Label, other: Label) -> bool:
    """Whether two labels can stand together: apart, leaders uncrossed, and clear of the other's point."""
    return not (
        (one.side == other.side and _too_near(one, other))
        or cross(one.start, one.point, other.start, other.point)
        or distance(other.point, one.start, one.point) < CLEAR
        or distance(one.point, other.start, other.point) < CLEAR
    )


def _too_near(one: Label, other: Label) -> bool:
    if one.side in ("left", "right"):
        return abs(one.start[1] - other.start[1]) < PITCH
    return abs(one.start[0] - other.start[0]) < (width_of(one.text) + width_of(other.text)) / 2 + APART
