"""A bound that knows how boards are cut: the programme of all fillings in stages, priced exactly.

Prices for the pieces come from the set-covering programme (`master`); the most any board can be worth at
them comes from `stages`. All boards used must together be worth what all pieces are worth, so the cheapest
boards that are cost at most what any layout costs. Each round's fillings join the programme and better its
prices (column generation: Gilmore & Gomory 1961, 1965). Prices are whole numbers and what a board can be
worth is exact, so each round's bound holds by itself, whatever the solver's arithmetic did.

It holds for layouts within the rules' turns, and only up to three of them; there is none for more.
"""

from __future__ import annotations

import operator
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import ceil

from benchalong.workings.layout.inner import Inner, Kind, Sheet
from benchalong.workings.layout.lies import Work
from benchalong.workings.layout.master import Column, Master, cheapest_cover
from benchalong.workings.layout.model import Rectangle, Way
from benchalong.workings.layout.proper import PAIRS_A_PLACING, Groups, all_rows, most_proper
from benchalong.workings.layout.rows import CELLS_A_PLACING, Lie, Rows
from benchalong.workings.layout.sections import Plank
from benchalong.workings.layout.stages import Stages

_FINE = 1 << 20
_ROUNDS = 60
_COVER = 150_000
"""What it costs to find the cheapest boards, in placings."""


@dataclass(frozen=True)
class Piecewise:
    """The pieces one by one: alike are one kind. Of match sets too; only those whose members stand in one row
    by the rules, however the board is cut, are one piece."""

    sizes: tuple[tuple[int, int, bool], ...]
    demand: tuple[int, ...]
    kind_of: tuple[tuple[int, ...], ...]
    """For each of the inner order's kinds, which kinds its members are."""

    @staticmethod
    def of(inner: Inner) -> Piecewise:
        sizes: dict[tuple[int, int, bool], int] = {}
        kind_of: list[tuple[int, ...]] = []
        demand: list[int] = []
        for kind in inner.kinds:
            members = []
            for length, width in [kind.size(kind.parted)] if _is_in_a_row(kind, inner) else kind.sizes:
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


def _is_in_a_row(kind: Kind, inner: Inner) -> bool:
    in_a_row = inner.turns == 3 and inner.first is not None and kind.parted is inner.first
    return in_a_row and not kind.may_turn


@dataclass(frozen=True)
class _Most:
    """What a board is worth at most, and fillings to learn from."""

    worth: int
    fillings: tuple[tuple[int, ...], ...]


