"""What has to be bought?"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache

from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan
from benchalong.workings.amounts import AMOUNTS
from benchalong.workings.blanks.blanks import BLANKS
from benchalong.workings.blanks.reckoning import Reckoned
from benchalong.workings.boards.boards import BOARDS
from benchalong.workings.glue import GLUE
from benchalong.workings.purchases.lumber import lumber_of
from benchalong.workings.purchases.model import Purchases
from benchalong.workings.purchases.others import sheets_of, things_of
from benchalong.workings.working import Worked, Working


def list_purchases(plan: Plan, worked: Worked) -> tuple[Callable[[], Purchases], tuple[Finding, ...]]:
    """Worked out when first asked for, as amounts are."""

    def work() -> Purchases:
        blanks, boards, amounts, glue = worked[BLANKS], worked[BOARDS](), worked[AMOUNTS](), worked[GLUE]()
        return Purchases(
            tuple(lumber_of(Reckoned(plan), blanks, boards)),
            tuple(sheets_of(plan, blanks, boards)),
            tuple(things_of(plan, blanks, amounts, glue)),
            plan.currency,
        )

    return cache(work), ()


PURCHASES: Working[Callable[[], Purchases]] = Working(
    "purchases",
    "What has to be bought, how much of it, and what does it cost?",
    list_purchases,
    (BLANKS, BOARDS, AMOUNTS, GLUE),
)
