"""A part over the year: its width at its driest, as made and at its dampest, one above the other.

The change is a hundredth of the width, so it is drawn many times too large, and says how many. Broken lines
show the edges as made.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from benchalong.drawing.picture import Picture
from benchalong.drawing.sheet import Plain, add_lines, add_size, add_text, add_unit_note, svg_root, svg_text
from benchalong.drawing.text import number_width
from benchalong.ground.lengths import Length

WIDTH = 340.0
MADE = 236.0
"""Px for the width as made."""
MOST = 42.0
"""Px for the larger change, both edges together."""
ROW = 62.0
BAR = 24.0
HEAD = 20.0
"""Of a row, for its words."""
MIDDLE = WIDTH / 2


@dataclass(frozen=True)
class State:
    """One row: `Driest, 6 %` with the width then, in mm."""

    name: str
    width: Length


def year_picture(name: str, states: tuple[State, State, State], plain: Plain) -> Picture:
    """`states`: driest, as made, dampest."""
    made = states[1].width
    larger = max(abs(state.width - made) for state in states)
    times = float(MOST / larger / (MADE / made)) if larger else 1.0
    height = 3 * ROW + 44
    alt = (
        f"{name} over the year: its width when driest, as made and when dampest, the change drawn too large."
    )
    svg = svg_root(width=WIDTH, height=height, alt=alt, kind="year")
    bars = [_edges(state.width - made, larger) for state in states]
    for row, (state, edges) in enumerate(zip(states, bars, strict=True)):
        _row(svg, state, edges, made, plain, top=row * ROW)
    tops = [row * ROW + HEAD for row in (0, 2)]
    guides = [(edge, top - 3, edge, top + BAR + 5) for edge in bars[1] for top in tops]
    add_lines(svg, guides, "hidden-line", at=(0, 0))
    add_text(svg, f"The change is drawn {times:.0f} times too large.", 4, 3 * ROW + 16, "label note")
    add_unit_note(svg, plain.units, x=4, y=3 * ROW + 34)
    return Picture(svg_text(svg), alt, WIDTH, height)


def _edges(change: Length, larger: Length) -> tuple[float, float]:
    """Where a bar begins and ends, px."""
    wide = MADE + (MOST * float(change / larger) if larger else 0.0)
    return MIDDLE - wide / 2, MIDDLE + wide / 2


def _row(
    svg: Any, state: State, edges: tuple[float, float], made: Length, plain: Plain, *, top: float
) -> None:
    add_text(svg, state.name, 4, top + 13, "label")
    if state.width != made:
        _change(svg, state.width - made, plain, top + 13)
    add_lines(svg, list(_box(*edges, top + HEAD, top + HEAD + BAR)), "visible", at=(0, 0))
    add_size(svg, state.width, plain, MIDDLE, top + HEAD + BAR / 2 + 5, anchor="middle")


def _change(svg: Any, change: Length, plain: Plain, y: float) -> None:
    """`narrower by 1/32`, the number at the end, room kept for it in either system."""
    room = number_width(abs(change), plain.precision)
    words = "wider by" if change > 0 else "narrower by"
    add_text(svg, words, WIDTH - 8 - room, y, "label", anchor="end")
    add_size(svg, abs(change), plain, WIDTH - 2, y, anchor="end")


def _box(left: float, right: float, top: float, bottom: float) -> Iterator[tuple[float, float, float, float]]:
    corners = [(left, top), (right, top), (right, bottom), (left, bottom)]
    for one, two in zip(corners, corners[1:] + corners[:1], strict=True):
        yield (*one, *two)
