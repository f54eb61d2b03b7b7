"""A point well inside a shape, to point at."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from benchalong.workings.bodies import Floats
from benchalong.workings.faces import Bools

ACROSS = 13
"""Points tried in each direction, in each round."""
ROUNDS = 3
NEARLY = 0.8
"""Of the most room there can be."""


@dataclass(frozen=True)
class Inside:
    point: tuple[float, float]
    room: float
    """How far the shape's outline is at least from the point."""


@dataclass(frozen=True)
class Around:
    """The box of the whole drawing, in the unit of the loops."""

    low: Floats
    high: Floats

    def distance(self, points: Floats) -> Floats:
        """From each point to the nearest side."""
        return np.asarray(np.minimum(points - self.low, self.high - points).min(axis=1))


def well_inside(loops: Sequence[Floats], around: Around, *, enough: float) -> Inside:
    """A point with nearly as much room round it as there can be, or `enough`; of those the one nearest to a
    side of the drawing, so that a leader to it is short. In the unit of the loops."""
    starts, ends = np.concatenate(loops), np.concatenate([np.roll(loop, -1, axis=0) for loop in loops])
    low, high = starts.min(axis=0), starts.max(axis=0)
    tried, room = starts[:1], np.zeros(1)
    for _ in range(ROUNDS):
        points = _grid(low, high)
        points = points[_within(points, starts, ends)]
        if len(points):
            tried = np.concatenate([tried, points])
            room = np.concatenate([room, _distance(points, starts, ends)])
        step, best = (high - low) / ACROSS, tried[int(room.argmax())]
        low, high = best - step, best + step
    good = np.flatnonzero(room >= min(NEARLY * float(room.max()), enough))
    chosen = int(good[around.distance(tried[good]).argmin()])
    x, y = tried[chosen].tolist()
    return Inside((x, y), float(room[chosen]))


def _grid(low: Floats, high: Floats) -> Floats:
    parts = (np.arange(ACROSS) + 0.5) / ACROSS
    x, y = np.meshgrid(*(low + parts[:, None] * (high - low)).T)
    return np.column_stack([x.ravel(), y.ravel()])


def _within(points: Floats, starts: Floats, ends: Floats) -> Bools:
    """Even-odd: a ray to the right crosses the outline an odd number of times."""
    x, y = points[:, :1], points[:, 1:]
    crosses = (starts[:, 1] > y) != (ends[:, 1] > y)
    rise = np.where(ends[:, 1] == starts[:, 1], 1.0, ends[:, 1] - starts[:, 1])
    at = starts[:, 0] + (y - starts[:, 1]) / rise * (ends[:, 0] - starts[:, 0])
    return np.asarray((crosses & (at > x)).sum(axis=1) % 2 == 1)


def _distance(points: Floats, starts: Floats, ends: Floats) -> Floats:
    onward = ends - starts
    length = np.maximum((onward**2).sum(axis=1), 1e-18)
    apart = points[:, None] - starts
    along = np.clip((apart * onward).sum(axis=2) / length, 0.0, 1.0)
    return np.asarray(np.linalg.norm(apart - along[:, :, None] * onward, axis=2).min(axis=1))
