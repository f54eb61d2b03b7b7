"""The step stool goes together, and follows the sheet it is made from."""

from __future__ import annotations

import shutil
from fractions import Fraction
from pathlib import Path

import pytest

from benchalong.plan.model import Circle
from benchalong.road import Travelled, travel
from content.conftest import CONTENT
from content.standing import Box, Stands, both_solid, clashes, reach, stands

RIGHT, BACK, UP = 0, 1, 2
TREADS = ("T", "W")
DADO = "dado for the tread, dado"


def test_no_two_parts_want_the_same_wood(in_stool: Stands) -> None:
    assert clashes(in_stool) == []
    assert both_solid(in_stool["T"], in_stool["T"]), "a part and itself do, so a clash would be seen"


@pytest.mark.parametrize("side", ["L", "R"])
@pytest.mark.parametrize("tread", TREADS)
def test_a_tread_stands_in_its_dado(in_stool: Stands, tread: str, side: str) -> None:
    board = in_stool[tread]
    dado = in_stool[side].cut(DADO, reaching=board.box)
    assert reach(board, in_stool[side], RIGHT) == Fraction("5.5")
    assert dado[RIGHT][1] - dado[RIGHT][0] == 6
    assert board.box[UP][0] - dado[UP][0] == dado[UP][1] - board.box[UP][1] == Fraction("0.05")
    assert board.box[BACK] == dado[BACK]


def test_the_dadoes_are_on_the_inside(in_stool: Stands) -> None:
    assert all(box[RIGHT][1] == in_stool["L"].box[RIGHT][1] for _, box in in_stool["L"].cuts)
    assert all(box[RIGHT][0] == in_stool["R"].box[RIGHT][0] for _, box in in_stool["R"].cuts)


def test_treads_are_carried_between_the_sides_too(in_stool: Stands) -> None:
    assert in_stool["S"].box[UP] == (in_stool["W"].box[UP][1], in_stool["T"].box[UP][0])
    assert in_stool["B"].box[UP][1] == in_stool["T"].box[UP][0]
    assert in_stool["F"].box[UP][1] == in_stool["W"].box[UP][0]
    for mark in "SBF":
        assert in_stool[mark].box[RIGHT] == (in_stool["L"].box[RIGHT][1], in_stool["R"].box[RIGHT][0])


def test_both_steps_are_equally_high(in_stool: Stands) -> None:
    assert in_stool["W"].box[UP][1] == 200
    assert in_stool["T"].box[UP][1] == 400


def test_it_stands_wider_than_what_is_stood_on(in_stool: Stands) -> None:
    """The feet reach in front of the top tread and behind it, so that it tips neither way."""
    feet, tread = in_stool["L"].box[BACK], in_stool["T"].box[BACK]
    assert tread[0] - feet[0] == 180
    assert feet[1] - tread[1] == 40


def test_every_screw_in_a_side_meets_the_middle_of_its_board(stool: Travelled, in_stool: Stands) -> None:
    depth = in_stool["L"].box[BACK][1]
    holes = [cut for cut in stool.plan.parts["side"].cuts if cut.kind == "hole"]
    assert len(holes) == 7
    for hole in holes:
        (prism,) = hole.takes
        assert isinstance(prism.shape, Circle)
        up, back = prism.shape.centre[0], depth - prism.shape.centre[1]
        (box,) = [in_stool[mark].box for mark in "TWSBF" if _is_before(in_stool[mark].box, up, back)]
        thin = BACK if box[BACK][1] - box[BACK][0] == stool.plan.stock["ply"].thickness else UP
        middle = sum(box[thin]) / 2
        assert (back if thin == BACK else up) == middle, hole.name


def _is_before(box: Box, up: Fraction, back: Fraction) -> bool:
    return box[BACK][0] < back < box[BACK][1] and box[UP][0] < up < box[UP][1]


def test_everything_follows_from_the_measured_sheet(tmp_path: Path, in_stool: Stands) -> None:
    thinner = _with_sheet(tmp_path, "17.2 mm")
    assert clashes(thinner) == []
    assert in_stool["R"].box[RIGHT][1] - thinner["R"].box[RIGHT][1] == Fraction("0.8")
    dado = thinner["L"].cut(DADO, reaching=thinner["T"].box)
    assert dado[UP][1] - dado[UP][0] == Fraction("17.3")
    assert thinner["S"].box[UP] == (thinner["W"].box[UP][1], thinner["T"].box[UP][0])


def _with_sheet(tmp_path: Path, measured: str) -> Stands:
    folder = tmp_path / "step-stool"
    shutil.copytree(CONTENT / "step-stool", folder)
    file = folder / "project.yaml"
    text = file.read_text(encoding="utf-8")
    assert text.count("measured: 17.6 mm") == 1
    file.write_text(text.replace("measured: 17.6 mm", f"measured: {measured}"), encoding="utf-8")
    return stands(travel(folder))
