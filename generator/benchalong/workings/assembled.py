"""Things put together, each one copy or several that move as one: what is in what's way, by ways."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from benchalong.workings.blocking import DEEP, Blocking, Look, Way
from benchalong.workings.bodies import Floats, Ints
from benchalong.workings.taking_apart import Set, Table

TOUCHING = 0.5
"""Boxes no further apart than this, in mm, lie against each other."""


@dataclass(frozen=True, eq=False)
class Assembled:
    blocking: Blocking
    members: tuple[tuple[int, ...], ...]
    """Each by the numbers of its copies."""
    ways: tuple[Way, ...]
    low: Floats
    high: Floats
    """(all copies, 3): each copy's box in the room, mm."""
    volume: Floats
    """(all copies,)"""

    @cached_property
    def chosen(self) -> tuple[int, ...]:
        return tuple(copy for copies in self.members for copy in copies)

    @cached_property
    def owner(self) -> Ints:
        """For each of the chosen copies, whose it is."""
        return np.repeat(np.arange(len(self.members)), [len(copies) for copies in self.members])

    @cached_property
    def table(self) -> Table:
        hinders: list[list[Set]] = []
        reach: list[Floats] = []
        for number, way in enumerate(self.ways):
            look = self.blocking.look(way, self.chosen)
            reach.append(self._by_member(look.reach(beside=-TOUCHING)))
            back = self._opposite(number)
            hinders.append(turned_round(hinders[back]) if back is not None else self._hinders(look))
        return Table(
            hinders,
            np.array(reach),
            self._outward(),
            [float(self.volume[list(m)].sum()) for m in self.members],
        )

    def _opposite(self, number: int) -> int | None:
        """An earlier way that leads back: who hinders whom is the same table turned round."""
        for earlier in range(number):
            if float(np.dot(self.ways[earlier], self.ways[number])) < -1 + 1e-9:
                return earlier
        return None

    def _by_member(self, reach: Floats) -> Floats:
        """What slides along a face must go past it, too: so a part is rather lifted off than slid off."""
        found = np.zeros((len(self.members), len(self.members)))
        one, other = np.broadcast_arrays(self.owner[:, None], self.owner[None, :])
        np.maximum.at(found, (one, other), reach)
        np.fill_diagonal(found, 0.0)
        return found

    def _hinders(self, look: Look) -> list[Set]:
        found = [0] * len(self.members)
        near, far = np.nonzero((look.reach() > DEEP) & (self.owner[:, None] != self.owner[None, :]))
        rows = zip(
            near.tolist(), far.tolist(), self.owner[near].tolist(), self.owner[far].tolist(), strict=True
        )
        for mover, hinder, one, other in rows:
            if not found[one] >> other & 1 and look.hinders(mover, hinder):
                found[one] |= 1 << other
        return found

    def _outward(self) -> Floats:
        low = np.array([self.low[list(copies)].min(axis=0) for copies in self.members])
        high = np.array([self.high[list(copies)].max(axis=0) for copies in self.members])
        whole = (low.min(axis=0) + high.max(axis=0)) / 2
        return np.asarray(np.array(self.ways) @ ((low + high) / 2 - whole).T)


def turned_round(hinders: Sequence[Set]) -> list[Set]:
    """Who is hindered by each instead of who hinders each."""
    count = len(hinders)
    return [sum(1 << other for other in range(count) if hinders[other] >> one & 1) for one in range(count)]
