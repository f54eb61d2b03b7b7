"""Where to cut through a joint so that it shows what is hidden, and what is seen there.

Planes square to the room are tried through the middle of what the joint takes away; the one that shows the
most of the joint's own sizes is taken. Sizes are found on the cut faces, not worked out anew: two parallel
edges that stand as far apart as the size says.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import product
from math import hypot
from typing import Any, TypeAlias

import numpy as np
from manifold3d import CrossSection

from benchalong.plan.joints.sides import outward
from benchalong.plan.model import AXES, CutSize, Joint, Meeting
from benchalong.workings.bodies import Floats
from benchalong.workings.placed import Lying, Placed

Box: TypeAlias = tuple[Floats, Floats]
"""Least and greatest corner, mm."""

SHEETS: tuple[tuple[int, int, str], ...] = (
    (1, 2, "seen from the right"),
    (0, 2, "seen from the front"),
    (0, 1, "seen from above"),
)
"""For a plane square to x, y or z: what runs right and up on the sheet, and from where it is seen."""
HANDS = (1, -1, 1)
"""Whether right, up and the plane's own direction are a right-handed set."""
CLOSE = 1e-3
"""mm: edges this near a place are there."""
LEAST, MOST = 11.0, 26.0
"""How much of the parts is shown round the joint, in mm."""
WHOLE = 1.8
"""A part is shown to its end where that adds no more than so many times the window's own size."""
SHORTEST_EDGE = 0.15
"""In mm; shorter edges belong to something round."""

IN_TAKES = frozenset(
    ("tongue_length", "tongue_width", "reach", "tenon_length", "thickness", "shoulder", "haunch_length",
     "haunch_width", "tail_length", "spline_width", "notch")
)  # fmt: skip
"""Sizes of what enters; others are of what is cut in, and a few lie between the two."""
ROUND = frozenset(("clearance", "pilot", "dowel"))
OFF_ROUND = 0.06
"""A hole's facets stand off its true round by no more than this, in mm."""
BETWEEN = frozenset(("play", "end_play", "gap", "apart"))
INWARD = frozenset(
    ("depth", "tongue_length", "reach", "tenon_length", "end_play", "gain", "gap", "closed", "lap",
     "haunch_length", "clearance")
)  # fmt: skip
BOTH_WAYS = frozenset(("play", "finger", "tail_length", *ROUND))
"""The first run into the side that is cut, the second either way; others run along it."""
SHAPED = frozenset(("box joint", "dovetail"))
"""Kinds whose shape says more than their sizes."""
SHOWN: Mapping[str, tuple[str, ...]] = {
    "tongue and groove": ("width", "depth", "across", "tongue_width", "tongue_length", "play", "end_play"),
    "dado": ("width", "depth", "reach", "play", "end_play"),
    "rabbet": ("width", "depth", "play"),
    "mortise and tenon": (
        "mortise_width", "depth", "across", "thickness", "tenon_length", "haunch_length", "play", "end_play",
    ),
    "half lap": ("depth", "play"),
    "mitre": ("spline_thickness", "spline_width", "play"),
    "box joint": ("finger", "play"),
    "dovetail": ("tail_length", "pin", "lap", "play"),
    "butt": ("clearance", "pilot", "dowel"),
    "hinge": ("width", "gain", "closed", "gap"),
    "slide": ("width", "depth", "clearance"),
}  # fmt: skip
"""The sizes that a section through a kind of joint is for; the others say where it is, or how often."""


@dataclass(frozen=True)
class Edge:
    """A straight edge of a cut face that runs level or upright on the sheet."""

    part: int
    """0 of what is cut in, 1 of what enters."""
    axis: int
    """Square to it: 0 when it stands upright, so that its place is one to the right."""
    at: float
    start: float
    end: float


@dataclass(frozen=True)
class Found:
    """A size of the joint where it shows: between two places on one axis of the sheet."""

    size: CutSize
    axis: int
    start: float
    end: float
    near: float
    far: float
    """What both edges reach on the other axis."""


