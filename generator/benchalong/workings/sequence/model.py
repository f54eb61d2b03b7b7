"""The nouns of the order: what there is to do, and the order it is put in."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TypeAlias

ToDoId: TypeAlias = str


@dataclass(frozen=True)
class ToDo:
    """One thing to do."""

    id: ToDoId
    needs: frozenset[ToDoId] = frozenset()
    """What must be done before."""
    machine: str = ""
    """Where it is done; none for what is done anywhere."""
    setup: str = ""
    """How that machine is set for it; none where nothing is set."""
    rank: int = 0
    """Where the author has it: lower comes earlier. Of two that nothing else orders, the lower goes first."""


@dataclass(frozen=True)
class Run:
    """What is done with a machine at one setting, until that machine is set again."""

    machine: str
    setup: str
    does: tuple[ToDoId, ...]


@dataclass(frozen=True)
class Again:
    """A setting that is made more than once."""

    setup: str
    machine: str
    times: int
    because: tuple[ToDoId, ...]
    """A chain of needs from one run of it over another setting of the machine to the next run. Empty when no
    single chain forces it: then this setting or another had to be made again, and this was the cheaper."""


@dataclass(frozen=True)
class Sequence:
    order: tuple[ToDoId, ...]
    runs: tuple[Run, ...]
    """In the order in which the settings are made."""
    least: int
    """No order has fewer settings than this."""
    again: tuple[Again, ...] = ()

    @property
    def settings(self) -> int:
        return len(self.runs)

    @property
    def is_proven(self) -> bool:
        return self.settings == self.least


class Circle(ValueError):
    """To-dos that need each other in a circle: no order can be."""

    def __init__(self, ids: Iterable[ToDoId]) -> None:
        self.ids = tuple(ids)
        super().__init__(" needs ".join(self.ids))


def runs_of(order: Iterable[ToDo]) -> tuple[Run, ...]:
    """The runs that an order makes: a machine's setting stands until that machine is set again, whatever is
    done elsewhere meanwhile."""
    runs: list[tuple[str, str, list[ToDoId]]] = []
    stands: dict[str, int] = {}
    for todo in order:
        if not todo.setup:
            continue
        last = stands.get(todo.machine)
        if last is None or runs[last][1] != todo.setup:
            stands[todo.machine] = len(runs)
            runs.append((todo.machine, todo.setup, []))
        runs[stands[todo.machine]][2].append(todo.id)
    return tuple(Run(machine, setup, tuple(does)) for machine, setup, does in runs)
