"""New fillings, asked for by prices: what one more of each piece would cost (column generation: Gilmore &
Gomory 1961, 1965)."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from benchalong.workings.layout.filling import Filled
from benchalong.workings.layout.lies import Floats
from benchalong.workings.layout.master import ITERATION, Column
from benchalong.workings.layout.search import Search
from benchalong.workings.layout.sequence import Manner, Sheets

_OFF = 1.25
"""How far from the prices fillings are asked for that are worth having beside the best."""


def price(search: Search, sheets: Sheets, *, times: int) -> Iterator[None]:
    """Prices ask for fillings that are worth more than their board costs."""
    inner = search.inner
    master = search.master()
    demand = np.array(inner.demand)
    for _ in range(times):
        prices = search.prices = master.prices()
        search.work.spend(prices.iterations * ITERATION)
        new = [
            Column(index, sheet.cost, filled.counts)
            for index, sheet in enumerate(inner.sheets)
            for lean in (0.0, None)
            for filled in sheets.fill(index, demand, prices.worth, Manner(40, lean, keep=8))
            if filled.worth > sheet.cost + prices.rent[index] + 1e-7 and search.keep(index, filled)
        ]
        for column in new:
            master.add(column)
        yield
        if not new:
            return
    search.prices = master.prices()


def price_nearby(
    search: Search, sheets: Sheets, chance: np.random.Generator, *, times: int
) -> Iterator[None]:
    """A whole choice often needs fillings that no prices ask for: prices are put off at random."""
    if search.prices is None:
        return
    for _ in range(times):
        off = chance.uniform(1 / _OFF, _OFF, size=len(search.inner.kinds))
        for index, filled in _fillings(search, sheets, search.prices.worth * off):
            search.keep(index, filled)
        yield


def _fillings(search: Search, sheets: Sheets, worth: Floats) -> Iterator[tuple[int, Filled]]:
    demand = np.array(search.inner.demand)
    for index in range(len(search.inner.sheets)):
        for filled in sheets.fill(index, demand, worth, Manner(40, 0.0, keep=8)):
            yield index, filled
