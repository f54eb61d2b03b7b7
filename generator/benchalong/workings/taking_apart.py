"""In which order, and which way, things come apart: worked out on a table of what is in what's way.

For each way there is a graph: who hinders whom. A set that holds everything in its members' way may go that
way together; the smallest such sets are the strongly connected groups that nobody outside hinders
(directional blocking graphs: R. H. Wilson and J.-C. Latombe, Geometric reasoning about mechanical assembly,
Artificial Intelligence 71, 1994). Taking something away never makes it harder for the rest, so what comes
first may be chosen freely: whatever has the shortest way out.
Put together is taken apart backwards.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np

from benchalong.workings.bodies import Floats

Set: TypeAlias = int
"""A set of things, one bit for each."""

TOGETHER = 20.0
"""What needs no more than this above the shortest way out goes in the same round, in mm."""


@dataclass(frozen=True)
class Table:
    """What is in what's way, by ways numbered from 0."""

    hinders: Sequence[Sequence[Set]]
    """By way and mover: everything in its way."""
    reach: Floats
    """(ways, n, n): how far a mover must go until it is past the other, in mm; 0 where they don't meet."""
    outward: Floats
    """(ways, n): how far the middle of each lies that way, in mm."""
    size: Sequence[float]
    """What is largest stays longest: the volume of each."""

    @property
    def count(self) -> int:
        return len(self.size)


@dataclass(frozen=True)
class Taken:
    """One thing, or a group that goes as one, leaving the rest."""

    group: frozenset[int]
    way: int
    travel: float
    """In mm, until it is past all that is left."""
    after: tuple[int, ...]
    """Places in the list of those that must have gone before."""


@dataclass(frozen=True)
class Apart:
    taken: tuple[Taken, ...]
    locked: tuple[frozenset[int], ...]
    """Groups of which nothing can leave the rest."""


def take_apart(table: Table) -> Apart:
    """Down to single things, or to what is locked."""
    taking = _Taking(table)
    taking.all_of(frozenset(range(table.count)), ())
    return Apart(tuple(taking.taken), tuple(taking.locked))


class _Taking:
    def __init__(self, table: Table) -> None:
        self.table = table
        self.taken: list[Taken] = []
        self.locked: list[frozenset[int]] = []

    def all_of(self, rest: frozenset[int], after: tuple[int, ...]) -> None:
        gone: dict[int, int] = {}
        while len(rest) > 1:
            found = self._singles(rest) or self._group(rest)
            if not found:
                self.locked.append(rest)
                return
            before = rest
            for group, way, travel in found:
                gone |= dict.fromkeys(group, len(self.taken))
                self.taken.append(Taken(group, way, travel, self._after(group, way, gone, after)))
                rest -= group
            for (group, _, _), number in zip(
                found, range(len(self.taken) - len(found), len(self.taken)), strict=True
            ):
                self.all_of(group, (*after, number))
            assert len(rest) < len(before)

    def _after(
        self, group: frozenset[int], way: int, gone: dict[int, int], after: tuple[int, ...]
    ) -> tuple[int, ...]:
        hindering = self._hindering(group, way)
        earlier = {number for one, number in gone.items() if hindering >> one & 1 and one not in group}
        return tuple(sorted({*after, *earlier}))

    def _hindering(self, group: frozenset[int], way: int) -> Set:
        found = 0
        for one in group:
            found |= self.table.hinders[way][one]
        return found

    def _singles(self, rest: frozenset[int]) -> list[tuple[frozenset[int], int, float]]:
        """What can leave by itself on a short way; one thing at least stays."""
        inside = sum(1 << one for one in rest)
        ways = {one: self._best_way(one, rest, inside) for one in sorted(rest)}
        free = {one: way for one, way in ways.items() if way is not None}
        if not free:
            return []
        shortest = min(cost for cost, _ in free.values())
        going = [one for one, (cost, _) in free.items() if cost <= 1.5 * shortest + TOGETHER]
        if len(going) == len(rest):
            going.remove(max(going, key=lambda one: (self.table.size[one], -one)))
        return [(frozenset((one,)), free[one][1], free[one][0]) for one in going]

    def _best_way(self, one: int, rest: frozenset[int], inside: Set) -> tuple[float, int] | None:
        others = sorted(rest - {one})
        choices = [
            (float(self.table.reach[way, one, others].max()), -float(self.table.outward[way, one]), way)
            for way, hinders in enumerate(self.table.hinders)
            if not hinders[one] & inside
        ]
        if not choices:
            return None
        travel, _, way = min(
            choices, key=lambda choice: (round(choice[0], 3), round(choice[1], 3), choice[2])
        )
        return travel, way

    def _group(self, rest: frozenset[int]) -> list[tuple[frozenset[int], int, float]]:
        """The smallest group that can leave as one."""
        found: list[tuple[tuple[int, float, float, int], frozenset[int]]] = []
        for way, hinders in enumerate(self.table.hinders):
            for group in leaving(hinders, rest):
                if len(group) < len(rest):
                    found.append((self._group_cost(group, rest, way), group))
        if not found:
            return []
        (_, travel, _, way), group = min(found, key=lambda one: (one[0], sorted(one[1])))
        return [(group, way, travel)]

    def _group_cost(
        self, group: frozenset[int], rest: frozenset[int], way: int
    ) -> tuple[int, float, float, int]:
        inner, outer = sorted(group), sorted(rest - group)
        travel = float(self.table.reach[way][np.ix_(inner, outer)].max())
        outward = float(self.table.outward[way, inner].mean())
        return (len(group), round(travel, 3), -round(outward, 3), way)


def leaving(hinders: Sequence[Set], rest: frozenset[int]) -> Iterator[frozenset[int]]:
    """The smallest groups that nothing else in `rest` hinders: strongly connected groups with no way out of
    them (R. Tarjan, Depth-first search and linear graph algorithms, SIAM J. Comput. 1, 1972)."""
    inside = sum(1 << one for one in rest)
    onward = {one: [other for other in bits(hinders[one] & inside) if other != one] for one in rest}
    number: dict[int, int] = {}
    low: dict[int, int] = {}
    stack: list[int] = []
    on_stack: set[int] = set()
    for root in sorted(rest):
        if root in number:
            continue
        work = [(root, iter(onward[root]))]
        number[root] = low[root] = len(number)
        stack.append(root)
        on_stack.add(root)
        while work:
            here, others = work[-1]
            other = next(others, None)
            if other is None:
                work.pop()
                if work:
                    low[work[-1][0]] = min(low[work[-1][0]], low[here])
                if low[here] == number[here]:
                    at = stack.index(here)
                    group = frozenset(stack[at:])
                    del stack[at:]
                    on_stack -= group
                    if all(other in group for one in group for other in onward[one]):
                        yield group
            elif other not in number:
                number[other] = low[other] = len(number)
                stack.append(other)
                on_stack.add(other)
                work.append((other, iter(onward[other])))
            elif other in on_stack:
                low[here] = min(low[here], number[other])


def bits(many: Set) -> Iterator[int]:
    while many:
        least = many & -many
        yield least.bit_length() - 1
        many ^= least
