"""Every value and key has its place, worked out only when somebody asks."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from benchalong.ground.marks import Mark, Marks, Place, at
from benchalong.ground.prose import Hole
from benchalong.reading.project import read_project
from reading.shared import SMALLEST, STEP, WHOLE, read


def under(marks: Marks, place: Place) -> str:
    """The stretch of the author's own line that a place covers."""
    mark = marks.find(place)
    return marks.line(mark)[mark.column - 1 : mark.column - 1 + mark.length]


def texts_in(tree: Any, path: tuple[str | int, ...]) -> Any:
    if isinstance(tree, str):
        yield path, tree
    for key, value in (
        tree.items() if isinstance(tree, dict) else enumerate(tree) if isinstance(tree, list) else ()
    ):
        yield from texts_in(value, (*path, key))


def test_every_plain_value_and_key_of_a_plan_is_found_where_it_stands() -> None:
    marks = read_project(WHOLE).marks
    tree = yaml.load((WHOLE / "project.yaml").read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
    for path, text in texts_in(tree, ("project.yaml",)):
        inset = marks.insets[path]
        if inset is not None and "\n" not in text:
            assert under(marks, Place(path, start=0, end=len(text))) == text
        if isinstance(path[-1], str):
            assert under(marks, Place(path).key()) == path[-1]


def test_lines_of_a_note_and_of_replies_count_from_the_top_of_the_file() -> None:
    marks = read_project(WHOLE).marks
    assert marks.find(at("steps/01-mill-rail.md", "title")).line == 3
    assert under(marks, at("steps/01-mill-rail.md", "checks", 1)) == "Both ends are square"
    assert marks.find(at("questions/how-flat.md", "replies", 0, "by")) == Mark(
        "questions/how-flat.md", 11, 5, 3
    )


def test_every_live_size_is_found_where_it_stands() -> None:
    reading = read_project(WHOLE)
    step, project = reading.project.steps[0], reading.project
    proses = [
        step.title,
        *step.checks,
        step.note,
        *step.ask,
        step.pictures[0].caption,
        project.title,
        project.about,
    ]
    proses += [project.jigs["stop"].note, project.stages["mill"].title, project.questions[0].title]
    holes = [piece for prose in proses for piece in prose if isinstance(piece, Hole)]
    assert len(holes) == 15
    for hole in holes:
        assert under(reading.marks, hole.place).removeprefix("../") == hole.text


@pytest.mark.parametrize(
    ("note", "column"),
    [
        ("Cut (=x).", 7),
        ("- one\n- `(=x)` then (=x)", 17),
        ("> (=x)", 5),
        ("| (=y) | `(=x)` (=x) |\n|---|---|", 19),
        ("| a |\n|---|\n| (=x) |", 5),
        ("## About (=x)", 12),
        ("(=y) and (=y)\nand (=x)", 7),
        (r"\(=x) (=x)", 9),
    ],
)
def test_a_live_size_in_a_note_is_found_wherever_markdown_puts_it(
    tmp_path: Path, note: str, column: int
) -> None:
    reading = read(tmp_path, {"project.yaml": SMALLEST, "steps/01-mill.md": STEP + note})
    hole = [
        piece for piece in reading.project.steps[0].note if isinstance(piece, Hole) and piece.text == "x"
    ][-1]
    mark = reading.marks.find(hole.place)
    assert (mark.column, mark.length) == (column, 1)
    assert reading.marks.line(mark)[column - 3 : column + 1] == "(=x)"


def test_a_size_with_a_note_is_found_as_one_without(tmp_path: Path) -> None:
    marks = read(tmp_path, {"project.yaml": SMALLEST + "sizes:\n  stile: {is: 2 in + x, note: wide}\n"}).marks
    assert under(marks, Place(("project.yaml", "sizes", "stile"), start=7, end=8)) == "x"


def test_what_is_merged_in_is_found_where_it_was_typed(tmp_path: Path) -> None:
    text = SMALLEST + "parts:\n  a: &a {stock: s, width: 1 in, length: 2 in}\n  b: {<<: *a, length: 3 in}\n"
    marks = read(tmp_path, {"project.yaml": text}).marks
    assert marks.find(at("project.yaml", "parts", "b", "width")).line == 4
    assert marks.find(at("project.yaml", "parts", "b", "length")).line == 5


def test_a_comment_moves_marks_and_nothing_else(tmp_path: Path) -> None:
    files = {
        path.relative_to(WHOLE).as_posix(): path.read_bytes() for path in WHOLE.rglob("*") if path.is_file()
    }
    commented = dict(files)
    commented["project.yaml"] = b"# a comment\n\n" + files["project.yaml"].replace(
        b"units: inch", b"units: inch  # feet too"
    )
    commented["steps/01-mill-rail.md"] = files["steps/01-mill-rail.md"].replace(
        b"stage: mill", b"# first\nstage: mill"
    )
    plain, moved = read(tmp_path / "a", files), read(tmp_path / "b", commented)
    assert moved.project == plain.project
    assert (
        moved.marks.find(at("project.yaml", "title")).line
        == plain.marks.find(at("project.yaml", "title")).line + 2
    )
