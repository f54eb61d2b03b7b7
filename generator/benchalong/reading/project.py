"""A project's folder -> everything its author wrote, where it stands, and all that is wrong with it."""

from __future__ import annotations

import os
import re
from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TypeVar

from benchalong.ground import marks as ground_marks
from benchalong.ground.marks import Marks
from benchalong.ground.problems import Problem
from benchalong.ground.report import in_order
from benchalong.ground.store import MemoryStore, Shelf, Store
from benchalong.reading import language, plan_file
from benchalong.reading.builders import builder
from benchalong.reading.folder import Folder
from benchalong.reading.kept_notes import KeptNotes
from benchalong.reading.notes import FILE_NAME
from benchalong.reading.questions import question
from benchalong.reading.spots import marks_of
from benchalong.reading.tally import Tally
from benchalong.reading.whole_file import whole_file
from benchalong.reading.written import PROJECT_FILE, Project, Step

T = TypeVar("T")

QUESTION_FILE = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*\.md\Z")
BUILDER_FILE = re.compile(r"[\w][\w-]{0,39}\.yaml\Z")


@dataclass(frozen=True)
class Reading:
    """What came of reading a project."""

    project: Project
    marks: Marks
    problems: tuple[Problem, ...]
    """In the order of files and lines; empty when all could be read."""
    unreadable: frozenset[ground_marks.Path]
    """Paths of values that were left at their default because they could not be read."""


def read_project(folder: Path, store: Store | None = None) -> Reading:
    """Reads a project's folder. Raises nothing for what an author can get wrong: it is in the problems.

    Notes that are in the store as they stand are not read again.
    """
    tally = Tally()
    shelf = Shelf(store or MemoryStore(), f"notes of {folder.resolve()}")
    project = _read(folder, tally, KeptNotes(shelf))
    shelf.put_back()
    marks = marks_of(tally.sources)
    return Reading(project, marks, in_order(tally.problems, marks), frozenset(tally.unreadable))


def _read(root: Path, tally: Tally, notes: KeptNotes) -> Project:
    folder = Folder(root, tally)
    if not _is_project(root, folder, tally):
        return Project()
    pictures = tuple(folder.pictures("pictures"))
    tally.pictures = frozenset(pictures)
    project = _plan(folder, tally)
    return replace(
        project,
        steps=_steps(folder, tally, notes),
        questions=_each(
            folder,
            "questions",
            QUESTION_FILE,
            "small letters, digits and hyphens: wet-glue.md",
            question,
            tally,
        ),
        builders=_each(folder, "builders", BUILDER_FILE, "the builder's handle: robin.yaml", builder, tally),
        pictures=pictures,
    )


def _is_project(root: Path, folder: Folder, tally: Tally) -> bool:
    """Whether there is a project to read; what is missing is said in one problem."""
    expected = f"a folder with a {PROJECT_FILE} in it"
    if not root.is_dir():
        found = "is a file" if root.exists() else "doesn't exist"
        tally.add_file(str(root), f"{root} {found}", expected=expected)
    elif not os.path.lexists(root / PROJECT_FILE):
        tally.add_file(PROJECT_FILE, f"there is no {PROJECT_FILE} in {root}", expected=expected)
    elif not (root / PROJECT_FILE).is_file():
        tally.add_file(PROJECT_FILE, f"{PROJECT_FILE} is not a file", expected=expected)
    else:
        return folder.is_inside(PROJECT_FILE)
    return False


def _plan(folder: Folder, tally: Tally) -> Project:
    text = folder.text(PROJECT_FILE)
    entry = None if text is None else whole_file(PROJECT_FILE, text, language.PROJECT, tally)
    return Project() if entry is None else plan_file.project(entry)


def _steps(folder: Folder, tally: Tally, notes: KeptNotes) -> tuple[Step, ...]:
    steps = _each(
        folder, "steps", FILE_NAME, "a number, a hyphen and a name: 03-mill-all.md", notes.step, tally
    )
    _report_twice({each.file: f"the id {each.id}" for each in steps}, "one name for each step", tally)
    _report_twice(
        {each.file: f"the number {each.number}" for each in steps},
        "a number of its own, for the order",
        tally,
    )
    return tuple(sorted(steps, key=lambda each: (each.number, each.id)))


def _report_twice(said: Mapping[str, str], expected: str, tally: Tally) -> None:
    """Files that have the same of something; each but the first is named together with the first."""
    files = defaultdict(list)
    for file, what in said.items():
        files[what].append(file)
    for what, having in files.items():
        for file in having[1:]:
            tally.add_file(file, f"{having[0]} and {file} both have {what}", expected=expected)


def _each(
    folder: Folder,
    name: str,
    spelt: re.Pattern[str],
    expected: str,
    read: Callable[[str, str, Tally], T],
    tally: Tally,
) -> tuple[T, ...]:
    """Reads every file of a folder; one with a name that says nothing is reported."""
    found = []
    for file in _well_named(folder.files(name), spelt, expected, tally):
        text = folder.text(file)
        if text is not None:
            found.append(read(file, text, tally))
    return tuple(found)


def _well_named(files: Iterable[str], spelt: re.Pattern[str], expected: str, tally: Tally) -> list[str]:
    good = []
    for file in files:
        if spelt.match(file.rpartition("/")[2]):
            good.append(file)
        else:
            tally.add_file(file, f"the name of {file} can't be used", expected=expected)
    return good
