"""What fits a joint: measured from side to side, and put in the middle of its opening."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings

from benchalong.plan.model import Plan
from plan.joints.shop import TOUCHING, clashes, copy_called, eighths, plan_of, shared, standing, understood

FRAME = """
title: Door
units: millimetre
piece: pair
sizes:
  stile: {stile}
  high: {high}
  wide: {wide}
stock: {{oak: {{kind: board, thickness: 20}}}}
parts:
  upright: {{stock: oak, length: high, width: stile}}
  rail: {{stock: oak, length: wide - 2*stile + 2*frame.tongue_length, width: stile}}
  panel: {{stock: oak, thickness: frame.width - 0.2 mm, width: fits frame, length: fits frame}}
joints:
  frame:
    kind: tongue and groove
    cut_in: [upright inner edge, rail inner edge]
    takes: [rail both ends]
    floats: [panel]
    width: 6
    depth: {depth}
    end_play: 1
    panel_side_play: 3
    panel_end_play: 3/2
    {joint}
assemblies:
  door:
    place:
      - {{part: upright, mark: H, at: [0, 0, 0], along: up, face: front}}
      - {{part: upright, mark: M, at: [wide - stile, 0, 0], along: up, face: front}}
      - {{part: rail, mark: T, at: [stile - frame.tongue_length, 0, high - stile], along: right, face: front}}
      - {{part: rail, mark: B, at: [stile - frame.tongue_length, 0, 0], along: right, face: front}}
      - {{part: panel, mark: P, along: up, face: front{at}}}
  pair:
    place:
      - {{assembly: door, mark: L, at: [0, 0, 0]}}
      - {{assembly: door, mark: R, at: [wide + 3, 0, 0], mirror: left to right}}
stages: {{all: {{title: All}}}}
"""


def frame(
    *,
    stile: str = "60",
    high: str = "500",
    wide: str = "300",
    depth: str = "10",
    at: str = "",
    joint: str = "",
) -> str:
    return FRAME.format(stile=stile, high=high, wide=wide, depth=depth, at=at, joint=joint)


@given(eighths(30, 80), eighths(200, 700), eighths(200, 500), eighths(5, 15))
@settings(max_examples=15, deadline=None)
def test_a_panel_has_room_to_move_on_every_side(
    stile: Fraction, high: Fraction, wide: Fraction, depth: Fraction
) -> None:
    plan = plan_of(frame(stile=str(stile), high=str(high), wide=str(wide), depth=str(depth)))
    panel = plan.parts["panel"]
    assert panel.width == wide - 2 * stile + 2 * (depth - 3)
    assert panel.length == high - 2 * stile + 2 * (depth - Fraction(3, 2))
    assert clashes(plan) == []
    assert depth_between(plan, "L/H", "L/P", by=(-3, 0, 0)) < TOUCHING
    assert depth_between(plan, "L/H", "L/P", by=(-3.2, 0, 0)) > TOUCHING
    assert depth_between(plan, "R/B", "R/P", by=(0, 0, -1.5)) < TOUCHING
    assert depth_between(plan, "R/B", "R/P", by=(0, 0, -1.7)) > TOUCHING


def depth_between(plan: Plan, one: str, other: str, *, by: tuple[float, float, float]) -> float:
    """With the second moved by so much."""
    return shared(standing(plan, one), standing(plan, other).translate(by))


def test_it_stands_in_the_middle_of_its_opening_and_of_its_groove() -> None:
    plan = plan_of(frame())
    assert list(copy_called(plan, "L/P").at) == [60 - 7, Fraction("7.1"), 60 - Fraction(17, 2)]


def test_and_of_a_groove_to_one_side() -> None:
    plan = plan_of(frame(joint="across: 4"))
    assert copy_called(plan, "L/P").at[1] == Fraction("4.1")
    assert clashes(plan) == []


def test_its_meetings_are_told() -> None:
    meetings = [m for m in plan_of(frame()).joints["frame"].meetings if m.takes and m.takes.part == "panel"]
    assert len(meetings) == 8, "four sides in each door"
    found = {(m.cut_in.copy, m.takes.surfaces) for m in meetings if m.takes}
    assert ("L/H", ("edge a",)) in found
    assert ("L/T", ("end b",)) in found


def test_its_size_has_a_name_and_follows_from_those_around_it() -> None:
    text = frame().replace("  wide: 300\n", "  wide: 300\n  strip: panel.width / 2\n")
    plan = plan_of(text)
    assert plan.sizes["strip"].value.value == Fraction(194, 2)
    assert {"stile", "wide"} <= set(plan.parts["panel"].follows["width"])


def test_at_says_which_of_two_openings() -> None:
    at = "[stile - frame.tongue_length, 0, 200]"
    mid = f"      - {{part: rail, mark: X, at: {at}, along: right, face: front}}\n"
    both = "rail both edges"
    text = (
        frame()
        .replace("rail inner edge", both)
        .replace("      - {part: panel", f"{mid}      - {{part: panel".replace("{{", "{"))
    )
    _, said = understood(text)
    assert said == ["panel can't be fitted to frame: there are 2 openings it may fit"]
    lower = text.replace("P, along", "P, at: [53, 7.1 mm, 51.5 mm], along")
    plan = plan_of(lower)
    assert plan.parts["panel"].length == 200 - 60 + 17


@pytest.mark.parametrize(
    ("was", "now", "said"),
    [
        ("width: fits frame", "width: fits frme", "there is no joint called frme"),
        ("    floats: [panel]\n", "", "panel neither floats in frame nor goes into it at its ends"),
        (
            "length: high,",
            "length: panel.length + 100,",
            "panel.length follows from itself: what stands around it in frame follows from it",
        ),
        (
            "      - {part: panel, mark: P, along: up, face: front}\n",
            "",
            "panel stands nowhere, so there is no opening to measure",
        ),
        (
            "upright inner edge, rail inner edge",
            "rail inner edge",
            "panel can't be fitted to frame: nothing of it stands on both sides",
        ),
    ],
)
def test_what_cant_be_fitted(was: str, now: str, said: str) -> None:
    text = frame()
    assert text.count(was) == 1
    plan, messages = understood(text.replace(was, now))
    assert plan is None
    assert said in messages


def test_a_rail_fits_between_its_stiles() -> None:
    text = frame().replace("length: wide - 2*stile + 2*frame.tongue_length", "length: fits frame")
    plan = plan_of(text)
    assert plan.parts["rail"].length == 300 - 120 + 18
    assert clashes(plan) == []


def test_a_shelf_fits_its_dadoes() -> None:
    text = """
