"""Thin lines in the room, drawn where no wood is in front of them.

What is seen of all faces covers each spot of the sheet at most once, so a line shows where the face seen
there lies behind it, or none is seen.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from benchalong.drawing.eye import Eye
from benchalong.drawing.hidden import Region, Standing, Surface
from benchalong.workings.bodies import Floats, Ints
from benchalong.workings.faces import Bools

BEHIND = 0.1
"""A line is hidden by what is nearer by more than this, in mm of depth."""
SHORT = 1e-4
"""Pieces shorter than this share of their line are left out."""


@dataclass(frozen=True, eq=False)
class _Seen:
    """All regions that are seen, edge by edge."""

    start: Floats
    end: Floats
    """(edges, 2)"""
    first: Ints
    """For each region its first edge."""
    depth: Floats
    """(regions, 3): depth = first * right + second * up + third."""


def visible_parts(
    threads: Sequence[Floats], bodies: Sequence[Standing], surfaces: Sequence[Surface], eye: Eye
) -> list[Floats]:
    """What shows of each thread, (2, 3) in the room: pieces (2, 2) on the sheet."""
    if not threads:
        return []
    seen, rows = _seen([r for s in surfaces for r in s.regions if r.loops], bodies, eye), np.array(eye.rows)
    return [piece for thread in threads for piece in _pieces(thread @ rows.T, seen)]


def _pieces(thread: Floats, seen: _Seen) -> list[Floats]:
    start, run = thread[0], thread[1] - thread[0]
    stops = [0.0, *np.unique(_crossings(start[:2], run[:2], seen).round(9)).tolist(), 1.0]
    middles = np.array([(a + b) / 2 for a, b in pairwise(stops)])
    shows = _shows(start + middles[:, None] * run, seen)
    kept: list[list[float]] = []
    for (a, b), is_seen in zip(pairwise(stops), shows.tolist(), strict=True):
        if is_seen and kept and kept[-1][1] == a:
            kept[-1][1] = b
        elif is_seen:
            kept.append([a, b])
    return [start[:2] + np.array([[a], [b]]) * run[:2] for a, b in kept if b - a > SHORT]


def _crossings(start: Floats, run: Floats, seen: _Seen) -> Floats:
    """Where along the thread, from 0 to 1, it meets an edge."""
    edge = seen.end - seen.start
    across = run[0] * edge[:, 1] - run[1] * edge[:, 0]
    off = seen.start - start
    safe = np.where(np.abs(across) < 1e-12, 1.0, across)
    along = (off[:, 0] * edge[:, 1] - off[:, 1] * edge[:, 0]) / safe
    on_edge = (off[:, 0] * run[1] - off[:, 1] * run[0]) / safe
    met = (np.abs(across) >= 1e-12) & (along > 0) & (along < 1) & (on_edge >= 0) & (on_edge <= 1)
    return np.asarray(along[met])


def _shows(points: Floats, seen: _Seen) -> Bools:
    """For each point (right, up, away) whether the face seen there is behind it."""
    x, y = points[:, None, 0], points[:, None, 1]
    (x1, y1), (x2, y2) = seen.start.T, seen.end.T
    spans = (y1 > y) != (y2 > y)
    safe = np.where(y1 == y2, 1.0, y2 - y1)
    right = spans & (x < x1 + (y - y1) * (x2 - x1) / safe)
    inside = np.add.reduceat(right.astype(np.int64), seen.first, axis=1) % 2 == 1
    depth = points[:, :2] @ seen.depth[:, :2].T + seen.depth[:, 2]
    return np.asarray(~(inside & (depth < points[:, 2, None] - BEHIND)).any(axis=1))


def _seen(regions: Sequence[Region], bodies: Sequence[Standing], eye: Eye) -> _Seen:
    loops = [loop for region in regions for loop in region.loops]
    counts = [sum(len(loop) for loop in region.loops) for region in regions]
    back = np.linalg.inv(np.array(eye.rows))
    return _Seen(
        np.concatenate(loops),
        np.concatenate([np.roll(loop, -1, axis=0) for loop in loops]),
        np.cumsum([0, *counts[:-1]]),
        np.array([_depth(region, bodies[region.body], back) for region in regions]),
    )


def _depth(region: Region, body: Standing, back: Floats) -> list[float]:
    """The plane of a face as depth over the sheet."""
    faces = body.faces
    corner = faces.vertices[faces.corners[faces.loop_at[faces.face_at[region.face]]]]
    normal = np.array(region.normal)
    level = float(normal @ (body.turn @ corner + body.at))
    right, up, away = (normal @ back).tolist()
    return [-right / away, -up / away, level / away]
