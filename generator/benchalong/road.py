"""The whole road: from a folder that an author wrote to a plan with everything worked out."""

from __future__ import annotations

from dataclasses import dataclass, replace
from hashlib import sha256
from pathlib import Path
from typing import Any

from benchalong.ground.garbage import seldom_collected
from benchalong.ground.marks import Marks
from benchalong.ground.problems import Unreadable
from benchalong.ground.report import in_order
from benchalong.ground.store import Store, whole_code
from benchalong.plan.bare import bare, meaning
from benchalong.plan.model import Plan
from benchalong.plan.resolve import resolve
from benchalong.reading.project import read_project
from benchalong.reading.written import Project
from benchalong.workings.kept_findings import checked
from benchalong.workings.working import Results, Worked, Working


@dataclass(frozen=True)
class Travelled:
    plan: Plan
    worked: Worked
    marks: Marks
    edition: str
    """Changes when anything the plan says changes: eight hexadecimal digits."""
    bare: Plan
    """The plan with the words of its steps put off: all that results follow from."""
    made_from: str
    """A digest of the bare plan and of all code: what follows from both is the same where it is the same."""
    asked: tuple[str, ...]
    """The questions of the plan check."""


@seldom_collected()
def travel(folder: Path, store: Store | None = None) -> Travelled:
    """Read, resolve, work out. Raises Unreadable with every problem of reading and plan together."""
    reading = read_project(folder, store)
    resolved = resolve(reading.project, reading.unreadable)
    problems = in_order((*reading.problems, *resolved.problems), reading.marks)
    if problems or resolved.plan is None:
        raise Unreadable(problems, reading.marks)
    return travelled_with(resolved.plan, reading.marks, edition_of(reading.project), store)


def travelled_with(plan: Plan, marks: Marks, edition: str, store: Store | None = None) -> Travelled:
    """The rest of the road for a plan that was resolved. Results are worked out when they are asked for, and
    findings only where the store has none for this plan."""
    its_bare = bare(plan)
    made_from = sha256(f"{whole_code()} {meaning(its_bare)}".encode()).hexdigest()
    results = Results(its_bare, _workings, store)
    found = checked(results, store, made_from)
    worked = Worked(results, found.findings)
    return Travelled(plan, worked, marks, edition, its_bare, made_from, found.questions)


def _workings() -> tuple[Working[Any], ...]:
    # Loaded here: whoever finds all in the store needs none.
    from benchalong.workings.order import WORKINGS

    return WORKINGS


def edition_of(project: Project) -> str:
    """Made from what was written, without comments and places. Questions asked and builders' files don't
    make a new edition: the plan that everybody holds is still the same."""
    meaning = repr(replace(project, questions=(), builders=()))
    return sha256(meaning.encode()).hexdigest()[:8]
