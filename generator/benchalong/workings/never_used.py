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
    """What only steps use is passed over while there are no steps."""
    steps = plan.steps.values()
    found = [
        *_unused("sizes", "the size {} is used nowhere", plan.sizes, plan.used_sizes),
        *_unused(
            "stock",
            "no part is made from the stock {}",
            plan.stock,
            (part.stock for part in plan.parts.values()),
        ),
    ]
    if steps:
        found += [
            *_unused(
                "hardware",
                "no step uses the hardware {}",
                plan.hardware,
                _with_what_holds_it(plan, _named_in(step.hardware for step in steps)),
            ),
            *_unused("jigs", "no step uses the jig {}", plan.jigs, _named_in(step.jigs for step in steps)),
            *_unused(
                "stages", "no step belongs to the stage {}", plan.stages, (step.stage for step in steps)
            ),
        ]
    return None, tuple(found)


def _named_in(lists: Iterable[Iterable[str]]) -> set[str]:
    return {name for names in lists for name in names}


def _with_what_holds_it(plan: Plan, used: set[str]) -> set[str]:
    """Screws are used where what they hold is."""
    things = [plan.hardware[name] for name in used if name in plan.hardware]
    return used.union(*({thing.held_by, *(bore.screw for bore in thing.bores)} for thing in things))


def _unused(section: str, message: str, defined: Iterable[str], used: Iterable[str]) -> Iterator[Finding]:
    reached = set(used)
    for name in defined:
        if name not in reached:
            yield Finding(
                "never-used",
                "doubt",
                Place((PROJECT_FILE, section, name)).key(),
                name,
                message.format(name),
                "use it, or take it out; if it is used, is it spelt the same there?",
                sizes=(name,) if section == "sizes" else (),
            )


NEVER_USED: Working[None] = Working("never used", "What was named and never used?", find_unused)
