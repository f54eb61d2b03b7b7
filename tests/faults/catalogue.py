"""Planted faults as text files: a sound project, the slip made in it, and all that the plan check says.

A case is a file in `cases/`: a title, `base: NAME` for a project in `bases/`, after `=== change` pairs of
`- what stands there` and `+ what is put instead` (a `-` must be found exactly once), after `=== expect` every
finding: level, code, subject, line, numbers; then the message and the remedy. A new case ends with an empty
`=== expect`; `python tests/faults/catalogue.py` fills that in, to be read before it is kept.
"""

from __future__ import annotations

import sys
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

HERE = Path(__file__).parent
CASES, BASES = HERE / "cases", HERE / "bases"


@dataclass(frozen=True)
class Case:
    title: str
    base: str
    changes: tuple[tuple[str, str], ...]
    expected: str

    def project(self) -> str:
        text = (BASES / f"{self.base}.yaml").read_text(encoding="utf-8")
        for old, new in self.changes:
            if text.count(old) != 1:
                raise ValueError(f"{self.title}: stands {text.count(old)} times in {self.base}: {old}")
            text = text.replace(old, new)
        return text


def all_cases() -> list[Path]:
    return sorted(CASES.glob("*.txt"))


def read_case(path: Path) -> Case:
    head, _, rest = path.read_text(encoding="utf-8").partition("=== change\n")
    change, _, expected = rest.partition("=== expect\n")
    title, base = head.strip().splitlines()
    return Case(title, base.removeprefix("base: "), tuple(_pairs(change.splitlines())), expected)


def _pairs(lines: list[str]) -> Iterator[tuple[str, str]]:
    for old, new in zip(lines[::2], lines[1::2], strict=True):
        if old[:2] != "- " or new[:1] != "+":
            raise ValueError(f"a change is a line with - and one with +: {old!r}, {new!r}")
        yield old[2:], new[2:].replace("\\n", "\n")


def found_in(text: str) -> str:
    """Everything the plan check says about a project, in order."""
    from benchalong.ground.problems import Unreadable
    from benchalong.ground.report import problem_text
    from benchalong.road import travel

    with tempfile.TemporaryDirectory() as name:
        (Path(name) / "project.yaml").write_text(text, encoding="utf-8")
        try:
            travelled = travel(Path(name))
        except Unreadable as trouble:
            return "".join(problem_text(problem, trouble.marks) + "\n" for problem in trouble.problems)
    said = []
    for finding in travelled.worked.findings:
        numbers = ", ".join(f"{key} {float(value):.4g} mm" for key, value in finding.numbers.items())
        line = travelled.marks.find(finding.place).line
        said.append(f"{finding.level} {finding.code} {finding.subject}, line {line}: {numbers}\n")
        said.append(f"  {finding.message}\n  {finding.remedy}\n")
    return "".join(said)


def fill_in(path: Path) -> None:
    """Writes what is said now under a case's empty `=== expect`."""
    case = read_case(path)
    if not case.expected.strip():
        text = path.read_text(encoding="utf-8").rstrip("\n") + "\n"
        path.write_text(text + found_in(case.project()), encoding="utf-8")
        print(f"filled in {path.name}; read it before you keep it")


if __name__ == "__main__":
    sys.path.insert(0, str(HERE.parent.parent / "generator"))
    for each in all_cases():
        fill_in(each)
