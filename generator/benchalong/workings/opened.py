"""The piece with everything shut, and any of it open: what a thing runs into on its way."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from functools import cached_property

import numpy as np

from benchalong.plan.model import Plan
from benchalong.workings.blocking import Body, Views, body_of
from benchalong.workings.bodies import Floats
from benchalong.workings.placed import Placed
from benchalong.workings.sweep import Hit, Sliding, Sweep, Turning
from benchalong.workings.what_moves import Moving, motion_of


class Bench:
    """Where everything stands, shut; kept while everything is moved in turn."""

    def __init__(self, plan: Plan, placed: Placed, clashing: frozenset[tuple[int, int]]) -> None:
        self.plan, self.placed = plan, placed
        self.sweep = Sweep(placed, Views(placed.solids))
        self._clashing = clashing
        rooms = [[[float(x) for x in corner] for corner in one.reach] for one in placed.lying]
        self._low, self._high = np.array(rooms).reshape(-1, 2, 3).transpose(1, 0, 2)
        self._reaches: dict[str, tuple[Floats, Floats]] = {}
        self._near: dict[str, frozenset[int]] = {}
        self._seen: dict[tuple[object, ...], list[Hit]] = {}

    @cached_property
    def shut(self) -> tuple[Body, ...]:
        return tuple(body_of(one.copy) for one in self.placed.lying)

    def hits(self, moving: Moving, others: Iterable[int], *, opened: Moving | None = None) -> list[Hit]:
        """What it runs into of these copies, which are all of `opened`'s, if that is opened all the way."""
        motion = motion_of(moving.moves)
        movers = [(n, self.shut[n]) for n in moving.copies if not self._is_empty(n)]
        if opened is None:
            near = [(n, self.shut[n]) for n in sorted(self.near(moving).intersection(others))]
        else:
            still = [(n, _opened(self.shut[n], opened)) for n in others]
            near = [(n, body) for n, body in still if self._comes_near(moving, body)]
        near = [(n, body) for n, body in near if not self._is_empty(n)]
        key = _alike(motion, movers, near)
        if key not in self._seen:
            self._seen[key] = self._swept(motion, movers, near)
        found = [
            replace(hit, mover=movers[hit.mover][0], other=near[hit.other][0]) for hit in self._seen[key]
        ]
        return [
            hit
            for hit in found
            if (min(hit.mover, hit.other), max(hit.mover, hit.other)) not in self._clashing
        ]

    def _swept(
        self, motion: Turning | Sliding, movers: Sequence[tuple[int, Body]], near: Sequence[tuple[int, Body]]
    ) -> list[Hit]:
        """Hits by the places in both lists."""
        one, other = (list(enumerate(body for _, body in bodies)) for bodies in (movers, near))
        if isinstance(motion, Turning):
            return self.sweep.turns_into(motion, one, other)
        return self.sweep.slides_into(motion, one, other)

    def near(self, moving: Moving) -> frozenset[int]:
        """Everything that stands, shut, where it comes by; itself left out."""
        if moving.goes not in self._near:
            low, high = self._reach(moving)
            near = np.flatnonzero((self._low < high).all(axis=1) & (self._high > low).all(axis=1))
            self._near[moving.goes] = frozenset(near.tolist()) - frozenset(moving.copies)
        return self._near[moving.goes]

    def _reach(self, moving: Moving) -> tuple[Floats, Floats]:
        if moving.goes not in self._reaches:
            movers = [self.shut[n] for n in moving.copies]
            self._reaches[moving.goes] = self.sweep.reach(motion_of(moving.moves), movers)
        return self._reaches[moving.goes]

    def cross(self, one: Moving, other: Moving) -> bool:
        """Whether the rooms that the two go through have room in common."""
        (low, high), (other_low, other_high) = self._reach(one), self._reach(other)
        return bool((low < other_high).all() and (other_low < high).all())

    def _comes_near(self, moving: Moving, body: Body) -> bool:
        low, high = self._reach(moving)
        corners = self.sweep.corners(body)
        return bool((corners.min(axis=0) < high).all() and (corners.max(axis=0) > low).all())

    def _is_empty(self, number: int) -> bool:
        return self.placed.solids[self.placed.lying[number].copy.shape].is_empty


def _alike(
    motion: Turning | Sliding, movers: Sequence[tuple[int, Body]], near: Sequence[tuple[int, Body]]
) -> tuple[object, ...]:
    """Equal for things that move, and lie to each other, in the same way somewhere else in the piece."""
    origin = motion.point if isinstance(motion, Turning) else movers[0][1].at
    how = (*motion.way, motion.angle if isinstance(motion, Turning) else motion.travel)
    bodies = [
        (body.shape, np.rint(body.turn * 1e6).tobytes(), np.rint((body.at - origin) * 1e6).tobytes())
        for _, body in (*movers, *near)
    ]
    return (type(motion).__name__, how, len(movers), *bodies)


def _opened(body: Body, moving: Moving) -> Body:
    motion = motion_of(moving.moves)
    if isinstance(motion, Turning):
        return motion.turned(body, motion.angle)
    return replace(body, at=body.at + motion.travel * np.array(motion.way))
