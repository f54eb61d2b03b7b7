"""What shape is each part? Its box less everything its cuts take away: its own and its joints'.

Copies of one part may differ in what joints take from them, so there is a solid for each shape.

A solid is made when it is first asked for, since a site whose drawings are already stored needs none.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import TypeAlias

import manifold3d
import numpy as np

from benchalong.ground.problems import Finding
from benchalong.plan.model import Part, Plan, Shape
from benchalong.workings.bodies import Facets, Floats, Ints, Size3, block, prism_body
from benchalong.workings.working import Worked, Working

ShapeId: TypeAlias = str

SAME_PLANE = 1e-6
"""Planes whose distance differs by less, in mm, and whose normals agree are one."""


@dataclass(frozen=True, eq=False)
class Solid:
    """A part as a closed mesh of triangles in its own directions: along, across, down, in mm.

    The corners of each triangle run anticlockwise seen from outside; each edge belongs to exactly two
    triangles. Round surfaces are facets within 0.02 mm of the true ones, laid so that a circle and a
    round corner take their true area: volumes of straight cuts, holes and round corners are exact.
    """

    vertices: Floats
    """(n, 3) float64, mm."""
    triangles: Ints
    """(m, 3) int64: rows of `vertices`."""
    faces: Ints
    """(m,) int64: which flat face a triangle lies in, from 0: triangles of one plane that hang together."""
    surfaces: Ints
    """(m,) int64: as `faces`, but all facets of one arc that hang together are one surface. An edge between
    two faces of one surface is no edge of the wood and isn't drawn, unless it is the outline."""
    normals: Floats
    """(m, 3) float64: unit length, outwards; equal within a face."""
    volume: float
    """mm3."""
    box: Size3
    """Length, width, thickness of the part before anything was taken, mm."""

    @property
    def surface(self) -> float:
        """mm2, all sides."""
        corners = self.vertices[self.triangles]
        normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
        return float(np.linalg.norm(normals, axis=1).sum() / 2)

    @property
    def is_empty(self) -> bool:
        """Whether the cuts leave nothing."""
        return len(self.triangles) == 0


@dataclass(frozen=True, eq=False)
class Solids(Mapping[ShapeId, Solid]):
    """Each shape's solid by the shape's id; a part that comes in one shape only has the part's id."""

    parts: Mapping[ShapeId, Part]
    """Each shape as a part with that shape's cuts."""
    _made: dict[ShapeId, Solid] = field(default_factory=dict)

    def __getitem__(self, shape: ShapeId) -> Solid:
        """Raises KeyError for a shape the plan hasn't."""
        if shape not in self._made:
            self._made[shape] = solid_of(self.parts[shape])
        return self._made[shape]

    def __iter__(self) -> Iterator[ShapeId]:
        return iter(self.parts)

    def __len__(self) -> int:
        return len(self.parts)


def solid_of(part: Part) -> Solid:
    """The part's box less all prisms of its cuts."""
    box = (float(part.length), float(part.width), float(part.thickness))
    prisms = [prism for cut in part.cuts for prism in cut.takes]
    first = manifold3d.Manifold.reserve_ids(len(prisms) + 1)
    bodies = [block(box, first)]
    bodies += [prism_body(prism, box, first + i) for i, prism in enumerate(prisms, 1)]
    whole = manifold3d.Manifold.batch_boolean([body for body, _ in bodies], manifold3d.OpType.Subtract)
    return _read(whole, [facets for _, facets in bodies], first, box)


def _read(whole: manifold3d.Manifold, facets: list[Facets], first: int, box: Size3) -> Solid:
    mesh = whole.to_mesh64()
    vertices = np.array(mesh.vert_properties, dtype=np.float64).reshape(-1, 3)
    triangles = np.array(mesh.tri_verts, dtype=np.int64).reshape(-1, 3)
    body = _body_of_each(mesh, len(triangles), first)
    facet = np.array(mesh.face_id, dtype=np.int64)
    starts = np.cumsum([0, *(len(one.planes) for one in facets)])[:-1]
    row = starts[body] + facet if len(triangles) else facet
    planes = np.vstack([one.planes * (1 if i == 0 else -1) for i, one in enumerate(facets)])
    pairs = neighbours(triangles)
    faces = _hanging_together(pairs, _plane_numbers(planes)[row])
    surfaces = _hanging_together(pairs, _arc_numbers(facets)[row], faces)
    return Solid(vertices, triangles, faces, surfaces, planes[row, :3], float(whole.volume()), box)


