"""Which board does each part come from, and do the boards suffice?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache
from typing import Literal, cast

from benchalong.ground.problems import Finding
from benchalong.ground.store import Store
from benchalong.plan.model import Plan, Stock
from benchalong.trade.rough import TURNS
from benchalong.workings.blanks.blanks import BLANKS
from benchalong.workings.blanks.model import Blank, Blanks
from benchalong.workings.boards.kept import laid_out
from benchalong.workings.boards.kinds import Kind, sold, there
from benchalong.workings.boards.laying import Question, fits_none, order_of, sawn_of
from benchalong.workings.boards.model import Boards, Group, LaidOut
from benchalong.workings.boards.short import too_little
from benchalong.workings.layout.model import Layout
from benchalong.workings.working import Worked, Working


@dataclass(frozen=True)
class _Batch:
    """Blanks of one stock and one rough thickness."""

    id: str
    stock: Stock
    called: str
    blanks: tuple[Blank, ...]
    is_first: bool


def lay_out_boards(plan: Plan, worked: Worked) -> tuple[LaidOut, tuple[Finding, ...]]:
    """Laid out when first asked for; at once where the project names its boards, since then they may not
    suffice."""
    boards = cache(lambda: _boards(plan, worked[BLANKS], worked.store))
    return boards, too_little(plan, worked[BLANKS], boards()) if plan.boards else ()


def _boards(plan: Plan, blanks: Blanks, store: Store | None) -> Boards:
    groups = (_group(plan, blanks, batch, store) for batch in _batches(plan, blanks))
    return Boards(tuple(group for group in groups if group is not None), plan.shop.sawing.kerf)


def _batches(plan: Plan, blanks: Blanks) -> Iterator[_Batch]:
    for stock in plan.stock.values():
        if stock.kind not in ("board", "sheet"):
            continue
        for index, same in enumerate(blanks.by_thickness(stock.id)):
            called = same[0].called
            name = stock.id if index == 0 else f"{stock.id}-{_slug(called) or index + 1}"
            yield _Batch(name, stock, called, same, index == 0)


def _slug(called: str) -> str:
    return "-".join("".join(letter if letter.isalnum() else " " for letter in called).split())


def _group(plan: Plan, blanks: Blanks, batch: _Batch, store: Store | None) -> Group | None:
    thickness = batch.blanks[0].thickness
    own = there(plan, batch.stock, thickness, is_first=batch.is_first)
    bought = sold(plan, batch.stock)
    if not (own or bought):
        return None
    question = _question(plan, blanks, batch, own or bought)
    layout = laid_out(order_of(question), store)
    group = Group(
        batch.id,
        batch.stock.id,
        batch.called,
        thickness,
        sawn_of(question, layout),
        layout.lower_bound,
        layout.cost,
        cast(Literal["boards", "area", "price"], question.counts[0]),
        layout.is_proven,
        layout.ended_early,
        layout.left_out,
        tuple(blank.id for blank in batch.blanks if fits_none(own or bought, blank)),
    )
    return _with_more(question, group, layout, bought, store) if own and bought else group


def _question(plan: Plan, blanks: Blanks, batch: _Batch, kinds: tuple[Kind, ...]) -> Question:
    ids = {blank.id for blank in batch.blanks}
    return Question(
        kinds,
        batch.blanks,
        tuple(each for each in blanks.matched if set(each.blanks) <= ids),
        plan.shop.sawing.kerf,
        plan.shop.sawing.turns or TURNS[batch.stock.kind],
        crosscut_first=batch.stock.kind == "board",
    )


def _with_more(
    question: Question, group: Group, layout: Layout, bought: tuple[Kind, ...], store: Store | None
) -> Group:
    """With boards to buy for what was left out."""
    missing = dict(layout.left_out)
    rest = tuple(
        replace(blank, count=missing[blank.id])
        for blank in question.blanks
        if blank.id in missing and not fits_none(bought, blank)
    )
    if not rest:
        return group
    held = {blank.id for blank in rest}
    matched = tuple(each for each in question.matched if set(each.blanks) <= held)
    more = replace(question, kinds=bought, blanks=rest, matched=matched)
    return replace(group, more=sawn_of(more, laid_out(order_of(more), store), first=len(group.boards) + 1))


BOARDS: Working[LaidOut] = Working(
    "boards", "Which board does each part come from?", lay_out_boards, (BLANKS,)
)
