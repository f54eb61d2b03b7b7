"""A point well inside a shape, to point at."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from benchalong.drawing.faces import Bools, Floats

ACROSS = 17
"""Points tried in each direction, in each round."""
ROUNDS = 3


@dataclass(frozen=True)
class Inside:
    point: tuple[float, float]
    room: float
    """How far the shape's outline is at least from the point."""


def deepest(loops: Sequence[Floats]) -> Inside:
    """About the point furthest from the outline, in the unit of the loops."""
    starts, ends = np.concatenate(loops), np.concatenate([np.roll(loop, -1, axis=0) for loop in loops])
    low, high = starts.min(axis=0), starts.max(axis=0)
    best = Inside((float(starts[0, 0]), float(starts[0, 1])), 0.0)
    for _ in range(ROUNDS):
        tried = _grid(low, high)
        room = np.where(_within(tried, starts, ends), _distance(tried, starts, ends), -1.0)
        found = int(room.argmax())
        if room[found] > best.room:
            best = Inside((float(tried[found, 0]), float(tried[found, 1])), float(room[found]))
        step = (high - low) / ACROSS
        low, high = np.array(best.point) - step, np.array(best.point) + step
    return best


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
