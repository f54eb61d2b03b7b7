"""Steps that come before what they need: told at the line that is too early, or cut too late.

A need that must be kept and isn't is a fault; one that should be, a doubt; so is a line that stands too early
within its own step, since a step is one sitting.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding, Level
from benchalong.workings.jobs.model import Need, Task, TaskId
from benchalong.workings.step_check.done_in import DoneIn, Line

MAKES = (
    "rough cut",
    "split rough",
    "flatten",
    "resaw",
    "mill",
    "rip",
    "crosscut",
    "cut",
    "drill",
    "measure and fit",
)
BRINGS_TOGETHER = ("dry-assemble", "glue up", "fit hardware", "hang")


@dataclass(frozen=True)
class Broken:
    """A need that the steps don't keep."""

    then: Task
    first: Task
    need: Need
    early: Line
    """Where it is done before what it needs."""
    late: Line
    """Where that is done."""

    @property
    def is_within_a_step(self) -> bool:
        return self.early.step == self.late.step

    @property
    def level(self) -> Level:
        return "fault" if self.need.due == "must" and not self.is_within_a_step else "doubt"

    @property
    def code(self) -> str:
        if self.need.rule == "reach":
            return "cut-out-of-reach"
        if self.need.rule in ("inside", "moves") and self.then.kind == "glue up":
            return "glued-before-finished"
        if self.first.kind in MAKES and self.then.kind in BRINGS_TOGETHER:
            return "used-before-cut"
        return "step-too-early"

    @property
    def at(self) -> Line:
        """The line to look at: of a cut that can't be reached any more, the cut's."""
        return self.late if self.code == "cut-out-of-reach" else self.early


def broken_needs(tasks: Mapping[TaskId, Task], done_in: DoneIn) -> Iterator[Finding]:
    """One finding for all that two lines break in one way."""
    groups: dict[tuple[Line, Line, str], list[Broken]] = {}
    for broken in _broken(tasks, done_in):
        groups.setdefault((broken.early, broken.late, broken.code), []).append(broken)
    for group in sorted(groups.values(), key=lambda each: each[0].at):
        yield _finding(done_in, sorted(group, key=lambda each: each.level != "fault"))


def _broken(tasks: Mapping[TaskId, Task], done_in: DoneIn) -> Iterator[Broken]:
    for task in tasks.values():
        early = done_in.first(task.id)
        for need in task.needs if early else ():
            late = done_in.first(need.first)
            if early and late and early < late:
                yield Broken(task, tasks[need.first], need, early, late)


def _finding(done_in: DoneIn, group: list[Broken]) -> Finding:
    broken = group[0]
    early, late = step_name(done_in, broken.early), step_name(done_in, broken.late)
    others = len(group) - 1
    more = f", and so with {others} more" if others else ""
    then, first = small(broken.then.title), small(broken.first.title)
    if broken.is_within_a_step:
        message = f"in {early} “{then}” stands before “{first}”{more}: {broken.need.why}"
        remedy = f"put the line of “{first}” above it"
    elif broken.code == "cut-out-of-reach":
        message = f"{late} would {first} when {early} has done “{then}”{more}: {broken.need.why}"
        remedy = f"do it before {early}"
    else:
        message = f"{early} does “{then}” before {late} does “{first}”{more}: {broken.need.why}"
        remedy = f"move it after {late}, or do “{first}” before {early}"
    return Finding(broken.code, broken.level, line_place(done_in, broken.at), broken.then.id, message, remedy)


def line_place(done_in: DoneIn, line: Line) -> Place:
    return Place((done_in.step(line).file, "does", line.line))


def step_name(done_in: DoneIn, line: Line) -> str:
    """A step as its file is called: `08-rout-dadoes`."""
    return done_in.step(line).file.rpartition("/")[2].removesuffix(".md")


def small(title: str) -> str:
    return title[:1].lower() + title[1:]
