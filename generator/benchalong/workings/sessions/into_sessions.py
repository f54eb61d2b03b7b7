"""Units of work into sessions: the next in the order that can be done now, and fits into what is left.

One session a day, each at the same hour. What comes later in the order may be done while something sets, but
never before earlier work at its machine: so no machine is set more often than the order says. What is longer
than a session goes over into the next. *Common practice, no source*; not the fewest sessions, but close to
the order.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from benchalong.workings.jobs.model import TaskId
from benchalong.workings.sessions.model import ZERO, Doing, Session, Unit

DAY = 24 * 60


def into_sessions(units: tuple[Unit, ...], length: Fraction) -> tuple[tuple[Session, int], ...]:
    """Each session with the day it is on, from 0. Units must stand in an order that keeps to their needs;
    `length` is in minutes, above zero."""
    if length <= 0:
        raise ValueError("a session must have a length")
    clock = _Clock(length, list(units))
    found: list[tuple[Session, int]] = []
    while clock.left or clock.over:
        doings = clock.session()
        if doings:
            found.append((Session(len(found) + 1, doings, clock.setting()), clock.day))
        clock.day += 1
    return tuple(found)


@dataclass
class _Clock:
    length: Fraction
    left: list[Unit]
    day: int = 0
    now: Fraction = ZERO
    """From the start of the session."""
    over: tuple[Unit, Fraction] | None = None
    """What goes on in the next session, and for how long."""
    ready: dict[TaskId, Fraction] = field(default_factory=dict)
    """When what is done has set, from the very start."""
    sets: dict[TaskId, Fraction] = field(default_factory=dict)
    """Of these what had still to set when last looked at: a few of many."""
    by: dict[TaskId, Fraction] = field(default_factory=dict)
    """When it was done."""
    standing: set[int] = field(default_factory=set)
    """Runs whose machine has been set."""

    @property
    def moment(self) -> Fraction:
        return self.day * DAY + self.now

    def session(self) -> tuple[Doing, ...]:
        self.now = ZERO
        doings: list[Doing] = []
        if self.over:
            unit, minutes = self.over
            self.over = None
            doings.append(self._do(unit, minutes, "", goes_on=True))
        while not self.over and self.now < self.length:
            found = self._next()
            if found:
                unit, meanwhile = found
                self.left.remove(unit)
                doings.append(self._do(unit, self._takes(unit), meanwhile))
            elif not self._wait():
                break
        return tuple(doings)

    def setting(self) -> tuple[TaskId, ...]:
        return tuple(one for one, until in self.ready.items() if self.by[one] <= self.moment < until)

    def _takes(self, unit: Unit) -> Fraction:
        return unit.minutes + (unit.to_set if unit.run and unit.run not in self.standing else ZERO)

    def _do(self, unit: Unit, minutes: Fraction, meanwhile: TaskId, *, goes_on: bool = False) -> Doing:
        here = min(minutes, self.length - self.now)
        doing = Doing(unit.tasks, self.now, here, meanwhile, goes_on)
        self.standing.add(unit.run)
        self.now += here
        if here < minutes:
            self.over = (unit, minutes - here)
        else:
            for one in unit.tasks:
                self.by[one], self.ready[one] = self.moment, self.moment + unit.waits
                if unit.waits:
                    self.sets[one] = self.ready[one]
        return doing

    def _next(self) -> tuple[Unit, TaskId] | None:
        """The first that can be done now, and what it doesn't wait for."""
        moment = self.moment
        self.sets = {one: until for one, until in self.sets.items() if until > moment}
        waited: TaskId = ""
        busy: set[str] = set()
        for unit in self.left:
            if unit.machine not in busy and self._is_ready(unit) and self._fits(unit):
                return unit, waited
            waited = waited or min(unit.needs & self.sets.keys(), default="")
            if unit.machine:
                busy.add(unit.machine)
        return None

    def _is_ready(self, unit: Unit) -> bool:
        """Whether all it needs is done and has set."""
        return unit.needs <= self.ready.keys() and unit.needs.isdisjoint(self.sets)

    def _fits(self, unit: Unit) -> bool:
        """Into what is left of the session; what is longer than a whole one begins with it."""
        takes = self._takes(unit)
        return takes <= self.length - self.now or (takes > self.length and self.now == 0)

    def _wait(self) -> bool:
        """Until the next thing has set, where that is still in this session and something fits after it."""
        until = min((one for one in self.sets.values() if one > self.moment), default=None)
        end = self.day * DAY + self.length
        if until is None or until >= end:
            return False
        self.now = until - self.day * DAY
        return True
