"""A whole choice among the fillings kept."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from benchalong.workings.layout.filling import Filled
from benchalong.workings.layout.inner import Inner
from benchalong.workings.layout.master import CHOICE, ITERATION_OF_CHOICE, Column, choose, worth_choosing
from benchalong.workings.layout.search import Search
from benchalong.workings.layout.sequence import Full
from benchalong.workings.layout.tree import without

_SHARE = 20
"""What part of the effort a choice may take, about."""
_LEAST, _MOST = 10, 1_000
"""How many nodes of the tree are searched."""


def choose_among_kept(search: Search) -> None:
    """A better whole choice among the fillings kept, if there is one.

    The solver counts nodes but can't be told how many iterations they may take; so many nodes are searched as
    the last choice lets expect within the share."""
    inner = search.inner
    prices = search.prices = search.master().prices()
    at_most = search.cost - search.step if np.isfinite(search.cost) else search.cost_of_all
    if not search.kept or prices.cost > at_most + 1e-6:
        search.hopeless += 1
        return
    every = list(search.kept)
    columns = [Column(sheet, inner.sheets[sheet].cost, counts) for sheet, counts in every]
    chosen = worth_choosing(columns, prices, at_most - prices.cost)
    keys, columns = [every[at] for at in chosen], [columns[at] for at in chosen]
    numbers = [sheet.number for sheet in inner.sheets]
    share = (search.work.left + search.work.spent) / _SHARE / ITERATION_OF_CHOICE
    nodes = int(np.clip(share / search.iterations_a_node, _LEAST, _MOST))
    choice = choose(columns, inner.demand, numbers, at_most=at_most + 1e-6, nodes=nodes)
    search.work.spend(choice.iterations * ITERATION_OF_CHOICE + CHOICE)
    search.iterations_a_node = max(10.0, choice.iterations / max(choice.nodes, 1))
    if choice.times is None:
        return
    full = [
        Full(key[0], search.kept[key])
        for key, times in zip(keys, choice.times, strict=True)
        for _ in range(times)
    ]
    search.offer(without_spares(full, inner), np.zeros(len(inner.kinds), dtype=np.int64))


def without_spares(full: Sequence[Full], inner: Inner) -> list[Full]:
    """What is cut more often than wanted becomes waste, on the emptiest boards first."""
    counts = np.sum([board.filled.counts for board in full], axis=0)
    spare = dict(enumerate((counts - np.array(inner.demand)).tolist()))
    areas = np.array([kind.area for kind in inner.kinds])
    order = sorted(range(len(full)), key=lambda at: float(np.array(full[at].filled.counts) @ areas))
    made = list(full)
    for at in order:
        made[at] = _without(full[at], spare, inner)
    return [board for board in made if any(board.filled.counts)]


def _without(board: Full, spare: dict[int, int], inner: Inner) -> Full:
    here = {
        kind: min(spare[kind], count)
        for kind, count in enumerate(board.filled.counts)
        if count and spare[kind] > 0
    }
    if not here:
        return board
    counts = tuple(count - here.get(kind, 0) for kind, count in enumerate(board.filled.counts))
    for kind, number in here.items():
        spare[kind] -= number
    members = {kind: number * len(inner.kinds[kind].sizes) for kind, number in here.items()}
    tree = without(board.filled.tree, members)
    return Full(board.sheet, Filled(tree, counts, board.filled.worth))
