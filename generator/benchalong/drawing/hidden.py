"""What can be seen of bodies standing in a room: hidden surfaces taken away exactly.

For each flat face that looks towards the eye, every other such face is subtracted where it is nearer.
On the sheet the depth of a flat face is a linear function, so where one face is nearer than another is one
side of a straight line: the nearer face is clipped to that side and subtracted. Sorting faces from back to
front instead would draw part of most assembled pieces wrongly.

Tolerances, all far below what can be drawn: a face hides another only where it is nearer by more than
`NEARER`; where two faces lie in one plane the earlier body is in front, so bodies that touch or overlap a
little give no rubbish; what is thinner than `THIN` on the sheet is dropped.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import dist
from typing import TypeAlias

import numpy as np
from manifold3d import CrossSection, FillRule, OpType

from benchalong.drawing.eye import Eye
from benchalong.workings.bodies import Floats, Ints
from benchalong.workings.faces import Bools, FlatFaces, vector_areas

Loop: TypeAlias = Floats
"""A closed walk on the sheet, (n, 2), right and up; the inside to the left."""

NEARER = 0.002
"""In mm of depth."""
THIN = 0.02
"""In mm on the sheet."""
EDGE_ON = 1e-5
"""A face this nearly along the line of sight shows nothing."""
ROWS = 256
"""So many faces are compared with all others at a time, to bound memory."""


@dataclass(frozen=True)
class Standing:
    """A body in its place: point -> turn * point + at. A mirroring turn is fine."""

    faces: FlatFaces
    turn: Floats
    at: Floats


@dataclass(frozen=True)
class Region:
    """What can be seen of one flat face."""

    body: int
    """Which of the bodies given, from 0."""
    face: int
    """Which of its faces."""
    surface: int
    normal: tuple[float, float, float]
    """Which way it looks in the room; of length 1."""
    loops: tuple[Loop, ...]


@dataclass(frozen=True)
class Surface:
    """What can be seen of a flat or rounded surface. Its outlines are the lines to draw: arrises and
    silhouettes, and where bodies in one plane meet; never a line within a plane or a rounding."""

    regions: tuple[Region, ...]
    outlines: tuple[Loop, ...]

    @property
    def body(self) -> int:
        return self.regions[0].body


@dataclass(frozen=True)
class _Fronts:
    """Every face towards the eye."""

    body: Ints
    face: Ints
    surface: Ints
    normal: Floats
    loops: list[list[Loop]]
    depth: Floats
    """(n, 3): depth = first * right + second * up + third."""
    low: Floats
    high: Floats
    """(n, k): the reach along each of the directions compared; right and up are the first two."""
    near: Floats
    far: Floats


def seen(bodies: Sequence[Standing], eye: Eye) -> tuple[Surface, ...]:
    """Every surface that can be seen, in the order of bodies and faces."""
    if not bodies:
        return ()
    fronts = _fronts(bodies, eye)
    regions = [region for region in _visible(fronts) if region.loops]
    together: dict[tuple[int, int], list[Region]] = defaultdict(list)
    for region in regions:
        together[region.body, region.surface].append(region)
    return tuple(Surface(tuple(group), _outlines(group)) for group in together.values())


def _outlines(regions: list[Region]) -> tuple[Loop, ...]:
    if len(regions) == 1:
        return regions[0].loops
    return joined([region.loops for region in regions])


def joined(shapes: Sequence[Sequence[Loop]]) -> tuple[Loop, ...]:
    """The outlines of all these shapes together."""
    return tidy(CrossSection.batch_boolean([_section(loops) for loops in shapes], OpType.Add))


def _section(loops: Sequence[Loop]) -> CrossSection:
    return CrossSection(list(loops), FillRule.Positive)


# Faces towards the eye


def _fronts(bodies: Sequence[Standing], eye: Eye) -> _Fronts:
    rows = np.array(eye.rows)
    # Parts mostly lie square to each other: besides right and up, compare square to each axis as drawn.
    drawn = np.linalg.norm(rows[:2], axis=0)
    across = rows[:2, drawn > EDGE_ON] / drawn[drawn > EDGE_ON]
    compared = np.concatenate([np.eye(2), np.stack([-across[1], across[0]], axis=1)])
    each = [_of_body(number, body, rows, compared) for number, body in enumerate(bodies)]
    return _Fronts(
        body=np.concatenate([one.body for one in each]),
        face=np.concatenate([one.face for one in each]),
        surface=np.concatenate([one.surface for one in each]),
        normal=np.concatenate([one.normal for one in each]),
        loops=[loops for one in each for loops in one.loops],
        depth=np.concatenate([one.depth for one in each]),
        low=np.concatenate([one.low for one in each]),
        high=np.concatenate([one.high for one in each]),
        near=np.concatenate([one.near for one in each]),
        far=np.concatenate([one.far for one in each]),
    )


def _of_body(number: int, body: Standing, rows: Floats, compared: Floats) -> _Fronts:
    faces, starts = body.faces, body.faces.corner_at()
    room = faces.vertices @ body.turn.T + body.at
    handed = 1.0 if np.linalg.det(body.turn) > 0 else -1.0
    sheet = room @ rows.T
    normal = handed * vector_areas(room, faces)
    facing = handed * vector_areas(sheet, faces)
    towards = np.flatnonzero(
        (facing[:, 2] > EDGE_ON * np.linalg.norm(facing, axis=1)) & (facing[:, 2] > 2 * THIN * THIN)
    )
    points = sheet[faces.corners]
    counts = np.diff(np.append(starts, len(faces.corners)))
    mean = np.add.reduceat(points, starts)[towards] / counts[towards, None]
    slope = -facing[towards, :2] / facing[towards, 2:]
    constant = mean[:, 2] - (slope * mean[:, :2]).sum(axis=1)
    reach = points[:, :2] @ compared.T
    return _Fronts(
        body=np.full(len(towards), number),
        face=towards,
        surface=faces.surface[towards],
        normal=normal[towards] / np.linalg.norm(normal[towards], axis=1)[:, None],
        loops=[_face_loops(points, faces, face, handed) for face in towards.tolist()],
        depth=np.column_stack([slope, constant]),
        low=np.minimum.reduceat(reach, starts)[towards],
        high=np.maximum.reduceat(reach, starts)[towards],
        near=np.minimum.reduceat(points[:, 2], starts)[towards],
        far=np.maximum.reduceat(points[:, 2], starts)[towards],
    )


def _face_loops(points: Floats, faces: FlatFaces, face: int, handed: float) -> list[Loop]:
    bounds = faces.loop_at[faces.face_at[face] : faces.face_at[face + 1] + 1].tolist()
    step = 1 if handed > 0 else -1
    return [points[start:end, :2][::step] for start, end in pairwise(bounds)]


# Subtracting what is nearer


@dataclass(frozen=True)
class _Pairs:
    """Faces that another may hide: `other` is nearer than `face` in all that both cover, or in part of it."""

    face: Ints
    other: Ints
    wholly: Bools
    box: Floats
    """(n, 4): what both reach on the sheet, left, bottom, right, top."""


def _visible(fronts: _Fronts) -> Iterator[Region]:
    sections = [_section(loops) for loops in fronts.loops]
    takes: list[list[CrossSection]] = [[] for _ in sections]
    for first in range(0, len(sections), ROWS):
        pairs = _compare(fronts, np.arange(first, min(first + ROWS, len(sections))))
        columns = (pairs.face.tolist(), pairs.other.tolist(), pairs.wholly.tolist(), pairs.box.tolist())
        for face, other, wholly, box in zip(*columns, strict=True):
            if wholly:
                takes[face].append(sections[other])
            elif len(side := _nearer_side(fronts, face, other, box)) > 2:
                takes[face].append(sections[other] ^ CrossSection([np.array(side)], FillRule.NonZero))
    for number, own in enumerate(sections):
        yield _region(fronts, number, own, takes[number])


def _region(fronts: _Fronts, number: int, own: CrossSection, takes: list[CrossSection]) -> Region:
    left = CrossSection.batch_boolean([own, *takes], OpType.Subtract) if takes else own
    x, y, z = fronts.normal[number].tolist()
    return Region(
        int(fronts.body[number]), int(fronts.face[number]), int(fronts.surface[number]), (x, y, z), tidy(left)
    )


def _compare(fronts: _Fronts, rows: Ints) -> _Pairs:
    """These faces against all others. Each direction looks only at pairs that meet in those before it: most
    faces of a large piece don't even stand below each other."""
    row, other = np.nonzero(_reach_meets(fronts, rows[:, None], np.arange(len(fronts.body)), 0))
    face = rows[row]
    for direction in range(1, fronts.low.shape[1]):
        kept = _reach_meets(fronts, face, other, direction)
        face, other = face[kept], other[kept]
    kept = (fronts.near[other] < fronts.far[face] + NEARER) & (face != other)
    return _nearer_pairs(fronts, face[kept], other[kept])


