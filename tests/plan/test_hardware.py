"""Hardware: its sizes as names, where it sits, the holes it takes in the wood, and how many are needed."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.ground.lengths import Length
from benchalong.plan.model import Cut, Plan
from benchalong.plan.resolve import resolve
from benchalong.reading.project import read_project

PIECE = """
title: Cupboard
units: {units}
sizes: {{knob_up: 200 mm}}
stock: {{oak: {{kind: board, thickness: 20 mm}}}}
parts:
  side: {{stock: oak, width: 100 mm, length: 400 mm}}
  stile: {{stock: oak, width: 60 mm, length: 380 mm}}
assemblies:
  door:
    place: [{{part: stile, mark: M, at: [0, 0, 0], along: up, face: front}}]
  cupboard:
    place:
      - {{part: side, mark: L, at: [0, 0, 0], along: up, face: left}}
      - {{part: side, mark: R, at: [150 mm, 0, 0], along: up, face: right, mirror: left to right}}
      - {{assembly: door, mark: LD, at: [22 mm, 0, 10 mm]}}
      - {{assembly: door, mark: RD, at: [88 mm, 0, 10 mm], mirror: left to right}}
joints:
  hinges:
    {{kind: hinge, cut_in: [side inner face], takes: [stile outer edge], hardware: leaf, gap: 2 mm,
      set: 50 mm}}
