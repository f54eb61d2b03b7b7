"""Which pieces of wood lie in each other, how deep and where?

Every two copies are looked at, joined or not: a joint takes away what its parts need, so what is left must
not overlap. Alike pairs are one finding.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.plan.flips import is_mirrored
from benchalong.plan.joints.sides import outward
from benchalong.plan.model import Axis, Cut, Joint, Plan
from benchalong.plan.turns import Way, turned
from benchalong.reading.written import PROJECT_FILE
from benchalong.workings.causes import Cause, Turned, cause_in, turned_to_fit
from benchalong.workings.overlap import Region, regions, way_out
from benchalong.workings.placed import PLACED, Lying, Placed, Range, Relation, own_ranges, relation
from benchalong.workings.telling import (
    Telling,
    called,
    common,
    in_frame,
    led,
    likewise,
    place_sizes,
    placed_at,
    start,
    way_in,
)
from benchalong.workings.working import Worked, Working


@dataclass(frozen=True)
class Clash:
    """Two copies that lie in each other."""

    one: Lying
    other: Lying
    how: Relation
    regions: tuple[Region, ...]
    """In the first one's directions, the deepest first."""

    def seen_by_other(self, region: Region) -> Mapping[Axis, Range]:
        return own_ranges(region.room, self.how.turn, self.how.at)


@dataclass(frozen=True)
class Clashes:
    looked_at: int
    """How many pairs lie so near that they had to be compared."""
    clashes: tuple[Clash, ...]


def find_clashes(plan: Plan, worked: Worked) -> tuple[Clashes, tuple[Finding, ...]]:
    placed = worked[PLACED]
    seen: dict[Relation, tuple[Region, ...]] = {}
    clashes: list[Clash] = []
    for one, other in placed.overlapping:
        how = relation(one, other)
        if how not in seen:
            seen[how] = regions(placed, how)
        if seen[how]:
            clashes.append(Clash(one, other, how, seen[how]))
    return Clashes(len(placed.overlapping), tuple(clashes)), tuple(_findings(plan, placed, clashes))


def _findings(plan: Plan, placed: Placed, clashes: list[Clash]) -> Iterator[Finding]:
    alike: dict[Relation, list[Clash]] = {}
    for clash in clashes:
        alike.setdefault(clash.how, []).append(clash)
    for same in alike.values():
        yield _Finding(plan, placed, same).told()


