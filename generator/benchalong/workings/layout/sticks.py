"""Cut sticks to length: the case where only lengths matter, solved to a proof wherever that can be had.

Stick after stick is filled as full as it goes (`stick_filling`). If that doesn't meet the bound, prices
(`stick_prices`) give the bound of the set-covering relaxation, which is nearly always the answer rounded up;
and diving (fix what the relaxation is sure of, ask again for the rest: Wäscher & Gau 1996) looks for the cut
that meets it. A dive that ends in vain goes back some of its steps, drawn by chance, not always all: the last
choices are as often the wrong ones as the first, and the first cost the most work. After some dives all
fillings that could meet the bound are counted out (`stick_fillings`): a choice among them settles it, one way
or the other. That there is none rests on the solver's word, over small whole numbers.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

import numpy as np

from benchalong.workings.layout.lies import Floats, Work
from benchalong.workings.layout.master import (
    CHOICE,
    ITERATION_OF_CHOICE,
    Choice,
    Column,
    choose,
    worth_choosing,
)
from benchalong.workings.layout.stick_filling import Stick, filled_after
from benchalong.workings.layout.stick_fillings import all_that_could_be
from benchalong.workings.layout.stick_prices import Pricing, Sticks

_CHOOSE_AFTER = 4
"""After so many dives fillings are chosen from as a whole, and again after each doubling; the first time only
where few could be in a cut at the bound."""
_BEFORE_SEEN = 2
"""How often that is tried before a choice is made among the fillings seen alone: dives are cheaper."""
_NODES, _NODES_OF_ALL = 20, 100
"""How far a whole choice is searched: among the fillings seen, and among all that could be."""
_FRESH = 6
"""Every so many-th dive starts anew."""
_NOISE = 0.3
"""How much a share may be off in a dive that isn't the first."""


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


@dataclass(frozen=True)
class _Trail:
    """Where a dive has come to: what is fixed, and what is left of pieces and of sticks."""

    fixed: tuple[Stick, ...]
    rest: tuple[int, ...]
    numbers: tuple[int, ...]

    def with_stick(self, stock: int, counts: Sequence[int]) -> _Trail:
        """With as much of the filling as is still wanted, if there is such a stick."""
        held = tuple(min(n, left) for n, left in zip(counts, self.rest, strict=True))
        if not any(held) or self.numbers[stock] <= 0:
            return self
        rest = tuple(left - n for n, left in zip(held, self.rest, strict=True))
        numbers = tuple(number - (at == stock) for at, number in enumerate(self.numbers))
        return _Trail((*self.fixed, Stick(stock, held)), rest, numbers)


