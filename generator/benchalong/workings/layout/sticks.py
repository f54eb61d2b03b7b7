"""Cut sticks to length: the case where only lengths matter, solved to a proof wherever that can be had.

Stick after stick is filled as full as it goes (Gupta & Ho 1999). If that doesn't meet the bound, column
generation (Gilmore & Gomory 1961) gives the bound of the set-covering relaxation, which is nearly always the
answer rounded up; and diving (fix what the relaxation is sure of, ask again for the rest: Wäscher & Gau 1996)
looks for the cut that meets it. Prices are rounded down to whole numbers first and the best filling at them
is found exactly, so the bound holds whatever the solver's arithmetic did (the argument of Farley 1990).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from math import ceil, floor, gcd

import numpy as np

from benchalong.workings.layout.knapsack import Best, fullest
from benchalong.workings.layout.lies import Floats, Work
from benchalong.workings.layout.master import Column, Master, Prices, choose, worth_choosing

_FINE = 1 << 24
"""How many steps a price of one is told in."""
_CELLS, _A_LAYER = 200, 20
"""How many cells of a knapsack's table cost as much as one placing; and how many placings each layer of it
costs."""


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


@dataclass(frozen=True)
class Stick:
    stock: int
    counts: tuple[int, ...]


@dataclass
class CutSticks:
    """The best so far. `left_out`: of each kind."""

    sticks: tuple[Stick, ...]
    left_out: tuple[int, ...]
    cost: float
    bound: int = 0

    @property
    def is_proven(self) -> bool:
        return self.cost <= self.bound


def cut_sticks(
    sticks: Sticks, *, bound: int, work: Work, seed: int, is_over: Callable[[], bool]
) -> CutSticks:
    search = _Search(sticks, work, is_over, np.random.default_rng(seed), bound)
    search.start()
    if not search.is_done:
        search.raise_bound()
    for _ in search.dives():
        pass
    search.best.bound = search.bound
    return search.best


@dataclass
class _Search:
    sticks: Sticks
    work: Work
    is_over: Callable[[], bool]
    chance: np.random.Generator
    bound: int
    columns: dict[tuple[int, tuple[int, ...]], None] = field(default_factory=dict)

    def __post_init__(self) -> None:
        sticks = self.sticks
        self.best = CutSticks((), sticks.demand, float("inf"))
        dear = 10.0 * max(stock.cost for stock in sticks.stocks) + 1.0
        self.master = Master(sticks.demand, [stock.number for stock in sticks.stocks], dear)

    @property
    def is_done(self) -> bool:
        return self.best.cost <= self.bound or self.work.left <= 0 or self.is_over()

    def start(self) -> None:
        """Filled one after another, with the longest piece in each stick or without it."""
        for with_longest in (True, False):
            self._offer([], self.sticks.demand, with_longest=with_longest)

    def raise_bound(self) -> None:
        _, proven = self._priced(self.sticks.demand, [stock.number for stock in self.sticks.stocks])
        self.bound = max(self.bound, _stepped(proven, self.sticks.step))

    def dives(self) -> Iterator[None]:
        """One dive after another; between them the fillings seen are chosen from as a whole."""
        dive = 0
        while not self.is_done:
            self._dive(careful=dive == 0)
            dive += 1
            if not self.is_done and dive % 4 == 1:
                self._choose()
            yield

    def _offer(self, fixed: list[Stick], rest: Sequence[int], *, with_longest: bool) -> None:
        """The fixed sticks and the rest filled one after another, if that is better."""
        more, left_out = _filled(self.sticks, fixed, rest, with_longest=with_longest)
        cost = sum(self.sticks.stocks[stick.stock].cost for stick in fixed + more)
        self.work.spend(len(more) * len(self.sticks.lengths) * 20)
        for stick in more:
            self._add(stick.stock, stick.counts)
        missing = float(np.dot(left_out, self.sticks.lengths))
        before = float(np.dot(self.best.left_out, self.sticks.lengths))
        if missing < before or (missing == before and cost < self.best.cost):
            self.best = CutSticks(tuple(fixed + more), tuple(left_out), float("inf") if missing else cost)

    def _add(self, stock: int, counts: tuple[int, ...]) -> bool:
        if (stock, counts) in self.columns:
            return False
        self.columns[(stock, counts)] = None
        self.master.add(Column(stock, self.sticks.stocks[stock].cost, counts))
        return True

    def _priced(self, demand: Sequence[int], numbers: Sequence[int]) -> tuple[Prices, Fraction]:
        """The relaxation with all fillings that could matter, and the proven bound on it."""
        self.master.want(demand, numbers)
        proven = Fraction(0)
        while True:
            prices = self.master.prices()
            self.work.spend(prices.iterations * _ITERATION)
            worth = [floor(price * _FINE) for price in prices.worth.tolist()]
            capacity = max(stock.length for stock in self.sticks.stocks)
            best = Best(self.sticks.lengths, worth, demand, capacity)
            self.work.spend(best.layers * (capacity // _CELLS + _A_LAYER) + _A_ROUND)
            proven = max(proven, self._proven(best, worth, prices.rent, demand, numbers))
            added = [
                self._add(at, tuple(best.counts(stock.length)))
                for at, stock in enumerate(self.sticks.stocks)
                if best.worth[stock.length] > (stock.cost + prices.rent[at] + 1e-6) * _FINE
            ]
            if not any(added) or self.work.left <= 0 or ceil(prices.cost - 1e-6) <= proven:
                return prices, proven

    def _proven(
        self,
        best: Best,
        worth: Sequence[int],
        rent: Floats,
        demand: Sequence[int],
        numbers: Sequence[int],
    ) -> Fraction:
        """Scaled so that no filling is worth more than it costs, what all pieces are worth is a bound."""
        rents = [ceil(price * _FINE) for price in rent.tolist()]
        over = Fraction(1)
        for at, stock in enumerate(self.sticks.stocks):
            costs = stock.cost * _FINE + rents[at]
            if costs:
                over = max(over, Fraction(int(best.worth[stock.length]), costs))
        total = sum(price * wanted for price, wanted in zip(worth, demand, strict=True))
        paid = sum(price * number for price, number in zip(rents, numbers, strict=True))
        return Fraction(Fraction(total) / over - paid) / _FINE

    def _dive(self, *, careful: bool) -> None:
        """Fix what is sure, then what is nearly sure, until the rest fills itself or can't be better."""
        rest, numbers = list(self.sticks.demand), [stock.number for stock in self.sticks.stocks]
        fixed: list[Stick] = []
        while any(rest) and not self.is_done:
            prices, _ = self._priced(rest, numbers)
            spent = sum(self.sticks.stocks[stick.stock].cost for stick in fixed)
            if spent + _stepped(Fraction(prices.cost - 1e-6), self.sticks.step) >= self.best.cost:
                return
            for at, times in self._sure(prices.shares, careful=careful):
                column = self.master.columns[at]
                for _ in range(min(times, numbers[column.sheet])):
                    counts = tuple(min(n, left) for n, left in zip(column.counts, rest, strict=True))
                    if any(counts):
                        fixed.append(Stick(column.sheet, counts))
                        numbers[column.sheet] -= 1
                        rest = [left - n for left, n in zip(rest, counts, strict=True)]
            self._offer(fixed, rest, with_longest=True)

    def _sure(self, shares: Floats, *, careful: bool) -> list[tuple[int, int]]:
        whole = np.floor(shares + 1e-6).astype(int)
        if whole.any():
            return [(at, int(whole[at])) for at in np.flatnonzero(whole).tolist()]
        noise = 0.0 if careful else self.chance.uniform(0, 0.3, size=shares.size) * (shares > 1e-6)
        return [(int(np.argmax(shares + noise)), 1)]

    def _choose(self) -> None:
        numbers = [stock.number for stock in self.sticks.stocks]
        of_all = sum(stock.cost * stock.number for stock in self.sticks.stocks)
        at_most = min(self.best.cost - self.sticks.step, of_all)
        prices, _ = self._priced(self.sticks.demand, numbers)
        if prices.cost > at_most + 1e-6:
            return
        chosen = worth_choosing(self.master.columns, prices, at_most - prices.cost)
        columns = [self.master.columns[at] for at in chosen]
        choice = choose(columns, self.sticks.demand, numbers, at_most=at_most + 1e-6, nodes=20)
        self.work.spend(choice.iterations * _ITERATION + _CHOICE)
        if choice.times is None:
            return
        rest, fixed = list(self.sticks.demand), []
        for column, times in zip(columns, choice.times, strict=True):
            for _ in range(times):
                counts = tuple(min(n, left) for n, left in zip(column.counts, rest, strict=True))
                if any(counts):
                    fixed.append(Stick(column.sheet, counts))
                    rest = [left - n for left, n in zip(rest, counts, strict=True)]
        self._offer(fixed, rest, with_longest=True)


