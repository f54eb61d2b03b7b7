"""The most that a section of a board can be worth, for every length and every width of it at once.

A section is cut off across the board and parted into rows. The dynamic programme of Gilmore & Gomory (1965)
over the rows' widths, with the best row of every length and width from `rows`. A kind is held to its number
within a row but not beyond it. Lengths are told in cells, and a section counts as long as all the cells it
reaches into, so nothing that fits is missed.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from benchalong.workings.layout.lies import Ints
from benchalong.workings.layout.model import Rectangle
from benchalong.workings.layout.rows import Lie, Rows

ACROSS, A_SUM = 1200, 150
"""How many steps across a board are told apart; and how many cells it costs beside them to try a row."""


@dataclass(frozen=True)
class Plank:
    """A board whose sections lie along x; its defects measured without kerf."""

    length: int
    width: int
    defects: tuple[Rectangle, ...] = ()
    kerf: int = 0


class Sections:
    """Tables for one board and one set of prices."""

    def __init__(self, plank: Plank, rows: Rows, cells: int) -> None:
        self.plank, self._rows = plank, rows
        self.step = -(-plank.length // cells)
        self.cells = plank.length // self.step
        self._ends = np.minimum((np.arange(self.cells + 1) + 1) * self.step - 1, plank.length)
        self.step_across = -(-plank.width // ACROSS)
        self.width = plank.width // self.step_across
        self._row_widths = [wide // self.step_across for wide in rows.widths]
        self.sums = [0, *_sums(self._row_widths, self.width)]
        self._fill()

    def _fill(self) -> None:
        """`_used`: the best rows that are together just so wide, a line for each sum; `_best`: at most so
        wide."""
        lanes, sums, wide = self._rows.best[:, self._ends], np.array(self.sums), np.array(self._row_widths)
        place = np.full(self.width + 1, -1, dtype=np.int64)
        place[sums] = np.arange(sums.size)
        self._used = np.zeros((sums.size, self.cells + 1), dtype=np.int64)
        begin = int(np.searchsorted(wide, 1))
        for at, y in enumerate(self.sums[1:], 1):
            end = int(np.searchsorted(wide, y, side="right"))
            before = place[y - wide[begin:end]]
            if before.min() >= 0:
                np.max(self._used[before] + lanes[begin:end], axis=0, out=self._used[at])
            else:
                there = np.flatnonzero(before >= 0)
                np.max(self._used[before[there]] + lanes[begin + there], axis=0, out=self._used[at])
        self._best = np.maximum.accumulate(self._used, axis=0)

    @property
    def size(self) -> int:
        """What its tables cost, in cells."""
        return len(self.sums) * (len(self._row_widths) + 1) * (self.cells + A_SUM)

    def most(self, width: int) -> Ints:
        """What rows are worth that are together at most so wide, by the section's length in cells."""
        best: Ints = self._best[int(np.searchsorted(self.sums, width, side="right")) - 1]
        return best

    def at(self, widths: Ints, cells: Ints) -> Ints:
        """The same for many widths, none below zero, and lengths at once."""
        best: Ints = self._best[np.searchsorted(self.sums, widths, side="right") - 1, cells]
        return best

    def best_beside(self, widths: Ints, cells: Ints, board: Ints) -> Ints:
        """What the rest of the board is worth at most, beside and after rows that leave so much width in a
        section of at least so many cells."""
        rest = self._best + board[::-1][None, :]
        rest = np.maximum.accumulate(rest[:, ::-1], axis=1)[:, ::-1]
        best: Ints = rest[np.searchsorted(self.sums, widths, side="right") - 1, cells]
        return best

    def across(self, width: int) -> int:
        """In the steps across; rounded down, as all widths are."""
        return width // self.step_across

    def add_held(self, width: int, cell: int, counts: dict[int, int]) -> None:
        """Counts in what makes up that worth."""
        aim, length = self.most(width)[cell], int(self._ends[cell])
        y = self.sums[int(np.flatnonzero(self._used[:, cell] == aim)[0])]
        while y:
            at = self._last_row(y, cell, length)
            for lie, times in self._rows.held(at, length):
                counts[lie.kind] = counts.get(lie.kind, 0) + times
            y -= self._row_widths[at]

    def with_narrow(self, width: int) -> Ints:
        """What a section is worth where some row holds a piece at most so wide, and narrower than the row."""
        best = np.zeros(self.cells + 1, dtype=np.int64)
        for at, lie in self._narrow(width):
            np.maximum(best, self._with_narrow(at, lie), out=best)
        return best

    def add_narrow_held(self, width: int, cell: int, counts: dict[int, int]) -> None:
        """Counts in what makes up that worth."""
        aim, length = self.with_narrow(width)[cell], int(self._ends[cell])
        at, lie = next(one for one in self._narrow(width) if self._with_narrow(*one)[cell] == aim)
        self.add_held(self.width - self._row_widths[at], cell, counts)
        for held, times in [(lie, 1), *self._rows.held(at, length - lie.length)]:
            counts[held.kind] = counts.get(held.kind, 0) + times

    def _narrow(self, width: int) -> list[tuple[int, Lie]]:
        return [
            (at, lie)
            for at, wide in enumerate(self._rows.widths)
            for lie in self._rows.lies
            if lie.width < wide <= self.plank.width and self.across(lie.width) <= width
        ]

    def _with_narrow(self, at: int, lie: Lie) -> Ints:
        left = self._ends - lie.length
        row = self._rows.best[at, np.maximum(left, 0)] + self._rows.worth[lie.kind]
        return np.where(left >= 0, self.most(self.width - self._row_widths[at]) + row, 0)

    def _last_row(self, y: int, cell: int, length: int) -> int:
        used = dict(zip(self.sums, self._used[:, cell].tolist(), strict=True))
        return next(
            at
            for at, wide in enumerate(self._row_widths)
            if wide and y - wide in used and used[y - wide] + self._rows.best[at, length] == used[y]
        )


def _sums(sizes: list[int], most: int) -> list[int]:
    """Every sum of sizes, each taken any number of times, from the least above zero to the most."""
    reached, mask = 1, (1 << (most + 1)) - 1
    for size in sorted(set(sizes)):
        shift = size
        while 0 < shift <= most:
            reached = (reached | reached << shift) & mask
            shift *= 2
    return [y for y in range(1, most + 1) if reached >> y & 1]
