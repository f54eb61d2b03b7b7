"""Doors, lids and drawers through their whole travel: what binds, and by how much."""

from __future__ import annotations

from math import hypot, radians, sin

import pytest

from benchalong.ground.problems import Finding
from benchalong.workings.clashes import CLASHES
from benchalong.workings.copies import COPIES
from benchalong.workings.hardware import HARDWARE
from benchalong.workings.moving import MOVING
from benchalong.workings.placed import PLACED
from benchalong.workings.solids import SOLIDS
from benchalong.workings.what_moves import Moving
from benchalong.workings.working import work_all
from workings.apart_shop import plan_of

WORKINGS = (COPIES, SOLIDS, PLACED, CLASHES, HARDWARE, MOVING)
THICK, GAP = 20, 2

HEAD = """
title: Cabinet
units: millimetre
piece: cabinet
stock: {oak: {kind: board, thickness: 20}}
stages: {all: {title: All}}
"""


def moved(text: str, steps: dict[str, str] | None = None) -> tuple[tuple[Moving, ...], tuple[Finding, ...]]:
    done = work_all(plan_of(text, steps), WORKINGS)
    return done[MOVING], done.findings


def hinge(stays: str, turns: str, more: str) -> str:
    return f"{{kind: hinge, cut_in: [{stays}], takes: [{turns}], length: 50, width: 15, {more}}}"


def cabinet(*, meeting_gap: str = "2", opens: str = "90 degrees", hinge_gap: int = GAP) -> str:
    """Two plain doors 300 wide between two sides 300 deep; front flush at y = 0."""
    return (
        HEAD
        + f"""
sizes: {{gap: {hinge_gap}, meet: {meeting_gap}, inside: 2*gap + 600 + meet}}
parts:
  side: {{stock: oak, width: 300, length: 500}}
  door: {{stock: oak, width: 300, length: 500}}
joints:
  hinges:
    {hinge("side back", "door edge a", f"closed: gap, gap: gap, opens: {opens}")}
assemblies:
  leaf: {{place: [{{part: door, mark: B, at: [0, 0, 0], along: up, face: front}}]}}
  cabinet:
    place:
      - {{part: side, mark: L, at: [0, 0, 0], along: up, face: left}}
      - {{part: side, mark: R, at: [20 + inside, 0, 0], along: up, face: right}}
      - {{assembly: leaf, mark: LD, at: [20 + gap, 0, 0]}}
      - {{assembly: leaf, mark: RD, at: [20 + gap + 300 + meet, 0, 0], mirror: left to right}}
"""
    )


OVERSHOOT = hypot(300 + GAP / 2, THICK) - (300 + GAP / 2)
"""How far a door's back corner swings out beyond its edge."""


@pytest.mark.parametrize("gap", ["0.2", "0.5"])
def test_doors_that_meet_too_closely_bind_on_each_other(gap: str) -> None:
    movings, (finding,) = moved(cabinet(meeting_gap=gap))
    assert [one.goes for one in movings] == ["LD", "RD"]
    assert (finding.code, finding.level, finding.subject) == ("turns-into", "fault", "leaf")
    assert float(finding.numbers["by"]) == pytest.approx(OVERSHOOT - float(gap), abs=0.003)
    assert finding.message.startswith(
        "Leaf LD doesn't open freely while both are shut: door LD/B runs into door RD/B by"
    )


def test_doors_with_room_to_swing_open_freely() -> None:
    movings, findings = moved(cabinet(meeting_gap="0.7"))
    assert findings == ()
    assert [one.first for one in movings] == [(), ()]


def drawer(*, width: int, opens: int = 90) -> str:
    """A drawer just behind a door that is hinged on the left; it slides on the right side, 1 mm off it."""
    return (
        HEAD
        + f"""
parts:
  side: {{stock: oak, width: 300, length: 500}}
  door: {{stock: oak, width: 300, length: 500}}
  box: {{stock: oak, thickness: 80, width: {width}, length: 250}}
joints:
  hinges:
    {hinge("L back", "door edge a", f"closed: 2, gap: 2, opens: {opens} degrees")}
  runner: {{kind: slide, cut_in: [R back], takes: [box right edge], travel: 200, clearance: 1}}
assemblies:
  cabinet:
    place:
      - {{part: side, mark: L, at: [0, 0, 0], along: up, face: left}}
      - {{part: side, mark: R, at: [324, 0, 0], along: up, face: right}}
      - {{part: door, mark: D, at: [22, 0, 0], along: up, face: front}}
      - {{part: box, mark: X, at: [{324 - 1 - width}, 25, 100], along: front, face: up}}
"""
    )


def test_a_drawer_that_the_open_door_stands_in_the_way_of() -> None:
    """Opened square, the door's 20 mm stand from 1 mm inside the left side, where the barrel is."""
    movings, (finding,) = moved(drawer(width=300))
    assert [(one.goes, one.first) for one in movings] == [("D", ()), ("X", ("D",))]
    assert (finding.code, finding.subject) == ("slides-into", "box")
    assert finding.numbers == {"by": 21 + THICK - (323 - 300)}
    assert finding.message == (
        "Box X doesn't slide out freely, even with door D wide open:"
        " box X runs into door D by 18 mm, 26 mm out"
    )


