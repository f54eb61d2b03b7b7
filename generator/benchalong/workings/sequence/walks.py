"""The least walking from machine to machine, with no setting more; then the author's own order.

The runs of each machine stay in the order the settings were made in: what belongs to an earlier run of a
machine comes before what belongs to a later one. Every order that keeps to that and to the needs makes the
same settings, so among those the cheapest is looked for by what a step from one to-do to the next costs:
another machine a lot, going back in the author's order a little.
"""

from __future__ import annotations

import numpy as np

from benchalong.workings.sequence.arcs import Must, Prices, cheapest_order
from benchalong.workings.sequence.model import Run, ToDo
from benchalong.workings.sequence.needs import Needs, bits

WALK, BACK, LEAP = 1_000, 10, 1
"""Prices of a step: to another machine; back in the author's order; over something between."""


def least_walking(needs: Needs, runs: tuple[Run, ...], *, looks: int, seed: int = 0) -> tuple[ToDo, ...]:
    """All to-dos in order. The runs must be ones that can be made in this order."""
    todos = needs.todos
    must = _must(needs, runs)
    first = _by_rank(todos, must)
    n = len(todos)
    order = cheapest_order(*_with_ends(_prices(todos), must), (n, *first, n + 1), looks=looks, seed=seed)
    return tuple(todos[each] for each in order[1:-1])


def _must(needs: Needs, runs: tuple[Run, ...]) -> Must:
    """What must come before what, the runs of each machine in their order."""
    number = {todo.id: index for index, todo in enumerate(needs.todos)}
    must = np.zeros((len(number), len(number)), dtype=bool)
    for todo, before in enumerate(needs.all_before):
        must[list(bits(before)), todo] = True
    earlier: dict[str, list[int]] = {}
    for run in runs:
        here = [number[id] for id in run.does]
        must[np.ix_(earlier.setdefault(run.machine, []), here)] = True
        earlier[run.machine] += here
    return closed(must)


def closed(must: Must) -> Must:
    """With everything that follows from it (Warshall 1962), eight answers to a byte."""
    rows = np.packbits(must, axis=1)
    for through in range(len(must)):
        byte, bit = divmod(through, 8)
        rows[(rows[:, byte] & (128 >> bit)) != 0] |= rows[through]
    return np.unpackbits(rows, axis=1, count=len(must)).astype(bool)


def _by_rank(todos: tuple[ToDo, ...], must: Must) -> tuple[int, ...]:
    """Of what can come next, always what the author has first."""
    order: list[int] = []
    waits = must.sum(axis=0)
    left = sorted(range(len(todos)), key=lambda each: (todos[each].rank, each))
    while left:
        each = next(each for each in left if waits[each] == 0)
        left.remove(each)
        order.append(each)
        waits = waits - must[each]
    return tuple(order)


def _prices(todos: tuple[ToDo, ...]) -> Prices:
    names = sorted({todo.machine for todo in todos})
    machine = np.array([names.index(todo.machine) for todo in todos])
    ranks = sorted({todo.rank for todo in todos})
    rank = np.array([ranks.index(todo.rank) for todo in todos])
    walks = machine[:, None] != machine[None, :]
    back = rank[:, None] > rank[None, :]
    leap = np.abs(rank[:, None] - rank[None, :]) > 1
    prices: Prices = (WALK * walks + BACK * back + LEAP * leap).astype(np.int64)
    return prices


def _with_ends(prices: Prices, must: Must) -> tuple[Prices, Must]:
    """With a start and an end that cost nothing."""
    n = len(prices)
    wider = np.zeros((n + 2, n + 2), dtype=np.int64)
    wider[:n, :n] = prices
    held = np.zeros((n + 2, n + 2), dtype=bool)
    held[:n, :n] = must
    held[n, :] = True
    held[n, n] = False
    held[:, n + 1] = True
    held[n + 1, n + 1] = False
    return wider, held
