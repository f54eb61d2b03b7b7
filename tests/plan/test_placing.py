"""Where parts and assemblies stand: turns, mirrors, marks and counts."""

from __future__ import annotations

from fractions import Fraction
from itertools import product

import pytest

from benchalong.ground.lengths import Point3
from benchalong.plan.turns import MIRRORS, UNTURNED, WAYS, after, are_square, turn_of_part, turned
from benchalong.plan.walk import Standing, walk
from benchalong.reading.written import Assembly, Project
from plan.by_hand import assembly, messages, nested, part, placed, plan_of, project

SQUARE = [(along, face) for along, face in product(WAYS, WAYS) if are_square(along, face)]


def point(x: int, y: int, z: int) -> Point3:
    return (Fraction(x), Fraction(y), Fraction(z))


POINT = point(1, 2, 3)


def test_with_the_length_up_and_the_face_to_the_front_edge_a_is_on_the_left() -> None:
    """Along, across and down of the part, in the room: up, to the right, to the back."""
    assert turned(POINT, turn_of_part("up", "front")) == point(2, 3, 1)


@pytest.mark.parametrize(
    ("along", "face", "expected"),
    [
        ("right", "front", (1, 3, -2)),  # edge a on top
        ("left", "front", (-1, 3, 2)),  # end b on the left, edge a below
        ("down", "front", (-2, 3, -1)),
        ("up", "back", (-2, -3, 1)),
        ("right", "up", (1, -2, -3)),  # a shelf: edge a at the back
        ("left", "up", (-1, 2, -3)),  # edge a at the front
        ("up", "left", (3, -2, 1)),  # a left-hand side: edge a at the back
        ("back", "up", (2, 1, -3)),
    ],
)
def test_turns_worked_out_on_paper(along: str, face: str, expected: tuple[int, int, int]) -> None:
    assert turned(POINT, turn_of_part(along, face)) == point(*expected)


@pytest.mark.parametrize(("along", "face"), SQUARE)
def test_a_turn_points_the_length_and_turns_the_face_and_is_no_mirror(along: str, face: str) -> None:
    turn = turn_of_part(along, face)
    length, _, down = zip(*turn, strict=True)
    assert length == WAYS[along]
    assert tuple(-value for value in down) == WAYS[face]
    assert handedness(turn) == 1


def handedness(turn: tuple[tuple[int, int, int], ...]) -> int:
    (a, b, c), (d, e, f), (g, h, i) = turn
    return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)


def test_there_are_twenty_four_turns() -> None:
    assert len({turn_of_part(*pair) for pair in SQUARE}) == 24


@pytest.mark.parametrize("mirror", [mirror for mirror in MIRRORS if mirror])
def test_mirrors_change_hands_and_undo_themselves(mirror: str) -> None:
    assert handedness(MIRRORS[mirror]) == -1
    assert after(MIRRORS[mirror], MIRRORS[mirror]) == UNTURNED


def rail(**given: object) -> Project:
    """`rail` is 400 long, 60 wide, 20 thick."""
    return project(parts={"rail": part()}, **given)


def room(standing: Standing, written: Project) -> tuple[tuple[Fraction, ...], tuple[Fraction, ...]]:
    """The room a copy takes up: its corners turned and moved, one by one."""
    box = plan_of(written).parts[standing.of].box
    ends = [(Fraction(0), size) for size in box]
    corners = [turned((x, y, z), standing.turn) for x, y, z in product(*ends)]
    moved = [tuple(a + b for a, b in zip(corner, standing.at, strict=True)) for corner in corners]
    return tuple(map(min, zip(*moved, strict=True))), tuple(map(max, zip(*moved, strict=True)))


def copies(written: Project) -> list[Standing]:
    plan = plan_of(written)
    assert plan.piece is not None
    return [standing for standing in walk(plan.assemblies, plan.piece) if standing.is_part]


