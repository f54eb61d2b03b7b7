"""The outlines of a solid's flat faces.

A face's outline is made of the triangle sides whose other triangle lies in another face, so no outline is
ever worked out by joining shapes.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from benchalong.workings.bodies import Floats, Ints
from benchalong.workings.solids import Solid

Bools: TypeAlias = NDArray[np.bool_]


@dataclass(frozen=True, eq=False)
class FlatFaces:
    vertices: Floats
    corners: Ints
    """Vertices in the order of the outlines: loop after loop, face after face; wood to the left."""
    following: Ints
    """For each corner, the place in `corners` of the next one in its loop."""
    loop_at: Ints
    """Where in `corners` each loop starts, and at last their number."""
    face_at: Ints
    """Where in `loop_at` each face starts, and at last the number of loops."""
    surface: Ints
    """For each face, the surface it belongs to: the facets of one rounding are one surface."""

    def corner_at(self) -> Ints:
        """Where in `corners` each face starts, without the end."""
        return self.loop_at[self.face_at[:-1]]


def vector_areas(vertices: Floats, faces: FlatFaces) -> Floats:
    """For each face twice its area, as a vector square to it; outwards where `vertices` aren't mirrored."""
    points = vertices[faces.corners]
    points = points - points.mean(axis=0)
    return np.add.reduceat(np.cross(points, points[faces.following]), faces.corner_at())


def flat_faces(solid: Solid) -> FlatFaces:
    """Every flat face with its outline. Raises ValueError when the solid isn't closed or is empty."""
    sides = solid.triangles[:, [0, 1, 1, 2, 2, 0]].reshape(-1, 2)
    owner = np.repeat(solid.faces, 3)
    border = np.flatnonzero(owner != owner[_twins(sides)])
    ordered = border[np.argsort(owner[border], kind="stable")]
    count = int(solid.faces.max()) + 1
    bounds = np.searchsorted(owner[ordered], np.arange(count + 1))
    corners: list[int] = []
    loop_at, face_at = [0], [0]
    for start, end in pairwise(bounds.tolist()):
        for loop in _loops(sides[ordered[start:end]].tolist()):
            corners.extend(loop)
            loop_at.append(len(corners))
        face_at.append(len(loop_at) - 1)
    surface = np.zeros(count, dtype=np.int64)
    surface[solid.faces] = solid.surfaces
    following = _following(loop_at)
    return FlatFaces(
        solid.vertices, np.array(corners), following, np.array(loop_at), np.array(face_at), surface
    )


def _twins(sides: Ints) -> Ints:
    """For each triangle side, the side that runs the other way."""
    if len(sides) == 0:
        raise ValueError("the solid is empty")
    count = int(sides.max()) + 1
    forth, back = sides[:, 0] * count + sides[:, 1], sides[:, 1] * count + sides[:, 0]
    by_forth, by_back = np.argsort(forth, kind="stable"), np.argsort(back, kind="stable")
    if not np.array_equal(forth[by_forth], back[by_back]):
        raise ValueError("the solid is not closed")
    twin = np.empty(len(sides), dtype=np.int64)
    twin[by_back] = by_forth
    return twin


def _loops(sides: list[list[int]]) -> list[list[int]]:
    """Closed walks along directed sides. Where two touch at a vertex either way on is right."""
    onward: dict[int, list[int]] = {}
    for start, end in sides:
        onward.setdefault(start, []).append(end)
    loops = []
    for first in onward:
        while onward[first]:
            loops.append(_walk(onward, first))
    return loops


def _walk(onward: dict[int, list[int]], first: int) -> list[int]:
    loop, here = [first], onward[first].pop()
    while here != first:
        loop.append(here)
        here = onward[here].pop()
    return loop


def _following(loop_at: list[int]) -> Ints:
    following = np.arange(1, loop_at[-1] + 1)
    for start, end in pairwise(loop_at):
        following[end - 1] = start
    return following
