"""Two parts that cross or end in each other and lose half each: at a corner, in a T, across each other.

How deep is told from the side of what is cut in; its partner loses the rest, so that faces end up flush.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from benchalong.ground.lengths import Length
from benchalong.plan.cuts.surfaces import SURFACES, Range, inward
from benchalong.plan.joints.families.bites import bite, grown, is_empty
from benchalong.plan.joints.family import Family, Given, Loss
from benchalong.plan.joints.member import Side
from benchalong.plan.model import AXES, Axis


def first_half(joint: Given, side: Side, partners: tuple[Side, ...]) -> Iterable[Loss]:
    """From its side as deep as the joint says, as wide as what crosses it, with the play beside that."""
    for partner in partners:
        yield from _loss(joint, side, partner.lies_in(side), joint["depth"])


def second_half(joint: Given, side: Side, partners: tuple[Side, ...]) -> Iterable[Loss]:
    """From its side down to what its partner keeps."""
    for partner in partners:
        on = partner.surfaces[0]
        whole = partner.box[AXES.index(SURFACES[on].inward)]
        if joint["depth"] < whole:
            keeps = dict(zip(AXES, ((Length(0), size) for size in partner.box), strict=True))
            keeps[SURFACES[on].inward] = inward(partner.box, on, joint["depth"], whole)
            lies = side.member.own(partner.member.placed(keeps))
            yield from _loss(joint, side, lies, side.depth_under(side.surfaces[0], lies))


def _loss(joint: Given, side: Side, lies: Mapping[Axis, Range], depth: Length) -> Iterator[Loss]:
    """Room for a body down to a depth under this side; none where they don't lie in each other."""
    on = SURFACES[side.surfaces[0]]
    if is_empty(side.clipped(lies)):
        return
    room = side.clipped(grown(lies, joint["play"], on.run, on.across))
    room[on.inward] = inward(side.box, side.surfaces[0], Length(0), depth)
    if not is_empty(room):
        yield bite(side, room)


FAMILY = Family(cut_in=first_half, takes=second_half)