@pytest.mark.parametrize("mirror", MIRRORS)
@pytest.mark.parametrize(("along", "face"), SQUARE)
def test_at_is_the_left_front_bottom_corner_whatever_the_turn(along: str, face: str, mirror: str) -> None:
    written = rail(
        assemblies={"box": assembly(placed("rail", ("1", "2", "3"), along=along, face=face, mirror=mirror))}
    )
    (copy,) = copies(written)
    least, greatest = room(copy, written)
    assert least == point(1, 2, 3)
    sizes = sorted(high - low for low, high in zip(least, greatest, strict=True))
    assert sizes == [20, 60, 400]


@pytest.mark.parametrize("mirror", MIRRORS)
@pytest.mark.parametrize(("along", "face"), SQUARE)
def test_along_and_face_say_how_a_mirrored_part_ends_up(along: str, face: str, mirror: str) -> None:
    written = rail(
        assemblies={"box": assembly(placed("rail", ("0", "0", "0"), along=along, face=face, mirror=mirror))}
    )
    (copy,) = copies(written)
    assert tuple(row[0] for row in copy.turn) == WAYS[along]
    assert tuple(-row[2] for row in copy.turn) == WAYS[face]


def test_assemblies_are_placed_by_their_room_even_when_they_begin_elsewhere() -> None:
    written = rail(
        assemblies={
            "door": assembly(placed("rail", ("-10", "5", "7")), placed("rail", ("90", "5", "7"))),
            "box": assembly(
                nested("door", ("0", "0", "0"), mark="L"),
                nested("door", ("500", "0", "0"), mark="R", mirror="left to right"),
            ),
        }
    )
    rooms = {copy.mark: room(copy, written)[0] for copy in copies(written)}
    assert {mark: int(least[0]) for mark, least in rooms.items()} == {
        "L/R1": 0,
        "L/R2": 100,
        "R/R1": 600,
        "R/R2": 500,
    }
    assert {least[1:] for least in rooms.values()} == {(Fraction(0), Fraction(0))}
    hands = {copy.mark: handedness(copy.turn) for copy in copies(written)}
    assert hands == {"L/R1": 1, "L/R2": 1, "R/R1": -1, "R/R2": -1}


@pytest.mark.parametrize("mirror", MIRRORS)
@pytest.mark.parametrize(("along", "face"), SQUARE)
def test_along_and_face_say_how_a_part_ends_up_mirrored_or_not(along: str, face: str, mirror: str) -> None:
    """Left and right sides of a case: the right one is the left one mirrored, and its face looks right."""
    written = rail(assemblies={"box": assembly(placed("rail", along=along, face=face, mirror=mirror))})
    length, _, down = zip(*copies(written)[0].turn, strict=True)
    assert length == WAYS[along]
    assert tuple(-value for value in down) == WAYS[face]
    assert handedness(copies(written)[0].turn) == (-1 if mirror else 1)


def test_mirrored_twice_is_not_mirrored() -> None:
    written = rail(
        assemblies={
            "door": assembly(placed("rail", mirror="left to right")),
            "box": assembly(nested("door", mirror="left to right")),
        }
    )
    assert handedness(copies(written)[0].turn) == 1


def test_counts_multiply_through_assemblies() -> None:
    written = rail(
        assemblies={
            "box": assembly(nested("door", mark="A"), nested("door", mark="B"), placed("rail", mark="X")),
            "door": assembly(placed("rail", mark="H"), placed("rail", mark="M")),
        }
    )
    made = plan_of(written).parts["rail"]
    assert (made.count, made.marks) == (5, ("A/H", "A/M", "B/H", "B/M", "X"))
    assert plan_of(written).piece == "box"


def test_marks_are_made_from_names_where_none_are_given() -> None:
    written = project(
        parts={"door_rail": part(), "side": part(mark="Q"), "rail": part()},
        assemblies={
            "box": assembly(
                *(placed(of) for of in ("door_rail", "door_rail", "side", "rail")),
                placed("rail", mark="R1"),
                placed("rail"),
            )
        },
    )  # fmt: skip
    plan = plan_of(written)
    assert [placed.mark for placed in plan.assemblies["box"].placed] == ["DR1", "DR2", "Q", "R2", "R1", "R3"]


