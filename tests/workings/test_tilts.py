"""What is turned after it is placed: the same wood, in another place, and all that reads it knows."""

from __future__ import annotations

import json
import re
import shutil
import tempfile
from dataclasses import replace
from fractions import Fraction
from math import cos, radians, sin
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.drawing.piece import piece_picture
from benchalong.plan.model import Plan
from benchalong.plan.tilts import about_point, after_tilt, carried_back, rows_of, tilted
from benchalong.plan.turns import UNTURNED
from benchalong.plan.walk import walk
from benchalong.publishing.glb import piece_glb
from benchalong.reading.written import Joint, Project, Turned
from benchalong.road import Travelled, travel
from benchalong.workings.clashes import CLASHES
from benchalong.workings.extent import EXTENT
from benchalong.workings.facing import Faces
from benchalong.workings.placed import PLACED, relation
from benchalong.workings.pose import pose
from benchalong.workings.solids import SOLIDS, Solid
from benchalong.workings.ways_out import WAYS_OUT
from faults.catalogue import all_cases, read_case
from plan.by_hand import assembly, messages, nested, part, placed, plan_of, project
from workings.independent import volume_of

ANGLES = st.fractions(min_value=-170, max_value=170, max_denominator=8).filter(lambda angle: angle % 90 != 0)
SIDES = ("front", "back", "left", "right", "top", "bottom")


def turned(degrees: object, seen_from: str = "front", about: str = "middle") -> Turned:
    return Turned(f"{degrees}", seen_from, about)


def one_rail(turn: Turned, **more: object) -> Project:
    """80 to the right, 20 to the back, 400 up, from 100, 200, 300."""
    rail = placed("rail", ("100", "200", "300"), turned=turn, mark="R", **more)
    return project(parts={"rail": part("80", "400")}, assemblies={"box": assembly(rail)})


def corners(plan: Plan, mark: str = "R") -> np.ndarray:
    """Of its box where it lies."""
    copy = next(copy for copy in plan.copies if copy.mark == mark)
    turn, at = pose(copy)
    box = [float(size) for size in plan.parts[copy.part].box]
    own = np.array([[x, y, z] for x in (0, box[0]) for y in (0, box[1]) for z in (0, box[2])])
    return np.asarray(own @ turn.T + at)


@pytest.mark.parametrize(
    ("seen_from", "way", "goes"),
    [
        ("front", (0, 0, 1), (1, 0, 0)),
        ("back", (0, 0, 1), (-1, 0, 0)),
        ("top", (0, 1, 0), (1, 0, 0)),
        ("bottom", (0, 1, 0), (-1, 0, 0)),
        ("right", (0, 0, 1), (0, 1, 0)),
        ("left", (0, 0, 1), (0, -1, 0)),
    ],
)
def test_a_clock_hand_goes_from_twelve_to_three(
    seen_from: str, way: tuple[int, int, int], goes: tuple[int, int, int]
) -> None:
    """What points up (to the back, seen from above) points to the right of who looks, a quarter later."""
    tilt = about_point(rows_of(Fraction(90), seen_from), (Fraction(0),) * 3)
    x, y, z = map(Fraction, way)
    assert tilted((x, y, z), tilt) == tuple(map(Fraction, goes))


@given(ANGLES, st.sampled_from(SIDES), st.sampled_from(("middle", "corner", *SIDES)))
@settings(max_examples=30, deadline=None)
def test_it_keeps_its_shape_and_what_it_turns_about_stays(
    angle: Fraction, seen_from: str, about: str
) -> None:
    plan = plan_of(one_rail(turned(angle, seen_from, about)))
    found = corners(plan)
    apart = np.linalg.norm(found[:, None] - found[None], axis=2)
    straight = corners(plan_of(one_rail(turned(0))))
    assert apart == pytest.approx(np.linalg.norm(straight[:, None] - straight[None], axis=2))
    if about == "middle":
        assert found.mean(axis=0) == pytest.approx([140, 210, 500])
    if about == "top":
        assert found[4:].mean(axis=0) == pytest.approx([140, 210, 700])
    if about == "corner":
        assert np.abs(found - [100, 200, 300]).sum(axis=1).min() == pytest.approx(0, abs=1e-9)


