"""What a search knows: the fillings kept, the best boards so far, and what no layout can do better than."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from math import gcd
from typing import TypeAlias

import numpy as np

from benchalong.workings.layout.filling import Filled
from benchalong.workings.layout.inner import Inner
from benchalong.workings.layout.lies import Floats, Ints, Work
from benchalong.workings.layout.master import Column, Master, Prices
from benchalong.workings.layout.sequence import Full
from benchalong.workings.layout.tidying import cuts_and_rest

IsOver: TypeAlias = Callable[[], bool]
"""A clock: whether the search must end."""

_HOPELESS = 6
"""How often it may turn out that the kept fillings hold nothing better before the search is content."""
_PASSES, _BEAMS = 80, (20.0, 400.0)
"""How many passes the effort should last for, and how wide their beams may be."""
_SEARCHES = 30
"""How many searches for all boards at once the effort should last for."""


@dataclass
class Search:
    """What is known so far: the fillings kept, and the best choice of them."""

    inner: Inner
    work: Work
    is_over: IsOver
    bound: int
    prices: Prices | None = None
    steady: Floats | None = None
    """Prices from the bound by stages: rougher than those of the fillings kept, but even from the start."""
    hopeless: int = 0
    """How often no choice among the fillings kept could have been better, not even a relaxed one."""
    beam: float = 20.0
    iterations_a_node: float = 120.0
    """What the last choice among the kept took for a node."""
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
    def cost_of_all(self) -> int:
        """Of all boards there are."""
        return sum(sheet.cost * sheet.number for sheet in self.inner.sheets)

    @property
    def is_done(self) -> bool:
        return self.cost <= self.bound or self.work.left <= 0 or self.hopeless >= _HOPELESS or self.is_over()

    def boards_below(self, cost: int) -> int:
        """How many boards at such a cost are cheaper than the best."""
        if not np.isfinite(self.cost) or not cost:
            return max(1, len(self.best))
        return int(self.cost - self.step) // cost

    def raise_bound_to(self, bound: int) -> None:
        bound = -(-bound // self.step) * self.step
        self.bound = min(max(self.bound, bound), self.cost_of_all)

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

    def master(self) -> Master:
        """The programme with all fillings kept."""
        inner = self.inner
        dear = 10.0 * max(sheet.cost for sheet in inner.sheets) + 1.0
        master = Master(inner.demand, [sheet.number for sheet in inner.sheets], dear)
        for sheet, counts in self.kept:
            master.add(Column(sheet, inner.sheets[sheet].cost, counts))
        return master
