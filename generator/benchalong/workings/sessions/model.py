"""The nouns of the plan of sessions. All times in minutes."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from benchalong.workings.jobs.model import TaskId

ZERO = Fraction(0)


@dataclass(frozen=True)
class Unit:
    """What is done at one go: a task, or all tasks that must go through a machine together."""

    tasks: tuple[TaskId, ...]
    needs: frozenset[TaskId]
    minutes: Fraction
    """The machine being set."""
    waits: int = 0
    """That must pass after it before what needs it."""
    run: int = 0
    """Number of the run it belongs to; 0 for none."""
    machine: str = ""
    to_set: Fraction = ZERO
    """Of the run, for whichever of its units comes first."""


@dataclass(frozen=True)
class Doing:
    tasks: tuple[TaskId, ...]
    start: Fraction
    """From the start of its session."""
    minutes: Fraction
    """In this session, setting included; of what is longer than a session a part."""
    meanwhile: TaskId = ""
    """What sets or dries while this is done out of turn; empty where it isn't."""
    goes_on: bool = False
    """Whether it began in the session before."""


@dataclass(frozen=True)
class Session:
    number: int
    """From 1."""
    doings: tuple[Doing, ...]
    sets: tuple[TaskId, ...]
    """What still sets or dries when it ends."""

    @property
    def minutes(self) -> Fraction:
        """Of work; waiting isn't counted."""
        return sum((doing.minutes for doing in self.doings), ZERO)


@dataclass(frozen=True)
class Sessions:
    length: Fraction
    sessions: tuple[Session, ...]
    days: int
    """From the first session to the last, at one a day."""

    @property
    def minutes(self) -> Fraction:
        """Of work in all."""
        return sum((session.minutes for session in self.sessions), ZERO)