def _reach_meets(fronts: _Fronts, face: Ints, other: Ints, direction: int) -> Bools:
    low, high = fronts.low[:, direction], fronts.high[:, direction]
    shared: Bools = np.minimum(high[face], high[other]) - np.maximum(low[face], low[other]) > THIN / 10
    return shared


def _nearer_pairs(fronts: _Fronts, face: Ints, other: Ints) -> _Pairs:
    """Of pairs whose reaches meet, those where `other` may be nearer."""
    low = np.maximum(fronts.low[face, :2], fronts.low[other, :2])
    high = np.minimum(fronts.high[face, :2], fronts.high[other, :2])
    ahead = fronts.depth[other] - fronts.depth[face]
    centre = (ahead[:, :2] * (low + high) / 2).sum(axis=1) + ahead[:, 2]
    swing = (np.abs(ahead[:, :2]) * (high - low) / 2).sum(axis=1)
    same_plane = np.abs(centre) + swing <= NEARER
    earlier = fronts.body[other] < fronts.body[face]
    wholly = (centre + swing < -NEARER) | (same_plane & earlier)
    kept = wholly | (~same_plane & (centre - swing < -NEARER))
    return _Pairs(face[kept], other[kept], wholly[kept], np.column_stack([low, high])[kept])


def _nearer_side(fronts: _Fronts, number: int, other: int, box: list[float]) -> list[tuple[float, float]]:
    """Where in the box `other` is nearer than `number` by more than NEARER: the corners, anticlockwise."""
    a, b, c = (fronts.depth[other] - fronts.depth[number]).tolist()
    left, bottom, right, top = box
    corners = [(left, bottom), (right, bottom), (right, top), (left, top)]
    behind = [a * x + b * y + c + NEARER for x, y in corners]
    kept: list[tuple[float, float]] = []
    for i in range(4):
        here, there, low, high = corners[i - 1], corners[i], behind[i - 1], behind[i]
        if (low < 0) != (high < 0):
            part = low / (low - high)
            kept.append((here[0] + part * (there[0] - here[0]), here[1] + part * (there[1] - here[1])))
        if high < 0:
            kept.append(there)
    return kept


