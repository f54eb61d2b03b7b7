"""Straight bodies of wood as meshes, with each facet's origin kept.

Every facet is numbered before anything is cut away, and the numbers live through the cutting. So
afterwards it is known, not guessed from rounded normals, which triangles lie in one plane and which
are facets of one round surface.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any, TypeAlias

import manifold3d
import numpy as np
from numpy.typing import NDArray

from benchalong.plan.model import AXES, Circle, Corner, Outline, Prism

Floats: TypeAlias = NDArray[np.float64]
Ints: TypeAlias = NDArray[np.int64]

Size3: TypeAlias = tuple[float, float, float]
"""Along, across, down, in mm."""

CHORD = 0.02
"""How far a facet may stand off its arc, in mm."""
BEYOND = 10.0
"""How far a body that takes all that lies outside a shape reaches past the part, in mm."""
SNAP = 1e-5
"""Points nearer than this, in mm, are one."""


@dataclass(frozen=True)
class Facets:
    """The facets of one body, in the order of their numbers."""

    planes: Floats
    """(n, 4): the outward normal and its distance from the origin in mm."""
    rounds: Ints
    """(n,): the number of the arc a facet belongs to, within this body; -1 for a flat face."""


@dataclass(frozen=True)
class Loop:
    """A closed path of straight pieces; piece i runs from point i to the next."""

    points: Floats
    rounds: Ints
    """(n,): which arc a piece belongs to, -1 for a straight side."""


def block(size: Size3, number: int) -> tuple[Any, Facets]:
    """A box from the origin, in mm, with its facets numbered; `number` is its own id among the bodies."""
    along, across, down = size
    points = np.array([(0, 0), (along, 0), (along, across), (0, across)], dtype=float)
    return _extruded([Loop(points, np.full(4, -1))], axis=2, start=0.0, end=down, number=number)


def prism_body(prism: Prism, box: Size3, number: int) -> tuple[Any, Facets]:
    """The wood a prism takes from a part of this size, in the part's directions, and its facets."""
    axis = AXES.index(prism.axis)
    loops = _cleaned(_loop(prism.shape))
    if prism.outside:
        loops = [_frame(loops, np.delete(np.array(box), axis)), *(_backwards(loop) for loop in loops)]
    return _extruded(loops, axis=axis, start=float(prism.start), end=float(prism.end), number=number)


def arc_pieces(radius: float, angle: float) -> int:
    """How many chords an arc of `angle` radians needs to stay within `CHORD`."""
    if radius <= CHORD:
        return max(3, math.ceil(angle / (math.pi / 3)))
    return max(2, math.ceil(angle / (2 * math.acos(1 - CHORD / radius))))


def _loop(shape: Outline | Circle) -> Loop:
    return _circle(shape) if isinstance(shape, Circle) else _outline(shape)


