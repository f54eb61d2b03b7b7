"""Which faces of two pieces of wood look at each other, and how far apart they are.

Measured from face to face along their common normal, so that sloping faces (mitres, dovetails) are measured
as square ones are: what touches, what is left open, and how much play there is on every side.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

import manifold3d
import numpy as np

from benchalong.workings.bodies import Floats
from benchalong.workings.placed import Placed, Relation
from benchalong.workings.solids import ShapeId, Solid

SMALLEST = 0.05
"""Faces that look at each other over less than this, in mm2, only pass each other."""
FURTHEST = 150.0
"""In mm: faces further apart have nothing to do with each other."""
BACK = 0.02
"""In mm: how far faces may have passed each other and still count as touching."""


@dataclass(frozen=True, eq=False)
class Flat:
    """A flat face of a solid, in the part's own directions."""

    normal: Floats
    """Outwards, of length 1."""
    distance: float
    """Of its plane from the origin, in mm."""
    corners: Floats
    """(k, 3, 3): its triangles."""


@dataclass(frozen=True, eq=False)
class Facing:
    """Two faces that look at each other."""

    normal: Floats
    """Of the first part's face, outwards, in the first's directions."""
    gap: float
    """In mm; a little below zero where they have passed each other."""
    area: float
    """Over which they do, in mm2."""
    second: Floats
    """The normal of the second part's face in its own directions."""
    second_distance: float
    """Of that face's plane from the second's own origin."""


@dataclass(frozen=True, eq=False)
class Faces:
    """The flat faces of each shape, and what was measured between two that lie so."""

    placed: Placed
    _flats: dict[ShapeId, tuple[Flat, ...]] = field(default_factory=dict)
    _measured: dict[Relation, tuple[Facing, ...]] = field(default_factory=dict)

    def of(self, shape: ShapeId) -> tuple[Flat, ...]:
        if shape not in self._flats:
            self._flats[shape] = flats(self.placed.solids[shape])
        return self._flats[shape]

    def between(self, how: Relation) -> tuple[Facing, ...]:
        if how not in self._measured:
            self._measured[how] = _between(self.of(how.first), self.of(how.second), how)
        return self._measured[how]


def flats(solid: Solid) -> tuple[Flat, ...]:
    found = []
    for face in range(int(solid.faces.max(initial=-1)) + 1):
        rows = np.flatnonzero(solid.faces == face)
        corners = solid.vertices[solid.triangles[rows]]
        normal = solid.normals[rows[0]]
        found.append(Flat(normal, float(corners[0, 0] @ normal), corners))
    return tuple(found)


def _between(first: tuple[Flat, ...], second: tuple[Flat, ...], how: Relation) -> tuple[Facing, ...]:
    turn, at = how.matrix[:, :3], how.matrix[:, 3]
    normals = np.array([face.normal for face in first])
    distances = np.array([face.distance for face in first])
    other_normals = np.array([face.normal for face in second]) @ turn.T
    other_distances = np.array([face.distance for face in second]) + other_normals @ at
    opposite = normals @ other_normals.T < -1 + 1e-9
    gaps = -other_distances[None, :] - distances[:, None]
    found = []
    for i, j in zip(*np.nonzero(opposite & (gaps > -BACK) & (gaps < FURTHEST)), strict=True):
        there = second[j].corners @ turn.T + at
        area = _shared_area(first[i].corners, there, normals[i])
        if area > SMALLEST:
            found.append(Facing(normals[i], float(gaps[i, j]), area, second[j].normal, second[j].distance))
    return tuple(found)


def _shared_area(one: Floats, other: Floats, normal: Floats) -> float:
    """Of two faces seen along the normal."""
    basis = _across(normal)
    a, b = one @ basis, other @ basis
    if (np.maximum(a.min((0, 1)), b.min((0, 1))) >= np.minimum(a.max((0, 1)), b.max((0, 1)))).any():
        return 0.0
    return float((_section(a) ^ _section(b)).area())


def _section(triangles: Floats) -> Any:
    return manifold3d.CrossSection(list(triangles), manifold3d.FillRule.NonZero)


def _across(normal: Floats) -> Floats:
    """(3, 2): two directions square to it."""
    n = int(np.abs(normal).argmax())
    start = np.eye(3)[(n + 1) % 3]
    first = start - normal * (normal @ start)
    first /= np.linalg.norm(first)
    return np.column_stack([first, np.cross(normal, first)])
