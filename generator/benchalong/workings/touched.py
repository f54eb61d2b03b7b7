"""Which steps touch a part, which assemblies hold it, and what is asked at a step?"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from benchalong.ground.problems import Finding
from benchalong.plan.model import AssemblyId, PartId, Plan, StepId
from benchalong.workings.working import Worked, Working


@dataclass(frozen=True)
class Touched:
    """Only what there is: a part that no step touches has no entry."""

    steps: Mapping[PartId, tuple[StepId, ...]]
    """By part, in the order of work."""
    assemblies: Mapping[PartId, tuple[AssemblyId, ...]]
    """By part: the assemblies it stands in directly."""
    questions: Mapping[StepId, tuple[str, ...]]
    """By step: open ones first, then the newest."""


def follow_touches(plan: Plan, _: Worked) -> tuple[Touched, tuple[Finding, ...]]:
    steps = _gathered((part, step.id) for step in plan.steps.values() for part in step.parts)
    places = (
        (placed.of, a.id) for a in plan.assemblies.values() for placed in a.placed if placed.kind == "part"
    )
    newest = sorted(plan.questions.values(), key=lambda q: (q.when, q.id), reverse=True)
    ordered = sorted(newest, key=lambda question: question.status != "open")
    questions = _gathered((question.step, question.id) for question in ordered)
    return Touched(steps, _gathered(places), questions), ()


def _gathered(pairs: Iterable[tuple[str, str]]) -> dict[str, tuple[str, ...]]:
    found: defaultdict[str, dict[str, None]] = defaultdict(dict)
    for key, value in pairs:
        found[key][value] = None
    return {key: tuple(values) for key, values in found.items()}


TOUCHED: Working[Touched] = Working(
    "touched", "Which steps touch a part, and what is asked there?", follow_touches
)
