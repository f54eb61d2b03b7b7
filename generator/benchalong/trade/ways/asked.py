"""What is asked of a tool, and how its answer is put together: the one place where ways are made."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
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
    """A work, and the shop it is asked in."""

    work: Work
    country: str = ""
    units: System = "inch"
    minutes: Minutes = field(default_factory=Minutes)

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


@dataclass(frozen=True, kw_only=True)
class Made:
    """What a tool's module says of a way; cautions and minutes are added here."""

    tool: Tool
    cutter: Cutter
    settings: Sequence[Setting] = ()
    guide: str = ""
    table: str = ""
    needs: Sequence[str] = ()
    with_tools: Sequence[Tool] = ()
    passes: Sequence[Length] = ()
    strokes: int = 1
    is_turned: bool = False
    does: Sequence[Words] = ()
    test: TestCut | None = None
    accuracy: Length = ZERO
    fed: Length | None = None
    """What one stroke is long, mm; the cut's own length unless given."""
    strokes_in_all: int | None = None
    """For one of the work; strokes times passes unless given."""
    extra: Fraction = Fraction(0)
    """More minutes to set."""
    for_all: Fraction | None = None
    why: Words = ()
    cautions: Sequence[Words] = ()
    rank: int = 1


def way(asked: Asked, made: Made) -> Way:
    """The finished way: with the tool's and the cut's cautions, and its minutes."""
    return Way(
        tool=made.tool,
        cutter=made.cutter,
        needs=tuple(made.needs),
        with_tools=tuple(made.with_tools),
        settings=tuple(made.settings),
        guide=made.guide,
        table=made.table,
        passes=tuple(made.passes),
        strokes=made.strokes,
        is_turned=made.is_turned,
        does=tuple(made.does),
        test=made.test,
        accuracy=made.accuracy,
        to_set=asked.minutes.setup(made.tool, with_test=made.test is not None, extra=made.extra),
        for_all=_for_all(asked, made),
        cautions=cautions(asked.work, made.tool, tuple(made.cautions)),
        why=made.why,
        rank=made.rank,
    )


def _for_all(asked: Asked, made: Made) -> Fraction:
    if made.for_all is not None:
        return made.for_all
    turns = 2 if made.is_turned else 1
    each = made.strokes_in_all
    if each is None:
        each = max(1, len(made.passes)) * made.strokes * turns
    fed, count = asked.work.length if made.fed is None else made.fed, asked.work.count
    return asked.minutes.strokes(made.tool, fed, strokes=count * each, placed=count * turns)
