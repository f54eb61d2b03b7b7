"""Fill one clear rectangle with pieces so that they are worth as much as possible: a beam search.

A filling is built piece by piece, as in the three-stage trees of Puchinger & Raidl (2007): the rectangle is
cut into sections, a section into rows, a row into pieces, and a piece shorter than its row is trimmed; with a
fourth turn, pieces may stand on one another in a row's slot. The next piece goes on top in the slot, beside
it in the row, on a new row, or in a new section. Of all fillings with equally many pieces the most promising
are followed (`judging`); a beam search, as Libralesso & Fontan (2021) use on guillotine layouts. All of a
level's placings are weighed at once, in arrays.

Without loss the first piece of a row is its widest and, on a clear board, no row is longer than its section's
first. With three turns, a match set side by side is several rows, and nothing goes beside it. What would lie
on a defect moves on until it is clear (`dodging`).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from benchalong.workings.layout.dodging import BESIDE, ON_TOP, ROW, SECTION, Dodging, Placings
from benchalong.workings.layout.judging import Judge
from benchalong.workings.layout.levels import Level
from benchalong.workings.layout.lies import ALONG_ROWS, ALONG_SECTIONS, Floats, Ints, Lies, Work
from benchalong.workings.layout.model import Rectangle

_A_LEVEL = 2_000
"""What a level costs beside its placings, in placings."""


@dataclass(frozen=True)
class Move:
    """How a piece is put, which lie, and where: its section's start and its own corner."""

    put: int
    lie: int
    section: int
    x: int
    y: int


