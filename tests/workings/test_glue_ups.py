"""Glue-ups as they are rehearsed; the numbers by hand from the cupboard's own plan."""

from __future__ import annotations

from fractions import Fraction

import pytest

from benchalong.ground.lengths import INCH
from benchalong.road import travel
from benchalong.workings.extent import Sides
from benchalong.workings.glue_ups import GLUE_UPS, GlueUp, diagonal
from conftest import ROOT


@pytest.fixture(scope="module")
def cupboard() -> dict[str, GlueUp]:
    worked = travel(ROOT / "content" / "seed-cupboard").worked
    return {each.task: each for each in worked[GLUE_UPS]}


def test_a_diagonal_is_over_the_two_longest_sides() -> None:
    assert diagonal(Sides(Fraction(400), Fraction(20), Fraction(300))) == 500
    assert diagonal(Sides(20 * INCH, 15 * INCH, INCH)) == 25 * INCH


def test_a_door_goes_in_one_go_and_its_panel_gets_no_glue(cupboard: dict[str, GlueUp]) -> None:
    """4 joints x 20 s, 5 pieces x 30 s, 4 clamps x 30 s and a minute to check: 410 s."""
    door = cupboard["glue-up/door"]
    assert door.rows[0].marks == ("LD/P",)
    assert [(one.joint, one.count) for one in door.no_glue] == [("frame", 4)]
    assert door.minutes == Fraction(410, 60)
    assert door.is_in_time
    assert not door.first


def test_a_case_takes_longer_than_the_glue_gives_and_is_split(cupboard: dict[str, GlueUp]) -> None:
    """All: 12 joints x 20 s, 8 pieces and 12 clamps x 30 s, a minute: 900 s. First half: 4 joints,
    5 pieces, 4 clamps: 410 s. Second: 8 joints, 4 pieces (the first half is one), 8 clamps: 580 s."""
    case = cupboard["glue-up/case"]
    assert case.minutes == 15
    assert not case.is_in_time
    assert case.first == ("C/S1", "C/S2", "C/S3", "C/HR", "C/SL")
    assert case.halves == (Fraction(410, 60), Fraction(580, 60))
    assert max(case.halves) <= case.time
    assert case.needs_help


def test_a_lip_glued_on_has_no_diagonal_to_measure(cupboard: dict[str, GlueUp]) -> None:
    assert cupboard["glue-up/case/bottom_lip"].diagonal is None