class StageBound:
    """Grows round by round. Proper: on clear boards no piece is counted oftener than it is wanted, and cells
    are smaller; that takes longer."""

    def __init__(
        self,
        inner: Inner,
        work: Work,
        known: Iterable[tuple[int, Sequence[int]]],
        *,
        is_proper: bool = False,
    ) -> None:
        self._inner, self._work, self._is_proper = inner, work, is_proper
        self.pieces = Piecewise.of(inner)
        self._numbers: Sequence[int] = [sheet.number for sheet in inner.sheets]
        self._least: Sequence[int] = [0] * len(inner.sheets)
        self._enough, self._until = 0.0, 0
        dear = 10.0 * max(sheet.cost for sheet in inner.sheets) + 1.0
        self._master = Master(self.pieces.demand, self._numbers, dear)
        self._all_rows: dict[bool, Groups | None] = {}
        self._seen: set[tuple[int, tuple[int, ...]]] = set()
        for sheet, of_kinds in known:
            self._add(sheet, self.pieces.counts(of_kinds))
        self.value, self._rate = 0, 0.0
        self.relaxed = 0.0
        """What the programme's relaxation costs so far."""
        self.worth: tuple[float, ...] | None = None
        """The prices, by the inner order's kinds, that the bound comes from."""

    def raise_to(self, enough: float, spend: int) -> int:
        """The bound, as soon as it is enough, can't be raised, or so much work is spent."""
        if self._inner.turns > 3 or not self._inner.kinds:
            return 0
        self._until = until = self._work.left - spend
        for _ in range(_ROUNDS):
            if self.value >= enough or self._work.left <= max(0, until) or not self._round():
                break
        return self.value

    def within(self, least: Sequence[int], most: Sequence[int], enough: float, spend: int) -> int:
        """The bound for layouts that use so many boards of each kind, at least and at most; where they can't
        suffice, it is enough."""
        self._least, self._numbers, self.value, self._enough = least, most, 0, enough
        for at in range(len(least)):
            self._add(at, (0,) * len(self.pieces.demand))
        self._master.want(self.pieces.demand, most, least)
        return self.raise_to(enough, spend)

    def used(self) -> list[float]:
        """How many boards of each kind the relaxation uses."""
        used = [0.0] * len(self._numbers)
        for column, share in zip(self._master.columns, self._prices.shares.tolist(), strict=False):
            used[column.sheet] += share
        return used

    def _add(self, sheet: int, counts: tuple[int, ...]) -> bool:
        if (sheet, counts) in self._seen:
            return False
        self._seen.add((sheet, counts))
        self._master.add(Column(sheet, self._inner.sheets[sheet].cost, counts))
        return True

    def _round(self) -> bool:
        """Whether it taught anything."""
        prices = self._prices = self._master.prices()
        self.relaxed = prices.cost
        worth = [int(price * _FINE) for price in prices.worth.tolist()]
        asked = [
            int((sheet.cost + prices.rent[at]) * _FINE * (1 + 1e-6)) + len(self.pieces.demand)
            for at, sheet in enumerate(self._inner.sheets)
        ]
        boards = self._boards(worth, asked)
        most = [max((one.worth for one in ways), default=0) for ways in boards]
        wanted = sum(price * number for price, number in zip(worth, self.pieces.demand, strict=True))
        value = self._cost_of([max(1, one) for one in most], wanted)
        rate = wanted / max(1, *most)
        if rate > self._rate:
            self._rate, self.worth = rate, self._of_kinds(prices.worth.tolist())
        self.value = max(self.value, value)
        new = [(at, filling) for at, ways in enumerate(boards) for one in ways for filling in one.fillings]
        return sum(self._add(at, filling) for at, filling in new) > 0

    def _cost_of(self, most: Sequence[int], wanted: int) -> int:
        """Of the cheapest boards within the limits that can be worth what is wanted."""
        self._work.spend(_COVER if len(most) > 1 else 0)
        costs = [sheet.cost for sheet in self._inner.sheets]
        if self._enough and sum(map(operator.mul, most, self._numbers)) < wanted:
            return ceil(self._enough)
        wanted -= sum(one * number for one, number in zip(most, self._least, strict=True))
        fixed = sum(cost * number for cost, number in zip(costs, self._least, strict=True))
        more = [number - least for number, least in zip(self._numbers, self._least, strict=True)]
        return fixed + cheapest_cover(costs, most, more, max(0, wanted))

    def _of_kinds(self, worth: list[float]) -> tuple[float, ...]:
        return tuple(sum(worth[member] for member in members) for members in self.pieces.kind_of)

    def _boards(self, worth: list[int], asked: list[int]) -> list[list[_Most]]:
        """The most each board is worth, for every way it may first be cut."""
        inner = self._inner
        boards: list[list[_Most]] = [[] for _ in inner.sheets]
        for swap in (False, True):
            if inner.first is (Way.ACROSS if swap else Way.ALONG):
                continue
            planks = [_plank(sheet, inner.kerf, swap=swap) for sheet in inner.sheets]
            longest = max(plank.length for plank in planks)
            rows = Rows(self.pieces.lies(swap=swap), worth, self.pieces.demand, longest)
            self._work.spend(rows.size // CELLS_A_PLACING)
            for at, plank in enumerate(planks):
                stages = Stages(plank, rows, finer=3 if self._is_proper else 1)
                self._work.spend(stages.size // CELLS_A_PLACING)
                boards[at].append(self._most(stages, worth, asked[at], swap=swap))
        return boards

    def _most(self, stages: Stages, worth: list[int], asked: int, *, swap: bool) -> _Most:
        if stages.worth <= asked:
            return _Most(stages.worth, ())
        rows = self._rows(swap=swap) if self._is_proper and stages.is_clear else None
        if rows is None:
            held = stages.held()
            return _Most(stages.worth, (tuple(held.get(kind, 0) for kind in range(len(worth))),))
        at_most = max(0, self._work.left - self._until) * PAIRS_A_PLACING
        proper = most_proper(stages, rows, worth, self.pieces.demand, asked, at_most=at_most)
        self._work.spend(proper.pairs // PAIRS_A_PLACING)
        return _Most(proper.worth, (proper.counts,) if proper.counts else ())

    def _rows(self, *, swap: bool) -> Groups | None:
        if swap not in self._all_rows:
            sheets = self._inner.sheets
            longest = max(sheet.width if swap else sheet.length for sheet in sheets)
            self._all_rows[swap] = all_rows(self.pieces.lies(swap=swap), self.pieces.demand, longest)
        return self._all_rows[swap]


def _plank(sheet: Sheet, kerf: int, *, swap: bool) -> Plank:
    """A defect that a kerf can take away is none."""
    defects = tuple(defect for defect in sheet.defects if min(defect.length, defect.width) > kerf)
    if not swap:
        return Plank(sheet.length, sheet.width, defects, kerf)
    defects = tuple(Rectangle(d.y, d.x, d.width, d.length) for d in defects)
    return Plank(sheet.width, sheet.length, defects, kerf)
