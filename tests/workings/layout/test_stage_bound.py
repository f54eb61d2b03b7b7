"""The bound by stages against every layout there could be, on small boards with and without a defect."""

from __future__ import annotations

from functools import cache

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from benchalong.workings.layout.inner import inner_order
from benchalong.workings.layout.lies import Work
from benchalong.workings.layout.model import Board, Order, Piece, Rectangle, Rules, Way
from benchalong.workings.layout.stage_bound import StageBound

LENGTH, WIDTH = 6, 5
Sizes = tuple[tuple[int, int], ...]
Region = tuple[int, int, int, int]
"""x, y, length, width."""


class Every:
    """Tries every cut on a board with one defect."""

    def __init__(self, defect: Rectangle | None) -> None:
        self._defect = defect
        self.fits = cache(self._fits)

    def one_board(self, pieces: Sizes, turns: int, first: Way | None) -> bool:
        whole = (0, 0, LENGTH, WIDTH)
        ways = [way for way in Way if first in (None, way)]
        return any(self.fits(whole, tuple(sorted(pieces)), turns, way) for way in ways)

    def _fits(self, at: Region, pieces: Sizes, turns: int, way: Way) -> bool:
        """Whether they can be had, cutting this way, with so many turns left, this one counted."""
        if not pieces:
            return True
        if len(pieces) == 1:
            return self._lies_somewhere(at, pieces[0])
        if turns == 0 or sum(a * b for a, b in pieces) > at[2] * at[3]:
            return False
        return any(
            self._either(near, some, turns, way) and self._either(far, others, turns, way)
            for near, far in _cuts(at, way)
            for some, others in _splits(pieces)
        )

    def _either(self, at: Region, pieces: Sizes, turns: int, way: Way) -> bool:
        return self.fits(at, pieces, turns, way) or self.fits(at, pieces, turns - 1, way.other)

    def _lies_somewhere(self, at: Region, size: tuple[int, int]) -> bool:
        return any(
            self._defect is None or not self._defect.overlaps(Rectangle(x, y, *size))
            for x in range(at[0], at[0] + at[2] - size[0] + 1)
            for y in range(at[1], at[1] + at[3] - size[1] + 1)
        )


def _cuts(at: Region, way: Way) -> list[tuple[Region, Region]]:
    x, y, length, width = at
    if way is Way.ACROSS:
        return [((x, y, cut, width), (x + cut, y, length - cut, width)) for cut in range(1, length)]
    return [((x, y, length, cut), (x, y + cut, length, width - cut)) for cut in range(1, width)]


def _splits(pieces: Sizes) -> set[tuple[Sizes, Sizes]]:
    """In two, either of them perhaps empty: waste may lie anywhere."""
    found = set()
    for mask in range(2 ** len(pieces)):
        some = tuple(piece for at, piece in enumerate(pieces) if mask >> at & 1)
        found.add((some, tuple(piece for at, piece in enumerate(pieces) if not mask >> at & 1)))
    return found


def fewest_boards(every: Every, pieces: Sizes, turns: int, first: Way | None) -> float:
    if not pieces:
        return 0
    if every.one_board(pieces, turns, first):
        return 1
    return min(
        (
            1 + fewest_boards(every, others, turns, first)
            for some, others in _splits(pieces)
            if some and pieces[0] in some and others and every.one_board(some, turns, first)
        ),
        default=float("inf"),
    )


sizes = st.lists(st.tuples(st.integers(1, 6), st.integers(1, 5)), min_size=2, max_size=4)
defects = st.builds(Rectangle, st.integers(0, 5), st.integers(0, 4), st.integers(1, 6), st.integers(1, 4))


@settings(deadline=None, max_examples=40, suppress_health_check=list(HealthCheck))
@given(sizes, st.integers(1, 3), st.none() | defects, st.sampled_from([None, *Way]), st.booleans())
def test_no_layout_is_better_than_the_bound(
    pieces: list[tuple[int, int]], turns: int, defect: Rectangle | None, first: Way | None, is_proper: bool
) -> None:
    order = Order(
        (Board("board", LENGTH, WIDTH, defects=(defect,) if defect else ()),),
        tuple(Piece(f"piece {at}", *size) for at, size in enumerate(pieces)),
        rules=Rules(turns=turns, first=first),
    )
    fewest = fewest_boards(Every(defect), tuple(sorted(pieces)), turns, first)
    inner = inner_order(order)
    if inner.kinds and not inner.left_out:
        stages = StageBound(inner, Work(10**9), (), is_proper=is_proper)
        assert stages.raise_to(float("inf"), 10**9) <= min(fewest, len(pieces))


def bound(order: Order, *, is_proper: bool = False) -> int:
    stages = StageBound(inner_order(order), Work(10**9), (), is_proper=is_proper)
    return stages.raise_to(float("inf"), 10**9)


def test_a_piece_is_not_counted_twice() -> None:
    """A rail of 60 goes beside two sides of 45 end to end; the odd side would go beside such rails again,
    were there more of them."""
    pieces = (Piece("side", 45, 6, 2), Piece("rail", 60, 4, 2), Piece("odd side", 45, 7))
    order = Order((Board("board", 100, 10, 4),), pieces, rules=Rules(first=Way.ACROSS))
    assert (bound(order), bound(order, is_proper=True)) == (2, 3)


@pytest.mark.parametrize(
    ("pieces", "defect", "first", "boards"),
    [
        # When the crosscut comes first, a wide piece and a full-length one never share a board.
        ([(100, 4, 1), (50, 6, 2)], None, Way.ALONG, 1),
        ([(100, 4, 1), (50, 6, 2)], None, Way.ACROSS, 1),
        ([(60, 7, 1), (80, 3, 1), (40, 8, 1)], None, Way.ACROSS, 2),
        # A knot in the middle spoils the one full-width panel.
        ([(60, 10, 1), (45, 10, 1)], Rectangle(45, 4, 10, 2), None, 2),
        ([(45, 10, 2)], Rectangle(45, 4, 10, 2), None, 1),
        # Sapwood along the edge narrows the board.
        ([(50, 5, 4)], Rectangle(0, 0, 100, 1), None, 2),
    ],
)
def test_it_knows_what_areas_do_not(
    pieces: list[tuple[int, int, int]], defect: Rectangle | None, first: Way | None, boards: int
) -> None:
    kinds = tuple(Piece(f"piece {at}", *size) for at, size in enumerate(pieces))
    board = Board("board", 100, 10, 2, defects=(defect,) if defect else ())
    assert bound(Order((board,), kinds, rules=Rules(first=first))) == boards
