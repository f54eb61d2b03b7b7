"""Pieces that would lie on a defect move on until they are clear of it, each in every way it may.

Within its row a piece moves along; a row moves across; a section begins further along. What is left behind is
waste. A move within a row needs three turns, a row's move two.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from benchalong.workings.layout.lies import ALONG_ROWS, Ints, Lies
from benchalong.workings.layout.model import Rectangle

SECTION, ROW, BESIDE, ON_TOP = range(4)
"""How a piece is put: it begins a section, begins a row, goes beside the last in the row, or on top of it."""


@dataclass(frozen=True)
class Placings:
    """Which piece may go where, as equally long columns: of which filling, which lie, how it is put, where
    its section starts and where its own corner is."""

    entry: Ints
    lie: Ints
    put: Ints
    section: Ints
    at_x: Ints
    at_y: Ints

    def only(self, chosen: NDArray[np.bool_]) -> Placings:
        return Placings(*(column[chosen] for column in vars(self).values()))


class Dodging:
    def __init__(self, lies: Lies, defects: Sequence[Rectangle], kerf: int, turns: int) -> None:
        self._defects, self._kerf, self._turns = defects, kerf, turns
        self._length, self._width = lies.length, lies.width
        self._is_block = lies.run == ALONG_ROWS
        self.is_needed = bool(defects)

    def cleared(self, placings: Placings, limits: tuple[Ints, Ints]) -> Placings:
        """Those that are clear of defects, moved where they have to be, within their limits along and
        across."""
        hit = self._hit(placings)
        found = [(placings.only(~hit), limits[0][~hit], limits[1][~hit])]
        moved, ends, fars = placings.only(hit), limits[0][hit], limits[1][hit]
        for one, may in self._moves(moved):
            found.append((one.only(may), ends[may], fars[may]))
        kept = [self._within(*one) for one in found]
        columns = zip(*(vars(one).values() for one in kept), strict=True)
        return Placings(*(np.concatenate(column) for column in columns))

    def _moves(self, placings: Placings) -> list[tuple[Placings, NDArray[np.bool_]]]:
        along, across = self._moved_along(placings), self._moved_across(placings)
        put, section, at_x, at_y = placings.put, placings.section, placings.at_x, placings.at_y
        first = (placings.entry, placings.lie, put)
        moves = [(Placings(*first, np.where(put == SECTION, along, section), along, at_y), put == SECTION)]
        if self._turns >= 2:
            moves.append((Placings(*first, section, at_x, across), (put == SECTION) | (put == ROW)))
        if self._turns >= 3:
            may = (put != ON_TOP) & ~self._is_block[placings.lie]
            moves.append((Placings(*first, section, along, at_y), may))
        return moves

    def _within(self, placings: Placings, ends: Ints, fars: Ints) -> Placings:
        fits = placings.at_x + self._length[placings.lie] <= ends
        fits &= placings.at_y + self._width[placings.lie] <= fars
        return placings.only(fits & ~self._hit(placings))

    def _hit(self, placings: Placings) -> NDArray[np.bool_]:
        hit = np.zeros(placings.entry.size, dtype=bool)
        for defect in self._defects:
            hit |= self._meets(placings, defect, placings.at_x, placings.at_y)
        return hit

    def _meets(self, placings: Placings, defect: Rectangle, x: Ints, y: Ints) -> NDArray[np.bool_]:
        """The kerf after a piece may lie in the defect."""
        end, far = x + self._length[placings.lie], y + self._width[placings.lie]
        meets: NDArray[np.bool_] = (x < defect.end) & (end - self._kerf > defect.x)
        return meets & (y < defect.far) & (far - self._kerf > defect.y)

    def _moved_along(self, placings: Placings) -> Ints:
        x = placings.at_x
        for defect in sorted(self._defects, key=lambda one: one.x):
            x = np.where(self._meets(placings, defect, x, placings.at_y), defect.end, x)
        return x

    def _moved_across(self, placings: Placings) -> Ints:
        y = placings.at_y
        for defect in sorted(self._defects, key=lambda one: one.y):
            y = np.where(self._meets(placings, defect, placings.at_x, y), defect.far, y)
        return y
