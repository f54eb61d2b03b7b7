"""What is kept of notes gives the same as reading them, and is not used where anything differs."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchalong.ground.store import MemoryStore
from benchalong.reading import kept_notes, notes
from benchalong.reading.kept_notes import as_text, from_text
from benchalong.reading.project import Reading, read_project
from benchalong.reading.tally import Tally
from benchalong.reading.written import Step
from reading.shared import SMALLEST, STEP, WHOLE, messages, read, told

NOTE = (
    STEP.replace("title", "checks: ['It is (=a) wide']\ntitle")
    + "Text.\n\nCut to (=b), as in [one](step:two).\n"
)


def the_same(one: Reading, other: Reading) -> bool:
    marks = [
        [dict(table) for table in (each.marks.values, each.marks.keys, each.marks.insets, each.marks.lines)]
        for each in (one, other)
    ]
    return one.project == other.project and marks[0] == marks[1] and told(one) == told(other)


def no_reading(*_: object) -> None:
    raise AssertionError("this note need not be read")


def test_a_project_read_from_the_store_is_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    store = MemoryStore()
    first = read_project(WHOLE, store)
    monkeypatch.setattr(notes, "step", no_reading)
    assert the_same(read_project(WHOLE, store), first)


def test_a_step_is_the_same_as_text_and_back() -> None:
    steps = read_project(WHOLE).project.steps
    assert steps
    for step in steps:
        assert from_text(as_text(step)) == step
        assert "\n" not in as_text(step)


def test_only_the_note_that_changed_is_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    store = MemoryStore()
    read(tmp_path, {"project.yaml": SMALLEST, "steps/1-one.md": NOTE, "steps/2-two.md": NOTE})
    read_project(tmp_path, store)
    done: list[str] = []
    step = notes.step

    def watched(file: str, text: str, tally: Tally) -> Step:
        done.append(file)
        return step(file, text, tally)

    monkeypatch.setattr(notes, "step", watched)
    changed = read(tmp_path, {"steps/2-two.md": NOTE.replace("Text", "Other text")})
    done.clear()
    assert the_same(read_project(tmp_path, store), changed)
    assert done == ["steps/2-two.md"]


def test_a_note_with_a_problem_is_read_each_time(tmp_path: Path) -> None:
    store = MemoryStore()
    faulty = read(tmp_path, {"project.yaml": SMALLEST, "steps/1-one.md": NOTE + "![x](pictures/gone.png)\n"})
    assert messages(faulty) == ["there is no picture pictures/gone.png in the project"]
    for _ in range(2):
        assert the_same(read_project(tmp_path, store), faulty)


def test_a_note_is_read_again_when_a_picture_it_shows_is_gone(tmp_path: Path) -> None:
    store = MemoryStore()
    picture = b"\x89PNG\r\n\x1a\n" + b"\0" * 8
    read(
        tmp_path,
        {
            "project.yaml": SMALLEST,
            "steps/1-one.md": NOTE + "![x](pictures/a.png)\n",
            "pictures/a.png": picture,
        },
    )
    assert not messages(read_project(tmp_path, store))
    (tmp_path / "pictures" / "a.png").unlink()
    assert messages(read_project(tmp_path, store)) == ["there is no picture pictures/a.png in the project"]


def test_other_code_reads_anew(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    store = MemoryStore()
    read(tmp_path, {"project.yaml": SMALLEST, "steps/1-one.md": NOTE})
    read_project(tmp_path, store)
    monkeypatch.setattr(kept_notes, "reading_code", lambda: "other code")
    monkeypatch.setattr(notes, "step", no_reading)
    with pytest.raises(AssertionError, match="need not be read"):
        read_project(tmp_path, store)
