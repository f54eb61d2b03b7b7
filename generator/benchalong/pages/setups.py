"""The order of work: every run at the machines and what is done between them, and how good the order is."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import partial
from itertools import groupby

from markupsafe import Markup

from benchalong.ground.words import counted
from benchalong.pages.makings import Makings, marks_in_short
from benchalong.pages.milled_beside import beside, rests_of
from benchalong.pages.setup import order_of, safe_id, setup_path, setup_title, steps_of
from benchalong.pages.shell import Link, Shell
from benchalong.pages.trade_words import SetTo, each_once, is_of_one_size, set_to
from benchalong.plan.model import PartId, Step, StepId
from benchalong.trade.ways.cautions import DEFERS
from benchalong.workings.jobs.jobs import JOBS
from benchalong.workings.jobs.model import Task
from benchalong.workings.work_order.model import Run
from benchalong.workings.work_order.work_order import ORDER

LIKE = frozenset(("choose and mark", "rough cut", "split rough", "flatten", "rest", "mill", "flush", "sand"))
"""Work whose title says no more than its kind and its part."""


@dataclass(frozen=True)
class Stretch:
    """What is done one after the other, at one setting or without any."""

    key: str
    run: Link | None
    """To the setup's page; None for work that needs no setting."""
    number: int
    """Of the run; 0 for none."""
    still: bool
    """Whether the machine still stands as it was set before."""
    settings: tuple[SetTo, ...]
    head: str
    lines: tuple[str, ...]
    marks: str
    beside: str
    """Spares and test pieces that go with them."""
    rests: tuple[Markup, ...]
    """How long the wood lies after it."""
    steps: tuple[Link, ...]


@dataclass(frozen=True)
class SetupsPage:
    shell: Shell
    setups: int
    least: int
    good: str
    again: tuple[str, ...]
    stretches: tuple[Stretch, ...]
    undone: tuple[str, ...]
    """What no tool at hand can do."""


def setups_page(makings: Makings) -> SetupsPage:
    order, jobs = order_of(makings), makings.worked[JOBS]
    return SetupsPage(
        Shell("setups", "setups.html", "Order of work"),
        order.settings,
        order.least,
        _good(order.settings, order.least),
        tuple(each.why for each in order.again),
        tuple(_stretches(makings)),
        tuple(jobs.by_id[one].title for one in jobs.undone),
    )


def setups_in_step(makings: Makings, step: Step) -> tuple[Link, ...]:
    """The setups of the work that a step does, in the order of work."""
    found = makings.once("runs by step", "", lambda: _runs_by(makings, partial(steps_of, makings)))
    return tuple(_run_link(run) for run in found.get(step.id, ()))


def setups_of_part(makings: Makings, part: PartId) -> tuple[Link, ...]:
    """The setups that a part goes over, in the order of work."""
    found = makings.once("runs by part", "", lambda: _runs_by(makings, lambda task: task.parts))
    return tuple(_run_link(run) for run in found.get(part, ()))


def cautions_of_work(makings: Makings, step: Step) -> tuple[Markup, ...]:
    """What can hurt in the work that a step does. What is said of a piece's own size stands on the
    setup's page, where the piece is named."""
    tasks = makings.once("work by step", "", lambda: _tasks_by_step(makings)).get(step.id, ())
    said = (words for task in tasks for words in task.cautions if words != DEFERS)
    return each_once(makings.shows, (words for words in said if not is_of_one_size(words)))


def _run_link(run: Run) -> Link:
    return Link(setup_path(run.setup), f"Setup {run.number}: {setup_title(run.setup)}")


def _runs_by(makings: Makings, of: Callable[[Task], Iterable[str]]) -> Mapping[str, tuple[Run, ...]]:
    """For each thing that work is `of`, the runs with such work, in the order of work."""
    by_id = makings.worked[JOBS].by_id
    found: dict[str, list[Run]] = {}
    for run in order_of(makings).runs:
        for one in dict.fromkeys(of_one for task in run.tasks for of_one in of(by_id[task])):
            found.setdefault(one, []).append(run)
    return {one: tuple(runs) for one, runs in found.items()}


def _tasks_by_step(makings: Makings) -> Mapping[StepId, tuple[Task, ...]]:
    found: dict[StepId, list[Task]] = {}
    for task in makings.worked[JOBS].tasks:
        for step in steps_of(makings, task):
            found.setdefault(step, []).append(task)
    return {step: tuple(tasks) for step, tasks in found.items()}


def _good(setups: int, least: int) -> str:
    made = counted(setups, "setup")
    if setups == least:
        return f"{made}. No order that keeps to what must come first has fewer"
    return f"{made}. At least {least} are needed, whichever order is taken"


def _stretches(makings: Makings) -> Iterator[Stretch]:
    order, by_id = makings.worked[ORDER](), makings.worked[JOBS].by_id
    seen: set[int] = set()
    tasks = [by_id[one] for one in order.order]
    for key, group in groupby(tasks, lambda task: _key(makings, task)):
        found = tuple(group)
        run = order.run_of.get(found[0].id)
        number = run.number if run else 0
        marks = tuple(dict.fromkeys(m for task in found if task.kind != "test piece" for m in task.marks))
        steps = dict.fromkeys(step for task in found for step in steps_of(makings, task))
        yield Stretch(
            f"order-{len(seen)}-{key}" if not run else f"run-{number}",
            Link(setup_path(run.setup), setup_title(run.setup)) if run else None,
            number,
            number in seen,
            tuple(set_to(makings.shows, one) for one in run.setup.settings) if run else (),
            found[0].kind[:1].upper() + found[0].kind[1:],
            work_in_lines(makings, found),
            marks_in_short(marks, 10),
            beside(makings, found),
            rests_of(makings, found),
            tuple(makings.step_link(step) for step in steps),
        )
        seen.add(number)


def work_in_lines(makings: Makings, tasks: tuple[Task, ...]) -> tuple[str, ...]:
    """The same work on many parts is told once, with their names."""
    kinds = {task.kind for task in tasks}
    if len(tasks) > 1 and len(kinds) == 1 and kinds <= LIKE and not any(task.assembly for task in tasks):
        parts = dict.fromkeys(part for task in tasks for part in task.parts)
        kind = tasks[0].kind
        return (f"{kind[:1].upper()}{kind[1:]}: {', '.join(makings.plan.parts[one].name for one in parts)}",)
    return tuple(task.title for task in tasks)


def _key(makings: Makings, task: Task) -> str:
    run = order_of(makings).run_of.get(task.id)
    return safe_id(run.setup) + str(run.number) if run else task.kind
