"""How a board is parted: regions within regions, each parted one way.

Sizes here are *inner* sizes: what lies there and the kerf after it (see `inner`). A region's parts stand one
after another from its start or near edge; what they don't fill is waste. No part is empty.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TypeAlias

from benchalong.workings.layout.model import Way


@dataclass(frozen=True)
class Whole:
    """One piece, at the corner of its region."""

    kind: int
    """Which of the inner order's kinds."""
    length: int
    width: int
    is_turned: bool = False
    member: int = 0
    """Which of the kind's members, when the kind is a match set."""


@dataclass(frozen=True)
class Waste:
    """Nothing is made of it."""

    length: int
    width: int


@dataclass(frozen=True)
class Parted:
    way: Way
    parts: tuple[Node, ...]
    length: int
    width: int


Node: TypeAlias = Whole | Waste | Parted


def parted(way: Way, parts: list[Node], *, keep_single: bool = False) -> Node:
    """The parts in a row, as long (or wide) as together and as wide (or long) as the widest; a part that is
    parted the same way is taken up with its own parts, for that takes no turn. A single part is itself; kept
    as a row of one, it is cut off from the waste before it is cut further, which leaves larger left-overs."""
    flat: list[Node] = []
    for part in parts:
        flat += part.parts if isinstance(part, Parted) and part.way is way else [part]
    if len(flat) == 1 and (isinstance(flat[0], Whole) or not keep_single):
        return flat[0]
    lengths, widths = [part.length for part in flat], [part.width for part in flat]
    if way is Way.ACROSS:
        return Parted(way, tuple(flat), sum(lengths), max(widths))
    return Parted(way, tuple(flat), max(lengths), sum(widths))


def swapped(node: Node) -> Node:
    """Mirrored in the diagonal: what lay along lies across."""
    if isinstance(node, Parted):
        return Parted(node.way.other, tuple(map(swapped, node.parts)), node.width, node.length)
    if isinstance(node, Whole):
        return Whole(node.kind, node.width, node.length, node.is_turned, node.member)
    return Waste(node.width, node.length)


def wholes(node: Node) -> Iterator[Whole]:
    if isinstance(node, Whole):
        yield node
    elif isinstance(node, Parted):
        for part in node.parts:
            yield from wholes(part)


def without(node: Node, spare: dict[int, int]) -> Node:
    """The same cuts with up to so many pieces of each kind turned into waste; `spare` is counted down."""
    if isinstance(node, Whole):
        if spare.get(node.kind, 0) > 0:
            spare[node.kind] -= 1
            return Waste(node.length, node.width)
        return node
    if isinstance(node, Waste):
        return node
    parts = tuple(without(part, spare) for part in node.parts)
    if all(isinstance(part, Waste) for part in parts):
        return Waste(node.length, node.width)
    return Parted(node.way, parts, node.length, node.width)
