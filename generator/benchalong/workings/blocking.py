"""Whether one body is in another's way along a straight line, exactly.

Look along the way, as at a picture: on each line of sight the one body is in the way of the other where it
reaches further ahead than the other's hindmost wood. The depth of a flat face is a linear function on the
sheet, so a pair of faces is decided by where their outlines overlap: no stepping along the way.
What lies in one plane and slides over the other has no width on the sheet, so touching is no hindrance.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property
from itertools import pairwise
from typing import Any, TypeAlias

import numpy as np
from manifold3d import CrossSection, FillRule

from benchalong.plan.model import Copy
from benchalong.workings.bodies import Floats
from benchalong.workings.faces import Bools, FlatFaces, flat_faces, vector_areas
from benchalong.workings.pose import pose
from benchalong.workings.solids import ShapeId, Solids

Way: TypeAlias = tuple[float, float, float]
"""A direction in the room, of length 1."""

DEEP = 0.02
"""What reaches ahead by no more than this, in mm, only touches."""
WIDE = 0.05
"""A strip on the sheet narrower than this, in mm, is contact: facets of a peg and its hole differ so much."""
EDGE_ON = 1e-6
"""A face this nearly along the way has no width on the sheet."""


@dataclass(frozen=True, eq=False)
class _Ends:
    """The faces of one body that look ahead, or back, on the sheet."""

    loops: list[list[Floats]]
    depth: Floats
    """(n, 3): depth ahead = first * u + second * v + third."""
    low: Floats
    high: Floats
    """(n, 2)."""
    is_plain: Bools
    """Square rectangles of one depth: compared by their bounds alone."""
    _sections: dict[int, Any] = field(default_factory=dict)

    def section(self, face: int) -> Any:
        if face not in self._sections:
            self._sections[face] = CrossSection(self.loops[face], FillRule.Positive)
        return self._sections[face]


@dataclass(frozen=True, eq=False)
class View:
    """A shape looked at along a way: what of it is foremost and hindmost. From the copy's own corner."""

    front: _Ends
    rear: _Ends
    low: Floats
    high: Floats
    """(3,): reach along u, v and the way."""


@dataclass(frozen=True, eq=False)
class Body:
    """A copy: point of the shape -> turn * point + at, in mm as floating numbers."""

    shape: ShapeId
    turn: Floats
    """(3, 3), never mirrored."""
    at: Floats


def body_of(copy: Copy) -> Body:
    return Body(copy.shape, *pose(copy))


def sheet_of(way: Way) -> Floats:
    """Rows u, v, way: square to each other; for a way of the room the sheet lies along the room's axes."""
    ahead = np.array(way)
    least = int(np.argmin(np.abs(ahead)))
    u = np.cross(np.eye(3)[least], ahead)
    u /= np.linalg.norm(u)
    return np.array([u, np.cross(ahead, u), ahead])


class Views:
    """Views of shapes, each worked out once."""

    def __init__(self, solids: Solids) -> None:
        self._solids = solids
        self._faces: dict[ShapeId, FlatFaces] = {}
        self._views: dict[tuple[ShapeId, bytes], View] = {}

    def faces(self, shape: ShapeId) -> FlatFaces:
        if shape not in self._faces:
            self._faces[shape] = flat_faces(self._solids[shape])
        return self._faces[shape]

    def along(self, body: Body, sheet: Floats) -> View:
        rows = sheet @ body.turn
        key = (body.shape, np.rint(rows * 1e9).tobytes())
        if key not in self._views:
            self._views[key] = _view(self.faces(body.shape), rows)
        return self._views[key]


def _view(faces: FlatFaces, rows: Floats) -> View:
    sheet = faces.vertices @ rows.T
    areas = vector_areas(sheet, faces)
    size = np.linalg.norm(areas, axis=1)
    front, rear = areas[:, 2] > EDGE_ON * size, areas[:, 2] < -EDGE_ON * size
    return View(
        _ends(faces, sheet, areas, np.flatnonzero(front), 1),
        _ends(faces, sheet, areas, np.flatnonzero(rear), -1),
        sheet.min(axis=0),
        sheet.max(axis=0),
    )