def _circle(circle: Circle) -> Loop:
    """A polygon of the circle's own area: corners a hair outside it, sides a hair inside."""
    radius = float(circle.diameter) / 2
    count = -(-arc_pieces(radius, 2 * math.pi) // 4) * 4
    step = 2 * math.pi / count
    angles = np.arange(count) * step
    grown = radius * math.sqrt(step / math.sin(step))
    centre = np.array([float(circle.centre[0]), float(circle.centre[1])])
    return Loop(
        centre + grown * np.column_stack([np.cos(angles), np.sin(angles)]), np.zeros(count, dtype=np.int64)
    )


def _outline(outline: Outline) -> Loop:
    """Corners in turn, anticlockwise; a round one becomes an arc that takes the same area as the true one."""
    corners = outline.corners if _signed_area(outline) >= 0 else outline.corners[::-1]
    points: list[tuple[float, float]] = []
    rounds: list[int] = []
    for i, corner in enumerate(corners):
        bend = _bend(corners[i - 1], corner, corners[(i + 1) % len(corners)])
        points += bend
        rounds += [i] * (len(bend) - 1) + [-1]
    kept = [i for i, point in enumerate(points) if math.dist(point, points[(i + 1) % len(points)]) > SNAP]
    return Loop(
        np.array([points[i] for i in kept]).reshape(-1, 2),
        np.array([rounds[i] for i in kept], dtype=np.int64),
    )


def _frame(loops: list[Loop], box: Floats) -> Loop:
    """A rectangle well outside the part and the shape: what is drawn outside a shape ends there."""
    points = np.vstack([np.zeros((1, 2)), box[None, :], *(loop.points for loop in loops)])
    (left, top), (right, bottom) = points.min(axis=0) - BEYOND, points.max(axis=0) + BEYOND
    corners = np.array([(left, top), (right, top), (right, bottom), (left, bottom)], dtype=float)
    return Loop(corners, np.full(4, -1))


def _backwards(loop: Loop) -> Loop:
    """The same path the other way round: a hole."""
    return Loop(loop.points[::-1], np.roll(loop.rounds[::-1], -1))


def _signed_area(outline: Outline) -> float:
    spots = [corner.at for corner in outline.corners]
    pairs = zip(spots, spots[1:] + spots[:1], strict=True)
    return float(sum(p[0] * q[1] - q[0] * p[1] for p, q in pairs))


def _bend(before: Corner, corner: Corner, after: Corner) -> list[tuple[float, float]]:
    """The points of one corner: itself, or those of the arc that touches both its sides."""
    at = np.array([float(corner.at[0]), float(corner.at[1])])
    back = np.array([float(before.at[0]), float(before.at[1])]) - at
    ahead = np.array([float(after.at[0]), float(after.at[1])]) - at
    radius = float(corner.radius)
    lengths = float(np.hypot(*back)), float(np.hypot(*ahead))
    if radius <= 0 or min(lengths) == 0:
        return [(float(at[0]), float(at[1]))]
    back, ahead = back / lengths[0], ahead / lengths[1]
    opening = math.acos(max(-1.0, min(1.0, float(back @ ahead))))
    if not 1e-6 < opening < math.pi - 1e-6:
        return [(float(at[0]), float(at[1]))]
    reach = radius / math.tan(opening / 2)
    middle = (back + ahead) / np.hypot(*(back + ahead))
    centre = at + middle * radius / math.sin(opening / 2)
    return _arc(centre, at + back * reach, at + ahead * reach)


def _arc(centre: Floats, start: Floats, end: Floats) -> list[tuple[float, float]]:
    """From start to end the short way round; inner points moved out a hair for the true area."""
    radius = float(np.hypot(*(start - centre)))
    first = math.atan2(*(start - centre)[::-1])
    turn = (math.atan2(*(end - centre)[::-1]) - first + math.pi) % (2 * math.pi) - math.pi
    count = arc_pieces(radius, abs(turn))
    step = abs(turn) / count
    grown = _grown(radius, abs(turn), step, count)
    angles = [first + turn * i / count for i in range(1, count)]
    inner = [(float(centre[0] + grown * math.cos(a)), float(centre[1] + grown * math.sin(a))) for a in angles]
    return [(float(start[0]), float(start[1])), *inner, (float(end[0]), float(end[1]))]


def _grown(radius: float, turn: float, step: float, count: int) -> float:
    """How far out inner points lie for a fan of chords of the sector's own area, radius^2 * turn / 2."""
    sine = math.sin(step)
    if count == 2:
        return radius * turn / (2 * sine)
    inner = (count - 2) * sine
    return radius * (math.sqrt(sine * sine + inner * turn) - sine) / inner


def _extruded(loops: list[Loop], *, axis: int, start: float, end: float, number: int) -> tuple[Any, Facets]:
    if not loops or end <= start:
        return manifold3d.Manifold(), Facets(np.zeros((0, 4)), np.zeros(0, dtype=np.int64))
    lid = np.asarray(manifold3d.triangulate([piece.points for piece in loops]), dtype=np.int64).reshape(-1, 3)
    points = np.vstack([piece.points for piece in loops])
    count = len(points)
    following = np.concatenate([_following(piece, first) for piece, first in _numbered(loops)])
    here = np.arange(count)
    above = following + count
    walls = np.vstack(
        [np.column_stack([here, following, above]), np.column_stack([here, above, here + count])]
    )
    triangles = np.vstack([lid[:, ::-1], lid + count, walls])
    ids = np.concatenate([np.zeros(len(lid)), np.ones(len(lid)), here + 2, here + 2]).astype(np.uint64)
    flat = np.column_stack([np.vstack([points, points]), np.repeat([start, end], count)])
    planes = _planes(points, following, start, end)
    order = {2: [0, 1, 2], 1: [0, 2, 1], 0: [2, 0, 1]}[axis]
    mesh = manifold3d.Mesh64(
        vert_properties=np.ascontiguousarray(flat[:, order]),
        tri_verts=np.ascontiguousarray(triangles[:, ::-1] if axis == 1 else triangles).astype(np.uint64),
        run_index=np.array([0, 3 * len(triangles)], dtype=np.uint64),
        run_original_id=np.array([number], dtype=np.uint32),
        face_id=ids,
    )
    rounds = np.concatenate([[-1, -1], *(piece.rounds for piece in loops)]).astype(np.int64)
    return manifold3d.Manifold(mesh), Facets(planes[:, [*order, 3]], rounds)


def _planes(points: Floats, following: Ints, start: float, end: float) -> Floats:
    """The two lids, then a wall for each point, in the shape's own directions."""
    run = points[following] - points
    outward = np.column_stack([run[:, 1], -run[:, 0]]) / np.hypot(run[:, 0], run[:, 1])[:, None]
    distance = (outward * points).sum(axis=1)
    walls = np.column_stack([outward, np.zeros(len(points)), distance])
    return np.vstack([[0.0, 0.0, -1.0, -start], [0.0, 0.0, 1.0, end], walls])


def _numbered(loops: list[Loop]) -> list[tuple[Loop, int]]:
    firsts = np.cumsum([0, *(len(piece.points) for piece in loops)])
    return [(piece, int(first)) for piece, first in zip(loops, firsts, strict=False)]


def _following(piece: Loop, first: int) -> Ints:
    return first + np.roll(np.arange(len(piece.points)), -1)


def _cleaned(loop: Loop) -> list[Loop]:
    """The path freed of bridges to inner rings and of crossings; a plain path comes back untouched."""
    if len(loop.points) < 3:
        return []
    if len(np.unique(np.round(loop.points / SNAP), axis=0)) == len(loop.points) and _is_simple(loop.points):
        return [loop]
    section = manifold3d.CrossSection([loop.points], manifold3d.FillRule.NonZero)
    return [_named_again(np.asarray(points, dtype=float), loop) for points in section.to_polygons()]


def _is_simple(points: Floats) -> bool:
    """Whether no two pieces of the path cross or touch, ends of neighbours apart."""
    count = len(points)
    if count < 4:
        return True
    ends = np.roll(points, -1, axis=0)
    run = ends - points
    first, second = np.triu_indices(count, 2)
    apart = ~((first == 0) & (second == count - 1))
    first, second = first[apart], second[apart]

    def side(of: Ints, spots: Floats) -> Floats:
        offset = spots - points[of]
        return np.asarray(run[of, 0] * offset[:, 1] - run[of, 1] * offset[:, 0])

    crossing = (side(first, points[second]) * side(first, ends[second]) <= 0) & (
        side(second, points[first]) * side(second, ends[first]) <= 0
    )
    return not bool(crossing.any())


def _named_again(points: Floats, loop: Loop) -> Loop:
    """A cleaned path with its points put back exactly where they were, its arcs known again."""
    distance = np.hypot(*(points[:, None, :] - loop.points[None, :, :]).transpose(2, 0, 1))
    nearest = distance.argmin(axis=1)
    exact = np.where(distance.min(axis=1)[:, None] < SNAP, loop.points[nearest], points)
    return Loop(exact, loop.rounds[nearest])
