"""Fill board after board until no piece is left; learn from it which pieces are hard to place well, and do it
again.

Sequential value correction (Mukhacheva et al. 2000; Belov & Scheithauer 2007): each board is filled to be
worth as much as possible, and pieces that ended on badly used boards are worth more the next time, so that
they are placed earlier. A piece's worth begins as its area, a little more for large ones.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from benchalong.workings.layout.clearing import Clear, Clearing, Spoilt, clearings, clears
from benchalong.workings.layout.filling import Filled, Filler, Room
from benchalong.workings.layout.inner import Inner, Kind, Sheet
from benchalong.workings.layout.lies import Floats, Ints
from benchalong.workings.layout.model import Way
from benchalong.workings.layout.tree import Node, Parted, Waste


@dataclass(frozen=True)
class Full:
    """One board filled."""

    sheet: int
    filled: Filled


@dataclass(frozen=True)
class Manner:
    """How boards are filled."""

    beam: int
    lean: float | None = 0.0
    keep: int = 1


class Sheets:
    """Fills whole sheets, defects and all."""

    def __init__(self, inner: Inner, filler: Filler) -> None:
        self._inner, self._filler = inner, filler
        self._clearings = [self._ways_to_clear(sheet) for sheet in inner.sheets]

    def _ways_to_clear(self, sheet: Sheet) -> list[Clearing]:
        inner = self._inner
        return clearings(
            sheet.length, sheet.width, sheet.defects, kerf=inner.kerf, turns=inner.turns, first=inner.first
        )

    def fill(self, sheet: int, left: Ints, worth: Floats, manner: Manner) -> list[Filled]:
        """The best fillings found, best first; none when nothing fits."""
        found: list[Filled] = []
        for clearing in self._clearings[sheet]:
            found += self._fill_cleared(clearing, left, worth, manner)
        found += self._fill_round_defects(sheet, left, worth, manner)
        found.sort(key=lambda filled: -filled.worth)
        return found[: manner.keep]

    def _fill_round_defects(self, sheet: int, left: Ints, worth: Floats, manner: Manner) -> list[Filled]:
        one, inner = self._inner.sheets[sheet], self._inner
        if not one.defects:
            return []
        room = Room(one.length, one.width, inner.turns, inner.first, one.defects)
        return self._filler.fill(room, left, worth, beam=manner.beam, keep=manner.keep, lean=manner.lean)

    def _fill_cleared(self, clearing: Clearing, left: Ints, worth: Floats, manner: Manner) -> list[Filled]:
        if isinstance(clearing, Clear):
            return self._fill_clear(clearing, left, worth, manner)
        left, total, counts = left.copy(), 0.0, np.zeros_like(left)
        trees: dict[Clear, list[Node]] = {}
        rooms = sorted(clears(clearing), key=lambda clear: -clear.length * clear.width)
        for room in rooms:
            best = self._fill_clear(room, left, worth, Manner(manner.beam, manner.lean))
            if best:
                held = np.array(best[0].counts)
                left, counts = left - held, counts + held
                total += best[0].worth
                trees.setdefault(room, []).append(best[0].tree)
        return [Filled(_put_in(clearing, trees), tuple(counts.tolist()), total)] if counts.any() else []

    def _fill_clear(self, clear: Clear, left: Ints, worth: Floats, manner: Manner) -> list[Filled]:
        found: list[Filled] = []
        for room in self._rooms(clear):
            found += self._filler.fill(
                room, left, worth, beam=manner.beam, keep=manner.keep, lean=manner.lean
            )
        found.sort(key=lambda filled: -filled.worth)
        return found[: manner.keep]

    def _rooms(self, clear: Clear) -> list[Room]:
        """Cutting on the same way costs no turn; the other way, one."""
        turns = self._inner.turns
        if clear.way is None:
            return [Room(clear.length, clear.width, turns, self._inner.first)]
        rooms = [Room(clear.length, clear.width, turns - clear.stage + 1, clear.way)]
        if turns > clear.stage:
            rooms.append(Room(clear.length, clear.width, turns - clear.stage, clear.way.other))
        return rooms


def _put_in(clearing: Clearing, trees: dict[Clear, list[Node]]) -> Node:
    if isinstance(clearing, Spoilt):
        return Waste(clearing.length, clearing.width)
    if isinstance(clearing, Clear):
        waiting = trees.get(clearing)
        return _filling_out(waiting.pop(0), clearing) if waiting else Waste(clearing.length, clearing.width)
    near, far = _put_in(clearing.near, trees), _put_in(clearing.far, trees)
    return _pair(clearing.way, near, far)


def _filling_out(node: Node, clear: Clear) -> Node:
    """The node in a region of the clear rectangle's size."""
    way, parts = (node.way, node.parts) if isinstance(node, Parted) else (clear.way or Way.ACROSS, (node,))
    short = clear.length - node.length if way is Way.ACROSS else clear.width - node.width
    rest = Waste(short, clear.width) if way is Way.ACROSS else Waste(clear.length, short)
    return Parted(way, (*parts, rest) if short else parts, clear.length, clear.width)


