"""One stock laid out: groups on boards that are there, each board once, then on what is to be bought."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from functools import cached_property
from math import ceil

from benchalong.ground.store import Store
from benchalong.plan.model import Plan, Stock
from benchalong.workings.blanks.model import Blanks
from benchalong.workings.blanks.reckoning import Reckoned
from benchalong.workings.boards.batches import Batch, batches_of
from benchalong.workings.boards.kept import laid_out
from benchalong.workings.boards.kinds import Kind, is_thick_enough, sold, there
from benchalong.workings.boards.laying import Question, fits_none, least_by_area, order_of, sawn_of
from benchalong.workings.boards.model import Group, Unused
from benchalong.workings.boards.sharing import Numbers, Shared, share
from benchalong.workings.boards.turns import turns_of
from benchalong.workings.layout.model import Layout


class StockBoards:
    """What one stock's boards become."""

    def __init__(self, plan: Plan, blanks: Blanks, stock: Stock, store: Store | None) -> None:
        self._plan, self._stock, self._store = plan, stock, store
        self._reckoned = Reckoned(plan)
        self._batches = tuple(batches_of(blanks, stock))
        self._there = there(plan, stock)
        self._answers: dict[tuple[int, Numbers], Layout] = {}

    def groups(self) -> tuple[Group, ...]:
        found = tuple(self._groups())
        return (*found[:-1], replace(found[-1], unused=tuple(self._unused()))) if found else ()

    def _groups(self) -> Iterator[Group]:
        for index, batch in enumerate(self._batches):
            bought = sold(self._reckoned, self._stock, batch.blanks, batch.matched)
            if any(self._may_use[index]):
                yield self._on_own(index, batch, bought)
            elif bought:
                yield self._on_bought(batch, bought)

    def _unused(self) -> Iterator[Unused]:
        left = [kind.count or 0 for kind in self._there]
        for index, offer in enumerate(self._shared.offers):
            left = [before - taken for before, taken in zip(left, self(index, offer)[0], strict=True)]
        for kind, count in zip(self._there, left, strict=True):
            if count:
                yield Unused(kind.length, kind.width, kind.thickness, count, kind.note)

    # sharing

    @cached_property
    def _may_use(self) -> tuple[tuple[bool, ...], ...]:
        return tuple(
            tuple(is_thick_enough(kind, batch.thickness, is_first=batch.is_first) for kind in self._there)
            for batch in self._batches
        )

    @cached_property
    def _shared(self) -> Shared:
        return share(tuple(kind.count or 0 for kind in self._there), self._may_use, self)

    def __call__(self, group: int, boards: Numbers, /) -> tuple[Numbers, bool]:
        if not any(boards):
            return boards, not self._fitting(group)
        layout = self._answer(group, boards)
        offered = [kind for kind, count in enumerate(boards) if count]
        used = [0] * len(boards)
        for board in layout.boards:
            used[offered[int(board.board)]] += 1
        fitting = self._fitting(group)
        return tuple(used), not any(blank in fitting for blank, _ in layout.left_out)

    def may_suffice(self, group: int, boards: Numbers, /) -> bool:
        kinds, fitting = self._offered(boards), self._fitting(group)
        blanks = [blank for blank in self._batches[group].blanks if blank.id in fitting]
        area = sum(
            ((kind.count or 0) * kind.width * (kind.length - 2 * kind.trim) for kind in kinds), Fraction(0)
        )
        needs = sum((blank.count * blank.length * blank.width for blank in blanks), Fraction(0))
        return needs <= area and not any(fits_none(kinds, blank) for blank in blanks)

    def _fitting(self, group: int) -> frozenset[str]:
        """Blanks that some board there is large enough for."""
        kinds = [kind for kind, may in zip(self._there, self._may_use[group], strict=True) if may]
        return frozenset(blank.id for blank in self._batches[group].blanks if not fits_none(kinds, blank))

    def _offered(self, boards: Numbers) -> tuple[Kind, ...]:
        counted = zip(self._there, boards, strict=True)
        return tuple(replace(kind, count=count) for kind, count in counted if count)

    def _answer(self, group: int, boards: Numbers) -> Layout:
        if (group, boards) not in self._answers:
            question = self._question(self._batches[group], self._offered(boards))
            self._answers[group, boards] = self._lay_out(question)
        return self._answers[group, boards]

    def _lay_out(self, question: Question) -> Layout:
        if not question.kinds:
            left_out = tuple((blank.id, blank.count) for blank in question.blanks)
            return Layout((), left_out, cost=0, lower_bound=0, is_proven=False)
        return laid_out(order_of(question), self._store)

    # groups

    def _on_own(self, index: int, batch: Batch, bought: tuple[Kind, ...]) -> Group:
        """On boards that are there, and what is missing on boards to buy."""
        offer, fitting = self._shared.offers[index], self._fitting(index)
        question, layout = self._question(batch, self._offered(offer)), self._answer(index, offer)
        group = replace(
            _group(batch, question, layout),
            is_own=True,
            too_large=tuple(blank.id for blank in batch.blanks if blank.id not in fitting),
            are_all_tried=self._shared.are_all_tried,
        )
        more = _left(question, layout, bought)
        if not more.blanks:
            return group
        return replace(group, more=sawn_of(more, self._lay_out(more), first=len(group.boards) + 1))

    def _on_bought(self, batch: Batch, bought: tuple[Kind, ...]) -> Group:
        question = self._question(batch, bought)
        return _group(batch, question, self._lay_out(question))

    def _question(self, batch: Batch, kinds: tuple[Kind, ...]) -> Question:
        sawing, is_board = self._plan.shop.sawing, self._stock.kind == "board"
        turns = turns_of(self._stock, batch.matched, sawing.turns)
        return Question(kinds, batch.blanks, batch.matched, sawing.kerf, turns, crosscut_first=is_board)


def _group(batch: Batch, question: Question, layout: Layout) -> Group:
    return Group(
        batch.id,
        batch.stock.id,
        batch.called,
        batch.thickness,
        sawn_of(question, layout),
        layout.lower_bound,
        layout.cost,
        question.counts[0],
        layout.is_proven,
        layout.ended_early,
        layout.left_out,
        tuple(blank.id for blank in batch.blanks if fits_none(question.kinds, blank)),
        turns=question.turns,
        by_area=layout.lower_bound <= ceil(least_by_area(question)),
    )


def _left(question: Question, layout: Layout, bought: tuple[Kind, ...]) -> Question:
    """What is still to be cut, from boards that are bought; without what is too large for any of them."""
    missing = dict(layout.left_out)
    rest = tuple(
        replace(blank, count=missing[blank.id])
        for blank in question.blanks
        if blank.id in missing and not fits_none(bought, blank)
    )
    held = {blank.id for blank in rest}
    matched = tuple(each for each in question.matched if set(each.blanks) <= held)
    return replace(question, kinds=bought, blanks=rest, matched=matched)
