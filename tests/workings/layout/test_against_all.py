"""Small orders against every layout there could be, and bounds against orders whose answer is known."""

from __future__ import annotations

from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.workings.layout.bars import bar_bound
from benchalong.workings.layout.bounds import lower_bound
from benchalong.workings.layout.inner import inner_order
from benchalong.workings.layout.lay_out import lay_out
from benchalong.workings.layout.lies import Work
from benchalong.workings.layout.model import Board, Order, Piece, Rules
from workings.layout.checker import faults

Sizes = tuple[tuple[int, int], ...]


@cache
def fits(length: int, width: int, pieces: Sizes, turns: int, across: bool) -> bool:
    """Whether the pieces can be had from the rectangle, by trying every first cut.

    A piece alone may be trimmed.
    """
    if not pieces:
        return True
    if len(pieces) == 1:
        return pieces[0][0] <= length and pieces[0][1] <= width
    if turns == 0 or sum(a * b for a, b in pieces) > length * width:
        return False
    if not across:
        return fits(width, length, tuple(sorted((b, a) for a, b in pieces)), turns, True)
    return any(
        fits_either(at, width, near, turns, True) and fits_either(length - at, width, far, turns, True)
        for near, far in splits(pieces)
        for at in range(1, length)
    )


def fits_either(length: int, width: int, pieces: Sizes, turns: int, across: bool) -> bool:
    """Cutting on the same way, or the other way with a turn fewer."""
    return fits(length, width, pieces, turns, across) or fits(length, width, pieces, turns - 1, not across)


def splits(pieces: Sizes) -> list[tuple[Sizes, Sizes]]:
    """In two, neither empty; the first piece is on either side."""
    found = set()
    for mask in range(1, 2 ** len(pieces) - 1):
        near = tuple(piece for at, piece in enumerate(pieces) if mask >> at & 1)
        far = tuple(piece for at, piece in enumerate(pieces) if not mask >> at & 1)
        found.add((near, far))
    return sorted(found)


def fewest_boards(length: int, width: int, pieces: Sizes, turns: int) -> int:
    """By trying every way to share the pieces out."""

    def one_board(some: Sizes) -> bool:
        ordered = tuple(sorted(some))
        return any(fits(length, width, ordered, turns, across) for across in (True, False))

    @cache
    def fewest(some: Sizes) -> int:
        if not some:
            return 0
        if one_board(some):
            return 1
        return min(1 + fewest(far) for near, far in splits(some) if some[0] in near and one_board(near))

    return fewest(tuple(sorted(pieces)))


sizes = st.lists(st.tuples(st.integers(1, 6), st.integers(1, 5)), min_size=1, max_size=5)


@settings(deadline=None, max_examples=40)
@given(sizes, st.integers(1, 3))
def test_small_orders_are_laid_out_as_well_as_can_be(pieces: list[tuple[int, int]], turns: int) -> None:
    order = Order(
        (Board("board", 6, 5),),
        tuple(Piece(f"piece {at}", *size) for at, size in enumerate(pieces)),
        rules=Rules(turns=turns, effort=500_000),
    )
    layout = lay_out(order)
    assert faults(order, layout) == []
    assert layout.cost == fewest_boards(6, 5, tuple(pieces), turns)
    assert layout.lower_bound <= layout.cost
    assert bar_bound(inner_order(order), Work(10**9)) <= layout.cost


def fewest_sticks(length: int, lengths: tuple[int, ...]) -> int:
    """By trying every stick for every piece."""
    best = len(lengths)

    def place(at: int, rooms: list[int]) -> None:
        nonlocal best
        if len(rooms) >= best:
            return
        if at == len(lengths):
            best = len(rooms)
            return
        for index, room in enumerate(rooms):
            if room >= lengths[at]:
                place(at + 1, [*rooms[:index], room - lengths[at], *rooms[index + 1 :]])
        place(at + 1, [*rooms, length - lengths[at]])

    place(0, [])
    return best


@settings(deadline=None, max_examples=40)
@given(st.lists(st.integers(3, 30), min_size=1, max_size=8))
def test_few_sticks_are_cut_as_well_as_can_be(lengths: list[int]) -> None:
    order = Order(
        (Board("stick", 30, 1),), tuple(Piece(f"piece {at}", size, 1) for at, size in enumerate(lengths))
    )
    layout = lay_out(order)
    assert faults(order, layout) == []
    assert layout.cost == fewest_sticks(30, tuple(sorted(lengths, reverse=True)))
    assert layout.is_proven


@pytest.mark.parametrize(
    ("pieces", "may_turn", "bound"),
    [
        ([(6, 6, 5)], False, 5),
        ([(6, 6, 5)], True, 5),
        ([(6, 2, 5)], False, 1),
        ([(6, 4, 4)], False, 2),
        ([(4, 4, 5)], False, 2),
        ([(5, 5, 8)], False, 2),
    ],
)
def test_bounds_know_more_than_areas(pieces: list[tuple[int, int, int]], may_turn: bool, bound: int) -> None:
    kinds = tuple(
        Piece(f"piece {at}", length, width, number, may_turn)
        for at, (length, width, number) in enumerate(pieces)
    )
    assert lower_bound(inner_order(Order((Board("board", 10, 10),), kinds))) == bound


@pytest.mark.parametrize("kerf", [0, 3])
def test_a_kerf_by_rescaling_changes_nothing(kerf: int) -> None:
    """Everything ten times as large and a kerf smaller is the same problem."""
    pieces = ((7, 3, 3), (5, 5, 4), (3, 8, 2), (2, 2, 9), (9, 1, 3))
    order = Order(
        (Board("board", 180 - kerf, 90 - kerf),),
        tuple(Piece(f"p{at}", 10 * a - kerf, 10 * b - kerf, n) for at, (a, b, n) in enumerate(pieces)),
        rules=Rules(kerf=kerf, effort=500_000),
    )
    layout = lay_out(order)
    assert faults(order, layout) == []
    assert (layout.cost, layout.is_proven) == (2, True)
