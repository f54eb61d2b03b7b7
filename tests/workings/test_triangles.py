"""Which parts make a set, and whether the pieces of the triangle go together to one."""

from __future__ import annotations

from collections import Counter
from itertools import accumulate

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchalong.road import travel
from benchalong.workings.set_pieces import Layout, across_the_set, carried
from benchalong.workings.triangles import TRIANGLES, Triangle
from conftest import ROOT
from drawing.pictures import travel_text

PLAN = """
title: Boards
units: millimetre
piece: all
stock:
  oak: {kind: board, thickness: 20, species: white oak}
  ash: {kind: board, thickness: 20, species: white ash}
parts:
PARTS
JOINTS
assemblies:
  all:
    place:
PLACES
"""

PARTS = {
    "one": "stock: oak, width: 60, length: 400",
    "two": "stock: oak, width: 80, length: 400",
    "other": "stock: ash, width: 60, length: 400",
    "short": "stock: oak, width: 60, length: 300",
    "broad": "stock: oak, width: 200, length: 400",
}


def plan_of(*places: str, joints: str = "", cuts: str = "") -> str:
    listed = "\n".join(f"      - {{{place}}}" for place in places)
    parts = [f"  {name}: {{{says}{cuts}}}" for name, says in PARTS.items() if f"part: {name}," in listed]
    return PLAN.replace("PLACES", listed).replace("JOINTS", joints).replace("PARTS", "\n".join(parts))


def sets_of(*places: str, joints: str = "") -> list[tuple[str, str, list[str]]]:
    """By how they look: the marks and what each carries."""
    text = plan_of(*places, joints=joints)
    return [said(triangle) for triangle in travel_text(text).worked[TRIANGLES]]


def said(triangle: Triangle) -> tuple[str, str, list[str]]:
    each = zip(triangle.marks, triangle.pieces, strict=True)
    return triangle.sides, triangle.points, [f"{mark} {piece.carries}" for mark, piece in each]


ONE = "part: one, mark: A, at: [0, 0, 0], along: up, face: front"
CASES: dict[str, tuple[list[str], list[tuple[str, str, list[str]]]]] = {
    "two of one part": (
        [ONE, "part: one, mark: B, at: [500, 0, 0], along: up, face: front"],
        [("their faces", "up", ["A left half", "B right half"])],
    ),
    "two parts alike but for the width": (
        [ONE, "part: two, mark: B, at: [500, 0, 0], along: up, face: front"],
        [("their faces", "up", ["A left half", "B right half"])],
    ),
    "rails lie across, so the point is the upper one's": (
        [
            "part: one, mark: T, at: [0, 0, 500], along: right, face: front",
            "part: one, mark: B, at: [0, 0, 0], along: left, face: front",
        ],
        [("their faces", "up", ["B base", "T point"])],
    ),
    "three boards lying on the bench": (
        [
            f"part: one, mark: {mark}, at: [{x}, 0, 0], along: back, face: up"
            for mark, x in zip("ABC", (0, 60, 120), strict=True)
        ],
        [("their faces", "away", ["A left corner", "B point", "C right corner"])],
    ),
    "sides that look away from each other are marked on their front edges": (
        [
            "part: one, mark: L, at: [0, 0, 0], along: up, face: left",
            "part: one, mark: R, at: [500, 0, 0], along: up, face: right",
        ],
        [("their front edges", "up", ["L left half", "R right half"])],
    ),
    "one shows its back": ([ONE, "part: one, mark: B, at: [500, 0, 0], along: up, face: back"], []),
    "another wood": ([ONE, "part: other, mark: B, at: [500, 0, 0], along: up, face: front"], []),
    "another length": ([ONE, "part: short, mark: B, at: [500, 0, 0], along: up, face: front"], []),
    "much broader": ([ONE, "part: broad, mark: B, at: [500, 0, 0], along: up, face: front"], []),
    "in another plane": ([ONE, "part: one, mark: B, at: [500, 5, 0], along: up, face: front"], []),
    "begins higher": ([ONE, "part: one, mark: B, at: [500, 0, 5], along: up, face: front"], []),
}


