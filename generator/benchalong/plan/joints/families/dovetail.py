"""Tails on what enters, sockets between the pins of what is cut in: a drawer's sides enter its front.

All pins are equally wide at their narrow side, the half pins at both edges too, which slope on one side
only. A half-blind joint leaves the lap in front of the sockets.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from benchalong.ground.lengths import ZERO, Length
from benchalong.plan.cuts.surfaces import SURFACES, Range, flat_shape
from benchalong.plan.joints.families.bites import size_of
from benchalong.plan.joints.families.corner import Corner, corners
from benchalong.plan.joints.family import Family, Given, Loss
from benchalong.plan.joints.member import Side
from benchalong.plan.model import AXES, Axis, Prism, Surface


@dataclass(frozen=True)
class Tails:
    """The tails of one corner, seen on the face of the part that has them."""

    corner: Corner
    end: Surface
    """Of the part at hand: where the tails end and are widest."""
    count: int
    slope: Length
    pin: Length

    @property
    def length(self) -> Length:
        return self.corner.size(SURFACES[self.end].inward)

    @property
    def width(self) -> Length:
        """Of a tail at its end."""
        return (self.corner.size(self.corner.run) - (self.count + 1) * self.pin) / self.count

    @property
    def can_be_made(self) -> bool:
        """Whether every tail and every pin keeps some wood at its narrow side."""
        return self.slope >= 0 and self.pin > 0 and self.width > 2 * self.slope * self.length

    def tail(self, number: int, back: Length) -> Range:
        """From cheek to cheek of a tail, so far from the tails' end."""
        start = self.corner.room[self.corner.run][0] + self.pin + number * (self.width + self.pin)
        return (start + self.slope * back, start + self.width - self.slope * back)

    def pin_room(self, number: int, back: Length) -> Range:
        """Between the tails before and after; the first and the last pin reach to the corner's ends."""
        low, high = self.corner.room[self.corner.run]
        before = self.tail(number - 1, back)[1] if number > 0 else low
        after = self.tail(number, back)[0] if number < self.count else high
        return (before, after)


def sockets(joint: Given, side: Side, partners: tuple[Side, ...]) -> Iterable[Loss]:
    """One for each tail, into the end, from the inner side as far as the lap lets it."""
    for corner in corners(side, partners):
        tails = _tails(joint, corner, corner.outer)
        has_depth = tails.can_be_made and _front(joint, corner) < tails.length
        for number in range(tails.count if has_depth else 0):
            yield _socket(joint, tails, number)


def pin_rooms(joint: Given, side: Side, partners: tuple[Side, ...]) -> Iterable[Loss]:
    """What stands between the tails and beside them, right through."""
    for corner in corners(side, partners):
        tails = _tails(joint, corner, corner.end)
        for number in range(tails.count + 1 if tails.can_be_made else 0):
            yield _pin_room(tails, number)


def _tails(joint: Given, corner: Corner, end: Surface) -> Tails:
    said = joint.words.get("tails")
    default = round(corner.size(corner.run) / (2 * corner.size(SURFACES[end].inward)))
    return Tails(corner, end, max(1, int(said) if said else default), joint["slope"], joint["pin"])


def _socket(joint: Given, tails: Tails, number: int) -> Loss:
    """As the tail is, the play beside both its cheeks."""
    corner, play = tails.corner, joint["play"]
    depths = (_front(joint, corner), tails.length)
    spans = {back: _wider(tails.tail(number, back), play) for back in depths}
    wide, narrow = (spans[back] for back in depths)
    takes = _body(tails, spans, drawn=corner.deep, reach=corner.room[corner.deep])
    places = {"at": wide[0], "narrow width": size_of(narrow)}
    deep = corner.size(corner.deep)
    if not _is_half_blind(joint):
        return Loss("notch", (corner.end,), {"length": deep, "width": size_of(wide), **places}, takes=takes)
    near = min(corner.under(corner.outer, back) for back in depths)
    lengths = {"length": size_of(wide), "width": depths[1] - depths[0], "depth": deep, "across": near}
    return Loss("mortise", (corner.end,), {**lengths, **places}, takes=takes)


def _is_half_blind(joint: Given) -> bool:
    return joint.words.get("dovetail") == "half-blind"


def _wider(span: Range, play: Length) -> Range:
    return (span[0] - play, span[1] + play)


def _front(joint: Given, corner: Corner) -> Length:
    """How far from the tails' end the sockets begin: at the lap, or at the part's own outer surface."""
    lies = SURFACES[corner.outer]
    low, high = corner.room[lies.inward]
    stands_back = corner.side.box[AXES.index(lies.inward)] - high if lies.is_far else low
    return (joint["lap"] if _is_half_blind(joint) else ZERO) - stands_back


def _pin_room(tails: Tails, number: int) -> Loss:
    corner = tails.corner
    spans = {back: tails.pin_room(number, back) for back in (ZERO, tails.length)}
    whole = (ZERO, corner.side.box[AXES.index(corner.thick)])
    takes = _body(tails, spans, drawn=corner.thick, reach=whole)
    narrow, wide = spans.values()
    lengths = {"length": tails.length, "width": size_of(wide), "at": wide[0], "narrow width": size_of(narrow)}
    return Loss("notch", (corner.end,), lengths, takes=takes)


def _body(tails: Tails, spans: dict[Length, Range], *, drawn: Axis, reach: Range) -> tuple[Prism, ...]:
    """Wood between two lines across: how far each is from the tails' end, and from where to where it goes."""
    corner, deep = tails.corner, SURFACES[tails.end].inward
    (near, first), (far, last) = spans.items()
    points = tuple(
        {deep: corner.under(tails.end, back), corner.run: place}
        for back, place in ((near, first[0]), (near, first[1]), (far, last[1]), (far, last[0]))
    )
    return (Prism(drawn, flat_shape(points, drawn), *reach),)


FAMILY = Family(cut_in=sockets, takes=pin_rooms, takes_ends=True)