class Beam:
    """A search in one rectangle, or in several alike that stand end to end with a wall after each
    `length`."""

    def __init__(
        self,
        lies: Lies,
        *,
        length: int,
        width: int,
        boards: int,
        turns: int,
        left: Ints,
        worth: Floats,
        marks: Ints,
        defects: Sequence[Rectangle] = (),
        kerf: int = 0,
    ) -> None:
        self.lies, self.turns, self.length, self._width = lies, turns, length, width
        self._boards, self._dodging = boards, Dodging(lies, defects, kerf, turns)
        self._worth, self._marks = worth[lies.kind], marks[lies.kind]
        self._is_rows = (lies.run == ALONG_ROWS) & (turns == 3)
        self.levels = [Level.empty(left)]

    def run(self, beam: int, keep: int, work: Work, judge: Judge) -> list[tuple[int, int]]:
        """Level and entry of the best fillings."""
        best: list[tuple[float, int, int]] = []
        seen: set[int] = set()
        while work.left > 0:
            level = self._next(self.levels[-1], beam, work, judge)
            if level is None:
                break
            self.levels.append(level)
            for entry in np.argsort(-level.worth, kind="stable")[:keep].tolist():
                if int(level.mark[entry]) not in seen:
                    seen.add(int(level.mark[entry]))
                    best.append((-float(level.worth[entry]), len(self.levels) - 1, entry))
        best.sort()
        return [(level, entry) for _, level, entry in best[:keep]]

    def moves_to(self, place: tuple[int, int]) -> list[Move]:
        depth, entry = place
        moves = []
        while depth:
            level = self.levels[depth]
            columns = (level.put, level.lie, level.x0, level.at_x, level.at_y)
            moves.append(Move(*(int(column[entry]) for column in columns)))
            entry = int(level.came_from[entry])
            depth -= 1
        return moves[::-1]

    def by_board(self, moves: list[Move]) -> list[list[Move]]:
        """The same moves, board by board; boards without any left out."""
        boards: dict[int, list[Move]] = {}
        for move in moves:
            at = move.section // self.length
            section, x = move.section - at * self.length, move.x - at * self.length
            boards.setdefault(at, []).append(replace(move, section=section, x=x))
        return list(boards.values())

    def _next(self, level: Level, beam: int, work: Work, judge: Judge) -> Level | None:
        placings = self._placings(level)
        work.spend(placings.entry.size * judge.weight + _A_LEVEL)
        if self._dodging.is_needed and placings.entry.size:
            placings = self._dodging.cleared(placings, self._limits(level, placings))
        if placings.entry.size == 0:
            return None
        return self._kept(self._placed(level, placings), level, beam, judge)

    def _placings(self, level: Level) -> Placings:
        """Which piece may go where, were there no defects."""
        length, width = self.lies.length, self.lies.width
        there = level.left[:, self.lies.kind] > 0
        room = self._boards * self.length - level.x1
        fits = [(SECTION, (length <= (room % self.length)[:, None]) | (room >= self.length)[:, None])]
        if self.turns >= 2:
            on_row = (length <= (self._row_end(level) - level.x0)[:, None]) & (
                width <= (self._width - level.y1)[:, None]
            )
            fits.append((ROW, on_row))
        if self.turns >= 3:
            end = np.where(level.y0 == 0, self._wall(level), self._row_end(level))
            beside = length <= (end - level.x)[:, None]
            beside &= width <= (level.y1 - level.y0)[:, None]
            fits.append((BESIDE, beside & ~self._is_rows))
        if self.turns >= 4:
            on_top = (length <= level.slot[:, None]) & (width <= (level.y1 - level.y)[:, None])
            fits.append((ON_TOP, on_top & (self.lies.run != ALONG_SECTIONS)))
        found = [np.nonzero(fit & there) for _, fit in fits]
        entries = np.concatenate([entry for entry, _ in found])
        chosen = np.concatenate([lie for _, lie in found])
        puts = np.repeat([put for put, _ in fits], [entry.size for entry, _ in found])
        return self._at_corners(level, entries, chosen, puts)

    def _at_corners(self, level: Level, entries: Ints, lies: Ints, puts: Ints) -> Placings:
        x0, x1, x = level.x0[entries], level.x1[entries], level.x[entries]
        room = -x1 % self.length
        after = np.where(self.lies.length[lies] <= room, x1, x1 + room)
        section = np.where(puts == SECTION, after, x0)
        is_on_top = puts == ON_TOP
        at_x = np.where(puts == BESIDE, x, section)
        at_y = np.where(puts == ROW, level.y1[entries], np.where(puts == BESIDE, level.y0[entries], 0))
        if is_on_top.any():
            at_x = np.where(is_on_top, x - level.slot[entries], at_x)
            at_y = np.where(is_on_top, level.y[entries], at_y)
        return Placings(entries, lies, puts, section, at_x, at_y)

    def _limits(self, level: Level, placings: Placings) -> tuple[Ints, Ints]:
        """How far each piece may reach along and across."""
        at, put = placings.entry, placings.put
        far = np.where((put == SECTION) | (put == ROW), self._width, level.y1[at])
        return np.where(put == ON_TOP, level.x[at], self.length), far

    def _wall(self, level: Level) -> Ints:
        """Where the section's board ends."""
        wall: Ints = (level.x0 // self.length + 1) * self.length
        return wall

    def _row_end(self, level: Level) -> Ints:
        """How far rows beyond the first may reach: where there are defects, the longest may lie anywhere."""
        return self._wall(level) if self._dodging.is_needed else level.x1

    def _placed(self, level: Level, placings: Placings) -> Level:
        entries, lies, puts = placings.entry, placings.lie, placings.put
        length, width = self.lies.length[lies], self.lies.width[lies]
        x0, x1 = placings.section, level.x1[entries]
        is_section, is_row, is_on_top = puts == SECTION, puts == ROW, puts == ON_TOP
        starts = is_section | is_row
        y0 = np.where(starts, placings.at_y, level.y0[entries])
        x = np.where(is_on_top, level.x[entries], placings.at_x + length)
        end = np.where(is_section, x, np.maximum(x1, x))
        x = np.where(self._is_rows[lies], (x0 // self.length + 1) * self.length, x)
        slot = np.where(self.lies.run[lies] == ALONG_SECTIONS, 0, length)
        return Level(
            x0=x0,
            x1=end,
            y0=y0,
            y1=np.where(starts, y0 + width, level.y1[entries]),
            x=x,
            slot=np.where(is_on_top, level.slot[entries], slot),
            y=np.where(is_on_top, level.y[entries], y0) + width,
            worth=level.worth[entries] + self._worth[lies],
            left=level.left,
            mark=level.mark[entries] + self._marks[lies],
            came_from=entries,
            put=puts,
            lie=lies,
            at_x=placings.at_x,
            at_y=placings.at_y,
        )

    def _kept(self, placed: Level, before: Level, beam: int, judge: Judge) -> Level:
        """The most promising, each set of pieces in each outline once."""
        score = judge(placed, placed.used(self._width))
        if score.size > 4 * beam:
            order = np.argpartition(-score, 4 * beam)[: 4 * beam]
            order = order[np.lexsort((order, -score[order]))]
        else:
            order = np.argsort(-score, kind="stable")
        marks = placed.mark ^ (placed.outline() * 2_654_435_761)
        _, first = np.unique(marks[order], return_index=True)
        return placed.only(order[np.sort(first)[:beam]], self.lies.kind, before.left)
