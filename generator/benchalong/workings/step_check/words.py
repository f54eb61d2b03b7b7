"""What to write in `does:` for a task, so that just that task is meant."""

from __future__ import annotations

from collections.abc import Iterable

from benchalong.workings.jobs.model import Task


def done_to(tasks: Iterable[Task]) -> tuple[str, ...]:
    """The things to name for these tasks, all of one kind; each once."""
    return tuple(dict.fromkeys(name for task in tasks for name in names_of(task)))


def names_of(task: Task) -> tuple[str, ...]:
    if task.jig:
        return (task.jig,)
    if task.kind == "test piece":
        return (f"{task.joint} {task.id.rpartition('/')[2]}",)
    if task.cuts:
        kind = task.cuts[0].kind
        joint = f" {task.joint}" if task.joint else ""
        return (f"{task.parts[0]}{joint} {kind}",)
    if task.hardware:
        return (task.hardware,)
    if task.assembly:
        alone = task.id.count("/") > 1 and task.kind == "glue up" and not task.id.rpartition("/")[2].isdigit()
        return task.parts if alone else (task.assembly,)
    return task.parts
