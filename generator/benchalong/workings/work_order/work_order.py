"""In what order can it all be done, with the fewest setups?

Worked out when it is first asked for, since the plan check needs no order; kept in the store by all that it
follows from.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from functools import cache
from hashlib import sha256
from pathlib import Path

from benchalong.ground.problems import Finding
from benchalong.ground.store import Store, code_digest
from benchalong.plan.model import Plan
from benchalong.workings import sequence
from benchalong.workings.jobs.jobs import JOBS
from benchalong.workings.jobs.model import Setup, Task, TaskId
from benchalong.workings.sequence.model import Again, Sequence, ToDo, runs_of
from benchalong.workings.sequence.put_in_order import put_in_order
from benchalong.workings.step_check.done_in import DONE_IN
from benchalong.workings.work_order.model import MadeAgain, Run, WorkOrder
from benchalong.workings.work_order.todos import todos_of
from benchalong.workings.working import Worked, Working

LOOKS = 300
"""Places to look at for less walking: more than this saves next to nothing in the examples, and takes ten
times as long."""
WORK = 300 * 600**2
"""Pairs of pieces of work to look at altogether: one look goes over every pair, so a project of thousands is
looked at in fewer places."""


def find_order(_: Plan, worked: Worked) -> tuple[Callable[[], WorkOrder], tuple[Finding, ...]]:
    return cache(lambda: _order(worked)), ()


def _order(worked: Worked) -> WorkOrder:
    tasks = worked[JOBS].tasks
    todos = todos_of(tasks, worked[DONE_IN])
    return told(tasks, kept(todos, worked.store))


def kept(todos: tuple[ToDo, ...], store: Store | None) -> Sequence:
    """The order, from the store where it is there."""
    said = [(todo.id, sorted(todo.needs), todo.machine, todo.setup, todo.rank) for todo in todos]
    looks = min(LOOKS, WORK // max(1, len(todos)) ** 2)
    key = f"order {sha256(f'{_code()} {looks} {said!r}'.encode()).hexdigest()}"
    text = store.get(key) if store else None
    if text is not None:
        return _read(text, todos)
    made = put_in_order(todos, looks=looks)
    if store:
        store.put(key, _written(made))
    return made


def _written(made: Sequence) -> str:
    again = [[each.setup, each.machine, each.times, each.because] for each in made.again]
    return json.dumps([made.order, made.least, again])


def _read(text: str, todos: tuple[ToDo, ...]) -> Sequence:
    order, least, again = json.loads(text)
    by_id = {todo.id: todo for todo in todos}
    found = tuple(Again(setup, machine, times, tuple(why)) for setup, machine, times, why in again)
    return Sequence(tuple(order), runs_of(by_id[one] for one in order), least, found)


def told(tasks: tuple[Task, ...], made: Sequence) -> WorkOrder:
    """The answer in tasks and setups."""
    by_id = {task.id: task for task in tasks}
    setups = {task.setup.id: task.setup for task in tasks if task.setup}
    runs = tuple(
        Run(number, setups[run.setup], run.does, _marks(by_id, run.does))
        for number, run in enumerate(made.runs, start=1)
    )
    again = tuple(_again(by_id, setups[each.setup], each) for each in made.again)
    return WorkOrder(made.order, runs, made.least, again)


def _marks(by_id: Mapping[TaskId, Task], does: tuple[TaskId, ...]) -> tuple[str, ...]:
    worked = (by_id[one] for one in does if by_id[one].kind != "test piece")
    return tuple(dict.fromkeys(mark for task in worked for mark in task.marks))


def _again(by_id: Mapping[TaskId, Task], setup: Setup, again: Again) -> MadeAgain:
    times = {2: "twice", 3: "three times"}.get(again.times, f"{again.times} times")
    if again.because:
        first, between, last = (_small(by_id[one].title) for one in again.because)
        why = (
            f"The {setup.machine} is set so {times}: “{last}” has to wait for “{between}”, which needs "
            f"“{first}” before it and another setting of the same machine."
        )
    else:
        why = (
            f"The {setup.machine} is set so {times}: this setting or another had to be made again, and "
            "this way takes the fewest."
        )
    return MadeAgain(setup, again.times, again.because, why)


def _small(title: str) -> str:
    return title[:1].lower() + title[1:]


@cache
def _code() -> str:
    """A digest of the modules that put in order."""
    return code_digest(sorted(Path(sequence.__file__).parent.glob("*.py")))


ORDER: Working[Callable[[], WorkOrder]] = Working(
    "order", "In what order can it all be done, with the fewest setups?", find_order, (JOBS, DONE_IN)
)
