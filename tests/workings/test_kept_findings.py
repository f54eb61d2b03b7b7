"""What a check found comes back from the store as it was, and nothing is worked out for it again."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Mark, Place, at
from benchalong.ground.problems import Finding
from benchalong.ground.store import MemoryStore
from benchalong.road import travel
from benchalong.workings.kept_findings import Checked, as_text, from_text
from benchalong.workings.working import Results
from publishing.shelf import project_with

NOTE = "---\nstage: all\ntitle: Cut\ndoes: [crosscut: lid]\n---\nCut it.\n"
FOUND = (
    Finding("odd", "doubt", at("project.yaml", "parts", "lid", "cuts", 0), "lid", "is ≈ 1/3 in", "", {}, ()),
    Finding("worse", "fault", Place((), mark=Mark("steps/01-cut.md", 3, 1, 9)), "cut", "“so”", "do not"),
    Finding(
        "thin",
        "note",
        Place(("project.yaml", "sizes", "wide"), "key", 2, 5),
        "wide",
        "",
        "more",
        {"left": Length(127, 15), "least": Length(3)},
        ("wide", "thick"),
    ),
)


def test_what_was_found_comes_back_exactly() -> None:
    found = Checked(FOUND, ("Is it so?", "And this?"))
    assert from_text(as_text(found)) == found


def test_a_plan_that_says_the_same_is_not_gone_over_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    store, project = MemoryStore(), project_with(tmp_path / "lid", NOTE)
    first = travel(project, store)
    (project / "steps" / "01-cut.md").write_text(NOTE + "And look.\n", encoding="utf-8")

    def never(*_: object) -> None:
        raise AssertionError("a working was asked")

    monkeypatch.setattr(Results, "_worked_out", never)
    second = travel(project, store)
    assert second.worked.findings == first.worked.findings != ()
    assert second.asked == first.asked
    assert second.edition != first.edition


def test_a_changed_size_is_gone_over_again(tmp_path: Path) -> None:
    store, project = MemoryStore(), project_with(tmp_path / "lid", NOTE)
    first = travel(project, store)
    plan = project / "project.yaml"
    plan.write_text(plan.read_text(encoding="utf-8").replace("wide: 6 in", "wide: 7 in"), encoding="utf-8")
    assert travel(project, store).made_from != first.made_from
