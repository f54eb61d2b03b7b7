"""Every way every kind may lie, as columns; and how much work may still be done."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from benchalong.workings.layout.inner import Inner
from benchalong.workings.layout.model import Way

Ints: TypeAlias = NDArray[np.int64]
Floats: TypeAlias = NDArray[np.float64]
ALONG_SECTIONS, ALONG_ROWS = 1, 2
"""Which way a match set runs, end to end or side by side; 0: it is none."""


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
    for way in kind.ways:
        run = {None: 0, Way.ACROSS: ALONG_SECTIONS, Way.ALONG: ALONG_ROWS}[way]
        length, width = kind.size(way)
        yield index, length, width, 0, run
        if kind.may_turn:
            yield index, width, length, 1, (0, ALONG_ROWS, ALONG_SECTIONS)[run]


@dataclass
class Work:
    """How many placings may still be weighed; a clock may set it to nothing."""

    left: int
    spent: int = field(default=0)

    def spend(self, placings: int) -> None:
        self.left -= placings
        self.spent += placings
