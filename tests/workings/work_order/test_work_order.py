"""The examples' order of work: gone over by networkx, setups counted anew, the proof taken at its word."""

from __future__ import annotations

from dataclasses import replace

import pytest

from benchalong.ground.store import MemoryStore
from benchalong.workings.jobs.model import Task
from benchalong.workings.jobs.sawn_open import ON_ROUGH_WOOD
from benchalong.workings.step_check.done_in import DoneIn
from benchalong.workings.work_order.model import WorkOrder
from benchalong.workings.work_order.todos import todos_of
from benchalong.workings.work_order.work_order import kept, told
from workings.jobs.shop import jobs_of_example
from workings.sequence.checker import amiss, settings_made
from workings.step_check.shop import steps_of_example

EXAMPLES = ("seed-cupboard", "step-stool", "joint-samples")


def tasks_of(example: str) -> tuple[Task, ...]:
    return jobs_of_example(example).tasks.tasks


def order_of(tasks: tuple[Task, ...], done_in: DoneIn) -> WorkOrder:
    return told(tasks, kept(todos_of(tasks, done_in), None))


def unsaid(done_in: DoneIn) -> DoneIn:
    return replace(done_in, steps=(), lines={})


@pytest.mark.parametrize("example", EXAMPLES)
@pytest.mark.parametrize("said", [True, False])
def test_every_task_comes_once_after_its_needs_and_setups_are_counted_right(example: str, said: bool) -> None:
    tasks, done_in = tasks_of(example), steps_of_example(example)
    todos = todos_of(tasks, done_in if said else unsaid(done_in))
    order = told(tasks, kept(todos, None))
    assert not amiss(todos, order.order)
    needs = {task.id: task.first for task in tasks}
    assert all(needs[todo.id] <= todo.needs for todo in todos)
    assert order.settings == settings_made(todos, order.order)
    assert order.least <= order.settings
    distinct = {todo.setup for todo in todos if todo.setup}
    assert order.is_proven == (order.least == order.settings)
    assert order.settings >= len(distinct)
    assert not (order.settings > len(distinct) and not order.again)


@pytest.mark.parametrize("example", EXAMPLES)
def test_what_needs_a_setup_is_done_in_its_run(example: str) -> None:
    tasks = tasks_of(example)
    order = order_of(tasks, steps_of_example(example))
    for task in tasks:
        if task.setup:
            assert order.run_of[task.id].setup == task.setup
            assert set(task.marks) <= set(order.run_of[task.id].marks)


def test_wood_of_one_thickness_is_milled_in_one_run() -> None:
    """Common practice: what is planed at a second setting is never quite as thick."""
    tasks = tasks_of("seed-cupboard")
    order = order_of(tasks, steps_of_example("seed-cupboard"))
    milled = [task for task in tasks if task.kind == "mill" and task.one_session and task.setup]
    by_setup = {task.setup: {order.run_of[one.id].number for one in milled if one.setup == task.setup}
                for task in milled}  # fmt: skip
    assert all(len(runs) == 1 for runs in by_setup.values())


@pytest.mark.parametrize("example", ["seed-cupboard", "joint-samples"])
def test_milled_wood_has_its_joints_before_anything_waits_for_a_night(example: str) -> None:
    """Joints of milled parts that need nothing that waits: all before the first glue-up and finish."""
    tasks = tasks_of(example)
    order = order_of(tasks, unsaid(steps_of_example(example)))
    by_id = {task.id: task for task in tasks}
    lying = {part for task in tasks if task.lies for part in task.parts}
    first = min(
        order.place[task.id]
        for task in tasks
        if task.waits and not (task.boards or task.kind in ON_ROUGH_WOOD)
    )

    def waits_for_waiting(one: str) -> bool:
        task = by_id[one]
        lies = bool(task.waits) and not (task.boards or task.kind in ON_ROUGH_WOOD)
        return lies or any(map(waits_for_waiting, task.first))

    late = [
        task.id
        for task in tasks
        if task.kind in ("cut", "rip", "crosscut")
        and set(task.parts) <= lying
        and order.place[task.id] > first
        and not waits_for_waiting(task.id)
    ]
    assert not late


def test_a_test_piece_is_tried_in_the_run_it_is_for() -> None:
    order = order_of(tasks_of("seed-cupboard"), steps_of_example("seed-cupboard"))
    run = order.run_of["test-piece/frame/groove"]
    assert run.tasks[0] == "test-piece/frame/groove"
    assert run == order.run_of["cut/hinge_stile/frame"]


def test_the_order_is_the_same_whatever_the_list_and_out_of_the_store() -> None:
    tasks, done_in = tasks_of("step-stool"), steps_of_example("step-stool")
    store = MemoryStore()
    todos = todos_of(tasks, done_in)
    made = kept(todos, store)
    assert kept(todos, store) == made
    assert kept(tuple(reversed(todos)), None).order == made.order


def test_a_setup_made_again_is_explained() -> None:
    """A cut at one setting, a cut at another that needs it, a third at the first that needs both."""
    tasks = {task.id: task for task in tasks_of("seed-cupboard")}
    groove, rabbet = tasks["cut/hinge_stile/frame"], tasks["cut/side/corner"]
    first = replace(groove, id="one", needs=())
    between = replace(rabbet, id="two", needs=(replace(rabbet.needs[0], first="one"),))
    last = replace(groove, id="three", needs=(replace(rabbet.needs[0], first="two"),))
    order = order_of((first, between, last), unsaid(steps_of_example("seed-cupboard")))
    (again,) = order.again
    assert (order.settings, order.least, again.times, again.because) == (3, 3, 2, ("one", "two", "three"))
    assert "twice" in again.why
    assert between.title[1:] in again.why


@pytest.mark.parametrize("example", ["seed-cupboard", "step-stool"])
def test_a_jig_is_made_before_what_a_step_does_with_it(example: str) -> None:
    tasks, done_in = tasks_of(example), steps_of_example(example)
    place = {one: number for number, one in enumerate(order_of(tasks, done_in).order)}
    served = 0
    for jig in (task for task in tasks if task.jig):
        for task in tasks:
            line = done_in.first(task.id)
            if line and not task.jig and jig.jig in done_in.step(line).jigs:
                assert place[jig.id] < place[task.id], (jig.id, task.id)
                served += 1
    assert served
