"""The list of lettered points: how far each is from end a and from edge a."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from benchalong.drawing.layout import letter
from benchalong.drawing.sheet import Plain, add_size, add_text
from benchalong.drawing.text import WORD, number_width, text_width
from benchalong.drawing.wanted import Point
from benchalong.ground.shown import Precision

HEADS = ("end a", "edge a")
LETTER_ROOM, GAP = 24.0, 10.0
MARGIN = 2.0
LINE = 17.0


def table_columns(points: Sequence[Point], precision: Precision, width: float) -> int:
    """How many points stand side by side."""
    return max(1, int((width - MARGIN) // _column(points, precision)))


def add_point_table(root: Any, points: Sequence[Point], plain: Plain, *, y: float, width: float) -> None:
    """Letter, distance from end a, distance from edge a; down one column after the other."""
    if not points:
        return
    columns, wide = table_columns(points, plain.precision, width), _column(points, plain.precision)
    first, second = _number_rooms(points, plain.precision)
    rows = -(-len(points) // columns)
    for column in range(-(-len(points) // rows)):
        x = MARGIN + column * wide
        add_text(root, "from", x, y, "label note")
        add_text(root, HEADS[0], x + LETTER_ROOM + first, y, "label note", anchor="end")
        add_text(root, HEADS[1], x + LETTER_ROOM + first + GAP + second, y, "label note", anchor="end")
    for count, point in enumerate(points):
        column, row = divmod(count, rows)
        x, base = MARGIN + column * wide, y + LINE * (row + 1)
        add_text(root, letter(count), x, base, "key")
        add_size(root, point.along, plain, x + LETTER_ROOM + first, base, anchor="end")
        add_size(root, point.across, plain, x + LETTER_ROOM + first + GAP + second, base, anchor="end")


def _column(points: Sequence[Point], precision: Precision) -> float:
    first, second = _number_rooms(points, precision)
    return LETTER_ROOM + first + GAP + second + 2 * GAP


def _number_rooms(points: Sequence[Point], precision: Precision) -> tuple[float, float]:
    first = max(number_width(point.along, precision) for point in points)
    second = max(number_width(point.across, precision) for point in points)
    room = text_width("from", WORD) - LETTER_ROOM + GAP + text_width(HEADS[0], WORD)
    return max(first, room), max(second, text_width(HEADS[1], WORD))
