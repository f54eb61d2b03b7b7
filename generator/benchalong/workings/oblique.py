"""Ways that don't run square to the room: those that sloping faces in contact leave open.

A mitre opens square to itself; a part between two sloping faces slides along the line in which they meet.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import combinations

import numpy as np

from benchalong.workings.blocking import Blocking, Way
from benchalong.workings.bodies import Floats
from benchalong.workings.faces import vector_areas

SQUARE = 1e-6
CLOSE = 0.05
"""Two faces whose planes are no further apart than this, in mm, may touch."""
MOST = 26
"""More ways than this in one assembly aren't tried: a carved surface has no end of them."""
SMALL = 1.0
"""Smaller faces, in mm2, guide nothing."""


def oblique_ways(blocking: Blocking, chosen: Sequence[int], low: Floats, high: Floats) -> tuple[Way, ...]:
    """Each with its opposite, after the room's own six."""
    found: dict[tuple[int, ...], Way] = {}
    sloping = {n: planes for n in chosen if len(planes := _sloping(blocking, n))}
    for one, other in combinations(sloping, 2):
        if (low[one] > high[other] + CLOSE).any() or (low[other] > high[one] + CLOSE).any():
            continue
        normals = _facing(sloping[one], sloping[other])
        for way in _ways(normals):
            key = tuple(round(value * 1e5) for value in way)
            found.setdefault(key, way)
            if len(found) >= MOST:
                return tuple(found.values())
    return tuple(found.values())


def _sloping(blocking: Blocking, number: int) -> Floats:
    """(n, 4): normal and distance of each flat face that lies square to no direction of the room; what is
    round has none."""
    body, faces = blocking.bodies[number], blocking.faces(number)
    room = faces.vertices @ body.turn.T + body.at
    areas = vector_areas(room, faces)
    size = np.linalg.norm(areas, axis=1)
    normals = areas / np.maximum(size, 1e-12)[:, None]
    alone = np.bincount(faces.surface, minlength=int(faces.surface.max()) + 1)[faces.surface] == 1
    keep = (np.abs(normals).max(axis=1) < 1 - SQUARE) & alone & (size > 2 * SMALL)
    first = room[faces.corners[faces.corner_at()]]
    return np.asarray(np.column_stack([normals, (normals * first).sum(axis=1)])[keep])


def _facing(one: Floats, other: Floats) -> list[Floats]:
    """Normals of faces of the first that lie against one of the second."""
    against = one[:, :3] @ other[:, :3].T < -1 + 1e-9
    against &= np.abs(one[:, None, 3] + other[None, :, 3]) < CLOSE
    return [one[i, :3] for i in np.flatnonzero(against.any(axis=1))]


def _ways(normals: list[Floats]) -> Iterable[Way]:
    for normal in normals:
        yield from _both(normal)
    others = [*normals, *np.eye(3)]
    for first, second in combinations(range(len(others)), 2):
        if first < len(normals):
            line = np.cross(others[first], others[second])
            if np.linalg.norm(line) > 1e-3 and np.abs(line).max() < (1 - SQUARE) * np.linalg.norm(line):
                yield from _both(line / np.linalg.norm(line))


def _both(vector: Floats) -> Iterable[Way]:
    for sign in (1.0, -1.0):
        x, y, z = (sign * vector).tolist()
        yield (x + 0.0, y + 0.0, z + 0.0)
