"""A solid seen squarely from one side: which lines are seen, which are hidden behind wood.

Geometry only: lines in mm in the part's own directions. Nothing here knows of a sheet, a scale or a size.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, TypeAlias

import numpy as np
from numpy.typing import NDArray

from benchalong.drawing.strokes import joined
from benchalong.plan.model import AXES, Axis
from benchalong.workings.bodies import Floats, Ints
from benchalong.workings.solids import Solid, neighbours

Flags: TypeAlias = NDArray[np.bool_]
ViewName: TypeAlias = Literal["face", "edge a", "edge b", "end a", "end b"]

NEAR = 1e-5
"""Lengths below this, in mm, are nothing."""
SOFT = float(np.cos(np.radians(12)))
"""A round surface that leaves a flat one at a smaller angle runs out of it smoothly: no line there."""
BLOCK = 2_000_000
"""How many pairs of point and triangle are looked at in one go, to bound memory."""


@dataclass(frozen=True)
class Looking:
    """How a view lies on the sheet: which of the part's directions run right and down, reversed or not."""

    right: Axis
    right_reversed: bool
    downwards: Axis
    downwards_reversed: bool
    into: Axis
    near_is_high: bool
    """Whether what stands higher on the axis `into` is nearer to the eye."""


LOOKING: dict[ViewName, Looking] = {
    "face": Looking("along", False, "across", False, "down", False),
    "edge a": Looking("along", False, "down", True, "across", False),
    "edge b": Looking("along", False, "down", False, "across", True),
    "end a": Looking("down", True, "across", False, "along", False),
    "end b": Looking("down", False, "across", False, "along", True),
}
"""With the length lying to the right and edge a on top: in third angle (edge a above the face, end b right
of it) each neighbour shows the face on the side of the face's view. First angle swaps their places."""


@dataclass(frozen=True, eq=False)
class ViewLines:
    """Lines of one view: rows (right, downwards, right, downwards) in mm along the part's directions."""

    visible: Floats
    hidden: Floats
    """Only where no visible line lies over them."""


def view_lines(solid: Solid, name: ViewName) -> ViewLines:
    """The sharp edges and outlines of a solid, parted into seen and hidden."""
    looking = LOOKING[name]
    columns = [AXES.index(looking.right), AXES.index(looking.downwards), AXES.index(looking.into)]
    points = solid.vertices[:, columns] * np.array([1.0, 1.0, 1.0 if looking.near_is_high else -1.0])
    facing = solid.normals[:, columns[2]] * (1 if looking.near_is_high else -1)
    edges = drawn_edges(solid, facing)
    starts, ends = points[edges[:, 0]], points[edges[:, 1]]
    long = np.hypot(*(ends - starts)[:, :2].T) > NEAR
    pieces = _split(starts[long], ends[long])
    middle = (pieces[:, :3] + pieces[:, 3:]) / 2
    behind = _is_behind(middle, points[solid.triangles[facing > 1e-9]])
    flat = pieces[:, [0, 1, 3, 4]]
    visible = joined(flat[~behind])
    return ViewLines(visible, joined(flat[behind], less=visible))


def drawn_edges(solid: Solid, facing: Floats) -> Ints:
    """(k, 2): edges of the wood, and where a round surface turns away from the eye."""
    pairs = neighbours(solid.triangles)
    left, right = pairs[:, 2], pairs[:, 3]
    apart = solid.surfaces[left] != solid.surfaces[right]
    agree = (solid.normals[left] * solid.normals[right]).sum(axis=1)
    round_ones = _is_round(solid)
    soft = (agree > SOFT) & (round_ones[left] | round_ones[right])
    turning = (facing[left] > 1e-9) != (facing[right] > 1e-9)
    other_face = solid.faces[left] != solid.faces[right]
    return pairs[(apart & ~soft) | (turning & other_face), :2]


def _is_round(solid: Solid) -> Flags:
    """For each triangle, whether its surface has more than one flat face."""
    kinds = np.unique(np.column_stack([solid.surfaces, solid.faces]), axis=0)
    return np.asarray(np.bincount(kinds[:, 0])[solid.surfaces] > 1)


def _split(starts: Floats, ends: Floats) -> Floats:
    """Each edge cut wherever another crosses or touches it on the sheet: rows of start and end points."""
    count = len(starts)
    run = ends - starts
    owner, share = _crossings(starts[:, :2], run[:, :2])
    owner = np.concatenate([np.arange(count), np.arange(count), owner])
    share = np.concatenate([np.zeros(count), np.ones(count), share])
    order = np.lexsort((share, owner))
    owner, share = owner[order], share[order]
    far = np.hypot(*run[:, :2].T)
    whole = (owner[1:] == owner[:-1]) & ((share[1:] - share[:-1]) * far[owner[:-1]] > NEAR)
    of, first, last = owner[:-1][whole], share[:-1][whole], share[1:][whole]
    return np.column_stack([starts[of] + run[of] * first[:, None], starts[of] + run[of] * last[:, None]])


