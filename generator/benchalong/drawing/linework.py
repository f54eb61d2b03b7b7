"""The lines of one view on the sheet, by kind: seen, hidden, centre lines, breaks."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from typing import TypeAlias

import numpy as np

from benchalong.drawing.shorten import GAP, Strip, on_sheet
from benchalong.drawing.views import LOOKING, ViewLines, ViewName
from benchalong.plan.model import AXES, Axis, Circle, Part
from benchalong.workings.bodies import Floats

Strips: TypeAlias = Mapping[Axis, Strip]
LineRow: TypeAlias = tuple[float, float, float, float]

OVERHANG = 4.0
"""Centre and break lines run this far over, in px."""
ZIG = 3.0
"""How far a break line's zigzag goes to either side, in px."""


def linework(part: Part, lines: ViewLines, view: ViewName, strips: Strips) -> dict[str, Floats]:
    """Rows (x, y, x, y) in px from the view's upper left corner, by the class of the line."""
    looking = LOOKING[view]
    right, downwards = strips[looking.right], strips[looking.downwards]
    seen, hidden = on_sheet(lines.visible, right, downwards), on_sheet(lines.hidden, right, downwards)
    kinds = {
        "visible": seen,
        "hidden-line": hidden,
        "centre": _centre_lines(part, view, strips),
        "break": _break_lines(np.vstack([seen, hidden]), right, downwards),
    }
    return {kind: _mirrored(rows, view, strips) for kind, rows in kinds.items()}


def placed(view: ViewName, axis: Axis, value: float, strips: Strips) -> float:
    """Where a coordinate in mm lies in a view, in px."""
    looking = LOOKING[view]
    is_reversed = looking.right_reversed if axis == looking.right else looking.downwards_reversed
    at = strips[axis].place(value)
    return strips[axis].size - at if is_reversed else at


def _mirrored(rows: Floats, view: ViewName, strips: Strips) -> Floats:
    looking, rows = LOOKING[view], rows.copy()
    if looking.right_reversed:
        rows[:, [0, 2]] = strips[looking.right].size - rows[:, [0, 2]]
    if looking.downwards_reversed:
        rows[:, [1, 3]] = strips[looking.downwards].size - rows[:, [1, 3]]
    return rows


def _centre_lines(part: Part, view: ViewName, strips: Strips) -> Floats:
    """A cross on each circle that is looked at, a line along each hole that is seen from the side."""
    looking = LOOKING[view]
    right, downwards = strips[looking.right], strips[looking.downwards]
    rows: set[LineRow] = set()
    for prism in (prism for cut in part.cuts for prism in cut.takes):
        if not isinstance(prism.shape, Circle):
            continue
        flat = [axis for axis in AXES if axis != prism.axis]
        centre = dict(zip(flat, (float(value) for value in prism.shape.centre), strict=True))
        ends = (float(prism.start), float(prism.end))
        radius = float(prism.shape.diameter) / 2
        wide, tall = radius * right.scale + OVERHANG, radius * downwards.scale + OVERHANG
        x = right.place(centre[looking.right]) if looking.right in centre else 0.0
        y = downwards.place(centre[looking.downwards]) if looking.downwards in centre else 0.0
        if looking.into == prism.axis:
            rows |= {(x - wide, y, x + wide, y), (x, y - tall, x, y + tall)}
        elif looking.right == prism.axis:
            rows.add((right.place(ends[0]) - OVERHANG, y, right.place(ends[1]) + OVERHANG, y))
        else:
            rows.add((x, downwards.place(ends[0]) - OVERHANG, x, downwards.place(ends[1]) + OVERHANG))
    return np.array(sorted(rows), dtype=float).reshape(-1, 4)


def _break_lines(lines: Floats, right: Strip, downwards: Strip) -> Floats:
    """Two zigzags where a stretch was left out, as long as the wood is wide; parted where others cross."""
    rows: list[LineRow] = []
    for at in right.breaks:
        for x in (at - GAP / 2, at + GAP / 2):
            rows += _zigzag(x, _wood_at(lines, 0, x), downwards.breaks)
    for at in downwards.breaks:
        for y in (at - GAP / 2, at + GAP / 2):
            rows += [(b, a, d, c) for a, b, c, d in _zigzag(y, _wood_at(lines, 1, y), right.breaks)]
    return np.array(rows, dtype=float).reshape(-1, 4)


def _wood_at(lines: Floats, column: int, at: float) -> tuple[float, float]:
    """From where to where there is wood beside a break."""
    first = lines[np.abs(lines[:, column] - at) < 0.01, 1 - column]
    last = lines[np.abs(lines[:, column + 2] - at) < 0.01, 3 - column]
    both = np.concatenate([first, last])
    return (float(both.min()), float(both.max())) if len(both) else (0.0, 0.0)


def _zigzag(x: float, wood: tuple[float, float], gaps: tuple[float, ...]) -> list[LineRow]:
    """An upright break line: in each stretch between gaps that cross it, one zigzag."""
    edges = [
        wood[0] - OVERHANG,
        *(edge for gap in gaps for edge in (gap - GAP / 2, gap + GAP / 2)),
        wood[1] + OVERHANG,
    ]
    rows: list[LineRow] = []
    for top, bottom in zip(edges[::2], edges[1::2], strict=True):
        if bottom - top > 2 * OVERHANG + 1:
            rows += _one_zigzag(x, top, bottom)
    return rows


def _one_zigzag(x: float, top: float, bottom: float) -> list[LineRow]:
    middle, size = (top + bottom) / 2, min(5.0, (bottom - top) / 4)
    spots = [
        (x, top),
        (x, middle - size),
        (x + ZIG, middle - size / 3),
        (x - ZIG, middle + size / 3),
        (x, middle + size),
        (x, bottom),
    ]
    return [(*one, *two) for one, two in pairwise(spots)]
