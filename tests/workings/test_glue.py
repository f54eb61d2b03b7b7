"""Glue and clamps: areas in closed form against what the solids share, amounts worked by hand."""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from math import pi, sqrt
from pathlib import Path

import pytest

from benchalong.plan.model import Joint, Meeting
from benchalong.road import Travelled, travel
from benchalong.workings.facing import Faces
from benchalong.workings.glue import GLUE
from benchalong.workings.glue_faces import FACES, glue_face
from benchalong.workings.placed import PLACED, relation

CONTENT = Path(__file__).parents[2] / "content"
SAMPLES = (CONTENT / "joint-samples" / "project.yaml").read_text(encoding="utf-8")
OTHER_SIZES = {
    "as drawn": (),
    "thicker and narrower": (
        ("thick: {is: 20 mm", "thick: {is: 24 mm"),
        ("deep: {is: 60 mm", "deep: {is: 52 mm"),
    ),
    "thin boards thinner": (
        ("thin: {is: 12 mm", "thin: {is: 10 mm"),
        ("stick: {is: 40 mm", "stick: {is: 44 mm"),
    ),
}
CLOSED = 0.03
"""Mm: what is closer counts as touching."""


@cache
def samples(which: str) -> Travelled:
    text = SAMPLES
    for old, new in OTHER_SIZES[which]:
        assert text.count(old) == 1
        text = text.replace(old, new)
    return written(text)


def written(text: str) -> Travelled:
    from tempfile import TemporaryDirectory

    with TemporaryDirectory() as name:
        (Path(name) / "project.yaml").write_text(text, encoding="utf-8")
        return travel(Path(name))


def shared(travelled: Travelled, meeting: Meeting) -> float:
    """What the two solids touch over, in square mm."""
    placed = travelled.worked[PLACED]
    assert meeting.takes
    how = relation(placed.by_mark[meeting.cut_in.copy], placed.by_mark[meeting.takes.copy])
    return sum(facing.area for facing in Faces(placed).between(how) if facing.gap < CLOSED)


def holes(joint: Joint) -> float:
    """What two holes for dowels, screws or nails take from a flat joint."""
    sizes = {size.name: float(size.length) for size in joint.sizes}
    across = max(sizes.get("dowel", 0), sizes.get("clearance", 0), sizes.get("pilot", 0))
    return 2 * pi / 4 * across**2 if joint.kind == "butt" and "hardware" in joint.words else 0


def spline(joint: Joint, met: float) -> float:
    """The cheeks of a spline, which is no part of either side."""
    sizes = {size.name: float(size.length) for size in joint.sizes}
    return 2 * sizes.get("spline_width", 0) * met if joint.kind == "mitre" else 0


@pytest.mark.parametrize("which", OTHER_SIZES)
def test_the_closed_form_is_what_the_solids_share(which: str) -> None:
    travelled = samples(which)
    stick = float(travelled.plan.sizes["stick"].value.value)
    seen = set[str]()
    for joint in travelled.plan.joints.values():
        for meeting in joint.meetings:
            if joint.kind in FACES and meeting.takes and meeting.takes.part not in joint.floats:
                ours = float(glue_face(joint, meeting, travelled.worked[PLACED]))
                ours -= holes(joint) + spline(joint, stick * sqrt(2))
                assert ours == pytest.approx(shared(travelled, meeting), rel=0.005), joint.id
                seen.add(joint.kind)
    assert seen == set(FACES)


def test_a_door_frame_of_the_cupboard() -> None:
    """Tongues 13/32 in long, 5/16 in thick; rails 2 1/4 and 3 in wide, 3/4 in thick, each with a groove
    7/16 in deep along one edge; four ends of each."""
    glue = travel(CONTENT / "seed-cupboard").worked[GLUE]()
    inch = sum(
        2 * Fraction(13, 32) * (width - Fraction(7, 16)) + (Fraction(3, 4) - Fraction(5, 16)) * width
        for width in (Fraction(9, 4), Fraction(3))
    )
    area = 4 * inch * Fraction(127, 5) ** 2
    frame = glue.joints["frame"]
    assert abs(frame.area - area) <= 50
    assert float(frame.grams) == pytest.approx(float(area) / 1e6 * 180 * 4 / 3, abs=0.05)
    assert (frame.clamps, frame.assemblies) == (4, 2)
    assert "door_panel" in glue.not_counted


def test_what_screws_hold_needs_no_clamps_and_what_lies_in_a_dado_is_counted_there() -> None:
    joints = travel(CONTENT / "step-stool").worked[GLUE]().joints
    assert "side_tread_screws" not in joints
    assert joints["side_rail_screws"].clamps == 0
    assert joints["tread_dado"].clamps == 4


BOARDS = """\
title: Boards
units: millimetre
{more}
stock:
  wood: {{kind: board, species: black cherry, thickness: 20 mm{damp}}}
  other: {{kind: board, species: black cherry, thickness: 20 mm, moisture: 8 %}}
parts:
  board: {{stock: wood, width: 100, length: 900}}
  second: {{stock: other, width: 100, length: 900}}
joints:
  edges: {{kind: butt, cut_in: [board edge b], takes: [second edge a, board edge a]}}
  edges_too: {{kind: butt, cut_in: [second edge b], takes: [board edge a]}}
assemblies:
  top:
    place:
      - {{part: board, mark: A, at: [0, 200, 0], along: right, face: up}}
      - {{part: second, mark: B, at: [0, 100, 0], along: right, face: up}}
      - {{part: board, mark: C, at: [0, 0, 0], along: right, face: up}}
"""


def boards(more: str = "", damp: str = "") -> Travelled:
    return written(BOARDS.format(more=more, damp=damp))


def test_an_edge_joint_takes_glue_by_area_and_clamps_by_length() -> None:
    """900 x 20 mm at 180 g a square metre and a third: 4.3 g; clamps every 250 mm: 5."""
    travelled = boards()
    glue = travelled.worked[GLUE]()
    assert glue.joints["edges"].area == 900 * 20
    assert float(glue.joints["edges"].grams) == pytest.approx(0.018 * 180 * 4 / 3, abs=0.05)
    assert glue.joints["edges"].clamps == 5


def test_rates_are_the_projects_own() -> None:
    glue = boards("rates: {glue: 150, squeezed_out: 0 %, clamp_every: 450 mm}").worked[GLUE]()
    assert float(glue.joints["edges"].grams) == pytest.approx(0.018 * 150, abs=0.05)
    assert glue.joints["edges"].clamps == 3


@pytest.mark.parametrize(("damp", "told"), [("", 0), (", moisture: 10 %", 0), (", moisture: 12 %", 2)])
def test_boards_too_far_apart_in_moisture_are_told_only_where_it_is_known(damp: str, told: int) -> None:
    found = [one for one in boards(damp=damp).worked.findings if one.code == "glued-damp-with-dry"]
    assert len(found) == told
    assert all("4 points apart" in one.message for one in found)
