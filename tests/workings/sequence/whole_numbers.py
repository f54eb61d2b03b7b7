"""The fewest settings as a programme with whole numbers, for orders too long to try everything."""

from __future__ import annotations

from itertools import combinations, permutations
from typing import Any

import highspy
import networkx

from benchalong.workings.sequence.model import ToDo


def fewest_by_programme(todos: list[ToDo]) -> int:
    """On each machine its to-dos stand in a row; a new setting is made wherever the one before had another.

    Every pair of to-dos is ordered by a yes or no without circles (linear ordering, Groetschel, Juenger and
    Reinelt 1984); to-dos of one machine follow one another as the stops of a path do, and a step between two
    settings costs 1.
    """
    set_ones = [todo for todo in todos if todo.setup]
    model: Any = highspy.Highs()  # type: ignore[no-untyped-call]
    model.setOptionValue("output_flag", False)
    before = _ordered(model, [todo.id for todo in set_ones], _must(todos))
    costs: list[Any] = []
    for machine in sorted({todo.machine for todo in set_ones}):
        costs += _row(model, [todo for todo in set_ones if todo.machine == machine], before)
    if not costs:
        return 0
    model.minimize(sum(costs))
    assert model.getModelStatus() == highspy.HighsModelStatus.kOptimal
    return round(float(model.getInfo().objective_function_value))


def _must(todos: list[ToDo]) -> set[tuple[str, str]]:
    graph = networkx.DiGraph((need, todo.id) for todo in todos for need in todo.needs)
    return set(networkx.transitive_closure(graph).edges)


def _ordered(model: Any, ids: list[str], must: set[tuple[str, str]]) -> dict[tuple[str, str], Any]:
    before = {pair: model.addBinary() for pair in permutations(ids, 2)}
    for a, b in combinations(ids, 2):
        model.addConstr(before[a, b] + before[b, a] == 1)
    for pair in must & before.keys():
        model.addConstr(before[pair] == 1)
    for a, b, c in permutations(ids, 3):
        model.addConstr(before[a, b] + before[b, c] - before[a, c] <= 1)
    return before


def _row(model: Any, here: list[ToDo], before: dict[tuple[str, str], Any]) -> list[Any]:
    """What costs a setting: the first of the row, and each step to another setting."""
    setup = {todo.id: todo.setup for todo in here}
    steps = {pair: model.addBinary() for pair in permutations(setup, 2)}
    first = {id: model.addBinary() for id in setup}
    last = {id: model.addBinary() for id in setup}
    model.addConstr(sum(first.values()) == 1)
    model.addConstr(sum(last.values()) == 1)
    for id in setup:
        model.addConstr(first[id] + sum(step for (_, to), step in steps.items() if to == id) == 1)
        model.addConstr(last[id] + sum(step for (by, _), step in steps.items() if by == id) == 1)
    for pair, step in steps.items():
        model.addConstr(step - before[pair] <= 0)
    return [*first.values(), *(step for (a, b), step in steps.items() if setup[a] != setup[b])]
