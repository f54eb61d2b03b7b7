"""What can hurt, from machine, cut and size of the piece; the limits marked, the manual last."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace

import pytest

from benchalong.ground.lengths import INCH
from benchalong.ground.shown import Precision, System
from benchalong.trade.ways.cautions import DEFERS, OWN, SPOKEN, cautions
from benchalong.trade.ways.model import FAMILIES, TOOLS, Tool, Words
from benchalong.trade.ways.said import said
from benchalong.trade.ways.table import ways
from trade.ways.works import GROOVE, RABBET, WORKS, inches, piece


def text(words: Iterable[Words], units: System = "inch") -> str:
    return " ".join(said(one, units, Precision(inch=INCH / 64)) for one in words)


@pytest.mark.parametrize("tool", TOOLS)
def test_every_tool_has_words_of_its_own(tool: Tool) -> None:
    assert SPOKEN[tool] or tool in OWN
    assert len(cautions(GROOVE, tool)) >= 2


@pytest.mark.parametrize("family", FAMILIES)
def test_every_way_ends_with_whom_to_believe(family: str) -> None:
    for way in ways(WORKS[family]).ways:  # type: ignore[index]
        assert way.cautions[-1] == DEFERS
        assert len(set(way.cautions)) == len(way.cautions)


def test_limits_are_said_in_the_readers_system() -> None:
    found = cautions(WORKS["plane to thickness"], "planer")
    assert "shorter than 12 in" in text(found)
    assert "shorter than 300 mm" in text(found, "millimetre")


def test_a_stacked_cutter_says_that_guards_are_off() -> None:
    found = text(cautions(RABBET, "table saw with a stacked cutter"))
    assert "without the usual guard" in found
    assert "manual" in found
    assert "country" in found


def test_a_narrow_piece_asks_for_a_push_stick_and_a_wide_one_does_not() -> None:
    assert "2 3/8 in wide" in text(cautions(GROOVE, "router table"))
    wide = replace(GROOVE, piece=piece("24", "8", "3/4"))
    assert "push block goes where a hand would" not in text(cautions(wide, "router table"))


def test_long_boards_and_whole_sheets_ask_for_help() -> None:
    rip = WORKS["rip"]
    assert "60 in" in text(cautions(replace(rip, piece=piece("80", "6", "1")), "table saw"))
    assert "60 in" not in text(cautions(rip, "table saw"))
    assert "whole sheet" in text(cautions(replace(rip, piece=piece("96", "48", "3/4", "sheet")), "table saw"))


def test_a_caution_names_one_limit_at_a_time() -> None:
    """Two run together, `12 in8 in`, say nothing to anyone."""
    short = [replace(work, piece=piece("5", "1", "3/4")) for work in WORKS.values()]
    for work in (*WORKS.values(), *short):
        for tool in TOOLS:
            assert not re.search(r" in\d", text(cautions(work, tool))), (work.family, tool)
    clamped = cautions(replace(WORKS["crosscut to length"], piece=piece("5", "1", "3/4")), "mitre saw")
    assert "it is shorter than 12 in." in text(clamped)


def test_a_short_piece_at_a_stop_is_not_left_loose() -> None:
    work = replace(WORKS["crosscut to length"], length=inches("3"), piece=piece("40", "3", "3/4"))
    assert "take the stop away" in text(cautions(work, "mitre saw"))


def test_a_stopped_cut_on_a_router_table_says_how_it_begins() -> None:
    assert "lower it slowly" in text(cautions(WORKS["stopped dado"], "router table"))
    assert "lower it slowly" not in text(cautions(WORKS["dado"], "router table"))


def test_a_short_piece_at_a_router_table_is_pushed_with_blocks() -> None:
    short = replace(GROOVE, piece=piece("10", "2 3/8", "3/4"))
    assert "between featherboards" in text(cautions(short, "router table"))
    assert "between featherboards" not in text(cautions(GROOVE, "router table"))
