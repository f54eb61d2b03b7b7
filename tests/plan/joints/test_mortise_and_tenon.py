"""Mortise and tenon: the mortise lies where the tenon sits, with the play that was asked for."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis.strategies import composite, sampled_from

from benchalong.plan.model import Turn
from benchalong.plan.turns import UNTURNED
from benchalong.workings.cut_check import check_cuts
from plan.joints.shop import (
    Board,
    Number,
    as_typed,
    assert_fits,
    assert_play,
    clashes,
    cut_sizes,
    eighths,
    joint_sizes,
    plan_of,
    project_text,
    shape_cuts,
    solid,
    turns,
    understood,
)

STILE = Board((400, 60, 22), along="up", face="front")
TAKES = "cut_in: [stile edge b], takes: [rail end a], kind: mortise and tenon"


def frame(joint: str, *, reach: Number, width: Number = 70, up: Number = 300, turn: Turn = UNTURNED) -> str:
    """A stile, and a rail that reaches so far into it."""
    rail = Board((300, width, 20), along="right", face="front", at=(60 - reach, 1, up))
    return project_text({"stile": STILE, "rail": rail}, f"{TAKES}, {joint}", turn)


@composite
def sizes(draw, tenon: str = "stub"):  # type: ignore[no-untyped-def]
    """(words of the joint, how far it reaches, play, the rail's width and place)."""
    play, end_play = draw(sampled_from([0, Fraction(1, 8), Fraction(1, 4)])), draw(eighths(0, 3))
    depth = draw(eighths(15, 45))
    width = draw(eighths(40, 90))
    words = f"tenon: {tenon}, play: {as_typed(play)}, thickness: {as_typed(draw(eighths(4, 10)))}"
    if tenon == "through":
        return words, 60, play, width
    return (
        f"{words}, depth: {as_typed(depth)}, end_play: {as_typed(end_play)}",
        depth - end_play,
        play,
        width,
    )


@given(sizes(), eighths(10, 300), turns)
@settings(max_examples=40, deadline=None)
def test_a_stub_tenon_has_its_play_on_cheeks_and_edges(given_sizes, up, turn) -> None:  # type: ignore[no-untyped-def]
    joint, reach, play, width = given_sizes
    plan = assert_fits(frame(joint, reach=reach, width=width, up=up, turn=turn))
    assert_play(plan, "L/stile", "L/rail", "up down back front", play, turn)


@given(sizes("through"), eighths(10, 300), turns)
@settings(max_examples=30, deadline=None)
def test_a_through_tenon_ends_flush(given_sizes, up, turn) -> None:  # type: ignore[no-untyped-def]
    joint, reach, play, width = given_sizes
    plan = assert_fits(frame(joint, reach=reach, width=width, up=up, turn=turn))
    assert_play(plan, "L/stile", "L/rail", "up", play, turn)
    assert cut_sizes(plan, "L/rail")[0]["length"] == 60


@pytest.mark.parametrize("end", ["top", "bottom"])
@given(sizes("haunched"), turns)
@settings(max_examples=30, deadline=None)
def test_a_haunch_stands_towards_the_outer_end(end, given_sizes, turn) -> None:  # type: ignore[no-untyped-def]
    joint, reach, play, width = given_sizes
    plan = assert_fits(
        frame(joint, reach=reach, width=width, up=400 - width if end == "top" else 0, turn=turn)
    )
    assert_play(plan, "L/stile", "L/rail", "down front" if end == "top" else "up back", play, turn)
    tenon, notch = shape_cuts(plan, "L/rail")
    # with the length to the right and the face to the front edge a is on top
    assert notch.surfaces == ("end a", "edge a" if end == "top" else "edge b")
    assert tenon.kind == "tenon"


def test_a_haunch_mortise_comes_out_at_the_end_of_the_stile() -> None:
    joint = "tenon: haunched, depth: 40, end_play: 1, thickness: 7, shoulder: 5"
    plan = assert_fits(frame(f"{joint}, haunch_length: 8, haunch_width: 20", reach=39, up=330))
    mortise, haunch = cut_sizes(plan, "L/stile")
    assert (mortise["at"], mortise["length"], mortise["depth"]) == (335, 45, 40)
    assert (haunch["at"], haunch["length"], haunch["depth"]) == (380, 20, 9)


def test_the_volume_of_a_tenoned_rail() -> None:
    """Its box less, at both ends, all but the tenon: W T L - 2 l (W T - w t)."""
    boards = {
        "stile": STILE,
        "rail": Board((300, 70, 20), along="right", face="front", at=(30, 1, 200)),
        "other": Board((400, 60, 22), along="up", face="front", at=(300, 0, 0)),
    }
    sides = "cut_in: [stile edge b, other edge a], takes: [rail both ends], kind: mortise and tenon"
    plan = assert_fits(project_text(boards, f"{sides}, thickness: 7, width: 50, depth: 31, end_play: 1"))
    expected = 70 * 20 * 300 - 2 * 30 * (70 * 20 - 50 * 7)
    assert solid(plan, "L/rail").volume == pytest.approx(expected, rel=1e-9)


def test_the_sizes_by_default_are_those_of_the_trade() -> None:
    plan = plan_of(frame("tenon: stub", reach=Fraction(39, 2)))
    sizes = joint_sizes(plan)
    assert sizes["thickness"] == 7, "a third of 20 to the nearest millimetre"
    assert (sizes["shoulder"], sizes["width"]) == (9, 52)
    assert (sizes["depth"], sizes["tenon_length"]) == (21, Fraction(39, 2)), "three times its thickness"


def test_across_is_told_from_the_face_of_the_tenoned_part() -> None:
    plan = assert_fits(frame("across: 3, thickness: 6, depth: 30, end_play: 0", reach=30))
    (mortise,) = cut_sizes(plan, "L/stile")
    assert mortise["across"] == 4, "the rail stands 1 back"


def test_a_tenon_stands_on_an_end() -> None:
    text = frame("depth: 30", reach=29).replace("rail end a", "rail edge a")
    assert understood(text)[1] == ["a mortise and tenon joint enters with an end, not with edge a"]


@pytest.mark.parametrize(
    ("joint", "code"),
    [
        ("depth: 60", "cut-goes-through"),
        ("depth: 90", "cut-partly-outside"),
        ("depth: 30, thickness: 30", "tenon-thicker-than-part"),
        ("depth: 30, width: 80", "tenon-wider-than-part"),
        ("depth: 1, end_play: 2", "cut-size-not-above-zero"),
        ("depth: 30, thickness: 0 mm", "cut-size-not-above-zero"),
    ],
)
def test_what_cant_be_made_is_found(joint: str, code: str) -> None:
    plan = plan_of(frame(joint, reach=20))
    assert code in [finding.code for finding in check_cuts(plan, None)[1]]  # type: ignore[arg-type]


DOOR = """
title: Door
units: inch
piece: door
stock: {oak: {kind: board, thickness: 3/4 in}}
parts:
  stile: {stock: oak, width: 2 1/4 in, length: 24 in}
  rail: {stock: oak, width: 2 1/4 in, length: 12 in + 2*frame.tenon_length}
joints:
  frame: {kind: mortise and tenon, tenon: haunched, cut_in: [stile inner edge], takes: [rail both ends]}
assemblies:
  door:
    place:
      - {part: stile, mark: L, at: [0, 0, 0], along: up, face: front}
      - {part: stile, mark: R, at: [12 in + stile.width, 0, 0], along: up, face: front, mirror: left to right}
      - {part: rail, mark: T, at: [reach, 0, stile.length - rail.width], along: right, face: front}
      - {part: rail, mark: B, at: [reach, 0, 0], along: right, face: front}
sizes: {reach: stile.width - frame.tenon_length}
stages: {all: {title: All}}
"""


def test_a_door_frame_with_haunches_needs_no_size_at_all() -> None:
    plan = plan_of(DOOR)
    assert clashes(plan) == []
    assert {mark: len(shape_cuts(plan, mark)) for mark in "LRTB"} == {"L": 4, "R": 4, "T": 4, "B": 4}
    assert [shape.id for shape in plan.shapes.values()] == ["stile", "rail"], (
        "the bottom rail is a top one turned"
    )
    inch = Fraction(127, 5)
    sizes = {name: size / inch for name, size in joint_sizes(plan, "frame").items()}
    assert (sizes["thickness"], sizes["haunch_width"]) == (Fraction(1, 4), Fraction(3, 4))
    assert (sizes["depth"], sizes["end_play"]) == (Fraction(3, 4), Fraction(1, 16))