def test_worked_out_on_paper() -> None:
    """A rail of 80 x 400, 30 degrees clockwise about its corner, seen from the front."""
    found = corners(plan_of(one_rail(turned("30 degrees", about="corner"))))
    c, s = cos(radians(30)), sin(radians(30))
    expected = [(100 + x * c + z * s, 300 - x * s + z * c) for x in (0, 80) for z in (0, 400)]
    assert in_order(found[::2][:, [0, 2]]) == pytest.approx(in_order(np.array(expected)))


def in_order(points: np.ndarray) -> np.ndarray:
    """Row by row, the least first, however they were counted."""
    return np.array(sorted(np.round(points, 6).tolist()))


def test_right_angles_stay_whole_numbers_so_an_assembly_may_be_turned_round() -> None:
    inner = assembly(placed("rail", mark="R"), placed("rail", ("200", "0", "0"), mark="Q"))
    outer = assembly(nested("box", turned=turned(90, "top", "corner"), mark="A"))
    plan = plan_of(project(parts={"rail": part("80", "400")}, assemblies={"box": inner, "whole": outer}))
    assert [copy.tilt for copy in plan.copies] == [None, None]
    assert plan.assemblies["whole"].placed[0].turn == ((0, 1, 0), (-1, 0, 0), (0, 0, 1))
    low = corners(plan, "A/Q").min(axis=0)
    assert low == pytest.approx([0, -280, 0])


def test_what_stands_in_a_turned_assembly_is_square_to_what_stands_beside_it() -> None:
    inner = assembly(placed("rail", mark="R"), placed("rail", ("80", "0", "0"), mark="Q"))
    outer = assembly(
        nested("box", ("50", "0", "0"), turned=turned(25), mark="A"),
        placed("rail", ("900", "0", "0"), mark="S"),
    )
    joints = {"glue": Joint("butt", ("A/R right edge",), ("A/Q left edge",))}
    plan = plan_of(
        project(parts={"rail": part("80", "400")}, assemblies={"box": inner, "whole": outer}, joints=joints)
    )
    first, second, alone = plan.copies
    assert first.tilt == second.tilt != alone.tilt
    assert len(plan.joints["glue"].meetings) == 1
    assert second.at[0] - first.at[0] == 80


@given(ANGLES, ANGLES)
@settings(max_examples=20, deadline=None)
def test_a_turn_within_a_turn(inner_angle: Fraction, outer_angle: Fraction) -> None:
    """Worked out with floating numbers, one turn after the other; mirrored in between."""
    inner = assembly(
        placed("rail", ("10", "20", "30"), turned=turned(inner_angle, "right", "corner"), mark="R"),
        placed("rail", ("0", "0", "0"), mark="Q"),
    )
    outer = assembly(
        nested("box", mirror="left to right", turned=turned(outer_angle, "front", "corner"), mark="A")
    )
    plan = plan_of(project(parts={"rail": part("80", "400")}, assemblies={"box": inner, "whole": outer}))
    room = _room(plan, "box")
    own = np.array([[x, y, z] for x in (10, 90) for y in (20, 40) for z in (30, 430)], dtype=float)
    step = _seen_from_right(inner_angle, own, np.array([10.0, 20.0, 30.0]))
    mirrored = step * [-1, 1, 1] + [room[1][0] + room[0][0], 0, 0] - [room[0][0], *room[0][1:]]
    found = corners(plan, "A/R")
    expected = _seen_from_front(outer_angle, mirrored, np.zeros(3))
    assert in_order(found) == pytest.approx(in_order(expected), abs=1e-5)


def _room(plan: Plan, name: str) -> tuple[np.ndarray, np.ndarray]:
    from benchalong.plan.tilts import tilted_room
    from benchalong.workings.placed import room_at

    rooms = [
        tilted_room(room_at(plan.parts[one.of].box, one.turn, one.at), one.tilt)
        for one in walk(plan.assemblies, name)
        if one.is_part
    ]
    points = np.array([[[float(x) for x in corner] for corner in room] for room in rooms])
    return points[:, 0].min(axis=0), points[:, 1].max(axis=0)


