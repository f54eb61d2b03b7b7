"""A panel in its grooves over the year: driest, as made and dampest, one above the other.

The grooves are drawn to scale, with the panel in the middle between them, so that the room left and the wood
still held can be seen as they are; the middle of the panel is left out. Numbers stand under each side.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Any

from benchalong.drawing.picture import Picture
from benchalong.drawing.sheet import Plain, add_lines, add_size, add_text, add_unit_note, svg_root, svg_text
from benchalong.drawing.text import WORD, number_width, text_width
from benchalong.drawing.year import State
from benchalong.ground.lengths import Length

WIDTH = 340.0
ROW = 92.0
EDGE = 4.0
BEHIND = 16.0
"""Px of wood drawn behind a groove."""
GROOVE = 56.0
"""Px for a groove's depth at most."""
LARGEST = 6.0
"""Px per mm."""
TOP, BOTTOM = 20.0, 62.0
"""Of the two sides in a row, px from its top."""
WALLS = (32.0, 50.0)
"""Of a groove."""
PANEL = (35.0, 47.0)
CAPTION = 78.0
BREAK = 16.0
"""From the middle to where the panel is broken off, px."""
SPACING = 6.0
"""Between hatching lines, px."""
ZIG = 3.0

Line = tuple[float, float, float, float]


def groove_year_picture(
    name: str, states: tuple[State, State, State], *, sight: Length, depth: Length, plain: Plain
) -> Picture:
    """`states`: driest, as made, dampest; `sight` is from the edge of one groove to the other's, `depth` that
    of each, in mm."""
    height = 3 * ROW + 52
    alt = f"{name} in its grooves when driest, as made and when dampest: what is held, and the room left."
    svg = svg_root(width=WIDTH, height=height, alt=alt, kind="year")
    scale = min(LARGEST, GROOVE / float(depth)) if depth else LARGEST
    for row, state in enumerate(states):
        _row(svg, state, sight, depth, scale, plain, top=row * ROW)
    add_text(svg, "Grooves to scale; most of the panel is left out.", EDGE, 3 * ROW + 14, "label note")
    add_unit_note(svg, plain.units, x=EDGE, y=3 * ROW + 34)
    return Picture(svg_text(svg), alt, WIDTH, height)


def _row(
    svg: Any, state: State, sight: Length, depth: Length, scale: float, plain: Plain, *, top: float
) -> None:
    reach = (state.width - sight) / 2
    floor, rim = EDGE + BEHIND, EDGE + BEHIND + float(depth) * scale
    tip = rim - float(reach) * scale
    at = (0.0, top)
    add_text(svg, state.name, EDGE, top + 13, "label")
    hatching = [*_hatching(EDGE, floor, TOP, BOTTOM)]
    hatching += [
        line for wall in ((TOP, WALLS[0]), (WALLS[1], BOTTOM)) for line in _hatching(floor, rim, *wall)
    ]
    add_lines(svg, [*hatching, *_mirrored(hatching)], "cut-face", at=at)
    side = list(_outline(floor, rim))
    add_lines(svg, [*side, *_mirrored(side)], "visible", at=at)
    panel = [
        (tip, PANEL[0], WIDTH / 2 - BREAK, PANEL[0]),
        (tip, PANEL[0], tip, PANEL[1]),
        (tip, PANEL[1], WIDTH / 2 - BREAK, PANEL[1]),
    ]
    add_lines(svg, [*panel, *_mirrored(panel)], "visible", at=at)
    zigzag = list(_zigzag(WIDTH / 2 - BREAK))
    add_lines(svg, [*zigzag, *_mirrored(zigzag)], "break", at=at)
    add_size(svg, state.width, plain, WIDTH / 2, top + PANEL[0] - 6, anchor="middle")
    _held(svg, reach, plain, top + CAPTION)
    _room(svg, depth - reach, plain, top + CAPTION)


def _held(svg: Any, reach: Length, plain: Plain, y: float) -> None:
    """`9/32 held`, on the left."""
    if reach > 0:
        add_size(svg, reach, plain, EDGE, y, anchor="start")
        add_text(svg, "held", EDGE + number_width(reach, plain.precision) + 5, y, "label")
    else:
        add_text(svg, "out by", EDGE, y, "label")
        add_size(svg, -reach, plain, EDGE + text_width("out by ", WORD), y, anchor="start")


def _room(svg: Any, room: Length, plain: Plain, y: float) -> None:
    """`room 1/8`, on the right."""
    add_size(svg, abs(room), plain, WIDTH - EDGE, y, anchor="end")
    before = WIDTH - EDGE - number_width(abs(room), plain.precision) - 5
    add_text(svg, "room" if room >= 0 else "too wide by", before, y, "label", anchor="end")


def _outline(floor: float, rim: float) -> Iterator[Line]:
    """Of the side with its groove, open where it goes on outwards."""
    corners = [
        (EDGE, TOP), (rim, TOP), (rim, WALLS[0]), (floor, WALLS[0]),
        (floor, WALLS[1]), (rim, WALLS[1]), (rim, BOTTOM), (EDGE, BOTTOM),
    ]  # fmt: skip
    for one, two in pairwise(corners):
        yield (*one, *two)


def _hatching(left: float, right: float, top: float, bottom: float) -> Iterator[Line]:
    """Lines that rise to the right, on one raster for all of a row."""
    first = int((left + top) // SPACING) + 1
    for step in range(first, int((right + bottom) // SPACING) + 1):
        total = step * SPACING
        start, end = max(left, total - bottom), min(right, total - top)
        if end > start:
            yield (start, total - start, end, total - end)


def _zigzag(x: float) -> Iterator[Line]:
    low, high = PANEL[0] - 3, PANEL[1] + 3
    middle = (low + high) / 2
    yield (x, low, x, middle - ZIG)
    yield (x, middle - ZIG, x + ZIG, middle - 1)
    yield (x + ZIG, middle - 1, x - ZIG, middle + 1)
    yield (x - ZIG, middle + 1, x, middle + ZIG)
    yield (x, middle + ZIG, x, high)


def _mirrored(lines: Sequence[Line]) -> Iterator[Line]:
    for x0, y0, x1, y1 in lines:
        yield (WIDTH - x0, y0, WIDTH - x1, y1)
