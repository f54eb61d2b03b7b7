"""What pieces cut from sticks cost in room, and the bound that follows from it.

Column generation (Gilmore & Gomory 1961): prices ask for fillings that are worth more than their stick
costs. One table of the best worth at every length (`knapsack`) gives many at once, each piece's best company,
so that few rounds are needed. Prices are rounded down to whole numbers first and the best filling at them is
found exactly, so the bound holds whatever the solver's arithmetic did (the argument of Farley 1990). It is
enough when the bound and the relaxation round up to the same cost.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor, gcd

import numpy as np

from benchalong.workings.layout.knapsack import Best
from benchalong.workings.layout.lies import Floats, Work
from benchalong.workings.layout.master import ITERATION, Column, Master, Prices

_FINE = 1 << 24
"""How many steps a price of one is told in."""
_CELLS, _A_LAYER, _A_ROUND = 200, 20, 5_000
"""How many cells of a knapsack's table cost as much as one placing; how many placings each layer of it costs,
and each round beside it."""
_A_FILLING = 100
"""How many placings it costs to read a filling from the table."""
_AT_ONCE = 30
"""How many fillings of one stock are taken in a round at most."""
_SLACK = 1e-6


@dataclass(frozen=True)
class Stock:
    length: int
    cost: int
    number: int


@dataclass(frozen=True)
class Sticks:
    """Kinds longest first, all different in length; every one fits some stock."""

    lengths: tuple[int, ...]
    demand: tuple[int, ...]
    stocks: tuple[Stock, ...]

    @property
    def step(self) -> int:
        """Every cost is a multiple of it."""
        return gcd(*(stock.cost for stock in self.stocks)) or 1

    @property
    def numbers(self) -> list[int]:
        return [stock.number for stock in self.stocks]

    def stepped(self, cost: Fraction) -> int:
        """The least cost there could be that is not below this one."""
        return ceil(cost / self.step) * self.step


@dataclass(frozen=True)
class Proof:
    """Prices that prove a bound: no filling is worth more than `over` times what its stick costs, rent
    included. Worth and rents are in steps of `_FINE` to one."""

    bound: Fraction
    worth: tuple[int, ...]
    rents: tuple[int, ...]
    over: Fraction

    def least_worth(self, at: int, cost: int, *, limit: int) -> int:
        """What a filling of a stock is worth at least if it is part of any cut that costs no more than the
        limit: what it lacks, and all others lack, adds up to what limit and bound are apart at most."""
        lacking = (limit - self.bound) * _FINE
        return ceil((cost * _FINE + self.rents[at] - lacking) * self.over)


class Pricing:
    """Every filling seen, and the programme over them."""

    def __init__(self, sticks: Sticks, work: Work) -> None:
        self._sticks, self._work = sticks, work
        dear = 10.0 * max(stock.cost for stock in sticks.stocks) + 1.0
        self.master = Master(sticks.demand, sticks.numbers, dear)
        self._seen: set[tuple[int, tuple[int, ...]]] = set()

    def add(self, stock: int, counts: tuple[int, ...]) -> bool:
        """Whether it is new."""
        if (stock, counts) in self._seen:
            return False
        self._seen.add((stock, counts))
        self.master.add(Column(stock, self._sticks.stocks[stock].cost, counts))
        return True

    def priced(
        self, demand: Sequence[int], numbers: Sequence[int], *, hopeless: float = float("inf")
    ) -> tuple[Prices, int]:
        """The relaxation with all fillings that could matter, and the proven bound, a cost there could be.

        Less is looked for once the bound is as much as `hopeless`.
        """
        proven = 0
        for prices, proof in self._rounds(demand, numbers):
            proven = max(proven, self._sticks.stepped(proof.bound))
            if self._sticks.stepped(Fraction(prices.cost - _SLACK)) <= proven or proven >= hopeless:
                break
        return prices, proven

    def proof(self) -> Proof:
        """The highest bound for all pieces, and its prices."""
        rounds = self._rounds(self._sticks.demand, self._sticks.numbers)
        return max((proof for _, proof in rounds), key=lambda proof: proof.bound)

    def _rounds(self, demand: Sequence[int], numbers: Sequence[int]) -> Iterator[tuple[Prices, Proof]]:
        """Prices and what they prove, again and again with more fillings until no more are found."""
        self.master.want(demand, numbers)
        while True:
            prices = self.master.prices()
            self._work.spend(prices.iterations * ITERATION)
            worth = [floor(price * _FINE) for price in prices.worth.tolist()]
            best = self._best(worth, demand)
            yield prices, _proven(self._sticks, best, worth, prices.rent, demand, numbers)
            if not self._widened(best, worth, prices.rent, demand) or self._work.left <= 0:
                return

    def _best(self, worth: Sequence[int], demand: Sequence[int]) -> Best:
        capacity = max(stock.length for stock in self._sticks.stocks)
        best = Best(self._sticks.lengths, worth, demand, capacity)
        self._work.spend(best.layers * (capacity // _CELLS + _A_LAYER) + _A_ROUND)
        return best

    def _widened(self, best: Best, worth: Sequence[int], rents: Floats, demand: Sequence[int]) -> bool:
        """Whether fillings were found that are worth more than their stick and its rent."""
        added = 0
        for at, stock in enumerate(self._sticks.stocks):
            least = (stock.cost + rents[at] + _SLACK) * _FINE
            for counts in self._fillings(best, worth, demand, stock.length, least):
                added += self.add(at, counts)
                self._work.spend(_A_FILLING)
        return added > 0

    def _fillings(
        self, best: Best, worth: Sequence[int], demand: Sequence[int], length: int, least: float
    ) -> Iterator[tuple[int, ...]]:
        """The best filling, and each piece's best company, where they are worth more than the least."""
        if best.worth[length] <= least:
            return
        yield tuple(best.counts(length))
        lengths = np.array(self._sticks.lengths)
        may = np.flatnonzero((lengths <= length) & (np.array(demand) > 0))
        total = np.array(worth)[may] + best.worth[length - lengths[may]]
        order = np.argsort(-total, kind="stable")[:_AT_ONCE]
        for kind in may[order[total[order] > least]].tolist():
            counts = best.counts(length - self._sticks.lengths[kind])
            counts[kind] += 1
            if counts[kind] <= demand[kind]:
                yield tuple(counts)


def _proven(
    sticks: Sticks,
    best: Best,
    worth: Sequence[int],
    rent: Floats,
    demand: Sequence[int],
    numbers: Sequence[int],
) -> Proof:
    """Scaled so that no filling is worth more than it costs, what all pieces are worth is a bound."""
    rents = [max(0, ceil(price * _FINE)) for price in rent.tolist()]
    over = Fraction(1)
    for at, stock in enumerate(sticks.stocks):
        costs = stock.cost * _FINE + rents[at]
        if costs:
            over = max(over, Fraction(int(best.worth[stock.length]), costs))
    total = sum(price * wanted for price, wanted in zip(worth, demand, strict=True))
    paid = sum(price * number for price, number in zip(rents, numbers, strict=True))
    bound = (Fraction(total) / over - paid) / _FINE
    return Proof(bound, tuple(worth), tuple(rents), over)
