"""The seed cupboard goes together: its joints, gaps and plays measured between boxes, in inches."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest

from content.standing import INCH, Box, Stand, Stands, both_solid, clashes, holds, reach

RIGHT, BACK, UP = 0, 1, 2
SHELVES = ("C/S1", "C/S2", "C/S3")
DADO, NOTCH = "shelf dado, dado", "shelf dado, notch"
GROOVE = "door frame, groove"
DOORS = ("LD", "RD")


def inches(length: Fraction) -> Fraction:
    return length / INCH


def test_no_two_parts_want_the_same_wood(in_cupboard: Stands) -> None:
    assert clashes(in_cupboard) == []


def test_a_clash_would_be_seen(in_cupboard: Stands) -> None:
    """Without its cuts a side is in the way of everything that is let into it."""
    bare = Stand("C/SL", "side", in_cupboard["C/SL"].box, ())
    assert {mark for mark in in_cupboard if mark != "C/SL" and both_solid(bare, in_cupboard[mark])} == {
        "C/CT", "C/CB", "C/S1", "C/S2", "C/S3", "C/HR", "C/BK",
    }  # fmt: skip


@pytest.mark.parametrize("side", ["C/SL", "C/SR"])
@pytest.mark.parametrize("shelf", SHELVES)
def test_a_shelf_reaches_into_its_dado(in_cupboard: Stands, shelf: str, side: str) -> None:
    board, upright = in_cupboard[shelf], in_cupboard[side]
    dado = upright.cut(DADO, reaching=board.box)
    assert inches(reach(board, upright, RIGHT)) == Fraction(7, 32)
    assert inches(dado[RIGHT][1] - dado[RIGHT][0]) == Fraction(1, 4)
    assert board.box[UP] == dado[UP], "it rests on the lower wall and fits under the upper one"


@pytest.mark.parametrize("shelf", SHELVES)
def test_a_dado_stops_behind_the_front_of_its_shelf(in_cupboard: Stands, shelf: str) -> None:
    front_of_shelf = in_cupboard[shelf].box[BACK][0]
    dado = in_cupboard["C/SL"].cut(DADO, reaching=in_cupboard[shelf].box)
    notch = in_cupboard[shelf].cut(NOTCH, reaching=in_cupboard["C/SL"].box)
    assert inches(dado[BACK][0] - front_of_shelf) == Fraction(3, 8)
    assert inches(notch[BACK][1] - dado[BACK][0]) == Fraction(3, 8), "the bit's round end is half of 3/4 in"


def test_cuts_of_the_sides_are_on_the_inside(in_cupboard: Stands) -> None:
    left, right = in_cupboard["C/SL"], in_cupboard["C/SR"]
    assert all(box[RIGHT][1] == left.box[RIGHT][1] for _, box in left.cuts)
    assert all(box[RIGHT][0] == right.box[RIGHT][0] for _, box in right.cuts)


@pytest.mark.parametrize("side", ["C/SL", "C/SR"])
@pytest.mark.parametrize("end", ["C/CT", "C/CB"])
def test_top_and_bottom_lie_in_their_corners(in_cupboard: Stands, end: str, side: str) -> None:
    assert inches(reach(in_cupboard[end], in_cupboard[side], RIGHT)) == Fraction(3, 8)
    assert in_cupboard[end].box[BACK] == in_cupboard[side].box[BACK]


def test_the_case_is_flush_above_and_below(in_cupboard: Stands) -> None:
    assert in_cupboard["C/CT"].box[UP][1] == in_cupboard["C/SL"].box[UP][1] == in_cupboard["C/SR"].box[UP][1]
    assert in_cupboard["C/CB"].box[UP][0] == in_cupboard["C/SL"].box[UP][0] == in_cupboard["C/SR"].box[UP][0]


@pytest.mark.parametrize("side", ["C/SL", "C/SR"])
def test_the_hanging_rail_is_housed_and_carries_the_top(in_cupboard: Stands, side: str) -> None:
    rail, housing = in_cupboard["C/HR"], in_cupboard[side].cut("housing for the hanging rail, groove")
    assert inches(reach(rail, in_cupboard[side], RIGHT)) == Fraction(7, 32)
    assert rail.box[UP] == housing[UP]
    assert rail.box[BACK] == housing[BACK]
    assert rail.box[UP][1] == in_cupboard["C/CT"].box[UP][0]
    assert rail.box[BACK][1] == in_cupboard["C/BK"].box[BACK][0]


@pytest.mark.parametrize(
    ("around", "direction"), [("C/SL", RIGHT), ("C/SR", RIGHT), ("C/CT", UP), ("C/CB", UP)]
)
def test_the_back_lies_in_its_rabbet(in_cupboard: Stands, around: str, direction: int) -> None:
    back, rabbet = in_cupboard["C/BK"], in_cupboard[around].cut("rabbet for the back, rabbet")
    assert inches(reach(back, in_cupboard[around], direction)) == Fraction(11, 32)
    assert inches(rabbet[direction][1] - rabbet[direction][0]) == Fraction(3, 8)
    below_the_edge = in_cupboard[around].box[BACK][1] - back.box[BACK][1]
    assert below_the_edge == INCH / 4 - Fraction(52, 10)


@pytest.mark.parametrize("lip", ["C/L1", "C/L2", "C/L3", "C/LB"])
def test_a_lip_is_free_of_the_sides_and_stands_above_its_floor(in_cupboard: Stands, lip: str) -> None:
    box = in_cupboard[lip].box
    floor = in_cupboard[{"C/LB": "C/CB"}.get(lip, lip.replace("L", "S"))].box
    assert inches(box[RIGHT][0] - in_cupboard["C/SL"].box[RIGHT][1]) == Fraction(1, 32)
    assert inches(in_cupboard["C/SR"].box[RIGHT][0] - box[RIGHT][1]) == Fraction(1, 32)
    assert inches(box[UP][1] - floor[UP][1]) == Fraction(3, 4)
    assert inches(box[BACK][0] - in_cupboard["LD/H"].box[BACK][1]) == Fraction(1, 8)
    assert lip == "C/LB" or box[BACK][1] == floor[BACK][0], "glued to the shelf's front edge"


def test_packets_have_room(in_cupboard: Stands) -> None:
    floors = [in_cupboard[mark].box[UP] for mark in ("C/CB", "C/S1", "C/S2", "C/S3", "C/CT")]
    clear = [inches(upper[0] - lower[1]) for lower, upper in pairwise(floors)]
    assert clear == [6, 6, 6, Fraction(15, 2)], "4 1/2 in packets with 1 1/2 in for fingers; jars on top"
    assert inches(in_cupboard["C/BK"].box[BACK][0] - in_cupboard["C/L1"].box[BACK][1]) == 7
    inside = inches(in_cupboard["C/SR"].box[RIGHT][0] - in_cupboard["C/SL"].box[RIGHT][1])
    assert inside == 8 * (Fraction(13, 4) + Fraction(1, 4))


@pytest.mark.parametrize("door", DOORS)
@pytest.mark.parametrize("rail", ["T", "B"])
@pytest.mark.parametrize("stile", ["H", "M"])
def test_a_tongue_fills_its_groove_but_for_its_play(
    in_cupboard: Stands, door: str, rail: str, stile: str
) -> None:
    bar, upright = in_cupboard[f"{door}/{rail}"], in_cupboard[f"{door}/{stile}"]
    groove = upright.cut(GROOVE)
    assert inches(reach(bar, upright, RIGHT)) == Fraction(13, 32)
    assert inches(groove[RIGHT][1] - groove[RIGHT][0]) == Fraction(7, 16)
    cheeks = bar.all_cuts("door frame, tongue", reaching=upright.box)
    between = (min(box[BACK][1] for box in cheeks), max(box[BACK][0] for box in cheeks))
    assert between == groove[BACK], "as thick as the groove is wide, and in line with it"


@pytest.mark.parametrize("door", DOORS)
def test_a_panel_has_room_to_move(in_cupboard: Stands, door: str) -> None:
    panel = in_cupboard[f"{door}/P"].box
    for stile in "HM":
        groove = in_cupboard[f"{door}/{stile}"].cut(GROOVE)
        assert inches(_room_left(panel, groove, RIGHT)) == Fraction(1, 8)
        assert inches(reach(in_cupboard[f"{door}/P"], in_cupboard[f"{door}/{stile}"], RIGHT)) == Fraction(
            5, 16
        )
        assert inches(groove[BACK][1] - groove[BACK][0] - (panel[BACK][1] - panel[BACK][0])) == Fraction(
            1, 128
        )
    for rail in "TB":
        groove = in_cupboard[f"{door}/{rail}"].cut(GROOVE)
        assert inches(_room_left(panel, groove, UP)) == Fraction(1, 16)
        assert inches(reach(in_cupboard[f"{door}/P"], in_cupboard[f"{door}/{rail}"], UP)) == Fraction(3, 8)


def _room_left(panel: Box, groove: Box, direction: int) -> Fraction:
    """Between the panel and the bottom of the groove it stands in."""
    low, high = panel[direction]
    near, far = groove[direction]
    return low - near if near < low else far - high


def test_a_panel_that_swells_as_cherry_does_still_has_room(in_cupboard: Stands) -> None:
    """Tangential coefficient of black cherry 0.00248 (Wood Handbook, table 13-5), from 6 to 12 % moisture."""
    low, high = in_cupboard["LD/P"].box[RIGHT]
    swelling = (high - low) * Fraction("0.00248") * 6
    assert swelling < INCH / 4, "less than both plays together"
    assert swelling > INCH / 8, "so one play alone would not do"


def test_doors_hang_in_even_gaps(in_cupboard: Stands) -> None:
    left, right = _around(in_cupboard, "LD"), _around(in_cupboard, "RD")
    assert inches(left[RIGHT][0] - in_cupboard["C/SL"].box[RIGHT][1]) == Fraction(1, 16)
    assert inches(in_cupboard["C/SR"].box[RIGHT][0] - right[RIGHT][1]) == Fraction(1, 16)
    assert inches(right[RIGHT][0] - left[RIGHT][1]) == Fraction(1, 8)
    for door in (left, right):
        assert inches(door[UP][0] - in_cupboard["C/CB"].box[UP][1]) == Fraction(1, 16)
        assert inches(in_cupboard["C/CT"].box[UP][0] - door[UP][1]) == Fraction(1, 16)
        assert door[BACK][0] == in_cupboard["C/SL"].box[BACK][0], "flush with the case in front"


def _around(standing: Stands, door: str) -> Box:
    boxes = [stand.box for mark, stand in standing.items() if mark.startswith(f"{door}/")]
    spans = [(min(box[i][0] for box in boxes), max(box[i][1] for box in boxes)) for i in range(3)]
    return (spans[0], spans[1], spans[2])


def test_the_right_door_is_the_left_one_in_a_mirror(in_cupboard: Stands) -> None:
    whole = in_cupboard["C/SR"].box[RIGHT][1]
    for mark in (mark for mark in in_cupboard if mark.startswith("LD/")):
        left, right = in_cupboard[mark], in_cupboard[mark.replace("LD", "RD")]
        assert right.box == _mirrored(left.box, whole)
        assert sorted(box for _, box in right.cuts) == sorted(_mirrored(box, whole) for _, box in left.cuts)


def _mirrored(box: Box, whole: Fraction) -> Box:
    (low, high), back, up = box
    return ((whole - high, whole - low), back, up)


@pytest.mark.parametrize(("door", "side"), [("LD", "C/SL"), ("RD", "C/SR")])
@pytest.mark.parametrize("hinge", [0, 1], ids=["lower", "upper"])
def test_gains_for_a_hinge_face_each_other(in_cupboard: Stands, door: str, side: str, hinge: int) -> None:
    in_door, in_side = (
        sorted(in_cupboard[mark].all_cuts("hinge, mortise"), key=lambda box: box[UP])[hinge]
        for mark in (f"{door}/H", side)
    )
    assert in_door[UP] == in_side[UP]
    assert in_door[BACK] == in_side[BACK] == (Fraction(0), INCH / 2), (
        "open to the front, as far back as the leaf goes"
    )
    across = sorted([*in_door[RIGHT], *in_side[RIGHT]])
    assert inches(across[-1] - across[0]) == Fraction(3, 16), "both gains and the gap: the closed hinge"


def test_a_shelf_is_whole_where_it_shows(in_cupboard: Stands) -> None:
    """Its notches lie within what goes into the sides, so that its shoulders close."""
    shelf = in_cupboard["C/S2"]
    for side in ("C/SL", "C/SR"):
        assert holds(in_cupboard[side].box, shelf.cut(NOTCH, reaching=in_cupboard[side].box))
