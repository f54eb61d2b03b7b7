"""A whole choice found by diving: the filling used most is taken, prices ask for fillings of what is left,
and so on.

Diving with column generation (Sadykov et al. 2019): what is left after some boards are settled often needs
fillings that no prices for everything asked for. A dive ends when what is left can't be had for the money
left; the next one, a little different, may do better. All its fillings are kept.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from benchalong.workings.layout.choosing import without_spares
from benchalong.workings.layout.filling import Manner
from benchalong.workings.layout.lies import Ints
from benchalong.workings.layout.master import ITERATION, Column, Prices
from benchalong.workings.layout.search import Search
from benchalong.workings.layout.sequence import Full, Sheets

_ROUNDS = 8
"""How often prices ask for fillings of what is left, where it can't be had for the money left."""
_CAPS = (1.0, 1.1)
_AT_RANDOM = 0.25
"""How much chance may add to what share of a filling is used."""


class Dive:
    def __init__(self, search: Search, sheets: Sheets, chance: np.random.Generator, *, beam: int) -> None:
        self._search, self._sheets, self._chance, self._beam = search, sheets, chance, beam
        self._master = search.master()
        self._left: Ints = np.array(search.inner.demand)
        self._free: Ints = np.array([sheet.number for sheet in search.inner.sheets])
        self._money = search.cost - search.step if np.isfinite(search.cost) else search.cost_of_all
        self._settled: list[Full] = []

    def run(self) -> Iterator[None]:
        while self._left.any():
            prices = self._prices()
            if self._settled and prices.cost > self._money + 1e-6:
                prices = self._ask_for_more(prices)
            if prices.cost > self._money + 1e-6:
                return
            self._settle(prices)
            yield
        full = without_spares(self._settled, self._search.inner)
        self._search.offer(full, np.zeros_like(self._left))

    def _prices(self) -> Prices:
        self._master.want(self._left.tolist(), self._free.tolist())
        prices = self._master.prices()
        self._search.work.spend(prices.iterations * ITERATION)
        return prices

    def _ask_for_more(self, prices: Prices) -> Prices:
        for at in range(_ROUNDS):
            is_new = self._ask(prices, _CAPS[at % len(_CAPS)])
            prices = self._prices() if is_new else prices
            if prices.cost <= self._money + 1e-6 or (at and not is_new):
                break
        return prices

    def _ask(self, prices: Prices, cap: float) -> bool:
        new = False
        for index, sheet in enumerate(self._search.inner.sheets):
            if self._free[index] <= 0 or sheet.cost > self._money:
                continue
            price = float(sheet.cost + prices.rent[index])
            manner = Manner(self._beam, keep=5, cap=cap * price / sheet.area)
            for filled in self._sheets.fill(index, self._left, prices.worth, manner):
                if filled.worth > price + 1e-7 and self._search.keep(index, filled):
                    self._master.add(Column(index, sheet.cost, filled.counts))
                    new = True
        return new

    def _settle(self, prices: Prices) -> None:
        """Every filling used wholly; else the one used most, give or take."""
        whole = np.floor(prices.shares + 1e-6).astype(int)
        if not whole.any():
            tempting = prices.shares + self._chance.uniform(0, _AT_RANDOM, prices.shares.size)
            whole[int(np.argmax(np.where(prices.shares > 1e-6, tempting, 0.0)))] = 1
        for at in np.flatnonzero(whole).tolist():
            column, times = self._master.columns[at], int(whole[at])
            self._left = np.maximum(self._left - times * np.array(column.counts), 0)
            self._free[column.sheet] -= times
            self._money -= times * column.cost
            filled = self._search.kept[column.sheet, column.counts]
            self._settled += [Full(column.sheet, filled)] * times
