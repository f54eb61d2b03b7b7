"""Butt joints: holes that face each other, counted and placed the same from both ends."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import ceil

import pytest
from hypothesis import given, settings

from benchalong.ground.lengths import Point3
from benchalong.plan.joints.families.contact import spread
from benchalong.plan.model import Circle, Plan, Prism, Turn
from benchalong.plan.turns import UNTURNED, moved, turned
from plan.joints.shop import (
    Board,
    Number,
    as_typed,
    clashes,
    copy_called,
    eighths,
    plan_of,
    project_text,
    shape_cuts,
    turns,
)

SIDES = "kind: butt, cut_in: [side back], takes: [shelf end a]"
SCREW = "hardware: screw, every: 60, from_end: 20"


def corner(joint: str, *, wide: Number = 200, up: Number = 100, turn: Turn = UNTURNED) -> str:
    side = Board((400, 200, 20), along="up", face="left")
    shelf = Board((300, wide, 18), along="right", face="up", at=(20, 0, up))
    text = project_text({"side": side, "shelf": shelf}, f"{SIDES}, {joint}", turn)
    return f"{text}hardware: {{screw: {{name: Screw}}}}\n"


def holes(plan: Plan, mark: str) -> Iterator[tuple[Prism, Point3, Point3]]:
    """Each hole of a copy, with both ends of its axis in the piece."""
    copy = copy_called(plan, mark)
    for cut in shape_cuts(plan, mark):
        for prism in cut.takes:
            assert isinstance(prism.shape, Circle)
            (a, b), drawn = prism.shape.centre, ("along", "across", "down").index(prism.axis)
            for_axis = [[a, b], [a, b]]
            for n, at in enumerate((prism.start, prism.end)):
                for_axis[n].insert(drawn, at)
            ends = [moved(turned((p[0], p[1], p[2]), copy.turn), copy.at) for p in for_axis]
            yield prism, ends[0], ends[1]


@given(eighths(20, 200), eighths(5, 60), eighths(20, 90), turns)
@settings(max_examples=25, deadline=None)
def test_clearance_and_pilot_lie_in_one_line(
    wide: Fraction, from_end: Fraction, every: Fraction, turn: Turn
) -> None:
    joint = f"hardware: screw, every: {as_typed(every)}, from_end: {as_typed(from_end)}"
    plan = plan_of(corner(joint, wide=wide, turn=turn))
    assert clashes(plan) == []
    for hand in "LR":
        through, into = (list(holes(plan, f"{hand}/{name}")) for name in ("side", "shelf"))
        between = wide - 2 * from_end
        expected = 1 if between <= 0 or wide < 18 else ceil(between / every) + 1
        assert len(through) == len(into) == expected or wide <= 18
        mouths = {point for _, *ends in through for point in ends}
        assert all(mouths & set(ends) for _, *ends in into), "each pilot begins where a clearance hole ends"


@pytest.mark.parametrize(
    ("length", "from_end", "every", "count", "places"),
    [
        (100, 20, 60, None, [20, 80]),
        (100, 20, 59, None, [20, 50, 80]),
        (100, 20, 30, None, [20, 50, 80]),
        (100, 20, 10, 3, [20, 50, 80]),
        (100, 50, 10, None, [50]),
        (30, 20, 10, None, [15]),
        (100, 20, 10, 1, [50]),
        (30, 20, 10, 4, [15]),
    ],
)
def test_places_are_the_same_from_both_ends(
    length: int, from_end: int, every: int, count: int | None, places: list[int]
) -> None:
    found = spread(Fraction(length), from_end=Fraction(from_end), every=Fraction(every), count=count)
    assert list(found) == places
    assert [length - place for place in reversed(found)] == places


def test_a_screw_clears_one_side_and_holds_in_the_other() -> None:
    plan = plan_of(corner(f"{SCREW}, clearance: 5, pilot: 3, pilot_depth: 30"))
    clearance, pilot = (next(holes(plan, f"L/{name}"))[0] for name in ("side", "shelf"))
    assert clearance.end - clearance.start == 20, "right through"
    assert pilot.end - pilot.start == 30
    assert (clearance.shape.diameter, pilot.shape.diameter) == (5, 3)  # type: ignore[union-attr]
    assert shape_cuts(plan, "L/side")[0].surfaces == ("face",), "drilled from where the heads are"


@pytest.mark.parametrize(
    ("joint", "in_side", "in_shelf"),
    [
        ("glue: yes", 0, 0),
        (f"{SCREW}, clearance: 0 mm", 0, 4),
        (f"{SCREW}, pilot: 0 mm", 4, 0),
        (f"{SCREW}, count: 2", 2, 2),
        ("dowel: 8, dowel_depth: 12, every: 60, from_end: 20", 4, 4),
    ],
)
def test_what_is_drilled(joint: str, in_side: int, in_shelf: int) -> None:
    plan = plan_of(corner(joint))
    assert len(shape_cuts(plan, "L/side")) == in_side
    assert len(shape_cuts(plan, "L/shelf")) == in_shelf
    assert len(plan.joints["corner"].meetings) == 2


@given(eighths(30, 200), eighths(4, 15), turns)
@settings(max_examples=15, deadline=None)
def test_dowels_have_the_same_hole_in_both(wide: Fraction, deep: Fraction, turn: Turn) -> None:
    plan = plan_of(corner(f"dowel: 8, dowel_depth: {as_typed(deep)}", wide=wide, turn=turn))
    for hand in "LR":
        one, other = (list(holes(plan, f"{hand}/{name}")) for name in ("side", "shelf"))
        assert len(one) == len(other) > 0
        assert all(any(set(a[1:]) & set(b[1:]) for b in other) for a in one)
        assert {prism.end - prism.start for prism, *_ in (*one, *other)} == {deep}
