"""Every named size made 5 % larger and smaller: the plan still holds, or says which size is to blame."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest

from benchalong.ground.problems import Problem, Unreadable
from benchalong.reading.project import read_project
from benchalong.road import Travelled, travel
from content.conftest import CONTENT
from content.standing import clashes, stands

EXAMPLES = ("seed-cupboard", "step-stool")
FACTORS = {"larger": "21/20", "smaller": "19/20"}
MIXED = re.compile(r"(\d+) (\d+/\d+) in")

TOO_LARGE_FOR_THE_OPENING = {
    ("seed-cupboard", "door_height", "larger"),
    ("seed-cupboard", "door_width", "larger"),
}
"""A door's own size set against the case: such a door is larger than its opening, and must be seen to be."""

CASES = [
    (example, size, change)
    for example in EXAMPLES
    for size in read_project(CONTENT / example).project.sizes
    for change in FACTORS
]


def varied(example: str, size: str, change: str, into: Path) -> Path:
    """A copy of the example with one size's formula multiplied."""
    folder = into / example
    shutil.copytree(CONTENT / example, folder)
    file = folder / "project.yaml"
    before = file.read_text(encoding="utf-8")
    line = re.compile(rf"^(  {size}: (?:\{{is: )?)(.+?)((?:, note: .*)?\}}?)$", re.MULTILINE)
    after = line.sub(lambda match: _multiplied(match, FACTORS[change]), before, count=1)
    assert after != before, f"{size} stands nowhere in {file}"
    file.write_text(after, encoding="utf-8")
    return folder


def _multiplied(match: re.Match[str], factor: str) -> str:
    formula = MIXED.sub(r"\1 in + \2 in", match[2].strip('"'))
    return f"{match[1]}({formula}) * {factor}{match[3]}"


def names(size: str, text: str) -> bool:
    return re.search(rf"\b{size}\b", text) is not None


def travelled_or_problems(folder: Path) -> Travelled | tuple[Problem, ...]:
    try:
        return travel(folder)
    except Unreadable as unreadable:
        return unreadable.problems


@pytest.mark.parametrize(("example", "size", "change"), CASES)
def test_the_plan_holds_or_names_the_size(example: str, size: str, change: str, tmp_path: Path) -> None:
    result = travelled_or_problems(varied(example, size, change, tmp_path))
    if not isinstance(result, Travelled):
        assert any(names(size, f"{p.message} {p.expected} {p.place.path}") for p in result)
        return
    assert result.plan.sizes[size].typed.endswith(FACTORS[change])
    for finding in result.worked.findings:
        assert size in finding.sizes or names(size, finding.message), finding.message
    is_too_large = (example, size, change) in TOO_LARGE_FOR_THE_OPENING
    assert bool(clashes(stands(result))) == is_too_large
