"""Which step does which work?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan, Step
from benchalong.workings.jobs.jobs import JOBS
from benchalong.workings.jobs.model import Task, TaskId
from benchalong.workings.jobs.waits import minutes_in
from benchalong.workings.step_check.meant import Closeness, inside, meant_by
from benchalong.workings.working import Worked, Working


@dataclass(frozen=True, order=True)
class Line:
    """One line of a step's `does:`; the earlier is the smaller."""

    step: int
    """Its place in the order of work, from 0."""
    line: int
    """From 0."""


@dataclass(frozen=True)
class DoneIn:
    steps: tuple[Step, ...]
    """In the order of work."""
    lines: Mapping[TaskId, tuple[Line, ...]]
    """Of each task that a line means, these lines, in their order; others are missing."""
    needs: Mapping[TaskId, frozenset[TaskId]]
    """What each task needs."""
    mentioned: frozenset[TaskId]
    """Hardware that goes on in some step that takes it, though no line says so."""

    @property
    def is_said(self) -> bool:
        """Whether any step says what it does, so that gaps are worth telling."""
        return any(step.does for step in self.steps)

    def first(self, task: TaskId) -> Line | None:
        return min(self.lines.get(task, ()), default=None)

    @property
    def last(self) -> Line:
        """The last line there is."""
        return max(
            Line(number, max(0, len(step.does) - 1)) for number, step in enumerate(self.steps) if step.does
        )

    def step(self, line: Line) -> Step:
        return self.steps[line.step]


def find_lines(plan: Plan, worked: Worked) -> tuple[DoneIn, tuple[Finding, ...]]:
    tasks = worked[JOBS].tasks
    steps = tuple(plan.steps.values())
    found = _found(plan, steps, tasks)
    lines: dict[TaskId, tuple[Line, ...]] = {}
    for task in tasks:
        meaning = found.get(task.id, [])
        closest = max((close for _, close in meaning), default=None)
        at = tuple(line for line, close in meaning if close == closest)
        if at and closest is not None and not closest[0]:
            at = tuple(_first_that_fits(task, at, lines))
        if task.kind == "rest" and not at:
            at = tuple(_rests_after(task, lines, steps))
        if at:
            lines[task.id] = at
    taken = {name for step in steps for name in step.hardware}
    mentioned = frozenset(
        task.id
        for task in tasks
        if task.kind == "fit hardware" and task.hardware in taken and task.id not in lines
    )
    return DoneIn(steps, lines, {task.id: task.first for task in tasks}, mentioned), ()


def _found(
    plan: Plan, steps: tuple[Step, ...], tasks: tuple[Task, ...]
) -> dict[TaskId, list[tuple[Line, Closeness]]]:
    within = inside(plan)
    by_word: dict[str, list[Task]] = {}
    for task in tasks:
        for word in task.called:
            by_word.setdefault(word, []).append(task)
    found: dict[TaskId, list[tuple[Line, Closeness]]] = {}
    for number, step in enumerate(steps):
        for index, job in enumerate(step.does):
            meant = meant_by(plan, job, within, tasks)
            for task in by_word.get(job.kind, ()):
                close = meant.closeness(task)
                if close:
                    found.setdefault(task.id, []).append((Line(number, index), close))
    return found


def _first_that_fits(
    task: Task, at: tuple[Line, ...], lines: Mapping[TaskId, tuple[Line, ...]]
) -> Iterator[Line]:
    """Another word for it may as well mean other work: the first line by which it can be done, if any."""
    ready = max((min(lines[one]) for one in task.must if one in lines), default=Line(-1, 0))
    yield from [line for line in at if line >= ready][:1]


def _rests_after(
    task: Task, lines: Mapping[TaskId, tuple[Line, ...]], steps: tuple[Step, ...]
) -> Iterator[Line]:
    """Wood rests in the wait of the step that saws it open, so at that step's end."""
    opened = max((line for one in task.must for line in lines.get(one, ())), default=None)
    if opened and minutes_in(steps[opened.step].wait):
        yield Line(opened.step, len(steps[opened.step].does))


DONE_IN: Working[DoneIn] = Working("done in", "Which step does which work?", find_lines, (JOBS,))
