"""Places said by relation come to what the arithmetic comes to; rows are even; slips are told."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.plan.model import Placed
from benchalong.plan.refused import Refused
from benchalong.plan.relations import parse_spot
from benchalong.reading.written import Joint, Place, Project
from plan.by_hand import assembly, messages, nested, part, placed, plan_of, project, sizes

LENGTH = st.fractions(min_value=1, max_value=900, max_denominator=64)


def post(mark: str, *at: str, **more: object) -> Place:
    """60 wide to the right, 20 thick to the back, 400 high."""
    return placed("post", (at[0], at[1], at[2]), mark=mark, **more)


def two_posts(*more: Place, **sections: object) -> Project:
    """One at 100, 50, 10; another that begins 500 further right."""
    first, second = post("A", "100", "50", "10"), post("B", "600", "50", "10")
    parts = {"post": part(), "block": part("30", "80", thickness="12")}
    return project(parts=parts, assemblies={"frame": assembly(first, second, *more)}, **sections)


def point(*at: int) -> tuple[Fraction, ...]:
    return tuple(map(Fraction, at))


def block(*at: str, **more: object) -> Place:
    """80 long to the right, 12 thick to the back, 30 high."""
    told = {"along": "right", "mark": "K"} | more
    return placed("block", (at[0], at[1], at[2]), **told)


def stands(written: Project) -> dict[str, Placed]:
    return {one.mark: one for one in plan_of(written).assemblies["frame"].placed}


def corner_of(written: Project, mark: str = "K") -> tuple[Fraction, ...]:
    """Left, front, bottom of a block whose length points right and whose face looks to the front."""
    at = stands(written)[mark].at
    return (at[0], at[1], at[2] - 30)


@pytest.mark.parametrize(
    ("at", "expected"),
    [
        (("right of A", "0", "0"), (160, 0, 0)),
        (("right of A by 3", "0", "0"), (163, 0, 0)),
        (("left of B", "0", "0"), (520, 0, 0)),
        (("left of B by 1.5", "0", "0"), (518.5, 0, 0)),
        (("0", "behind A", "0"), (0, 70, 0)),
        (("0", "in front of A by 2", "0"), (0, 36, 0)),
        (("0", "0", "on A"), (0, 0, 410)),
        (("0", "0", "above A by 5"), (0, 0, 415)),
        (("0", "0", "under A"), (0, 0, -20)),
        (("0", "0", "below A by 1"), (0, 0, -21)),
        (("against right of A", "against front of A", "against top of A"), (160, 38, 410)),
        (("against left of A by 4", "0", "against the bottom of A"), (16, 0, -20)),
        (("between A and B", "0", "0"), (340, 0, 0)),
        (("between B and A", "0", "0"), (340, 0, 0)),
        (("middle of A", "middle of A", "middle of A"), (90, 54, 195)),
        (("flush with left of A", "flush with back of A", "flush with top of A"), (100, 58, 380)),
        (("in from right of A by 2", "in from front of A by 3", "in from bottom of A by 4"), (78, 53, 14)),
    ],
)
def test_relations_worked_out_on_paper(at: tuple[str, ...], expected: tuple[float, ...]) -> None:
    assert corner_of(two_posts(block(*at))) == tuple(map(Fraction, expected))


@given(LENGTH, LENGTH, LENGTH, LENGTH)
@settings(max_examples=40, deadline=None)
def test_a_relation_is_the_arithmetic_it_spares(
    wide: Fraction, thick: Fraction, start: Fraction, room: Fraction
) -> None:
    """Said by relation and said in numbers, the same plan comes out, but for what the places follow from."""
    named = {"wide": f"{wide}", "thick": f"{thick}", "start": f"{start}", "room": f"{room}"}
    parts = {"post": part("wide", "400", thickness="thick"), "block": part("30", "80", thickness="12")}
    written = [
        (block("right of A by room", "behind A", "on A by thick")),
        (block("start + wide + room", "start + thick", "400 + thick")),
    ]
    found = [
        corner_of(
            project(
                parts=parts,
                sizes=sizes(**named),
                assemblies={"frame": assembly(post("A", "start", "start", "0"), one)},
            )
        )
        for one in written
    ]
    assert found[0] == found[1]


@given(st.integers(1, 9), LENGTH)
@settings(max_examples=40, deadline=None)
def test_spread_copies_have_equal_gaps_exactly(count: int, room: Fraction) -> None:
    far = 160 + 80 * count + room
    written = project(
        parts={"post": part(), "block": part("30", "80", thickness="12")},
        assemblies={
            "frame": assembly(
                post("A", "100", "50", "10"),
                post("B", f"{far}", "0", "0"),
                block("spread between A and B", "0", "0", count=count),
            )
        },
    )
    starts = [one.at[0] for one in plan_of(written).assemblies["frame"].placed if one.of == "block"]
    ends = [Fraction(160), *(start + 80 for start in starts)]
    gaps = {near - end for near, end in zip([*starts, far], ends, strict=True)}
    assert gaps == {room / (count + 1)}


@pytest.mark.parametrize(
    ("start", "expected"),
    [
        ("10 every 32", (10, 42, 74)),
        ("10 leaving 2", (10, 42, 74)),
        ("on A every 100", (410, 510, 610)),
        ("under A leaving 10", (-20, -60, -100)),
        ("flush with top of A every -40", (380, 340, 300)),
    ],
)
def test_a_row_goes_on_from_its_first(start: str, expected: tuple[int, ...]) -> None:
    written = two_posts(block("0", "0", start, mark="S", count=3))
    assert tuple(corner_of(written, f"S{n}")[2] for n in (1, 2, 3)) == expected


def test_a_row_is_counted_and_marked_and_keeps_its_place_in_the_file() -> None:
    written = two_posts(block("0", "0", "0 every 50", mark="S", count=3), block("9", "0", "0", mark="S2"))
    plan = plan_of(written)
    assert plan.parts["block"].count == 4
    assert plan.parts["block"].marks == ("S1", "S3", "S4", "S2")
    assert [one.index for one in plan.assemblies["frame"].placed] == [0, 1, 2, 2, 2, 3]


def test_it_may_stand_by_what_is_written_later_and_by_the_only_copy_of_a_part() -> None:
    written = two_posts(block("right of lone", "0", "0"), placed("lone", ("7", "0", "0")))
    written.parts["lone"] = part()  # type: ignore[index]
    assert corner_of(written) == point(67, 0, 0)


def test_it_may_stand_by_an_assembly_or_by_a_part_inside_it() -> None:
    inner = assembly(post("P", "0", "0", "0"), post("Q", "200", "0", "0"))
    for who, expected in (("IN", 1260), ("IN/P", 1060)):
        outer = assembly(nested("inner", ("1000", "0", "0"), mark="IN"), block(f"right of {who}", "0", "0"))
        parts = {"post": part(), "block": part("30", "80", thickness="12")}
        assert corner_of(project(parts=parts, assemblies={"inner": inner, "frame": outer})) == point(
            expected, 0, 0
        )


def test_in_a_mirrored_assembly_the_part_inside_is_where_the_mirror_puts_it() -> None:
    inner = assembly(post("P", "0", "0", "0"), post("Q", "200", "0", "0"))
    mirrored = nested("inner", ("1000", "0", "0"), mark="IN", mirror="left to right")
    parts = {"post": part(), "block": part("30", "80", thickness="12")}
    outer = assembly(mirrored, block("right of IN/Q", "0", "0"))
    assert corner_of(project(parts=parts, assemblies={"inner": inner, "frame": outer})) == point(1060, 0, 0)


@pytest.mark.parametrize(
    ("joint", "reach"),
    [
        (Joint("dado", ("post right face",), ("block left end",), sizes={"depth": "8", "end_play": "1"}), 7),
        (Joint("rabbet", ("post top end face",), ("block left end",), sizes={"depth": "9", "play": "2"}), 7),
    ],
)
def test_into_a_joint_goes_as_far_as_the_joint_takes(joint: Joint, reach: int) -> None:
    at = ("right of A into joint", "0", "0")
    written = two_posts(block(*at, face="up"), joints={"joint": joint})
    assert stands_left(written) == 160 - reach


def stands_left(written: Project) -> Fraction:
    from functools import reduce

    from benchalong.plan.draft import Draft
    from benchalong.plan.resolve import PASSES  # joints needn't make sense here, places must

    passes = PASSES[: [one.__name__ for one in PASSES].index("place_assemblies") + 1]
    draft = reduce(lambda so_far, step: step(so_far), passes, Draft(written))
    assert draft.problems == ()
    return next(one.at[0] for one in draft.assemblies["frame"].placed if one.mark == "K")


def test_a_place_follows_from_all_that_its_neighbour_follows_from() -> None:
    written = project(
        parts={"post": part("wide", "400"), "block": part("30", "long", thickness="12")},
        sizes=sizes(wide="60", long="80", start="5", gap="1", high="7"),
        assemblies={
            "frame": assembly(
                post("A", "start", "0", "high"),
                post("B", "600", "0", "0"),
                block("right of A by gap", "0", "0"),
                block("between A and B", "0", "0", mark="M"),
            )
        },
    )
    found = stands(written)
    assert found["K"].follows == ("gap", "start", "wide")
    assert found["M"].follows == ("long", "start", "wide")


@pytest.mark.parametrize(
    ("at", "message"),
    [
        (("right of C", "0", "0"), "nothing here is called C"),
        (("right of post", "0", "0"), "post stands here 2 times"),
        (("on A", "0", "0"), "“on” can't say how far to the right"),
        (("rihgt of A", "0", "0"), "“rihgt of A” says no place that is known"),
        (("betwen A and B", "0", "0"), "“betwen A and B” says no place that is known"),
        (("between A", "0", "0"), "“between A” can't be read as a place"),
        (("flush with top of A", "0", "0"), "“top” can't say how far to the right"),
        (("in from left of A", "0", "0"), "how far in from that side isn't said"),
        (("0", "0", "between A and B"), "A and B don't stand apart up, so nothing is between them"),
        (("0", "0", "middle of A by 3"), "this relation takes no more words"),
        (("right of K", "0", "0"), "K stands by itself: K -> K"),
        (("right of A into frame", "0", "0"), "frame is an assembly, not a joint"),
        (("right of A by", "0", "0"), "“right of A by” can't be read as a place"),
        (("right of A by widht", "0", "0"), "there is no size called widht"),
    ],
)
def test_a_slip_is_told_once(at: tuple[str, ...], message: str) -> None:
    assert messages(two_posts(block(*at))) == [message]


def test_two_that_stand_by_each_other_are_a_circle() -> None:
    written = two_posts(block("right of L", "0", "0"), block("left of K", "0", "0", mark="L"))
    assert messages(written) == ["K stands by itself: K -> L -> K"]


@pytest.mark.parametrize(
    ("at", "count", "message"),
    [
        (("0", "0", "0"), 3, "3 stand here in one and the same place"),
        (("spread between A and B", "0", "0"), 6, "6 of 80 mm don't fit into the 440 mm between A and B"),
        (("spread between A and B every 3", "0", "0"), 3, "what stands spread two has no step"),
    ],
)
def test_rows_that_make_no_sense(at: tuple[str, ...], count: int, message: str) -> None:
    assert messages(two_posts(block(*at, count=count))) == [message]


@pytest.mark.parametrize(
    "text", ["on", "behind - 3", "every * 2", "3/4 in + stile", "2 ft 6 in", "right + 1", "-(on)"]
)
def test_formulas_stay_formulas(text: str) -> None:
    spot = parse_spot(text, 0)
    assert not hasattr(spot.start, "how")
    assert spot.step is None


def test_a_relation_never_raises_anything_else() -> None:
    for text in (
        "on A by ",
        "between and and",
        "spread between A and",
        "against of A",
        "flush with the of A",
    ):
        with pytest.raises(Refused):
            parse_spot(text, 2)


def test_a_length_between_two_is_the_clear_opening() -> None:
    for said in ("between post", "between A and B"):
        written = two_posts(placed("rail", ("right of A", "0", "0"), along="right"))
        del written.parts["block"]  # type: ignore[attr-defined]
        written.parts["rail"] = part("40", said)  # type: ignore[index]
        assert plan_of(written).parts["rail"].length == 440


def test_between_whom_must_be_known_and_stand_apart() -> None:
    for said, message in (
        ("between pots", "no part or copy is called pots"),
        (
            "between A and A",
            "rail can't be measured between A and A: nothing of it stands on both sides",
        ),
    ):
        written = two_posts(placed("rail", ("right of A", "0", "0"), along="right"))
        del written.parts["block"]  # type: ignore[attr-defined]
        written.parts["rail"] = part("40", said)  # type: ignore[index]
        assert messages(written) == [message]
