"""The same pieces on the same board with fewer cuts, or with a larger left-over."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from benchalong.workings.layout.filling import Manner
from benchalong.workings.layout.inner import Inner
from benchalong.workings.layout.lies import Work
from benchalong.workings.layout.model import Way
from benchalong.workings.layout.sequence import Full, Sheets, first_worth
from benchalong.workings.layout.tree import Node, Waste, Whole

_LEANS = (0.0, 0.1, 0.5, None)


def tidied(full: Sequence[Full], inner: Inner, sheets: Sheets, work: Work) -> tuple[Full, ...]:
    """Every board filled anew with what it holds, each set of pieces once, while there is work left."""
    made: dict[tuple[int, tuple[int, ...]], Full] = {}
    for board in full:
        key = (board.sheet, board.filled.counts)
        if key not in made:
            made[key] = _tidied(board, inner, sheets) if work.left > 0 else board
    return tuple(made[(board.sheet, board.filled.counts)] for board in full)


def _tidied(board: Full, inner: Inner, sheets: Sheets) -> Full:
    left = np.array(board.filled.counts)
    worth = first_worth(inner, 1.0)
    tries = [board] + [
        Full(board.sheet, filled)
        for lean in _LEANS
        for filled in sheets.fill(board.sheet, left, worth, Manner(beam=30, lean=lean, keep=4))
        if filled.counts == board.filled.counts
    ]
    return min(tries, key=lambda one: cuts_and_rest(one, inner))


def cuts_and_rest(board: Full, inner: Inner) -> tuple[int, int]:
    """How many cuts it takes, and how large the largest left-over is, below zero: less is better."""
    sheet = inner.sheets[board.sheet]
    cuts, rest = _measure(board.filled.tree, sheet.length, sheet.width)
    return cuts, -rest


def _measure(node: Node, length: int, width: int) -> tuple[int, int]:
    if isinstance(node, Waste):
        return 0, length * width
    if isinstance(node, Whole):
        return _measure_whole(node, length, width)
    left = length if node.way is Way.ACROSS else width
    cuts = rest = 0
    for at, part in enumerate(node.parts):
        if all(isinstance(after, Waste) for after in node.parts[at:]):
            break
        size = part.length if node.way is Way.ACROSS else part.width
        cuts += size < left
        left -= size
        more, largest = _measure(part, *((size, width) if node.way is Way.ACROSS else (length, size)))
        cuts, rest = cuts + more, max(rest, largest)
    return cuts, max(rest, left * (width if node.way is Way.ACROSS else length))


def _measure_whole(node: Whole, length: int, width: int) -> tuple[int, int]:
    long, wide = length - node.length, width - node.width
    return (long > 0) + (wide > 0), max(long * width, wide * node.length)
