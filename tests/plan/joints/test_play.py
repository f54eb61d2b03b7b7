"""The play a panel needs where the author leaves it to its wood and its house."""

from __future__ import annotations

import tempfile
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.ground.problems import Unreadable
from benchalong.plan.model import Plan
from benchalong.road import travel
from benchalong.workings.floating import FLOATING
from plan.joints.shop import plan_of

DOOR = """
title: Door
units: {units}
piece: door
house: {{{house}}}
shop: {{made_at: 8 %}}
sizes: {{stile: 60 mm, high: 500 mm, wide: {wide} mm}}
stock: {{wood: {{kind: {kind}, {species}thickness: 20 mm}}}}
parts:
  upright: {{stock: wood, length: high, width: stile}}
  rail: {{stock: wood, length: wide - 2*stile + 2*frame.tongue_length, width: stile}}
  panel: {{stock: wood, thickness: frame.width - 0.2 mm, width: {width}, length: fits frame}}
joints:
  frame:
    kind: tongue and groove
    cut_in: [upright inner edge, rail inner edge]
    takes: [rail both ends]
    floats: [panel]
    depth: 12 mm
{play}
assemblies:
  door:
    place:
      - {{part: upright, mark: H, at: [0, 0, 0], along: up, face: front}}
      - {{part: upright, mark: M, at: [wide - stile, 0, 0], along: up, face: front}}
      - {{part: rail, mark: T, at: [stile - frame.tongue_length, 0, high - stile], along: right, face: front}}
      - {{part: rail, mark: B, at: [stile - frame.tongue_length, 0, 0], along: right, face: front}}
      - {{part: panel, mark: P, along: up, face: front}}
stages: {{all: {{title: All}}}}
"""


def door(**said: str) -> str:
    usual = {
        "units": "millimetre", "house": "climate: temperate house", "wide": "420", "kind": "board",
        "species": "species: black cherry, sawn: flat, ", "width": "fits frame", "play": "",
    }  # fmt: skip
    text = DOOR.format(**usual | said)
    return text.replace("mark: P,", "mark: P, at: [60, 6, 60],") if "width" in said else text


def play(plan: Plan) -> Fraction:
    return next(size.length for size in plan.joints["frame"].sizes if size.name == "panel_side_play")


def test_cherry_in_a_temperate_house() -> None:
    """324 from bottom to bottom; at 12 percent it may be 322.4, so 319.2 at 8, C 0.00248: 2.38 beside each
    edge, 2.5 to the next half millimetre."""
    plan = plan_of(door())
    assert play(plan) == Fraction(5, 2)
    assert plan.parts["panel"].width == 324 - 5
    assert plan.parts["panel"].length == 380 + 2 * (12 - Fraction(3, 2))


def test_in_inches_it_goes_up_to_a_thirty_second() -> None:
    """The same with 1/32 in for 0.8 mm asks for 2.377 mm: 3/32 in is 2.381."""
    assert play(plan_of(door(units="inch"))) == Fraction(127, 5) * Fraction(3, 32)


@pytest.mark.parametrize("typed", ["", "    panel_side_play: by movement"])
def test_it_is_said_or_comes_by_itself(typed: str) -> None:
    assert play(plan_of(door(play=typed))) == Fraction(5, 2)


def test_what_the_author_states_stays() -> None:
    assert play(plan_of(door(play="    panel_side_play: 4 mm"))) == 4


@pytest.mark.parametrize(
    "said",
    [
        {"species": ""},
        {"kind": "sheet", "species": ""},
        {"width": "300 mm"},
    ],
)
def test_where_there_is_nothing_to_work_it_out_from_it_is_the_usual(said: dict[str, str]) -> None:
    assert play(plan_of(door(**said))) == 3


def test_a_size_may_follow_from_it() -> None:
    plan = plan_of(door().replace("stile: 60 mm,", "stile: 60 mm, twice: 2*frame.panel_side_play,"))
    assert plan.sizes["twice"].value.value == 5
    assert {"stile", "wide"} <= set(
        next(s for s in plan.joints["frame"].sizes if s.name == "panel_side_play").sizes
    )


def test_by_movement_without_a_panel_that_fits_is_told() -> None:
    with tempfile.TemporaryDirectory() as name:
        text = door(width="300 mm", play="    panel_side_play: by movement")
        (Path(name) / "project.yaml").write_text(text, encoding="utf-8")
        with pytest.raises(Unreadable) as told:
            travel(Path(name))
    (problem,) = told.value.problems
    assert problem.message == "by movement needs a solid panel of a known wood whose width fits frame"


@settings(max_examples=8, deadline=None)
@given(st.integers(250, 900), st.integers(8, 14), st.sampled_from(["inch", "millimetre"]))
def test_a_fitted_panel_has_room_in_the_dampest_season(wide: int, dampest: int, units: str) -> None:
    text = door(wide=str(wide), house=f"moisture: 7 % to {dampest} %", units=units)
    with tempfile.TemporaryDirectory() as name:
        (Path(name) / "project.yaml").write_text(text, encoding="utf-8")
        travelled = travel(Path(name))
    (panel,) = travelled.worked[FLOATING]
    assert panel.room.at_dampest >= Fraction(3, 2)
    assert not [finding for finding in travelled.worked.findings if finding.level == "fault"]
    damper = play(plan_of(door(wide=str(wide), house=f"moisture: 7 % to {dampest + 1} %", units=units)))
    assert damper >= play(travelled.plan)