def _seen_from_right(angle: Fraction, points: np.ndarray, about: np.ndarray) -> np.ndarray:
    c, s = cos(radians(angle)), sin(radians(angle))
    x, y, z = (points - about).T
    return np.asarray(np.column_stack([x, y * c + z * s, -y * s + z * c]) + about)


def _seen_from_front(angle: Fraction, points: np.ndarray, about: np.ndarray) -> np.ndarray:
    c, s = cos(radians(angle)), sin(radians(angle))
    x, y, z = (points - about).T
    return np.asarray(np.column_stack([x * c + z * s, y, -x * s + z * c]) + about)


@given(ANGLES)
@settings(max_examples=10, deadline=None)
def test_back_again_is_back_again(angle: Fraction) -> None:
    tilt = about_point(rows_of(angle, "left"), (Fraction(3), Fraction(5), Fraction(-7)))
    both = after_tilt(tilt, carried_back(tilt))
    assert both is not None
    assert all(abs(float(x)) < 1e-9 for x in both.at)


@pytest.mark.parametrize(
    ("turn", "message"),
    [
        (turned("10 mm"), "this comes to a length, not to an angle"),
        (turned("angel"), "there is no size called angel"),
    ],
)
def test_an_angle_that_is_none(turn: Turned, message: str) -> None:
    assert messages(one_rail(turn)) == [message]


def test_its_place_follows_from_the_angle() -> None:
    from plan.by_hand import sizes

    written = one_rail(turned("lean"))
    written = project(parts=written.parts, assemblies=written.assemblies, sizes=sizes(lean="12"))
    assert plan_of(written).assemblies["box"].placed[0].follows == ("lean",)


STAND = """
title: Splayed
units: millimetre
sizes: {lean: ANGLE}
stock:
  oak: {kind: board, thickness: 20}
parts:
  slat: {stock: oak, width: 60, length: 300}
  block: {stock: oak, width: 60, length: LONG, cuts: [CUTS]}
assemblies:
  stand:
    place:
      - {part: slat, mark: S, at: [0, 0, 0], along: up, face: front}
      - {part: block, mark: B, at: [AT], along: right, face: front, MORE}
stages: {all: {title: All}}
"""
TURNED = "turned: {clockwise: lean, seen_from: front}"


NOTCH = "{cut: notch, on: [end a, edge a], length: 30, width: 20}"


def stand(at: str, *, angle: object = 45, more: str = TURNED, long: int = 100, cuts: str = "") -> str:
    text = STAND.replace("ANGLE", f"{angle}").replace("AT", at).replace("MORE", more)
    return text.replace("LONG", f"{long}").replace("CUTS", cuts)


def travelled(text: str) -> Travelled:
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / "project.yaml").write_text(text, encoding="utf-8")
        return travel(Path(folder))


def said(text: str) -> list[str]:
    return [f"{one.code}: {one.message}" for one in travelled(text).worked.findings]


@given(ANGLES)
@settings(max_examples=8, deadline=None)
def test_a_turned_solid_keeps_its_volume(angle: Fraction) -> None:
    """As the independent sum has it; and of two that lie in each other aslant both see the same overlap."""
    found = travelled(stand("20, 5, 100", angle=angle, cuts=NOTCH))
    placed = found.worked[PLACED]
    slat, block = placed.lying
    whole = volume_of(block.part)
    assert whole == pytest.approx(60 * 100 * 20 - 30 * 20 * 20)
    one, other = relation(slat, block), relation(block, slat)
    assert float(placed.second(one).volume()) == pytest.approx(whole)
    first = float((placed.body(one.first) ^ placed.second(one)).volume())
    again = float((placed.body(other.first) ^ placed.second(other)).volume())
    assert first == pytest.approx(again, abs=1e-4)


def test_what_is_turned_into_another_clashes_and_says_how_deep() -> None:
    """A square of 60 on end is 30 * sqrt 2 wide from its middle; its corner stands 10 mm inside."""
    assert said(stand("60 + 30 mm * sqrt(2) - 10 - 30, 0, 100", long=60))[0] == (
        "parts-overlap: Block B, which isn't square to it, stands ≈ 10 mm into slat S"
        " (20 mm x ≈ 20 mm x ≈ 10 mm of wood: S ≈ 120 mm from end a, at edge b)"
    )


