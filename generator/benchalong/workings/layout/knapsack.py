"""What to put into one length: worth most, or filling it most. Both exact, over all capacities at once."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from benchalong.workings.layout.lies import Ints


class Best:
    """The greatest worth at every capacity, by the recursion of Gilmore & Gomory (1966), each kind at most so
    often.

    Whole numbers throughout, so that what is proven with it is proven.
    """

    def __init__(
        self, sizes: Sequence[int], worth: Sequence[int], most: Sequence[int], capacity: int
    ) -> None:
        self._sizes = sizes
        self.worth: Ints = np.zeros(capacity + 1, dtype=np.int64)
        self._taken: list[tuple[int, int, np.ndarray[tuple[int], np.dtype[np.bool_]]]] = []
        for kind, times in _lots(sizes, worth, most, capacity):
            size = sizes[kind] * times
            with_it = self.worth[:-size] + worth[kind] * times
            is_better = with_it > self.worth[size:]
            self._taken.append((kind, times, is_better))
            self.worth[size:][is_better] = with_it[is_better]

    @property
    def layers(self) -> int:
        return len(self._taken)

    def counts(self, capacity: int) -> list[int]:
        """How many of each kind make up the greatest worth at a capacity."""
        counts = [0] * len(self._sizes)
        for kind, times, is_better in reversed(self._taken):
            size = self._sizes[kind] * times
            if capacity >= size and is_better[capacity - size]:
                counts[kind] += times
                capacity -= size
        return counts


def _lots(
    sizes: Sequence[int], worth: Sequence[int], most: Sequence[int], capacity: int
) -> Iterator[tuple[int, int]]:
    """Any number up to the most, as a sum of lots of 1, 2, 4 … and the rest."""
    for kind, size in enumerate(sizes):
        left, lot = min(most[kind], capacity // size), 1
        while left > 0 and worth[kind] > 0:
            times = min(lot, left)
            yield kind, times
            left, lot = left - times, lot * 2


def fullest(sizes: Sequence[int], most: Sequence[int], capacity: int) -> list[int]:
    """How many of each kind fill the capacity most; the later kinds in the list are preferred.

    Which sums can be reached is one long number whose bits are the sums: a kind shifts it.
    """
    mask = (1 << (capacity + 1)) - 1
    reached = [1]
    steps: list[int] = []
    for kind, size in enumerate(sizes):
        for _ in range(min(most[kind], capacity // size)):
            reached.append((reached[-1] | (reached[-1] << size)) & mask)
            steps.append(kind)
    total = reached[-1].bit_length() - 1
    counts = [0] * len(sizes)
    for at in range(len(steps) - 1, -1, -1):
        size = sizes[steps[at]]
        if total >= size and reached[at] >> (total - size) & 1:
            counts[steps[at]] += 1
            total -= size
    return counts
