"""A section through a joint: what is cut is hatched, one part one way, the other the other (ISO 128).

Sizes of the joint that show stand at their places; the others are listed. Below, who is who.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import numpy as np

from benchalong.drawing.board import Board, Segment
from benchalong.drawing.cut_through import SHEETS, Found, Through, best_section, lengths_of
from benchalong.drawing.picture import Picture
from benchalong.drawing.placing import Side, Stretch, best_place, put
from benchalong.drawing.sheet import (
    Plain,
    add_lines,
    add_number,
    add_size,
    add_text,
    add_unit_note,
    svg_root,
    svg_text,
)
from benchalong.drawing.text import WORD, in_lines, number_width
from benchalong.ground.shown import Precision, System
from benchalong.plan.model import CutSize, Joint
from benchalong.workings.bodies import Floats
from benchalong.workings.placed import Placed
from benchalong.workings.telling import called

WIDTH = 300.0
"""Of the picture, px; more where sizes need it."""
ROOM = (170.0, 150.0)
"""For the cut faces themselves, px."""
LARGEST = 9.0
"""px per mm."""
LINE = 17.0
EDGE = 4.0
SPACING = 5.0
"""Between hatching lines, px."""
SWATCH = (26.0, 12.0)
"""Of the piece of hatching beside a name, px."""
OVERHANG, ZIG = 4.0, 3.0
"""How far a break line runs over, and its zigzag to either side, px."""
CLOSE = 1e-3


@dataclass(frozen=True)
class _Sheet:
    """From mm right and up in the window to px."""

    left: float
    top: float
    scale: float

    def points(self, loop: Floats) -> Floats:
        return np.column_stack([(loop[:, 0] - self.left) * self.scale, (self.top - loop[:, 1]) * self.scale])


def section_drawing(
    joint: Joint, placed: Placed, *, words: Mapping[str, str], units: System, precision: Precision
) -> Picture | None:
    """`words` names the joint's sizes by key. None where the joint brings nothing together."""
    through = best_section(joint, placed)
    if through is None:
        return None
    return _drawn(through, words, Plain(units, precision))


def _drawn(through: Through, words: Mapping[str, str], plain: Plain) -> Picture:
    low, high = through.window
    scale = float(min(LARGEST, *(np.array(ROOM) / (high - low))))
    sheet = _Sheet(float(low[0]), float(high[1]), scale)
    wide, tall = ((high - low) * scale).tolist()
    lines, breaks, hatching = _lines(through, sheet, (wide, tall))
    board = Board(wide, tall, np.array(lines, dtype=float).reshape(-1, 4))
    unplaced = {f.size.name for f in _each_once(through.found) if not _put(board, f, sheet, plain.precision)}
    shown = {found.size.name for found in through.found} - unplaced
    listed = [size for size in lengths_of(through.joint) if size.name not in shown]
    return _written(through, board, (lines, breaks, hatching), listed, words, plain)


def _written(
    through: Through,
    board: Board,
    drawn: tuple[list[Segment], list[Segment], list[Segment]],
    listed: Sequence[CutSize],
    words: Mapping[str, str],
    plain: Plain,
) -> Picture:
    lines, breaks, hatching = drawn
    left, top, right, bottom = board.extent
    width = max(WIDTH, right - left + 2 * EDGE)
    at = ((width - (right - left)) / 2 - left, EDGE + LINE + 5 - top)
    notes = _notes(through, width)
    rows = len(through.lying) + len(notes) + len(listed) + 1
    height = at[1] + bottom + LINE * rows + WORD / 2 + EDGE
    alt = _alt(through)
    root = svg_root(width=width, height=height, alt=alt, kind="section")
    add_text(root, "Section A-A", width / 2, EDGE + WORD, "label view-name", anchor="middle")
    add_lines(root, hatching, "cut-face", at=at)
    add_lines(root, board.thin, "thin", at=at)
    add_lines(root, breaks, "break", at=at)
    add_lines(root, lines, "visible", at=at)
    for number in board.numbers:
        add_number(root, number, plain, at=at)
    y = at[1] + bottom + LINE + 2
    for part, lying in enumerate(through.lying):
        _add_swatch(root, part, y)
        add_text(root, f"{lying.part.name} {lying.copy.mark}", EDGE + SWATCH[0] + 6, y, "label note")
        y += LINE
    for note in notes:
        add_text(root, note, EDGE, y, "label note")
        y += LINE
    column = max((number_width(size.length, plain.precision) for size in listed), default=0.0)
    for size in listed:
        add_size(root, size.length, plain, EDGE, y, anchor="start")
        what = words.get(size.name, size.name.replace("_", " "))
        add_text(root, what, EDGE + 8 + column, y, "label note")
        y += LINE
    add_unit_note(root, plain.units, x=EDGE, y=y)
    return Picture(svg_text(root), alt, round(width, 1), round(height, 1))


def _notes(through: Through, width: float) -> list[str]:
    where = SHEETS[through.normal][2]
    text = f"Cut through both parts, {where}; hatching marks cut wood."
    return in_lines(text, size=WORD, width=width - 2 * EDGE)