def test_beside_each_other_though_their_rooms_overlap_is_no_clash() -> None:
    """Its side passes the corner of the slat 1 mm away; the room it takes up reaches 20 mm over the slat."""
    text = stand("60 + 22 - 30, 0, 300 + 22 - 30", long=60)
    found = travelled(text)
    slat, block = found.worked[PLACED].lying
    assert slat.reach[1][0] > block.reach[0][0]
    assert slat.reach[1][2] > block.reach[0][2]
    assert not [one.code for one in found.worked.findings if one.code == "parts-overlap"]


def test_against_is_measured_on_the_wood_of_what_is_turned() -> None:
    text = stand("60 + 30 mm * sqrt(2) - 30 + 4, 0, 100", more=f"{TURNED}, touches: [S]", long=60)
    assert [one for one in said(text) if one.startswith("not-against")] == [
        "not-against: Block B should stand against slat S, and 4 mm is open"
    ]
    touching = text.replace("- 30 + 4,", "- 30,")
    assert not [one for one in said(touching) if one.startswith("not-against")]


def test_its_extent_is_that_of_its_own_corners() -> None:
    text = stand("0, 0, 0").replace(
        "      - {part: slat, mark: S, at: [0, 0, 0], along: up, face: front}\n", ""
    )
    extent = travelled(text.replace("  slat: {stock: oak, width: 60, length: 300}\n", "")).worked[EXTENT]
    assert extent is not None
    assert float(extent.piece.width) == pytest.approx(160 / 2**0.5)
    assert float(extent.piece.height) == pytest.approx(160 / 2**0.5)
    assert extent.piece.depth == 20


def test_a_joint_against_what_is_turned_says_that_it_gave_no_cut() -> None:
    joints = "joints: {glue: {kind: butt, cut_in: [slat right edge], takes: [block left end]}}\nassemblies:"
    text = stand("60, 0, 100", angle=10).replace("assemblies:", joints)
    assert (
        "joint-not-square: End a of block B isn't square to anything that the joint glue cuts:"
        " no cut was given, and nothing was compared" in said(text)
    )


def test_the_model_stands_where_the_wood_does() -> None:
    found = travelled(stand("90, 0, 100"))
    data = piece_glb(found.plan, found.worked) or b""
    nodes = json.loads(data[20 : 20 + int.from_bytes(data[12:16], "little")])["nodes"]
    matrix = np.array(next(node["matrix"] for node in nodes if node["name"] == "B")).reshape(4, 4).T
    turn, at = pose(next(copy for copy in found.plan.copies if copy.mark == "B"))
    assert matrix[:3, :3] == pytest.approx(turn)
    assert matrix[:3, 3] == pytest.approx(at / 1000)


def test_a_picture_shows_its_corner_where_the_wood_has_it() -> None:
    """The same piece, drawn once by its turn and once with its wood turned by hand, has the same lines."""
    found = travelled(stand("90, 0, 100"))
    made_solids = found.worked[SOLIDS]
    solids: dict[str, Solid] = {shape: made_solids[shape] for shape in made_solids}
    names = {"slat": "Slat", "block": "Block"}
    picture = piece_picture(found.plan.copies, solids, names=names, title="Stand")
    slat, block = found.plan.copies
    turn, at = pose(block)
    made = solids["block"]
    solids["block"] = replace(made, vertices=made.vertices @ turn.T + at, normals=made.normals @ turn.T)
    by_hand = replace(block, turn=UNTURNED, at=(Fraction(0),) * 3, tilt=None)
    again = piece_picture((slat, by_hand), solids, names=names, title="Stand")
    assert again.svg == picture.svg


CONTENT = Path(__file__).parents[2] / "content"


