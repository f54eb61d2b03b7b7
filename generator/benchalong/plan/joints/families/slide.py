"""What slides along a side: a drawer on its runners, a door in its track.

A slide that is let in has a groove as wide and deep as it measures, along the middle of what it carries.
Without these sizes it is screwed on and nothing is cut.
"""

from __future__ import annotations

from collections.abc import Iterable

from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.joints.families.contact import contact
from benchalong.plan.joints.family import CantMove, Family, Given, Loss, nothing
from benchalong.plan.joints.member import Side
from benchalong.plan.model import AXES, Axis, Moves
from benchalong.plan.turns import WAYS, Way, axis_of


def groove(joint: Given, side: Side, partners: tuple[Side, ...]) -> Iterable[Loss]:
    """As long as what slides lies over this side, and open where that reaches its end."""
    if not {"width", "depth"} <= joint.sizes.keys():
        return
    run = SURFACES[side.surfaces[0]].run
    for partner in partners:
        lies = side.clipped(partner.lies_in(side))
        if axis_of(pull(joint)) != axis_of(_way_of(side, run)):
            continue
        across = SURFACES[side.surfaces[0]].across
        near, far = lies[across]
        begins, ends = lies[run]
        lengths = {
            "width": joint["width"],
            "depth": joint["depth"],
            "across": (near + far - joint["width"]) / 2,
        }
        whole = side.box[AXES.index(run)]
        lengths |= ({"from": begins} if begins > 0 else {}) | ({"to": ends} if ends < whole else {})
        yield Loss("groove", side.surfaces, lengths)


def sliding(joint: Given, stays: Side, goes: Side) -> Moves:
    way, looks = pull(joint), stays.looks[0]
    if way[axis_of(looks)]:
        said = joint.words.get("pulls", "front")
        others = [name for name in WAYS if not WAYS[name][axis_of(looks)]]
        raise CantMove(
            "pulls",
            f"it can't pull out to the {said}: the sides look that way",
            f"pulls: {', '.join(others[:-1])} or {others[-1]}",
        )
    return Moves("slides", "", "", contact(stays, goes)[0], way, travel=joint["travel"])


def pull(joint: Given) -> Way:
    return WAYS[joint.words.get("pulls", "front")]


def _way_of(side: Side, run: Axis) -> Way:
    column = AXES.index(run)
    rows = side.member.turn
    return (rows[0][column], rows[1][column], rows[2][column])


def how_many(_: Given, __: Side, ___: Side) -> int:
    """One on each side of a drawer."""
    return 1


FAMILY = Family(cut_in=groove, takes=nothing, apart="clearance", moves=sliding, pieces=how_many)
