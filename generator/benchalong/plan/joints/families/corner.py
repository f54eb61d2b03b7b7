"""The corner that two parts share, seen from one of them: what mitres, fingers and tails are drawn in."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from benchalong.ground.lengths import Length
from benchalong.plan.cuts.surfaces import SURFACES, Range
from benchalong.plan.joints.families.bites import is_empty, size_of
from benchalong.plan.joints.member import Side, make_corner
from benchalong.plan.model import AXES, Axis, Surface
from benchalong.plan.turns import Way


@dataclass(frozen=True)
class Corner:
    side: Side
    end: Surface
    """The side named: an end, or an edge of boards that meet along their grain."""
    outer: Surface
    """Which of this part's surfaces looks the way the partner ends."""
    inner: Surface
    room: dict[Axis, Range]
    """Where both lie, in this part's own directions."""

    @property
    def deep(self) -> Axis:
        """From the end into the wood."""
        return SURFACES[self.end].inward

    @property
    def thick(self) -> Axis:
        """From the outer surface to the inner one."""
        return SURFACES[self.outer].inward

    @property
    def run(self) -> Axis:
        """Along the corner."""
        return next(axis for axis in AXES if axis not in (self.deep, self.thick))

    def size(self, axis: Axis) -> Length:
        return size_of(self.room[axis])

    def under(self, surface: Surface, distance: Length) -> Length:
        """The place on its axis so far into the wood from the corner's boundary at that surface."""
        lies = SURFACES[surface]
        low, high = self.room[lies.inward]
        return high - distance if lies.is_far else low + distance

    def at(self, *, end: Length, outer: Length) -> dict[Axis, Length]:
        """A point so far from the end and so far from the outer boundary."""
        return {self.deep: self.under(self.end, end), self.thick: self.under(self.outer, outer)}

    @property
    def counts_up(self) -> bool:
        """Whether this part's own direction along the corner leads right, back or up."""
        column = AXES.index(self.run)
        return sum(row[column] for row in self.side.member.turn) > 0


def corners(side: Side, partners: Iterable[Side]) -> Iterator[Corner]:
    """Each corner that a side makes with others; those that it meets in another way make none."""
    for partner in partners:
        if not make_corner(side, partner):
            continue
        room = side.clipped(partner.lies_in(side))
        if not is_empty(room):
            x, y, z = partner.looks[0]
            back: Way = (-x, -y, -z)
            yield Corner(side, side.surfaces[0], side.looking((x, y, z)), side.looking(back), room)
