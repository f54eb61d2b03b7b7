"""What needs what, as bits: made once, so that the searches ask in a few machine words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from graphlib import CycleError, TopologicalSorter

from benchalong.workings.sequence.model import Circle, ToDo


@dataclass(frozen=True)
class Needs:
    """To-dos counted from 0 in an order that can be done; a set of them is an integer with a bit for each."""

    todos: tuple[ToDo, ...]
    before: tuple[int, ...]
    """Of each, what it needs itself."""
    all_before: tuple[int, ...]
    """Of each, what it needs directly or not."""
    after: tuple[tuple[int, ...], ...]
    """Of each, what needs it itself."""

    @property
    def everything(self) -> int:
        return (1 << len(self.todos)) - 1


def needs_of(todos: Sequence[ToDo]) -> Needs:
    """Raises `Circle` when they need each other in one, and KeyError when one needs what is not there."""
    by_id = {todo.id: todo for todo in todos}
    ordered = tuple(by_id[id] for id in _in_an_order(todos))
    number = {todo.id: index for index, todo in enumerate(ordered)}
    before: list[int] = []
    all_before: list[int] = []
    after: list[list[int]] = [[] for _ in ordered]
    for index, todo in enumerate(ordered):
        direct = sorted(number[need] for need in todo.needs)
        for need in direct:
            after[need].append(index)
        before.append(sum(1 << need for need in direct))
        whole = before[-1]
        for need in direct:
            whole |= all_before[need]
        all_before.append(whole)
    return Needs(ordered, tuple(before), tuple(all_before), tuple(tuple(each) for each in after))


def bits(mask: int) -> Iterator[int]:
    """The numbers in a set, lowest first."""
    while mask:
        low = mask & -mask
        yield low.bit_length() - 1
        mask ^= low


def _in_an_order(todos: Sequence[ToDo]) -> tuple[str, ...]:
    """By needs, then as given."""
    place = {todo.id: index for index, todo in enumerate(todos)}
    sorter = TopologicalSorter({todo.id: sorted(todo.needs, key=place.__getitem__) for todo in todos})
    try:
        return tuple(sorter.static_order())
    except CycleError as error:
        raise Circle(error.args[1]) from None
