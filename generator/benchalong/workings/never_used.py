"""What has the author named and then never used?

A slip in a definition shows in no use: the old name is reported where it is used, the new one here.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan
from benchalong.reading.written import PROJECT_FILE
from benchalong.workings.working import Worked, Working


def find_unused(plan: Plan, _: Worked) -> tuple[None, tuple[Finding, ...]]:
    named: tuple[tuple[str, str, Iterable[str], Iterable[str]], ...] = (
        ("sizes", "size", plan.sizes, plan.used_sizes),
        ("stock", "stock", plan.stock, (part.stock for part in plan.parts.values())),
        (
            "hardware",
            "hardware",
            plan.hardware,
            (name for step in plan.steps.values() for name in step.hardware),
        ),
        ("jigs", "jig", plan.jigs, (name for step in plan.steps.values() for name in step.jigs)),
        ("stages", "stage", plan.stages, (step.stage for step in plan.steps.values())),
    )
    return None, tuple(finding for entry in named for finding in _unused(*entry))


def _unused(section: str, noun: str, defined: Iterable[str], used: Iterable[str]) -> Iterator[Finding]:
    reached = set(used)
    for name in defined:
        if name not in reached:
            yield Finding(
                "never-used",
                "doubt",
                Place((PROJECT_FILE, section, name)).key(),
                name,
                f"the {noun} {name} is defined and never used",
                f"use it or take it out; is {name} spelt as it is elsewhere?",
                sizes=(name,) if section == "sizes" else (),
            )


NEVER_USED: Working[None] = Working("never used", "What was named and never used?", find_unused)
