"""A joint is worked out in the smallest assembly that holds both its sides, wherever that stands."""

from __future__ import annotations

import pytest

from plan.joints.shop import plan_of, shape_cuts

PROJECT = """
title: Cupboard
units: millimetre
piece: all
stock: {oak: {kind: board, thickness: 20}}
parts:
  post: {stock: oak, length: 400, width: 60}
  rail: {stock: oak, length: 200, width: 60}
joints:
  frame: {kind: tongue and groove, cut_in: [WHO], takes: [rail end a], depth: 10, end_play: 0 ONLY}
assemblies:
  door:
    place:
      - {part: post, mark: H, at: [0, 0, 0], along: up, face: front}
      - {part: rail, mark: T, at: [50, 0, 300], along: right, face: front}
  flap:
    place:
      - {part: post, mark: H, at: [0, 0, 0], along: up, face: front}
      - {part: rail, mark: T, at: [50, 0, 100], along: right, face: front}
  loose: {place: [{part: post, mark: H, at: [0, 0, 0], along: up, face: front}]}
  all:
    place:
      - {assembly: door, mark: A, at: [0, 0, 0]}
      - {assembly: door, mark: B, at: [1000, 0, 0], mirror: left to right}
      - {assembly: flap, mark: C, at: [2000, 0, 0]}
      - {assembly: loose, mark: D, at: [3000, 0, 0]}
"""


def grooved(who: str, only: str = "") -> set[str]:
    """The marks of all posts that get a groove."""
    plan = plan_of(PROJECT.replace("WHO", who).replace("ONLY", only and f", only: {only}"))
    assert {meeting.cut_in.copy for meeting in plan.joints["frame"].meetings} == {
        mark for mark in plan.parts["post"].marks if shape_cuts(plan, mark)
    }
    return {mark for mark in plan.parts["post"].marks if shape_cuts(plan, mark)}


@pytest.mark.parametrize(
    ("who", "marks"),
    [
        ("post inner edge", {"A/H", "B/H", "C/H"}),
        ("door/H inner edge", {"A/H", "B/H"}),
        ("flap/H edge b", {"C/H"}),
        ("A/H edge b", {"A/H"}),
        ("B/H edge b", {"B/H"}),
        ("all/C/H edge b", {"C/H"}),
    ],
)
def test_a_name_means_its_copies(who: str, marks: set[str]) -> None:
    assert grooved(who) == marks


def test_only_these_copies() -> None:
    assert grooved("post inner edge", "[flap/H, flap/T]") == {"C/H"}


def test_meetings_say_the_smallest_assembly() -> None:
    plan = plan_of(PROJECT.replace("WHO", "post inner edge").replace("ONLY", ""))
    found = {
        (m.assembly, m.cut_in.copy, m.takes.copy if m.takes else "") for m in plan.joints["frame"].meetings
    }
    assert found == {("door", "A/H", "A/T"), ("door", "B/H", "B/T"), ("flap", "C/H", "C/T")}
