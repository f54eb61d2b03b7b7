"""How it is held, on the pages: before the step that hangs it, with its numbers in one system at a time."""

from __future__ import annotations

from pathlib import Path

import pytest
from bs4 import BeautifulSoup, Tag

from benchalong.publishing.publish import publish
from benchalong.road import travel
from faults.catalogue import BASES

HANG = """---
stage: all
title: Hang it
does: [{hang: cabinet}]
hardware: [wall_screw, butt_hinge, knob]
---
Two of you.
"""
OTHER = """---
stage: all
title: Saw
does: [{crosscut: [floor]}]
---
Saw it.
"""


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("hung")
    text = (BASES / "hung.yaml").read_text(encoding="utf-8")
    (folder / "project.yaml").write_text(text, encoding="utf-8")
    (folder / "steps").mkdir()
    (folder / "steps" / "01-saw.md").write_text(OTHER, encoding="utf-8")
    (folder / "steps" / "02-hang.md").write_text(HANG, encoding="utf-8")
    into = tmp_path_factory.mktemp("out") / "site"
    publish(travel(folder), into, project=folder)
    return into


def section(site: Path, page: str) -> Tag | None:
    return BeautifulSoup((site / page).read_text(encoding="utf-8"), "html.parser").select_one("section.held")


def rows(found: Tag, system: str) -> dict[str, str]:
    for hidden in found.select(".only-inch" if system == "millimetre" else ".only-millimetre"):
        hidden.decompose()
    return {
        row.select_one("dt").get_text(): " ".join(row.select_one("dd").get_text().split())  # type: ignore[union-attr]
        for row in found.select("dl.rows > div")
    }


def test_it_stands_before_the_work_of_the_step_that_hangs(site: Path) -> None:
    text = (site / "steps" / "hang.html").read_text(encoding="utf-8")
    assert text.index("How it hangs") < text.index("What to do")
    assert section(site, "steps/saw.html") is None


def test_the_wires_are_spoken_of_first(site: Path) -> None:
    found = section(site, "steps/hang.html")
    assert found is not None
    first = found.select("li")[0].get_text()
    assert "wires" in first
    assert found.get_text().index("wires") < found.get_text().index("Put in it")
    assert "licensed practice decide" in found.get_text()


@pytest.mark.parametrize(
    ("system", "load", "way"),
    [
        (
            "millimetre",
            "12 kg",
            "6 kg on each of S, T → by seat (2 places, 3 kg each) to side → by housing to",
        ),
        (
            "inch",
            "26.5 lb",
            "13.2 lb on each of S, T → by seat (2 places, 6.6 lb each) to side → by housing to",
        ),
    ],
)
def test_weights_are_said_in_one_system(site: Path, system: str, load: str, way: str) -> None:
    found = section(site, "index.html")
    assert found is not None
    said = rows(found, system)
    assert said["Put in it"].startswith(load)
    assert said["From floor"] == f"{way} hanging rail"
    assert said["Into the wall"] == "2 × Wall screw, 5 x 80 mm, through hanging rail"
    assert "kg" not in " ".join(said.values()) or system == "millimetre"


def test_hardware_is_told_with_its_sizes(site: Path) -> None:
    page = BeautifulSoup((site / "index.html").read_text(encoding="utf-8"), "html.parser")
    told = page.select_one("section[aria-labelledby=hardware]")
    assert told is not None
    for hidden in told.select(".only-inch"):
        hidden.decompose()
    said = " ".join(told.get_text(" ").split())
    assert "40 mm long, 14 mm wide, 5 mm thick when closed, as measured" in said
    assert "2 × Hinge screw on each side" in said
    assert "Door, face (D)" in said


def test_paper_says_the_cautions_before_the_work_too(site: Path) -> None:
    page = BeautifulSoup((site / "paper.html").read_text(encoding="utf-8"), "html.parser")
    step = page.select_one("article[aria-labelledby=step-hang]")
    assert step is not None
    said = step.get_text()
    assert said.index("wires") < said.index("Two of you.")


def test_a_piece_hung_without_a_word_how_still_warns_of_wires(tmp_path: Path) -> None:
    text = (
        (BASES / "hung.yaml")
        .read_text(encoding="utf-8")
        .replace("hanging: {rail: rail, fixings: wall_screw}\n", "")
    )
    folder = tmp_path / "plan"
    (folder / "steps").mkdir(parents=True)
    (folder / "project.yaml").write_text(text, encoding="utf-8")
    (folder / "steps" / "01-hang.md").write_text(HANG, encoding="utf-8")
    publish(travel(folder), tmp_path / "site", project=folder)
    page = (tmp_path / "site" / "steps" / "hang.html").read_text(encoding="utf-8")
    assert page.index("wires run in walls") < page.index("What to do")
    assert "How it hangs" not in page
