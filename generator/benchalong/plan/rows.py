"""Places that stand for several copies in a row: `count: 5` is five entries, one after another."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from benchalong.reading.written import Place

MOST_IN_A_ROW = 200
"""Copies in one row; beyond that a digit slipped in."""


@dataclass(frozen=True)
class Entry:
    """One copy that a place stands for."""

    index: int
    """Which place of its assembly, as written."""
    nth: int
    """Which copy of its row, counted from 0."""
    place: Place

    @property
    def own_mark(self) -> str:
        """The mark it was given for itself; copies of a row are numbered from theirs."""
        return "" if is_row(self.place) else self.place.mark


def is_row(place: Place) -> bool:
    return how_many(place) > 1


def how_many(place: Place) -> int:
    return min(place.count or 1, MOST_IN_A_ROW)


def entries(places: tuple[Place, ...]) -> Iterator[Entry]:
    """Every copy, in the order written."""
    for index, place in enumerate(places):
        yield from (Entry(index, nth, place) for nth in range(how_many(place)))
