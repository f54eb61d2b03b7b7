"""Every layout is sawn up again by the checker, and small ones are set against all there could be."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings

from benchalong.workings.layout.lay_out import lay_out
from benchalong.workings.layout.model import Board, MatchSet, Order, Piece, Rectangle, Rules, Trim, Way
from workings.layout.checker import faults
from workings.layout.orders import orders

SLOW = settings(deadline=None, max_examples=60, suppress_health_check=list(HealthCheck))


@SLOW
@given(orders())
def test_any_layout_can_be_sawn(order: Order) -> None:
    assert faults(order, lay_out(order)) == []


@settings(SLOW, max_examples=15)
@given(orders())
def test_the_same_order_gives_the_same_layout(order: Order) -> None:
    assert lay_out(order) == lay_out(order)


@settings(SLOW, max_examples=20)
@given(orders())
def test_it_does_not_matter_in_which_order_pieces_are_told(order: Order) -> None:
    assert lay_out(replace(order, pieces=order.pieces[::-1])) == lay_out(order)


def order(
    *pieces: Piece,
    board: Board | None = None,
    kerf: int = 0,
    turns: int = 3,
    sets: tuple[MatchSet, ...] = (),
    first: Way | None = None,
) -> Order:
    boards = (board or Board("board", 100, 40),)
    return Order(boards, pieces, sets, Rules(kerf=kerf, turns=turns, first=first, effort=500_000))


@pytest.mark.parametrize(
    ("kerf", "boards"),
    [(0, 1), (1, 2)],
)
def test_a_kerf_takes_its_room(kerf: int, boards: int) -> None:
    layout = lay_out(order(Piece("rail", 50, 40, 2), kerf=kerf))
    assert len(layout.boards) == boards
    assert layout.is_proven


def test_the_last_cut_may_take_less_than_a_kerf() -> None:
    wanted = order(Piece("rail", 98, 40), kerf=3)
    layout = lay_out(wanted)
    assert faults(wanted, layout) == []
    assert [cut.at for cut in layout.boards[0].cuts] == [98]
    assert layout.boards[0].left_over == ()


def test_a_piece_keeps_clear_of_a_defect() -> None:
    knot = Board("board", 100, 40, defects=(Rectangle(40, 0, 5, 40),))
    wanted = order(Piece("rail", 55, 40), Piece("stile", 40, 40), board=knot, kerf=3)
    layout = lay_out(wanted)
    assert faults(wanted, layout) == []
    assert len(layout.boards) == 1
    assert sorted(placed.at.x for placed in layout.boards[0].placed) == [0, 45]


def test_trim_comes_off_first() -> None:
    board = Board("board", 100, 40, trim=Trim(start=4, end=4, near=2, far=0))
    wanted = order(Piece("panel", 92, 38), board=board, kerf=3)
    layout = lay_out(wanted)
    assert faults(wanted, layout) == []
    assert [(cut.way, cut.at, cut.stage) for cut in layout.boards[0].cuts] == [
        (Way.ACROSS, 1, 0),
        (Way.ALONG, -1, 0),
        (Way.ACROSS, 96, 0),
    ]


def test_grain_decides_whether_a_piece_may_turn() -> None:
    assert lay_out(order(Piece("rail", 30, 50))).left_out == (("rail", 1),)
    assert lay_out(order(Piece("rail", 30, 50, may_turn=True))).left_out == ()


@pytest.mark.parametrize(
    ("turns", "boards"),
    [(1, 3), (2, 2), (3, 1)],
)
def test_turns_are_counted(turns: int, boards: int) -> None:
    """Four pieces round a fifth cut need three turns: strips, lengths, pieces."""
    pieces = (Piece("top", 100, 10), Piece("side", 20, 30, 2), Piece("shelf", 60, 15, 2))
    wanted = order(*pieces, turns=turns, first=Way.ALONG)
    layout = lay_out(wanted)
    assert faults(wanted, layout) == []
    assert len(layout.boards) == boards


def test_a_match_set_stays_together_in_sequence() -> None:
    fronts = tuple(Piece(f"front {at}", 30, 12) for at in range(3))
    wanted = order(
        Piece("rail", 90, 20),
        *fronts,
        kerf=2,
        sets=(MatchSet(("front 2", "front 0", "front 1"), Way.ACROSS),),
    )
    layout = lay_out(wanted)
    assert faults(wanted, layout) == []
    row = sorted(
        (placed.at.x, placed.piece)
        for board in layout.boards
        for placed in board.placed
        if placed.match_set == 0
    )
    assert [name for _, name in row] == ["front 2", "front 0", "front 1"]
    assert [x - row[0][0] for x, _ in row] == [0, 32, 64]


def test_a_set_side_by_side_comes_from_rows_where_the_crosscut_is_first() -> None:
    panels = Piece("panel", 40, 18, 2)
    wanted = order(panels, kerf=2, sets=(MatchSet(("panel", "panel"), Way.ALONG),), first=Way.ACROSS)
    layout = lay_out(wanted)
    assert faults(wanted, layout) == []
    assert sorted(placed.at.y for placed in layout.boards[0].placed) == [0, 20]


@pytest.mark.parametrize(("width", "along"), [(20, False), (30, True)])
def test_a_set_from_one_board_lies_whichever_way_there_is_room(width: int, along: bool) -> None:
    wanted = order(Piece("strip", 48, width, 2), kerf=2, sets=(MatchSet(("strip", "strip"), None),))
    layout = lay_out(wanted)
    assert faults(wanted, layout) == []
    assert len(layout.boards) == 1
    assert not along or sorted(placed.at.x for placed in layout.boards[0].placed) == [0, 50]


def test_pieces_lie_round_a_knot_with_the_crosscut_first() -> None:
    """Beside the knot, before it and beyond it: nothing is lost but the strip it lies in."""
    knot = Board("board", 100, 40, defects=(Rectangle(40, 0, 5, 8),))
    pieces = (Piece("side", 100, 15, 2), Piece("lip", 38, 8), Piece("rail", 50, 8))
    wanted = order(*pieces, board=knot, kerf=1, first=Way.ACROSS)
    layout = lay_out(wanted)
    assert faults(wanted, layout) == []
    assert len(layout.boards) == 1


def test_what_finds_no_room_is_told() -> None:
    board = Board("board", 100, 40, number=1)
    layout = lay_out(order(Piece("rail", 100, 20, 3), board=board))
    assert layout.left_out == (("rail", 1),)
    assert not layout.is_proven


def test_nothing_at_all_may_find_room() -> None:
    spoilt = Board("board", 30, 10, defects=(Rectangle(0, 0, 12, 9),))
    layout = lay_out(order(Piece("rail", 19, 2), board=spoilt, turns=1))
    assert (layout.boards, layout.left_out) == ((), (("rail", 1),))


def test_the_cheapest_boards_are_taken() -> None:
    boards = (Board("short", 50, 40, cost=3), Board("long", 100, 40, cost=5))
    pieces = (Piece("rail", 50, 40, 3),)
    layout = lay_out(Order(boards, pieces, rules=Rules(effort=500_000)))
    assert (layout.cost, layout.lower_bound) == (8, 8)
    assert sorted(board.board for board in layout.boards) == ["long", "short"]


def test_a_clock_ends_the_search_and_the_layout_says_so() -> None:
    pieces = (Piece("a", 51, 21, 4), Piece("b", 34, 14, 7))
    layout = lay_out(order(*pieces), is_over=lambda: True)
    assert layout.ended_early or layout.is_proven


@pytest.mark.parametrize(
    "nonsense",
    [
        order(Piece("rail", 0, 4)),
        order(Piece("rail", 3, 4), Piece("rail", 3, 4)),
        order(Piece("rail", 3, 4), turns=0),
        order(Piece("rail", 3, 4), kerf=-1),
        order(Piece("rail", 3, 4), sets=(MatchSet(("rail", "rail"), Way.ALONG),)),
        order(Piece("rail", 3, 4), sets=(MatchSet((), Way.ALONG),)),
    ],
)
def test_nonsense_is_refused(nonsense: Order) -> None:
    with pytest.raises(ValueError, match=r".+"):
        lay_out(nonsense)
