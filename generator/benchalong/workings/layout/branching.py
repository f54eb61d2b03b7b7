"""A bound that knows that boards are whole: branch and bound over how many of each kind are used.

The bound by stages lets half a board of some kind be used. Here it is asked again for layouts that use at
most so many of them, and for those that use more, and so on (branching on sums of a column generation's
columns: Vanderbeck 2000). Only where every branch costs as much as the best layout is anything proven.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import floor

from benchalong.workings.layout.search import Search
from benchalong.workings.layout.stage_bound import StageBound

_WHOLE = 1e-5


@dataclass(frozen=True)
class _Branch:
    """So many boards of each kind."""

    least: tuple[int, ...]
    most: tuple[int, ...]

    def parted(self, at: int, used: float) -> tuple[_Branch, _Branch]:
        few = (*self.most[:at], floor(used), *self.most[at + 1 :])
        many = (*self.least[:at], floor(used) + 1, *self.least[at + 1 :])
        return replace(self, most=few), replace(self, least=many)


def raise_bound_by_branching(search: Search, *, share: int) -> None:
    """To the cost of the best layout, or not at all. `share`: what part of the effort it may take."""
    inner, work = search.inner, search.work
    if search.is_done or len(inner.sheets) < 2 or inner.turns > 3 or search.cost == float("inf"):
        return
    stages = StageBound(inner, work, tuple(search.kept), is_proper=True)
    until = max(0, work.left - (work.left + work.spent) // share)
    numbers = tuple(sheet.number for sheet in inner.sheets)
    open_ = [_Branch((0,) * len(numbers), numbers)]
    while open_:
        branch = open_.pop()
        bound = stages.within(branch.least, branch.most, search.cost - search.step + 1, work.left - until)
        if bound > search.cost - search.step:
            continue
        parts = _uneven(stages.used())
        if parts is None or work.left <= until or search.is_over():
            return
        open_ += branch.parted(*parts)
    search.raise_bound_to(int(search.cost))


def _uneven(used: list[float]) -> tuple[int, float] | None:
    """The kind of board of which nearest to a half is used."""
    off = [abs(one - round(one)) for one in used]
    at = max(range(len(used)), key=lambda one: off[one])
    return (at, used[at]) if off[at] > _WHOLE else None