def _crossings(starts: Floats, run: Floats) -> tuple[Ints, Floats]:
    """Which edge is met by another, and at which share of its length."""
    one, two = _close_pairs(np.minimum(starts, starts + run), np.maximum(starts, starts + run))
    offset = starts[two] - starts[one]
    far = np.hypot(run[:, 0], run[:, 1])
    turn = _turn(run[one], run[two])
    skew = np.abs(turn) > 1e-9 * far[one] * far[two]
    safe = np.where(skew, turn, 1.0)
    here = _turn(offset, run[two]) / safe
    there = _turn(offset, run[one]) / safe
    reach = NEAR / far[two]
    crossed = skew & (here > 0) & (here < 1) & (there > -reach) & (there < 1 + reach)
    owner, share = _touches(starts, run, one[~skew], two[~skew])
    return np.concatenate([one[crossed], owner]), np.concatenate([here[crossed], share])


def _close_pairs(low: Floats, high: Floats) -> tuple[Ints, Ints]:
    """Pairs of edges whose boxes on the sheet meet: most don't, and need no arithmetic."""
    meet = (low[:, None, 0] < high[None, :, 0] + NEAR) & (low[None, :, 0] < high[:, None, 0] + NEAR)
    meet &= (low[:, None, 1] < high[None, :, 1] + NEAR) & (low[None, :, 1] < high[:, None, 1] + NEAR)
    np.fill_diagonal(meet, False)
    one, two = np.nonzero(meet)
    return one, two


def _touches(starts: Floats, run: Floats, owner: Ints, other: Ints) -> tuple[Ints, Floats]:
    """Where the ends of a parallel edge lie on an edge."""
    far = np.hypot(run[owner, 0], run[owner, 1])
    offset = starts[other] - starts[owner]
    on = np.abs(_turn(run[owner], offset)) / far < NEAR
    owner, other, offset = owner[on], other[on], offset[on]
    unit = run[owner] / (far[on] ** 2)[:, None]
    first = (offset * unit).sum(axis=1)
    last = ((offset + run[other]) * unit).sum(axis=1)
    share = np.concatenate([first, last])
    owner = np.concatenate([owner, owner])
    inner = (share > 0) & (share < 1)
    return owner[inner], share[inner]


def _is_behind(points: Floats, triangles: Floats) -> Flags:
    """For each point whether some triangle that faces the eye covers it and is nearer."""
    behind = np.zeros(len(points), dtype=bool)
    area = _turn(triangles[:, 1] - triangles[:, 0], triangles[:, 2] - triangles[:, 0])
    triangles = triangles[np.abs(area) > NEAR * NEAR]
    rows = max(1, BLOCK // max(1, len(triangles)))
    for first in range(0, len(points), rows):
        behind[first : first + rows] = _covered(points[first : first + rows], triangles)
    return behind


def _covered(points: Floats, triangles: Floats) -> Flags:
    low, high = triangles.min(axis=1) - NEAR, triangles.max(axis=1) + NEAR
    around = (points[:, None, 0] > low[None, :, 0]) & (points[:, None, 0] < high[None, :, 0])
    around &= (points[:, None, 1] > low[None, :, 1]) & (points[:, None, 1] < high[None, :, 1])
    around &= points[:, None, 2] < high[None, :, 2] - 10 * NEAR
    point, triangle = np.nonzero(around)
    a = triangles[triangle, 0]
    b, c = triangles[triangle, 1] - a, triangles[triangle, 2] - a
    toward = points[point] - a
    area = _turn(b, c)
    second, third = _turn(toward, c) / area, _turn(b, toward) / area
    slack = NEAR * np.maximum(np.hypot(b[:, 0], b[:, 1]), np.hypot(c[:, 0], c[:, 1])) / np.abs(area)
    inside = (second > -slack) & (third > -slack) & (second + third < 1 + slack)
    depth = a[:, 2] + second * b[:, 2] + third * c[:, 2]
    return np.asarray(
        np.bincount(point[inside & (depth > points[point, 2] + 10 * NEAR)], minlength=len(points)) > 0
    )


def _turn(u: Floats, v: Floats) -> Floats:
    return np.asarray(u[..., 0] * v[..., 1] - u[..., 1] * v[..., 0])
