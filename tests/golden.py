"""Faulty projects as text files: what was typed, and the whole of what is said about it.

A case is a file in `tests/golden/`: a title, then each file of the project after a line
`=== file: NAME`, then after `=== expect` the problems as they are printed. A new case is a new file
that ends with an empty `=== expect`; `python tests/golden.py` fills that in, to be read before it is kept.
"""

from __future__ import annotations

import re
import sys
import tempfile
from dataclasses import dataclass
from pathlib import Path

CASES = Path(__file__).parent / "golden"
HEAD = re.compile(r"^=== (?:file: (?P<file>\S+)|(?P<expect>expect))\n", re.MULTILINE)


@dataclass(frozen=True)
class Case:
    title: str
    files: dict[str, str]
    expected: str

    def write(self, folder: Path) -> None:
        for name, text in self.files.items():
            (folder / name).parent.mkdir(parents=True, exist_ok=True)
            (folder / name).write_text(text, encoding="utf-8")


def all_cases() -> list[Path]:
    return sorted(CASES.glob("*/*.txt"))


def read_case(path: Path) -> Case:
    """The case in a file."""
    title, *blocks = HEAD.split(path.read_text(encoding="utf-8"))
    texts = list(zip(blocks[::3], blocks[2::3], strict=True))
    files = {name: text for name, text in texts if name}
    expected = "".join(text for name, text in texts if not name)
    return Case(title.strip(), files, expected)


def said_about(folder: Path) -> str:
    """All that is wrong with a project, as it is printed: read and understood, both at once."""
    from benchalong.ground.problems import Unreadable
    from benchalong.ground.report import problem_text
    from benchalong.road import travel

    try:
        travel(folder)
    except Unreadable as trouble:
        said = [problem_text(problem, trouble.marks) for problem in trouble.problems]
        return "\n\n".join(said).replace(str(folder), "PROJECT") + "\n"
    return ""


def found_in(case: Case) -> str:
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name) / "project"
        folder.mkdir()
        case.write(folder)
        return said_about(folder)


def fill_in(path: Path) -> None:
    """Writes what is said now under a case's empty `=== expect`."""
    case = read_case(path)
    if not case.expected.strip():
        path.write_text(
            path.read_text(encoding="utf-8").rstrip("\n") + "\n" + found_in(case), encoding="utf-8"
        )
        print(f"filled in {path.name}; read it before you keep it")


if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).parent.parent / "generator"))
    for each in all_cases():
        fill_in(each)
