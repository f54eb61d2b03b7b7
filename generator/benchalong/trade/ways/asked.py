"""What is asked of a tool, and how its answer is put together: the one place where ways are made."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from typing import TypeAlias

from benchalong.ground.lengths import INCH, Length
from benchalong.ground.shown import System
from benchalong.trade.cutters import BAND_KERF, KERF
from benchalong.trade.ways.cautions import cautions
from benchalong.trade.ways.minutes import Minutes
from benchalong.trade.ways.model import (
    ZERO,
    Cutter,
    Family,
    Limit,
    Refusal,
    Setting,
    TestCut,
    Tool,
    Way,
    Words,
    Work,
)

Answered: TypeAlias = "Way | Refusal"
Make: TypeAlias = "Callable[[Asked], Answered]"
Ways: TypeAlias = Mapping[Family, Make]
Refusals: TypeAlias = Mapping[Family, tuple[str, str]]
"""A family this tool never does: why, and what to do instead."""


@dataclass(frozen=True)
class Asked:
    """A work, the tool that is asked for it, and the shop."""

    work: Work
    tool: Tool
    country: str
    units: System
    minutes: Minutes

    @cached_property
    def step(self) -> Length:
        """What a depth is set by: 1/16 in or 1 mm."""
        return INCH / 16 if self.units == "inch" else Fraction(1)

    @property
    def kerf(self) -> Length:
        return KERF[self.units]

    @property
    def band_kerf(self) -> Length:
        return BAND_KERF[self.units]

    @property
    def is_soft(self) -> bool:
        return self.work.piece.wood == "soft"

    def limit(self, limit: Limit) -> Length:
        """As the shop's own system says it."""
        return limit.inch if self.units == "inch" else limit.millimetre


def length(key: str, name: str, value: Length) -> Setting:
    return Setting(key, name, length=value)


def degrees(key: str, name: str, value: Fraction) -> Setting:
    return Setting(key, name, degrees=value)


def way(
    asked: Asked,
    *,
    cutter: Cutter,
    settings: Sequence[Setting] = (),
    guide: str = "",
    table: str = "",
    needs: Sequence[str] = (),
    with_tools: Sequence[Tool] = (),
    passes: Sequence[Length] = (),
    strokes: int = 1,
    is_turned: bool = False,
    does: Sequence[Words] = (),
    test: TestCut | None = None,
    accuracy: Length = ZERO,
    why: Words = (),
    rank: int,
    fed: Length | None = None,
    strokes_in_all: int | None = None,
    extra: Fraction = Fraction(0),
    for_all: Fraction | None = None,
) -> Way:
    """What a tool's module says of a way, with the cautions of tool, cut and size and the minutes added.

    `fed`: what one stroke is long, mm; the cut's own length unless given. `strokes_in_all`: for one of the
    work; strokes times passes unless given. `extra`: more minutes to set. `for_all`: minutes for all of them,
    where they aren't reckoned by strokes.
    """
    turns = 2 if is_turned else 1
    if strokes_in_all is None:
        strokes_in_all = max(1, len(passes)) * strokes * turns
    if for_all is None:
        fed, count = asked.work.length if fed is None else fed, asked.work.count
        for_all = asked.minutes.strokes(asked.tool, fed, strokes=count * strokes_in_all, placed=count * turns)
    return Way(
        tool=asked.tool,
        cutter=cutter,
        needs=tuple(needs),
        with_tools=tuple(with_tools),
        settings=tuple(settings),
        guide=guide,
        table=table,
        passes=tuple(passes),
        strokes=strokes,
        is_turned=is_turned,
        does=tuple(does),
        test=test,
        accuracy=accuracy,
        to_set=asked.minutes.setup(asked.tool, with_test=test is not None, extra=extra),
        for_all=for_all,
        cautions=cautions(asked.work, asked.tool),
        why=why,
        rank=rank,
    )
