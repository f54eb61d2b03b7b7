"""What a guide promises: never less than what the rest of a board turns out to be worth."""

from __future__ import annotations

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.workings.layout.beam import Beam
from benchalong.workings.layout.filling import Filler, Manner, Room
from benchalong.workings.layout.guiding import Guides
from benchalong.workings.layout.inner import inner_order
from benchalong.workings.layout.judging import ByRate
from benchalong.workings.layout.levels import Level
from benchalong.workings.layout.lies import Ints, Lies, Work
from benchalong.workings.layout.model import Board, Order, Piece, Way

LENGTH, WIDTH = 40, 25
SIZES = st.tuples(st.integers(4, 40), st.integers(3, 25), st.integers(1, 2), st.booleans())


def order(sizes: list[tuple[int, int, int, bool]]) -> Order:
    pieces = tuple(Piece(f"piece {at}", *size) for at, size in enumerate(sizes))
    return Order((Board("board", LENGTH, WIDTH),), pieces)


@given(st.lists(SIZES, min_size=3, max_size=7), st.integers(0, 99))
@settings(max_examples=40, deadline=None)
def test_the_rest_is_worth_no_more_than_a_guide_says(
    sizes: list[tuple[int, int, int, bool]], seed: int
) -> None:
    inner, work = inner_order(order(sizes)), Work(10**9)
    lies, left = Lies.of(inner), np.array(inner.demand)
    lies = lies.only((lies.length <= LENGTH) & (lies.width <= WIDTH))
    worth = np.random.default_rng(seed).uniform(0.1, 1.0, size=left.size)
    guide = Guides(lies, [LENGTH], work).guide(worth, left, length=LENGTH, width=WIDTH)
    assert guide is not None
    marks = np.arange(1, left.size + 1) * 1_000_003
    search = Beam(lies, length=LENGTH, width=WIDTH, boards=1, turns=3, left=left, worth=worth, marks=marks)
    depth, entry = search.run(60, 1, work, ByRate(0.0))[0]
    best = float(search.levels[depth].worth[entry])
    assert best <= guide.most + 1e-3
    for level in search.levels[depth:0:-1]:
        one = _only(level, entry)
        if one.y0[0] > 0:
            rest = guide.rest(x0=one.x0, x1=one.x1, y0=one.y0, y1=one.y1, x=one.x)
            assert one.worth[0] + rest[0] >= best - 1e-3
        entry = int(level.came_from[entry])


def _only(level: Level, entry: int) -> Level:
    at: Ints = np.array([entry])
    return Level(**{name: column[at] for name, column in vars(level).items()})


def test_guided_fillings_are_worth_more_at_uneven_prices() -> None:
    """Small dear pieces mislead a search by worth for room used, not one that knows what the rest is good
    for."""
    chance = np.random.default_rng(7)
    sizes = [(int(a), int(b), 1, True) for a, b in chance.integers([5, 4], [30, 24], size=(40, 2))]
    inner = inner_order(order(sizes))
    filler, left = Filler(inner, Work(10**9)), np.array(inner.demand)
    room = Room(LENGTH, WIDTH, 3, Way.ACROSS)
    by_rate = by_guide = 0.0
    for _ in range(8):
        areas = np.array([kind.area for kind in inner.kinds], dtype=float)
        worth = areas * chance.uniform(0.5, 1.5, size=areas.size)
        by_rate += filler.fill(room, left, worth, Manner(20))[0].worth
        cap = 1.3 * float(worth @ left) / float(areas @ left)
        by_guide += filler.fill(room, left, worth, Manner(20, cap=cap))[0].worth
    assert by_guide > by_rate
