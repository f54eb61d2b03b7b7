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
from benchalong.trade.ways.practice import ACCURACY, HEAVY_WIDE, JOINTER_PASS, in_passes
from benchalong.trade.ways.said import worded

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

    def refuse(self, reason: str, instead: str, *sizes: Length | Limit, is_safety: bool = False) -> Refusal:
        """`reason` has a gap for each of the sizes."""
        return Refusal(self.tool, worded(reason, *sizes), (instead,), is_safety)

    def over(self, size: Length, limit: Limit, reason: str, instead: str) -> Refusal | None:
        """Refuses what is larger than the limit; `reason` has a gap for the size and one for the limit."""
        return self.refuse(reason, instead, size, limit) if size > limit.most else None

    def channel_passes(self, depth: Length, *, most: Length, wide: Length) -> tuple[Length, ...]:
        """Two or more for a wide channel in hardwood; none deeper than `most`."""
        is_heavy = wide > HEAVY_WIDE.most and self.work.piece.wood == "hard"
        return in_passes(depth, most, self.step, at_least=2 if is_heavy else 1)

    def light_passes(self) -> tuple[Length, ...]:
        """The work's depth, as a jointer takes it."""
        return in_passes(self.work.depth, self.limit(JOINTER_PASS), self.step / 2)


def way(
    asked: Asked,
    cutter: Cutter,
    *,
    settings: Sequence[Setting] = (),
    guide: str | None = None,
    table: str | None = None,
    needs: Sequence[str] = (),
    with_tools: Sequence[Tool] = (),
    passes: Sequence[Length] = (),
    strokes: int = 1,
    is_turned: bool = False,
    does: Sequence[Words] = (),
    test: TestCut | None = None,
    accuracy: Length | None = None,
    why: Words = (),
    rank: int,
    fed: Length | None = None,
    strokes_in_all: int | None = None,
    extra: Fraction = Fraction(0),
    for_all: Fraction | None = None,
) -> Way:
    """What a tool's module says of a way, with the cautions of tool, cut and size and the minutes added.

    Unless said otherwise the side that the cut is measured from runs along the guide, the side it is cut in
    lies on the table, and it comes out as exactly as the tool's work does.

    `fed`: what one stroke is long, mm; the cut's own length unless given. `strokes_in_all`: for one of the
    work; strokes times passes unless given. `extra`: more minutes to set. `for_all`: minutes for all of them,
    where they aren't reckoned by strokes.
    """
    work, tool, minutes = asked.work, asked.tool, asked.minutes
    turns = 2 if is_turned else 1
    if strokes_in_all is None:
        strokes_in_all = max(1, len(passes)) * strokes * turns
    if for_all is None:
        fed = work.length if fed is None else fed
        for_all = minutes.strokes(tool, fed, strokes=work.count * strokes_in_all, placed=work.count * turns)
    return Way(
        tool=tool,
        cutter=cutter,
        needs=tuple(needs),
        with_tools=tuple(with_tools),
        settings=tuple(settings),
        guide=work.from_side if guide is None else guide,
        table=work.in_side if table is None else table,
        passes=tuple(passes),
        strokes=strokes,
        is_turned=is_turned,
        does=tuple(does),
        test=test,
        accuracy=ACCURACY[tool] if accuracy is None else accuracy,
        to_set=minutes.setup(tool, with_test=test is not None, extra=extra),
        for_all=for_all,
        cautions=cautions(work, tool),
        why=why,
        rank=rank,
    )
