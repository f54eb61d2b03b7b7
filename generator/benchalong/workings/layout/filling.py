"""Fill one clear rectangle with pieces so that they are worth as much as possible: a beam search.

A filling is built piece by piece, as in the three-stage trees of Puchinger & Raidl (2007): the rectangle is cut
into sections, a section into rows, a row into pieces, and a piece shorter than its row is trimmed; with a fourth
turn, pieces may stand on one another in a row's slot. The next piece goes on top in the slot, beside it in the row,
on a new row, or in a new section. Of all fillings with equally many pieces the most promising are kept, judged by
what their pieces are worth for the room they use up (beam search with such a guide on guillotine layouts:
Libralesso & Fontan 2021). All of a level's placings are weighed at once, in arrays.

Without loss the first piece of a row is its widest and no row is longer than its section's first.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from benchalong.workings.layout.inner import Inner
from benchalong.workings.layout.model import Way
from benchalong.workings.layout.tree import Node, Whole, parted, swapped

Ints: TypeAlias = NDArray[np.int64]
Floats: TypeAlias = NDArray[np.float64]

SECTION, ROW, BESIDE, ON_TOP = range(4)
_ALONG_SECTIONS, _ALONG_ROWS = 1, 2
_A_LEVEL = 2_000
"""What a level costs beside its placings, in placings."""


@dataclass(frozen=True)
class Lies:
    """Every kind in every way it may lie, as arrays."""

    kind: Ints
    length: Ints
    width: Ints
    is_turned: NDArray[np.bool_]
    run: Ints
    """Which way a match set runs: 0 not at all, 1 its members lie end to end, 2 side by side."""

    @staticmethod
    def of(inner: Inner) -> Lies:
        rows = [row for index in range(len(inner.kinds)) for row in _ways_to_lie(inner, index)]
        columns = np.array(rows, dtype=np.int64).reshape(-1, 5).T
        return Lies(columns[0], columns[1], columns[2], columns[3].astype(bool), columns[4])

    def swapped(self) -> Lies:
        return Lies(self.kind, self.width, self.length, self.is_turned, np.array([0, 2, 1])[self.run])

    def only(self, chosen: NDArray[np.bool_]) -> Lies:
        return Lies(
            self.kind[chosen],
            self.length[chosen],
            self.width[chosen],
            self.is_turned[chosen],
            self.run[chosen],
        )


def _ways_to_lie(inner: Inner, index: int) -> Iterator[tuple[int, int, int, int, int]]:
    kind = inner.kinds[index]
    run = {None: 0, Way.ACROSS: 1, Way.ALONG: 2}[kind.parted]
    yield index, kind.length, kind.width, 0, run
    if kind.may_turn:
        yield index, kind.width, kind.length, 1, (0, 2, 1)[run]


@dataclass(frozen=True)
class Filled:
    """What one rectangle is filled with."""

    tree: Node
    counts: tuple[int, ...]
    """How many of each kind."""
    worth: float


@dataclass(frozen=True)
class Room:
    """The rectangle to fill, and how often the saw may turn in it."""

    length: int
    width: int
    turns: int
    first: Way | None


@dataclass
class Work:
    """How many placings may still be weighed; a clock may set it to nothing."""

    left: int
    spent: int = field(default=0)

    def spend(self, placings: int) -> None:
        self.left -= placings
        self.spent += placings


class Filler:
    """Fills rectangles with the kinds of one order."""

    def __init__(self, inner: Inner, work: Work) -> None:
        self._inner, self._work = inner, work
        self._straight = Lies.of(inner)
        self._across = self._straight.swapped()
        marks = np.random.default_rng(20_100)
        self._marks = marks.integers(1, 2**62, size=max(1, len(inner.kinds)), dtype=np.int64)

    def fill(
        self, room: Room, left: Ints, worth: Floats, *, beam: int, keep: int = 1, by_density: bool = True
    ) -> list[Filled]:
        """The best fillings found, best first; none is empty. `left`: how many there are of each kind."""
        found: list[Filled] = []
        if room.first is not Way.ALONG:
            found += self._one_way(room, left, worth, beam=beam, keep=keep, by_density=by_density, swap=False)
        if room.first is not Way.ACROSS:
            found += self._one_way(room, left, worth, beam=beam, keep=keep, by_density=by_density, swap=True)
        found.sort(key=lambda filled: -filled.worth)
        return found[:keep]

    def _one_way(
        self, room: Room, left: Ints, worth: Floats, *, beam: int, keep: int, by_density: bool, swap: bool
    ) -> list[Filled]:
        length, width = (room.width, room.length) if swap else (room.length, room.width)
        lies = self._across if swap else self._straight
        chosen = (left[lies.kind] > 0) & (worth[lies.kind] > 0) & (lies.length <= length)
        chosen &= lies.width <= width
        last_run = _ALONG_SECTIONS if room.turns % 2 else _ALONG_ROWS
        if room.turns <= 4:
            chosen &= (lies.run == 0) | (lies.run == last_run)
        if not chosen.any():
            return []
        search = _Beam(lies.only(chosen), length, width, room.turns, left, worth, self._marks)
        found = search.run(beam, keep, self._work, by_density=by_density)
        return [self._filled(search, place, worth, swap=swap) for place in found]

    def _filled(self, search: _Beam, place: tuple[int, int], worth: Floats, *, swap: bool) -> Filled:
        moves = search.moves_to(place)
        tree = _tree(self._inner, search.lies, moves, search.turns, swap=swap)
        counts = np.bincount(search.lies.kind[[lie for _, lie in moves]], minlength=len(self._inner.kinds))
        value = float(counts @ worth)
        return Filled(swapped(tree) if swap else tree, tuple(counts.tolist()), value)


_Move: TypeAlias = tuple[int, int]
"""How it is put, and which lie."""


@dataclass
class _Level:
    """Fillings with equally many pieces, one an entry.

    `x0`, `x1`: where the section starts and ends; `y0`, `y1`: the row; `x`: how far the row is filled; `slot`, `y`:
    the length of the last piece's slot and how far up it is filled.
    """

    x0: Ints
    x1: Ints
    y0: Ints
    y1: Ints
    x: Ints
    slot: Ints
    y: Ints
    worth: Floats
    left: Ints
    mark: Ints
    """A number that is the same for the same pieces."""
    came_from: Ints
    put: Ints
    lie: Ints


class _Beam:
    def __init__(
        self, lies: Lies, length: int, width: int, turns: int, left: Ints, worth: Floats, marks: Ints
    ) -> None:
        self.lies, self.turns, self._length, self._width = lies, turns, length, width
        self._worth, self._marks = worth[lies.kind], marks[lies.kind]
        self.levels = [_start(left)]

    def run(self, beam: int, keep: int, work: Work, *, by_density: bool) -> list[tuple[int, int]]:
        """Level and entry of the best fillings."""
        best: list[tuple[float, int, int]] = []
        seen: set[int] = set()
        while work.left > 0:
            level = self._next(self.levels[-1], beam, work, by_density=by_density)
            if level is None:
                break
            self.levels.append(level)
            for entry in np.argsort(-level.worth, kind="stable")[:keep].tolist():
                if int(level.mark[entry]) not in seen:
                    seen.add(int(level.mark[entry]))
                    best.append((-float(level.worth[entry]), len(self.levels) - 1, entry))
        best.sort()
        return [(level, entry) for _, level, entry in best[:keep]]

    def moves_to(self, place: tuple[int, int]) -> list[_Move]:
        depth, entry = place
        moves = []
        while depth:
            level = self.levels[depth]
            moves.append((int(level.put[entry]), int(level.lie[entry])))
            entry = int(level.came_from[entry])
            depth -= 1
        return moves[::-1]

    def _next(self, level: _Level, beam: int, work: Work, *, by_density: bool) -> _Level | None:
        entries, lies, puts = self._placings(level)
        if entries.size == 0:
            return None
        work.spend(entries.size + _A_LEVEL)
        return self._kept(self._placed(level, entries, lies, puts), level, beam, by_density=by_density)

    def _placings(self, level: _Level) -> tuple[Ints, Ints, Ints]:
        """Which piece may go where, as three equally long columns."""
        length, width = self.lies.length, self.lies.width
        there = level.left[:, self.lies.kind] > 0
        fits = [(SECTION, length <= (self._length - level.x1)[:, None])]
        if self.turns >= 2:
            on_row = (length <= (level.x1 - level.x0)[:, None]) & (width <= (self._width - level.y1)[:, None])
            fits.append((ROW, on_row))
        if self.turns >= 3:
            end = np.where(level.y0 == 0, self._length, level.x1)
            beside = length <= (end - level.x)[:, None]
            fits.append((BESIDE, beside & (width <= (level.y1 - level.y0)[:, None])))
        if self.turns >= 4:
            on_top = (length <= level.slot[:, None]) & (width <= (level.y1 - level.y)[:, None])
            fits.append((ON_TOP, on_top & (self.lies.run != _ALONG_SECTIONS)))
        found = [(put, *np.nonzero(fit & there)) for put, fit in fits]
        entries = np.concatenate([entry for _, entry, _ in found])
        chosen = np.concatenate([lie for _, _, lie in found])
        puts = np.concatenate([np.full(entry.size, put) for put, entry, _ in found])
        return entries, chosen, puts

    def _placed(self, level: _Level, entries: Ints, lies: Ints, puts: Ints) -> _Level:
        length, width = self.lies.length[lies], self.lies.width[lies]
        x0, x1, y0, y1 = level.x0[entries], level.x1[entries], level.y0[entries], level.y1[entries]
        is_section, is_row, is_on_top = puts == SECTION, puts == ROW, puts == ON_TOP
        x0 = np.where(is_section, x1, x0)
        y0 = np.where(is_section, 0, np.where(is_row, y1, y0))
        starts = is_section | is_row
        x = np.where(starts, x0 + length, level.x[entries] + np.where(is_on_top, 0, length))
        slot = np.where(self.lies.run[lies] == _ALONG_SECTIONS, 0, length)
        return _Level(
            x0=x0,
            x1=np.where(is_section, x, np.maximum(x1, x)),
            y0=y0,
            y1=np.where(starts, y0 + width, y1),
            x=x,
            slot=np.where(is_on_top, level.slot[entries], slot),
            y=np.where(is_on_top, level.y[entries], y0) + width,
            worth=level.worth[entries] + self._worth[lies],
            left=level.left,
            mark=level.mark[entries] + self._marks[lies],
            came_from=entries,
            put=puts,
            lie=lies,
        )

    def _kept(self, placed: _Level, before: _Level, beam: int, *, by_density: bool) -> _Level:
        """The most promising, each set of pieces in each outline once."""
        used = placed.x0 * self._width + (placed.x1 - placed.x0) * placed.y0
        used += (placed.x - placed.x0) * (placed.y1 - placed.y0)
        score = placed.worth / used if by_density else placed.worth - _fair(self._worth, self.lies) * used
        if score.size > 4 * beam:
            order = np.argpartition(-score, 4 * beam)[: 4 * beam]
            order = order[np.lexsort((order, -score[order]))]
        else:
            order = np.argsort(-score, kind="stable")
        outline = placed.x0 * 3 + placed.x1 * 1_000_003 + placed.y0 * 7_368_787 + placed.y1 * 15_485_863
        outline += placed.x * 32_452_843 + placed.y * 49_979_687
        _, first = np.unique((placed.mark ^ (outline * 2_654_435_761))[order], return_index=True)
        kept = order[np.sort(first)[:beam]]
        level = _Level(**{name: column[kept] for name, column in vars(placed).items() if name != "left"}, left=before.left)
        left = before.left[level.came_from]
        left[np.arange(kept.size), self.lies.kind[level.lie]] -= 1
        level.left = left
        return level


def _fair(worth: Floats, lies: Lies) -> float:
    """What room is usually worth."""
    return float(np.quantile(worth / (lies.length * lies.width), 0.75))


def _start(left: Ints) -> _Level:
    zero = np.zeros(1, dtype=np.int64)
    return _Level(
        zero, zero, zero, zero, zero, zero, zero, np.zeros(1), left[None, :].copy(), zero, zero, zero, zero
    )


def _tree(inner: Inner, lies: Lies, moves: Sequence[_Move], turns: int, *, swap: bool) -> Node:
    sections: list[list[list[list[Node]]]] = []
    for put, lie in moves:
        if put == SECTION:
            sections.append([])
        if put in (SECTION, ROW):
            sections[-1].append([])
        if put != ON_TOP:
            sections[-1][-1].append([])
        sections[-1][-1][-1].append(_node(inner, lies, lie, swap=swap))
    return parted(Way.ACROSS, [_section(rows, turns) for rows in sections], keep_single=True)


def _section(rows: list[list[list[Node]]], turns: int) -> Node:
    in_rows = [parted(Way.ACROSS, [parted(Way.ALONG, slot) for slot in row]) for row in rows]
    return parted(Way.ALONG, in_rows, keep_single=turns >= 3)


def _node(inner: Inner, lies: Lies, lie: int, *, swap: bool) -> Node:
    index, is_turned = int(lies.kind[lie]), bool(lies.is_turned[lie])
    kind = inner.kinds[index]
    members: list[Node] = []
    for member, (length, width) in enumerate(kind.sizes):
        size = (width, length) if is_turned != swap else (length, width)
        members.append(Whole(index, *size, is_turned, member))
    if len(members) == 1:
        return members[0]
    return parted(Way.ACROSS if lies.run[lie] == _ALONG_SECTIONS else Way.ALONG, members)
