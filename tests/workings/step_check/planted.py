"""Planted faults of order as text: a slip in an example's steps, and all that the check then says.

A case in `planted.txt` begins with `== case: title`, then the example; `in FILE` with pairs of `- a line` and
`+ what is put instead` (a `-` stands exactly once in the file; `\\n` is a new line); `move OLD -> NEW` gives
a step another number; `strip does` takes all `does:` out; after `=== expect` each finding: level, code, file
and line, then its message. Run this file to fill in what is empty, and read it before it is kept.
"""

from __future__ import annotations

import re
import shutil
import sys
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

HERE = Path(__file__).parent
ROOT = HERE.parents[2]
CASES = HERE / "planted.txt"


@dataclass(frozen=True)
class Case:
    title: str
    example: str
    slips: tuple[str, ...]
    expected: str


def all_cases() -> list[Case]:
    return [_case(text) for text in CASES.read_text(encoding="utf-8").split("== case: ")[1:]]


def _case(text: str) -> Case:
    head, _, expected = text.partition("=== expect\n")
    title, example, *slips = head.strip().splitlines()
    return Case(title, example, tuple(slips), expected)


def plant(case: Case, folder: Path) -> None:
    """The example's folder with the slips made in it."""
    shutil.copytree(_folder(case.example), folder, dirs_exist_ok=True)
    shutil.rmtree(folder / "questions", ignore_errors=True)
    at, old = folder, ""
    for slip in case.slips:
        if found := re.match(r"move (\S+) -> (\S+)$", slip):
            (folder / "steps" / found[1]).rename(folder / "steps" / found[2])
        elif slip == "strip does":
            for note in (folder / "steps").glob("*.md"):
                text = note.read_text(encoding="utf-8")
                note.write_text(re.sub(r"^does:\n(  - .*\n)+", "", text, flags=re.M), encoding="utf-8")
        elif slip.startswith("in "):
            at = folder / "steps" / slip[3:]
        elif slip.startswith("- "):
            old = slip[2:].replace("\\n", "\n")
        else:
            text = at.read_text(encoding="utf-8")
            assert text.count(old) == 1, (case.title, old)
            new = slip[2:].replace("\\n", "\n")
            at.write_text(text.replace(old, new), encoding="utf-8")


def _folder(example: str) -> Path:
    """What no example of the project has stands beside these cases."""
    own = HERE / example
    return own if own.is_dir() else ROOT / "content" / example


def said_of(case: Case) -> str:
    """Every finding about the steps, in order."""
    from benchalong.plan.resolve import resolve
    from benchalong.reading.project import read_project
    from benchalong.workings.step_check.done_in import find_lines
    from benchalong.workings.step_check.step_check import check_steps
    from benchalong.workings.working import Worked

    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        plant(case, folder)
        reading = read_project(folder)
        plan = resolve(reading.project, reading.unreadable).plan
    assert plan is not None, case.title
    tasks = _tasks(case.example)
    done_in, _ = find_lines(plan, Worked({"jobs": tasks}))
    _, findings = check_steps(plan, Worked({"jobs": tasks, "done in": done_in}))
    lines = []
    for finding in findings:
        mark = reading.marks.find(finding.place)
        file = mark.file.rpartition("/")[2]
        lines.append(f"{finding.level} {finding.code} {file}:{mark.line}\n  {finding.message}\n")
        lines.append(f"  {finding.remedy}\n")
    return "".join(lines)


@cache
def _tasks(example: str) -> object:
    from workings.jobs.shop import jobs_in

    return jobs_in(_folder(example)).tasks


def _filled() -> Iterator[str]:
    for case in all_cases():
        expected = case.expected if case.expected.strip() else said_of(case) + "\n"
        slips = "\n".join(case.slips)
        yield f"== case: {case.title}\n{case.example}\n{slips}\n=== expect\n{expected}"


if __name__ == "__main__":
    sys.path[:0] = [str(ROOT / "generator"), str(ROOT / "tests")]
    CASES.write_text("".join(_filled()), encoding="utf-8")