@dataclass(frozen=True, eq=False)
class Through:
    """Two parts cut through."""

    joint: Joint
    lying: tuple[Lying, Lying]
    normal: int
    """The axis of the room that the plane is square to."""
    window: Box
    """On the sheet, right and up."""
    faces: tuple[Any, Any]
    """What of each part lies in the plane and in the window."""
    inward: int | None
    """The axis of the sheet that runs into the side that is cut."""
    is_across: bool
    """Whether the plane is square to the run of that side."""

    @cached_property
    def found(self) -> tuple[Found, ...]:
        edges = [edge for part, face in enumerate(self.faces) for edge in _edges(part, face, self.window)]
        return tuple(best for size in lengths_of(self.joint) if (best := self._best(size, edges)) is not None)

    def told(self) -> tuple[int, ...]:
        """How much it tells: slopes where the joint has them, fingers or a slot where it has those; else its
        sizes."""
        sizes = len({found.size.name for found in self.found})
        loops = [loop for face in self.faces for loop in face.simplify(SHORTEST_EDGE).to_polygons()]
        corners = sum(len(loop) for loop in loops)
        slopes = sum(_slopes(loop) for loop in loops)
        if self.joint.kind == "mitre":
            return (corners, slopes, sizes)
        if self.joint.kind in SHAPED:
            return (slopes, corners, sizes)
        return (sizes, self.is_across, corners)

    def _best(self, size: CutSize, edges: Sequence[Edge]) -> Found | None:
        found = [
            (self._cost(size, one, other), pair)
            for one, other, pair in _pairs(size, edges)
            if self._is_its_way(size, one.axis)
        ]
        return min(found, key=lambda entry: entry[0])[1] if found else None

    def _is_its_way(self, size: CutSize, axis: int) -> bool:
        if self.inward is None or size.name in BOTH_WAYS or self.joint.kind == "rabbet":
            return True
        return (axis == self.inward) == (size.name in INWARD)

    def _cost(self, size: CutSize, one: Edge, other: Edge) -> tuple[float, ...]:
        wanted = {0, 1} if size.name in BETWEEN else {1} if size.name in IN_TAKES else {0}
        is_wrong_part = {one.part, other.part} != wanted
        middle = (self.window[0] + self.window[1]) / 2
        off = abs((one.at + other.at) / 2 - middle[one.axis])
        return (is_wrong_part, round(off, 3), one.at, one.start)


def lengths_of(joint: Joint) -> tuple[CutSize, ...]:
    """Its sizes that a section is for, those that are nothing left out."""
    shown = SHOWN.get(joint.kind, ())
    return tuple(size for size in joint.sizes if size.length > 0 and size.name in shown)


def best_section(joint: Joint, placed: Placed) -> Through | None:
    """The most telling cut through one of its meetings; None where nothing meets."""
    found = [through for meeting in _meetings(joint) for through in _sections(joint, meeting, placed)]
    return max(found, key=Through.told, default=None)


def _meetings(joint: Joint) -> Iterator[Meeting]:
    """One for each two parts."""
    told = set()
    for meeting in joint.meetings:
        if meeting.takes is not None:
            pair = (meeting.cut_in.part, meeting.cut_in.surfaces, meeting.takes.part, meeting.takes.surfaces)
            if pair not in told:
                told.add(pair)
                yield meeting


def _sections(joint: Joint, meeting: Meeting, placed: Placed) -> Iterator[Through]:
    assert meeting.takes is not None
    lying = (placed.by_mark[meeting.cut_in.copy], placed.by_mark[meeting.takes.copy])
    if any(placed.solids[one.copy.shape].is_empty for one in lying):
        return
    meets = _meeting_room(*lying)
    rooms = list(_taken(joint, lying, meets)) or [meets]
    surface = meeting.cut_in.surfaces[0]
    into = int(np.flatnonzero(outward(surface, lying[0].written))[0])
    for room in rooms[:3]:
        run = _run(room, into)
        for normal in sorted(range(3), key=lambda axis: axis != run):
            through = _cut(joint, lying, normal, room, into, placed, is_across=normal == run)
            if through is not None:
                yield through


def _run(room: Box, into: int) -> int:
    """The axis along which the joint takes most."""
    span = room[1] - room[0]
    return max(
        (axis for axis in range(3) if axis != into), key=lambda axis: (round(float(span[axis]), 3), axis)
    )


def _meeting_room(one: Lying, other: Lying) -> Box:
    rooms = [np.array([[float(x) for x in corner] for corner in lying.room]) for lying in (one, other)]
    low, high = np.maximum(rooms[0][0], rooms[1][0]), np.minimum(rooms[0][1], rooms[1][1])
    return np.minimum(low, high), np.maximum(low, high)


