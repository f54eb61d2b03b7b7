"""A setup made again for a cut that could have been made while it stood."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from benchalong.ground.problems import Finding
from benchalong.workings.jobs.model import Setup, Task, TaskId
from benchalong.workings.step_check.broken import line_place, small, step_name
from benchalong.workings.step_check.done_in import DoneIn, Line


def set_again(tasks: Mapping[TaskId, Task], done_in: DoneIn) -> Iterator[Finding]:
    by_line: dict[Line, dict[Setup, list[Task]]] = {}
    for task in tasks.values():
        line = done_in.first(task.id)
        if line and task.setup:
            by_line.setdefault(line, {}).setdefault(task.setup, []).append(task)
    stands: dict[str, set[Setup]] = {}
    made: dict[Setup, tuple[Line, Task]] = {}
    for line, setups in sorted(by_line.items(), key=lambda each: each[0]):
        for setup, done in setups.items():
            if setup in made and setup not in stands[setup.machine]:
                earlier, with_it = made[setup]
                could = [task for task in done if _could(task, done_in, earlier)]
                if could and earlier.step != line.step:
                    yield _finding(done_in, line, could[0], step_name(done_in, earlier), with_it)
            made[setup] = (line, done[0])
        for machine in {setup.machine for setup in setups}:
            stands[machine] = {setup for setup in setups if setup.machine == machine}


def _could(task: Task, done_in: DoneIn, earlier: Line) -> bool:
    """Whether a cut could have been made then: everything it needs was done, or is done in no step."""
    lines = (done_in.first(one) for one in task.first)
    return bool(task.cuts) and all(line is None or line <= earlier for line in lines)


def _finding(done_in: DoneIn, line: Line, task: Task, earlier: str, with_it: Task) -> Finding:
    assert task.setup is not None
    machine = task.setup.machine
    return Finding(
        "setup-made-again",
        "doubt",
        line_place(done_in, line),
        task.id,
        f"{step_name(done_in, line)} sets the {machine} again as {earlier} has it, "
        f"for “{small(task.title)}”: same cutter, same setting",
        f"do it in {earlier}, with “{small(with_it.title)}”",
    )