def test_unplaced_parts_are_counted_by_hand_and_numbered_after_their_mark() -> None:
    plan = plan_of(
        project(
            parts={"peg": part(count=3, mark="P"), "lid": part(count=1, mark="L"), "wedge": part(count=4)}
        )
    )
    assert plan.parts["peg"].marks == ("P1", "P2", "P3")
    assert plan.parts["lid"].marks == ("L",)
    assert (plan.parts["wedge"].count, plan.parts["wedge"].marks) == (4, ())
    assert plan.piece is None


REFUSED: list[tuple[dict[str, Assembly], list[str]]] = [
    (
        {"box": assembly(placed("rail", along="up", face="up"))},
        ["the length can't point up while the face looks up"],
    ),
    ({"box": assembly(placed("rial"))}, ["there is no part called rial"]),
    ({"box": assembly(nested("bix"), placed("rail"))}, ["there is no assembly called bix"]),
    ({"box": assembly(nested("rail"), placed("rail"))}, ["rail is a part, not an assembly"]),
    ({"box": assembly(placed("box"), placed("rail"))}, ["box is an assembly, not a part"]),
    ({"box": assembly(nested("box"), placed("rail"))}, ["box stands in itself: box -> box"]),
    (
        {"box": assembly(placed("rail")), "tray": assembly(placed("rail"))},
        ["box and tray stand in no other assembly"],
    ),
    (
        {"box": assembly(placed("rail", mark="A"), placed("rail", mark="A"))},
        ["the mark A is given twice in box"],
    ),
    ({"box": assembly(placed("rail", mark="A/B"))}, ["the mark A/B has a / in it"]),
    ({"box": assembly(placed("rail", ("0", "nobody", "0")))}, ["there is no size called nobody"]),
    (
        {"box": assembly(placed("rail", ("0", "1 in * 1 in", "0")))},
        ["this comes to an area, not to a length"],
    ),
    (
        {"box": assembly(placed("rail"), nested("empty")), "empty": assembly()},
        ["nothing stands in the assembly empty"],
    ),
]


@pytest.mark.parametrize(("assemblies", "expected"), REFUSED)
def test_what_can_not_be_placed(assemblies: dict[str, Assembly], expected: list[str]) -> None:
    assert messages(rail(assemblies=assemblies)) == expected


def test_what_stands_nowhere_in_the_piece() -> None:
    box, tray = assembly(placed("rail")), assembly(placed("rail"))
    assert messages(rail(piece="box", assemblies={"box": box, "tray": tray})) == [
        "tray stands nowhere in the piece box"
    ]
    assert messages(rail(piece="bix", assemblies={"box": box})) == ["there is no assembly called bix"]


def test_a_count_that_differs_from_the_places() -> None:
    assemblies = {"box": assembly(placed("rail"), placed("rail"))}
    assert messages(project(parts={"rail": part(count=2)}, assemblies=assemblies)) == []
    assert messages(project(parts={"rail": part(count=3)}, assemblies=assemblies)) == [
        "rail stands in 2 places, and its count says 3"
    ]


def test_neither_place_nor_count() -> None:
    assert messages(rail()) == ["rail stands in no assembly and has no count"]


def test_assemblies_that_multiply_beyond_all_measure_are_refused_before_they_are_counted_out() -> None:
    doubled: dict[str, Assembly] = {"a0": assembly(placed("rail"), placed("rail"))}
    for number in range(1, 60):
        inner = f"a{number - 1}"
        doubled[f"a{number}"] = assembly(nested(inner), nested(inner))
    (message,) = messages(rail(assemblies=doubled))
    assert message == f"the piece comes to {2**60} copies of parts"


def test_deep_nesting_is_no_trouble() -> None:
    nest: dict[str, Assembly] = {"a0": assembly(placed("rail"))}
    for number in range(1, 1500):
        nest[f"a{number}"] = assembly(nested(f"a{number - 1}", mirror="left to right"))
    assert plan_of(rail(assemblies=nest)).parts["rail"].count == 1
