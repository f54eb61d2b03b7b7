"""The cheapest order where what follows what has a price, and some things must come before others.

Known as the sequential ordering problem. Two neighbouring stretches of the order change places, without being
turned round, as long as nothing in the first is needed by something in the second: the one move that never
reverses a stretch, so prices that differ by direction stay right (path-preserving 3-exchange, Gambardella and
Dorigo 2000, "An ant colony system hybridized with a new local search for the sequential ordering problem").
From the best order found, a few random exchanges near one place and then downhill again, over and over
(iterated local search, Lourenco, Martin and Stutzle 2003). All exchanges with one end in a given place are
weighed at once. Bounded by the number of places looked at; the seed comes from outside.
"""

from __future__ import annotations

import random
from dataclasses import dataclass
from itertools import pairwise
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

Prices: TypeAlias = NDArray[np.int64]
"""n x n: what it costs when the column follows the row."""
Must: TypeAlias = NDArray[np.bool_]
"""n x n: the row must come before the column, directly or not."""
Exchange: TypeAlias = tuple[int, int, int]
"""(i, j, k): the stretch from i+1 to j changes places with the one from j+1 to k."""

_NEVER = np.int64(1) << 40
_SLACK = 0.01
"""How much dearer than the one before an order may be to go on from it, as a share of the best; less and less
towards the end. Tried on published instances: 0.003 to 0.03 do about as well, 0 gets stuck."""


def cheapest_order(
    prices: Prices, must: Must, first: tuple[int, ...], *, looks: int, seed: int = 0
) -> tuple[int, ...]:
    """The best order found from `first`, which must be one that can be done; its first and last stay where
    they are. `looks`: how many places to look at, one costs about n * n sums."""
    search = _Search(prices, must, looks)
    chance = random.Random(seed)
    best = here = search.downhill(_Order.of(prices, must, first), range(len(first)))
    while search.looks > 0 and len(first) > 4:
        shaken, near = search.shaken(here, chance)
        found = search.downhill(shaken, near)
        if found.price <= here.price + _SLACK * best.price * search.looks / looks * chance.random() ** 3:
            here = found
        if found.price < best.price:
            best = found
    return tuple(int(each) for each in best.order)


def price_of(prices: Prices, order: tuple[int, ...]) -> int:
    return int(sum(prices[a, b] for a, b in pairwise(order)))


@dataclass(frozen=True)
class _Order:
    """An order with its prices and needs by place, so that every exchange is a few sums."""

    order: NDArray[np.int64]
    price: int
    by_place: Prices
    blocked: NDArray[np.int32]
    """Sums from the corner, of which place must come before which: how many needs a rectangle holds."""

    @classmethod
    def of(cls, prices: Prices, must: Must, order: tuple[int, ...] | NDArray[np.int64]) -> _Order:
        places = np.asarray(order, dtype=np.int64)
        by_place = prices[np.ix_(places, places)]
        n = len(places)
        blocked = np.zeros((n + 1, n + 1), dtype=np.int32)
        blocked[1:, 1:] = must[np.ix_(places, places)].cumsum(axis=0, dtype=np.int32).cumsum(axis=1)
        return cls(places, int(np.trace(by_place, offset=1)), by_place, blocked)

    def exchanged(self, prices: Prices, must: Must, exchange: Exchange) -> _Order:
        i, j, k = exchange
        parts = (
            self.order[: i + 1],
            self.order[j + 1 : k + 1],
            self.order[i + 1 : j + 1],
            self.order[k + 1 :],
        )
        return _Order.of(prices, must, np.concatenate(parts))


class _Search:
    def __init__(self, prices: Prices, must: Must, looks: int) -> None:
        self.prices, self.must, self.looks = prices, must, looks

    def downhill(self, order: _Order, places: range | tuple[int, ...]) -> _Order:
        """Exchanges until none near the places that changed makes it cheaper."""
        waiting = {int(order.order[place]) for place in places}
        while waiting and self.looks > 0:
            thing = min(waiting)
            waiting.remove(thing)
            place = int(np.flatnonzero(order.order == thing)[0])
            self.looks -= 1
            exchange, gain = _best_at(order, place)
            if gain < 0:
                waiting |= {thing, *_ends(order, exchange)}
                order = order.exchanged(self.prices, self.must, exchange)
        return order

    def shaken(self, order: _Order, chance: random.Random) -> tuple[_Order, tuple[int, ...]]:
        """A few random exchanges near one place; and the places they touched."""
        n = len(order.order)
        middle = chance.randrange(n)
        touched: set[int] = set()
        for _ in range(chance.choice((1, 2, 2, 3))):
            self.looks -= 1
            exchange = _random_near(order, middle, chance)
            if exchange:
                touched |= _ends(order, exchange)
                order = order.exchanged(self.prices, self.must, exchange)
        places = np.flatnonzero(np.isin(order.order, list(touched)))
        return order, tuple(int(place) for place in places)


