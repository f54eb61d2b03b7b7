"""Sections: cut through what a joint hides, its sizes found where they are."""

from __future__ import annotations

import re
from functools import cache
from itertools import combinations
from pathlib import Path
from xml.etree import ElementTree

import pytest

from benchalong.drawing.cut_through import best_section
from benchalong.drawing.drawings import Drawings
from benchalong.drawing.text import text_width
from benchalong.ground.store import MemoryStore
from benchalong.road import Travelled, travel
from benchalong.workings.placed import PLACED

CONTENT = Path(__file__).parents[2] / "content"
SVG = "{http://www.w3.org/2000/svg}"


@cache
def project(name: str) -> Travelled:
    return travel(CONTENT / name)


JOINTS = [(name, joint) for name in ("seed-cupboard", "step-stool") for joint in project(name).plan.joints]


def drawing(name: str, joint: str) -> ElementTree.Element:
    found = Drawings(project(name).plan, project(name).worked, MemoryStore()).section(joint)
    assert found is not None
    return ElementTree.fromstring(found.svg)


@pytest.mark.parametrize(("name", "joint"), JOINTS)
def test_every_joint_has_a_section_with_both_parts_hatched_differently(name: str, joint: str) -> None:
    root = drawing(name, joint)
    texts = ["".join(text.itertext()) for text in root.iter(f"{SVG}text")]
    assert texts[0] == "Section A-A"
    assert root.find(f"{SVG}title") is not None
    hatching = "".join(p.attrib["d"] for p in root.iter(f"{SVG}path") if p.attrib["class"] == "cut-face")
    slopes = {
        round((float(d) - float(b)) / (float(c) - float(a)), 1)
        for a, b, c, d in re.findall(r"M([\d.-]+) ([\d.-]+)L([\d.-]+) ([\d.-]+)", hatching)
        if abs(float(c) - float(a)) > 5
    }
    assert {slope for slope in slopes if abs(abs(slope) - 1) < 0.11} == slopes
    assert {slope > 0 for slope in slopes} == {True, False}


@pytest.mark.parametrize(("name", "joint"), JOINTS)
def test_numbers_are_live_and_stay_apart(name: str, joint: str) -> None:
    root = drawing(name, joint)
    width, height = (float(value) for value in root.attrib["viewBox"].split()[2:])
    boxes = []
    for text in root.iter(f"{SVG}text"):
        said = "".join(text.itertext())
        size = 14 if "size" in text.attrib["class"] else 12
        if "size" in text.attrib["class"]:
            assert text.attrib["data-mm"]
        x, y, wide = float(text.attrib["x"]), float(text.attrib["y"]), text_width(said, size)
        left = x - wide / 2 if text.attrib.get("text-anchor") == "middle" else x
        box = (left, y - size + 3, left + wide, y + 2)
        if "transform" in text.attrib:
            box = (x - size + 3, y - wide / 2, x + 2, y + wide / 2)
        assert min(box[:2]) >= 0, (said, box)
        assert box[2] <= width, (said, box)
        assert box[3] <= height, (said, box)
        boxes.append((said, box))
    for (one, a), (other, b) in combinations(boxes, 2):
        assert a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1], (one, other)


def test_the_door_frame_shows_groove_tongue_and_room_at_the_bottom() -> None:
    plan, worked = project("seed-cupboard").plan, project("seed-cupboard").worked
    through = best_section(plan.joints["frame"], worked[PLACED])
    assert through is not None
    found = {one.size.name: one.end - one.start for one in through.found}
    sizes = {size.name: float(size.length) for size in plan.joints["frame"].sizes}
    assert set(found) == {"width", "depth", "tongue_length", "tongue_width", "end_play"}
    for name, measured in found.items():
        assert measured == pytest.approx(sizes[name], abs=1e-3)


def test_a_drawn_section_is_fetched_the_next_time(monkeypatch: pytest.MonkeyPatch) -> None:
    store, plan, worked = MemoryStore(), project("step-stool").plan, project("step-stool").worked
    joint = next(iter(plan.joints))
    first = Drawings(plan, worked, store).section(joint)
    monkeypatch.setattr("benchalong.drawing.section.section_drawing", lambda *_, **__: None)
    assert Drawings(plan, worked, store).section(joint) == first
    assert Drawings(plan, worked, MemoryStore()).section(joint) is None
