"""The most that pieces in one row can be worth, for every length and every width of the row at once.

A row's pieces lie end to end and none is wider than the row. Pieces are taken up narrowest first, so that one
table serves all widths: what it says after the pieces of some width are in is the row of that width. Whole
numbers throughout; each kind at most as often as it is wanted.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from benchalong.workings.layout.lies import Ints

CELLS_A_PLACING, AN_OPERATION = 60, 1_000
"""How many cells of a table cost as much as one placing; and how many cells each operation on a table costs
beside them."""


@dataclass(frozen=True)
class Lie:
    """A kind as it may lie: so long in the row, so wide."""

    kind: int
    length: int
    width: int


class Rows:
    """Tables for one set of prices."""

    def __init__(self, lies: Sequence[Lie], worth: Sequence[int], most: Sequence[int], longest: int) -> None:
        fitting = [lie for lie in lies if lie.length <= longest and worth[lie.kind] > 0]
        fitting.sort(key=lambda lie: (lie.width, -lie.length, lie.kind))
        self.lies, self.worth = fitting, worth
        self.widths = sorted({lie.width for lie in fitting})
        self.best: Ints = np.zeros((len(self.widths), longest + 1), dtype=np.int64)
        self._taken: list[tuple[Lie, int, NDArray[np.bool_]]] = []
        self._layers: list[int] = []
        table = np.zeros(longest + 1, dtype=np.int64)
        for at, width in enumerate(self.widths):
            for lie in fitting:
                if lie.width == width:
                    self._take_up(table, lie, worth[lie.kind], min(most[lie.kind], longest // lie.length))
            self.best[at] = table
            self._layers.append(len(self._taken))

    def _take_up(self, table: Ints, lie: Lie, worth: int, most: int) -> None:
        """Any number up to the most, as lots of 1, 2, 4 … and the rest."""
        lot = 1
        while most > 0:
            times = min(lot, most)
            size = lie.length * times
            with_it = table[:-size] + worth * times
            is_better = with_it > table[size:]
            self._taken.append((lie, times, is_better))
            table[size:][is_better] = with_it[is_better]
            most, lot = most - times, lot * 2

    @property
    def size(self) -> int:
        """What its tables cost, in cells."""
        return len(self._taken) * (int(self.best.shape[1]) + 3 * AN_OPERATION)

    def held(self, at: int, length: int) -> list[tuple[Lie, int]]:
        """What makes up the best row of the width numbered so."""
        found = []
        for lie, times, is_better in reversed(self._taken[: self._layers[at]]):
            size = lie.length * times
            if length >= size and is_better[length - size]:
                found.append((lie, times))
                length -= size
        return found
