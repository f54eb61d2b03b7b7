"""Tasks as to-dos: where they are done, at which setting, after what, and where the author has them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import chain

from benchalong.workings.jobs.model import Task, TaskId
from benchalong.workings.jobs.precedence import Precedence, precedence
from benchalong.workings.jobs.sawn_open import ON_ROUGH_WOOD, OPENS
from benchalong.workings.sequence.model import ToDo
from benchalong.workings.step_check.done_in import DoneIn
from benchalong.workings.work_order.phases import phases

JOINERY = ("rip", "crosscut", "cut", "test piece")


def todos_of(tasks: tuple[Task, ...], done_in: DoneIn) -> tuple[ToDo, ...]:
    """All needs are kept, must and should alike: together they have no circle."""
    known = precedence(tasks)
    before = {one: frozenset(firsts) for one, firsts in known.needs.items()}
    for one, firsts in chain(_wood_first(tasks, known), _open_first(tasks), _jigs_first(tasks, done_in)):
        before[one] |= firsts
    setups, ranks = _setups(tasks), _ranks(tasks, done_in)
    at = {task.id: setups.get(task.id) or (_tool(task), "") for task in tasks}
    return tuple(ToDo(task.id, before[task.id], *at[task.id], ranks[task.id]) for task in tasks)


def _wood_first(tasks: tuple[Task, ...], known: Precedence) -> Iterator[tuple[TaskId, frozenset[TaskId]]]:
    """Milled wood moves while it lies: its joints come before whatever must wait for a night and isn't
    needed for them. *Common practice, no source.*"""
    lying = {part for task in tasks if task.lies for part in task.parts}
    waiting = [task for task in tasks if task.waits and not (task.boards or task.kind in ON_ROUGH_WOOD)]
    late = {task.id for task in waiting}
    joinery = frozenset(
        task.id
        for task in tasks
        if task.kind in JOINERY and lying.issuperset(task.parts) and not late & known.before[task.id]
    )
    for task in waiting:
        yield task.id, joinery - {task.id}


def _open_first(tasks: tuple[Task, ...]) -> Iterator[tuple[TaskId, frozenset[TaskId]]]:
    """What has to lie for days is sawn open before other wood is milled, which must not lie. *Common
    practice, no source.*"""
    opened = frozenset(task.id for task in tasks if task.kind in OPENS)
    for task in tasks:
        if task.lies:
            yield task.id, opened


def _jigs_first(tasks: tuple[Task, ...], done_in: DoneIn) -> Iterator[tuple[TaskId, frozenset[TaskId]]]:
    """What a step does with a jig waits until the jig is made. Making one waits for nothing, so no circle
    comes of it."""
    made = {task.jig: task.id for task in tasks if task.jig}
    for task in tasks:
        line = None if task.jig else done_in.first(task.id)
        if line is not None:
            yield task.id, frozenset(made[jig] for jig in done_in.step(line).jigs if jig in made)


def _setups(tasks: tuple[Task, ...]) -> Mapping[TaskId, tuple[str, str]]:
    """(machine, setting); a test piece is tried at the setting of the cut it is for."""
    found = {task.id: (task.setup.machine, task.setup.id) for task in tasks if task.setup}
    tried: dict[tuple[str, str], TaskId] = {
        (cut.kind, task.joint): task.id for task in tasks for cut in task.cuts if task.id in found
    }
    for task in tasks:
        if task.kind == "test piece":
            cut = tried.get((task.id.rpartition("/")[2], task.joint))
            if cut:
                found[task.id] = found[cut]
    return found


def _tool(task: Task) -> str:
    return task.ways[0].tool if task.ways else ""


def _ranks(tasks: tuple[Task, ...], done_in: DoneIn) -> Mapping[TaskId, int]:
    """The author's step; of what no step does, that of the last work it needs. Where no step says what it
    does, the stage of the work."""
    if not done_in.is_said:
        return phases(tasks)
    found: dict[TaskId, int] = {}
    for task in tasks:
        line = done_in.first(task.id)
        found[task.id] = line.step if line else max((found[one] for one in task.first), default=0)
    return found
