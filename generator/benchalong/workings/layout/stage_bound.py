"""A bound that knows how boards are cut: the programme of all fillings in stages, priced exactly.

Prices for the pieces come from the set-covering programme (`master`); the most any board can be worth at
them comes from `stages`. All boards used must together be worth what all pieces are worth, so the cheapest
boards that are cost at most what any layout costs. Each round's fillings join the programme and better its
prices (column generation: Gilmore & Gomory 1961, 1965). Prices are whole numbers and what a board can be
worth is exact, so each round's bound holds by itself, whatever the solver's arithmetic did.

It holds for layouts within the rules' turns, and only up to three of them; there is none for more.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np

from benchalong.workings.layout.inner import Inner, Sheet
from benchalong.workings.layout.lies import Work
from benchalong.workings.layout.master import Column, Master, Prices, cheapest_cover
from benchalong.workings.layout.model import Rectangle, Way
from benchalong.workings.layout.rows import CELLS_A_PLACING, Lie, Rows
from benchalong.workings.layout.sections import Plank
from benchalong.workings.layout.stages import Stages

_FINE = 1 << 20
_ROUNDS = 60


@dataclass(frozen=True)
class Piecewise:
    """The pieces one by one, those of match sets too: alike are one kind."""

    sizes: tuple[tuple[int, int, bool], ...]
    demand: tuple[int, ...]
    kind_of: tuple[tuple[int, ...], ...]
    """For each of the inner order's kinds, which kinds its members are."""

    @staticmethod
    def of(inner: Inner) -> Piecewise:
        sizes: dict[tuple[int, int, bool], int] = {}
        kind_of, demand = [], []
        for kind in inner.kinds:
            members = []
            for length, width in kind.sizes:
                at = sizes.setdefault((length, width, kind.may_turn), len(sizes))
                if at == len(demand):
                    demand.append(0)
                demand[at] += kind.demand
                members.append(at)
            kind_of.append(tuple(members))
        return Piecewise(tuple(sizes), tuple(demand), tuple(kind_of))

    def counts(self, of_kinds: Sequence[int]) -> tuple[int, ...]:
        counts = [0] * len(self.sizes)
        for members, number in zip(self.kind_of, of_kinds, strict=True):
            for member in members:
                counts[member] += number
        return tuple(counts)

    def lies(self, *, swap: bool) -> list[Lie]:
        found = []
        for kind, (length, width, may_turn) in enumerate(self.sizes):
            for size in {(length, width), (width, length)} if may_turn else {(length, width)}:
                found.append(Lie(kind, *(size[::-1] if swap else size)))
        return sorted(found, key=lambda lie: (lie.kind, lie.length))


class StageBound:
    """Grows round by round."""

    def __init__(self, inner: Inner, work: Work, known: Iterable[tuple[int, Sequence[int]]]) -> None:
        self._inner, self._work = inner, work
        self.pieces = Piecewise.of(inner)
        self._numbers = [sheet.number for sheet in inner.sheets]
        dear = 10.0 * max(sheet.cost for sheet in inner.sheets) + 1.0
        self._master = Master(self.pieces.demand, self._numbers, dear)
        self._seen: set[tuple[int, tuple[int, ...]]] = set()
        for sheet, of_kinds in known:
            self._add(sheet, self.pieces.counts(of_kinds))
        self.value = 0
        self.relaxed = 0.0
        """What the programme's relaxation costs so far."""

    def raise_to(self, enough: float, spend: int) -> int:
        """The bound, as soon as it is enough, can't be raised, or so much work is spent."""
        if self._inner.turns > 3 or not self._inner.kinds:
            return 0
        until = self._work.left - spend
        for _ in range(_ROUNDS):
            if self.value >= enough or self._work.left <= max(0, until) or not self._round():
                break
        return self.value

    def _add(self, sheet: int, counts: tuple[int, ...]) -> bool:
        if (sheet, counts) in self._seen:
            return False
        self._seen.add((sheet, counts))
        self._master.add(Column(sheet, self._inner.sheets[sheet].cost, counts))
        return True

    def _round(self) -> bool:
        """Whether it taught anything."""
        prices = self._master.prices()
        self.relaxed = prices.cost
        worth = [int(price * _FINE) for price in prices.worth.tolist()]
        boards = self._boards(worth)
        most = [max((stages.worth for stages in ways), default=0) for ways in boards]
        wanted = sum(price * number for price, number in zip(worth, self.pieces.demand, strict=True))
        costs = [sheet.cost for sheet in self._inner.sheets]
        self.value = max(self.value, cheapest_cover(costs, [max(1, one) for one in most], self._numbers, wanted))
        return self._learn(prices, boards)

    def _learn(self, prices: Prices, boards: list[list[Stages]]) -> bool:
        learnt = False
        for at, ways in enumerate(boards):
            asked = (self._inner.sheets[at].cost + prices.rent[at]) * _FINE
            for stages in ways:
                if stages.worth > asked * (1 + 1e-6) + len(self.pieces.demand):
                    held = stages.held()
                    counts = tuple(held.get(kind, 0) for kind in range(len(self.pieces.demand)))
                    learnt = self._add(at, counts) or learnt
        return learnt

    def _boards(self, worth: list[int]) -> list[list[Stages]]:
        """Each board's tables, for every way it may first be cut."""
        inner = self._inner
        boards: list[list[Stages]] = [[] for _ in inner.sheets]
        for swap in (False, True):
            if inner.first is (Way.ACROSS if swap else Way.ALONG):
                continue
            planks = [_plank(sheet, inner.kerf, swap=swap) for sheet in inner.sheets]
            longest = max(plank.length for plank in planks)
            rows = Rows(self.pieces.lies(swap=swap), worth, self.pieces.demand, longest)
            self._work.spend(rows.size // CELLS_A_PLACING)
            for at, plank in enumerate(planks):
                stages = Stages(plank, rows)
                self._work.spend(stages.size // CELLS_A_PLACING)
                boards[at].append(stages)
        return boards


def _plank(sheet: Sheet, kerf: int, *, swap: bool) -> Plank:
    if not swap:
        return Plank(sheet.length, sheet.width, sheet.defects, kerf)
    defects = tuple(Rectangle(d.y, d.x, d.width, d.length) for d in sheet.defects)
    return Plank(sheet.width, sheet.length, defects, kerf)
