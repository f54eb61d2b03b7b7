"""Which board does each part come from, and do the boards suffice?"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan
from benchalong.workings.blanks.blanks import BLANKS
from benchalong.workings.boards.model import Boards, Group, LaidOut, Unused
from benchalong.workings.boards.short import too_little
from benchalong.workings.boards.stocks import StockBoards
from benchalong.workings.working import Worked, Working


def lay_out_boards(plan: Plan, worked: Worked) -> tuple[LaidOut, tuple[Finding, ...]]:
    """Laid out when first asked for; at once where the project names its boards, since then they may not
    suffice."""
    boards = cache(lambda: _boards(plan, worked))
    return boards, too_little(plan, worked[BLANKS], boards()) if plan.boards else ()


def _boards(plan: Plan, worked: Worked) -> Boards:
    groups, unused = list[Group](), list[Unused]()
    for stock in _stocks(plan, worked):
        groups += stock.groups()
        unused += stock.unused()
    return Boards(tuple(groups), plan.shop.sawing.kerf, tuple(unused))


def _stocks(plan: Plan, worked: Worked) -> Iterator[StockBoards]:
    for stock in plan.stock.values():
        if stock.kind in ("board", "sheet"):
            yield StockBoards(plan, worked[BLANKS], stock, worked.store)


BOARDS: Working[LaidOut] = Working(
    "boards", "Which board does each part come from?", lay_out_boards, (BLANKS,)
)
