"""Every kind of work against every tool: a way, or a refusal with its reason. No pair is left open."""

from __future__ import annotations

import functools
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from benchalong.ground.shown import System
from benchalong.trade.ways import band_saw, blade, drills, hand, milling, router, router_table, saws, stack
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways
from benchalong.trade.ways.minutes import Minutes
from benchalong.trade.ways.model import TOOLS, Answer, Refusal, Tool, Way, Work
from benchalong.trade.ways.safety import too_small
from benchalong.trade.ways.tools import with_all


@dataclass(frozen=True)
class Does:
    """What one tool does, and why it doesn't do the rest."""

    ways: Ways
    refusals: Refusals


TABLE: Mapping[Tool, Does] = {
    "table saw with a stacked cutter": Does(stack.WAYS, stack.REFUSALS),
    "table saw": Does(blade.WAYS, blade.REFUSALS),
    "router table": Does(router_table.WAYS, router_table.REFUSALS),
    "router": Does(router.WAYS, router.REFUSALS),
    "hand tools": Does(hand.WAYS, hand.REFUSALS),
    "track saw": Does(saws.TRACK_WAYS, saws.TRACK_REFUSALS),
    "band saw": Does(band_saw.WAYS, band_saw.REFUSALS),
    "mitre saw": Does(saws.CHOP_WAYS, saws.CHOP_REFUSALS),
    "jointer": Does(milling.JOINTER_WAYS, milling.JOINTER_REFUSALS),
    "planer": Does(milling.PLANER_WAYS, milling.PLANER_REFUSALS),
    "drill press": Does(drills.PRESS_WAYS, drills.REFUSALS),
    "drill": Does(drills.DRILL_WAYS, drills.REFUSALS),
    "jigsaw": Does(saws.JIG_WAYS, saws.JIG_REFUSALS),
    "bench": Does(milling.BENCH_WAYS, milling.BENCH_REFUSALS),
}


def ways(
    work: Work,
    tools: Iterable[Tool] = TOOLS,
    country: str = "",
    *,
    units: System = "inch",
    minutes: Minutes | None = None,
) -> Answer:
    """How this work is done with these tools: the best way first, and why the other tools won't do it.

    `units` says in which system the shop's cutters are sized. A tool brings what belongs to it, and every
    shop has a bench. The author's own words for tools are read by `tools.at_hand`.
    """
    there = with_all(tools)
    said = _usual(work, country, units) if minutes is None else _answers(work, country, units, minutes)
    found = [_with_others(said[tool], there) for tool in there]
    good = [one for one in found if isinstance(one, Way)]
    refused = tuple(one for one in found if isinstance(one, Refusal))
    return Answer(tuple(sorted(good, key=_best_first)), refused)


def _best_first(one: Way) -> tuple[object, ...]:
    return (one.rank, one.minutes, TOOLS.index(one.tool))


def _with_others(one: Answered, tools: tuple[Tool, ...]) -> Answered:
    """A way that another tool must finish is no way without it."""
    if isinstance(one, Refusal):
        return one
    missing = [tool for tool in one.with_tools if tool not in tools]
    if not missing:
        return one
    said = f"It can't be finished without {' and '.join(missing)}."
    return Refusal(one.tool, (said,), (f"Have {' and '.join(missing)} at hand too.",))


@functools.lru_cache(maxsize=8192)
def _usual(work: Work, country: str, units: System) -> Mapping[Tool, Answered]:
    """At usual rates; the same question is answered once."""
    return _answers(work, country, units, Minutes())


def _answers(work: Work, country: str, units: System, minutes: Minutes) -> Mapping[Tool, Answered]:
    """What every tool says to a work."""
    return {tool: _ask(Asked(work, tool, country, units, minutes)) for tool in TOOLS}


def _ask(asked: Asked) -> Answered:
    does, family, tool = TABLE[asked.tool], asked.work.family, asked.tool
    make = does.ways.get(family)
    if make is None:
        reason, instead = does.refusals[family]
        return Refusal(tool, (reason,), (instead,))
    if tool == "table saw with a stacked cutter" and (refused := stack.not_here(asked)) is not None:
        return refused
    return too_small(tool, asked.work) or make(asked)