_A_ROUND, _ITERATION, _CHOICE = 5_000, 300, 500_000
"""What a round of pricing, a step of the solver, and a whole choice cost in placings, roughly."""


def _stepped(cost: Fraction, step: int) -> int:
    return ceil(cost / step) * step


def _filled(
    sticks: Sticks, fixed: Sequence[Stick], rest: Sequence[int], *, with_longest: bool
) -> tuple[list[Stick], list[int]]:
    """The rest, filled stick after stick."""
    rest, made = list(rest), []
    free = [stock.number for stock in sticks.stocks]
    for stick in fixed:
        free[stick.stock] -= 1
    while any(rest):
        tries = [
            (_rate(sticks, stock, counts), -at, counts)
            for at, stock in enumerate(sticks.stocks)
            if free[at] > 0 and any(counts := _fullest(sticks, stock, rest, with_longest=with_longest))
        ]
        if not tries:
            break
        _, minus_at, counts = max(tries)
        held = [kind for kind, n in enumerate(counts) if n]
        times = min(free[-minus_at], *(rest[kind] // counts[kind] for kind in held))
        made += [Stick(-minus_at, tuple(counts))] * times
        free[-minus_at] -= times
        rest = [left - times * n for left, n in zip(rest, counts, strict=True)]
    return made, rest


def _rate(sticks: Sticks, stock: Stock, counts: Sequence[int]) -> float:
    return float(np.dot(counts, sticks.lengths)) / max(stock.cost, 1e-9)


def _fullest(sticks: Sticks, stock: Stock, rest: Sequence[int], *, with_longest: bool) -> list[int]:
    """Longest pieces are preferred; with the longest that fits taken first, if so wanted."""
    most, room, first = list(rest), stock.length, None
    if with_longest:
        first = next((k for k, n in enumerate(rest) if n and sticks.lengths[k] <= room), None)
        if first is None:
            return [0] * len(rest)
        most[first] -= 1
        room -= sticks.lengths[first]
    counts = fullest(sticks.lengths[::-1], most[::-1], room)[::-1]
    if first is not None:
        counts[first] += 1
    return counts
