"""Minutes: common practice, an author's to change."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from benchalong.trade.ways.minutes import Minutes, rounded
from benchalong.trade.ways.model import FAMILIES, Family
from benchalong.trade.ways.table import ways
from trade.ways.works import DADO, GROOVE, WORKS


@pytest.mark.parametrize("family", FAMILIES)
def test_a_slower_pace_takes_longer_everywhere(family: Family) -> None:
    usual = {way.tool: way.minutes for way in ways(WORKS[family]).ways}
    slow = {way.tool: way.minutes for way in ways(WORKS[family], minutes=Minutes(pace=Fraction(2))).ways}
    assert slow == {tool: 2 * minutes for tool, minutes in usual.items()}


def test_a_setup_takes_its_minutes_once() -> None:
    few, many = (ways(replace(GROOVE, count=count)).ways for count in (2, 20))
    for one, other in zip(few, many, strict=True):
        assert one.to_set == other.to_set
        assert other.for_all == 10 * one.for_all


def test_a_router_in_the_hand_is_clamped_once_and_plunged_in_passes() -> None:
    narrow = replace(DADO, width=DADO.width / 2, depth=DADO.depth / 2)
    deep = replace(narrow, depth=2 * DADO.depth)
    shallow_way, deep_way = (
        next(way for way in ways(work).ways if way.tool == "router") for work in (narrow, deep)
    )
    assert len(deep_way.passes) > len(shallow_way.passes)
    assert deep_way.for_all < 2 * shallow_way.for_all


def test_by_hand_softwood_goes_faster() -> None:
    soft = replace(DADO, piece=replace(DADO.piece, wood="soft"))
    hard_way, soft_way = (
        next(way for way in ways(work).ways if way.tool == "hand tools") for work in (DADO, soft)
    )
    assert soft_way.for_all < hard_way.for_all


@pytest.mark.parametrize(
    ("minutes", "said"), [("0", 1), ("1/3", 1), ("9/2", 5), ("10", 10), ("101/10", 15), ("33", 35)]
)
def test_as_a_page_says_it(minutes: str, said: int) -> None:
    assert rounded(Fraction(minutes)) == said
