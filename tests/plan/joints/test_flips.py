"""Turned end for end, edge for edge, face for back: twice is nothing, and no wood is won or lost."""

from __future__ import annotations

from fractions import Fraction
from itertools import chain, combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from benchalong.plan.cuts.surfaces import block
from benchalong.plan.flips import flipped_place, flipped_prism, flipped_surface, is_mirrored
from benchalong.plan.model import AXES, Circle, Cut, Outline, Part, Prism
from benchalong.plan.turns import moved, turned
from benchalong.workings.solids import solid_of
from plan.joints.shop import eighths, turns

BOX = (Fraction(300), Fraction(80), Fraction(20))
flips = some.sampled_from(
    [frozenset(axes) for axes in chain.from_iterable(combinations(AXES, n) for n in range(4))]
)


@some.composite
def prisms(draw: some.DrawFn) -> Prism:
    """A block or a hole somewhere in the box."""
    ranges = {}
    for axis, whole in zip(AXES, BOX, strict=True):
        start = draw(eighths(0, int(whole) - 2))
        ranges[axis] = (start, start + draw(eighths(1, int(whole - start))))
    drawn = draw(some.sampled_from(AXES))
    body = block(ranges, drawn=drawn)
    if not draw(some.booleans()):
        return body
    assert isinstance(body.shape, Outline)
    return Prism(drawn, Circle(body.shape.corners[0].at, draw(eighths(1, 10))), body.start, body.end)


@given(prisms(), flips)
def test_flipped_twice_it_is_as_it_was(prism: Prism, flip: frozenset) -> None:  # type: ignore[type-arg]
    again = flipped_prism(flipped_prism(prism, BOX, flip), BOX, flip)
    assert again == prism


@given(prisms(), flips)
@settings(max_examples=20, deadline=None)
def test_it_takes_the_same_wood(prism: Prism, flip: frozenset) -> None:  # type: ignore[type-arg]
    assert _left(flipped_prism(prism, BOX, flip)) == pytest.approx(_left(prism), rel=1e-9)


def _left(prism: Prism) -> float:
    cut = Cut("hole", "hole", ("face",), "", (), (prism,))
    part = Part("board", "Board", "oak", BOX[2], BOX[1], BOX[0], 1, (), (cut,))
    return solid_of(part).volume


@given(flips, turns)
def test_the_flipped_part_fills_the_same_room(flip: frozenset, turn) -> None:  # type: ignore[no-untyped-def, type-arg]
    at = (Fraction(1), Fraction(2), Fraction(3))
    new_turn, new_at = flipped_place(turn, at, BOX, flip)
    for corner in ((0, 0, 0), (1, 0, 1), (1, 1, 1)):
        point = tuple(n * size for n, size in zip(corner, BOX, strict=True))
        own = tuple(
            size - value if axis in flip else value
            for axis, size, value in zip(AXES, BOX, point, strict=True)
        )
        assert moved(turned(own, new_turn), new_at) == moved(turned(point, turn), at)  # type: ignore[arg-type]
    assert is_mirrored(new_turn) == (len(flip) % 2 == 1)


def test_sides_change_places() -> None:
    assert flipped_surface("end a", frozenset(("along",))) == "end b"
    assert flipped_surface("edge b", frozenset(("across", "down"))) == "edge a"
    assert flipped_surface("face", frozenset(("along", "across"))) == "face"
