"""The settings of each way, carried out on a section of the workpiece, leave exactly the cut asked for.

An independent carpenter: it knows fence, cutter, height, strokes and turning, not how they were worked out.
What it takes away is a set of rectangles, compared cell by cell on the grid of all their edges.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.ground.lengths import INCH, Length
from benchalong.ground.shown import SYSTEMS, System
from benchalong.trade.ways.model import Piece, Tool, Way, Work
from benchalong.trade.ways.table import ways

Rect = tuple[Length, Length, Length, Length]
"""From the fence and up from the table: from, to, from, to."""
STACK: Tool = "table saw with a stacked cutter"
AT_A_FENCE: tuple[Tool, ...] = (STACK, "table saw", "router table", "router")
AT_A_TABLE: tuple[Tool, ...] = (STACK, "table saw", "router table")


def length(way: Way, key: str) -> Length:
    setting = way.setting(key)
    assert setting is not None, (way.tool, key)
    assert setting.length is not None
    return setting.length


def same(one: Iterable[Rect], two: Iterable[Rect], *, wide: Length, tall: Length) -> bool:
    """Whether two sets of rectangles cover the same part of a section."""
    sets = [list(one), list(two)]
    rects = [rect for each in sets for rect in each]
    xs = sorted({min(max(x, Fraction(0)), wide) for rect in rects for x in rect[:2]} | {Fraction(0), wide})
    ys = sorted({min(max(y, Fraction(0)), tall) for rect in rects for y in rect[2:]} | {Fraction(0), tall})
    for (x0, x1), (y0, y1) in product(pairwise(xs), pairwise(ys)):
        covered = [any(a <= x0 and x1 <= b and c <= y0 and y1 <= d for a, b, c, d in each) for each in sets]
        if covered[0] != covered[1]:
            return False
    return True


def strokes(first: Length, last: Length, count: int, cutter: Length) -> list[tuple[Length, Length]]:
    """So many strokes from one fence setting to another, evenly."""
    if count == 1:
        return [(first, first + cutter)]
    step = (last - first) / (count - 1)
    return [(first + n * step, first + n * step + cutter) for n in range(count)]


def swept_channel(work: Work, way: Way) -> list[Rect]:
    cutter = way.cutter.width
    assert cutter is not None
    fence, height = length(way, "fence"), length(way, "height")
    whole = work.whole(work.across)
    if way.is_turned:
        first = length(way, "fence_first") if way.strokes > 1 else fence
        one_way = strokes(first, fence, way.strokes, cutter)
        taken = one_way + [(whole - b, whole - a) for a, b in one_way]
    else:
        last = length(way, "fence_last") if way.strokes > 1 else fence
        taken = strokes(fence, last, way.strokes, cutter)
    return [(a, b, Fraction(0), height) for a, b in taken]


def swept_rabbet(way: Way) -> list[Rect]:
    cutter, far = way.cutter.width, length(way, "fence_far")
    assert cutter is not None
    taken = [(far - n * cutter - cutter, far - n * cutter) for n in range(way.strokes)]
    return [(a, b, Fraction(0), length(way, "height")) for a, b in taken]


def swept_cheeks(work: Work, way: Way) -> list[Rect]:
    """Lying flat, then turned over: the second side from the top."""
    cutter, far = way.cutter.width, length(way, "fence_far")
    assert cutter is not None
    tall = work.whole(work.across)
    low = length(way, "height")
    high = length(way, "height_back") if way.setting("height_back") else low
    taken = [(far - n * cutter - cutter, far - n * cutter) for n in range(way.strokes)]
    return [(a, b, *y) for a, b in taken for y in ((Fraction(0), low), (tall - high, tall))]


SIXTEENTH = INCH / 16
lengths = st.one_of(
    st.integers(2, 24).map(lambda n: n * SIXTEENTH), st.integers(30, 400).map(lambda n: Fraction(n, 10))
)
systems = st.sampled_from(SYSTEMS)


@st.composite
def sections(draw: st.DrawFn) -> tuple[Length, Length, Length]:
    """Near, width and far of something across a thickness; centred half the time."""
    near, width, far = draw(lengths), draw(lengths), draw(lengths)
    return (near, width, near if draw(st.booleans()) else far)


def long_piece(thickness: Length, width: Length = 4 * INCH) -> Piece:
    return Piece(length=30 * INCH, width=width, thickness=thickness)


@given(sections(), lengths, systems)
@settings(max_examples=120, deadline=None)
def test_a_groove(section: tuple[Length, Length, Length], depth: Length, units: System) -> None:
    near, width, far = section
    piece = long_piece(near + width + far)
    work = Work(
        family="groove", piece=piece, surface="edge", width=width, depth=depth, length=piece.length, near=near
    )
    wanted: Rect = (near, near + width, Fraction(0), depth)
    for way in ways(work, units=units).ways:
        if way.tool in AT_A_FENCE:
            taken = swept_channel(work, way)
            assert same(taken, [wanted], wide=piece.thickness, tall=piece.width), way


@given(lengths, lengths, lengths, systems)
@settings(max_examples=80, deadline=None)
def test_a_dado(near: Length, width: Length, depth: Length, units: System) -> None:
    piece = long_piece(depth * 3, width=9 * INCH)
    work = Work(
        family="dado", piece=piece, run="width", width=width, depth=depth, length=piece.width, near=near
    )
    wanted: Rect = (near, near + width, Fraction(0), depth)
    for way in ways(work, units=units).ways:
        if way.tool in AT_A_TABLE:
            assert same(swept_channel(work, way), [wanted], wide=piece.length, tall=piece.thickness), way


@given(lengths, lengths, systems)
@settings(max_examples=80, deadline=None)
def test_a_rabbet_with_a_buried_cutter(width: Length, depth: Length, units: System) -> None:
    piece = long_piece(depth * 2, width=6 * INCH)
    work = Work(family="rabbet", piece=piece, width=width, depth=depth, length=piece.length)
    wanted: Rect = (Fraction(0), width, Fraction(0), depth)
    for way in ways(work, units=units).ways:
        if way.tool in (STACK, "router table"):
            assert same(swept_rabbet(way), [wanted], wide=piece.width, tall=piece.thickness), way


@given(lengths, lengths, systems)
@settings(max_examples=60, deadline=None)
def test_a_rabbet_in_two_cuts_of_one_blade(width: Length, depth: Length, units: System) -> None:
    """The kerfs meet at the inner corner and nowhere go beyond the rabbet: the waste falls off whole."""
    piece = long_piece(depth * 2, width=6 * INCH)
    work = Work(family="rabbet", piece=piece, width=width, depth=depth, length=piece.length)
    for way in ways(work, ["table saw"], units=units).ways:
        kerf = way.cutter.width
        assert kerf is not None
        flat = (length(way, "fence_far") - kerf, length(way, "fence_far"), Fraction(0), length(way, "height"))
        # On edge the back is at the fence: depth is measured from the face, so from the far side.
        start = piece.thickness - length(way, "fence_2")
        on_edge = (Fraction(0), length(way, "height_2"), start - kerf, start)
        assert flat[1] == on_edge[1] == width
        assert flat[3] == on_edge[3] == depth


@given(sections(), lengths, systems, st.booleans())
@settings(max_examples=120, deadline=None)
def test_a_tongue(
    section: tuple[Length, Length, Length], depth: Length, units: System, is_along: bool
) -> None:
    near, width, far = section
    piece = long_piece(near + width + far)
    work = Work(
        family="tongue",
        piece=piece,
        surface="edge" if is_along else "end",
        run="length" if is_along else "width",
        width=width,
        depth=depth,
        length=piece.length if is_along else piece.width,
        near=near,
    )
    whole, tall = work.whole(work.inward), piece.thickness
    wanted: list[Rect] = [
        (Fraction(0), depth, Fraction(0), near),
        (Fraction(0), depth, tall - far, tall),
    ]
    for way in ways(work, units=units).ways:
        if way.tool in (STACK, "router table") or (way.tool == "table saw" and not is_along):
            assert same(swept_cheeks(work, way), wanted, wide=whole, tall=tall), way


@given(sections(), lengths, systems)
@settings(max_examples=60, deadline=None)
def test_a_tongue_along_an_edge_with_one_blade(
    section: tuple[Length, Length, Length], depth: Length, units: System
) -> None:
    """Shoulders flat, cheeks on edge with the waste on the free side: both kerfs outside of the tongue."""
    near, width, far = section
    piece = long_piece(near + width + far)
    work = Work(
        family="tongue", piece=piece, surface="edge", width=width, depth=depth, length=piece.length, near=near
    )
    for way in ways(work, ["table saw"], units=units).ways:
        assert length(way, "fence_far") == length(way, "height_2") == depth
        assert piece.thickness - length(way, "fence_2") == near
        second = length(way, "fence_2_back") if way.setting("fence_2_back") else length(way, "fence_2")
        assert piece.thickness - second == far


@pytest.mark.parametrize("wrong", ["fence", "height"])
def test_a_wrong_setting_would_be_seen(wrong: str) -> None:
    """The carpenter himself: a sixteenth beside it is another cut."""
    piece = long_piece(3 * INCH / 4)
    work = Work(
        family="groove",
        piece=piece,
        surface="edge",
        width=INCH / 4,
        depth=INCH / 4,
        length=piece.length,
        near=INCH / 8,
    )
    way = next(one for one in ways(work).ways if one.tool == STACK)
    off = tuple(
        replace(one, length=one.length + SIXTEENTH) if one.key == wrong and one.length is not None else one
        for one in way.settings
    )
    wanted: list[Rect] = [(INCH / 8, 3 * INCH / 8, Fraction(0), INCH / 4)]
    room = {"wide": piece.thickness, "tall": piece.width}
    assert same(swept_channel(work, way), wanted, **room)
    assert not same(swept_channel(work, replace(way, settings=off)), wanted, **room)
