"""Which pieces of wood lie in each other, how deep and where?

Every two copies are looked at, joined or not: a joint takes away what its parts need, so what is left must
not overlap. Pairs of the same parts with the same trouble are one finding.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import cast

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.flips import is_mirrored
from benchalong.plan.joints.sides import outward
from benchalong.plan.model import AXES, SPAN, Axis, Cut, Joint, Plan, Turn
from benchalong.plan.turns import opposite
from benchalong.reading.written import PROJECT_FILE
from benchalong.workings.causes import Cause, Turned, cause_in, turned_to_fit
from benchalong.workings.cut_checks.bounds import Bounds
from benchalong.workings.overlap import Region, regions, thickness_there
from benchalong.workings.placed import PLACED, Lying, Placed, Range, Relation, own_ranges, relation
from benchalong.workings.telling import (
    Telling,
    called,
    common,
    cut_at,
    led,
    likewise,
    place_sizes,
    placed_at,
    start,
    the,
    way_in,
)  # fmt: skip
from benchalong.workings.working import Worked, Working


@dataclass(frozen=True)
class Clash:
    """Two copies that lie in each other."""

    one: Lying
    other: Lying
    how: Relation
    regions: tuple[Region, ...]
    """In the first one's directions, the deepest first."""

    @property
    def marks(self) -> frozenset[str]:
        return frozenset((self.one.copy.mark, self.other.copy.mark))

    def seen_by_other(self, region: Region) -> Mapping[Axis, Range]:
        assert self.how.is_square
        return own_ranges(region.room, cast(Turn, self.how.turn), self.how.at)


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
    """What goes for several pairs is told of the first, and the others named."""
    joints = joints_by_pair(plan)
    joined = {mark for pair in joints for mark in pair}
    told: dict[Relation, _Told] = {}
    alike: dict[object, list[tuple[_Told, Clash]]] = {}
    for clash in clashes:
        if clash.how not in told:
            told[clash.how] = _Telling(plan, placed, clash, joints.get(clash.marks)).told()
        alike.setdefault(told[clash.how].alike, []).append((told[clash.how], clash))
    for same in alike.values():
        first = same[0][0]
        also = likewise(f"{c.other.copy.mark} and {c.one.copy.mark}" for _, c in same[1:])
        finding = replace(first.finding, message=first.finding.message + also)
        yield finding if same[0][1].other.copy.mark in joined else _too_long(plan, finding, same)


@dataclass(frozen=True)
class _Told:
    finding: Finding
    alike: object
    """Equal for findings that say the same of other copies."""
    out: tuple[str, Axis, int] | None = None
    """For what merely stands in: whose, along which of its own axes, and which way it comes out."""


def _too_long(plan: Plan, finding: Finding, same: list[tuple[_Told, Clash]]) -> Finding:
    """One copy that stands in something at both its ends is too long rather than out of its place."""
    first = same[0][0]
    if first.out is None:
        return finding
    for told, clash in same[1:]:
        if told.out and clash.other is same[0][1].other and told.out[1:] == (first.out[1], -first.out[2]):
            depth = 2 * finding.numbers["depth"]
            span = SPAN[first.out[1]]
            remedy = (
                f"take {Telling(plan).shown(depth)} in all off its {span}, or give what it meets "
                "a cut to take it in"
            )
            return replace(finding, remedy=remedy, numbers={**finding.numbers, "in all": depth})
    return finding


CODES = {
    "past-stop": "runs-past-stop",
    "too-shallow": "cut-too-shallow",
    "too-narrow": "cut-too-narrow",
    "beside": "beside-its-cut",
    "joint": "joint-parts-overlap",
    "plain": "parts-overlap",
}
"""Promises: past the end of a stopped cut; deeper than the cut; thicker than the cut is wide; not thicker,
but to one side of it; otherwise, of parts that a joint brings together, and of parts that none does."""


