"""Labels round a drawing: none touches another, no leader crosses a leader or a label."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations, permutations
from math import hypot, isclose

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from benchalong.drawing.board import cross, distance
from benchalong.drawing.pointers import (
    PITCH,
    Frame,
    Label,
    Pointed,
    Side,
    cheapest,
    placed,
    slots,
    width_of,
)

FRAME = Frame(60, 24, 300, 324)
COLUMNS: tuple[Side, ...] = ("left", "right")
ALL: tuple[Side, ...] = ("left", "right", "above", "below")

MARKS = st.sampled_from(["A", "LD/H", "RD/M", "C/S1", "TOP +3", "W", "i"])
POINTS = st.tuples(st.integers(75, 285).map(float), st.integers(40, 308).map(float))
POINTED = st.lists(st.builds(Pointed, MARKS, POINTS), max_size=24, unique_by=lambda one: one.point)


def apart(one: Frame, other: Frame) -> bool:
    return (
        one.right <= other.left
        or other.right <= one.left
        or one.bottom <= other.top
        or other.bottom <= one.top
    )


def meets_box(label: Label, box: Frame) -> bool:
    """Whether the leader enters the box: by many points of it."""
    steps = [i / 60 for i in range(61)]
    (ax, ay), (bx, by) = label.start, label.point
    return any(
        box.left < ax + t * (bx - ax) < box.right and box.top < ay + t * (by - ay) < box.bottom for t in steps
    )


def in_a_line(pointed: list[Pointed]) -> bool:
    """Whether some points lie so that two leaders may have to lie over one another."""
    pairs = combinations([one.point for one in pointed], 2)
    return any(hypot(a[0] - b[0], a[1] - b[1]) < 2 for a, b in pairs)


@pytest.mark.parametrize("sides", [COLUMNS, ALL])
@settings(max_examples=80, deadline=None)
@given(pointed=POINTED)
def test_nothing_touches(sides: tuple[Side, ...], pointed: list[Pointed]) -> None:
    assume(not in_a_line(pointed))
    widest = max((width_of(one.text) for one in pointed), default=0)
    assume(len(slots(FRAME, sides, widest)) >= len(pointed))
    labels = placed(pointed, FRAME, sides)
    assert [(label.text, label.point) for label in labels] == [(one.text, one.point) for one in pointed]
    for one, other in combinations(labels, 2):
        assert apart(one.box, other.box), (one, other)
        if not touching_ends(one, other):
            assert not cross(one.start, one.point, other.start, other.point), (one, other)
        assert not meets_box(one, other.box)
        assert not meets_box(other, one.box)


def touching_ends(one: Label, other: Label) -> bool:
    """Whether one's point lies on the other's leader, as on whole numbers it may."""
    return (
        distance(one.point, other.start, other.point) < 1e-6
        or distance(other.point, one.start, one.point) < 1e-6
    )


@pytest.mark.parametrize("sides", [COLUMNS, ALL])
@given(pointed=POINTED)
@settings(max_examples=30, deadline=None)
def test_labels_stay_within_their_margin(sides: tuple[Side, ...], pointed: list[Pointed]) -> None:
    widest = max((width_of(one.text) for one in pointed), default=0)
    assume(len(slots(FRAME, sides, widest)) >= len(pointed))
    for label in placed(pointed, FRAME, sides):
        box = label.box
        assert FRAME.left - widest - 4 <= box.left
        assert box.right <= FRAME.right + widest + 4
        assert FRAME.top - 20 <= box.top
        assert box.bottom <= FRAME.bottom + 20


def test_a_label_moves_straight_across_from_its_point() -> None:
    (label,) = placed([Pointed("H", (90.0, 131.3))], FRAME, COLUMNS)
    assert label.start == (60, 131.3)
    assert label.side == "left"


def test_too_many_labels_are_refused() -> None:
    many = [Pointed("A", (100.0 + i, 100.0)) for i in range(2 * int(300 // PITCH) + 1)]
    with pytest.raises(ValueError, match=r"33 labels, 32 places"):
        placed(many, FRAME, COLUMNS)


@settings(max_examples=60, deadline=None)
@given(
    st.integers(1, 5).flatmap(
        lambda rows: st.lists(
            st.lists(st.integers(0, 50).map(float), min_size=6, max_size=6), min_size=rows, max_size=rows
        )
    )
)
def test_cheapest_is_as_cheap_as_trying_every_way(costs: list[list[float]]) -> None:
    chosen = cheapest(costs)
    assert len(set(chosen)) == len(costs)
    every = permutations(range(6), len(costs))
    assert isclose(total(costs, chosen), min(total(costs, way) for way in every))


def total(costs: list[list[float]], columns: Sequence[int]) -> float:
    return sum(costs[row][column] for row, column in enumerate(columns))


@pytest.mark.parametrize(
    ("ends", "meet"),
    [
        (((0, 0), (10, 10), (0, 10), (10, 0)), True),
        (((0, 0), (10, 10), (0, 1), (9, 10)), False),
        (((0, 0), (10, 0), (5, 0), (5, 5)), True),
        (((0, 0), (4, 0), (5, -1), (5, 5)), False),
        (((0, 0), (4, 0), (5, 0), (9, 0)), False),
        (((0, 0), (6, 0), (5, 0), (9, 0)), True),
    ],
)
def test_cross(ends: tuple[tuple[float, float], ...], meet: bool) -> None:
    a, b, c, d = ends
    assert cross(a, b, c, d) is meet
