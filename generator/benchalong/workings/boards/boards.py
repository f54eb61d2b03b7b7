"""Which board does each part come from, and do the boards suffice?"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan
from benchalong.workings.blanks.blanks import BLANKS
from benchalong.workings.boards.model import Boards, LaidOut
from benchalong.workings.boards.short import too_little
from benchalong.workings.boards.stocks import StockBoards
from benchalong.workings.boards.thin import too_thin
from benchalong.workings.boards.turns import too_few_turns
from benchalong.workings.working import Worked, Working


def lay_out_boards(plan: Plan, worked: Worked) -> tuple[LaidOut, tuple[Finding, ...]]:
    """Laid out when first asked for; at once where the project names its boards, since then they may not
    suffice."""
    blanks, boards = worked[BLANKS], cache(lambda: _boards(plan, worked))
    short = too_little(plan, blanks, boards()) if plan.boards else ()
    return boards, (*too_few_turns(plan, blanks), *too_thin(plan, blanks), *short)


def _boards(plan: Plan, worked: Worked) -> Boards:
    groups = (group for stock in _stocks(plan, worked) for group in stock.groups())
    return Boards(tuple(groups), plan.shop.sawing.kerf)


def _stocks(plan: Plan, worked: Worked) -> Iterator[StockBoards]:
    for stock in plan.stock.values():
        if stock.kind in ("board", "sheet"):
            yield StockBoards(plan, worked[BLANKS], stock, worked.store)


BOARDS: Working[LaidOut] = Working(
    "boards", "Which board does each part come from?", lay_out_boards, (BLANKS,)
)