@pytest.mark.parametrize("case", CASES)
def test_a_set(case: str) -> None:
    places, expected = CASES[case]
    assert sets_of(*places) == expected


def test_what_swings_past_another_is_no_set_with_it() -> None:
    places = [ONE, "part: two, mark: B, at: [62, 0, 0], along: up, face: front"]
    hinge = (
        "joints:\n  hinge: {kind: hinge, cut_in: [one edge b], takes: [two edge a], length: 50, width: 15,"
        " closed: 4, gap: 2}"
    )
    assert sets_of(*places)
    assert sets_of(*places, joints=hinge) == []


def test_the_cupboard_s_sets() -> None:
    found = [said(triangle) for triangle in travel(ROOT / "content" / "seed-cupboard").worked[TRIANGLES]]
    assert ("their front edges", "up", ["SL left half", "SR right half"]) in found
    assert ("their front edges", "up", ["S1 base", "S2 middle", "S3 point"]) in found
    assert ("their faces", "up", ["H left half", "M right half"]) in found
    assert ("their faces", "up", ["M left half", "H right half"]) in found, "the right door's"
    assert found.count(("their faces", "up", ["B base", "T point"])) == 2


def test_a_line_keeps_off_a_cut() -> None:
    """A groove runs across the middle of both: the triangle stands higher or lower."""
    groove = ", cuts: [{cut: dado, on: face, at: 180, width: 40, depth: 5}]"
    plan = plan_of(ONE, "part: one, mark: B, at: [500, 0, 0], along: up, face: front", cuts=groove)
    (triangle,) = travel_text(plan).worked[TRIANGLES]
    for piece in triangle.pieces:
        along = np.array(piece.lines)[:, :, 0]
        assert ((along.max(axis=1) <= 180) | (along.min(axis=1) >= 220)).all()


BREADTHS = st.lists(st.floats(5, 300), min_size=2, max_size=8)


@given(BREADTHS, st.floats(50, 3000), st.booleans())
def test_closed_up_the_pieces_make_one_triangle(
    breadths: list[float], length: float, is_row_up: bool
) -> None:
    layout = Layout(tuple(breadths), length, is_row_up=is_row_up)
    pieces = across_the_set(layout, length / 2)
    starts = [0.0, *accumulate(breadths)]
    ends: Counter[tuple[float, float]] = Counter()
    walked = 0.0
    for start, broad, lines in zip(starts, breadths, pieces, strict=False):
        assert lines, "every part carries something"
        for line in lines:
            assert -1e-6 <= line[:, 0].min() <= line[:, 0].max() <= broad + 1e-6
            assert 0 <= line[:, 1].min() <= line[:, 1].max() <= length
            walked += float(np.hypot(*(line[1] - line[0])))
            ends.update((round(start + x, 4), round(y, 4)) for x, y in line.tolist())
    assert all(count == 2 for count in ends.values()), "each line goes on where another ends"
    spots = np.array(list(ends))
    low, high = spots.min(axis=0), spots.max(axis=0)
    wide, tall = (high - low).tolist()
    base, rise = (tall, wide) if is_row_up else (wide, tall)
    tip = base / 2
    if not is_row_up:
        top = spots[spots[:, 1].argmax(), 0]
        tip = float(top - low[0])
    around = base + float(np.hypot(tip, rise)) + float(np.hypot(base - tip, rise))
    assert walked == pytest.approx(around, rel=1e-4)


@pytest.mark.parametrize(
    ("count", "is_row_up", "words"),
    [
        (2, False, ["left half", "right half"]),
        (2, True, ["base", "point"]),
        (3, True, ["base", "middle", "point"]),
        (4, False, ["left corner", "2nd piece from the left", "3rd piece from the left", "right corner"]),
        (4, True, ["base", "2nd piece from the base", "3rd piece from the base", "point"]),
    ],
)
def test_what_each_part_carries(count: int, is_row_up: bool, words: list[str]) -> None:
    assert carried(Layout((50.0,) * count, 400.0, is_row_up=is_row_up)) == words
