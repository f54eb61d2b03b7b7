"""Jigs that a step takes before they are made."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.workings.jobs.model import Task, TaskId
from benchalong.workings.step_check.broken import step_name
from benchalong.workings.step_check.done_in import DoneIn, Line


def used_before_made(tasks: Mapping[TaskId, Task], done_in: DoneIn) -> Iterator[Finding]:
    made = {task.jig: done_in.first(task.id) for task in tasks.values() if task.kind == "make jig"}
    for number, step in enumerate(done_in.steps):
        for jig in step.jigs:
            line = made.get(jig)
            if line is not None and line.step > number:
                early, late = step_name(done_in, Line(number, 0)), step_name(done_in, line)
                yield Finding(
                    "jig-used-before-made",
                    "fault",
                    Place((step.file, "jigs")),
                    jig,
                    f"{early} takes {jig}, which {late} makes",
                    f"make it before {early}: `make jig: {jig}`",
                )
