"""The drawing of a part: three named views in their places, with all sizes, on a sheet."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from benchalong.drawing.alt import drawing_alt
from benchalong.drawing.board import Board
from benchalong.drawing.dimensions import wanted_sizes
from benchalong.drawing.layout import SHEET, Layout, Listed, Projection, Scene, laid_out
from benchalong.drawing.own_triangle import OwnTriangle
from benchalong.drawing.picture import Picture
from benchalong.drawing.sheet import (
    Plain,
    add_lines,
    add_number,
    add_size,
    add_symbol,
    add_text,
    add_unit_note,
    add_word,
    svg_root,
    svg_text,
)
from benchalong.drawing.table import add_point_table, table_lines
from benchalong.drawing.text import WORD, as_finely, in_lines, number_width
from benchalong.drawing.views import view_lines
from benchalong.ground.shown import Precision, System
from benchalong.plan.model import Part
from benchalong.workings.bodies import Floats
from benchalong.workings.solids import Solid

LINE = 17.0
"""From one line of notes to the next, in px."""
SYMBOL_ROOM = 56.0
"""What the sign of the projection takes beside the first notes, in px."""
MARGIN = 2.0
LARGER = {
    ("down",): "Thickness drawn larger than length and width; the sizes are true.",
    ("across",): "Width drawn larger than length and thickness; the sizes are true.",
    ("across", "down"): "Width and thickness drawn larger than length; the sizes are true.",
}


def part_drawing(
    part: Part,
    solid: Solid,
    *,
    precision: Precision,
    units: System,
    projection: Projection,
    triangle: OwnTriangle | None = None,
) -> Picture:
    """Three views of a part with every size of its box and its cuts, for a phone's width and up.

    A size that finds no room beside the views stands in a list under them, with a letter at its place.
    """
    wanted = wanted_sizes(part, rather=triangle.side if triangle else "")
    lines = {view: view_lines(solid, view) for view in wanted.views}
    scene = Scene(part, wanted, lines, precision, projection, triangle)
    return _written(scene, laid_out(scene), Plain(units, precision))


def _written(scene: Scene, layout: Layout, plain: Plain) -> Picture:
    alt = drawing_alt(scene.part, scene.wanted.views)
    alt += f" {scene.triangle.said}" if scene.triangle else ""
    width = max(SHEET, layout.width)
    notes = list(_notes(scene, layout, width))
    rows = table_lines(scene.wanted.points)
    height = layout.height + LINE * (1 + len(notes) + len(layout.listed) + rows) + 8
    root = svg_root(width=width, height=height, alt=alt, kind="part-drawing")
    shift = (width - layout.width) / 2
    for view, board in layout.boards.items():
        x, y = layout.corners[view]
        _add_view(root, board, layout.lines[view], plain, at=(x + shift, y))
    add_symbol(root, at=(width - 30, layout.height + 13), is_third=scene.projection == "third angle")
    y = _add_notes(root, notes, layout, plain)
    add_point_table(root, scene.wanted.points, plain, y=y + LINE)
    return Picture(svg_text(root), alt, width, height)


def _add_view(
    root: Any, board: Board, lines: dict[str, Floats], plain: Plain, *, at: tuple[float, float]
) -> None:
    for kind in ("hidden-line", "centre", "break"):
        add_lines(root, lines[kind].tolist(), kind, at=at)
    led = set(board.leaders)
    add_lines(root, [line for line in board.thin if line not in led], "thin", at=at)
    add_lines(root, board.leaders, "thin leader", at=at)
    add_lines(root, lines["visible"].tolist(), "visible", at=at)
    if "triangle" in lines:
        add_lines(root, lines["triangle"].tolist(), "triangle", at=at)
    add_lines(root, board.grain, "grain", at=at)
    for word in board.words:
        add_word(root, word, at=at)
    for number in board.numbers:
        add_number(root, number, plain, at=at)


def _notes(scene: Scene, layout: Layout, width: float) -> Iterator[str]:
    if layout.is_shortened:
        text = "Drawn shortened between the zigzag lines; the sizes are true."
        yield from in_lines(text, size=WORD, width=width - SYMBOL_ROOM)
    if layout.larger:
        yield from in_lines(LARGER[layout.larger], size=WORD, width=width - SYMBOL_ROOM)
    of_set = [scene.triangle.said] if scene.triangle else []
    for note in (*scene.wanted.notes, *of_set):
        yield from in_lines(note, size=WORD, width=width - SYMBOL_ROOM)


def _add_notes(root: Any, notes: list[str], layout: Layout, plain: Plain) -> float:
    """Line by line; where the last one stands."""
    y = layout.height + LINE
    add_unit_note(root, plain.units, x=MARGIN, y=y)
    for note in notes:
        y += LINE
        add_text(root, note, MARGIN, y, "label note")
    for one in layout.listed:
        y += LINE
        _add_listed(root, one, plain, y)
    return y


def _add_listed(root: Any, one: Listed, plain: Plain, y: float) -> None:
    """The letter, the size, what it is."""
    if one.key:
        add_text(root, one.key, MARGIN, y, "key")
    room = number_width(one.length, as_finely(one.sign, plain.precision))
    add_size(root, one.length, plain, MARGIN + 18, y, anchor="start", sign=one.sign)
    add_text(root, one.what, MARGIN + 26 + room, y, "label note")
