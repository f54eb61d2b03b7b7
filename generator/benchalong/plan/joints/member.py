"""A side of a placed copy, as a family of joints works with it: exact boxes in the part's own directions."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from itertools import product

from benchalong.ground.lengths import Length, Point3
from benchalong.plan.cuts.surfaces import SURFACES, Range
from benchalong.plan.draft import Box
from benchalong.plan.joints.sides import outward
from benchalong.plan.model import AXES, Axis, PartId, Surface, Tilt, Turn
from benchalong.plan.turns import Room, Way, around, is_nearer, moved, opposite, room_of, turned

TOUCHING = Length(0)
"""No gap."""


@dataclass(frozen=True)
class Member:
    """One copy in the assembly a joint is worked out in: point of the part -> turn * point + at."""

    part: PartId
    mark: str
    """Within that assembly."""
    directly_in: str
    """The assembly it stands in itself."""
    box: Box
    turn: Turn
    at: Point3
    tilt: Tilt | None = None
    """How it is turned from there; only members with the same are square to each other."""

    @cached_property
    def room(self) -> Room:
        """What it takes up, before it is tilted."""
        least, greatest = room_of(((Length(0),) * 3, self.box), self.turn)
        return (moved(least, self.at), moved(greatest, self.at))

    def own(self, room: Room) -> dict[Axis, Range]:
        """A room of the assembly in the part's own directions; it may reach beyond the part."""
        corners = [_back((x, y, z), self) for x, y, z in product(*zip(*room, strict=True))]
        return {axis: (min(c[n] for c in corners), max(c[n] for c in corners)) for n, axis in enumerate(AXES)}

    def placed(self, ranges: Mapping[Axis, Range]) -> Room:
        """The room of the assembly that a body in the part's own directions takes up."""
        near, far = zip(*(ranges[axis] for axis in AXES), strict=True)
        least, greatest = room_of((near, far), self.turn)
        return (moved(least, self.at), moved(greatest, self.at))


@dataclass(frozen=True)
class Side:
    """A side of a copy: one surface, or two that meet in an arris."""

    member: Member
    surfaces: tuple[Surface, ...]

    @property
    def box(self) -> Box:
        return self.member.box

    @property
    def is_arris(self) -> bool:
        return len(self.surfaces) == 2

    @property
    def looks(self) -> tuple[Way, ...]:
        """Which way each of its surfaces looks in the assembly."""
        return tuple(outward(surface, self.member.turn) for surface in self.surfaces)

    def reach(self, apart: Length) -> Room:
        """What the part takes up, and as much again in front of this side."""
        near, far = self.member.room
        ways = [(way[0] * apart, way[1] * apart, way[2] * apart) for way in self.looks]
        return around([self.member.room, *((moved(near, way), moved(far, way)) for way in ways)])

    def lies_in(self, other: Side) -> dict[Axis, Range]:
        """Where this side's part lies in the other's own directions."""
        return other.member.own(self.member.room)

    def clipped(self, ranges: Mapping[Axis, Range]) -> dict[Axis, Range]:
        """As much of a body as lies within this part; of what lies outside a range ends before it starts."""
        whole = dict(zip(AXES, self.box, strict=True))
        return {axis: (max(low, Length(0)), min(high, whole[axis])) for axis, (low, high) in ranges.items()}

    def looking(self, way: Way) -> Surface:
        """Which of this part's surfaces looks that way."""
        return next(surface for surface in SURFACES if outward(surface, self.member.turn) == way)

    def depth_under(self, surface: Surface, ranges: Mapping[Axis, Range]) -> Length:
        """How deep a body reaches under a surface of this part."""
        lies = SURFACES[surface]
        low, high = ranges[lies.inward]
        whole = self.box[AXES.index(lies.inward)]
        return whole - low if lies.is_far else high


def meet(cut_in: Side, takes: Side, *, apart: Length = TOUCHING, faces: bool = True) -> bool:
    """Whether what enters touches or reaches into what receives, its side looking into it.

    For an arris it is enough that one of its surfaces is faced, and it must be the nearer one. Sides that
    look square to each other meet where they make a corner. `apart` is how far a gap may part sides that face
    each other. Without `faces` it is enough that the parts touch.
    """
    if not faces:
        return touch(_grown(cut_in.member.room, apart), takes.member.room)
    faced = takes.is_arris or any(
        opposite(way) in cut_in.looks and is_nearer(takes.member.room, way, cut_in.member.room)
        for way in takes.looks
    )
    at_hand = not cut_in.is_arris or all(
        is_nearer(cut_in.member.room, way, takes.member.room) for way in cut_in.looks
    )
    here = faced and at_hand and _touch_there(cut_in, takes.member.room, apart)
    return here or make_corner(cut_in, takes)


def _touch_there(side: Side, other: Room, apart: Length) -> bool:
    """Whether a room reaches into a part, or touches it in the very plane of this side."""
    room = side.reach(apart)
    planes = {(n, room[way[n] > 0][n]) for way in side.looks for n in range(3) if way[n]}
    flat = [(n, max(room[0][n], other[0][n])) for n in range(3)]
    only_touch = [plane for plane in flat if plane[1] == min(room[1][plane[0]], other[1][plane[0]])]
    return touch(room, other) and all(plane in planes for plane in only_touch)


def make_corner(one: Side, other: Side) -> bool:
    """Whether two parts lie in each other and the sides named, square to each other, end them there."""
    if (
        one.is_arris
        or other.is_arris
        or any(a and b for a, b in zip(one.looks[0], other.looks[0], strict=True))
    ):
        return False
    rooms = (one.member.room, other.member.room)
    near = tuple(max(room[0][n] for room in rooms) for n in range(3))
    far = tuple(min(room[1][n] for room in rooms) for n in range(3))
    return all(a < b for a, b in zip(near, far, strict=True)) and all(
        (near, far)[way[n] > 0][n] == side.member.room[way[n] > 0][n]
        for side in (one, other)
        for way in side.looks
        for n in range(3)
        if way[n]
    )


def touch(one: Room, other: Room) -> bool:
    """Whether two rooms share a stretch of plane or more."""
    shares = [min(one[1][n], other[1][n]) - max(one[0][n], other[0][n]) for n in range(3)]
    return all(share >= 0 for share in shares) and sum(share == 0 for share in shares) <= 1


def _grown(room: Room, by: Length) -> Room:
    return (moved(room[0], (-by, -by, -by)), moved(room[1], (by, by, by)))


def _back(point: Point3, member: Member) -> Point3:
    """A point of the assembly in the part's own directions: a square turn's inverse is its transpose."""
    x, y, z = (point[n] - member.at[n] for n in range(3))
    rows = member.turn
    columns: Turn = tuple((rows[0][n], rows[1][n], rows[2][n]) for n in range(3))  # type: ignore[assignment]
    return turned((x, y, z), columns)
