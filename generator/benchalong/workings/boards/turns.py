"""In how many directions, one after the other, boards are cut: as the author says, else as shops do.

What lies end to end on a rough board stays in one piece until it is ripped to width, and is crosscut after
that: a third turn.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan, Stock
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.rough import TURNS
from benchalong.workings.blanks.model import Blanks, Matched

END_TO_END = 3
"""Crosscut, ripped, crosscut again."""


def turns_of(stock: Stock, matched: Iterable[Matched], said: int | None) -> int:
    if not _needs_three(stock, matched):
        return said or TURNS[stock.kind]
    if said is None:
        return END_TO_END
    return said - 1 if said > END_TO_END and said % 2 == 0 else said


def too_few_turns(plan: Plan, blanks: Blanks) -> Iterator[Finding]:
    said = plan.shop.sawing.turns
    for matched in {each.id: each for each in blanks.matched}.values():
        stock = plan.stock[blanks.by_id[matched.blanks[0]].stock]
        if said is None or said >= END_TO_END or not _needs_three(stock, [matched]):
            continue
        place = Place((PROJECT_FILE, "matches", matched.id)).key()
        ways = "crosscut, ripped and crosscut again"
        message = f"{matched.id}: from one board end to end they are {ways}, and turns: says {said}"
        remedy = f"say `turns: {END_TO_END}` under shop:, or leave them unmatched"
        yield Finding("match-needs-turns", "doubt", place, matched.id, message, remedy)


def _needs_three(stock: Stock, matched: Iterable[Matched]) -> bool:
    return stock.kind == "board" and any(each.parted != "along" for each in matched)
