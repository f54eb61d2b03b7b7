"""Pulled apart: only along ways that parts really come out, clear of each other, small and labelled."""

from __future__ import annotations

from functools import cache
from itertools import combinations
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pytest

from benchalong.drawing.drawings import Drawings
from benchalong.drawing.pulled import Pulled
from benchalong.drawing.text import text_width
from benchalong.ground.store import MemoryStore
from benchalong.road import Travelled, travel
from benchalong.workings.solids import SOLIDS
from benchalong.workings.ways_out import WAYS_OUT

CONTENT = Path(__file__).parents[2] / "content"
SVG = "{http://www.w3.org/2000/svg}"
TEXT = 13


@cache
def project(name: str) -> Travelled:
    return travel(CONTENT / name)


CASES = [
    (name, assembly) for name in ("seed-cupboard", "step-stool") for assembly in project(name).plan.assemblies
]


def pulled(name: str, assembly: str) -> Pulled:
    done = project(name)
    taken, by_mark = done.worked[WAYS_OUT][assembly], {copy.mark: copy for copy in done.plan.copies}
    solids = done.worked[SOLIDS]
    members = {unit: [by_mark[mark] for mark in marks] for unit, marks in taken.members.items()}
    return Pulled(taken, members, solids)


def rooms(one: Pulled, unit: str, shift: object) -> list[tuple[object, object]]:
    found = []
    for copy in one.members[unit]:
        corners = one.solids[copy.shape].vertices @ np.array(copy.turn, dtype=float).T
        corners = corners + [float(value) for value in copy.at] + np.array(shift)
        found.append((corners.min(axis=0), corners.max(axis=0)))
    return found


@pytest.mark.parametrize(("name", "assembly"), CASES)
def test_what_was_joined_stands_clear(name: str, assembly: str) -> None:
    """A part that leaves a cut leaves the whole room that it shared."""
    one = pulled(name, assembly)
    for a, b in combinations(one.members, 2):
        for low, high in rooms(one, a, one.shifts[a]):
            for other_low, other_high in rooms(one, b, one.shifts[b]):
                overlap = np.minimum(high, other_high) - np.maximum(low, other_low)  # type: ignore[call-overload]
                assert overlap.min() <= 0.01, (a, b)


@pytest.mark.parametrize(("name", "assembly"), CASES)
def test_each_is_pulled_only_along_its_own_ways(name: str, assembly: str) -> None:
    one = pulled(name, assembly)
    for unit, shift in one.shifts.items():
        ways = [np.array(move.way) for move in one.taken.moves if unit in move.goes]
        if not ways:
            assert not shift.any()
            continue
        assert np.linalg.norm(shift - sum(way * max(0.0, float(shift @ way)) for way in ways)) < 1e-9
    assert any(shift.any() for shift in one.shifts.values())


@pytest.mark.parametrize(("name", "assembly"), CASES)
def test_marks_stand_apart_on_a_small_sheet(name: str, assembly: str) -> None:
    drawn = Drawings(project(name).plan, project(name).worked, MemoryStore()).apart(assembly)
    assert drawn is not None
    assert drawn.width == 358
    assert len(drawn.svg.encode()) < 120_000
    assert drawn.not_shown == ()
    assert "pulled apart" in drawn.alt
    root = ElementTree.fromstring(drawn.svg)
    marks = [text.text or "" for g in root.iter(f"{SVG}g") if g.attrib.get("class") == "label" for text in g]
    taken = project(name).worked[WAYS_OUT][assembly]
    assert sorted(marks) == sorted(unit.removeprefix(f"{taken.mark}/") for unit in taken.members)
    boxes = []
    for group in root.iter(f"{SVG}g"):
        if group.attrib.get("class") == "label":
            for text in group:
                wide, anchor = text_width(text.text or "", TEXT), group.attrib["text-anchor"]
                x, y = float(text.attrib["x"]), float(text.attrib["y"])
                left = x - {"start": 0.0, "end": wide}.get(anchor, wide / 2)
                boxes.append((left, y - 10, left + wide, y + 2.5))
    for a, b in combinations(boxes, 2):
        assert a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1]
    for left, top, right, bottom in boxes:
        assert min(left, top) >= 0
        assert right <= drawn.width
        assert bottom <= drawn.height


def test_the_text_says_who_goes_which_way() -> None:
    drawings = Drawings(project("seed-cupboard").plan, project("seed-cupboard").worked, MemoryStore())
    door, whole = drawings.apart("door"), drawings.piece_apart()
    assert door is not None
    assert door.alt == (
        "Door, pulled apart: hinge stile H to the left, meeting stile M to the right, top rail T up"
        " and bottom rail B down, seen from the front, the right and above,"
        " with the mark of each part that shows."
        " A triangle runs across their faces, its point up: H left half and M right half."
        " A triangle runs across their faces, its point up: B base and T point."
    )
    assert whole is not None
    assert "pulled apart: LD to the front and RD to the front, seen" in whole.alt


def test_the_whole_piece_keeps_inner_assemblies_whole() -> None:
    one = pulled("seed-cupboard", "cupboard")
    assert set(one.members) == {"C", "LD", "RD"}
    assert one.shifts["LD"].tolist() == one.shifts["RD"].tolist()
    assert not one.shifts["C"].any()
    drawings = Drawings(project("seed-cupboard").plan, project("seed-cupboard").worked, MemoryStore())
    assert drawings.piece_apart() == drawings.apart("cupboard")


@pytest.mark.parametrize(("name", "assembly"), CASES)
def test_lines_lead_to_where_parts_go(name: str, assembly: str) -> None:
    drawn = Drawings(project(name).plan, project(name).worked, MemoryStore()).apart(assembly)
    assert drawn is not None
    assert 'class="thread"' in drawn.svg
