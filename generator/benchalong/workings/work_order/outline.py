"""Stages and steps drafted from the order of work.

Always the work of the earliest stage that can be begun, and of that all of one sort: milled together, grooves
before tongues before panels, insides finished before glue. So every step, and every line within it, stands
after what it needs.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby

from benchalong.workings.jobs.cutting import rank
from benchalong.workings.jobs.model import Task, TaskId
from benchalong.workings.jobs.sawn_open import ON_ROUGH_WOOD
from benchalong.workings.work_order.phases import PANELS, phases

STAGES: tuple[tuple[str, str], ...] = (
    ("wood", "The wood"),
    ("sizes", "Cut to size"),
    ("joints", "Cut the joints"),
    ("panels", "Panels"),
    ("dry", "Put together dry"),
    ("insides", "Finish the insides"),
    ("glue", "Glue up"),
    ("fitting", "Measure and fit"),
    ("outside", "Finish the outside"),
    ("place", "Put it in its place"),
)
"""(id, title) by phase."""
TITLES: Mapping[str, str] = {
    "choose and mark": "Choose the boards and cut them long",
    "split": "Split restless wood rough, and let it rest",
    "flatten": "Flatten what was split, and leave it thick",
    "resaw": "Resaw thin wood, and let it rest",
    "mill": "Mill to thickness",
    "boards": "Glue boards up to wide parts",
    "size": "Cut to width and length",
    "make jig": "Make the jigs",
    "dry-assemble": "Put together dry",
    "insides": "Sand and finish while it lies flat",
    "glue up": "Glue up",
    "measure and fit": "Measure and fit",
    "fit hardware": "Drill and fit the hardware",
    "outside": "Sand and finish the outside",
    "hang": "Hang it",
}
SORTS: Mapping[str, str] = {
    "rough cut": "choose and mark", "rip": "size", "crosscut": "size", "drill": "fit hardware",
}  # fmt: skip


@dataclass(frozen=True)
class Drafted:
    """One step, drafted."""

    stage: str
    title: str
    tasks: tuple[Task, ...]

    @property
    def lines(self) -> Iterator[tuple[str, tuple[Task, ...]]]:
        """(job word, tasks) of each line of `does:`."""
        for kind, tasks in groupby(self.tasks, key=lambda task: task.kind):
            yield kind, tuple(tasks)

    @property
    def minutes(self) -> int:
        """Setting once for each setup, and the work."""
        to_set = {task.setup: task.minutes_to_set for task in self.tasks}
        whole = sum(to_set.values(), Fraction(0)) + sum((task.minutes for task in self.tasks), Fraction(0))
        return max(5, 5 * -(-whole.__ceil__() // 5))

    @property
    def waits(self) -> int:
        """Minutes, of the task that takes longest to dry or set."""
        return max(task.waits for task in self.tasks)

    @property
    def tools(self) -> tuple[str, ...]:
        return tuple(
            dict.fromkeys(way.tool for task in self.tasks for way in task.ways if way.tool != "bench")
        )


def drafted(
    every: tuple[Task, ...], wanted: tuple[Task, ...], order: tuple[TaskId, ...]
) -> tuple[Drafted, ...]:
    """Every one of the tasks that are wanted in one step. What else they need counts as done."""
    phase = phases(every)
    place = {one: number for number, one in enumerate(order)}
    left = {task.id: task for task in sorted(wanted, key=lambda task: (phase[task.id], place[task.id]))}
    steps: list[Drafted] = []
    while left:
        first = next(task for task in left.values() if not task.first & left.keys())
        sort, at = _sort(first), phase[first.id]
        taken: list[Task] = []
        while more := [
            task
            for task in left.values()
            if phase[task.id] == at and _sort(task) == sort and not task.first & left.keys()
        ]:
            same = [task for task in more if task.kind == more[0].kind]
            taken += same
            for task in same:
                del left[task.id]
        steps.append(Drafted(STAGES[at][0], _title(sort, at, taken), tuple(taken)))
    return tuple(steps)


def _sort(task: Task) -> str:
    """Tasks of one sort and stage make one step."""
    if task.boards or (task.kind == "flush" and not task.assembly):
        return "boards"
    if task.kind in ON_ROUGH_WOOD:
        return _sort_rough(task)
    if task.kind in ("cut", "test piece"):
        kind = task.cuts[0].kind if task.cuts else task.id.rpartition("/")[2]
        if task.hardware:
            return "fit hardware"
        return f"cut {rank(kind)}"
    if task.kind in ("sand", "finish"):
        return "outside" if task.assembly else "insides"
    if task.kind in ("glue up", "flush"):
        return f"glue up {task.assembly}"
    if task.kind == "dry-assemble":
        return f"dry-assemble {task.assembly}"
    return SORTS.get(task.kind, task.kind)


def _sort_rough(task: Task) -> str:
    """What is resawn is flattened for it and rests after it, in one step; what is split lies in between."""
    if task.kind == "flatten" and task.waits:
        return "flatten"
    is_split = task.kind == "split rough" or any(one.startswith("split-rough/") for one in task.must)
    return "split" if is_split else "resaw"


def _title(sort: str, phase: int, tasks: list[Task]) -> str:
    kinds_done = {task.kind for task in tasks}
    if phase == PANELS and sort in ("mill", "size"):
        return (
            "Mill what is fitted to its grooves"
            if sort == "mill"
            else "Cut to size what is fitted to its grooves"
        )
    if kinds_done == {"drill"}:
        return "Drill"
    if kinds_done == {"fit hardware"}:
        return "Fit the hardware"
    if sort.startswith("cut "):
        kinds = dict.fromkeys(cut.kind for task in tasks for cut in task.cuts)
        return f"Cut the {_and([_many(kind) for kind in kinds])}" if kinds else tasks[0].title
    if sort.startswith(("glue up", "dry-assemble")):
        return max(tasks, key=lambda task: len(task.parts)).title
    return TITLES.get(sort, sort.capitalize())


def _many(kind: str) -> str:
    return {"dado": "dadoes", "notch": "notches"}.get(kind, f"{kind}s")


def _and(names: list[str]) -> str:
    return " and ".join((", ".join(names[:-1]), names[-1])) if len(names) > 1 else "".join(names)
