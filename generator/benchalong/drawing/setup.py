"""A small picture of a setup: which side goes where, and the numbers to set, outside the sketch.

Seen along the feed where a fence guides the work, from above where a stop or a line does, from the side for
jointer and planer. Not to scale, and it says so. None for work that is done to a line by hand.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from benchalong.drawing.board import Board
from benchalong.drawing.picture import Picture
from benchalong.drawing.placing import Side, Stretch, best_place, put
from benchalong.drawing.setups.choose import alt, scenes, sides_note
from benchalong.drawing.setups.scene import Scene, Size
from benchalong.drawing.sheet import (
    Plain,
    add_lines,
    add_number,
    add_size,
    add_text,
    add_unit_note,
    add_word,
    svg_root,
    svg_text,
)
from benchalong.drawing.text import WORD, in_lines, number_width
from benchalong.ground.shown import Precision, System
from benchalong.trade.ways.model import Way, Work

WIDTH = 340.0
"""Px, more where sizes need it."""
EDGE, LINE, BETWEEN = 4.0, 17.0, 14.0
NAMES = {
    "width": "Width of the cut",
    "length": "Length of the cut",
    "standing": "Left standing",
    "mark": "Width on the face",
    "height": "Down from the face",
}
"""Of numbers that aren't set but come of it."""
KINDS = ("cut-face", "thin", "hidden-line", "centre", "break", "visible")
"""From under to over."""
SIDES: dict[bool, tuple[Side, ...]] = {False: ("below", "above"), True: ("right", "left")}


def setup_picture(work: Work, way: Way, *, units: System, precision: Precision) -> Picture | None:
    """None where there is nothing to set that a picture would show."""
    drawn = scenes(work, way)
    if not drawn:
        return None
    return _written(work, way, drawn, Plain(units, precision))


def _written(work: Work, way: Way, drawn: Sequence[Scene], plain: Plain) -> Picture:
    boards = [_filled(scene, plain) for scene in drawn]
    width = max(WIDTH, *(b.extent[2] - b.extent[0] + 2 * EDGE for b, _ in boards))
    notes = in_lines(sides_note(way), size=WORD, width=width - 2 * EDGE)
    listed = [size for _, left in boards for size in left]
    heads = sum(LINE for scene in drawn if scene.name)
    tall = sum(board.extent[3] - board.extent[1] for board, _ in boards) + BETWEEN * (len(boards) - 1)
    height = EDGE + heads + tall + LINE * (len(notes) + len(listed) + 1) + 12
    said = alt(work, way)
    root = svg_root(width=width, height=height, alt=said, kind="setup")
    y = EDGE
    for scene, (board, _) in zip(drawn, boards, strict=True):
        if scene.name:
            add_text(root, scene.name, width / 2, y + WORD, "label view-name", anchor="middle")
            y += LINE
        left, top, right, bottom = board.extent
        at = ((width - (right - left)) / 2 - left, y - top)
        _add(root, scene, board, at, plain)
        y += bottom - top + BETWEEN
    y += LINE - BETWEEN + 4
    for size in listed:
        add_size(root, size.length, plain, EDGE, y, anchor="start")
        room = number_width(size.length, plain.precision)
        add_text(root, name_of(way, size), EDGE + room + 8, y, "label note")
        y += LINE
    for note in notes:
        add_text(root, note, EDGE, y, "label note")
        y += LINE
    add_unit_note(root, plain.units, x=EDGE, y=y)
    return Picture(svg_text(root), said, round(width, 1), round(height, 1))


def name_of(way: Way, size: Size) -> str:
    setting = way.setting(size.key)
    return setting.name if setting else NAMES[size.key]


def _filled(scene: Scene, plain: Plain) -> tuple[Board, list[Size]]:
    """The sketch moved to the origin, with words and numbers round it; and the sizes that found no place."""
    left, top, right, bottom = scene.extent
    rows = [
        (x0 - left, y0 - top, x1 - left, y1 - top)
        for lines in scene.lines.values()
        for x0, y0, x1, y1 in lines
    ]
    board = Board(right - left, bottom - top, np.array(rows, dtype=float).reshape(-1, 4))
    for word in scene.words:
        spot = (word.spot[0] - left, word.spot[1] - top)
        board.put_word(word.text, spot, kind="label", is_upright=word.is_upright)
    unplaced = []
    for size in sorted(_each_once(scene.sizes), key=lambda one: (one.end - one.start, one.key)):
        stretch = _stretch(size, left, top, plain)
        place = best_place(board, stretch, SIDES[size.is_upright])
        if place is None:
            unplaced.append(size)
        else:
            put(board, stretch, place)
    return board, unplaced


def _each_once(sizes: Sequence[Size]) -> list[Size]:
    """Two numbers between the same places are one."""
    told: dict[object, Size] = {}
    for size in sizes:
        told.setdefault((size.is_upright, round(size.start, 1), round(size.end, 1)), size)
    return list(told.values())


def _stretch(size: Size, left: float, top: float, plain: Plain) -> Stretch:
    along, out = (top, left) if size.is_upright else (left, top)
    return Stretch(
        size.key,
        size.length,
        size.is_upright,
        size.start - along,
        size.end - along,
        size.near - out,
        size.far - out,
        number_width(size.length, plain.precision),
    )


def _add(root: object, scene: Scene, board: Board, at: tuple[float, float], plain: Plain) -> None:
    left, top, _, _ = scene.extent
    shifted = (at[0] - left, at[1] - top)
    add_lines(root, board.thin, "thin", at=at)
    for kind in KINDS:
        add_lines(root, scene.lines.get(kind, []), kind, at=shifted)
    for number in board.numbers:
        add_number(root, number, plain, at=at)
    for word in board.words:
        add_word(root, word, at=at)