class _Telling:
    """One clash on the way to words."""

    def __init__(self, plan: Plan, placed: Placed, clash: Clash, joint: Joint | None) -> None:
        self.plan, self.placed, self.clash, self.joint = plan, placed, clash, joint
        self.telling = Telling(plan)
        self.within = common(clash.one.copy, clash.other.copy)

    def told(self) -> _Told:
        region = self.clash.regions[0]
        if not self.clash.how.is_square:
            return self._aslant(region)
        for receiver in (self.clash.one, self.clash.other):
            cause = self._cause(receiver, region)
            if cause is not None:
                return self._caused(cause, receiver, region)
        clash = self.clash
        return self._plain(turned_to_fit(self.placed, clash.how, clash.one, clash.other), region)

    # a cut that leaves off too soon

    def _cause(self, receiver: Lying, region: Region) -> Cause | None:
        enters = self._other(receiver)
        room = own_ranges(enters.room, receiver.copy.turn, receiver.copy.at)
        return cause_in(receiver, self._seen(receiver, region), room)

    def _other(self, lying: Lying) -> Lying:
        return self.clash.other if lying is self.clash.one else self.clash.one

    def _seen(self, lying: Lying, region: Region) -> Bounds:
        return region.ranges if lying is self.clash.one else self.clash.seen_by_other(region)

    def _axis(self, lying: Lying, region: Region) -> Axis:
        """Along which the region is deep, as this one calls it."""
        if lying is self.clash.one:
            return region.axis
        row = cast(Turn, self.clash.how.turn)[AXES.index(region.axis)]
        return AXES[next(n for n in range(3) if row[n])]

    def _caused(self, cause: Cause, receiver: Lying, region: Region) -> _Told:
        if cause.code == "too-narrow":
            return self._across(cause, receiver, region)
        enters, by = self._other(receiver), self.telling.shown(cause.by)
        cut, who = _cut_called(cause.cut), called(enters)
        what = f"the {cut} in {called(receiver)}"
        if cause.code == "past-stop":
            side = the(receiver.named(cause.side))
            stops = self.telling.shown(cause.stops)
            message = f"{start(what)} stops {stops} short of {side}, and {who} runs {by} past that stop"
            remedy = f"let the {cut} run {by} further towards {side}, or cut {who} back by {by} there"
        else:
            message = f"{start(who)} goes {by} deeper than {what}"
            remedy = (
                f"make the {cut} {by} deeper or what enters {by} shorter, and leave a little room "
                "at the bottom"
            )
        numbers = {"by": cause.by} | ({"stops short": cause.stops} if cause.code == "past-stop" else {})
        return self._finding(cause.code, message, remedy, numbers, (enters, receiver), cause.cut)

    def _across(self, cause: Cause, receiver: Lying, region: Region) -> _Told:
        """Too thick for the cut, or only to one side of it."""
        enters, cut = self._other(receiver), _cut_called(cause.cut)
        is_second = receiver is self.clash.one
        row = [abs(r[AXES.index(cause.axis)]) for r in self.clash.how.turn]
        axis = cause.axis if is_second else AXES[row.index(1)]
        thick = thickness_there(self.placed, self.clash.how, region, axis, of_second=is_second)
        what, over = f"the {cut} in {called(receiver)}", thick - cause.width
        if over > 0:
            by = self.telling.shown(over)
            message = (
                f"{start(called(enters))} is {by} too thick for {what}: "
                f"{self.telling.shown(thick)} thick, and the cut "
                f"{self.telling.shown(cause.width)} wide"
            )
            remedy = f"make the {cut} {by} wider, or what enters {by} thinner"
            return self._finding(
                "too-narrow",
                message,
                remedy,
                {"by": over, "width": cause.width},
                (enters, receiver),
                cause.cut,
            )
        by = self.telling.shown(cause.by)
        message = f"{start(called(enters))} lies {by} to one side of {what}"
        sign = -1 if SURFACES[cause.side].is_far else 1
        towards = self._towards(receiver, cause.axis, sign)
        remedy = f"move {enters.copy.mark} {by} {towards}, or the {cut} the other way"
        return self._finding("beside", message, remedy, {"by": cause.by}, (enters, receiver), cause.cut)

    # not square to each other

    def _aslant(self, region: Region) -> _Told:
        """How deep, as far as the first one's own directions tell it."""
        one, other = self.clash.one, self.clash.other
        depth = min(high - low for low, high in region.ranges.values())
        shown = self.telling.shown(depth)
        message = (
            f"{other.called}, which isn't square to it, stands {shown} into {called(one)} "
            f"({self.telling.size(region.ranges)} of wood: {one.copy.mark} "
            f"{self.telling.spot(one, region.ranges)})"
        )
        remedy = (
            f"move the two {shown} apart, turn one of them less, or give one a cut that takes the other in"
        )
        return self._finding(
            "joint" if self.joint else "plain", message, remedy, {"depth": depth}, (other, one), None
        )

    # no cut that tells why

    def _plain(self, fits: Turned | None, region: Region) -> _Told:
        one, other = self.clash.one, self.clash.other
        depth = region.depth[1] - region.depth[0]
        shown = self.telling.shown(depth)
        message = (
            f"{other.called} stands {shown} into {called(one)} ({self.telling.size(region.ranges)} of wood:"
            f" {other.copy.mark} {self.telling.spot(other, self.clash.seen_by_other(region))};"
            f" {one.copy.mark} {self.telling.spot(one, region.ranges)})"
        )
        meant = meant_for(self.plan, one, other)
        if meant is not None and self.joint is None:
            self.joint = meant
            remedy = (
                f"let {meant.id} cut the side that {other.copy.mark} goes into: as it is written "
                "it gives no cut here"
            )
        elif fits is not None:
            remedy = (
                f"{turn_words(self.placed, fits)}: its cuts would then take "
                f"{self._other(fits.lying).copy.mark} in"
            )
        else:
            remedy = (
                f"move {other.copy.mark} {shown} {self._way_out(region)}, make one of the two "
                "smaller by that,"
                " or give one a cut that takes the other in"
            )
        code = "joint" if self.joint else "plain"
        told = self._finding(code, message, remedy, {"depth": depth}, (other, one), None)
        if self.joint is not None:
            return told
        if fits is not None:
            return replace(told, alike=(told.alike, fits.flip, fits.lying.copy.mark))
        axis = self._axis(other, region)
        n = AXES.index(region.axis)
        return replace(
            told, out=(other.copy.mark, axis, region.sign * int(self.clash.how.turn[n][AXES.index(axis)]))
        )

    def _way_out(self, region: Region) -> str:
        return self._towards(self.clash.one, region.axis, region.sign)

    def _towards(self, lying: Lying, axis: Axis, sign: int) -> str:
        """`to the left`: along an axis of a copy, as the author who placed it sees that."""
        n = AXES.index(axis)
        x, y, z = (sign * row[n] for row in lying.copy.turn)
        return led(way_in(self.placed, self.within, (x, y, z)))

    def _finding(
        self,
        code: str,
        message: str,
        remedy: str,
        numbers: Mapping[str, Length],
        copies: tuple[Lying, Lying],
        cut: Cut | None,
    ) -> _Told:
        """`copies`: what enters and what it stands in."""
        enters, receiver = copies
        sizes = {name for size in (cut.sizes if cut else ()) for name in size.sizes}
        sizes.update(place_sizes(self.plan, enters.copy, receiver.copy))
        subject = self.joint.id if self.joint else enters.copy.part
        finding = Finding(
            CODES[code],
            "fault",
            self._place(cut, receiver),
            subject,
            message,
            remedy,
            numbers,
            tuple(sorted(sizes)),
        )
        return _Told(
            finding,
            (code, subject, enters.copy.part, receiver.copy.part, tuple(numbers.items()), cut and cut.name),
        )

    def _place(self, cut: Cut | None, receiver: Lying) -> Place:
        if self.joint:
            return Place((PROJECT_FILE, "joints", self.joint.id)).key()
        if cut is not None and not cut.joint:
            return cut_at(receiver.copy.part, cut)
        return placed_at(self.plan, self.clash.other.copy, self.within)


