"""Layouts made board by board, or of all boards at once, each time a little differently."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from benchalong.workings.layout.filling import Filler, Manner, Room
from benchalong.workings.layout.model import Way
from benchalong.workings.layout.search import Search
from benchalong.workings.layout.sequence import Full, Sheets, corrected, first_worth, in_sequence

_MOST_AT_ONCE = 800
"""For how many pieces all boards at once are tried."""
_LEANS = (0.0, 0.0, 0.2, 0.5, None)


def learn(search: Search, sheets: Sheets, chance: np.random.Generator, *, passes: int) -> Iterator[None]:
    """Boards filled in sequence, so many times; with a wide beam where a pass is short."""
    inner = search.inner
    power = float(chance.uniform(1.0, 1.1))
    worth = first_worth(inner, power)
    numbers = [sheet.number for sheet in inner.sheets]
    for _ in range(passes):
        before = search.work.spent
        lean = _LEANS[int(chance.integers(len(_LEANS)))]
        manner = Manner(int(search.beam * chance.choice([0.5, 1, 2])), lean)
        free = numbers if chance.random() < 0.5 else _some(numbers, chance)
        full, left = in_sequence(inner, sheets, worth, manner, np.array(inner.demand), free)
        for board in full:
            search.keep(board.sheet, board.filled)
        search.offer(full, left)
        worth = corrected(inner, worth, full, power, chance)
        search.adjust_beam(search.work.spent - before)
        yield


def _some(numbers: list[int], chance: np.random.Generator) -> list[int]:
    """Some kinds of board only, so that others than the seemingly best are tried too."""
    taken = chance.random(len(numbers)) < 0.5
    taken[int(chance.integers(len(numbers)))] = True
    return [number if is_taken else 0 for number, is_taken in zip(numbers, taken.tolist(), strict=True)]


def all_at_once(search: Search, filler: Filler, chance: np.random.Generator, *, times: int) -> Iterator[None]:
    """As many boards of one kind as are still cheaper than the best, all filled in one search."""
    inner, demand = search.inner, np.array(search.inner.demand)
    clear = [index for index, sheet in enumerate(inner.sheets) if not sheet.defects]
    if not clear or sum(inner.demand) > _MOST_AT_ONCE:
        return
    for at in range(times):
        index = clear[int(chance.integers(len(clear)))]
        sheet = inner.sheets[index]
        room = Room(sheet.length, sheet.width, inner.turns, inner.first)
        boards = min(sheet.number, max(1, search.boards_below(sheet.cost)))
        swap = inner.first is Way.ALONG if inner.first else at % 2 == 1
        worth = first_worth(inner, float(chance.uniform(1.0, 1.05)))
        manner = _wide(search, chance, float(worth @ demand) / _area(search))
        filled = filler.fill_several(room, boards, demand, worth=worth, manner=manner, swap=swap)
        for one in filled:
            search.keep(index, one)
        left = demand - np.sum([one.counts for one in filled], axis=0) if filled else demand
        search.offer([Full(index, one) for one in filled], left)
        yield


def _wide(search: Search, chance: np.random.Generator, rate: float) -> Manner:
    """A manner for many boards at once. `rate`: what the pieces are worth for their area."""
    beam = int(search.wide_beam(np.array(search.inner.demand)) * chance.choice([0.3, 1, 2]))
    if chance.random() < 0.35:
        return Manner(max(20, beam // 4), cap=float(chance.uniform(0.85, 1.0)) * rate)
    return Manner(beam, None if chance.random() < 0.2 else float(chance.uniform(0.0, 0.15)))


def _area(search: Search) -> float:
    return float(sum(kind.area * kind.demand for kind in search.inner.kinds))
