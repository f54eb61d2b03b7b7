"""New fillings, asked for by prices: what one more of each piece would cost (column generation: Gilmore &
Gomory 1961, 1965).

First they are asked for with a narrow beam, then, where that finds none, with a wider one. The boards take
turns: a round ends with the first that has a filling worth more than it costs.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from benchalong.workings.layout.filling import Filled, Manner
from benchalong.workings.layout.lies import Floats
from benchalong.workings.layout.master import ITERATION, Column, Master, Prices
from benchalong.workings.layout.search import Search
from benchalong.workings.layout.sequence import Sheets

_CAPS = (1.0, 1.1, 1.3)
"""How much more than its price per area the rest of a board may promise."""
_KEEP, _KEEP_NEARBY = 20, 100
_NEARBY = 100
"""How wide the beams are for fillings worth having beside the best."""
_OFF = 1.06
"""How far from the prices such fillings are asked for."""

_OWN, _STEADIED = 0.3, 40
"""With what share a round's own prices begin, and after how many rounds they would have grown by all."""


class Pricing:
    """The programme of the fillings kept, and the prices it says."""

    def __init__(self, search: Search, sheets: Sheets) -> None:
        self._search, self._sheets = search, sheets
        self._demand = np.array(search.inner.demand)
        self._master: Master = search.master()
        self._turn = self._rounds = 0

    def run(self, beam: int, rounds: int) -> Iterator[None]:
        """Until no filling is worth more than its board costs, as far as such a beam sees."""
        self._take_up()
        prices, idle, boards = self._prices(), 0, len(self._search.inner.sheets)
        for at in range(rounds):
            cap, worth = _CAPS[at % len(_CAPS)], self._steadied(prices)
            new = False
            for _ in range(boards):
                index = self._turn % boards
                self._turn += 1
                if self._ask(index, prices, worth, Manner(beam, keep=_KEEP, cap=cap)):
                    new = True
                    break
            yield
            idle = 0 if new else idle + 1
            if idle >= 2 * len(_CAPS):
                break
            if new:
                prices = self._prices()

    def nearby(self, chance: np.random.Generator, times: int) -> Iterator[None]:
        """A whole choice often needs fillings that no prices ask for: prices are put off at random, and what
        costs little more than its pieces' prices is kept."""
        self._take_up()
        search, prices = self._search, self._prices()
        slack = max(search.cost - search.step - prices.cost, 0.02 * search.step)
        for at in range(times):
            off = chance.uniform(1 / _OFF, _OFF, size=self._demand.size) if at else np.ones(self._demand.size)
            cap = _CAPS[at % len(_CAPS)]
            for index in range(len(search.inner.sheets)):
                manner = Manner(_NEARBY, keep=_KEEP_NEARBY, cap=cap)
                aim = search.inner.sheets[index].cost + prices.rent[index] - slack
                for filled in self._fill(index, prices, prices.worth * off, manner, aim):
                    search.keep(index, filled)
            yield

    def _take_up(self) -> None:
        """Fillings that others found meanwhile."""
        for sheet, counts in list(self._search.kept)[len(self._master.columns) :]:
            self._master.add(Column(sheet, self._search.inner.sheets[sheet].cost, counts))

    def _prices(self) -> Prices:
        prices = self._search.prices = self._master.prices()
        self._search.work.spend(prices.iterations * ITERATION)
        return prices

    def _steadied(self, prices: Prices) -> Floats:
        """Prices jump about while there are few fillings, so at first they are taken together with the steady
        ones (smoothing of prices: Wentges 1997)."""
        share, steady = min(1.0, _OWN + self._rounds / _STEADIED), self._search.steady
        self._rounds += 1
        if steady is None or share == 1.0:
            return prices.worth
        return share * prices.worth + (1 - share) * prices.cost / float(steady @ self._demand) * steady

    def _ask(self, index: int, prices: Prices, worth: Floats, manner: Manner) -> bool:
        sheet = self._search.inner.sheets[index]
        aim = sheet.cost + prices.rent[index] + 1e-7
        new = [
            Column(index, sheet.cost, filled.counts)
            for filled in self._fill(index, prices, worth, manner, aim)
            if self._search.keep(index, filled)
        ]
        for column in new:
            self._master.add(column)
        return bool(new)

    def _fill(
        self, index: int, prices: Prices, worth: Floats, manner: Manner, aim: float
    ) -> Sequence[Filled]:
        """New fillings that are worth as much as is aimed at, by the prices; they are sought by `worth`."""
        sheet, kept = self._search.inner.sheets[index], self._search.kept
        rate = float(sheet.cost + prices.rent[index]) / sheet.area
        capped = Manner(manner.beam, keep=manner.keep, cap=(manner.cap or 1.0) * rate)

        def is_wanted(counts: tuple[int, ...]) -> bool:
            return (index, counts) not in kept and float(np.array(counts) @ prices.worth) >= aim

        return self._sheets.fill(index, self._demand, worth, capped, is_wanted)
