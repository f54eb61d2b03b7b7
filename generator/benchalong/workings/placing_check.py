"""Is a part left out of the assemblies although others are placed?"""

from __future__ import annotations

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan
from benchalong.reading.written import PROJECT_FILE
from benchalong.workings.copies import COPIES
from benchalong.workings.working import Worked, Working


def check_placing(plan: Plan, worked: Worked) -> tuple[None, tuple[Finding, ...]]:
    """While nothing is placed there is one note: what the check couldn't look at."""
    placed = {copy.part for copy in worked[COPIES]}
    if not placed:
        return None, _nothing_placed(plan)
    return None, tuple(
        Finding(
            "part-not-placed",
            "note",
            Place((PROJECT_FILE, "parts", part.id)).key(),
            part.id,
            f"{part.name} stands in no assembly, so whether it fits was not looked at",
            f"place its {part.count} in an assembly" if part.count > 1 else "place it in an assembly",
        )
        for part in plan.parts.values()
        if part.id not in placed
    )


def _nothing_placed(plan: Plan) -> tuple[Finding, ...]:
    if not plan.parts:
        return ()
    return (
        Finding(
            "nothing-placed",
            "note",
            Place((PROJECT_FILE, "parts")).key(),
            plan.id,
            "no part has a place yet, so whether parts fit together was not looked at; their own cuts were",
            "place them under `assemblies:` when you know where they go",
        ),
    )


PLACING_CHECK: Working[None] = Working(
    "placing check", "Is every part placed somewhere?", check_placing, (COPIES,)
)
