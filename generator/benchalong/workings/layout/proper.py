"""The most that a clear board can be worth with no piece oftener than it is wanted.

What `stages` says may count a piece twice, in two rows. Here rows, sections and boards are put together one
by one, and only those are followed that `stages` says may still come to more than is asked for: its tables
tell what the rest of a board is worth at most. (Such bounds on what is still to come: Christofides &
Hadjiconstantinou 1995, there for cutting by tree search.) Where too many are left to follow, more is asked
for; the answer is then weaker but still a bound.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from benchalong.workings.layout.lies import Ints
from benchalong.workings.layout.rows import Lie
from benchalong.workings.layout.stages import Stages

_MOST_ROWS, _MOST_PAIRS, _MOST_KEPT = 20_000, 6_000_000, 60_000
_CHUNK = 1_000_000
PAIRS_A_PLACING = 4
"""How many combinations looked at cost as much as a placing."""
_NUMBERS = 2
"""How many numbers in the counts of combinations cost as much as looking at one."""
_TRIES = 4
"""How often more is asked for, half of what is in doubt each time."""


@dataclass(frozen=True)
class Groups:
    """Groups of pieces, as columns."""

    counts: Ints
    """How many of each kind."""
    length: Ints
    """Of rows in the order's unit, of sections and boards in cells."""
    width: Ints
    """Of rows in the order's unit, of sections in steps."""
    worth: Ints
    last: Ints
    """The last row or section taken up, by its number; later ones come after it."""

    @property
    def size(self) -> int:
        return int(self.length.size)

    def only(self, chosen: NDArray[np.bool_] | Ints) -> Groups:
        return Groups(*(column[chosen] for column in vars(self).values()))

    def told(self, *, length: Ints, width: Ints, worth: Ints) -> Groups:
        """The same in other units, numbered anew."""
        return Groups(self.counts, length, width, worth, np.arange(self.size))


def _together(groups: Sequence[Groups]) -> Groups:
    columns = zip(*(vars(group).values() for group in groups), strict=True)
    return Groups(*(np.concatenate(column) for column in columns))


def _nothing(kinds: int, size: int) -> Groups:
    zero = np.zeros(size, dtype=np.int64)
    return Groups(np.zeros((size, kinds), dtype=np.int64), zero, zero, zero, zero)


def all_rows(lies: Sequence[Lie], demand: Sequence[int], longest: int) -> Groups | None:
    """Every row there could be; None, when there are too many."""
    rows = _nothing(len(demand), 1)
    for lie in lies:
        made = [rows]
        for times in range(1, demand[lie.kind] + 1):
            fits = rows.length + times * lie.length <= longest
            fits &= rows.counts[:, lie.kind] + times <= demand[lie.kind]
            more = rows.only(fits)
            more.counts[:, lie.kind] += times
            wide = np.maximum(more.width, lie.width)
            made.append(more.told(length=more.length + times * lie.length, width=wide, worth=more.worth))
        rows = _together(made)
        if rows.size > _MOST_ROWS:
            return None
    return rows.only(rows.length > 0)


@dataclass(frozen=True)
class Proper:
    """What a board is worth at most; and a filling worth more than was asked for, if there is one."""

    worth: int
    counts: tuple[int, ...] | None
    pairs: int
    """How many combinations were looked at."""


def most_proper(
    stages: Stages, rows: Groups, worth: Sequence[int], demand: Sequence[int], asked: int, *, at_most: int
) -> Proper:
    """Of a clear board. At least what is asked for is answered. `at_most`: how many combinations may be
    looked at, about."""
    pairs = 0
    for _ in range(_TRIES):
        if stages.worth <= asked:
            break
        search = _Search(stages, np.array(demand), asked, at_most - pairs)
        try:
            best = search.best_board(search.sections(rows, rows.counts @ np.array(worth)))
            return Proper(*best, pairs + search.pairs)
        except _TooMany:
            pairs += search.pairs
            asked += (stages.worth - asked + 1) // 2
    return Proper(max(asked, stages.worth), None, pairs)


class _TooMany(Exception):
    pass


