"""Where does every piece of wood lie in the room, and what lies near what?

Boxes are exact, and so is what is near what. The solid of a copy is put in its place only when something
asks for it, and pairs of copies that lie to each other as another pair does are looked at once: most of
a piece is the same few corners again.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache, cached_property
from typing import Any, TypeAlias

import manifold3d
import numpy as np

from benchalong.ground.lengths import Length, Point3
from benchalong.ground.problems import Finding
from benchalong.plan.joints.sides import outward
from benchalong.plan.model import AXES, Axis, Copy, Part, Plan, Rows, Surface, Turn
from benchalong.plan.tilts import after_tilt, as_rows, carried_back, tilted, tilted_room, turned_rows
from benchalong.plan.turns import UNTURNED, Room, Way, after, axis_of, moved, turned
from benchalong.plan.walk import walk
from benchalong.workings.bodies import Floats
from benchalong.workings.solids import SOLIDS, ShapeId, Solid, Solids, shaped
from benchalong.workings.working import Worked, Working

Range: TypeAlias = tuple[Length, Length]
NOTHING = Length(0)
OFF_PLANE = np.array([1.1e-8, -1.7e-8, 2.3e-8])
"""In mm. A body that is set into another's directions is moved so far: where many faces lie in one plane
exactly, manifold3d 3.5 now and then gives an intersection whose volume is below zero."""
NEAR = 1e-6
"""How far apart boxes may be, in mm as floating numbers, before they are not even looked at exactly."""


@dataclass(frozen=True)
class Relation:
    """How one copy lies to another: a point of the second -> turn * point + at, in the first's directions."""

    first: ShapeId
    second: ShapeId
    turn: Turn | Rows
    """Fractions where the two aren't square to each other."""
    at: Point3
    is_square: bool = True

    @cached_property
    def matrix(self) -> Floats:
        return np.hstack([np.array(self.turn, dtype=float), [[float(value)] for value in self.at]])


@dataclass(frozen=True, eq=False)
class Lying:
    """One copy where it lies."""

    number: int
    copy: Copy
    part: Part
    """With the cuts of its shape."""
    written: Turn
    """As the author placed it; mirrored where they mirrored it. `copy.turn` never is."""
    room: Room
    """Before it was turned, for what doesn't stand square: compared only with copies of the same tilt."""
    hardware: str = ""
    """Of what isn't wood: what it is called. Its copy is then the one that it sits on."""

    @property
    def called(self) -> str:
        return (
            f"{self.hardware} on {self.copy.mark}" if self.hardware else f"{self.part.name} {self.copy.mark}"
        )

    @cached_property
    def reach(self) -> Room:
        """The room it takes up where it lies."""
        return tilted_room(self.room, self.copy.tilt)

    def surface(self, named: Surface) -> Surface:
        """The side of the wood that the author calls so; a mirrored or turned copy has it elsewhere."""
        way = outward(named, self.written)
        return next(side for side in SIDES if outward(side, self.copy.turn) == way)

    def named(self, side: Surface) -> Surface:
        """The other way round: what the author calls this side of the wood."""
        way = self.way(side)
        return next(surface for surface in SIDES if outward(surface, self.written) == way)

    def as_written(self, ranges: Mapping[Axis, Range]) -> dict[Axis, Range]:
        """A body in the wood's directions, in those of the part as the author placed it."""
        found = dict(ranges)
        for n, axis in enumerate(AXES):
            if any(row[n] != written[n] for row, written in zip(self.copy.turn, self.written, strict=True)):
                low, high = ranges[axis]
                found[axis] = (self.part.box[n] - high, self.part.box[n] - low)
        return found

    def way(self, surface: Surface) -> Way:
        return outward(surface, self.copy.turn)


SIDES: tuple[Surface, ...] = ("face", "back", "edge a", "edge b", "end a", "end b")


@dataclass(frozen=True, eq=False)
class Placed:
    """All copies of the piece; empty while nothing is placed."""

    lying: tuple[Lying, ...]
    solids: Solids
    frames: Mapping[str, Turn]
    """How each assembly's own directions lie in the room, by its mark; the piece itself has ""."""
    _bodies: dict[ShapeId, Any] = field(default_factory=dict)

    @cached_property
    def by_mark(self) -> Mapping[str, Lying]:
        return {one.copy.mark: one for one in self.lying}

    def body(self, shape: ShapeId) -> Any:
        """The solid as something to cut and compare, in its own directions."""
        if shape not in self._bodies:
            self._bodies[shape] = _body(self.solids[shape], self.solids[shape].vertices)
        return self._bodies[shape]

    def second(self, how: Relation) -> Any:
        """The second's solid where it lies in the first's directions."""
        solid, matrix = self.solids[how.second], how.matrix
        return _body(solid, solid.vertices @ matrix[:, :3].T + matrix[:, 3] + OFF_PLANE)

    @cached_property
    def touching(self) -> tuple[tuple[Lying, Lying], ...]:
        """Every two copies whose boxes have a point in common, in the order written."""
        return tuple(
            (one, other)
            for one, other in ((self.lying[i], self.lying[j]) for i, j in self._near())
            if reaches(one.reach, other.reach)
        )

    @cached_property
    def overlapping(self) -> tuple[tuple[Lying, Lying], ...]:
        """Those of them whose boxes have room in common."""
        return tuple(pair for pair in self.touching if overlaps(pair[0].reach, pair[1].reach))

    @cached_property
    def beside(self) -> Mapping[int, tuple[Lying, ...]]:
        """By number of a copy, those that touch it."""
        found: dict[int, list[Lying]] = {one.number: [] for one in self.lying}
        for one, other in self.touching:
            found[one.number].append(other)
            found[other.number].append(one)
        return {number: tuple(others) for number, others in found.items()}

    def _near(self) -> Iterator[tuple[int, int]]:
        if not self.lying:
            return
        rooms = np.array([[[float(x) for x in corner] for corner in one.reach] for one in self.lying])
        low, high = rooms[:, 0], rooms[:, 1] + NEAR
        apart = ((low[:, None] > high[None]) | (low[None] > high[:, None])).any(axis=2)
        first, second = np.nonzero(np.triu(~apart, 1))
        yield from zip(first.tolist(), second.tolist(), strict=True)