# Tidying what clipping leaves


def tidy(section: CrossSection) -> tuple[Loop, ...]:
    """The loops of a shape without spikes, points in a line and slivers thinner than THIN."""
    loops = (_straightened(loop.tolist()) for loop in section.to_polygons())
    return tuple(np.array(loop) for loop in loops if len(loop) > 2 and _thickness(loop) > THIN)


def _straightened(points: list[list[float]]) -> list[list[float]]:
    """Without points that lie within THIN / 2 of a straight walk, there and back again included."""
    kept = list(points)
    at, checked = 0, 0
    while len(kept) > 2 and checked < len(kept):
        at %= len(kept)
        if _is_straight(kept[at - 1], kept[at], kept[(at + 1) % len(kept)]):
            del kept[at]
            at, checked = at - 1, max(0, checked - 2)
        else:
            at, checked = at + 1, checked + 1
    return kept


def _is_straight(before: list[float], here: list[float], after: list[float]) -> bool:
    ax, ay, bx, by = here[0] - before[0], here[1] - before[1], after[0] - here[0], after[1] - here[1]
    turn = ax * by - ay * bx
    return turn * turn <= (THIN / 2) ** 2 * max(ax * ax + ay * ay, bx * bx + by * by)


def area(loop: Sequence[Sequence[float]]) -> float:
    """In mm2 on the sheet; below zero for a loop round a hole."""
    return sum(loop[i - 1][0] * here[1] - loop[i - 1][1] * here[0] for i, here in enumerate(loop)) / 2


def _thickness(loop: Sequence[Sequence[float]]) -> float:
    """The area over half the way round: the width of a long strip."""
    around = sum(dist(loop[i - 1], here) for i, here in enumerate(loop))
    return 2 * abs(area(loop)) / max(1e-12, around)