hardware:
{hardware}
stages: {{all: {{title: All}}}}
"""
LEAF = "  leaf: {{kind: hinge, length: 40 mm, width: 16 mm, closed: 4 mm{more}}}\n"
SCREW = "  small: {kind: screw, diameter: 3 mm, length: 15 mm}\n"


def plan_of(folder: Path, hardware: str, units: str = "millimetre") -> Plan:
    (folder / "project.yaml").write_text(PIECE.format(units=units, hardware=hardware), encoding="utf-8")
    read = read_project(folder)
    resolved = resolve(read.project, frozenset(read.unreadable))
    assert resolved.plan is not None, [problem.message for problem in resolved.problems]
    return resolved.plan


def holes_in(plan: Plan, mark: str) -> list[dict[str, object]]:
    copy = next(copy for copy in plan.copies if copy.mark == mark)
    return [sizes(cut) for cut in plan.shapes[copy.shape].cuts if cut.kind == "hole"]


def sizes(cut: Cut) -> dict[str, object]:
    return {size.name: size.length for size in cut.sizes}


def test_a_hinge_takes_its_gain_from_the_hardware(tmp_path: Path) -> None:
    plan = plan_of(tmp_path, LEAF.format(more=""))
    gain = next(cut for cut in plan.shapes["side"].cuts if cut.kind == "mortise")
    assert sizes(gain)["length"] == 40
    assert sizes(gain)["depth"] == 1, "half of 4 mm less the gap of 2 mm"


def test_its_screws_stand_in_a_row_along_the_leaf(tmp_path: Path) -> None:
    plan = plan_of(tmp_path, LEAF.format(more=", held_by: small, screws: 2") + SCREW)
    holes = holes_in(plan, "LD/M")
    assert [(hole["at"], hole["diameter"], hole["depth"]) for hole in holes] == [
        (60, 2, 15), (80, 2, 15), (300, 2, 15), (320, 2, 15),
    ]  # fmt: skip
    assert {hole["across"] for hole in holes} == {8}, "the middle of a leaf that reaches 16 mm from the front"
    assert {hole["across"] for hole in holes_in(plan, "L")} <= {8, 92}, "as far from the front of the side"
    assert plan.hardware["small"].needed == 2 * 2 * 2 * 2, "two doors, two hinges, two leaves, two screws"
    assert plan.hardware["leaf"].count == 4


@pytest.mark.parametrize(("across", "expected"), [("5 mm", 13), ("-5 mm", 3)])
def test_holes_of_its_own_are_counted_from_the_middle_and_away_from_the_barrel(
    tmp_path: Path, across: str, expected: int
) -> None:
    own = f", holes: [{{diameter: 2 mm, depth: 9 mm, along: 10 mm, across: {across}}}]"
    holes = holes_in(plan_of(tmp_path, LEAF.format(more=own)), "LD/M")
    assert [(hole["at"], hole["across"], hole["depth"]) for hole in holes] == [
        (80, expected, 9),
        (320, expected, 9),
    ]


def test_a_knob_sits_on_both_doors_and_is_mirrored_with_them(tmp_path: Path) -> None:
    knob = (
        "  knob: {diameter: 30 mm, depth: 25 mm, holes: [{diameter: 5 mm, depth: through}],"
        " sits: [{on: stile face, at: knob_up, across: 45 mm}]}\n"
    )
    plan = plan_of(tmp_path, LEAF.format(more="") + knob)
    left, right = plan.hardware["knob"].seated
    assert (left.mark, right.mark) == ("LD/M", "RD/M")
    assert left.looks == right.looks == (0, -1, 0)
    assert list(left.middle) == [22 + 45, 0, 10 + 200]
    assert list(right.middle) == [88 + 60 - 45, 0, 10 + 200]
    assert left.room is not None
    assert [list(corner) for corner in left.room] == [[52, -25, 195], [82, 0, 225]]
    assert left.follows == ("knob_up",)
    assert plan.hardware["knob"].needed == 2
    assert holes_in(plan, "LD/M") == [{"diameter": 5, "at": 200, "across": 45}]
    assert {plan.shapes[copy.shape].part for copy in plan.copies if copy.mark == "RD/M"} == {"stile"}


def test_only_one_copy_when_it_says_so(tmp_path: Path) -> None:
    knob = "  knob: {diameter: 30 mm, depth: 25 mm, sits: [{on: stile face, only: [RD/M]}]}\n"
    plan = plan_of(tmp_path, LEAF.format(more="") + knob)
    assert [seated.mark for seated in plan.hardware["knob"].seated] == ["RD/M"]


@pytest.mark.parametrize(
    ("units", "diameter", "clearance", "pilot"),
    [
        ("inch", "0.164 in", "11/64 in", "1/8 in"),  # No. 8
        ("inch", "0.138 in", "9/64 in", "7/64 in"),  # No. 6
        ("millimetre", "4.5 mm", "4.5 mm", "3 mm"),
        ("millimetre", "5 mm", "5 mm", "3.5 mm"),
    ],
)
def test_a_screw_says_its_holes(
    tmp_path: Path, units: str, diameter: str, clearance: str, pilot: str
) -> None:
    """Common practice for hardwood, no source; for No. 8 and 4.5 mm what joints have always taken."""
    screw = f"  small: {{kind: screw, diameter: {diameter}}}\n"
    thing = plan_of(tmp_path, LEAF.format(more="") + screw, units).hardware["small"]
    assert thing.size_of("clearance") == length_of(clearance)
    assert thing.size_of("pilot") == length_of(pilot)


def length_of(text: str) -> Length:
    number, unit = text.split()
    return Fraction(number) * (Fraction(127, 5) if unit == "in" else 1)


@settings(max_examples=25, deadline=None)
@given(st.integers(1, 5), st.integers(20, 90))
def test_screws_lie_within_the_leaf_the_same_from_both_ends(
    tmp_path_factory: pytest.TempPathFactory, count: int, long: int
) -> None:
    held = f"length: {long} mm, held_by: small, screws: {count}"
    leaf = f"  leaf: {{kind: hinge, {held}, width: 16 mm, closed: 4 mm}}\n"
    bores = plan_of(tmp_path_factory.mktemp("hinge"), leaf + SCREW).hardware["leaf"].bores
    along = [bore.along for bore in bores]
    assert len(along) == count
    assert along == [-value for value in reversed(along)]
    assert all(abs(value) < Fraction(long, 2) for value in along)
