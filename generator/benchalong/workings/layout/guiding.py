"""What the rest of a board may still be worth, as a guide for a search that fills it.

The tables of `stages` tell what any section, row or rest of a board is worth at most, with a piece perhaps
counted twice. A filling so far and what the rest of its board may come to say together how far it may still
lead; the best such are followed (the bound as a guide in a beam search: Ow & Morton 1988). How long a section
becomes is open until its first row is full, so some lengths are tried.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from benchalong.workings.layout.lies import Floats, Ints, Lies, Work
from benchalong.workings.layout.rows import CELLS_A_PLACING, Lie, Rows
from benchalong.workings.layout.sections import Plank
from benchalong.workings.layout.stages import Stages

_FINE = 1 << 20
_ENDS = (0.0, 0.1, 0.25, 0.5, 0.75, 1.0)
"""Where an open section may end, as shares of what is left of the board."""


class Guide:
    """For one clear board."""

    def __init__(self, rows: Rows, scale: float, *, length: int, width: int) -> None:
        self._rows, self._scale, self._length, self._width = rows, scale, length, width
        self._row_widths = np.array(rows.widths)
        stages = Stages(Plank(length, width), rows)
        self._sections, self._board = stages.sections, stages.board
        self.most = stages.worth / scale
        """What a board is worth at most."""
        self.placings = stages.size // CELLS_A_PLACING
        """What its tables cost."""

    def rest(self, *, x0: Ints, x1: Ints, y0: Ints, y1: Ints, x: Ints) -> Floats:
        """For sections from x0 to x1, rows from y0 to y1 filled up to x."""
        row = np.searchsorted(self._row_widths, y1 - y0, side="right") - 1
        above = self._width - y1
        best = self._with_end(x1, x0=x0, row=row, above=above, x=x)
        open_ = np.flatnonzero(y0 == 0)
        if open_.size:
            end, rest = x1[open_], self._length - x1[open_]
            for share in _ENDS[1:]:
                more = self._with_end(
                    end + (rest * share).astype(np.int64),
                    x0=x0[open_],
                    row=row[open_],
                    above=above[open_],
                    x=x[open_],
                )
                best[open_] = np.maximum(best[open_], more)
        return best / self._scale

    def _with_end(self, end: Ints, *, x0: Ints, row: Ints, above: Ints, x: Ints) -> Ints:
        step = self._sections.step
        beside = np.where(row >= 0, self._rows.best[row, np.maximum(end - x, 0)], 0)
        cells = np.minimum((end - x0) // step, self._sections.cells)
        after = np.minimum((self._length - end) // step, self._sections.cells)
        total: Ints = (
            beside + self._sections.at(above // self._sections.step_across, cells) + self._board[after]
        )
        return total


class Guides:
    """Guides for the boards of one order, made when asked for and kept while prices stay."""

    def __init__(self, lies: Lies, lengths: Sequence[int], work: Work) -> None:
        self._lies, self._lengths, self._work = lies, lengths, work
        self._key: tuple[bytes, bytes] | None = None

    def guide(self, worth: Floats, left: Ints, *, length: int, width: int) -> Guide | None:
        """None where nothing is worth anything."""
        key = (worth.tobytes(), left.tobytes())
        if key != self._key:
            self._key, self._made = key, dict[tuple[int, int], Guide]()
            self._rows = self._rows_at(worth, left)
        if not self._rows.widths:
            return None
        if (length, width) not in self._made:
            guide = Guide(self._rows, self._scale, length=length, width=width)
            self._work.spend(guide.placings)
            self._made[length, width] = guide
        return self._made[length, width]

    def _rows_at(self, worth: Floats, left: Ints) -> Rows:
        lies, demand = self._lies, left.tolist()
        self._scale = _FINE / max(float(worth.max()), 1e-12)
        whole = (worth * self._scale).astype(np.int64).tolist()
        columns = zip(lies.kind.tolist(), lies.length.tolist(), lies.width.tolist(), strict=True)
        chosen = [Lie(*columns) for columns in columns if demand[columns[0]] and whole[columns[0]]]
        rows = Rows(chosen, whole, demand, max(self._lengths))
        self._work.spend(rows.size // CELLS_A_PLACING)
        return rows
