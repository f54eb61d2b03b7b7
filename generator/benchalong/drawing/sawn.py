"""A board or sheet with what is cut from it: each blank with its letter, each cut with its number.

A board is sixteen times as long as it is wide, so widths are drawn larger than lengths where letters would
not fit otherwise, and the picture says how much. What finds no room is in the list beside the picture.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from math import ceil
from typing import Any

import svgwrite.shapes

from benchalong.drawing.board import Rect, grown, meets
from benchalong.drawing.picture import Picture
from benchalong.drawing.sheet import (
    Plain,
    add_lines,
    add_size,
    add_text,
    add_unit_note,
    svg_root,
    svg_text,
    tidy,
)
from benchalong.drawing.text import NUMBER, WORD, number_width, text_width
from benchalong.ground.lengths import Length
from benchalong.workings.boards.model import Laid, SawCut, Sawn, Spot

WIDTH = 346.0
LEFT, TOP = 14.0, 16.0
LOWEST = 22.0
"""Px that the narrowest blank should be tall."""
MOST_TIMES = 5
TALLEST = 420.0
BUBBLE = 7.5
"""Radius of a cut's number, px."""
HATCH = 7.0


def sawn_picture(board: Sawn, letters: Mapping[str, str], *, what: str, names: str, plain: Plain) -> Picture:
    """`letters`: of each blank. `what`: `board`, `sheet`; `names`: what is cut from it, for those who don't
    see it."""
    alt = f"A {what} sawn into {names}, its cuts numbered in the order they are made."
    scales = _scales(board)
    height = TOP + float(board.width) * scales.y + BUBBLE + 4 + 40
    svg = svg_root(width=WIDTH, height=height, alt=alt, kind="sawn")
    sheet = _Sheet(svg, scales, plain)
    sheet.draw(board, letters)
    _notes(svg, scales, plain, y=height - 22)
    return Picture(svg_text(svg), alt, WIDTH, height)


@dataclass(frozen=True)
class _Scales:
    x: float
    """Px per mm along the board."""
    times: int
    """How much larger widths are drawn."""

    @property
    def y(self) -> float:
        return self.x * self.times

    def room(self, spot: Spot) -> Rect:
        left, top = LEFT + float(spot.x) * self.x, TOP + float(spot.y) * self.y
        return (left, top, left + float(spot.length) * self.x, top + float(spot.width) * self.y)


def _scales(board: Sawn) -> _Scales:
    x = (WIDTH - 2 * LEFT) / float(board.length)
    narrowest = min((float(laid.at.width) for laid in board.laid), default=float(board.width))
    most = min(MOST_TIMES, int(TALLEST / (float(board.width) * x)))
    return _Scales(x, max(1, min(most, ceil(LOWEST / (narrowest * x)))))


@dataclass
class _Sheet:
    svg: Any
    scales: _Scales
    plain: Plain
    taken: list[Rect] = field(default_factory=list)

    def draw(self, board: Sawn, letters: Mapping[str, str]) -> None:
        for laid in board.laid:
            self._rect(self.scales.room(laid.at), "laid")
        for spot in board.keep_clear:
            add_lines(self.svg, list(_hatched(self.scales.room(spot))), "thin", at=(0, 0))
        whole = Spot(Length(0), Length(0), board.length, board.width)
        self._rect(self.scales.room(whole), "visible edge")
        add_lines(self.svg, [self._line(cut) for cut in board.cuts], "saw", at=(0, 0))
        for laid in board.laid:
            self._letter(laid, letters[laid.blank])
        for cut in board.cuts:
            self._number(cut)
        for laid in board.laid:
            self._length(laid.at)
        for spot in board.left_over:
            self._left(spot)

    def _rect(self, room: Rect, kind: str) -> None:
        left, top, right, bottom = room
        self.svg.add(
            svgwrite.shapes.Rect(
                (tidy(left), tidy(top)), (tidy(right - left), tidy(bottom - top)), class_=kind, debug=False
            )
        )

    def _letter(self, laid: Laid, letter: str) -> None:
        left, top, right, bottom = self.scales.room(laid.at)
        x, y = (left + right) / 2, (top + bottom) / 2
        if right - left > 60:
            x = left + 17
        add_text(self.svg, letter, x, y + 4.5, "key", anchor="middle")
        half = text_width(letter, NUMBER) / 2 + 1
        self.taken.append((x - half, y - 7, x + half, y + 6))

    def _length(self, at: Spot) -> None:
        """Along the blank, where there is room for it in either system."""
        left, top, right, bottom = self.scales.room(at)
        room = number_width(at.length, self.plain.precision)
        y = (top + bottom) / 2
        for x in (left + room / 2 + 31, (left + right) / 2, right - room / 2 - 4):
            spot = (x - room / 2, y - 8, x + room / 2, y + 7)
            if spot[0] > left + 2 and spot[2] < right - 1 and bottom - top > 15 and self._take(spot):
                add_size(self.svg, at.length, self.plain, x, y + 5, anchor="middle")
                return

    def _left(self, at: Spot) -> None:
        left, top, right, bottom = self.scales.room(at)
        half = text_width("left", WORD) / 2
        x, y = (left + right) / 2, (top + bottom) / 2
        if (
            right - left > 2 * half + 4
            and bottom - top > 14
            and self._take((x - half, y - 7, x + half, y + 6))
        ):
            add_text(self.svg, "left", x, y + 4, "label", anchor="middle")

    def _line(self, cut: SawCut) -> tuple[float, float, float, float]:
        left, top, right, bottom = self.scales.room(cut.of)
        if cut.way == "across":
            x = LEFT + float(cut.at) * self.scales.x
            return (x, top, x, bottom)
        y = TOP + float(cut.at) * self.scales.y
        return (left, y, right, y)

    def _number(self, cut: SawCut) -> None:
        """In a ring on its line, at the first spot that is free, from the near end on."""
        for x, y in _along(self._line(cut)):
            if self._take((x - BUBBLE, y - BUBBLE, x + BUBBLE, y + BUBBLE)):
                ring = svgwrite.shapes.Circle(
                    (tidy(x), tidy(y)), tidy(BUBBLE), class_="cut-ring", debug=False
                )
                self.svg.add(ring)
                add_text(self.svg, str(cut.number), x, y + 3.5, "cut-number", anchor="middle")
                return

    def _take(self, room: Rect) -> bool:
        if any(meets(grown(room, 0.5), other) for other in self.taken):
            return False
        self.taken.append(room)
        return True


def _along(line: tuple[float, float, float, float]) -> Iterator[tuple[float, float]]:
    x0, y0, x1, y1 = line
    long = max(x1 - x0, y1 - y0)
    steps = max(1, int(long // 6))
    for step in range(steps + 1):
        share = step / steps
        yield x0 + (x1 - x0) * share, y0 + (y1 - y0) * share


def _hatched(room: Rect) -> Iterator[tuple[float, float, float, float]]:
    """Strokes from lower left to upper right, and the outline."""
    left, top, right, bottom = room
    yield from ((left, top, right, top), (left, bottom, right, bottom))
    yield from ((left, top, left, bottom), (right, top, right, bottom))
    tall = bottom - top
    start = left - tall + HATCH
    while start < right:
        low, high = max(start, left), min(start + tall, right)
        yield (low, bottom - (low - start), high, bottom - (high - start))
        start += HATCH


def _notes(svg: Any, scales: _Scales, plain: Plain, *, y: float) -> None:
    if scales.times > 1:
        add_text(svg, f"Widths are drawn {scales.times} times as large as lengths.", LEFT, y, "label note")
    add_unit_note(svg, plain.units, x=LEFT, y=y + 16)