def _pair(way: Way, near: Node, far: Node) -> Node:
    flat: list[Node] = []
    for part in (near, far):
        flat += part.parts if isinstance(part, Parted) and part.way is way else [part]
    length = near.length + far.length if way is Way.ACROSS else near.length
    width = near.width + far.width if way is Way.ALONG else near.width
    if isinstance(near, Waste) and isinstance(far, Waste):
        return Waste(length, width)
    return Parted(way, tuple(flat), length, width)


def in_sequence(
    inner: Inner, sheets: Sheets, worth: Floats, manner: Manner, left: Ints, numbers: Sequence[int]
) -> tuple[list[Full], Ints]:
    """Boards filled one after another, and what is left when no board takes any more."""
    left, free, full = left.copy(), list(numbers), []
    while left.any():
        best = _best_board(inner, sheets, worth, manner, left, free)
        if best is None:
            break
        counts = np.array(best.filled.counts)
        held = counts > 0
        times = min(int((left[held] // counts[held]).min()), free[best.sheet])
        full += [best] * times
        left = left - times * counts
        free[best.sheet] -= times
    return full, left


def _best_board(
    inner: Inner, sheets: Sheets, worth: Floats, manner: Manner, left: Ints, free: Sequence[int]
) -> Full | None:
    """The one that is worth most for its cost; or, when one takes all that is left, the cheapest such."""
    best: tuple[float, float, Full] | None = None
    for index, sheet in enumerate(inner.sheets):
        if free[index] <= 0:
            continue
        for filled in sheets.fill(index, left, worth, manner)[:1]:
            takes_all = np.array_equal(np.array(filled.counts), left)
            rate = filled.worth / max(sheet.cost, 1e-9)
            key = (1.0, -float(sheet.cost)) if takes_all else (0.0, rate)
            if best is None or key > best[:2]:
                best = (*key, Full(index, filled))
    return best[2] if best else None


def first_worth(inner: Inner, power: float) -> Floats:
    return np.array([float(_room(kind)) ** power for kind in inner.kinds])


def _room(kind: Kind) -> int:
    """What it takes up where it takes up least."""
    return min(length * width for length, width in map(kind.size, kind.ways))


def corrected(
    inner: Inner, worth: Floats, full: Sequence[Full], power: float, chance: np.random.Generator
) -> Floats:
    """Pieces on boards that waste much are worth more; how much of the new worth is taken is left to
    chance."""
    sums, times = np.zeros_like(worth), np.zeros_like(worth)
    areas = np.array([float(_room(kind)) for kind in inner.kinds])
    for board in full:
        counts = np.array(board.filled.counts, float)
        use = inner.sheets[board.sheet].area / max(float(counts @ areas), 1.0)
        sums += counts * use
        times += counts
    aim = np.where(times > 0, areas**power * sums / np.maximum(times, 1.0), worth)
    share = chance.uniform(0.2, 0.8, size=worth.size)
    return (1 - share) * worth + share * aim
