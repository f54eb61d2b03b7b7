"""Every kind of work against every tool: a way, or a refusal with its reason. No pair is left open."""

from __future__ import annotations

import functools
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from benchalong.ground.shown import System
from benchalong.trade.ways import (
    band_saw,
    bench,
    blade,
    drills,
    hand,
    jigsaw,
    milling,
    mitre_saw,
    router,
    router_table,
    stack,
    track_saw,
)
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
    not_here: Callable[[Asked], Refusal | None] | None = None
    """Why the tool isn't used where this shop stands."""


TABLE: Mapping[Tool, Does] = {
    "table saw with a stacked cutter": Does(stack.WAYS, stack.REFUSALS, stack.not_here),
    "table saw": Does(blade.WAYS, blade.REFUSALS),
    "router table": Does(router_table.WAYS, router_table.REFUSALS),
    "router": Does(router.WAYS, router.REFUSALS),
    "hand tools": Does(hand.WAYS, hand.REFUSALS),
    "track saw": Does(track_saw.WAYS, track_saw.REFUSALS),
    "band saw": Does(band_saw.WAYS, band_saw.REFUSALS),
    "mitre saw": Does(mitre_saw.WAYS, mitre_saw.REFUSALS),
    "jointer": Does(milling.JOINTER_WAYS, milling.JOINTER_REFUSALS),
    "planer": Does(milling.PLANER_WAYS, milling.PLANER_REFUSALS),
    "drill press": Does(drills.PRESS_WAYS, drills.REFUSALS),
    "drill": Does(drills.DRILL_WAYS, drills.REFUSALS),
    "jigsaw": Does(jigsaw.WAYS, jigsaw.REFUSALS),
    "bench": Does(bench.WAYS, bench.REFUSALS),
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
    does, family = TABLE[asked.tool], asked.work.family
    make = does.ways.get(family)
    if make is None:
        return asked.refuse(*does.refusals[family])
    return (does.not_here(asked) if does.not_here else None) or too_small(asked) or make(asked)
