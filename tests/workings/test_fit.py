"""What the plan check measures at joints and in parts, against numbers worked out by hand."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from benchalong.ground.lengths import INCH
from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan
from benchalong.plan.resolve import resolve
from benchalong.reading.project import read_project
from benchalong.workings.clashes import CLASHES
from benchalong.workings.left_wood import walls_of
from benchalong.workings.meetings import MEETINGS, JointFit
from benchalong.workings.order import WORKINGS
from benchalong.workings.placed import PLACED
from benchalong.workings.solids import shaped
from benchalong.workings.telling import exact
from benchalong.workings.working import Worked, work_all

BASES = Path(__file__).parent.parent / "faults" / "bases"


def plan_of(folder: Path, text: str) -> Plan:
    (folder / "project.yaml").write_text(text, encoding="utf-8")
    reading = read_project(folder)
    resolved = resolve(reading.project, reading.unreadable)
    assert resolved.plan is not None, (reading.problems, resolved.problems)
    return resolved.plan


def base(folder: Path, name: str, *changes: tuple[str, str]) -> Plan:
    text = (BASES / f"{name}.yaml").read_text(encoding="utf-8")
    for old, new in changes:
        assert text.count(old) == 1
        text = text.replace(old, new)
    return plan_of(folder, text)


def worked(plan: Plan) -> Worked:
    return work_all(plan, WORKINGS)


def fits(plan: Plan, joint: str) -> JointFit:
    return worked(plan)[MEETINGS][joint]


def found(plan: Plan) -> list[Finding]:
    return list(worked(plan).findings)


def test_the_play_of_a_tongue_is_what_the_joint_says(tmp_path: Path) -> None:
    play = ("    floats: [panel]", "    floats: [panel]\n    play: 0.15 mm")
    fit = fits(base(tmp_path, "door", play), "frame")
    tongues = [one for one in fit.fits if one.meeting.takes and one.meeting.takes.part == "door_rail"]
    assert len(tongues) == 4
    for one in tongues:
        assert one.shoulder == 0
        assert one.end == Fraction(4, 5)
        assert one.play["thickness"] == (Fraction(3, 20), Fraction(3, 20))
        assert one.in_all["thickness"] == Fraction(3, 10)


def test_a_panel_has_the_room_its_joint_leaves(tmp_path: Path) -> None:
    fit = fits(base(tmp_path, "door"), "frame")
    panel = [one for one in fit.fits if one.meeting.takes and one.meeting.takes.part == "panel"]
    assert {one.end for one in panel} == {Fraction(3), Fraction(3, 2)}
    assert {one.in_all["thickness"] for one in panel} == {Fraction(1, 5)}


def test_a_tenon_closes_and_has_room_at_its_end(tmp_path: Path) -> None:
    fit = fits(base(tmp_path, "table"), "tenons")
    assert fit.end == (Fraction(3, 2), Fraction(3, 2))
    assert {one.shoulder for one in fit.fits} == {Fraction(0)}
    assert {key: sum(sizes) for key, sizes in fit.play.items()} == {"thickness": 0, "width": 0}


def test_slopes_of_dovetails_are_measured_square_to_them(tmp_path: Path) -> None:
    fit = fits(base(tmp_path, "drawer"), "tails")
    assert {one.slope for one in fit.fits} == {Fraction(0)}


def test_mirrored_copies_are_measured_as_the_others_are(tmp_path: Path) -> None:
    fit = fits(base(tmp_path, "case"), "shelves")
    assert len(fit.fits) == 4
    assert fit.end == (INCH / 64, INCH / 64)


def test_grooves_5_16_wide_and_7_16_deep_centred_in_7_8_leave_9_32_each_side(tmp_path: Path) -> None:
    text = """
title: Stile
units: inch
stock: {oak: {kind: board, thickness: 7/8 in}}
parts:
  stile:
    {stock: oak, width: 2 in, length: 30 in, count: 1,
     cuts: [{cut: groove, on: edge a, width: 5/16 in, depth: 7/16 in}]}
stages: {all: {title: All}}
"""
    plan = plan_of(tmp_path, text)
    walls = walls_of(shaped(plan, plan.shapes["stile"]))
    assert {(wall.axis, wall.at_far_end): wall.thickness / INCH for wall in walls} == {
        ("down", False): Fraction(9, 32),
        ("down", True): Fraction(9, 32),
        ("across", True): Fraction(25, 16),
    }


def test_a_case_30_wide_in_3_4_stock_with_rabbets_3_8_deep_takes_ends_29_1_4_long(tmp_path: Path) -> None:
    assert found(base(tmp_path, "rabbeted")) == []
    for length, add in (("29 in", INCH / 4), ("29.125 in", INCH / 8)):
        finding = found(base(tmp_path, "rabbeted", ("length: 29.25 in", f"length: {length}")))[0]
        assert (finding.code, finding.numbers["add"]) == ("joint-gap", add)


def test_parts_without_places_get_the_checks_that_need_none(tmp_path: Path) -> None:
    text = """
title: Cut list
units: inch
stock: {oak: {kind: board, thickness: 3/4 in}}
parts:
  side:
    {stock: oak, width: 9 in, length: 30 in, count: 2,
     cuts: [{cut: dado, on: face, at: 9 in, width: 3/4 in, depth: 1/2 in}]}
stages: {all: {title: All}}
"""
    assert [(one.level, one.code) for one in found(plan_of(tmp_path, text))] == [
        ("note", "nothing-placed"),
        ("doubt", "dado-deep"),
    ]


@pytest.mark.parametrize(
    "base_name", ["door", "case", "table", "box", "drawer", "cross", "frame", "rabbeted"]
)
def test_rooms_that_only_touch_are_no_pairs_to_compare(tmp_path: Path, base_name: str) -> None:
    results = worked(base(tmp_path, base_name))
    placed = results[PLACED]
    assert set(placed.overlapping) <= set(placed.touching)
    assert results[CLASHES].looked_at == len(placed.overlapping)
    assert results[CLASHES].clashes == ()


@pytest.mark.parametrize(
    ("measured", "meant"),
    [
        (2.9999999999996, Fraction(3)),
        (9.524999999998, INCH * 3 / 8),
        (25.4 / 3 + 1e-12, INCH / 3),
        (0.0, Fraction(0)),
        (7.9375 - 1e-11, INCH * 5 / 16),
        (1.23456789, Fraction(1234568, 1000000)),
    ],
)
def test_what_is_measured_on_solids_is_told_exactly(measured: float, meant: Fraction) -> None:
    assert exact(measured) == meant
