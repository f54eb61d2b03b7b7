"""What must come before what, as a graph without circles, for whoever puts tasks in an order.

A circle among tasks is a defect of ours, never the author's: what an author says (`cut_when`) that goes
round is told as a finding before it comes here.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from benchalong.workings.jobs.model import Need, Task, TaskId


class GoesRound(Exception):
    """Tasks that wait for each other: `circle` names them, each before the next, the first again last."""

    def __init__(self, circle: tuple[TaskId, ...]) -> None:
        super().__init__(" -> ".join(circle))
        self.circle = circle


@dataclass(frozen=True)
class Precedence:
    """By task, in the order given, what comes directly before it."""

    needs: Mapping[TaskId, Mapping[TaskId, Need]]

    @property
    def ids(self) -> tuple[TaskId, ...]:
        return tuple(self.needs)

    @cached_property
    def before(self) -> Mapping[TaskId, frozenset[TaskId]]:
        """Everything that comes before a task, directly or not, musts and shoulds."""
        return _closed({one: tuple(needs) for one, needs in self.needs.items()})

    @cached_property
    def must_before(self) -> Mapping[TaskId, frozenset[TaskId]]:
        """Everything that must come before a task, directly or not, by musts alone."""
        musts = {
            one: tuple(first for first, need in needs.items() if need.due == "must")
            for one, needs in self.needs.items()
        }
        return _closed(musts)

    def ready(self, done: frozenset[TaskId]) -> Iterator[TaskId]:
        """What can be begun when these are done."""
        return (one for one, needs in self.needs.items() if one not in done and done.issuperset(needs))


def precedence(tasks: Iterable[Task]) -> Precedence:
    """Raises GoesRound for a circle, KeyError for a need of a task that isn't there."""
    needs: dict[TaskId, dict[TaskId, Need]] = {task.id: {} for task in tasks_once(tasks)}
    for task in tasks_once(tasks):
        for need in task.needs:
            if need.first not in needs:
                raise KeyError(need.first)
            held = needs[task.id].get(need.first)
            if held is None or held.due == "should":
                needs[task.id][need.first] = need
    found = circle({one: tuple(firsts) for one, firsts in needs.items()})
    if found:
        raise GoesRound(found)
    return Precedence(needs)


def tasks_once(tasks: Iterable[Task]) -> tuple[Task, ...]:
    return tuple({task.id: task for task in tasks}.values())


def circle(needs: Mapping[TaskId, Iterable[TaskId]]) -> tuple[TaskId, ...]:
    """Some circle, each before the next and the first again last; empty where there is none."""
    done: set[TaskId] = set()
    for root in needs:
        path: list[TaskId] = []
        on_path: set[TaskId] = set()
        work: list[tuple[TaskId, Iterator[TaskId]]] = []
        if root not in done:
            work.append((root, iter(needs[root])))
            path, on_path = [root], {root}
        while work:
            here, firsts = work[-1]
            first = next(firsts, None)
            if first is None:
                work.pop()
                path.pop()
                on_path.discard(here)
                done.add(here)
            elif first in on_path:
                return tuple(reversed([*path[path.index(first) :], first]))
            elif first not in done:
                work.append((first, iter(needs.get(first, ()))))
                path.append(first)
                on_path.add(first)
    return ()


def in_turn(needs: Mapping[TaskId, Iterable[TaskId]]) -> tuple[TaskId, ...]:
    """Each after what it needs, else as near to the order given as can be. Without circles only."""
    placed: dict[TaskId, None] = {}
    for root in needs:
        work = [(root, iter(needs[root]))] if root not in placed else []
        while work:
            here, firsts = work[-1]
            first = next((one for one in firsts if one not in placed), None)
            if first is None:
                work.pop()
                placed[here] = None
            else:
                work.append((first, iter(needs[first])))
    return tuple(placed)


def _closed(needs: Mapping[TaskId, tuple[TaskId, ...]]) -> Mapping[TaskId, frozenset[TaskId]]:
    found: dict[TaskId, frozenset[TaskId]] = {}
    for one in in_turn(needs):
        found[one] = frozenset(needs[one]).union(*(found[first] for first in needs[one]))
    return found
