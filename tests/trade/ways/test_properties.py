"""What must hold for every work: settings add up to the cut, passes to its depth, small pieces go
to no machine."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import cast

from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.ground.lengths import INCH, Length
from benchalong.ground.shown import System
from benchalong.trade.ways.model import FAMILIES, Direction, Family, Piece, Way, Work
from benchalong.trade.ways.practice import in_passes
from benchalong.trade.ways.table import ways

SIXTY_FOURTH = INCH / 64
systems = st.sampled_from(cast(tuple[System, ...], ("inch", "millimetre")))


def lengths(least: int, most: int) -> st.SearchStrategy[Length]:
    """Whole 64ths of an inch, or tenths of a millimetre, from so many to so many mm."""
    return st.one_of(
        st.integers(int(least / SIXTY_FOURTH) + 1, int(most / SIXTY_FOURTH)).map(lambda n: n * SIXTY_FOURTH),
        st.integers(10 * least, 10 * most).map(lambda n: Fraction(n, 10)),
    )


pieces = st.builds(
    Piece,
    length=lengths(60, 2500),
    width=lengths(10, 800),
    thickness=lengths(6, 60),
    wood=st.sampled_from(("hard", "soft", "sheet")),
)


@st.composite
def channels(draw: st.DrawFn) -> Work:
    """A groove in an edge, anywhere in the thickness, centred half the time."""
    piece = draw(pieces)
    parts = [draw(st.integers(1, 20)) for _ in range(3)]
    if draw(st.booleans()):
        parts[2] = parts[0]
    near, width, _ = (piece.thickness * part / sum(parts) for part in parts)
    depth = min(draw(lengths(2, 25)), piece.width / 2)
    return Work(
        family="groove", piece=piece, surface="edge", width=width, depth=depth, length=piece.length, near=near
    )


@st.composite
def anything(draw: st.DrawFn) -> Work:
    """Any family on any piece; nothing that a shop would draw, and still every pair must be answered."""
    piece, family = draw(pieces), draw(st.sampled_from(FAMILIES))
    work = Work(
        family=family,
        piece=piece,
        surface=draw(st.sampled_from(("face", "edge", "end"))),
        run=draw(st.sampled_from(RUNS.get(family, ("length",)))),
        angle=Fraction(draw(st.integers(5, 85))),
        count=draw(st.integers(1, 20)),
    )
    if work.run == work.inward:
        work = replace(work, surface="edge" if work.run == "length" else "end")
        work = replace(work, surface="face") if work.run == work.inward else work
    across, run, deep = (work.whole(one) for one in (work.across, work.run, work.inward))
    width = across * draw(PARTS)
    length = run * draw(PARTS)
    return replace(
        work,
        width=width,
        near=(across - width) * draw(PARTS),
        length=length,
        before=(run - length) * draw(st.sampled_from((Fraction(0), Fraction(1, 2), Fraction(1)))),
        depth=deep * draw(PARTS),
    )


PARTS = st.integers(1, 16).map(lambda n: Fraction(n, 16))
ANY: tuple[Direction, ...] = ("length", "width", "thickness")
RUNS: dict[Family, tuple[Direction, ...]] = {
    "dado": ("width",),
    "stopped dado": ("width",),
    "notch": ("thickness",),
    "hinge gain": ("thickness",),
    "tongue": ("length", "width"),
    "rabbet": ("length", "width"),
    "tenon": ("width",),
    "bevel": ANY,
    "mitre": ANY,
}


def length_of(way: Way, key: str) -> Length:
    setting = way.setting(key)
    assert setting is not None
    assert setting.length is not None
    return setting.length


@given(channels(), systems)
@settings(max_examples=150, deadline=None)
def test_fence_width_and_rest_are_the_thickness(work: Work, units: System) -> None:
    for way in ways(work, units=units).ways:
        if way.tool not in ("table saw with a stacked cutter", "table saw", "router table", "router"):
            continue
        cutter = way.cutter.width
        assert cutter is not None
        assert cutter <= work.width
        if way.is_turned:
            assert work.is_centred
            far = length_of(way, "fence_far")
            assert far == length_of(way, "fence") + cutter
            assert 2 * far - work.piece.thickness == work.width
            assert cutter * 2 * way.strokes >= work.width
        else:
            near = length_of(way, "fence")
            last = length_of(way, "fence_last") if way.strokes > 1 else near
            rest = work.piece.thickness - last - cutter
            assert near + (last + cutter - near) + rest == work.piece.thickness
            assert (near, rest) == (work.near, work.far)
            assert cutter * way.strokes >= work.width


@given(channels(), systems)
@settings(max_examples=100, deadline=None)
def test_passes_add_up_to_the_depth(work: Work, units: System) -> None:
    for way in ways(work, units=units).ways:
        assert sum(way.passes) == work.depth
        assert all(one > 0 for one in way.passes)


@given(anything(), systems)
@settings(max_examples=120, deadline=None)
def test_every_tool_answers_everything(work: Work, units: System) -> None:
    answer = ways(work, units=units)
    assert len(answer.ways) + len(answer.refusals) == 14
    for way in answer.ways:
        assert all(one >= 0 for one in way.passes)
        assert way.minutes > 0


@given(anything())
@settings(max_examples=120, deadline=None)
def test_no_machine_is_offered_for_a_piece_that_is_too_small(work: Work) -> None:
    piece = work.piece
    offered = {way.tool for way in ways(work).ways}
    if piece.length < 300:
        assert not offered & {"planer", "jointer"}
        if work.family == "rip":
            assert not offered & {"table saw", "table saw with a stacked cutter"}
        if work.family == "groove":
            assert not offered & {"table saw", "table saw with a stacked cutter"}
    if piece.length < 200:
        assert "mitre saw" not in offered
        if work.family == "groove":
            assert "router table" not in offered
    if piece.length < 150:
        assert "band saw" not in offered
    if piece.width < 19:
        assert "jointer" not in offered
    if piece.thickness < 12 and work.family == "joint a face":
        assert "jointer" not in offered
    if piece.thickness - work.depth < 6:
        assert "planer" not in offered
    if work.family == "rip" and piece.length < piece.width:
        assert "table saw" not in offered


@given(lengths(1, 80), lengths(1, 20), st.integers(1, 3))
def test_passes(depth: Length, most: Length, at_least: int) -> None:
    passes = in_passes(depth, most, INCH / 16, at_least=at_least)
    assert sum(passes) == depth
    assert max(passes) <= most or len(passes) == 1
    assert min(passes) == passes[-1] > 0
    assert len(passes) >= at_least
