"""Lay pieces out on boards: the whole search.

First boards are filled one after another, some times over, each time having learned from the last, and all at
once (`learning`). Every filling made is kept. Then prices ask for new fillings (`pricing`), and the kept
fillings are chosen from at the least cost (`diving`, `choosing`), in turns, until the cost meets the lower
bound (`bounding`) or the work allowed is done.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from benchalong.workings.layout.bounding import raise_bound, raise_bound_properly
from benchalong.workings.layout.bounds import lower_bound
from benchalong.workings.layout.branching import raise_bound_by_branching
from benchalong.workings.layout.choosing import choose_among_kept
from benchalong.workings.layout.diving import Dive
from benchalong.workings.layout.filling import Filler
from benchalong.workings.layout.inner import Inner
from benchalong.workings.layout.learning import all_at_once, learn
from benchalong.workings.layout.lies import Work
from benchalong.workings.layout.pricing import Pricing
from benchalong.workings.layout.search import IsOver, Search
from benchalong.workings.layout.sequence import Full, Sheets
from benchalong.workings.layout.stick_trees import as_sticks, by_length, filled_stick, is_sticks
from benchalong.workings.layout.sticks import cut_sticks
from benchalong.workings.layout.tidying import tidied

_BEAMS = (20, 60, *[150] * 1_000)
"""How wide the beams for prices are, round by round."""
_BRANCHING = (6, 2)
"""What part of the effort may be spent on bounds by branching, round by round."""
_DIVES, _FEW = 4, 8
"""How many dives a round has; and so few boards are well filled all at once."""
_TIDYING = 20
"""What part of the effort may be spent on tidying."""


@dataclass(frozen=True)
class Found:
    """Boards as filled, and how many of each kind found no room."""

    full: tuple[Full, ...]
    left_out: tuple[int, ...]
    lower_bound: int
    ended_early: bool


def lay_out_sheets(inner: Inner, *, effort: int, seed: int, is_over: IsOver = lambda: False) -> Found:
    """The best layout found. Bounded by `effort`; the same seed gives the same layout."""
    work = Work(effort)
    search = Search(inner, work, is_over, lower_bound(inner), missing=inner.demand)
    if is_sticks(inner):
        return _cut_as_sticks(search, seed)
    filler = Filler(inner, work)
    sheets = Sheets(inner, filler)
    chance = np.random.default_rng(seed)
    rounds = _rounds(search, sheets, filler, chance)
    while not search.is_done and next(rounds, None) is not None:
        pass
    ended_early = search.cost > search.bound and is_over()
    if not is_over():
        _tidy(search, sheets)
    return Found(search.best, search.missing, search.bound, ended_early)


def _tidy(search: Search, sheets: Sheets) -> None:
    """Fewer cuts and larger left-overs at the same cost, for a little more work."""
    work = search.work
    work.left = (work.left + work.spent) // _TIDYING
    search.offer(tidied(search.best, search.inner, sheets, work), np.array(search.missing))


def _cut_as_sticks(search: Search, seed: int) -> Found:
    inner, order = search.inner, by_length(search.inner)
    cut = cut_sticks(
        as_sticks(inner, order), bound=search.bound, work=search.work, seed=seed, is_over=search.is_over
    )
    full = tuple(Full(stick.stock, filled_stick(inner, order, stick)) for stick in cut.sticks)
    left_out = np.zeros(len(inner.kinds), dtype=np.int64)
    left_out[order] = cut.left_out
    return Found(full, tuple(left_out.tolist()), cut.bound, search.is_over() and not cut.is_proven)


def _rounds(search: Search, sheets: Sheets, filler: Filler, chance: np.random.Generator) -> Iterator[str]:
    """The steps of the search, one after another."""
    yield from _each("learn", learn(search, sheets, chance, passes=6))
    raise_bound(search)
    is_few = len(search.best) <= _FEW
    yield from _each("all at once", all_at_once(search, filler, chance, times=24 if is_few else 2))
    pricing = Pricing(search, sheets)
    for at, beam in enumerate(_BEAMS):
        yield from _each("price", pricing.run(beam, rounds=60))
        yield from _each("price nearby", pricing.nearby(chance, times=6))
        for _ in range(_DIVES):
            yield from _each("dive", Dive(search, sheets, chance, beam=beam).run())
            yield "dive"
        choose_among_kept(search)
        yield "choose"
        if at == 0:
            raise_bound_properly(search)
            yield "bound"
        if at < len(_BRANCHING):
            raise_bound_by_branching(search, share=_BRANCHING[at])
            yield "branch"
        yield from _each("all at once", all_at_once(search, filler, chance, times=8 if is_few else 2))
        yield from _each("learn", learn(search, sheets, chance, passes=2))


def _each(step: str, times: Iterator[None]) -> Iterator[str]:
    for _ in times:
        yield step
