"""The whole road: from a folder that an author wrote to a plan with everything worked out."""

from __future__ import annotations

from dataclasses import dataclass, replace
from hashlib import sha256
from pathlib import Path

from benchalong.ground.garbage import seldom_collected
from benchalong.ground.marks import Marks
from benchalong.ground.problems import Unreadable
from benchalong.ground.report import in_order
from benchalong.ground.store import Store
from benchalong.plan.model import Plan
from benchalong.plan.resolve import resolve
from benchalong.reading.project import read_project
from benchalong.reading.written import Project
from benchalong.workings.order import WORKINGS
from benchalong.workings.working import Worked, work_all


@dataclass(frozen=True)
class Travelled:
    plan: Plan
    worked: Worked
    marks: Marks
    edition: str
    """Changes when anything the plan says changes: eight hexadecimal digits."""


@seldom_collected()
def travel(folder: Path, store: Store | None = None) -> Travelled:
    """Read, resolve, work out. Raises Unreadable with every problem of reading and plan together."""
    reading = read_project(folder, store)
    resolved = resolve(reading.project, reading.unreadable)
    problems = in_order((*reading.problems, *resolved.problems), reading.marks)
    if problems or resolved.plan is None:
        raise Unreadable(problems, reading.marks)
    return Travelled(
        resolved.plan, work_all(resolved.plan, WORKINGS, store), reading.marks, edition_of(reading.project)
    )


def edition_of(project: Project) -> str:
    """Made from what was written, without comments and places. Questions asked and builders' files don't
    make a new edition: the plan that everybody holds is still the same."""
    meaning = repr(replace(project, questions=(), builders=()))
    return sha256(meaning.encode()).hexdigest()[:8]
