"""Which work is there to do, and what must be done before it?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan
from benchalong.reading.written import PROJECT_FILE
from benchalong.workings.blanks.blanks import BLANKS
from benchalong.workings.clashes import CLASHES
from benchalong.workings.jobs.cutting import cut_tasks, test_tasks
from benchalong.workings.jobs.done_with import Shop, cant, take_ways
from benchalong.workings.jobs.facts import Facts
from benchalong.workings.jobs.finishing import (
    finish_tasks,
    hang_tasks,
    hardware_tasks,
    jig_tasks,
    sand_assembly_tasks,
    sand_part_tasks,
)
from benchalong.workings.jobs.index import Index
from benchalong.workings.jobs.model import Closes, Need, Task, TaskId, Tasks
from benchalong.workings.jobs.precedence import GoesRound, circle, in_turn
from benchalong.workings.jobs.rules import RULES
from benchalong.workings.jobs.together import dry_tasks, fit_tasks, flush_tasks, glue_tasks
from benchalong.workings.jobs.too_late import fitted_too_late
from benchalong.workings.jobs.wood import wood_tasks
from benchalong.workings.placed import PLACED
from benchalong.workings.ways_out import WAYS_OUT
from benchalong.workings.working import Worked, Working

MAKERS = (
    wood_tasks, jig_tasks, test_tasks, cut_tasks, dry_tasks, sand_part_tasks, finish_tasks, glue_tasks,
    flush_tasks, fit_tasks, sand_assembly_tasks, hardware_tasks, hang_tasks,
)  # fmt: skip
"""In the order in which their work is mostly done; what is listed is turned so that needs come first."""


def find_jobs(plan: Plan, worked: Worked) -> tuple[Tasks, tuple[Finding, ...]]:
    facts = Facts(plan, worked[PLACED], worked[WAYS_OUT], worked[BLANKS])
    tasks = {task.id: task for make in MAKERS for task in make(facts)}
    needs = _needs(Index(facts, tasks))
    findings = tuple(_without_circles(plan, needs))
    turned = [_closing(replace(tasks[one], needs=tuple(needs[one].values()))) for one in in_turn(needs)]
    made, undone = take_ways(facts, tuple(turned))
    by_id = {task.id: task for task in made}
    cant_be = tuple(cant(Shop(plan), by_id[one], refusals) for one, refusals in undone.items())
    late = fitted_too_late(facts, worked[CLASHES])
    final = {name: f"measure-and-fit/{facts.made_final(name)}" for name in plan.fitted}
    return Tasks(made, undone, final), (*findings, *late, *cant_be)


def _needs(index: Index) -> dict[TaskId, dict[TaskId, Need]]:
    """By task; of two reasons for one need the harder."""
    found: dict[TaskId, dict[TaskId, Need]] = {one: {} for one in index.by_id}
    for rule in RULES:
        for one, need in rule(index):
            if one in found and need.first in found and need.first != one:
                held = found[one].get(need.first)
                if held is None or (held.due == "should" and need.due == "must"):
                    found[one][need.first] = need
    return found


def _without_circles(plan: Plan, needs: dict[TaskId, dict[TaskId, Need]]) -> Iterator[Finding]:
    """Takes out what an author's `cut_when` sends round, and says so. Raises GoesRound for a circle of
    ours."""
    while found := circle({one: tuple(firsts) for one, firsts in needs.items()}):
        pairs = list(pairwise(found))
        measured = [(first, then) for first, then in pairs if needs[then][first].rule == "measured"]
        fits = [(first, then) for first, then in measured if then.startswith("measure-and-fit/")]
        if not fits:
            raise GoesRound(found)
        first, then = fits[0]
        del needs[then][first]
        yield _goes_round(plan, then.removeprefix("measure-and-fit/"), found)


def _goes_round(plan: Plan, name: str, found: tuple[TaskId, ...]) -> Finding:
    section = "parts" if name in plan.parts else "assemblies"
    told = plan.fitted[name]
    key = "cut_when" if told.measured else "leave"
    return Finding(
        "fitted-goes-round",
        "fault",
        Place((PROJECT_FILE, section, name, key)),
        name,
        f"{name} waits for something that waits for {name}: {', then '.join(found)}",
        "measure it on something that doesn't need it, or after an earlier job: a dry assembly",
        {},
        told.follows,
    )


def _closing(task: Task) -> Task:
    """What glue shuts in, told from the side of the glue."""
    shut: dict[str, list[TaskId]] = {}
    for need in task.needs:
        if need.rule in ("reach", "moves") and need.due == "must":
            shut.setdefault(need.why, []).append(need.first)
    return replace(task, closes=tuple(Closes(tuple(ids), why) for why, ids in shut.items()))


JOBS: Working[Tasks] = Working(
    "jobs",
    "Which work is there to do, and what must be done before it?",
    find_jobs,
    (PLACED, CLASHES, WAYS_OUT, BLANKS),
)
