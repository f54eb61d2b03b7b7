"""Why two pieces of wood lie in each other, and what to change: one clash in words."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import cast

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.model import AXES, Axis, Cut, Joint, Plan, Turn
from benchalong.reading.written import PROJECT_FILE
from benchalong.workings.causes import Cause, Turned, cause_in, turn_words, turned_to_fit
from benchalong.workings.cut_checks.bounds import Bounds
from benchalong.workings.overlap import Clash, Region, thickness_there
from benchalong.workings.placed import Lying, Placed, own_ranges
from benchalong.workings.telling import (
    Telling,
    called,
    common,
    cut_at,
    led,
    place_sizes,
    placed_at,
    start,
    the,
    way_in,
)


@dataclass(frozen=True)
class Told:
    finding: Finding
    alike: object
    """Equal for findings that say the same of other copies."""
    out: tuple[str, Axis, int] | None = None
    """For what merely stands in: whose, along which of its own axes, and which way it comes out."""


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


class ClashTelling:
    """One clash on the way to words."""

    def __init__(self, plan: Plan, placed: Placed, clash: Clash, joint: Joint | None) -> None:
        self.plan, self.placed, self.clash, self.joint = plan, placed, clash, joint
        self.telling = Telling(plan)
        self.within = common(clash.one.copy, clash.other.copy)

    def told(self) -> Told:
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

    def _caused(self, cause: Cause, receiver: Lying, region: Region) -> Told:
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

    def _across(self, cause: Cause, receiver: Lying, region: Region) -> Told:
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

    def _aslant(self, region: Region) -> Told:
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

    def _plain(self, fits: Turned | None, region: Region) -> Told:
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
    ) -> Told:
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
        return Told(
            finding,
            (code, subject, enters.copy.part, receiver.copy.part, tuple(numbers.items()), cut and cut.name),
        )

    def _place(self, cut: Cut | None, receiver: Lying) -> Place:
        if self.joint:
            return Place((PROJECT_FILE, "joints", self.joint.id)).key()
        if cut is not None and not cut.joint:
            return cut_at(receiver.copy.part, cut)
        return placed_at(self.plan, self.clash.other.copy, self.within)


def meant_for(plan: Plan, one: Lying, other: Lying) -> Joint | None:
    """A joint that should bring these two together, but what should go in meets none of its cuts."""
    for joint in plan.joints.values():
        receivers = {side.part for side in joint.receivers}
        idle = {side.copy for side in joint.unmet}
        if any(a.copy.mark in idle and b.copy.part in receivers for a, b in ((one, other), (other, one))):
            return joint
    return None


def _cut_called(cut: Cut) -> str:
    return cut.kind if cut.name == cut.kind else f"{cut.kind} “{cut.name}”"