def neighbours(triangles: Ints) -> Ints:
    """(k, 4): each edge's two ends and the two triangles that meet in it.

    The first triangle runs along the edge, the second against it.
    """
    if len(triangles) == 0:
        return np.zeros((0, 4), dtype=np.int64)
    start = triangles.ravel()
    end = np.roll(triangles, -1, axis=1).ravel()
    owner = np.repeat(np.arange(len(triangles)), 3)
    ahead, against = start < end, start > end
    one = np.lexsort((end[ahead], start[ahead]))
    two = np.lexsort((start[against], end[against]))
    return np.column_stack([start[ahead][one], end[ahead][one], owner[ahead][one], owner[against][two]])


def loose_pieces(solid: Solid) -> tuple[int, ...]:
    """The bodies in it that hang together, each by its number of triangles; of more than one it falls apart.

    Pieces of less than a cubic millimetre are slivers of rounding.
    """
    if solid.is_empty:
        return ()
    pairs = neighbours(solid.triangles)
    group = _hanging_together(pairs, np.zeros(len(solid.triangles), dtype=np.int64))
    corners = solid.vertices[solid.triangles]
    held = np.einsum("ij,ij->i", corners[:, 0], np.cross(corners[:, 1], corners[:, 2])) / 6
    volumes = np.bincount(group, weights=held)
    return tuple(int(count) for count in np.bincount(group)[volumes > 1.0])


def _body_of_each(mesh: manifold3d.Mesh64, count: int, first: int) -> Ints:
    """Which body each triangle's surface comes from: 0 the box, then the prisms."""
    body = np.zeros(count, dtype=np.int64)
    runs = np.array(mesh.run_index, dtype=np.int64) // 3
    for start, end, number in zip(runs[:-1], runs[1:], mesh.run_original_id, strict=True):
        body[start:end] = int(number) - first
    return body


def _plane_numbers(planes: Floats) -> Ints:
    """One number for all facets of one plane, whichever body they come from."""
    same = (planes[:, None, :3] * planes[None, :, :3]).sum(axis=2) > 1 - 1e-13
    same &= np.abs(planes[:, None, 3] - planes[None, :, 3]) < SAME_PLANE
    return np.asarray(same.argmax(axis=1), dtype=np.int64)


def _arc_numbers(facets: list[Facets]) -> Ints:
    """One number for all facets of one arc, another for each flat facet (below zero: belongs to no arc)."""
    numbers: list[Ints] = []
    first = 0
    for one in facets:
        numbers.append(np.where(one.rounds < 0, -1, one.rounds + first))
        first += int(one.rounds.max(initial=-1)) + 1
    return np.concatenate(numbers)


def _hanging_together(pairs: Ints, numbers: Ints, within: Ints | None = None) -> Ints:
    """Groups of neighbours with the same number, from 0; numbers below zero join only `within`."""
    left, right = pairs[:, 2], pairs[:, 3]
    joined = (numbers[left] == numbers[right]) & (numbers[left] >= 0)
    if within is not None:
        joined |= within[left] == within[right]
    group = np.arange(len(numbers))
    links = np.column_stack([left[joined], right[joined]])
    while len(links):
        lowest = np.minimum(group[links[:, 0]], group[links[:, 1]])
        before = group.copy()
        np.minimum.at(group, links[:, 0], lowest)
        np.minimum.at(group, links[:, 1], lowest)
        group = group[group]
        if np.array_equal(before, group):
            break
    return np.unique(group, return_inverse=True)[1].astype(np.int64)


def shaped(plan: Plan, shape: Shape) -> Part:
    """The part as it is made in this shape."""
    return replace(plan.parts[shape.part], cuts=shape.cuts)


def _work(plan: Plan, worked: Worked) -> tuple[Solids, tuple[Finding, ...]]:  # noqa: ARG001
    return Solids({name: shaped(plan, shape) for name, shape in plan.shapes.items()}), ()


SOLIDS = Working("solids", "What shape is each part?", _work)
