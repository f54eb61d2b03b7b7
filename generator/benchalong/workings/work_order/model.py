"""The nouns of the order of work."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from benchalong.workings.jobs.model import Setup, TaskId


@dataclass(frozen=True)
class Run:
    """What is done with a machine at one setting, until that machine is set again."""

    number: int
    """From 1, in the order in which settings are made."""
    setup: Setup
    tasks: tuple[TaskId, ...]
    """In their order; a test piece in scrap before the cut it tries."""
    marks: tuple[str, ...]
    """Every copy that goes over the machine in it, each once; to be ticked off."""


@dataclass(frozen=True)
class MadeAgain:
    """A setup that has to be made more than once."""

    setup: Setup
    times: int
    because: tuple[TaskId, ...]
    """Work at it, work at another setting of the machine that needs it, work at it again that needs both;
    empty where no such chain forces it."""
    why: str
    """In words, a whole sentence."""


@dataclass(frozen=True)
class WorkOrder:
    order: tuple[TaskId, ...]
    """Every task once, each after what it needs."""
    runs: tuple[Run, ...]
    least: int
    """No order that keeps to the needs has fewer setups than this."""
    again: tuple[MadeAgain, ...] = ()

    @property
    def settings(self) -> int:
        return len(self.runs)

    @property
    def is_proven(self) -> bool:
        return self.settings == self.least

    @cached_property
    def run_of(self) -> Mapping[TaskId, Run]:
        """The run that a task is done in; what needs no setting is in none."""
        return {task: run for run in self.runs for task in run.tasks}

    @cached_property
    def place(self) -> Mapping[TaskId, int]:
        """Each task's place in the order, from 0."""
        return {task: number for number, task in enumerate(self.order)}
