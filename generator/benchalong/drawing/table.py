"""The list of lettered points: how far each is from end a and from edge a, and how it is rounded."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from benchalong.drawing.layout import letter
from benchalong.drawing.sheet import Plain, add_size, add_text
from benchalong.drawing.text import WORD, number_width, text_width
from benchalong.drawing.wanted import Point
from benchalong.ground.lengths import Length
from benchalong.ground.shown import Precision

LETTER_ROOM, GAP, LINE, MARGIN = 24.0, 12.0, 17.0, 2.0


@dataclass(frozen=True)
class Column:
    """One column of numbers: its head, its cells (None for an empty one), and where it ends."""

    head: str
    cells: tuple[Length | None, ...]
    right: float


def table_lines(points: Sequence[Point]) -> int:
    """How many lines the list takes, its head included."""
    return len(points) + 1 if points else 0


def add_point_table(root: Any, points: Sequence[Point], plain: Plain, *, y: float) -> None:
    """Letter, distance from end a, distance from edge a, radius; nothing for no points."""
    if not points:
        return
    for column in _columns(points, plain.precision):
        add_text(root, column.head, column.right, y, "label note", anchor="end")
        for row, length in enumerate(column.cells, 1):
            if length is not None:
                add_size(root, length, plain, column.right, y + LINE * row, anchor="end")
    for row in range(len(points)):
        add_text(root, letter(row), MARGIN, y + LINE * (row + 1), "key")


def _columns(points: Sequence[Point], precision: Precision) -> list[Column]:
    wanted: list[tuple[str, tuple[Length | None, ...]]] = [
        ("from end a", tuple(point.along for point in points)),
        ("from edge a", tuple(point.across for point in points)),
    ]
    if any(point.radius for point in points):
        wanted.append(("round R", tuple(point.radius or None for point in points)))
    columns, right = list[Column](), MARGIN + LETTER_ROOM - GAP
    for head, cells in wanted:
        numbers = [number_width(length, precision) for length in cells if length is not None]
        right += GAP + max(text_width(head, WORD), *numbers)
        columns.append(Column(head, cells, right))
    return columns
