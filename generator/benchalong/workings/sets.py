"""Which parts of an assembly make a set: those a woodworker lays side by side to mark them together.

They are made from the same stock, as long and as thick as each other, begin at the same place, lie side by
side, and have a side in one plane that can be looked at from the front, from above or from the right: all the
face, or, where they are copies of one part, an edge. What swings or slides past another is no set with it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import combinations, pairwise
from typing import Literal, TypeAlias

from benchalong.plan.model import Surface
from benchalong.plan.turns import Way, axis_of
from benchalong.workings.placed import SIDES, Lying

Looks: TypeAlias = Literal["front", "up", "right"]
Apart: TypeAlias = frozenset[frozenset[str]]
"""Marks of copies, by pairs, that move past each other."""

LOOKS: Mapping[Looks, Way] = {"front": (0, -1, 0), "up": (0, 0, 1), "right": (1, 0, 0)}
"""Which way the marked sides look; what is looked at first comes first."""
POINT: Mapping[Looks, int] = {"front": 2, "up": 1, "right": 2}
"""The direction in the room (0, 1, 2) in which the point is up or away."""
WIDEST = 2
"""The broadest part of a set is at most so many times as broad as the narrowest."""


def sets_of(inside: Sequence[Lying], apart: Apart) -> Iterator[tuple[Looks, list[Lying]]]:
    """Every set that these copies could make, those by their faces first; a copy may be in several."""
    for kind in ("face", "edge"):
        for looks in LOOKS:
            for group in _alike(inside, looks, kind):
                row = row_of(group[0], looks)
                in_order = sorted(group, key=lambda lying: lying.room[0][row])
                if len(group) > 1 and _lie_side_by_side(in_order, row) and not _move(group, apart):
                    yield looks, in_order


def side_that(lying: Lying, looks: Looks) -> Surface:
    """Its side of the wood that looks this way."""
    return next(side for side in SIDES if lying.way(side) == LOOKS[looks])


def plane_of(lying: Lying, looks: Looks) -> tuple[int, float]:
    """Square to which direction of the room that side lies, and where, in mm."""
    n = square_to(looks)
    return n, float(lying.room[max(LOOKS[looks]) > 0][n])


def square_to(looks: Looks) -> int:
    return axis_of(LOOKS[looks])


def run_of(lying: Lying) -> int:
    """Which way its length runs in the room."""
    return next(n for n in range(3) if lying.copy.turn[n][0])


def row_of(lying: Lying, looks: Looks) -> int:
    """Which way the parts of its set follow each other."""
    return next(n for n in range(3) if n not in (square_to(looks), run_of(lying)))


def _alike(inside: Iterable[Lying], looks: Looks, kind: str) -> Iterator[list[Lying]]:
    groups: dict[tuple[object, ...], list[Lying]] = {}
    for lying in inside:
        named = lying.named(side_that(lying, looks))
        noun = named.split()[0]
        if noun.replace("back", "face") == kind:
            part, run = lying.part, run_of(lying)
            like = part.id if kind == "edge" else (part.stock, part.thickness, part.length)
            plane = lying.room[max(LOOKS[looks]) > 0][square_to(looks)]
            groups.setdefault((like, noun, run, plane, lying.room[0][run], lying.copy.tilt), []).append(lying)
    yield from groups.values()


def _lie_side_by_side(in_order: Sequence[Lying], row: int) -> bool:
    broad = [lying.room[1][row] - lying.room[0][row] for lying in in_order]
    are_apart = all(one.room[1][row] <= other.room[0][row] for one, other in pairwise(in_order))
    return are_apart and max(broad) <= WIDEST * min(broad)


def _move(group: Iterable[Lying], apart: Apart) -> bool:
    marks = [lying.copy.mark for lying in group]
    return any(frozenset(pair) in apart for pair in combinations(marks, 2)) if apart else False
