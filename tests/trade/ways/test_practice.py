"""The trade's ways, computed: common practice, no source but shops."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from benchalong.ground.lengths import INCH, Length
from benchalong.ground.shown import Precision
from benchalong.trade.ways.model import Family, Piece, Refusal, Tool, Way, Wood, Work
from benchalong.trade.ways.said import said
from benchalong.trade.ways.table import ways
from trade.ways.works import DADO, GROOVE, RABBET, TENON, WORKS, inches, piece

STACK: Tool = "table saw with a stacked cutter"


def by(tool: Tool, work: Work) -> Way:
    return next(one for one in ways(work).ways if one.tool == tool)


def refused(tool: Tool, work: Work) -> Refusal:
    return next(one for one in ways(work).refusals if one.tool == tool)


def set_to(way: Way, key: str) -> Length:
    setting = way.setting(key)
    assert setting is not None
    assert setting.length is not None
    return setting.length


def text(words: tuple[object, ...]) -> str:
    return said(words, "inch", Precision(inch=INCH / 64))  # type: ignore[arg-type]


@pytest.mark.parametrize("tool", [STACK, "router table", "table saw"])
def test_a_centred_groove_comes_from_two_passes_turned_end_for_end(tool: Tool) -> None:
    way = by(tool, GROOVE)
    assert way.is_turned
    assert way.guide == "face, then back"
    assert way.cutter.width is not None
    assert way.cutter.width < GROOVE.width
    far = set_to(way, "fence_far")
    assert GROOVE.width == 2 * far - GROOVE.piece.thickness


def test_a_groove_off_the_middle_keeps_one_face_to_the_fence() -> None:
    way = by(STACK, replace(GROOVE, near=inches("1/4")))
    assert not way.is_turned
    assert way.guide == "face"
    assert set_to(way, "fence") == inches("1/4")


@pytest.mark.parametrize("width", ["1/4", "5/16", "3/8", "1/2", "5/8", "3/4"])
def test_the_stack_is_wider_than_the_rabbet_and_the_fence_sets_the_width(width: str) -> None:
    work = replace(RABBET, width=inches(width))
    way = by(STACK, work)
    assert way.cutter.width is not None
    assert inches("1/16") <= way.cutter.width - work.width <= inches("1/8")
    assert set_to(way, "fence_far") == work.width
    assert way.cutter.width == work.width + set_to(way, "buried")
    assert "a sacrificial fence" in way.needs


@pytest.mark.parametrize(
    ("width", "depth", "wood", "least"),
    [
        ("3/8", "3/8", "hard", 1),
        ("3/8", "7/16", "hard", 2),
        ("3/4", "1/4", "hard", 2),
        ("3/4", "1/4", "soft", 1),
        ("1/2", "3/8", "hard", 1),
    ],
)
def test_heavy_channels_take_two_passes_or_more(width: str, depth: str, wood: Wood, least: int) -> None:
    timber = replace(DADO.piece, wood=wood)
    work = replace(DADO, piece=timber, width=inches(width), depth=inches(depth))
    way = by(STACK, work)
    assert len(way.passes) >= least
    assert (least == 1) == (len(way.passes) == 1)
    assert way.passes[-1] == min(way.passes)
    for tool in ("router table", "router"):
        assert len(by(tool, work).passes) >= least


def test_a_router_takes_no_more_than_half_its_cutter_in_one_pass() -> None:
    for tool in ("router table", "router"):
        for family in ("groove", "dado", "stopped dado", "mortise", "spline slot"):
            way = by(tool, WORKS[family])
            assert way.cutter.width is not None
            assert max(way.passes) <= way.cutter.width / 2


@pytest.mark.parametrize("family", ["tongue", "tenon", "dado"])
def test_fence_and_mitre_gauge_together_only_where_nothing_comes_loose(family: Family) -> None:
    for tool in (STACK, "table saw"):
        way = by(tool, WORKS[family])
        assert any("mitre gauge" in need and "backing board" in need for need in way.needs)
        assert "no offcut" in text(way.why)
        assert "goes through, never use both" in text(way.why)


def test_a_cut_that_goes_through_never_uses_both() -> None:
    way = by("table saw", WORKS["crosscut to length"])
    assert way.setting("fence") is None
    assert set_to(way, "stop") == inches("24")
    assert "Keep the fence away" in text(way.why)
    assert set_to(way, "height") - inches("3/4") == inches("1/8")


def test_tongues_are_cut_from_both_sides() -> None:
    work = replace(TENON, family="tongue", near=inches("3/16"))
    way = by(STACK, work)
    assert way.table == "face, then back"
    assert set_to(way, "height") == inches("3/16")
    assert set_to(way, "height_back") == inches("5/16")


def test_a_narrow_strip_falls_on_the_free_side() -> None:
    board = piece("36", "6", "3/4")
    way = by("table saw", Work(family="rip", piece=board, width=inches("1/2")))
    assert set_to(way, "fence") == inches("6") - inches("1/8") - inches("1/2")
    narrow = Work(family="rip", piece=piece("36", "1", "3/4"), width=inches("1/2"))
    assert refused("table saw", narrow).is_safety


def test_tapers_ride_on_a_sled() -> None:
    way = by("table saw", WORKS["taper"])
    assert "a taper sled with clamps" in way.needs
    assert set_to(way, "sled") == inches("1/2")


def test_stopped_cuts_are_kept_from_the_table_saw() -> None:
    for tool in (STACK, "table saw"):
        stopped = replace(GROOVE, before=inches("2"), length=inches("22"))
        assert "safe" in text(refused(tool, stopped).reason)


def test_stops_on_the_router_table_leave_the_cut_where_it_is_drawn() -> None:
    """Rear stop, cut and front stop measured along the fence, the cutter between them."""
    work = replace(GROOVE, before=inches("2"), length=inches("19"))
    way = by("router table", work)
    rear, front = set_to(way, "stop_first"), set_to(way, "stop_last")
    assert work.piece.length - rear == work.before
    assert work.piece.length - front == work.after


SMALL: tuple[tuple[Tool, Family, Piece, str], ...] = (
    ("planer", "plane to thickness", piece("11", "4", "1"), "12 in"),
    ("planer", "plane to thickness", piece("24", "4", "3/8"), "1/4 in"),
    ("jointer", "joint a face", piece("11", "4", "1"), "12 in"),
    ("jointer", "joint an edge", piece("24", "1/2", "3/4"), "3/4 in"),
    ("jointer", "joint a face", piece("24", "4", "3/8"), "1/2 in"),
    ("mitre saw", "crosscut to length", piece("7", "4", "3/4"), "8 in"),
    ("table saw", "rip", piece("11", "6", "3/4"), "12 in"),
    ("table saw", "rip", piece("14", "20", "3/4"), "shorter than wide"),
    ("router table", "groove", piece("7", "2 3/8", "3/4"), "8 in"),
    (STACK, "groove", piece("10", "2 3/8", "3/4"), "12 in"),
)


@pytest.mark.parametrize(("tool", "family", "small", "limit"), SMALL)
def test_too_small_for_safe_hands(tool: Tool, family: Family, small: Piece, limit: str) -> None:
    length = min(WORKS[family].length, small.length)
    work = replace(WORKS[family], piece=small, length=length, near=Fraction(1))
    one = refused(tool, work)
    assert one.is_safety
    assert limit in text(one.reason)
    assert "hand" in text(one.instead) or "longer" in text(one.instead)


def test_at_the_limit_it_is_offered_in_either_system() -> None:
    for length in (inches("12"), Fraction(300)):
        small = replace(WORKS["plane to thickness"].piece, length=length)
        assert by("planer", replace(WORKS["plane to thickness"], piece=small))


def test_a_short_mitre_saw_piece_is_clamped() -> None:
    work = replace(WORKS["crosscut to length"], piece=piece("10", "2", "3/4"), length=inches("10"))
    assert any("Clamp this piece" in text(one) for one in by("mitre saw", work).cautions)


def test_passes_on_the_planer_end_with_a_light_one() -> None:
    way = by("planer", WORKS["plane to thickness"])
    assert way.passes[-1] == inches("1/32")
    assert sum(way.passes) == inches("1/4")
    assert set_to(way, "thickness") == inches("3/4")
