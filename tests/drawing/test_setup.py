"""Pictures of setups: the numbers to set stand in them, exactly; what is said in words has no number."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction
from html import unescape
from itertools import pairwise

import pytest

from benchalong.drawing.picture import Picture
from benchalong.drawing.setup import setup_picture
from benchalong.drawing.setups.scale import BROKEN, LEAST, scale
from benchalong.drawing.setups.scene import hatching
from benchalong.ground.shown import Precision
from benchalong.trade.ways.model import FAMILIES, Family, Tool, Way, Work
from benchalong.trade.ways.table import ways
from trade.ways.works import DADO, GROOVE, TENON, WORKS, in_other_sizes, inches

STACK: Tool = "table saw with a stacked cutter"


def by(tool: Tool, work: Work) -> Way:
    return next(one for one in ways(work).ways if one.tool == tool)


def drawn(work: Work, way: Way) -> Picture:
    picture = setup_picture(work, way, units="inch", precision=Precision())
    assert picture is not None
    return picture


def sizes(picture: Picture) -> set[Fraction]:
    return {Fraction(unescape(one)) for one in re.findall(r'data-mm="([^"]+)"', picture.svg)}


def words(picture: Picture) -> str:
    """All that is written in it, lines joined."""
    return " ".join(re.sub(r"<[^>]+>", " ", picture.svg).split())


SHOWN: tuple[tuple[Tool, Family, tuple[str, ...]], ...] = (
    (STACK, "groove", ("fence", "fence_far", "height")),
    ("router table", "groove", ("fence", "fence_far", "height")),
    (STACK, "dado", ("fence", "height")),
    ("table saw", "dado", ("fence", "height")),
    (STACK, "rabbet", ("fence_far", "buried", "height")),
    (STACK, "tenon", ("fence_far", "height")),
    ("table saw", "rip", ("fence", "height")),
    ("band saw", "resaw", ("fence",)),
    ("table saw", "crosscut to length", ("stop",)),
    ("mitre saw", "crosscut to length", ("stop",)),
    ("mitre saw", "mitre", ("stop",)),
    ("router", "stopped dado", ("wall", "height", "ends")),
    ("router table", "stopped dado", ("fence", "height", "stop_last")),
    ("router", "tenon", ("shoulder", "height")),
    ("drill press", "dowel hole", ("fence", "stop", "height")),
    ("planer", "plane to thickness", ("thickness",)),
    ("jointer", "joint an edge", ("takes",)),
    ("table saw", "taper", ("sled", "over")),
    ("track saw", "rip", ("mark",)),
)


@pytest.mark.parametrize(("tool", "family", "keys"), SHOWN)
def test_the_numbers_to_set_stand_in_the_picture(tool: Tool, family: Family, keys: tuple[str, ...]) -> None:
    way = by(tool, WORKS[family])
    shown = sizes(drawn(WORKS[family], way))
    for key in keys:
        setting = way.setting(key)
        assert setting is not None
        assert setting.length in shown, key


@pytest.mark.parametrize("family", FAMILIES)
def test_words_have_no_numbers_and_the_same_setup_gives_the_same_picture(family: Family) -> None:
    for work in in_other_sizes(WORKS[family]):
        for way in ways(work).ways:
            picture = setup_picture(work, way, units="inch", precision=Precision())
            if picture is None:
                continue
            assert not re.search(r"\d", picture.alt)
            assert "Not to scale." in words(picture)
            assert picture == setup_picture(work, way, units="inch", precision=Precision())
            assert picture.width <= 420


def test_it_says_which_side_goes_where() -> None:
    said = words(drawn(GROOVE, by(STACK, GROOVE)))
    assert "Against the fence: face, then back." in said
    assert "On the table: edge a." in said
    assert "turn it end for end" in said


def test_work_done_to_a_line_by_hand_has_no_picture() -> None:
    for family in ("mortise", "tails", "curved outline"):
        work = WORKS[family]
        assert setup_picture(work, by("hand tools", work), units="inch", precision=Precision()) is None


def test_other_fence_other_picture() -> None:
    other = replace(DADO, near=inches("4"))
    assert drawn(DADO, by(STACK, DADO)).svg != drawn(other, by(STACK, other)).svg
    assert inches("4") in sizes(drawn(other, by(STACK, other)))


def test_a_tenon_off_the_middle_shows_both_shoulders_apart() -> None:
    work = replace(TENON, near=inches("3/16"))
    assert {inches("3/16"), inches("1/4")} <= sizes(drawn(work, by("router table", work)))


def test_the_sketch_keeps_its_order_and_its_least_lengths() -> None:
    places = [Fraction(n) for n in (0, 1, 9, 900, 903)]
    one = scale(places)
    at = [one.at(place) for place in places]
    assert at == sorted(at)
    assert all(b - a >= LEAST - 1e-9 for a, b in pairwise(at))
    assert [piece.is_broken for piece in one.pieces] == [False, False, True, False]
    assert BROKEN > 1


def test_hatching_stays_in_its_box() -> None:
    room = (3.0, 5.0, 31.0, 44.0)
    for other in (False, True):
        lines = hatching(room, other=other)
        assert len(lines) > 5
        for x0, y0, x1, y1 in lines:
            assert all(room[0] - 1e-9 <= x <= room[2] + 1e-9 for x in (x0, x1))
            assert all(room[1] - 1e-9 <= y <= room[3] + 1e-9 for y in (y0, y1))
            assert abs(abs(y1 - y0) - abs(x1 - x0)) < 1e-9