def _ends(faces: FlatFaces, sheet: Floats, areas: Floats, chosen: Any, step: int) -> _Ends:
    points, starts = sheet[faces.corners], faces.corner_at()
    counts = np.diff(np.append(starts, len(faces.corners)))
    mean = (np.add.reduceat(points, starts) / counts[:, None])[chosen]
    slope = -areas[chosen, :2] / areas[chosen, 2:]
    constant = mean[:, 2] - (slope * mean[:, :2]).sum(axis=1)
    low = np.minimum.reduceat(points[:, :2], starts)[chosen]
    high = np.maximum.reduceat(points[:, :2], starts)[chosen]
    full = np.abs(areas[chosen, 2]) / 2 > (high - low).prod(axis=1) * (1 - 1e-9)
    flat = np.abs(slope).max(axis=1, initial=0.0) < 1e-12
    loops = [_face_loops(points, faces, face, step) for face in chosen.tolist()]
    return _Ends(loops, np.column_stack([slope, constant]), low, high, full & flat)


def _face_loops(points: Floats, faces: FlatFaces, face: int, step: int) -> list[Floats]:
    bounds = faces.loop_at[faces.face_at[face] : faces.face_at[face + 1] + 1].tolist()
    return [points[start:end, :2][::step] for start, end in pairwise(bounds)]


def is_ahead(hinder: View, mover: View, off: Floats) -> bool:
    """Whether the hinder has wood ahead of the mover's hindmost; `off` leads from the mover to the hinder."""
    front, rear = hinder.front, mover.rear
    low = np.maximum(rear.low[:, None], front.low + off[:2])
    high = np.minimum(rear.high[:, None], front.high + off[:2])
    span = high - low
    ahead = _ahead(front, rear, off)
    middle, half = (low + high) / 2, span / 2
    centre = (ahead[..., :2] * middle).sum(axis=2) + ahead[..., 2]
    most = centre + (np.abs(ahead[..., :2]) * half).sum(axis=2)
    may = (span > WIDE).all(axis=2) & (most > DEEP)
    if (may & rear.is_plain[:, None] & front.is_plain).any():
        return True
    return any(
        _thickness(_where_ahead(rear, front, int(i), int(j), off, ahead[i, j])) > WIDE
        for i, j in np.argwhere(may)
    )


def room_before(hinder: View, mover: View, off: Floats) -> float | None:
    """How far the mover gets before it meets the hinder; None where it never does. Below zero by what they
    lie in each other."""
    front, rear = mover.front, hinder.rear
    least: float | None = None
    ahead = _ahead(
        rear, front, off
    )  # from each of the mover's foremost faces to each of the hinder's hindmost
    for i in range(len(front.loops)):
        for j in range(len(rear.loops)):
            low = np.maximum(front.low[i], rear.low[j] + off[:2])
            high = np.minimum(front.high[i], rear.high[j] + off[:2])
            if (high - low > WIDE).all():
                both = front.section(i) ^ rear.section(j).translate(off[:2])
                if _thickness(both) > WIDE:
                    points = np.concatenate(both.to_polygons())
                    gap = float((points @ ahead[i, j, :2] + ahead[i, j, 2]).min())
                    if gap > -DEEP and (least is None or gap < least):
                        least = gap
    return least


def shared_width(hinder: View, mover: View, off: Floats, travel: float) -> float:
    """The least side, in mm on the sheet, of where the hinder is in the mover's way as it travels."""
    front, rear = mover.front, hinder.rear
    ahead = _ahead(rear, front, off)
    bounds: list[tuple[float, float, float, float]] = []
    for i in range(len(front.loops)):
        for j in range(len(rear.loops)):
            both = front.section(i) ^ rear.section(j).translate(off[:2])
            if _thickness(both) > WIDE:
                points = np.concatenate(both.to_polygons())
                gap = points @ ahead[i, j, :2] + ahead[i, j, 2]
                if -DEEP < gap.min() < travel:
                    bounds.append(both.bounds())
    spans = np.array(bounds).reshape(-1, 4)
    return float((spans[:, 2:].max(axis=0) - spans[:, :2].min(axis=0)).min()) if bounds else 0.0


def _ahead(far: _Ends, near: _Ends, off: Floats) -> Floats:
    """(n, m, 3): how far each far face lies ahead of each near one, as a linear function on the sheet."""
    moved = far.depth[:, 2] + off[2] - far.depth[:, :2] @ off[:2]
    shifted = np.column_stack([far.depth[:, :2], moved])
    return np.asarray(shifted[None, :, :] - near.depth[:, None, :])


