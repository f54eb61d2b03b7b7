"""An order gone over by someone who knows nothing of how it was made.

Needs by networkx, settings counted anew.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise

import networkx

from benchalong.workings.sequence.model import ToDo


def amiss(todos: Iterable[ToDo], order: Sequence[str]) -> list[str]:
    """What is wrong with it, in words; nothing when it can be carried out."""
    by_id = {todo.id: todo for todo in todos}
    wrong = [f"{id} is done {order.count(id)} times" for id in by_id if order.count(id) != 1]
    wrong += [f"{id} is nothing to do" for id in order if id not in by_id]
    graph = networkx.DiGraph((need, todo.id) for todo in by_id.values() for need in todo.needs)
    place = {id: index for index, id in enumerate(order)}
    wrong += [f"{late} comes before {early}" for early, late in graph.edges if place[early] > place[late]]
    return wrong


def settings_made(todos: Iterable[ToDo], order: Sequence[str]) -> int:
    """How often any machine is set: each keeps its setting until it is set again."""
    by_id = {todo.id: todo for todo in todos}
    machines = {todo.machine for todo in by_id.values() if todo.setup}
    count = 0
    for machine in machines:
        settings = [by_id[id].setup for id in order if by_id[id].machine == machine and by_id[id].setup]
        count += sum(a != b for a, b in zip(["", *settings], settings, strict=False))
    return count


def walks_made(todos: Iterable[ToDo], order: Sequence[str]) -> int:
    machine = {todo.id: todo.machine for todo in todos}
    return sum(machine[a] != machine[b] for a, b in pairwise(order))
