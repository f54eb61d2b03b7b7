"""Fill rectangles with pieces: which pieces and ways come into question, and the tree of what was found."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np

from benchalong.workings.layout.beam import Beam, Move
from benchalong.workings.layout.dodging import BESIDE, ROW, SECTION
from benchalong.workings.layout.guiding import Guides
from benchalong.workings.layout.inner import Inner
from benchalong.workings.layout.judging import ByGain, ByGuide, ByRate, Judge
from benchalong.workings.layout.lies import ALONG_ROWS, ALONG_SECTIONS, Floats, Ints, Lies, Work
from benchalong.workings.layout.model import Rectangle, Way
from benchalong.workings.layout.tree import Node, Waste, Whole, parted, swapped

IsWanted: TypeAlias = Callable[[tuple[int, ...]], bool]
"""Of how many there are of each kind."""
A_FILLING = 1_000
"""What writing a filling out costs, in placings."""


@dataclass(frozen=True)
class Filled:
    """What one rectangle is filled with."""

    tree: Node
    counts: tuple[int, ...]
    """How many of each kind."""
    worth: float


@dataclass(frozen=True)
class Manner:
    """How a rectangle is filled: how many fillings are followed, how many of the best are told, and how
    they are judged."""

    beam: int
    lean: float | None = 0.0
    """How much more than by worth for room used a filling is judged by worth alone; None: by worth less what
    its room is usually worth."""
    keep: int = 1
    cap: float | None = None
    """Where it is told, fillings are judged by what the rest of the board may come to, for its area no more
    than this."""


@dataclass(frozen=True)
class Room:
    """The rectangle to fill, and how often the saw may turn in it."""

    length: int
    width: int
    turns: int
    first: Way | None
    defects: tuple[Rectangle, ...] = ()


class Filler:
    """Fills rectangles with the kinds of one order."""

    def __init__(self, inner: Inner, work: Work) -> None:
        self._inner, self._work = inner, work
        self._straight = Lies.of(inner)
        self._across = self._straight.swapped()
        self._guides = (
            Guides(self._straight, [sheet.length for sheet in inner.sheets], work),
            Guides(self._across, [sheet.width for sheet in inner.sheets], work),
        )
        marks = np.random.default_rng(20_100)
        self._marks = marks.integers(1, 2**62, size=max(1, len(inner.kinds)), dtype=np.int64)

    def fill(
        self, room: Room, left: Ints, worth: Floats, manner: Manner, is_wanted: IsWanted = lambda _: True
    ) -> list[Filled]:
        """The best fillings found of those that are wanted, best first; none is empty. `left`: how many there
        are of each kind."""
        found: list[Filled] = []
        if room.first is not Way.ALONG:
            found += self._one_way(room, left, worth, manner, is_wanted, swap=False)
        if room.first is not Way.ACROSS:
            found += self._one_way(room, left, worth, manner, is_wanted, swap=True)
        found.sort(key=lambda filled: -filled.worth)
        return found[: manner.keep]

    def fill_several(
        self, room: Room, boards: int, left: Ints, *, worth: Floats, manner: Manner, swap: bool
    ) -> list[Filled]:
        """So many boards alike filled at once: the filling with the most on all of them. Each is cut first
        across, or along when `swap` is true."""
        search = self._search(room, boards, left, worth, swap=swap)
        if search is None:
            return []
        judge = self._judge(search, room, boards, left, worth, manner, swap=swap)
        found = search.run(manner.beam, 1, self._work, judge)
        if not found:
            return []
        moves = search.moves_to(found[0])
        return [self._filled(search, on_board, worth, swap=swap) for on_board in search.by_board(moves)]

    def _one_way(
        self, room: Room, left: Ints, worth: Floats, manner: Manner, is_wanted: IsWanted, *, swap: bool
    ) -> list[Filled]:
        search = self._search(room, 1, left, worth, swap=swap)
        if search is None:
            return []
        judge = self._judge(search, room, 1, left, worth, manner, swap=swap)
        places = search.run(manner.beam, manner.keep, self._work, judge)
        every = [search.moves_to(place) for place in places]
        wanted = [moves for moves in every if is_wanted(self._counts(search, moves))]
        return [self._filled(search, moves, worth, swap=swap) for moves in wanted]

    def _judge(
        self, search: Beam, room: Room, boards: int, left: Ints, worth: Floats, manner: Manner, *, swap: bool
    ) -> Judge:
        length, width = (room.width, room.length) if swap else (room.length, room.width)
        if manner.cap is not None and room.turns in (2, 3):
            guide = self._guides[swap].guide(worth, left, length=length, width=width)
            if guide is not None:
                return ByGuide(guide, length=length, width=width, boards=boards, cap=manner.cap)
        return ByGain(worth, search.lies) if manner.lean is None else ByRate(manner.lean)

    def _search(self, room: Room, boards: int, left: Ints, worth: Floats, *, swap: bool) -> Beam | None:
        """None when nothing fits."""
        length, width = (room.width, room.length) if swap else (room.length, room.width)
        lies = self._across if swap else self._straight
        chosen = (left[lies.kind] > 0) & (worth[lies.kind] > 0) & (lies.length <= length)
        chosen &= lies.width <= width
        if room.turns in (1, 2, 4):
            chosen &= lies.run != (ALONG_ROWS if room.turns == 1 else ALONG_SECTIONS)
        if not chosen.any():
            return None
        return Beam(
            lies.only(chosen),
            length=length,
            width=width,
            boards=boards,
            turns=room.turns,
            left=left,
            worth=worth,
            marks=self._marks,
            defects=_mirrored(room.defects) if swap else room.defects,
            kerf=self._inner.kerf,
        )

    def _counts(self, search: Beam, moves: Sequence[Move]) -> tuple[int, ...]:
        kinds = search.lies.kind[[move.lie for move in moves]]
        return tuple(np.bincount(kinds, minlength=len(self._inner.kinds)).tolist())

    def _filled(self, search: Beam, moves: Sequence[Move], worth: Floats, *, swap: bool) -> Filled:
        self._work.spend(A_FILLING)
        tree = _tree(self._inner, search.lies, moves, search.turns, swap=swap)
        counts = self._counts(search, moves)
        return Filled(swapped(tree) if swap else tree, counts, float(np.array(counts) @ worth))


def _tree(inner: Inner, lies: Lies, moves: Sequence[Move], turns: int, *, swap: bool) -> Node:
    sections, x = list[Node](), 0
    for of_section in _begun_by(moves, SECTION):
        sections += _gap(of_section[0].section - x, Way.ACROSS)
        sections.append(_section(inner, lies, of_section, turns, swap=swap))
        x = of_section[0].section + sections[-1].length
    return parted(Way.ACROSS, sections, keep_single=True)


def _section(inner: Inner, lies: Lies, moves: Sequence[Move], turns: int, *, swap: bool) -> Node:
    rows, y = list[Node](), 0
    for of_row in _begun_by(moves, SECTION, ROW):
        rows += _gap(of_row[0].y - y, Way.ALONG)
        rows.append(_row(inner, lies, of_row, swap=swap))
        y = of_row[0].y + int(lies.width[of_row[0].lie])
    return parted(Way.ALONG, rows, keep_single=turns >= 3)


def _row(inner: Inner, lies: Lies, moves: Sequence[Move], *, swap: bool) -> Node:
    slots, x = list[Node](), moves[0].section
    for of_slot in _begun_by(moves, SECTION, ROW, BESIDE):
        slots += _gap(of_slot[0].x - x, Way.ACROSS)
        slots.append(parted(Way.ALONG, [_node(inner, lies, move.lie, swap=swap) for move in of_slot]))
        x = of_slot[0].x + int(lies.length[of_slot[0].lie])
    return parted(Way.ACROSS, slots)


def _begun_by(moves: Sequence[Move], *puts: int) -> list[list[Move]]:
    groups: list[list[Move]] = []
    for move in moves:
        if move.put in puts:
            groups.append([])
        groups[-1].append(move)
    return groups


def _gap(size: int, way: Way) -> list[Node]:
    """What is left behind where pieces keep clear of a defect."""
    return [Waste(size, 1) if way is Way.ACROSS else Waste(1, size)] if size > 0 else []


def _mirrored(defects: tuple[Rectangle, ...]) -> tuple[Rectangle, ...]:
    return tuple(Rectangle(d.y, d.x, d.width, d.length) for d in defects)


def _node(inner: Inner, lies: Lies, lie: int, *, swap: bool) -> Node:
    index, is_turned = int(lies.kind[lie]), bool(lies.is_turned[lie])
    kind = inner.kinds[index]
    members: list[Node] = []
    for member, (length, width) in enumerate(kind.sizes):
        size = (width, length) if is_turned != swap else (length, width)
        members.append(Whole(index, *size, is_turned, member))
    if len(members) == 1:
        return members[0]
    return parted(Way.ACROSS if lies.run[lie] == ALONG_SECTIONS else Way.ALONG, members)
