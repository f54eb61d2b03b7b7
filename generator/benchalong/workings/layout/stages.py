"""The most that one board can be worth when it is cut in stages: sections, rows, pieces.

The last step of the dynamic programme of Gilmore & Gomory (1965): the best sections (`sections`) one after
another along the board. On a board with defects it matters where a section lies, so its worth is told by
where it starts and ends (`spoilt_sections`). What comes out is an upper bound, and often the truth.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from benchalong.workings.layout.lies import Ints
from benchalong.workings.layout.rows import AN_OPERATION, Rows
from benchalong.workings.layout.sections import Plank, Sections
from benchalong.workings.layout.spoilt_sections import SpoiltSections

CELLS, CELLS_SPOILT = 800, 320
"""How many cells there are along a board at most: a clear one, one with defects."""


class Stages:
    """What a board is worth at most, and what makes it up: a kind perhaps oftener than it is wanted."""

    def __init__(self, plank: Plank, rows: Rows, *, finer: int = 1) -> None:
        self.sections = Sections(plank, rows, finer * (CELLS_SPOILT if plank.defects else CELLS))
        self.size = self.sections.size
        self.is_clear = not plank.defects
        cells = self.sections.cells
        if plank.defects:
            spoilt = SpoiltSections(self.sections)
            self.size += spoilt.size
            self._worth_to: Callable[[int], tuple[Ints, Ints]] = spoilt.ending_at
            self._add_held = spoilt.add_held
        else:
            self._worth_to = self._clear_ending_at
            self._add_held = self._add_clear
            section = self.sections.most(self.sections.width)
            self._gains = np.flatnonzero(np.diff(section, prepend=-1) > 0)[::-1]
            self._section = section
        self.size += (cells + 1) * (cells // 2 + 2 * AN_OPERATION)
        self.board = np.zeros(cells + 1, dtype=np.int64)
        self._came_from = np.full(cells + 1, -1, dtype=np.int64)
        for end in range(cells + 1):
            self._reach(end)

    @property
    def worth(self) -> int:
        return int(self.board[-1])

    def held(self) -> dict[int, int]:
        counts: dict[int, int] = {}
        end = len(self.board) - 1
        while end >= 0:
            start = int(self._came_from[end])
            if start < 0:
                end -= 1
                continue
            self._add_held(start, end, counts)
            if start == end:
                break
            end = start
        return counts

    def _reach(self, end: int) -> None:
        """The best up to this cell: nothing more than up to the last, or one more section that ends here."""
        if end:
            self.board[end] = self.board[end - 1]
        starts, worth = self._worth_to(end)
        if starts.size:
            total = worth + self.board[starts]
            best = int(np.argmax(total))
            if total[best] > self.board[end]:
                self.board[end], self._came_from[end] = total[best], starts[best]

    def _clear_ending_at(self, end: int) -> tuple[Ints, Ints]:
        lengths = self._gains[np.searchsorted(-self._gains, -end) :]
        return end - lengths, self._section[lengths]

    def _add_clear(self, start: int, end: int, counts: dict[int, int]) -> None:
        self.sections.add_held(self.sections.width, end - start, counts)