class _Finding:
    """One clash, and those that are like it, on the way to words."""

    def __init__(self, plan: Plan, placed: Placed, same: list[Clash]) -> None:
        self.plan, self.placed, self.clash = plan, placed, same[0]
        self.telling = Telling(plan)
        self.also = likewise(f"{c.other.copy.mark} and {c.one.copy.mark}" for c in same[1:])
        self.joint = joint_of(plan, self.clash.one, self.clash.other)
        self.within = common(self.clash.one.copy, self.clash.other.copy)

    def told(self) -> Finding:
        for region in self.clash.regions:
            for lying, ranges in ((self.clash.one, region.ranges), (self.clash.other, self.clash.seen_by_other(region))):
                cause = cause_in(lying, ranges)
                if cause is not None:
                    return self._caused(cause, lying, region)
        return self._plain(turned_to_fit(self.placed, self.clash.how, self.clash.one, self.clash.other))

    # a cut that leaves off too soon

    def _caused(self, cause: Cause, receiver: Lying, region: Region) -> Finding:
        enters = self.clash.other if receiver is self.clash.one else self.clash.one
        by, cut = self.telling.shown(cause.by), _cut_called(cause.cut)
        who, what = called(enters), f"the {cut} in {called(receiver)}"
        if cause.code == "past-stop":
            message = f"{start(what)} stops {self.telling.shown(cause.stops)} short of {_the(cause.side)}, and {who} runs {by} past that stop"
            remedy = f"let the {cut} run {by} further towards {_the(cause.side)}, or cut {who} back by {by} there"
        elif cause.code == "too-shallow":
            message = f"{start(who)} goes {by} deeper than {what}"
            remedy = f"make the {cut} {by} deeper, or what enters {by} shorter, and leave a little room at the bottom"
        else:
            by_all = self._across(cause, receiver)
            by = self.telling.shown(by_all)
            message = f"{start(who)} is {by} too thick for {what}, or lies that much to one side of it"
            remedy = f"make the {cut} {by} wider, or what enters {by} thinner, and see that both have the same middle"
            cause = Cause(cause.code, cause.cut, cause.axis, cause.side, by_all, cause.stops)
        numbers = {"by": cause.by} | ({"stops short": cause.stops} if cause.code == "past-stop" else {})
        return self._finding(CODES[cause.code], message, remedy, numbers, cause.cut, receiver, enters)

    def _across(self, cause: Cause, receiver: Lying) -> Length:
        """By how much in all, at both walls."""
        total = Length(0)
        for side in {
            found.side: found.by
            for region in self.clash.regions
            for ranges in (region.ranges if receiver is self.clash.one else self.clash.seen_by_other(region),)
            if (found := cause_in(receiver, ranges)) is not None
            and found.code == cause.code
            and found.axis == cause.axis
            and found.cut == cause.cut
        }.values():
            total += side
        return total

    # no cut that tells why

    def _plain(self, fits: Turned | None) -> Finding:
        clash, region = self.clash, self.clash.regions[0]
        depth = region.depth[1] - region.depth[0]
        shown = self.telling.shown(depth)
        where = (
            f"{self.telling.size(region.ranges)} of wood that both take up:"
            f" in {clash.other.copy.mark} {self.telling.spot(clash.other.part, clash.seen_by_other(region))};"
            f" in {clash.one.copy.mark} {self.telling.spot(clash.one.part, region.ranges)}"
        )
        message = f"{clash.other.called} stands {shown} in {called(clash.one)} ({where})"
        return self._finding(
            CODES["joint" if self.joint else "plain"],
            message,
            self._remedy(fits, region, shown),
            {"depth": depth},
            None,
            clash.one,
            clash.other,
        )

    def _remedy(self, fits: Turned | None, region: Region, shown: str) -> str:
        if fits is not None:
            other = self.clash.one if fits.lying is self.clash.other else self.clash.other
            return f"{_turn_words(self.placed, fits)}: its cuts would then take {other.copy.mark} in"
        x, y, z = (Length(value) for value in way_out(region))
        way = turned((x, y, z), self.clash.one.copy.turn)
        said = led(way_in(self.placed, self.within, (int(way[0]), int(way[1]), int(way[2]))))
        return f"move {self.clash.other.copy.mark} {shown} {said}, or make one of the two smaller by that, or give it a cut"

    def _finding(
        self,
        code: str,
        message: str,
        remedy: str,
        numbers: Mapping[str, Length],
        cut: Cut | None,
        one: Lying,
        other: Lying,
    ) -> Finding:
        sizes = {name for size in (cut.sizes if cut else ()) for name in size.sizes}
        return Finding(
            code,
            "fault",
            self._place(cut, one),
            self.joint.id if self.joint else other.copy.part,
            message + self.also,
            remedy,
            numbers,
            tuple(sorted(sizes.union(place_sizes(self.plan, one.copy, other.copy)))),
        )

    def _place(self, cut: Cut | None, receiver: Lying) -> Place:
        if self.joint:
            return Place((PROJECT_FILE, "joints", self.joint.id)).key()
        if cut is not None and not cut.joint:
            return Place((PROJECT_FILE, "parts", receiver.copy.part, "cuts", cut.index))
        return placed_at(self.plan, self.clash.other.copy, self.within)


CODES = {
    "past-stop": "runs-past-stop",
    "too-shallow": "cut-too-shallow",
    "too-narrow": "cut-too-narrow",
    "joint": "joint-parts-overlap",
    "plain": "parts-overlap",
}
"""Promises: past the end of a stopped cut; deeper than the cut; thicker than the cut is wide; otherwise."""


def joint_of(plan: Plan, one: Lying, other: Lying) -> Joint | None:
    """The joint that brings the two together, if one does."""
    both = {one.copy.mark, other.copy.mark}
    for joint in plan.joints.values():
        for meeting in joint.meetings:
            if meeting.takes is not None and {meeting.cut_in.copy, meeting.takes.copy} == both:
                return joint
    return None


def _turn_words(placed: Placed, fits: Turned) -> str:
    """What to write at its place instead."""
    copy = fits.lying.copy
    within = "/".join(copy.mark.split("/")[:-1])
    said = [
        f"{key}: {way_in(placed, within, _less(way))} instead of {way_in(placed, within, way)}"
        for key, axis, way in (
            ("along", "along", outward("end b", fits.lying.written)),
            ("face", "down", outward("face", fits.lying.written)),
        )
        if axis in fits.flip
    ]
    if fits.is_other_hand:
        if is_mirrored(fits.lying.written) != is_mirrored(placed.frames[within]):
            said.append("without its mirror")
        else:
            across = in_frame(placed, within, outward("edge b", fits.lying.written))
            said.append(f"mirror: {MIRROR_WORDS[next(n for n in range(3) if across[n])]}")
        return f"{copy.mark} looks like the wrong hand; place it with {' and '.join(said)}"
    return f"{copy.mark} looks turned the wrong way; place it with {' and '.join(said)}"


MIRROR_WORDS = ("left to right", "front to back", "top to bottom")


def _less(way: Way) -> Way:
    return (-way[0], -way[1], -way[2])


def _cut_called(cut: Cut) -> str:
    return cut.kind if cut.name == cut.kind else f"{cut.kind} “{cut.name}”"




def _the(surface: str) -> str:
    return f"the {surface}" if surface in ("face", "back") else surface


CLASHES: Working[Clashes] = Working(
    "clashes", "Do any two pieces of wood lie in each other, and how deep?", find_clashes, (PLACED,)
)
