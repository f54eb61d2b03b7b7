"""A tenon on an end, and the mortise it goes into: where that is follows from where the tenon sits.

The tenoned part's length includes its tenons. A haunch is a short stub beside the tenon, towards the
nearer end of the mortised part; it keeps the outer edge of the joint from twisting.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from benchalong.ground.lengths import Length
from benchalong.plan.cuts.surfaces import SURFACES, Range, inward
from benchalong.plan.flips import SURFACE_PAIRS
from benchalong.plan.joints.families.bites import grown, is_empty, size_of
from benchalong.plan.joints.family import Family, Given, Loss
from benchalong.plan.joints.member import Side
from benchalong.plan.joints.sides import outward
from benchalong.plan.model import AXES, Axis, Surface


def mortise(joint: Given, side: Side, partners: tuple[Side, ...]) -> Iterable[Loss]:
    """One for each tenon: as large as it with the play on cheeks and edges, and deeper by the end play."""
    for partner in partners:
        depth = {} if _is(joint, "through") else {"depth": joint["depth"]}
        words = {"depth": "through"} if _is(joint, "through") else {}
        yield Loss(
            "mortise", side.surfaces, _hole(joint, side, partner, _tenon(joint, partner, side)) | depth, words
        )
        edge = _haunched_edge(joint, partner, side)
        if edge:
            hole = _hole(joint, side, partner, _haunch(joint, partner, edge))
            deep = {"depth": joint["haunch_length"] + joint["end_play"]}
            yield Loss("mortise", side.surfaces, hole | deep, name="haunch")


def tenon(joint: Given, side: Side, partners: tuple[Side, ...]) -> Iterable[Loss]:
    """Cheeks and shoulders. A haunched one is as wide as both, with a notch where only the haunch stands."""
    edge = _haunched_edge(joint, side, partners[0]) if partners else None
    stands = _tenon(joint, side, partners[0] if partners else None)
    low, high = stands["across"]
    if edge:
        low, high = (low, side.box[1]) if SURFACES[edge].is_far else (Length(0), high)
    lengths = {"thickness": joint["thickness"], "width": high - low, "length": joint["tenon_length"]}
    places = {"at": low} if low != side.box[1] - high else {}
    across = {"across": joint["across"]} if "across" in joint.sizes else {}
    yield Loss("tenon", side.surfaces, lengths | places | across)
    if edge:
        bite = {"length": joint["tenon_length"] - joint["haunch_length"], "width": joint["haunch_width"]}
        yield Loss("notch", (side.surfaces[0], edge), bite, name="haunch")


def _is(joint: Given, word: str) -> bool:
    return joint.words.get("tenon") == word


def _tenon(joint: Given, side: Side, partner: Side | None) -> dict[Axis, Range]:
    """The room of the tenon in its own part's directions."""
    edge = _haunched_edge(joint, side, partner) if partner else None
    whole, width = side.box[1], joint["width"]
    wide = _centred(whole, width)
    if edge:
        wide = inward(side.box, edge, joint["haunch_width"], joint["haunch_width"] + width)
    near = joint.sizes.get("across")
    thick = _centred(side.box[2], joint["thickness"]) if near is None else (near, near + joint["thickness"])
    return {
        "along": inward(side.box, side.surfaces[0], Length(0), joint["tenon_length"]),
        "across": wide,
        "down": thick,
    }


def _haunch(joint: Given, side: Side, edge: Surface) -> dict[Axis, Range]:
    """The room of the haunch: from the shoulder as far as it stands, from the tenon to the outer edge."""
    length = joint["tenon_length"]
    return {
        **_tenon(joint, side, None),
        "along": inward(side.box, side.surfaces[0], length - joint["haunch_length"], length),
        "across": inward(side.box, edge, Length(0), joint["haunch_width"]),
    }


def _haunched_edge(joint: Given, side: Side, partner: Side) -> Surface | None:
    """The tenoned part's edge towards the nearer end of the mortised part; none when there is no haunch."""
    if not _is(joint, "haunched"):
        return None
    run = SURFACES[partner.surfaces[0]].run
    low, high = side.lies_in(partner)[run]
    near, far = SURFACE_PAIRS[run]
    nearer = near if low < partner.box[AXES.index(run)] - high else far
    edge = side.looking(outward(nearer, partner.member.turn))
    return edge if edge in SURFACE_PAIRS["across"] else None


def _hole(joint: Given, side: Side, partner: Side, stands: Mapping[Axis, Range]) -> dict[str, Length]:
    """Where something on the partner lies in this side, with the play round it, and never beyond the wood."""
    lies = SURFACES[side.surfaces[0]]
    room = grown(side.member.own(partner.member.placed(stands)), joint["play"], lies.run, lies.across)
    kept = side.clipped(room)
    if not is_empty({axis: kept[axis] for axis in (lies.run, lies.across)}):
        room = kept
    return {
        "at": room[lies.run][0],
        "length": size_of(room[lies.run]),
        "across": room[lies.across][0],
        "width": size_of(room[lies.across]),
    }


def _centred(whole: Length, size: Length) -> Range:
    return ((whole - size) / 2, (whole + size) / 2)


FAMILY = Family(cut_in=mortise, takes=tenon, takes_ends=True)
