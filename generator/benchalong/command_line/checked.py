"""What the plan check says, for people and for programs."""

from __future__ import annotations

from benchalong.ground.words import counted
from benchalong.publishing.plain import Json, Plain, finding_json
from benchalong.road import Travelled


def check_json(travelled: Travelled) -> Json:
    """`{"findings": [...], "checked": [...]}`."""
    plan, worked, marks = travelled.plan, travelled.worked, travelled.marks
    plain = Plain(plan.units, plan.precision)
    found = [finding_json(finding, marks, plain) for finding in worked.findings]
    return {"findings": found, "checked": list(travelled.asked)}


def looked_at(travelled: Travelled) -> str:
    """What the check went over, so that no findings is not taken for no looking."""
    plan = travelled.plan
    amounts = (
        counted(len(plan.sizes), "size"),
        counted(len(plan.parts), "part"),
        counted(sum(len(part.cuts) for part in plan.parts.values()), "cut"),
        counted(len(plan.steps), "step"),
    )
    questions = "\n".join(f"  {question}" for question in travelled.asked)
    return f"looked at {', '.join(amounts)}, and asked:\n{questions}"
