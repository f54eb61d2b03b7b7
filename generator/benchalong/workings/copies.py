"""Where does every copy of every part stand in the piece?"""

from __future__ import annotations

from benchalong.ground.problems import Finding
from benchalong.plan.model import Copy as Copy
from benchalong.plan.model import Plan
from benchalong.workings.working import Worked, Working


def place_copies(plan: Plan, _: Worked) -> tuple[tuple[Copy, ...], tuple[Finding, ...]]:
    """Every copy in the order written; none while nothing is placed."""
    return plan.copies, ()


COPIES: Working[tuple[Copy, ...]] = Working(
    "copies", "Where does every copy of every part stand?", place_copies
)
