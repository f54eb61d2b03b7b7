"""Fill board after board until no piece is left; learn from it which pieces are hard to place well, and do it
again.

Sequential value correction (Mukhacheva et al. 2000; Belov & Scheithauer 2007): each board is filled to be
worth as much as possible, and pieces that ended on badly used boards are worth more the next time, so that
they are placed earlier. A piece's worth begins as its area, a little more for large ones.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from benchalong.workings.layout.filling import Filled, Filler, IsWanted, Manner, Room
from benchalong.workings.layout.inner import Inner, Kind
from benchalong.workings.layout.lies import Floats, Ints


@dataclass(frozen=True)
class Full:
    """One board filled."""

    sheet: int
    filled: Filled


class Sheets:
    """Fills whole sheets, defects and all."""

    def __init__(self, inner: Inner, filler: Filler) -> None:
        self._filler = filler
        self._rooms = [
            Room(sheet.length, sheet.width, inner.turns, inner.first, sheet.defects) for sheet in inner.sheets
        ]

    def fill(
        self, sheet: int, left: Ints, worth: Floats, manner: Manner, is_wanted: IsWanted = lambda _: True
    ) -> list[Filled]:
        """The best fillings found that are wanted, best first; none when nothing fits."""
        return self._filler.fill(self._rooms[sheet], left, worth, manner, is_wanted)


def in_sequence(
    inner: Inner, sheets: Sheets, worth: Floats, manner: Manner, left: Ints, numbers: Sequence[int]
) -> tuple[list[Full], Ints]:
    """Boards filled one after another, and what is left when no board takes any more."""
    left, free, full = left.copy(), list(numbers), []
    while left.any():
        best = _best_board(inner, sheets, worth, manner, left, free)
        if best is None:
            break
        counts = np.array(best.filled.counts)
        held = counts > 0
        times = min(int((left[held] // counts[held]).min()), free[best.sheet])
        full += [best] * times
        left = left - times * counts
        free[best.sheet] -= times
    return full, left


def _best_board(
    inner: Inner, sheets: Sheets, worth: Floats, manner: Manner, left: Ints, free: Sequence[int]
) -> Full | None:
    """The one that is worth most for its cost; or, when one takes all that is left, the cheapest such."""
    best: tuple[float, float, Full] | None = None
    for index, sheet in enumerate(inner.sheets):
        if free[index] <= 0:
            continue
        for filled in sheets.fill(index, left, worth, manner)[:1]:
            takes_all = np.array_equal(np.array(filled.counts), left)
            rate = filled.worth / max(sheet.cost, 1e-9)
            key = (1.0, -float(sheet.cost)) if takes_all else (0.0, rate)
            if best is None or key > best[:2]:
                best = (*key, Full(index, filled))
    return best[2] if best else None


def first_worth(inner: Inner, power: float) -> Floats:
    return np.array([float(_room(kind)) ** power for kind in inner.kinds])


def _room(kind: Kind) -> int:
    """What it takes up where it takes up least."""
    return min(length * width for length, width in map(kind.size, kind.ways))


def corrected(
    inner: Inner, worth: Floats, full: Sequence[Full], power: float, chance: np.random.Generator
) -> Floats:
    """Pieces on boards that waste much are worth more; how much of the new worth is taken is left to
    chance."""
    sums, times = np.zeros_like(worth), np.zeros_like(worth)
    areas = np.array([float(_room(kind)) for kind in inner.kinds])
    for board in full:
        counts = np.array(board.filled.counts, float)
        use = inner.sheets[board.sheet].area / max(float(counts @ areas), 1.0)
        sums += counts * use
        times += counts
    aim = np.where(times > 0, areas**power * sums / np.maximum(times, 1.0), worth)
    share = chance.uniform(0.2, 0.8, size=worth.size)
    return (1 - share) * worth + share * aim
