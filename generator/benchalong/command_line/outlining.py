"""Step notes drafted from the order of work, written beside what is there: all of them or none."""

from __future__ import annotations

import json
import os
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from benchalong.ground.words import counted
from benchalong.publishing.destination import Refused
from benchalong.reading.written import PROJECT_FILE
from benchalong.road import Travelled
from benchalong.workings.jobs.jobs import JOBS
from benchalong.workings.jobs.model import Task
from benchalong.workings.step_check.done_in import DONE_IN, DoneIn
from benchalong.workings.step_check.gaps import undone
from benchalong.workings.step_check.words import done_to
from benchalong.workings.work_order.outline import STAGES, Drafted, drafted
from benchalong.workings.work_order.work_order import ORDER

PLAIN = re.compile(r"[A-Za-z0-9][A-Za-z0-9 ,.()/-]*")
SECTION = re.compile(r"^stages:[ \t]*(#.*)?$", re.MULTILINE)
ANY_SECTION = re.compile(r"^stages[ \t]*:", re.MULTILINE)
NEXT_KEY = re.compile(r"^[^\s#]", re.MULTILINE)


@dataclass(frozen=True)
class Outlined:
    """What was written, by its name within the project."""

    files: tuple[str, ...]
    stages: tuple[str, ...]
    """Added to the project's file."""
    moves: tuple[tuple[str, str], ...] = ()
    """(new file, step before which it belongs): no number was free there."""


def outline(folder: Path, travelled: Travelled) -> Outlined:
    """Drafts what no step does. Raises Refused, and leaves all as it was, when it can't be written."""
    worked, done_in = travelled.worked, travelled.worked[DONE_IN]
    every, tasks = worked[JOBS].tasks, worked[JOBS].by_id
    if done_in.is_said:
        steps = drafted(every, tuple(undone(tasks, done_in)), worked[ORDER]().order)
        placed = list(_in_gaps(done_in, steps))
    else:
        steps = drafted(every, every, worked[ORDER]().order)
        start = max(map(_number, (step.file for step in done_in.steps)), default=0)
        placed = [(start + n, step.stage, step, "") for n, step in enumerate(steps, start=1)]
    texts: dict[str, str] = {}
    moves = []
    for number, stage, step, before in placed:
        name = f"steps/{number:02}-{_slug(step.title, {*travelled.plan.steps, *map(_id, texts)})}.md"
        texts[name] = _note(stage, step)
        if before:
            moves.append((name, before))
    wanted = dict.fromkeys(stage for _, stage, _, _ in placed)
    stages = tuple(stage for stage in wanted if stage not in travelled.plan.stages)
    _write(folder, texts, stages)
    return Outlined(tuple(texts), stages, tuple(moves))


def _in_gaps(done_in: DoneIn, steps: tuple[Drafted, ...]) -> Iterator[tuple[int, str, Drafted, str]]:
    """(number, stage, step, step it should stand before though no number is free there)."""
    numbers = [_number(step.file) for step in done_in.steps]
    taken = set(numbers)
    for step in steps:
        firsts = [line for task in step.tasks for one in task.first if (line := done_in.first(one))]
        after = max((line.step for line in firsts), default=-1)
        stage = done_in.steps[max(after, 0)].stage
        number = (numbers[after] if after >= 0 else 0) + 1
        while number in taken:
            number += 1
        taken.add(number)
        before = _needed_by(done_in, step)
        late = before is not None and number > numbers[before]
        yield number, stage, step, _id(done_in.steps[before].file) if late and before is not None else ""


def _needed_by(done_in: DoneIn, step: Drafted) -> int | None:
    """The first written step that needs what a drafted one does."""
    own = {task.id for task in step.tasks}
    needing = (
        line.step for task, firsts in done_in.needs.items() if own & firsts and (line := done_in.first(task))
    )
    return min(needing, default=None)


def _number(file: str) -> int:
    return int(file.rpartition("/")[2].partition("-")[0])


def _id(file: str) -> str:
    return file.rpartition("/")[2].partition("-")[2].removesuffix(".md")


def _slug(title: str, taken: set[str]) -> str:
    words = re.sub(r"[^a-z0-9]+", "-", title.lower()).strip("-") or "step"
    short = "-".join(words.split("-")[:5])
    number = 2
    name = short
    while name in taken:
        name, number = f"{short}-{number}", number + 1
    return name


def _note(stage: str, step: Drafted) -> str:
    lines = [f"  - {kind}: {_listed(tasks)}" for kind, tasks in step.lines]
    tools = [f"tools: [{', '.join(step.tools)}]"] if step.tools else []
    wait = [f"wait: {_wait(step.waits)}"] if step.waits else []
    told = list(dict.fromkeys(f"- {task.title}." for task in step.tasks))
    head = ["---", f"stage: {stage}", f"title: {_typed(step.title)}", "does:", *lines, *tools]
    return "\n".join(
        [*head, f"minutes: {step.minutes}", *wait, "---", "Drafted from the order of work.", "", *told, ""]
    )


def _listed(tasks: tuple[Task, ...]) -> str:
    names = done_to(tasks)
    return f"[{', '.join(names)}]"


def _wait(minutes: int) -> str:
    hours, days = -(-minutes // 60), minutes // (24 * 60)
    if minutes and minutes % (24 * 60) == 0:
        return counted(days, "day")
    return counted(hours, "hour") if minutes >= 60 else f"{minutes} minutes"


def _typed(text: str) -> str:
    return text if PLAIN.fullmatch(text) else json.dumps(text, ensure_ascii=False)


def _write(folder: Path, texts: dict[str, str], stages: tuple[str, ...]) -> None:
    project = folder / PROJECT_FILE
    old = project.read_bytes().decode("utf-8")
    new = _with_stages(old, stages)
    made: list[Path] = []
    steps = folder / "steps"
    had_steps = steps.is_dir()
    try:
        steps.mkdir(exist_ok=True)
        for name, text in texts.items():
            with (folder / name).open("x", encoding="utf-8", newline="\n") as file:
                made.append(folder / name)
                file.write(text)
        if new != old:
            beside = folder / f".{PROJECT_FILE}.new"
            made.append(beside)
            beside.write_bytes(new.encode("utf-8"))
            os.replace(beside, project)
    except BaseException:
        for path in made:
            path.unlink(missing_ok=True)
        if not had_steps and steps.is_dir():
            steps.rmdir()
        raise


def _with_stages(text: str, stages: tuple[str, ...]) -> str:
    """The project's file with these stages added after those it has; nothing that is there is changed."""
    if not stages:
        return text
    titles = dict(STAGES)
    lines = "".join(f"  {stage}: {{title: {titles[stage]}}}\n" for stage in stages)
    found = SECTION.search(text)
    if found:
        after = NEXT_KEY.search(text, found.end() + 1)
        end = after.start() if after else len(text)
        body = text[:end].rstrip()
        return f"{body}\n{lines}{text[len(body) :].removeprefix(chr(10)) if after else ''}"
    if ANY_SECTION.search(text):
        raise Refused(
            f"the stages in {PROJECT_FILE} stand on one line; put each on its own line under `stages:`, "
            "so that others can be added"
        )
    return f"{text.rstrip()}\n\nstages:\n{lines}"
