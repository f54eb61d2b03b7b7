"""The stages that a piece is mostly made in, where the author has none.

*Common practice, no source.* A task's stage is never before that of anything it needs, so stages can be
worked down one after the other.
"""

from __future__ import annotations

from collections.abc import Mapping

from benchalong.workings.jobs.model import Task, TaskId

WOOD, SIZES, JOINTS, PANELS, DRY, INSIDES, GLUE, FITTING, OUTSIDE, PLACE = range(10)
OF_KIND = {
    "choose and mark": WOOD, "rough cut": WOOD, "split rough": WOOD, "flatten": WOOD, "resaw": WOOD,
    "rest": WOOD, "mill": WOOD, "make jig": WOOD, "rip": SIZES,
    "crosscut": SIZES, "test piece": JOINTS, "cut": JOINTS, "drill": JOINTS, "dry-assemble": DRY,
    "glue up": GLUE, "flush": GLUE, "measure and fit": FITTING, "fit hardware": FITTING, "sand": INSIDES,
    "finish": INSIDES, "hang": PLACE,
}  # fmt: skip


def phases(tasks: tuple[Task, ...]) -> Mapping[TaskId, int]:
    """By task; tasks must stand after what they need, as JOBS gives them."""
    found: dict[TaskId, int] = {}
    for task in tasks:
        stage = max((_own(task), *(found[one] for one in task.first)))
        is_late = stage == JOINTS and task.kind in ("mill", "rip", "crosscut")
        found[task.id] = PANELS if is_late else stage
    return found


def _own(task: Task) -> int:
    if task.id.startswith("cut/") and task.hardware:
        return FITTING
    if task.boards or (task.kind == "flush" and not task.assembly):
        return WOOD
    if task.assembly and task.kind in ("sand", "finish"):
        return OUTSIDE
    return OF_KIND[task.kind]
