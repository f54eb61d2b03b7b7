"""Work that no step does, and work that two steps do."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.workings.jobs.model import Task, TaskId
from benchalong.workings.step_check.broken import line_place, small, step_name
from benchalong.workings.step_check.done_in import DoneIn, Line
from benchalong.workings.step_check.words import done_to

ONCE = ("split rough", "resaw", "mill", "rip", "crosscut", "cut", "drill", "glue up", "make jig")
"""What is done once. Marking, fitting, sanding, coats and hardware that goes on and off are done again."""
MISSED = ("dry-assemble", "sand")
"""Usual work that is worth a note where no step does any of it, though there is some."""
NAMED = 4
"""So many things are named in a message; of more, how many."""


def in_no_step(tasks: Mapping[TaskId, Task], done_in: DoneIn) -> Iterator[Finding]:
    """One finding for all of one kind that is due at one line."""
    groups: dict[tuple[Line, str], list[Task]] = {}
    for task in undone(tasks, done_in):
        groups.setdefault((_due(tasks, done_in, task), task.kind), []).append(task)
    for (line, kind), missing in sorted(groups.items(), key=lambda each: each[0]):
        yield _in_no_step(done_in, line, kind, missing)
    said = {tasks[one].kind for one in done_in.lines}
    for kind in MISSED:
        missing = [task for task in tasks.values() if task.kind == kind]
        if missing and kind not in said and all(task.usual for task in missing):
            line = min((_due(tasks, done_in, task) for task in missing), default=done_in.last)
            yield Finding(
                "work-in-no-step",
                "note",
                line_place(done_in, line),
                missing[0].id,
                f"no step says {kind}; most shops would {small(missing[0].title)} "
                f"before {step_name(done_in, line)}",
                f"add a line `{kind}: …` to a step before it, if you do it",
            )


def undone(tasks: Mapping[TaskId, Task], done_in: DoneIn) -> Iterator[Task]:
    """Without what is usual rather than needed."""
    for task in tasks.values():
        if not task.usual and task.id not in done_in.lines and task.id not in done_in.mentioned:
            yield task


def _due(tasks: Mapping[TaskId, Task], done_in: DoneIn, task: Task) -> Line:
    """The first line that needs it; where none does, the last line that it needs, or the last of all."""
    if task.jig and any(task.jig in step.jigs and step.does for step in done_in.steps):
        return next(
            Line(number, 0)
            for number, step in enumerate(done_in.steps)
            if task.jig in step.jigs and step.does
        )
    needing = [
        line
        for other in tasks.values()
        if task.id in other.first and (line := done_in.first(other.id)) is not None
    ]
    if needing:
        return min(needing)
    needed = [line for one in task.first if (line := done_in.first(one)) is not None]
    return max(needed, default=done_in.last)


def _in_no_step(done_in: DoneIn, line: Line, kind: str, missing: list[Task]) -> Finding:
    titles = list(dict.fromkeys(small(task.title) for task in missing))
    named = "; ".join(titles[:NAMED]) + (f"; and {len(titles) - NAMED} more" if titles[NAMED:] else "")
    return Finding(
        "work-in-no-step",
        "doubt",
        line_place(done_in, line),
        missing[0].id,
        f"no step does this, which is due by {step_name(done_in, line)}: {named}",
        f"add `{kind}: [{', '.join(done_to(missing))}]` to {step_name(done_in, line)} or a step before it",
    )


def in_two_steps(tasks: Mapping[TaskId, Task], done_in: DoneIn) -> Iterator[Finding]:
    """One finding for all that two lines both do."""
    groups: dict[tuple[Line, Line], list[Task]] = {}
    for task in tasks.values():
        lines = done_in.lines.get(task.id, ())
        if task.kind in ONCE:
            for again in lines[1:]:
                if again.step != lines[0].step:
                    groups.setdefault((again, lines[0]), []).append(task)
    for (again, first), twice in sorted(groups.items(), key=lambda each: each[0]):
        titles = list(dict.fromkeys(small(task.title) for task in twice))
        more = f", and {len(titles) - 1} more" if titles[1:] else ""
        yield Finding(
            "work-in-two-steps",
            "doubt",
            line_place(done_in, again),
            twice[0].id,
            f"{step_name(done_in, first)} does “{titles[0]}” already{more}",
            f"take it out of one of them, or name what each does: `{twice[0].kind}: {done_to(twice)[0]}`",
        )


def nothing_said(done_in: DoneIn) -> Iterator[Finding]:
    if done_in.steps and not done_in.is_said:
        step = done_in.steps[0]
        yield Finding(
            "steps-say-no-work",
            "note",
            Place((step.file, "title")),
            step.id,
            "no step says which work it does, so whether their order can be carried out wasn't looked at",
            "say it in each step: `does: [{mill: [door_stile, door_rail]}]`; `benchalong outline` drafts it",
        )
