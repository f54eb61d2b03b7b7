"""A joint's own sizes: what is written, what the trade gives, and their names in the plan's arithmetic."""

from __future__ import annotations

from fractions import Fraction

import pytest

from benchalong.ground.lengths import INCH
from benchalong.plan.joints.families import FAMILIES
from benchalong.plan.joints.sizes import JOINT_SIZES
from benchalong.reading.joint_language import JOINT_KINDS, JOINTS
from benchalong.reading.language import Kind
from plan.joints.shop import joint_sizes, plan_of, understood

PROJECT = """
title: Frame
units: {units}
sizes: {{named: {named}}}
stock: {{oak: {{kind: board, thickness: {thick}}}}}
parts:
  stile: {{stock: oak, width: 3, length: 30, count: 2}}
  rail: {{stock: oak, width: 2, length: 20, count: 2}}
joints:
  frame: {{kind: {kind}, cut_in: [stile inner edge], takes: [rail both ends]{more}}}
"""


def project(
    kind: str = "tongue and groove",
    more: str = "",
    units: str = "inch",
    thick: str = "3/4 in",
    named: str = "1 in",
) -> str:
    more = f", {more}" if more else ""
    return PROJECT.format(kind=kind, more=more, units=units, thick=thick, named=named)


def test_every_kind_has_its_rule_its_sizes_and_its_words() -> None:
    assert set(FAMILIES) == set(JOINT_SIZES) == set(JOINTS) == set(JOINT_KINDS)


@pytest.mark.parametrize("kind", JOINT_KINDS)
def test_what_may_be_written_are_its_sizes(kind: str) -> None:
    written = {key.name for key in JOINTS[kind].keys if key.kind is Kind.FORMULA}
    assert written == {name for name, size in JOINT_SIZES[kind].items() if not size.is_derived}


@pytest.mark.parametrize(
    ("kind", "units", "thick", "expected"),
    [
        (
            "tongue and groove",
            "inch",
            "3/4 in",
            {"width": INCH / 4, "depth": INCH * 3 / 8, "tongue_length": INCH * 11 / 32},
        ),
        (
            "tongue and groove",
            "millimetre",
            "20 mm",
            {"width": 7, "depth": 10, "tongue_length": Fraction("9.2"), "panel_side_play": 3},
        ),
        ("dado", "inch", "3/4 in", {"width": INCH * 3 / 4, "depth": INCH / 4, "reach": INCH * 15 / 64}),
        ("dado", "millimetre", "18 mm", {"width": 18, "depth": 6, "reach": Fraction("5.6"), "notch": 19}),
        ("rabbet", "millimetre", "18 mm", {"width": 18, "depth": 9}),
    ],
)
def test_what_is_not_written_comes_from_the_trade(
    kind: str, units: str, thick: str, expected: dict[str, Fraction]
) -> None:
    """Of a plan where nothing is placed yet, too. Common practice, no source."""
    plan = plan_of(project(kind, units=units, thick=thick))
    assert joint_sizes(plan, "frame").items() >= expected.items()
    assert plan.joints["frame"].meetings == ()


def test_its_sizes_have_names() -> None:
    plan = plan_of(project(more="depth: 1/2 in, end_play: 1/16 in", named="2*frame.tongue_length"))
    assert plan.sizes["named"].value.value == INCH * 7 / 8


def test_they_follow_from_the_named_sizes() -> None:
    plan = plan_of(project(more="depth: named / 4"))
    (tongue,) = [size for size in plan.joints["frame"].sizes if size.name == "tongue_length"]
    assert tongue.sizes == ("named",)


def test_centred_is_no_size() -> None:
    assert "across" not in joint_sizes(plan_of(project(more="across: centred")), "frame")


@pytest.mark.parametrize("who", ["case/L", "L", "C/L", "S1"])
def test_a_side_that_names_a_mark_takes_its_default_from_the_part(who: str) -> None:
    text = """
title: Case
units: millimetre
stock: {oak: {kind: board, thickness: 24}}
parts:
  side: {stock: oak, length: 400, width: 200}
  shelf: {stock: oak, thickness: 15, length: 300, width: 200}
joints:
  frame: {kind: dado, cut_in: [WHO back], takes: [S1 end a]}
assemblies:
  case:
    place:
      - {part: side, mark: L, at: [0, 0, 0], along: up, face: left}
      - {part: shelf, mark: S1, at: [16.4 mm, 0, 150], along: right, face: up}
  all: {place: [{assembly: case, mark: C, at: [0, 0, 0]}]}
""".replace("WHO", who)
    plan, said = understood(text)
    assert plan is not None, said
    assert joint_sizes(plan, "frame")["depth"] == (8 if who != "S1" else 5)
    assert joint_sizes(plan, "frame")["width"] == 15


@pytest.mark.parametrize(
    ("more", "said"),
    [
        ("play: -1/32 in", "play of frame comes to -1/32 in"),
        ("end_play: 0 in - named", "end_play of frame comes to -1 in; it follows from named"),
    ],
)
def test_play_is_not_below_zero(more: str, said: str) -> None:
    assert understood(project(more=more))[1] == [said]


def test_a_broken_size_is_told_once() -> None:
    assert understood(project(more="depth: nmed"))[1] == ["there is no size called nmed"]


def test_a_circle_through_a_joint_is_shown() -> None:
    _, said = understood(project(more="depth: named", named="frame.tongue_length"))
    assert said == ["named follows from itself: named -> frame.tongue_length -> frame.depth -> named"]
