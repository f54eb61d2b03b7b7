"""Wood that is sawn open and given too little time to move."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.ground.words import counted
from benchalong.workings.jobs.model import Task, TaskId
from benchalong.workings.jobs.waits import DAY, minutes_in
from benchalong.workings.step_check.broken import line_place, small, step_name
from benchalong.workings.step_check.done_in import DoneIn, Line


def short_rests(tasks: Mapping[TaskId, Task], done_in: DoneIn) -> Iterator[Finding]:
    """One finding for all that a step gives too little time."""
    told: dict[Line, list[Task]] = {}
    for task in tasks.values():
        line = done_in.first(task.id) if task.kind == "rest" else None
        if line:
            told.setdefault(line, []).append(task)
    for line, resting in told.items():
        yield from _too_short(done_in, line, resting)
        yield from _worked_at_once(tasks, done_in, line, resting)


def _too_short(done_in: DoneIn, line: Line, resting: list[Task]) -> Iterator[Finding]:
    step = done_in.step(line)
    given = minutes_in(step.wait)
    short = [task for task in resting if 0 < given < task.waits]
    if short:
        days = max(task.waits for task in short) // DAY
        yield Finding(
            "rest-too-short",
            "doubt",
            Place((step.file, "wait")),
            short[0].id,
            f"{step_name(done_in, line)} waits “{step.wait}” for “{small(short[0].title)}”{_more(short)}; "
            f"wood that is sawn open moves for {counted(days, 'day')} or longer, by common practice",
            f"write `wait: {counted(days, 'day')}` or more",
        )


def _worked_at_once(
    tasks: Mapping[TaskId, Task], done_in: DoneIn, line: Line, resting: list[Task]
) -> Iterator[Finding]:
    """A line below `rest:` in the same step, since a step is one sitting."""
    ids = {task.id for task in resting}
    for task in tasks.values():
        at = done_in.first(task.id)
        if at and task.first & ids and at.step == line.step and at > line:
            yield Finding(
                "rest-too-short",
                "doubt",
                line_place(done_in, at),
                task.id,
                f"{step_name(done_in, line)} does “{small(task.title)}” in the sitting in which the "
                "wood is laid down to rest",
                f"put it into a step of its own, after {step_name(done_in, line)}",
            )
            return


def _more(tasks: list[Task]) -> str:
    return f" and {len(tasks) - 1} more" if tasks[1:] else ""