title: Case
units: millimetre
stock: {oak: {kind: board, thickness: 20}}
parts:
  side: {stock: oak, length: 400, width: 200}
  shelf: {stock: oak, length: fits dado, width: 200}
joints:
  dado: {kind: dado, cut_in: [side inner face], takes: [shelf both ends], depth: 6, end_play: 1/2}
assemblies:
  case:
    place:
      - {part: side, mark: L, at: [0, 0, 0], along: up, face: left}
      - {part: side, mark: R, at: [320, 0, 0], along: up, face: right}
      - {part: shelf, mark: S, at: [20 - dado.reach, 0, 150], along: right, face: up}
stages: {all: {title: All}}
"""
    plan = plan_of(text)
    assert plan.parts["shelf"].length == 300 + 11
    assert clashes(plan) == []


def test_a_place_that_fits_nothing_needs_its_at() -> None:
    text = frame().replace("mark: H, at: [0, 0, 0],", "mark: H,")
    assert "this place has no at" in understood(text)[1]


CASE = """
title: Case
units: millimetre
sizes: {{wide: 400, high: 600, deep: 250, thick: 20}}
stock:
  oak: {{kind: board, thickness: thick}}
parts:
  side: {{stock: oak, width: deep, length: high}}
  top: {{stock: oak, width: deep, length: fits corner}}
  shelf: {{stock: oak, width: deep - back_rabbet.width, length: fits dado}}
  strip: {{stock: oak, width: 60, length: between side}}
  backing: {{stock: oak, width: fits back_rabbet, length: fits back_rabbet, thickness: 6}}
joints:
  corner: {{kind: rabbet, cut_in: [side both ends inner face], takes: [top both ends], width: thick,
    depth: 10, play: 1/2}}
  dado: {{kind: dado, cut_in: [side inner face], takes: [shelf both ends], depth: 7, end_play: 1}}
  back_rabbet: {{kind: rabbet, cut_in: [side back edge inner face, top back edge inner face],
    takes: [backing both edges, backing both ends], width: 6, depth: 8, play: 1, glue: no}}
assemblies:
  case:
    place:
      - {{part: side, mark: L, at: [0, 0, 0], along: up, face: left}}
      - {{part: side, mark: R, at: [wide - thick, 0, 0], along: up, face: right}}
      - {{part: top, mark: T, at: [between L and R, 0, high - thick], along: right, face: up}}
      - {{part: top, mark: B, at: [between L and R, 0, 0], along: right, face: down}}
      - {{part: shelf, mark: S, at: [between L and R, 0, spread between B and T], along: right, face: up,
          count: 2}}
      - {{part: strip, mark: H, at: [right of L, in from back of L by 6, under T], along: right,
          face: front}}
      - {{part: backing, mark: K, {at}along: up, face: front}}
stages: {{all: {{title: All}}}}
"""


@pytest.mark.parametrize("at", ["", "at: [between L and R, flush with back of L, between B and T], "])
def test_in_rabbets_it_goes_in_by_their_depth_less_the_play(at: str) -> None:
    plan = plan_of(CASE.format(at=at))
    length = {part.id: part.length for part in plan.parts.values()}
    assert length["top"] == 360 + 2 * (10 - Fraction(1, 2))
    assert length["shelf"] == 360 + 2 * 6
    assert length["strip"] == 360
    assert plan.parts["backing"].width == 360 + 2 * 7
    assert length["backing"] == 560 + 2 * 7
    assert standing(plan, "K").bounding_box() == pytest.approx((13, 244, 13, 387, 250, 587))
    assert clashes(plan) == []


def test_in_a_frames_rabbet_the_width_is_what_it_goes_in_by() -> None:
    """Cut into the inner edge from the back, as for glass: the width lies in the back."""
    text = CASE.format(at="").replace("6, depth: 8", "8, depth: 6")
    text = text.replace(
        "[side back edge inner face, top back edge inner face]", "[side inner face back edge]"
    )
    text = text.replace(
        "width: fits back_rabbet, length: fits back_rabbet", "width: fits back_rabbet, length: 500"
    )
    text = text.replace("mark: K, ", "mark: K, at: [between L and R, 244, between B and T], ")
    assert plan_of(text).parts["backing"].width == 360 + 2 * (6 - 1)


def test_a_panel_as_thick_as_its_groove_allows() -> None:
    text = frame().replace("thickness: frame.width - 0.2 mm", "thickness: fits frame")
    plan = plan_of(text.replace("    width: 6\n", "    width: 6\n    play: 0.1 mm\n"))
    assert plan.parts["panel"].thickness == 6 - Fraction(1, 5)