def _alt(through: Through) -> str:
    one, other = (called(lying) for lying in through.lying)
    return f"{through.joint.name}: section through {one} and {other}, {SHEETS[through.normal][2]}."


# Lines


def _lines(
    through: Through, sheet: _Sheet, size: tuple[float, float]
) -> tuple[list[Segment], list[Segment], list[Segment]]:
    """Outlines, break lines where the window ends, hatching."""
    outlines: list[Segment] = []
    breaks: list[Segment] = []
    hatching: list[Segment] = []
    for part, face in enumerate(through.faces):
        loops = [sheet.points(loop) for loop in face.to_polygons()]
        for loop in loops:
            for one, two in zip(loop.tolist(), np.roll(loop, -1, axis=0).tolist(), strict=True):
                if _is_border(one, two, size):
                    breaks += _zigzag(one, two)
                else:
                    outlines.append((*one, *two))
        hatching += _hatched(loops, part)
    return outlines, breaks, hatching


def _is_border(one: Sequence[float], two: Sequence[float], size: tuple[float, float]) -> bool:
    return any(
        abs(one[axis] - two[axis]) < CLOSE and min(abs(one[axis]), abs(one[axis] - size[axis])) < 0.01
        for axis in (0, 1)
    )


def _zigzag(one: Sequence[float], two: Sequence[float]) -> list[Segment]:
    start, run = np.array(one), np.array(two) - np.array(one)
    length = float(np.hypot(*run))
    along = run / length
    square = np.array([-along[1], along[0]])
    middle, size = length / 2, min(5.0, length / 4)
    spots = [
        (-OVERHANG, 0.0),
        (middle - size, 0.0),
        (middle - size / 3, ZIG),
        (middle + size / 3, -ZIG),
        (middle + size, 0.0),
        (length + OVERHANG, 0.0),
    ]
    points = [(start + a * along + b * square).tolist() for a, b in spots]
    return [(p[0], p[1], q[0], q[1]) for p, q in pairwise(points)]


def _hatched(loops: Sequence[Floats], part: int) -> list[Segment]:
    """Lines at 45 degrees, the two parts' square to each other, on one grid for the whole sheet."""
    slope = np.array([1.0, -1.0 if part == 0 else 1.0]) / np.sqrt(2)
    square = np.array([-slope[1], slope[0]])
    starts = np.concatenate(loops)
    ends = np.concatenate([np.roll(loop, -1, axis=0) for loop in loops])
    here, there = starts @ square, ends @ square
    found: list[Segment] = []
    for number in range(int(np.ceil(here.min() / SPACING)), int(np.floor(here.max() / SPACING)) + 1):
        level = number * SPACING + 1e-6
        crossed = (here > level) != (there > level)
        share = (level - here[crossed]) / (there[crossed] - here[crossed])
        met = np.sort((starts[crossed] + share[:, None] * (ends[crossed] - starts[crossed])) @ slope)
        for a, b in met[: len(met) // 2 * 2].reshape(-1, 2).tolist():
            p, q = level * square + a * slope, level * square + b * slope
            found.append((float(p[0]), float(p[1]), float(q[0]), float(q[1])))
    return found


def _add_swatch(root: Any, part: int, y: float) -> None:
    wide, tall = SWATCH
    corners = np.array([(0.0, 0.0), (wide, 0.0), (wide, tall), (0.0, tall)])
    at = (EDGE, y - tall + 2)
    add_lines(root, _hatched([corners], part), "cut-face", at=at)
    sides = zip(corners.tolist(), np.roll(corners, -1, axis=0).tolist(), strict=True)
    add_lines(root, [(*a, *b) for a, b in sides], "thin", at=at)


# Sizes


def _each_once(found: Iterable[Found]) -> Iterator[Found]:
    """The shortest first: they stand nearest. Two sizes between the same places are one number."""
    told: set[tuple[int, float, float]] = set()
    for one in sorted(found, key=lambda one: (one.size.length, one.size.name)):
        place = (one.axis, round(one.start, 2), round(one.end, 2))
        if place not in told:
            told.add(place)
            yield one


SIDES: Mapping[int, tuple[Side, ...]] = {0: ("above", "below"), 1: ("right", "left")}


def _put(board: Board, found: Found, sheet: _Sheet, precision: Precision) -> bool:
    """Whether the size found a place."""
    scale = sheet.scale
    if found.axis == 0:
        start, end = (found.start - sheet.left) * scale, (found.end - sheet.left) * scale
        near, far = (sheet.top - found.far) * scale, (sheet.top - found.near) * scale
    else:
        start, end = (sheet.top - found.end) * scale, (sheet.top - found.start) * scale
        near, far = (found.near - sheet.left) * scale, (found.far - sheet.left) * scale
    width = number_width(found.size.length, precision)
    is_upright = found.axis == 1
    stretch = Stretch(found.size.name, found.size.length, is_upright, start, end, near, far, width)
    place = best_place(board, stretch, SIDES[found.axis])
    if place is not None:
        put(board, stretch, place)
    return place is not None