def test_the_loose_spline_of_the_sample_board_fits_its_two_slots() -> None:
    """Turned by 45 degrees into the mitre: against both walls of each slot, clear of both bottoms by the end
    play, and in nobody's way; the mitre opens square to itself."""
    found = travel(CONTENT / "joint-samples")
    placed, plan = found.worked[PLACED], found.plan
    play = next(size.length for size in plan.joints["splined"].sizes if size.name == "end_play")
    spline, faces = placed.by_mark["B2/S"], Faces(placed)
    for mark in ("B2/P", "B2/R"):
        looking = faces.between(relation(placed.by_mark[mark], spline))
        assert sorted({round(one.gap, 6) for one in looking}) == [0, float(play)]
        touching = [one for one in looking if abs(one.gap) < 1e-6]
        assert len(touching) == 2, "the two walls of the slot"
        assert sum(one.area for one in touching) > 900
    assert not [clash for clash in found.worked[CLASHES].clashes if "B2/S" in clash.marks]
    moves = found.worked[WAYS_OUT]["spline_sample"].moves
    assert all(max(map(abs, move.way)) == pytest.approx(2**-0.5) for move in moves)


def leaning(text: str, piece: str, turn: str) -> str:
    """The same project with the whole piece turned in one more assembly."""
    whole = f'  leaning: {{place: [{{assembly: {piece}, mark: W, turned: {turn}, at: ["0", "0", "0"]}}]}}\n'
    text = text.replace("\nassemblies:\n", f"\nassemblies:\n{whole}", 1)
    text = re.sub(r"parts: \[(\w+/\w+), (\w+/\w+)\]", r"parts: [W/\1, W/\2]", text)  # marks in matches
    return text.replace(f"\npiece: {piece}\n", "\npiece: leaning\n")


@pytest.mark.parametrize(
    ("name", "piece", "turn"),
    [
        ("step-stool", "stool", "{clockwise: 20, seen_from: top}"),
        ("seed-cupboard", "cupboard", "{clockwise: 33, seen_from: top}"),
    ],
)
def test_a_whole_example_that_leans_is_as_sound_as_upright(
    tmp_path: Path, name: str, piece: str, turn: str
) -> None:
    """Joints close, doors swing and parts come out in a leaning piece as in one that stands straight."""
    shutil.copytree(CONTENT / name, tmp_path / name)
    file = tmp_path / name / "project.yaml"
    file.write_text(leaning(file.read_text(encoding="utf-8"), piece, turn), encoding="utf-8")
    for note in (tmp_path / name / "steps").iterdir():  # what is hung is the whole, and that is `leaning` now
        text = note.read_text(encoding="utf-8")
        note.write_text(text.replace(f"hang: {piece}\n", "hang: leaning\n"), encoding="utf-8")
    upright, leans = travel(CONTENT / name), travel(tmp_path / name)
    assert all(copy.tilt is not None for copy in leans.plan.copies)
    assert codes(leans) == codes(upright)
    assert {m: len(j.meetings) for m, j in leans.plan.joints.items()} == {
        m: len(j.meetings) for m, j in upright.plan.joints.items()
    }


def test_a_stool_that_leans_by_20_degrees_is_sound_but_falls_over(tmp_path: Path) -> None:
    shutil.copytree(CONTENT / "step-stool", tmp_path / "stool")
    file = tmp_path / "stool" / "project.yaml"
    turn = "{clockwise: 20, seen_from: front}"
    file.write_text(leaning(file.read_text(encoding="utf-8"), "stool", turn), encoding="utf-8")
    assert {code for code, _ in codes(travel(tmp_path / "stool"), with_room=True)} == {
        "tips-over",
        "tips-when-stood-on",
    }


def codes(found: Travelled, *, with_room: bool = False) -> list[tuple[str, str]]:
    """What is found; without what hangs on floor and wall, to which a leaning piece lies otherwise."""
    return sorted(
        (one.code, one.subject)
        for one in found.worked.findings
        if with_room or not {"standing", "hanging", "hardware"} & set(one.place.path[1:2])
    )


@pytest.mark.parametrize("path", all_cases()[3::9], ids=lambda path: path.stem)
def test_a_planted_fault_is_found_in_a_leaning_piece_too(path: Path) -> None:
    text = read_case(path).project()
    upright = travelled(text)
    assert upright.plan.piece is not None
    leans = travelled(leaning(text, upright.plan.piece, "{clockwise: 17, seen_from: front}"))
    assert codes(leans) == codes(upright)