def joints_by_pair(plan: Plan) -> Mapping[frozenset[str], Joint]:
    """The joint that brings two copies together, by their marks."""
    return {
        meeting.marks: joint
        for joint in plan.joints.values()
        for meeting in joint.meetings
        if meeting.takes is not None
    }


def meant_for(plan: Plan, one: Lying, other: Lying) -> Joint | None:
    """A joint that should bring these two together, but what should go in meets none of its cuts."""
    for joint in plan.joints.values():
        receivers = {side.part for side in joint.receivers}
        idle = {side.copy for side in joint.unmet}
        if any(a.copy.mark in idle and b.copy.part in receivers for a, b in ((one, other), (other, one))):
            return joint
    return None


def turn_words(placed: Placed, fits: Turned) -> str:
    """What to write at its place instead."""
    copy, written = fits.lying.copy, fits.lying.written
    within = copy.mark.rpartition("/")[0]
    said = [
        f"{key}: {way_in(placed, within, opposite(way))} instead of {way_in(placed, within, way)}"
        for key, axis, way in (
            ("along", "along", outward("end b", written)),
            ("face", "down", outward("face", written)),
        )
        if axis in fits.flip
    ]
    if not fits.is_other_hand:
        return f"{copy.mark} looks turned the wrong way; place it with {' and '.join(said)}"
    if is_mirrored(written) != is_mirrored(placed.frames[within]):
        said.append("without its mirror")
    else:
        said.append("mirror: left to right")
    return f"{copy.mark} looks like the wrong hand; place it with {' and '.join(said)}"


def _cut_called(cut: Cut) -> str:
    return cut.kind if cut.name == cut.kind else f"{cut.kind} “{cut.name}”"


CLASHES: Working[Clashes] = Working(
    "clashes", "Do any two pieces of wood lie in each other, and how deep?", find_clashes, (PLACED,)
)
