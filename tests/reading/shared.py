"""Small projects for the reading tests."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from benchalong.ground.report import problem_text
from benchalong.reading.project import Reading, read_project

WHOLE = Path(__file__).parent / "whole"
"""A project in which every key of the language stands at least once."""
SMALLEST = "title: Box\nunits: inch\n"
STEP = "---\nstage: mill\ntitle: Mill it\n---\n"


def read(folder: Path, files: Mapping[str, str | bytes]) -> Reading:
    """What is read from a project of these files."""
    for name, text in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(text if isinstance(text, bytes) else text.encode("utf-8"))
    return read_project(folder)


def messages(reading: Reading) -> list[str]:
    return [problem.message for problem in reading.problems]


def told(reading: Reading) -> str:
    return "\n\n".join(problem_text(problem, reading.marks) for problem in reading.problems)
