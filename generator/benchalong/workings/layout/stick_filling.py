"""Sticks filled one after another, each as full as it goes (Gupta & Ho 1999)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from benchalong.workings.layout.knapsack import fullest
from benchalong.workings.layout.stick_prices import Sticks, Stock


@dataclass(frozen=True)
class Stick:
    stock: int
    counts: tuple[int, ...]


def filled_after(
    sticks: Sticks, fixed: Sequence[Stick], rest: Sequence[int], *, with_longest: bool
) -> tuple[list[Stick], list[int]]:
    """The rest, filled stick after stick; and what found no room."""
    rest, made = list(rest), []
    free = [stock.number for stock in sticks.stocks]
    for stick in fixed:
        free[stick.stock] -= 1
    while any(rest):
        tries = [
            (_rate(sticks, stock, counts), -at, counts)
            for at, stock in enumerate(sticks.stocks)
            if free[at] > 0 and any(counts := _fullest(sticks, stock, rest, with_longest=with_longest))
        ]
        if not tries:
            break
        _, minus_at, counts = max(tries)
        held = [kind for kind, n in enumerate(counts) if n]
        times = min(free[-minus_at], *(rest[kind] // counts[kind] for kind in held))
        made += [Stick(-minus_at, tuple(counts))] * times
        free[-minus_at] -= times
        rest = [left - times * n for left, n in zip(rest, counts, strict=True)]
    return made, rest


def _rate(sticks: Sticks, stock: Stock, counts: Sequence[int]) -> float:
    return float(np.dot(counts, sticks.lengths)) / max(stock.cost, 1e-9)


def _fullest(sticks: Sticks, stock: Stock, rest: Sequence[int], *, with_longest: bool) -> list[int]:
    """Longest pieces are preferred; with the longest that fits taken first, if so wanted."""
    most, room, first = list(rest), stock.length, None
    if with_longest:
        first = next((k for k, n in enumerate(rest) if n and sticks.lengths[k] <= room), None)
        if first is None:
            return [0] * len(rest)
        most[first] -= 1
        room -= sticks.lengths[first]
    counts = fullest(sticks.lengths[::-1], most[::-1], room)[::-1]
    if first is not None:
        counts[first] += 1
    return counts
