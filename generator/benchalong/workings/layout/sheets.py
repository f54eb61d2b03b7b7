"""Lay pieces out on boards: the whole search.

First boards are filled one after another, many times over, each time having learned from the last
(`sequence`). Every filling made is kept. Then the kept fillings are chosen from at the least cost, and the
prices that come with the choice ask for new fillings (column generation: Gilmore & Gomory 1961, 1965), in
turns, until the cost meets the lower bound or the work allowed is done.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from math import gcd
from typing import TypeAlias

import numpy as np

from benchalong.workings.layout.bars import bar_bound
from benchalong.workings.layout.bounds import lower_bound
from benchalong.workings.layout.filling import Filled, Filler, Room
from benchalong.workings.layout.inner import Inner
from benchalong.workings.layout.lies import Ints, Work
from benchalong.workings.layout.master import Column, Master, Prices, choose, worth_choosing
from benchalong.workings.layout.model import Way
from benchalong.workings.layout.sequence import Full, Manner, Sheets, corrected, first_worth, in_sequence
from benchalong.workings.layout.stage_bound import StageBound
from benchalong.workings.layout.stick_trees import as_sticks, by_length, filled_stick, is_sticks
from benchalong.workings.layout.sticks import cut_sticks
from benchalong.workings.layout.tidying import cuts_and_rest, tidied
from benchalong.workings.layout.tree import without

IsOver: TypeAlias = Callable[[], bool]
"""A clock: whether the search must end."""


_ITERATION, _CHOICE = 300, 500_000
"""What a step of the solver, and a whole choice, cost in placings, roughly."""
_HOPELESS = 6
"""How often it may turn out that the kept fillings hold nothing better before the search is content."""
_PASSES, _BEAMS = 80, (20.0, 400.0)
"""How many passes the effort should last for, and how wide their beams may be."""
_SEARCHES, _MOST_AT_ONCE = 30, 800
"""How many searches for all boards at once the effort should last for, and for how many pieces that is
tried."""
_TIDYING = 20
"""What part of the effort may be spent on tidying."""
_BOUNDING = 5
"""What part of the effort may be spent on the bound by stages."""
_LEANS = (0.0, 0.0, 0.2, 0.5, None)


@dataclass(frozen=True)
class Found:
    """Boards as filled, and how many of each kind found no room."""

    full: tuple[Full, ...]
    left_out: tuple[int, ...]
    lower_bound: int
    ended_early: bool


@dataclass
class Search:
    """What is known so far: the fillings kept, and the best choice of them."""

    inner: Inner
    work: Work
    is_over: IsOver
    bound: int
    prices: Prices | None = None
    hopeless: int = 0
    """How often no choice among the fillings kept could have been better, not even a relaxed one."""
    beam: float = 20.0
    kept: dict[tuple[int, tuple[int, ...]], Filled] = field(default_factory=dict)
    best: tuple[Full, ...] = ()
    missing: tuple[int, ...] = ()
    rank: tuple[float, ...] = (float("inf"),)
    """How good the best is, less being better: area left out, cost, cuts, then the largest left-over."""

    @property
    def step(self) -> int:
        """Every cost is a multiple of it."""
        return gcd(*(sheet.cost for sheet in self.inner.sheets)) or 1

    @property
    def cost(self) -> float:
        """Of the best, when it leaves nothing out."""
        return self.rank[1] if self.rank[0] == 0 else float("inf")

    @property
    def is_done(self) -> bool:
        return self.cost <= self.bound or self.work.left <= 0 or self.hopeless >= _HOPELESS or self.is_over()

    def boards_below(self, cost: int) -> int:
        """How many boards at such a cost are cheaper than the best."""
        if not np.isfinite(self.cost) or not cost:
            return max(1, len(self.best))
        return int(self.cost - self.step) // cost

    def raise_bound(self) -> None:
        """By a bound that takes longer."""
        self._raise_bound_to(bar_bound(self.inner, self.work))
        if not self.is_done:
            known = ((sheet, counts) for sheet, counts in self.kept)
            stages = StageBound(self.inner, self.work, known)
            share = (self.work.left + self.work.spent) // _BOUNDING
            self._raise_bound_to(stages.raise_to(self.cost, share))

    def _raise_bound_to(self, bound: int) -> None:
        bound = -(-bound // self.step) * self.step
        self.bound = min(max(self.bound, bound), int(_cost_of_all(self.inner)))

    def adjust_beam(self, spent: int) -> None:
        """So that a pass takes its share of the effort."""
        fair = (self.work.left + self.work.spent) / _PASSES
        self.beam = float(np.clip(self.beam * np.clip(fair / max(spent, 1), 0.7, 1.5), *_BEAMS))

    def wide_beam(self, demand: Ints) -> int:
        """So wide that a search through all pieces takes its share of the effort."""
        fair = (self.work.left + self.work.spent) / _SEARCHES
        pieces = int(demand.sum())
        return int(np.clip(fair / (pieces * demand.size), 20, 2000))

    def keep(self, sheet: int, filled: Filled) -> bool:
        """Whether it is new."""
        key = (sheet, filled.counts)
        is_new = key not in self.kept
        if is_new:
            self.kept[key] = filled
        return is_new

    def offer(self, full: Sequence[Full], left: Ints) -> None:
        """Takes the boards if they are better."""
        areas = np.array([kind.area for kind in self.inner.kinds])
        cost = float(sum(self.inner.sheets[board.sheet].cost for board in full))
        rank: tuple[float, ...] = (float(left @ areas), cost)
        if rank > self.rank[:2]:
            return
        measured = [cuts_and_rest(board, self.inner) for board in full]
        rank += (sum(cuts for cuts, _ in measured), min((rest for _, rest in measured), default=0))
        if rank < self.rank:
            self.best, self.missing, self.rank = tuple(full), tuple(left.tolist()), rank


def lay_out_sheets(inner: Inner, *, effort: int, seed: int, is_over: IsOver = lambda: False) -> Found:
    """The best layout found. Bounded by `effort`; the same seed gives the same layout."""
    work = Work(effort)
    search = Search(inner, work, is_over, lower_bound(inner), missing=inner.demand)
    if is_sticks(inner):
        return _cut_as_sticks(search, seed)
    filler = Filler(inner, work)
    sheets = Sheets(inner, filler)
    chance = np.random.default_rng(seed)
    rounds = _rounds(search, sheets, filler, chance)
    while not search.is_done and next(rounds, None) is not None:
        pass
    ended_early = search.cost > search.bound and is_over()
    if not is_over():
        _tidy(search, sheets)
    return Found(search.best, search.missing, search.bound, ended_early)


def _tidy(search: Search, sheets: Sheets) -> None:
    """Fewer cuts and larger left-overs at the same cost, for a little more work."""
    work = search.work
    work.left = (work.left + work.spent) // _TIDYING
    search.offer(tidied(search.best, search.inner, sheets, work), np.array(search.missing))


def _cut_as_sticks(search: Search, seed: int) -> Found:
    inner, order = search.inner, by_length(search.inner)
    cut = cut_sticks(
        as_sticks(inner, order), bound=search.bound, work=search.work, seed=seed, is_over=search.is_over
    )
    full = tuple(Full(stick.stock, filled_stick(inner, order, stick)) for stick in cut.sticks)
    left_out = np.zeros(len(inner.kinds), dtype=np.int64)
    left_out[order] = cut.left_out
    return Found(full, tuple(left_out.tolist()), cut.bound, search.is_over() and not cut.is_proven)


def _rounds(search: Search, sheets: Sheets, filler: Filler, chance: np.random.Generator) -> Iterator[str]:
    """The steps of the search, one after another."""
    for _ in _learn(search, sheets, chance, passes=6):
        yield "learn"
    search.raise_bound()
    for _ in _all_at_once(search, filler, chance, times=8):
        yield "all at once"
    while True:
        for _ in _price(search, sheets, times=40):
            yield "price"
        _choose(search, nodes=100)
        yield "choose"
        for _ in _all_at_once(search, filler, chance, times=8):
            yield "all at once"
        for _ in _learn(search, sheets, chance, passes=8):
            yield "learn"
        _choose(search, nodes=100)
        yield "choose"


def _learn(search: Search, sheets: Sheets, chance: np.random.Generator, *, passes: int) -> Iterator[None]:
    """Boards filled in sequence, so many times; with a wide beam where a pass is short."""
    inner = search.inner
    power = float(chance.uniform(1.0, 1.1))
    worth = first_worth(inner, power)
    numbers = [sheet.number for sheet in inner.sheets]
    for _ in range(passes):
        before = search.work.spent
        lean = _LEANS[int(chance.integers(len(_LEANS)))]
        manner = Manner(int(search.beam * chance.choice([0.5, 1, 2])), lean)
        free = numbers if chance.random() < 0.5 else _some(numbers, chance)
        full, left = in_sequence(inner, sheets, worth, manner, np.array(inner.demand), free)
        for board in full:
            search.keep(board.sheet, board.filled)
        search.offer(full, left)
        worth = corrected(inner, worth, full, power, chance)
        search.adjust_beam(search.work.spent - before)
        yield


def _some(numbers: list[int], chance: np.random.Generator) -> list[int]:
    """Some kinds of board only, so that others than the seemingly best are tried too."""
    taken = chance.random(len(numbers)) < 0.5
    taken[int(chance.integers(len(numbers)))] = True
    return [number if is_taken else 0 for number, is_taken in zip(numbers, taken.tolist(), strict=True)]


def _all_at_once(
    search: Search, filler: Filler, chance: np.random.Generator, *, times: int
) -> Iterator[None]:
    """As many boards of one kind as are still cheaper than the best, all filled in one search."""
    inner, demand = search.inner, np.array(search.inner.demand)
    clear = [index for index, sheet in enumerate(inner.sheets) if not sheet.defects]
    if not clear or sum(inner.demand) > _MOST_AT_ONCE:
        return
    for at in range(times):
        index = clear[int(chance.integers(len(clear)))]
        sheet = inner.sheets[index]
        room = Room(sheet.length, sheet.width, inner.turns, inner.first)
        boards = min(sheet.number, max(1, search.boards_below(sheet.cost)))
        swap = inner.first is Way.ALONG if inner.first else at % 2 == 1
        worth = first_worth(inner, float(chance.uniform(1.0, 1.05)))
        lean = None if chance.random() < 0.2 else float(chance.uniform(0.0, 0.15))
        beam = int(search.wide_beam(demand) * chance.choice([0.3, 1, 2]))
        filled = filler.fill_several(room, boards, demand, worth=worth, beam=beam, lean=lean, swap=swap)
        for one in filled:
            search.keep(index, one)
        left = demand - np.sum([one.counts for one in filled], axis=0) if filled else demand
        search.offer([Full(index, one) for one in filled], left)
        yield


def _price(search: Search, sheets: Sheets, *, times: int) -> Iterator[None]:
    """Prices ask for fillings that are worth more than their board costs."""
    inner = search.inner
    master = _master(search)
    demand = np.array(inner.demand)
    for _ in range(times):
        prices = search.prices = master.prices()
        search.work.spend(prices.iterations * _ITERATION)
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


def _master(search: Search) -> Master:
    inner = search.inner
    dear = 10.0 * max(sheet.cost for sheet in inner.sheets) + 1.0
    master = Master(inner.demand, [sheet.number for sheet in inner.sheets], dear)
    for sheet, counts in search.kept:
        master.add(Column(sheet, inner.sheets[sheet].cost, counts))
    return master


def _choose(search: Search, *, nodes: int) -> None:
    """A better whole choice among the fillings kept, if there is one."""
    inner = search.inner
    prices = search.prices = _master(search).prices()
    at_most = search.cost - search.step if np.isfinite(search.cost) else _cost_of_all(inner)
    if not search.kept or prices.cost > at_most + 1e-6:
        search.hopeless += 1
        return
    every = list(search.kept)
    columns = [Column(sheet, inner.sheets[sheet].cost, counts) for sheet, counts in every]
    chosen = worth_choosing(columns, prices, at_most - prices.cost)
    keys, columns = [every[at] for at in chosen], [columns[at] for at in chosen]
    numbers = [sheet.number for sheet in inner.sheets]
    choice = choose(columns, inner.demand, numbers, at_most=at_most + 1e-6, nodes=nodes)
    search.work.spend(choice.iterations * _ITERATION + _CHOICE)
    if choice.times is None:
        return
    full = [
        Full(key[0], search.kept[key])
        for key, times in zip(keys, choice.times, strict=True)
        for _ in range(times)
    ]
    search.offer(_without_spares(full, inner), np.zeros(len(inner.kinds), dtype=np.int64))


def _cost_of_all(inner: Inner) -> float:
    return float(sum(sheet.cost * sheet.number for sheet in inner.sheets))


def _without_spares(full: Sequence[Full], inner: Inner) -> list[Full]:
    """What is cut more often than wanted becomes waste, on the emptiest boards first."""
    counts = np.sum([board.filled.counts for board in full], axis=0)
    spare = dict(enumerate((counts - np.array(inner.demand)).tolist()))
    areas = np.array([kind.area for kind in inner.kinds])
    order = sorted(range(len(full)), key=lambda at: float(np.array(full[at].filled.counts) @ areas))
    made = list(full)
    for at in order:
        made[at] = _without(full[at], spare, inner)
    return [board for board in made if any(board.filled.counts)]


def _without(board: Full, spare: dict[int, int], inner: Inner) -> Full:
    here = {
        kind: min(spare[kind], count)
        for kind, count in enumerate(board.filled.counts)
        if count and spare[kind] > 0
    }
    if not here:
        return board
    counts = tuple(count - here.get(kind, 0) for kind, count in enumerate(board.filled.counts))
    for kind, number in here.items():
        spare[kind] -= number
    members = {kind: number * len(inner.kinds[kind].sizes) for kind, number in here.items()}
    tree = without(board.filled.tree, members)
    return Full(board.sheet, Filled(tree, counts, board.filled.worth))
