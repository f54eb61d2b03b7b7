"""Raise the bound step by step, from what takes little to what takes long, until it meets the cost."""

from __future__ import annotations

from math import ceil

import numpy as np

from benchalong.workings.layout.bars import bar_bound
from benchalong.workings.layout.search import Search
from benchalong.workings.layout.stage_bound import StageBound

_SHARE, _SHARE_PROPER = 8, 5
"""What part of the effort may be spent on the bound by stages: quickly, and properly."""


def raise_bound(search: Search) -> None:
    search.raise_bound_to(bar_bound(search.inner, search.work))
    if not search.is_done:
        _by_stages(search, _SHARE, is_proper=False)


def raise_bound_properly(search: Search) -> None:
    """Where the programme of the fillings kept leaves any hope that it helps."""
    hoped_for = ceil(search.prices.cost - 1e-6) if search.prices else 0
    if not search.is_done and hoped_for > search.bound:
        _by_stages(search, _SHARE_PROPER, is_proper=True)


def _by_stages(search: Search, share: int, *, is_proper: bool) -> None:
    stages = StageBound(search.inner, search.work, tuple(search.kept), is_proper=is_proper)
    spend = (search.work.left + search.work.spent) // share
    search.raise_bound_to(stages.raise_to(search.cost, spend))
    if stages.worth:
        search.steady = np.array(stages.worth)