def test_a_drawer_waits_for_its_door_and_passes_it() -> None:
    movings, findings = moved(drawer(width=280))
    assert findings == ()
    assert movings[1].first == ("D",)


def lid(over: str) -> str:
    """A lid between uprights that stand up behind it; one leans over it by so much."""
    return (
        HEAD
        + f"""
parts:
  lid: {{stock: oak, width: 300, length: 400}}
  back: {{stock: oak, width: 100, length: 440}}
  upright: {{stock: oak, width: 40, length: 200}}
joints:
  hinges:
    {hinge("back back", "lid back edge", "closed: 1, gap: 1, barrel: up, opens: 90 degrees")}
assemblies:
  cabinet:
    place:
      - {{part: lid, mark: T, at: [20, 0, 80], along: right, face: up}}
      - {{part: back, mark: B, at: [0, 301, 0], along: right, face: back}}
      - {{part: upright, mark: U, at: [{over}, 200, 150], along: up, face: left}}
"""
    )


def test_a_lid_passes_its_upright_or_is_held_up_by_it() -> None:
    assert moved(lid("0"))[1] == ()
    (finding,) = moved(lid("3/2"))[1]
    assert (finding.code, finding.subject) == ("turns-into", "lid")
    assert float(finding.numbers["by"]) == pytest.approx(1.5)
    assert "lid T runs into upright U by 1.5 mm" in finding.message


def wing(width: int, opens: int = 10) -> str:
    """A wing on the outside of a side 300 deep that hangs on a wall, 30 mm before the wall; it turns back."""
    return (
        HEAD
        + f"""
parts:
  side: {{stock: oak, width: 300, length: 500}}
  wing: {{stock: oak, width: {width}, length: 500}}
joints:
  hinges:
    {hinge("side face", "wing edge a", f"closed: 2, gap: 2, barrel: back, opens: {opens} degrees")}
assemblies:
  cabinet:
    place:
      - {{part: side, mark: R, at: [0, 0, 0], along: up, face: right}}
      - {{part: wing, mark: W, at: [22, 250, 0], along: up, face: front}}
"""
    )


HANG = {"01-hang.md": "stage: all\ntitle: Hang\ndoes:\n  - hang: cabinet"}


def test_a_wing_turned_too_far_meets_the_wall() -> None:
    (finding,) = moved(wing(300), HANG)[1]
    assert (finding.code, finding.subject) == ("turns-into-wall", "wing")
    assert float(finding.numbers["by"]) == pytest.approx(301 * sin(radians(10)) - 30, abs=0.001)
    assert moved(wing(300))[1] == ()
    assert moved(wing(170), HANG)[1] == ()


def test_a_stay_holds_what_would_turn_too_far() -> None:
    arm = "arm: {kind: stay, cut_in: [side face], takes: [wing edge a], opens: 5 degrees, apart: 2}"
    assert moved(wing(300).replace("assemblies:", f"  {arm}\nassemblies:", 1), HANG)[1] == ()


def two_on_a_post(*, apart: int, opens: str = "120 degrees") -> str:
    """Doors 300 wide on either side of one post in the middle; open, they lean towards each other."""
    return (
        HEAD
        + f"""
sizes: {{apart: {apart}, gap: 2}}
parts:
  post: {{stock: oak, width: 60, length: 500, thickness: apart}}
  door: {{stock: oak, width: 300, length: 500}}
joints:
  hinges: {{kind: hinge, cut_in: [post face, post back], takes: [door edge b], length: 50, width: 15,
    closed: gap, gap: gap, opens: {opens}}}
assemblies:
  leaf: {{place: [{{part: door, mark: B, at: [0, 0, 0], along: up, face: front}}]}}
  cabinet:
    place:
      - {{part: post, mark: P, at: [302, 0, 0], along: up, face: left}}
      - {{assembly: leaf, mark: LD, at: [0, 0, 0]}}
      - {{assembly: leaf, mark: RD, at: [302 + apart + 2, 0, 0], mirror: left to right}}
"""
    )


def test_two_that_swing_to_each_other_are_tried_both_open() -> None:
    """At 120 degrees each leans 300 * sin 30 = 150 over the post: 40 wide, the two cross."""
    movings, findings = moved(two_on_a_post(apart=40))
    assert [one.first for one in movings] == [(), ()]
    (finding,) = findings
    assert (finding.code, finding.level) == ("open-into-open", "doubt")
    assert finding.message.startswith(
        "Leaf LD doesn't open freely while leaf RD is open: door LD/B runs into"
    )


@pytest.mark.parametrize(("apart", "opens"), [(400, "120 degrees"), (40, "88 degrees")])
def test_and_left_alone_where_they_pass(apart: int, opens: str) -> None:
    assert moved(two_on_a_post(apart=apart, opens=opens))[1] == ()
