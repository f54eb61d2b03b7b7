"""The front door: an order in, a layout out."""

from __future__ import annotations

from benchalong.workings.layout.cutting import Names, cut_board
from benchalong.workings.layout.inner import Inner, inner_order, tally
from benchalong.workings.layout.model import CutBoard, Layout, Order
from benchalong.workings.layout.search import IsOver
from benchalong.workings.layout.sheets import Found, lay_out_sheets


def lay_out(order: Order, *, is_over: IsOver = lambda: False) -> Layout:
    """The best layout found within the order's effort, the same one every time.

    `is_over` is asked now and then whether to stop, for those who watch a clock; a layout that was ended so
    says it. Raises ValueError for an order that makes no sense.
    """
    inner = inner_order(order)
    found = lay_out_sheets(inner, effort=order.rules.effort, seed=order.rules.seed, is_over=is_over)
    boards = _cut_boards(order, inner, found)
    cost = sum(inner.sheets[full.sheet].cost for full in found.full)
    left_out = _left_out(order, boards)
    return Layout(
        boards=boards,
        left_out=left_out,
        cost=cost,
        lower_bound=found.lower_bound,
        is_proven=not left_out and cost == found.lower_bound,
        ended_early=found.ended_early,
    )


def _cut_boards(order: Order, inner: Inner, found: Found) -> tuple[CutBoard, ...]:
    names = Names(inner)
    boards = []
    for full in found.full:
        board = order.boards[inner.sheets[full.sheet].board]
        boards.append(cut_board(full.filled.tree, board, inner, names, order.rules.kerf))
    return tuple(boards)


def _left_out(order: Order, boards: tuple[CutBoard, ...]) -> tuple[tuple[str, int], ...]:
    placed = dict(tally(piece.piece for board in boards for piece in board.placed))
    missing = {piece.name: piece.number - placed.get(piece.name, 0) for piece in order.pieces}
    return tuple(sorted((name, number) for name, number in missing.items() if number > 0))