def _taken(joint: Joint, lying: Sequence[Lying], meets: Box) -> Iterator[Box]:
    """What the joint takes from both, as far as it lies where they meet; the largest first."""
    found = []
    for one in lying:
        turn, at = np.array(one.copy.turn, dtype=float), np.array([float(x) for x in one.copy.at])
        whole = [float(side) for side in one.part.box]
        for cut in one.part.cuts:
            for prism in cut.takes if cut.joint == joint.id else ():
                room = prism.room
                spans = [
                    (max(0.0, float(room[axis][0])), min(side, float(room[axis][1])))
                    for axis, side in zip(AXES, whole, strict=True)
                ]
                corners = np.array(list(product(*spans))) @ turn.T + at
                low = np.maximum(corners.min(axis=0), meets[0] - 1)
                high = np.minimum(corners.max(axis=0), meets[1] + 1)
                if (high - low > 0).all():
                    found.append((low, high))
    yield from sorted(found, key=lambda box: (-round(float((box[1] - box[0]).prod()), 3), box[0].tolist()))


def _cut(
    joint: Joint,
    lying: tuple[Lying, Lying],
    normal: int,
    room: Box,
    into: int,
    placed: Placed,
    *,
    is_across: bool,
) -> Through | None:
    right, up, _ = SHEETS[normal]
    level = float((room[0][normal] + room[1][normal]) / 2) + 1e-4
    whole = tuple(_slice(placed, one, normal, level) for one in lying)
    base = (room[0][[right, up]], room[1][[right, up]])
    window = _window(base, whole)
    frame = CrossSection.square((window[1] - window[0]).tolist()).translate(window[0].tolist())
    faces = tuple(face ^ frame for face in whole)
    if any(face.area() < 1 for face in faces):
        return None
    inward = (right, up).index(into) if into in (right, up) else None
    return Through(joint, lying, normal, window, (faces[0], faces[1]), inward, is_across)


def _slice(placed: Placed, lying: Lying, normal: int, level: float) -> Any:
    """What of a copy lies in the plane, right and up on the sheet."""
    right, up, _ = SHEETS[normal]
    rows = np.zeros((3, 3))
    rows[0, right], rows[1, up], rows[2, normal] = 1.0, 1.0, float(HANDS[normal])
    turn, at = np.array(lying.copy.turn, dtype=float), np.array([float(x) for x in lying.copy.at])
    body = placed.body(lying.copy.shape).transform(np.column_stack([rows @ turn, rows @ at]))
    return body.slice(HANDS[normal] * level)


def _window(base: Box, whole: Sequence[Any]) -> Box:
    """Round the joint, and to the end of a part where that is near."""
    low, high = base
    margin = float(np.clip((high - low).max(), LEAST, MOST))
    near, far = low - margin, high + margin
    reach = WHOLE * float((far - near).max())
    for axis in (0, 1):
        for face in whole:
            bound = face.bounds()
            if bound[axis + 2] - bound[axis] <= reach:
                near[axis] = min(near[axis], bound[axis] - 2)
                far[axis] = max(far[axis], bound[axis + 2] + 2)
    bounds_all = np.array([face.bounds() for face in whole])
    near = np.maximum(near, bounds_all[:, :2].min(axis=0) - 2)
    far = np.minimum(far, bounds_all[:, 2:].max(axis=0) + 2)
    return near, far


def _slopes(loop: Floats) -> int:
    """How many of its sides run aslant."""
    run = np.abs(np.roll(loop, -1, axis=0) - loop)
    return int(((run.min(axis=1) > 0.05) & (run.max(axis=1) > SHORTEST_EDGE)).sum())


def _edges(part: int, face: Any, window: Box) -> Iterator[Edge]:
    """Level and upright edges that are the wood's own, not the window's."""
    for loop in face.to_polygons():
        for (x, y), (to_x, to_y) in zip(loop.tolist(), np.roll(loop, -1, axis=0).tolist(), strict=True):
            if hypot(to_x - x, to_y - y) < SHORTEST_EDGE:
                continue
            for axis, (at, to, start, end) in enumerate(((x, to_x, y, to_y), (y, to_y, x, to_x))):
                on_border = min(abs(at - window[0][axis]), abs(at - window[1][axis])) < CLOSE
                if abs(at - to) < CLOSE and not on_border:
                    yield Edge(part, axis, at, min(start, end), max(start, end))


def _pairs(size: CutSize, edges: Sequence[Edge]) -> Iterator[tuple[Edge, Edge, Found]]:
    wanted, slack = float(size.length), OFF_ROUND if size.name in ROUND else CLOSE
    for number, one in enumerate(edges):
        for other in edges[number + 1 :]:
            if one.axis != other.axis or abs(abs(one.at - other.at) - wanted) > slack:
                continue
            if min(one.end, other.end) < max(one.start, other.start) - CLOSE:
                continue
            start, end = sorted((one.at, other.at))
            near, far = max(one.start, other.start), min(one.end, other.end)
            yield one, other, Found(size, one.axis, start, end, min(near, far), max(near, far))
