"""From millimetres to a sketch that isn't to scale: short stretches are drawn longer, long ones shorter.

What matters at a machine is where the cutter stands, not how long the board is; so each stretch between two
places that matter keeps between a least and a greatest length on the sheet. The picture says that it isn't
to scale.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

from benchalong.ground.lengths import Length

PX_PER_MM = 3.4
LEAST = 17.0
"""Px, of the shortest stretch."""
MOST = 78.0
BROKEN = 1.7
"""A stretch drawn so many times too short is drawn broken."""


@dataclass(frozen=True)
class Stretched:
    start: float
    """Px."""
    end: float
    is_broken: bool


@dataclass(frozen=True)
class Scale:
    """One direction."""

    stops: tuple[Length, ...]
    pieces: tuple[Stretched, ...]

    @property
    def size(self) -> float:
        return self.pieces[-1].end if self.pieces else 0.0

    def at(self, value: Length) -> float:
        """Px of a place; beyond the first and last stop at the drawing's usual scale."""
        first, last = self.stops[0], self.stops[-1]
        if value <= first:
            return float(value - first) * PX_PER_MM
        if value >= last:
            return self.size + float(value - last) * PX_PER_MM
        for (low, high), piece in zip(pairwise(self.stops), self.pieces, strict=True):
            if value <= high:
                share = float((value - low) / (high - low))
                return piece.start + share * (piece.end - piece.start)
        raise AssertionError("between first and last lies some stretch")

    def breaks(self) -> Iterable[float]:
        """The middle of each stretch that is drawn broken."""
        return ((one.start + one.end) / 2 for one in self.pieces if one.is_broken)


def scale(places: Iterable[Length], *, most: float = MOST, least_whole: float = 0.0) -> Scale:
    """`least_whole`: the drawing is at least so long, px; every stretch grows alike."""
    stops = tuple(sorted(set(places)))
    drawn = [min(most, max(LEAST, float(high - low) * PX_PER_MM)) for low, high in pairwise(stops)]
    whole = sum(drawn)
    grown = max(1.0, least_whole / whole) if whole else 1.0
    pieces, at = list[Stretched](), 0.0
    for (low, high), px in zip(pairwise(stops), drawn, strict=True):
        end = at + px * grown
        pieces.append(Stretched(at, end, float(high - low) * PX_PER_MM > BROKEN * px * grown))
        at = end
    return Scale(stops, tuple(pieces))
