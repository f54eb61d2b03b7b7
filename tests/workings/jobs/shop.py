"""Projects worked out as far as their jobs, and what each cut and need comes to."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan
from benchalong.plan.resolve import resolve
from benchalong.reading.project import read_project
from benchalong.workings.blanks.blanks import BLANKS
from benchalong.workings.clashes import CLASHES
from benchalong.workings.copies import COPIES
from benchalong.workings.jobs.jobs import JOBS
from benchalong.workings.jobs.model import Task, Tasks
from benchalong.workings.jobs.precedence import Precedence, precedence
from benchalong.workings.placed import PLACED
from benchalong.workings.solids import SOLIDS
from benchalong.workings.ways_out import WAYS_OUT
from benchalong.workings.working import Worked, work_all
from conftest import ROOT

CODES = ("fitted-goes-round", "fitted-too-late", "no-tool-for-it")
"""What may be found out about jobs."""
NEEDED = (COPIES, SOLIDS, PLACED, CLASHES, WAYS_OUT, BLANKS, JOBS)


class Job:
    """A plan and its jobs."""

    def __init__(self, plan: Plan, worked: Worked) -> None:
        self.plan = plan
        self.tasks: Tasks = worked[JOBS]
        self.by_id = dict(self.tasks.by_id)
        self.findings: tuple[Finding, ...] = tuple(each for each in worked.findings if each.code in CODES)

    @property
    def graph(self) -> Precedence:
        return precedence(self.tasks.tasks)

    def of(self, kind: str) -> list[Task]:
        return [task for task in self.tasks.tasks if task.kind == kind]


def jobs_in(folder: Path) -> Job:
    read = read_project(folder)
    resolved = resolve(read.project, read.unreadable)
    problems = [problem.message for problem in (*read.problems, *resolved.problems)]
    assert not problems
    assert resolved.plan is not None
    return Job(resolved.plan, work_all(resolved.plan, NEEDED))


@cache
def jobs_of_example(name: str) -> Job:
    return jobs_in(ROOT / "content" / name)


def jobs_of(text: str, **steps: str) -> Job:
    """Of a project.yaml, and steps by their file's name."""
    with TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "project.yaml").write_text(text, encoding="utf-8")
        (folder / "steps").mkdir()
        for number, (step, note) in enumerate(steps.items(), 1):
            (folder / "steps" / f"{number:02}-{step}.md").write_text(note, encoding="utf-8")
        return jobs_in(folder)