def relation(one: Lying, other: Lying) -> Relation:
    """How the second lies, seen from the first."""
    if one.copy.tilt != other.copy.tilt:
        return _aslant(one.copy, other.copy)
    back, turn = _seen(one.copy.turn, other.copy.turn)
    x, y, z = (b - a if a != b else NOTHING for a, b in zip(one.copy.at, other.copy.at, strict=True))
    return Relation(one.copy.shape, other.copy.shape, turn, turned((x, y, z), back))


def _aslant(one: Copy, other: Copy) -> Relation:
    """Of two that aren't square to each other. A turn back is the rows as columns, to 1e-12."""
    away = carried_back(one.tilt)
    tilt = after_tilt(other.tilt, away)
    back = transposed(one.turn)
    at = tilted(other.at, tilt)
    x, y, z = (b - a for a, b in zip(one.at, at, strict=True))
    rows = tilt.turn if tilt is not None else as_rows(UNTURNED)
    return Relation(
        one.shape, other.shape, turned_rows(back, rows, other.turn), turned((x, y, z), back), is_square=False
    )


@cache
def _seen(first: Turn, second: Turn) -> tuple[Turn, Turn]:
    """The first turn back again, and the second seen from the first."""
    back = transposed(first)
    return back, after(second, back)


def transposed(turn: Turn) -> Turn:
    """The square turn back again."""
    a, b, c = zip(*turn, strict=True)
    return (a, b, c)


def reaches(one: Room, other: Room) -> bool:
    return all(one[0][n] <= other[1][n] and other[0][n] <= one[1][n] for n in range(3))


def overlaps(one: Room, other: Room) -> bool:
    return all(one[0][n] < other[1][n] and other[0][n] < one[1][n] for n in range(3))


def ahead(lying: Lying, other: Lying, way: Way) -> Length | None:
    """The distance straight ahead from one room to the other; None when they pass each other, or aren't
    square to each other."""
    n = axis_of(way)
    if lying.copy.tilt != other.copy.tilt:
        return None
    if any(
        lying.room[0][m] >= other.room[1][m] or other.room[0][m] >= lying.room[1][m]
        for m in range(3)
        if m != n
    ):
        return None
    return other.room[0][n] - lying.room[1][n] if way[n] > 0 else lying.room[0][n] - other.room[1][n]


def room_at(box: Point3, turn: Turn, at: Point3) -> Room:
    """The room a box takes up. A row of a square turn has one entry: sides are looked up, not summed."""
    spans = []
    for row in turn:
        column = next(n for n in range(3) if row[n])
        spans.append((Length(0), box[column]) if row[column] > 0 else (-box[column], Length(0)))
    low, high = zip(*spans, strict=True)
    return moved(low, at), moved(high, at)


def own_ranges(box: Room, turn: Turn, at: Point3) -> dict[Axis, Range]:
    """A room seen by the part that lies in it so."""
    back = transposed(turn)
    corners = [turned((c[0] - at[0], c[1] - at[1], c[2] - at[2]), back) for c in box]
    return {axis: _span(corners[0][n], corners[1][n]) for n, axis in enumerate(AXES)}


def _span(one: Length, other: Length) -> Range:
    return (min(one, other), max(one, other))


def place_solids(plan: Plan, worked: Worked) -> tuple[Placed, tuple[Finding, ...]]:
    written: dict[str, Turn] = {}
    frames: dict[str, Turn] = {"": UNTURNED}
    for standing in walk(plan.assemblies, plan.piece) if plan.piece else ():
        (written if standing.is_part else frames)[standing.mark] = standing.turn
    made = {name: shaped(plan, shape) for name, shape in plan.shapes.items()}
    lying = tuple(
        Lying(
            number,
            copy,
            made[copy.shape],
            written.get(copy.mark, copy.turn),
            room_at(made[copy.shape].box, copy.turn, copy.at),
        )
        for number, copy in enumerate(plan.copies)
    )
    return Placed(lying, worked[SOLIDS], frames), ()


PLACED: Working[Placed] = Working(
    "placed", "Where does each piece of wood lie, and what lies near it?", place_solids, (SOLIDS,)
)


def _body(solid: Solid, vertices: Floats) -> Any:
    return manifold3d.Manifold(manifold3d.Mesh64(vertices, solid.triangles.astype(np.uint64)))
