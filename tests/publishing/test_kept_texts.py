"""Words of steps change and nothing is made anew; the site is the same as one made without the store."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from benchalong.ground.put_off import OPENS
from benchalong.ground.store import MemoryStore
from benchalong.pages.later import anywhere
from benchalong.pages.records import Records
from benchalong.publishing.publish import publish
from benchalong.road import travel
from benchalong.workings.working import Results
from publishing.shelf import digests, project_with

STEP = """\
---
stage: all
title: Cut the lid
why: "[why] So that (=wide) is (=wide)"
does:
  - crosscut: lid
cautions:
  - "[caution] Keep clear"
checks:
  - "[check] It is (=wide) wide"
  - Both ends are square
amiss:
  - {sign: "[sign] It rocks", cause: "[cause] A chip", cure: "[cure] Brush it"}
ask:
  - "[ask] How did it go?"
pictures:
  - {file: pictures/lid.png, alt: A lid, caption: "[caption] Before the cut"}
---
[note] Cut (=part lid) to (=wide), \\<not\\> "more" & not 'less'.

# A heading

See [the step](step:cut).
"""
KINDS = re.findall(r"\[(\w+)\] ", STEP)


@pytest.fixture(scope="module")
def store() -> MemoryStore:
    return MemoryStore()


@pytest.fixture
def project(tmp_path_factory: pytest.TempPathFactory, store: MemoryStore) -> Path:
    """Published once, so that all of it is in the store."""
    folder = project_with(tmp_path_factory.getbasetemp() / "lid", STEP)
    publish(travel(folder, store), folder.with_name("before"), project=folder, store=store)
    return folder


@pytest.fixture
def nothing_made(monkeypatch: pytest.MonkeyPatch) -> None:
    def never(*_: object) -> None:
        raise AssertionError("something was made anew")

    monkeypatch.setattr(Records, "__init__", never)
    monkeypatch.setattr(Results, "_worked_out", never)


@pytest.mark.parametrize("kind", KINDS)
def test_words_are_put_in_last(
    project: Path, store: MemoryStore, kind: str, request: pytest.FixtureRequest
) -> None:
    note = project / "steps" / "01-cut.md"
    note.write_text(STEP.replace(f"[{kind}]", "Never *hurry* & 'wait'"), encoding="utf-8")
    fresh = publish(travel(project), project.with_name("fresh"), project=project).folder
    request.getfixturevalue("nothing_made")
    kept = publish(travel(project, store), project.with_name("kept"), project=project, store=store).folder
    assert digests(kept) == digests(fresh)
    page = (kept / "steps" / "cut.html").read_text(encoding="utf-8")
    assert "Never <em>hurry</em> &amp; " in page


@pytest.mark.parametrize("file", ["project.yaml", "steps/01-cut.md"])
def test_a_comment_moves_the_lines_that_pages_name(project: Path, store: MemoryStore, file: str) -> None:
    path = project / file
    text = path.read_text(encoding="utf-8").replace(
        "  oak:", "  pine: {kind: board, thickness: 1 in}\n  oak:"
    )
    path.write_text(text, encoding="utf-8")
    publish(travel(project, store), project.with_name("kept"), project=project, store=store)
    path.write_text(text.replace("title:", "# A comment\ntitle:", 1), encoding="utf-8")
    kept = publish(travel(project, store), project.with_name("kept"), project=project, store=store).folder
    fresh = publish(travel(project), project.with_name("fresh"), project=project).folder
    assert digests(kept) == digests(fresh)
    found = json.loads((kept / "plan.json").read_text(encoding="utf-8"))["findings"]
    assert [each["line"] for each in found if each["file"] == file], "no line to move"


def test_pages_that_say_the_same_stay_the_same_files(project: Path, store: MemoryStore) -> None:
    note = project / "steps" / "01-cut.md"
    note.write_text(STEP + "One more word.\n", encoding="utf-8")
    after = publish(travel(project, store), project.with_name("after"), project=project, store=store).folder
    before = digests(project.with_name("before"))
    changed = {file for file, digest in digests(after).items() if digest != before[file]}
    assert changed == {
        "benchalong-site.json", "data/edition.js", "data/search.js", "index.html", "paper.html", "plan.json",
        "steps/cut.html",
    }  # fmt: skip


def test_no_hole_is_left_open(project: Path) -> None:
    site = project.with_name("before")
    texts = {file: file.read_bytes() for file in site.rglob("*") if file.is_file()}
    assert not [file for file, text in texts.items() if OPENS.encode() in text]


def test_the_edition_is_the_same_wherever_it_stands(project: Path) -> None:
    site = project.with_name("before")
    edition = json.loads((site / "plan.json").read_text(encoding="utf-8"))["piece"]["edition"]
    assert f'"{edition}"' in (site / "data" / "edition.js").read_text(encoding="utf-8")
    for page in ("index.html", "paper.html"):
        shown = BeautifulSoup((site / page).read_text(encoding="utf-8"), "html.parser").find(id="edition")
        assert shown is not None
        assert shown.get_text().strip() == f"Edition {edition}"
    assert json.loads((site / "benchalong-site.json").read_text(encoding="utf-8"))["edition"] == edition


@pytest.mark.parametrize(
    "words", ["plain", 'a "quoted" one', "back\\slash\\", "</script>", "Tom & 'Jerry'", "\u2028", "½ × ≈"]
)
def test_words_that_may_stand_anywhere(words: str) -> None:
    said = anywhere(words)
    assert json.loads(f'"{said}"') == words
    assert not set(said) & set("<>&'\"\u2028")
