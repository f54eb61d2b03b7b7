"""A bound that knows what fits side by side: the bar relaxation.

Saw every board into slices a unit long. What a slice holds of different pieces lies side by side, so it fits
the board's width; and a piece as long as so many units is in as many slices. How many slices of which pieces
are needed at least is a cutting-stock programme in one dimension (Scheithauer 1999), and its prices are
weights: of all boards, none can hold more weight than its best slice times its length. The cheapest boards
that can hold all weight cost at most what any layout costs. Weights are whole numbers and the best slice is
found exactly, so the bound is safe.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from benchalong.workings.layout.inner import Inner
from benchalong.workings.layout.knapsack import Best
from benchalong.workings.layout.lies import Work
from benchalong.workings.layout.master import Column, Master, cheapest_cover
from benchalong.workings.layout.model import Way

_FINE = 1 << 24
"""How many steps the dearest price is told in."""
_ROUNDS = 80
_CELLS = 200
"""How many cells of a knapsack's table cost as much as one placing."""


@dataclass(frozen=True)
class _Bars:
    """Slices across a way: `sizes` lie in a slice, `runs` through slices."""

    sizes: Sequence[int]
    runs: Sequence[int]
    demand: Sequence[int]
    slices: Sequence[int]
    """How long a slice of each board is."""
    lengths: Sequence[int]
    """How many slices each board has."""
    costs: Sequence[int]
    numbers: Sequence[int]


def bar_bound(inner: Inner, work: Work) -> int:
    """The better of slices across and along; 0 where pieces may turn, for then neither holds."""
    if any(kind.may_turn for kind in inner.kinds):
        return 0
    return max(_bound(_bars(inner, way), work) for way in Way)


def _bars(inner: Inner, way: Way) -> _Bars:
    members = [(*size, kind.demand) for kind in inner.kinds for size in kind.sizes]
    lengths, widths, demand = zip(*members, strict=True)
    board_lengths = [sheet.length for sheet in inner.sheets]
    board_widths = [sheet.width for sheet in inner.sheets]
    sides = (widths, lengths) if way is Way.ACROSS else (lengths, widths)
    boards = (board_widths, board_lengths) if way is Way.ACROSS else (board_lengths, board_widths)
    costs, numbers = [sheet.cost for sheet in inner.sheets], [sheet.number for sheet in inner.sheets]
    return _Bars(sides[0], sides[1], demand, boards[0], boards[1], costs, numbers)


def _bound(bars: _Bars, work: Work) -> int:
    amounts = [run * number for run, number in zip(bars.runs, bars.demand, strict=True)]
    rates = [cost / length for cost, length in zip(bars.costs, bars.lengths, strict=True)]
    limits = [length * number for length, number in zip(bars.lengths, bars.numbers, strict=True)]
    master = Master(amounts, limits, 10.0 * max(rates) + 1e-9)
    at_most, wanted = [1] * len(rates), 0
    for _ in range(_ROUNDS):
        prices = master.prices()
        scale = _FINE / max(float(prices.worth.max()), 1e-12)
        worth = np.floor(prices.worth * scale).astype(int).tolist()
        best = Best(bars.sizes, worth, bars.demand, max(bars.slices))
        work.spend(best.layers * (max(bars.slices) // _CELLS + 20) + 300 * prices.iterations)
        at_most = [
            int(best.worth[size]) * length for size, length in zip(bars.slices, bars.lengths, strict=True)
        ]
        wanted = sum(weight * amount for weight, amount in zip(worth, amounts, strict=True))
        added = 0
        for at, size in enumerate(bars.slices):
            if best.worth[size] > (rates[at] + prices.rent[at]) * scale * (1 + 1e-7) + len(worth):
                master.add(Column(at, rates[at], tuple(best.counts(size))))
                added += 1
        if not added or work.left <= 0:
            break
    return cheapest_cover(bars.costs, at_most, bars.numbers, wanted)