def _where_ahead(rear: _Ends, front: _Ends, i: int, j: int, off: Floats, ahead: Floats) -> Any:
    both = rear.section(i) ^ front.section(j).translate(off[:2])
    slope = float(np.hypot(ahead[0], ahead[1]))
    if slope < 1e-12 or both.is_empty():
        return both
    left, bottom, right, top = both.bounds()
    reach = right - left + top - bottom + 1
    along, across = ahead[:2] / slope, np.array([-ahead[1], ahead[0]]) / slope
    foot = np.array([left + right, bottom + top]) / 2
    foot = foot + along * (DEEP - float(foot @ ahead[:2]) - ahead[2]) / slope
    corners = [(0, -1), (1, -1), (1, 1), (0, 1)]
    half = np.array([foot + reach * 4 * (a * along + b * across) for a, b in corners])
    distance = abs(float((foot - np.array([left + right, bottom + top]) / 2) @ along))
    if distance > reach:
        centre = np.array([(left + right) / 2, (bottom + top) / 2])
        return both if float(centre @ ahead[:2]) + ahead[2] > DEEP else CrossSection()
    return both ^ CrossSection([half], FillRule.Positive)


def _thickness(section: Any) -> float:
    """The area over half the way round, in mm: the width of a long strip."""
    loops = section.to_polygons()
    around = sum(float(np.hypot(*(loop - np.roll(loop, 1, axis=0)).T).sum()) for loop in loops)
    return 2 * float(section.area()) / around if around else 0.0


class Blocking:
    """Which bodies are in which others' way, along some ways."""

    def __init__(
        self, bodies: Sequence[Body], solids: Solids, *, apart: frozenset[tuple[int, int]] = frozenset()
    ) -> None:
        """`apart` are pairs, the lesser number first, that lie in each other: told about elsewhere, and no
        hindrance here."""
        self.bodies = bodies
        self._views = Views(solids)
        self._apart = apart
        self._seen: dict[tuple[object, ...], bool] = {}

    def faces(self, body: int) -> FlatFaces:
        return self._views.faces(self.bodies[body].shape)

    def look(self, way: Way, chosen: Sequence[int]) -> Look:
        sheet = sheet_of(way)
        views = [self._views.along(self.bodies[n], sheet) for n in chosen]
        at = np.array([sheet @ self.bodies[n].at for n in chosen])
        return Look(self, tuple(chosen), views, at)

    def is_ahead(self, look: Look, mover: int, hinder: int) -> bool:
        """By their places in the look."""
        one, other = look.chosen[mover], look.chosen[hinder]
        if (min(one, other), max(one, other)) in self._apart:
            return False
        off = look.at[hinder] - look.at[mover]
        a, b = look.views[mover], look.views[hinder]
        key = (id(a), id(b), np.rint(off * 1e6).tobytes())
        if key not in self._seen:
            self._seen[key] = is_ahead(b, a, off)
        return self._seen[key]


@dataclass(frozen=True, eq=False)
class Look:
    """Some bodies looked at along one way."""

    blocking: Blocking
    chosen: tuple[int, ...]
    views: list[View]
    at: Floats

    @cached_property
    def low(self) -> Floats:
        return np.asarray(self.at + np.array([view.low for view in self.views]))

    @cached_property
    def high(self) -> Floats:
        return np.asarray(self.at + np.array([view.high for view in self.views]))

    def reach(self, *, beside: float = WIDE) -> Floats:
        """(n, n): how far the second's box reaches ahead of the first's hindmost point, in mm; below zero
        where the two overlap on the sheet by no more than `beside`."""
        low, high = self.low, self.high
        ahead = high[None, :, 2] - low[:, None, 2]
        for axis in (0, 1):
            overlap = np.minimum(high[:, None, axis], high[None, :, axis])
            overlap = overlap - np.maximum(low[:, None, axis], low[None, :, axis])
            ahead[overlap <= beside] = -1.0
        np.fill_diagonal(ahead, -1.0)
        return ahead

    def hinders(self, mover: int, hinder: int) -> bool:
        """Whether the second is in the way of the first going ahead."""
        return self.blocking.is_ahead(self, mover, hinder)

    def room_before(self, mover: int, hinder: int) -> float | None:
        return room_before(self.views[hinder], self.views[mover], self.at[hinder] - self.at[mover])