def _ends(order: _Order, exchange: Exchange) -> set[int]:
    """What stands at either side of the three cuts."""
    n = len(order.order)
    return {int(order.order[place]) for cut in exchange for place in (cut, cut + 1) if place < n}


def _random_near(order: _Order, middle: int, chance: random.Random) -> Exchange | None:
    n = len(order.order)
    for _ in range(20):
        i = min(max(0, middle + chance.randrange(-15, 16)), n - 4)
        if i < 0:
            return None
        j = i + 1 + min(chance.randrange(8), n - 4 - i)
        k = j + 1 + min(chance.randrange(8), n - 3 - j)
        if k <= n - 2 and not _held(order, i, j, k):
            return (i, j, k)
    return None


def _held(order: _Order, i: int, j: int, k: int) -> bool:
    """Whether something in the first stretch must come before something in the second."""
    held = order.blocked
    return bool(held[j + 1, k + 1] - held[i + 1, k + 1] - held[j + 1, j + 1] + held[i + 1, j + 1])


def _best_at(order: _Order, place: int) -> tuple[Exchange, int]:
    """The exchange that saves most, of those that cut just behind a place; first, middle or last cut."""
    ways = (_as_first, _as_middle, _as_last)
    return min((way(order, place) for way in ways), key=lambda each: each[1])


def _nothing(n: int) -> tuple[Exchange, int]:
    return (n, n, n), 0


def _as_first(order: _Order, i: int) -> tuple[Exchange, int]:
    n, price, held = len(order.order), order.by_place, order.blocked
    if i > n - 4:
        return _nothing(n)
    j = np.arange(i + 1, n - 2)
    k = np.arange(i + 2, n - 1)
    saved = (price[i, j + 1] - price[j, j + 1] - price[i, i + 1])[:, None] + (
        price[k, i + 1] - price[k, k + 1]
    )
    saved = saved + price[i + 1 : n - 2, i + 3 : n]
    needs = held[i + 2 : n - 1, i + 3 : n] - held[i + 1, i + 3 : n]
    needs = needs - (np.diagonal(held)[i + 2 : n - 1] - held[i + 1, i + 2 : n - 1])[:, None]
    saved = np.where((needs != 0) | (k[None, :] <= j[:, None]), _NEVER, saved)
    row, column = divmod(int(saved.argmin()), saved.shape[1])
    return (i, i + 1 + row, i + 2 + column), int(saved[row, column])


def _as_middle(order: _Order, j: int) -> tuple[Exchange, int]:
    n, price, held = len(order.order), order.by_place, order.blocked
    if j < 1 or j > n - 3:
        return _nothing(n)
    i = np.arange(0, j)
    k = np.arange(j + 1, n - 1)
    saved = (price[i, j + 1] - price[i, i + 1] - price[j, j + 1])[:, None] + (
        price[j, k + 1] - price[k, k + 1]
    )
    saved = saved + price[j + 1 : n - 1, 1 : j + 1].T
    needs = held[j + 1, j + 2 : n][None, :] - held[1 : j + 1, j + 2 : n]
    needs = needs - (held[j + 1, j + 1] - held[1 : j + 1, j + 1])[:, None]
    saved = np.where(needs != 0, _NEVER, saved)
    row, column = divmod(int(saved.argmin()), saved.shape[1])
    return (row, j, j + 1 + column), int(saved[row, column])


def _as_last(order: _Order, k: int) -> tuple[Exchange, int]:
    n, price, held = len(order.order), order.by_place, order.blocked
    if k < 2 or k > n - 2:
        return _nothing(n)
    i = np.arange(0, k - 1)
    j = np.arange(1, k)
    saved = (price[k, i + 1] - price[i, i + 1] - price[k, k + 1])[:, None] + (
        price[j, k + 1] - price[j, j + 1]
    )
    saved = saved + price[0 : k - 1, 2 : k + 1]
    needs = held[2 : k + 1, k + 1][None, :] - held[1:k, k + 1][:, None]
    needs = needs - np.diagonal(held)[2 : k + 1][None, :] + held[1:k, 2 : k + 1]
    saved = np.where((needs != 0) | (j[None, :] <= i[:, None]), _NEVER, saved)
    row, column = divmod(int(saved.argmin()), saved.shape[1])
    return (row, 1 + column, k), int(saved[row, column])
