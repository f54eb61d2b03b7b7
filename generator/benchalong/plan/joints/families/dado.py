"""A channel in a face, and what sits in it: where it is, how wide and how long follow from where that sits.

What enters keeps its full thickness. Where the channel stops short, the corner of what enters is notched.
"""

from __future__ import annotations

from collections.abc import Iterable

from benchalong.ground.lengths import Length
from benchalong.plan.cuts.surfaces import SURFACES, Range
from benchalong.plan.joints.families.stops import stops
from benchalong.plan.joints.family import Family, Given, Loss
from benchalong.plan.joints.member import Side
from benchalong.plan.model import AXES, Axis


def channel(joint: Given, side: Side, partners: tuple[Side, ...]) -> Iterable[Loss]:
    """One for each that sits in this side: a dado across the grain, a groove along it."""
    for partner in partners:
        lies = partner.lies_in(side)
        run = _run(partner, side)
        wide: Axis = "along" if run == "across" else "across"
        near = _middle(lies[wide]) - joint["width"] / 2
        begins, ends = side.clipped(lies)[run]
        lengths = {"width": joint["width"], "depth": joint["depth"]}
        lengths |= _stretch(begins, ends, joint, side, run)
        if run == "across":
            yield Loss("dado", side.surfaces, {**lengths, "at": near})
        else:
            yield Loss("groove", side.surfaces, {**lengths, "across": near})


def notches(joint: Given, side: Side, partners: tuple[Side, ...]) -> Iterable[Loss]:
    """The corner that would stand in front of a stopped channel's end."""
    end = side.surfaces[0]
    run: Axis = "across" if SURFACES[end].inward == "along" else "along"
    for edge in stops(joint, side, run) if partners else ():
        corner = (end, edge) if run == "across" else (edge, end)
        length, width = joint["reach"], joint["notch"]
        if run == "along":
            length, width = width, length
        yield Loss("notch", corner, {"length": length, "width": width})


def _run(partner: Side, side: Side) -> Axis:
    """Along or across the grain of the side: whichever way what enters is broad, not thick."""
    lies = partner.lies_in(side)
    thick = min(("along", "across"), key=lambda axis: lies[axis][1] - lies[axis][0])  # type: ignore[index]
    return "across" if thick == "along" else "along"


def _stretch(begins: Length, ends: Length, joint: Given, side: Side, run: Axis) -> dict[str, Length]:
    """From where to where; nothing said at an end that it runs out of."""
    whole = side.box[AXES.index(run)]
    for surface in stops(joint, side, run):
        if SURFACES[surface].is_far:
            ends -= joint["stop_by"]
        else:
            begins += joint["stop_by"]
    return ({"from": begins} if begins > 0 else {}) | ({"to": ends} if ends < whole else {})


def _middle(span: Range) -> Length:
    return (span[0] + span[1]) / 2


FAMILY = Family(cut_in=channel, takes=notches)
