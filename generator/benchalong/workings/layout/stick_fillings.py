"""All fillings that could be part of a cut at some cost: reduced-cost fixing, and counting out by it (as
Baldacci, Christofides & Mingozzi 2008 do for the routes of vehicles).

A filling that is worth so much less than its stick that the bound would pass the cost can't be in such a cut.
Few are left where bound and cost lie close together; a choice among all of them (`master.choose`) then finds
the cut or shows that there is none.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from benchalong.workings.layout.lies import Ints, Work
from benchalong.workings.layout.master import Column
from benchalong.workings.layout.stick_prices import Proof, Sticks

_MOST_CELLS = 4_000_000
"""How large the table of what is still to come may be."""
_MOST, _MOST_BEGINNINGS = 1_000, 6_000
"""From how many fillings a whole choice is worth its work; how many beginnings of fillings are followed."""
_CELLS, _BEGINNINGS = 100, 4
"""How many cells of the table, and how many beginnings of fillings, cost as much as one placing."""


def all_that_could_be(sticks: Sticks, proof: Proof, *, limit: int, work: Work) -> list[Column] | None:
    """Every filling that a cut at no more than the limit could use; None: too many."""
    longest = max(stock.length for stock in sticks.stocks)
    if (len(sticks.lengths) + 1) * (longest + 1) > _MOST_CELLS:
        return None
    to_come = _to_come(sticks, proof.worth, longest)
    work.spend(to_come.size // _CELLS)
    columns: list[Column] = []
    for at, stock in enumerate(sticks.stocks):
        least = proof.least_worth(at, stock.cost, limit=limit)
        fillings = _fillings(sticks, proof.worth, to_come, stock.length, least, work)
        if fillings is None:
            return None
        columns += [Column(at, stock.cost, tuple(counts)) for counts in fillings.tolist() if any(counts)]
    return columns if len(columns) <= _MOST else None


def _to_come(sticks: Sticks, worth: Sequence[int], longest: int) -> Ints:
    """What each length is worth at most with this kind and later ones only, a row each."""
    table = np.zeros((len(sticks.lengths) + 1, longest + 1), dtype=np.int64)
    for kind in range(len(sticks.lengths) - 1, -1, -1):
        size, later, row = sticks.lengths[kind], table[kind + 1], table[kind]
        row[:] = later
        for times in range(1, min(sticks.demand[kind], longest // size) + 1):
            np.maximum(
                row[times * size :], later[: -times * size] + times * worth[kind], out=row[times * size :]
            )
    return table


def _fillings(
    sticks: Sticks, worth: Sequence[int], to_come: Ints, length: int, least: int, work: Work
) -> Ints | None:
    """How many of each kind, a row for each filling that is worth the least. Kind by kind, only beginnings
    are followed that can still come to it."""
    room = np.array([length], dtype=np.int64)
    value = np.zeros(1, dtype=np.int64)
    counts = np.zeros((1, len(sticks.lengths)), dtype=np.int64)
    for kind, size in enumerate(sticks.lengths):
        times = np.arange(min(sticks.demand[kind], length // size) + 1)
        left = room[:, None] - times * size
        worth_now = value[:, None] + times * worth[kind]
        may = (left >= 0) & (worth_now + to_come[kind + 1][np.maximum(left, 0)] >= least)
        begun, taken = np.nonzero(may)
        room, value, counts = left[may], worth_now[may], counts[begun]
        counts[:, kind] = taken
        work.spend(left.size // _BEGINNINGS)
        if room.size > _MOST_BEGINNINGS:
            return None
    return counts
