"""What can't be made at a corner names the size to change, and with that change it can be made."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis.strategies import integers, sampled_from

from benchalong.ground.problems import Finding
from benchalong.workings.order import WORKINGS
from benchalong.workings.working import work_all
from plan.joints.shop import as_typed, clashes, eighths, joint_sizes, plan_of
from plan.joints.test_box_joint import box
from plan.joints.test_dovetail import drawer


def found(text: str) -> list[Finding]:
    """What this check says; what is made of the project besides is no matter. The machine saw takes 3 mm."""
    text = text.replace("units: millimetre", "units: millimetre\nnearest: 0.1 mm\nshop: {kerf: 3 mm}", 1)
    findings = work_all(plan_of(text), WORKINGS).findings
    return [one for one in findings if one.code.startswith(("dovetail-", "finger-")) and one.level == "fault"]


ONE = "with one tail"
FOURTH, LAST = "a quarter of the thickness", "so that the last is as wide as the others"
SAID = [
    (
        drawer("pin: 60"),
        "dovetail-tail-narrow",
        "make corner.pin 2.9 mm less, 57.1 mm at most, with one tail",
    ),
    (drawer("pin: 0 mm"), "dovetail-pin-narrow", "make corner.pin 0.8 mm more, 0.8 mm at least"),
    (drawer("pin: 1/2"), "dovetail-pin-narrow", "make corner.pin 0.3 mm more, 0.8 mm at least"),
    (drawer("slope: -1/8"), "dovetail-slope-below-zero", "write corner.slope as 1/8 or 1/6"),
    (drawer("tails: 40"), "dovetail-tail-narrow", "write tails: 10 at most in corner"),
    (drawer("tails: 12, pin: 6"), "dovetail-tail-narrow", "write tails: 9 at most in corner"),
    (drawer("pin: 5", wide=6), "dovetail-tail-narrow", "make side 1.4 mm wider, or corner.slope less"),
    (drawer("dovetail: half-blind, lap: 30"), "dovetail-lap-deep", f"make corner.lap 25 mm less, {FOURTH}"),
    (box("finger: 1"), "finger-narrow", "make corner.finger 2 mm more, 3 mm at least"),
    (
        box("finger: 60", wide=90),
        "finger-wide",
        "make corner.finger 30 mm less: a third of the width, or an odd part of it",
    ),
    (box("finger: 24", wide=98), "finger-last-narrow", f"make corner.finger 0.5 mm more, {LAST}"),
]


@pytest.mark.parametrize(("text", "code", "cure"), SAID)
def test_what_is_said(text: str, code: str, cure: str) -> None:
    assert [(one.code, one.remedy) for one in found(text)] == [(code, cure)]


@pytest.mark.parametrize("joint", ["", "tails: 3", "tails: 1, slope: 0", "dovetail: half-blind, tails: 2"])
def test_what_can_be_made_is_not_told(joint: str) -> None:
    lap = 5 if "half" in joint else 0
    assert found(drawer(joint or "play: 0", lap=lap)) == []


@given(tails=integers(1, 30), pin=eighths(3, 20), slope=sampled_from(["1/8", "1/6"]), wide=eighths(60, 200))
@settings(max_examples=25, deadline=None)
def test_with_as_many_tails_as_it_says_they_go_together(
    tails: int, pin: Fraction, slope: str, wide: Fraction
) -> None:
    def text(count: int) -> str:
        return drawer(f"tails: {count}, pin: {as_typed(pin)}, slope: {slope}", wide=wide)

    said = found(text(tails))
    if not said:
        assert clashes(plan_of(text(tails))) == []
        return
    most = int(said[0].remedy.split()[2])
    assert most < tails
    assert found(text(most)) == []
    assert clashes(plan_of(text(most))) == []
    assert found(text(most + 1)) != []


@pytest.mark.parametrize(
    ("species", "slope"),
    [
        ("white oak", Fraction(1, 8)),
        ("Scots pine", Fraction(1, 6)),
        ("Norway spruce", Fraction(1, 6)),
        ("", Fraction(1, 8)),
    ],
)
def test_the_slope_follows_from_the_wood(species: str, slope: Fraction) -> None:
    """One in six for softwood, one in eight for hardwood: common practice, no source."""
    text = drawer("play: 0")
    if species:
        text = text.replace("thickness: 20}", f"thickness: 20, species: {species}}}", 1)
    assert joint_sizes(plan_of(text))["slope"] == slope
    assert joint_sizes(plan_of(text.replace("play: 0", "slope: 1/7")))["slope"] == Fraction(1, 7)