@dataclass
class _Search:
    sticks: Sticks
    work: Work
    is_over: Callable[[], bool]
    chance: np.random.Generator
    bound: int

    def __post_init__(self) -> None:
        sticks = self.sticks
        self.best = CutSticks((), sticks.demand, float("inf"))
        self.pricing = Pricing(sticks, self.work)
        self._start = _Trail((), sticks.demand, tuple(sticks.numbers))

    @property
    def is_done(self) -> bool:
        return self.best.cost <= self.bound or self.work.left <= 0 or self.is_over()

    def start(self) -> None:
        """Filled one after another, with the longest piece in each stick or without it."""
        for with_longest in (True, False):
            self._offer(self._start, with_longest=with_longest)

    def raise_bound(self) -> None:
        _, proven = self.pricing.priced(self._start.rest, self._start.numbers)
        self.bound = max(self.bound, proven)

    def dives(self) -> Iterator[None]:
        """One dive after another; now and then the fillings seen are chosen from as a whole."""
        dive, choose_at, steps = 0, _CHOOSE_AFTER, [self._start]
        while not self.is_done:
            back = 0 if dive % _FRESH == 0 else int(self.chance.integers(len(steps)))
            steps = self._dive(steps[: back + 1], careful=dive == 0)
            dive += 1
            if not self.is_done and dive == choose_at:
                self._settle(times=dive // _CHOOSE_AFTER)
                choose_at *= 2
            yield

    def _offer(self, trail: _Trail, *, with_longest: bool) -> None:
        """The fixed sticks and the rest filled one after another, if that is better."""
        more, left_out = filled_after(self.sticks, trail.fixed, trail.rest, with_longest=with_longest)
        made = (*trail.fixed, *more)
        cost = self._cost(made)
        self.work.spend(len(more) * len(self.sticks.lengths) * _A_FILLED)
        for stick in more:
            self.pricing.add(stick.stock, stick.counts)
        missing = float(np.dot(left_out, self.sticks.lengths))
        before = float(np.dot(self.best.left_out, self.sticks.lengths))
        if missing < before or (missing == before and cost < self.best.cost):
            self.best = CutSticks(made, tuple(left_out), float("inf") if missing else cost)

    def _cost(self, made: Sequence[Stick]) -> int:
        return sum(self.sticks.stocks[stick.stock].cost for stick in made)

    def _dive(self, steps: list[_Trail], *, careful: bool) -> list[_Trail]:
        """Fix what is sure, then what is nearly sure, until the rest fills itself or can't be better."""
        while any(steps[-1].rest) and not self.is_done:
            trail = steps[-1]
            below = self.best.cost - self._cost(trail.fixed)
            prices, _ = self.pricing.priced(trail.rest, trail.numbers, hopeless=below)
            if self.sticks.stepped(Fraction(prices.cost - 1e-6)) >= below:
                break
            for at, times in self._sure(prices.shares, careful=careful):
                column = self.pricing.master.columns[at]
                for _ in range(times):
                    trail = trail.with_stick(column.sheet, column.counts)
            self._offer(trail, with_longest=True)
            steps = [*steps, trail]
        return steps

    def _sure(self, shares: Floats, *, careful: bool) -> list[tuple[int, int]]:
        whole = np.floor(shares + 1e-6).astype(int)
        if whole.any():
            return [(at, int(whole[at])) for at in np.flatnonzero(whole).tolist()]
        noise = 0.0 if careful else self.chance.uniform(0, _NOISE, size=shares.size) * (shares > 1e-6)
        return [(int(np.argmax(shares + noise)), 1)]

    def _settle(self, *, times: int) -> None:
        """Whether there is a cut at the bound, by all fillings that could be in it; where they are too many,
        a choice among those seen for anything better."""
        proof = self.pricing.proof()
        self.bound = max(self.bound, self.sticks.stepped(proof.bound))
        columns = all_that_could_be(self.sticks, proof, limit=self.bound, work=self.work)
        if self.is_done:
            return
        if columns is not None and not any(self.best.left_out):
            if self._chosen(columns, at_most=self.bound, nodes=_NODES_OF_ALL * times).is_none:
                self.bound += self.sticks.step
        elif times > _BEFORE_SEEN:
            self._choose()

    def _choose(self) -> None:
        of_all = sum(stock.cost * stock.number for stock in self.sticks.stocks)
        at_most = min(self.best.cost - self.sticks.step, of_all)
        prices, _ = self.pricing.priced(self.sticks.demand, self.sticks.numbers)
        if prices.cost <= at_most + 1e-6:
            chosen = worth_choosing(self.pricing.master.columns, prices, at_most - prices.cost)
            columns = [self.pricing.master.columns[at] for at in chosen]
            self._chosen(columns, at_most=at_most, nodes=_NODES)

    def _chosen(self, columns: list[Column], *, at_most: float, nodes: int) -> Choice:
        """A choice among the fillings, offered if there is one."""
        numbers = self.sticks.numbers
        choice = choose(columns, self.sticks.demand, numbers, at_most=at_most + 1e-6, nodes=nodes)
        self.work.spend(choice.iterations * ITERATION_OF_CHOICE + CHOICE)
        if choice.times is not None:
            trail = self._start
            for column, times in zip(columns, choice.times, strict=True):
                for _ in range(times):
                    trail = trail.with_stick(column.sheet, column.counts)
            self._offer(trail, with_longest=True)
        return choice


_A_FILLED = 20
"""What a kind costs in each stick filled, in placings."""
