"""Every kind of work against every tool, and every set of a dozen tools."""

from __future__ import annotations

from itertools import product

import pytest

from benchalong.ground.lengths import INCH
from benchalong.ground.shown import SYSTEMS, Precision, System
from benchalong.trade.ways.model import FAMILIES, TOOLS, Answer, Family, Refusal, Tool, Way
from benchalong.trade.ways.said import said
from benchalong.trade.ways.table import TABLE, ways
from trade.ways.works import WORKS

DOZEN: tuple[Tool, ...] = TOOLS[:12]
FINE = Precision(inch=INCH / 64)


def both(answer: Answer) -> tuple[Way | Refusal, ...]:
    return (*answer.ways, *answer.refusals)


def test_a_dozen_tools() -> None:
    assert len(DOZEN) == 12
    assert set(TABLE) == set(TOOLS)
    assert set(WORKS) == set(FAMILIES)


@pytest.mark.parametrize("tool", TOOLS)
def test_a_tool_has_a_way_or_a_reason_for_every_family(tool: Tool) -> None:
    does = TABLE[tool]
    assert does.ways.keys() | does.refusals.keys() == set(FAMILIES)
    assert not does.ways.keys() & does.refusals.keys()
    for reason, instead in does.refusals.values():
        assert reason.endswith(".")
        assert instead.endswith(".")


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize(("family", "tool"), list(product(FAMILIES, TOOLS)))
def test_every_pair_is_answered(family: Family, tool: Tool, units: System) -> None:
    answer = ways(WORKS[family], [tool, "hand tools"], units=units)
    found = [one for one in both(answer) if one.tool == tool]
    assert len(found) == 1
    one = found[0]
    if isinstance(one, Refusal):
        assert said(one.reason, units, FINE).endswith(".")
        assert said(one.instead, units, FINE).endswith(".")
        return
    assert one.cutter.name
    assert one.guide or one.table
    assert one.does or one.settings
    assert one.minutes > 0
    assert "manual" in said(one.cautions[-1], units, FINE)
    assert len(one.cautions) > 1


def test_every_family_has_a_way_with_all_tools() -> None:
    for work in WORKS.values():
        assert ways(work).ways, work.family


def brought(tools: tuple[Tool, ...]) -> set[Tool]:
    """A saw that takes a stack takes one blade, and every shop has a bench."""
    saw: set[Tool] = {"table saw"} if "table saw with a stacked cutter" in tools else set()
    return {*tools, *saw, "bench"}


@pytest.mark.parametrize("family", FAMILIES)
def test_every_set_of_a_dozen_tools_says_yes_or_why_not(family: Family) -> None:
    """4,096 sets, the yes or no worked out once more from what each tool says by itself."""
    alone = {one.tool: set(one.with_tools) for one in ways(WORKS[family]).ways}
    for mask in range(4096):
        tools = tuple(tool for n, tool in enumerate(DOZEN) if mask >> n & 1)
        there = brought(tools)
        answer = ways(WORKS[family], tools)
        can = {tool for tool in there if tool in alone and alone[tool] <= there}
        assert {one.tool for one in answer.ways} == can
        assert {one.tool for one in answer.refusals} == there - can
        assert answer.ways or all(one.reason and one.instead for one in answer.refusals)


def test_no_tool_at_all_glues_and_sands_and_no_more() -> None:
    assert [family for family in FAMILIES if ways(WORKS[family], []).ways] == [
        "glue up a panel",
        "flush",
        "sand",
    ]


def test_the_best_way_comes_first_and_keeps_its_place() -> None:
    answer = ways(WORKS["groove"])
    ranks = [(one.rank, one.minutes) for one in answer.ways]
    assert ranks == sorted(ranks)
    assert answer == ways(WORKS["groove"])


@pytest.mark.parametrize(
    ("country", "best"),
    [
        ("US", "table saw with a stacked cutter"),
        ("", "table saw with a stacked cutter"),
        ("Germany", "router table"),
        ("united kingdom", "router table"),
    ],
)
def test_a_stack_only_where_the_country_takes_it(country: str, best: str) -> None:
    answer = ways(WORKS["groove"], country=country)
    assert answer.ways[0].tool == best


def test_a_way_that_needs_another_tool_is_refused_without_it() -> None:
    answer = ways(WORKS["mortise"], ["drill press"])
    assert not answer.ways
    reason = next(one for one in answer.refusals if one.tool == "drill press").reason
    assert reason == ("It can't be finished without hand tools.",)
    assert ways(WORKS["mortise"], ["drill press", "hand tools"]).ways[0].tool == "drill press"