class _Search:
    """For what is worth more than is asked for."""

    def __init__(self, stages: Stages, demand: Ints, asked: int, at_most: int) -> None:
        self._demand, self._asked, self._at_most = demand, asked, at_most
        self._sections, self._board = stages.sections, stages.board
        self.pairs = 0

    def sections(self, rows: Groups, worth: Ints) -> Groups:
        """Those that may be part of what is sought, longest first."""
        rows = self._promising_rows(rows, worth)
        grown, found = rows, list[Groups]()
        while grown.size:
            grown = grown.only(grown.worth + self._beside(grown) + self._after(grown.length) > self._asked)
            found.append(grown)
            grown = self._kept(
                [self._with_row(grown, rows, *pairs) for pairs in self._pairs(grown, rows.size)]
            )
        sections = _together(found) if found else rows
        sections = sections.only(sections.worth + self._after(sections.length) > self._asked)
        return _shortest_alike(sections)

    def best_board(self, sections: Groups) -> tuple[int, tuple[int, ...] | None]:
        """What it is worth, and its pieces if that is more than is asked for."""
        best: tuple[int, tuple[int, ...] | None] = (self._asked, None)
        grown = sections
        while grown.size:
            top = int(np.argmax(grown.worth))
            if grown.worth[top] > best[0]:
                best = (int(grown.worth[top]), tuple(grown.counts[top].tolist()))
            pairs = self._pairs(grown, sections.size)
            grown = self._kept([self._with_section(grown, sections, best[0], *one) for one in pairs])
        return best

    def _after(self, cells: Ints) -> Ints:
        """What the rest of the board is worth at most."""
        rest: Ints = self._board[self._sections.cells - cells]
        return rest

    def _beside(self, groups: Groups) -> Ints:
        return self._sections.at(self._sections.width - groups.width, groups.length)

    def _promising_rows(self, rows: Groups, worth: Ints) -> Groups:
        """In cells and steps, longest first: a section's first row is its longest."""
        sections = self._sections
        cells = rows.length // sections.step
        order = np.argsort(-cells, kind="stable")
        rows = rows.told(length=cells, width=rows.width // sections.step_across, worth=worth).only(order)
        rows = rows.only((rows.length <= sections.cells) & (rows.width <= sections.width) & (rows.worth > 0))
        rest = sections.best_beside(sections.width - rows.width, rows.length, self._board)
        rows = rows.only(rows.worth + rest > self._asked)
        return rows.told(length=rows.length, width=rows.width, worth=rows.worth)

    def _with_row(self, grown: Groups, rows: Groups, at: Ints, row: Ints) -> Groups:
        width = grown.width[at] + rows.width[row]
        fits = width <= self._sections.width
        at, row, width = at[fits], row[fits], width[fits]
        cells, worth = grown.length[at], grown.worth[at] + rows.worth[row]
        rest = self._sections.at(self._sections.width - width, cells) + self._after(cells)
        good = np.flatnonzero(worth + rest > self._asked)
        counts = grown.counts[at[good]] + rows.counts[row[good]]
        self.pairs += counts.size // _NUMBERS
        proper = (counts <= self._demand).all(axis=1)
        good = good[proper]
        return Groups(counts[proper], cells[good], width[good], worth[good], row[good])

    def _with_section(self, grown: Groups, sections: Groups, above: int, at: Ints, more: Ints) -> Groups:
        cells = grown.length[at] + sections.length[more]
        fits = cells <= self._sections.cells
        at, more, cells = at[fits], more[fits], cells[fits]
        worth = grown.worth[at] + sections.worth[more]
        good = np.flatnonzero(worth + self._after(cells) > above)
        counts = grown.counts[at[good]] + sections.counts[more[good]]
        self.pairs += counts.size // _NUMBERS
        proper = (counts <= self._demand).all(axis=1)
        good = good[proper]
        return Groups(counts[proper], cells[good], cells[good], worth[good], more[good])

    def _pairs(self, grown: Groups, size: int) -> Iterator[tuple[Ints, Ints]]:
        """Every group with every row or section not before its last one, some at a time."""
        numbers = size - grown.last
        total = int(numbers.sum())
        self.pairs += total
        if total > _MOST_PAIRS or self.pairs > self._at_most:
            raise _TooMany
        begin = 0
        while begin < grown.size:
            end = begin + max(1, int(np.searchsorted(np.cumsum(numbers[begin:]), _CHUNK)))
            part = numbers[begin:end]
            at = np.repeat(np.arange(begin, begin + part.size), part)
            first = np.repeat(np.cumsum(part) - part, part)
            yield at, grown.last[at] + np.arange(at.size) - first
            begin = end

    def _kept(self, grown: list[Groups]) -> Groups:
        if not grown:
            return _nothing(self._demand.size, 0)
        if self.pairs > self._at_most:
            raise _TooMany
        together = _together(grown)
        if together.size > _MOST_KEPT:
            raise _TooMany
        return together


def _shortest_alike(sections: Groups) -> Groups:
    """Of sections with the same pieces the shortest; longest first."""
    if sections.size:
        sections = sections.only(np.argsort(sections.length, kind="stable"))
        _, first = np.unique(sections.counts, axis=0, return_index=True)
        sections = sections.only(first)
    sections = sections.only(np.argsort(-sections.length, kind="stable"))
    return sections.told(length=sections.length, width=sections.width, worth=sections.worth)
