"""Which orders are a question of lengths only, and what sticks look like as boards."""

from __future__ import annotations

from benchalong.workings.layout.filling import Filled
from benchalong.workings.layout.inner import Inner, Kind
from benchalong.workings.layout.model import Way
from benchalong.workings.layout.stick_filling import Stick
from benchalong.workings.layout.stick_prices import Sticks, Stock
from benchalong.workings.layout.tree import Node, Whole, parted


def is_sticks(inner: Inner) -> bool:
    """Whether no two pieces find room side by side on any board, nor any turned, and the boards are clear."""
    if not inner.kinds or any(kind.parted is Way.ALONG for kind in inner.kinds) or inner.first is Way.ALONG:
        return False
    narrowest = min(width for kind in inner.kinds for _, width in kind.sizes)
    return all(
        not sheet.defects
        and 2 * narrowest > sheet.width
        and all(_lies(kind, sheet.width) and not _stands(kind, sheet.width) for kind in inner.kinds)
        for sheet in inner.sheets
    )


def _end_to_end(kind: Kind) -> tuple[int, int]:
    return kind.size(kind.ways[0])


def _lies(kind: Kind, width: int) -> bool:
    return _end_to_end(kind)[1] <= width


def _stands(kind: Kind, width: int) -> bool:
    return kind.may_turn and _end_to_end(kind)[0] <= width


def by_length(inner: Inner) -> list[int]:
    """The kinds, longest first."""
    return sorted(range(len(inner.kinds)), key=lambda kind: -_end_to_end(inner.kinds[kind])[0])


def as_sticks(inner: Inner, order: list[int]) -> Sticks:
    return Sticks(
        tuple(_end_to_end(inner.kinds[kind])[0] for kind in order),
        tuple(inner.kinds[kind].demand for kind in order),
        tuple(Stock(sheet.length, sheet.cost, sheet.number) for sheet in inner.sheets),
    )


def filled_stick(inner: Inner, order: list[int], stick: Stick) -> Filled:
    """The stick as a board's filling: one row, end to end."""
    counts = [0] * len(inner.kinds)
    row: list[Node] = []
    for kind, number in zip(order, stick.counts, strict=True):
        counts[kind] = number
        row += [_node(inner.kinds[kind], kind)] * number
    return Filled(parted(Way.ACROSS, row), tuple(counts), 0.0)


def _node(kind: Kind, index: int) -> Node:
    return parted(
        Way.ACROSS,
        [Whole(index, length, width, member=at) for at, (length, width) in enumerate(kind.sizes)],
    )
