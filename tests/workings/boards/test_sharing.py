"""Boards shared among groups: each board once, and a way that suffices wherever there is one."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.workings.boards.sharing import Numbers, share


class Sticks:
    """Groups that need so many pieces of one length; a board of `length` gives length // piece of them."""

    def __init__(self, lengths: Sequence[int], needs: Sequence[tuple[int, int]]) -> None:
        self._lengths, self._needs, self.asked = lengths, needs, 0

    def __call__(self, group: int, boards: Numbers, /) -> tuple[Numbers, bool]:
        """Takes the longest first."""
        self.asked += 1
        number, piece = self._needs[group]
        used, left = [0] * len(boards), number
        for kind in sorted(range(len(boards)), key=lambda each: -self._lengths[each]):
            while left > 0 and used[kind] < boards[kind] and self._lengths[kind] >= piece:
                used[kind] += 1
                left -= self._lengths[kind] // piece
        return tuple(used), left <= 0

    def may_suffice(self, group: int, boards: Numbers, /) -> bool:
        number, piece = self._needs[group]
        return number * piece <= sum(n * length for n, length in zip(boards, self._lengths, strict=True))


BOTH = (True, True)


@pytest.mark.parametrize(
    ("lengths", "there", "may_use", "needs", "offers"),
    [
        # one board is enough for either, and there is but one: the thicker group has it
        ((10,), (1,), [(True,), (True,)], [(1, 10), (1, 10)], ((1,), (0,))),
        # thin wood comes from thin boards, though a thick one is longer
        ((20, 10), (1, 2), [(True, False), BOTH], [(1, 8), (2, 8)], ((1, 0), (0, 2))),
        # what is thick and left goes to the thin group, when its own boards are too few
        ((20, 10), (2, 1), [(True, False), BOTH], [(1, 8), (3, 8)], ((2, 0), (1, 1))),
        # by itself the thick group would take the long board, which only the thin one needs
        ((20, 10), (1, 1), [BOTH, BOTH], [(1, 8), (1, 18)], ((0, 1), (1, 0))),
    ],
)
def test_who_gets_what(
    lengths: Sequence[int],
    there: Numbers,
    may_use: Sequence[Sequence[bool]],
    needs: Sequence[tuple[int, int]],
    offers: tuple[Numbers, ...],
) -> None:
    assert share(there, may_use, Sticks(lengths, needs)).offers == offers


def test_it_says_when_not_all_ways_were_tried() -> None:
    lengths = tuple(range(10, 30))
    needs = [(8, 10), (8, 11), (10, 13)]
    sticks = Sticks(lengths, needs)
    found = share((1,) * 20, [(True,) * 20] * 3, sticks)
    assert not found.are_all_tried or all(sticks(g, offer)[1] for g, offer in enumerate(found.offers))
    assert sticks.asked < 200


GROUPS = st.lists(st.tuples(st.integers(1, 4), st.integers(2, 9)), min_size=1, max_size=3)


@settings(max_examples=150, deadline=None)
@given(
    st.lists(st.tuples(st.integers(2, 20), st.integers(1, 2), st.integers(0, 2)), min_size=1, max_size=4),
    GROUPS,
)
def test_each_board_goes_to_one_and_a_way_that_suffices_is_found(
    kinds: list[tuple[int, int, int]], needs: list[tuple[int, int]]
) -> None:
    lengths, there = [kind[0] for kind in kinds], tuple(kind[1] for kind in kinds)
    may_use = [[first <= group for _, _, first in kinds] for group in range(len(needs))]
    sticks = Sticks(lengths, needs)
    found = share(there, may_use, sticks)
    used = [sticks(group, offer)[0] for group, offer in enumerate(found.offers)]
    for kind, number in enumerate(there):
        assert sum(each[kind] for each in used) <= number
        assert all(not each[kind] or may_use[group][kind] for group, each in enumerate(used))
    suffices = all(sticks(group, offer)[1] for group, offer in enumerate(found.offers))
    if found.are_all_tried:
        assert suffices == _any_way(sticks, there, may_use)


def _any_way(sticks: Sticks, there: Numbers, may_use: list[list[bool]]) -> bool:
    """By trying every way to deal the boards out."""
    owners = [
        [group for group in range(len(may_use)) if may_use[group][kind]] or [-1]
        for kind, number in enumerate(there)
        for _ in range(number)
    ]
    kinds = [kind for kind, number in enumerate(there) for _ in range(number)]
    for dealt in product(*owners):
        offers = [
            tuple(
                sum(k == kind and owner == group for k, owner in zip(kinds, dealt, strict=True))
                for kind in range(len(there))
            )
            for group in range(len(may_use))
        ]
        if all(sticks(group, offer)[1] for group, offer in enumerate(offers)):
            return True
    return False
