"""Channels that stop short of a side."""

from __future__ import annotations

from benchalong.ground.lengths import Length
from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.joints.family import Given
from benchalong.plan.joints.member import Side
from benchalong.plan.joints.sides import LOOKING, outward, parse_side
from benchalong.plan.model import AXES, Axis, Surface
from benchalong.plan.turns import WAYS


def stopped_run(joint: Given, side: Side, *, run: Axis | None = None) -> dict[str, Length]:
    """`from` or `to` of a channel that stops short of what `stopped` names; nothing for one right through."""
    run = run or SURFACES[side.surfaces[0]].run
    lengths: dict[str, Length] = {}
    for surface in stops(joint, side, run):
        whole = side.box[AXES.index(run)]
        if SURFACES[surface].is_far:
            lengths["to"] = whole - joint["stop_by"]
        else:
            lengths["from"] = joint["stop_by"]
    return lengths


def stops_anything(joint: Given, side: Side) -> bool:
    """Whether the side named for the stop is one that some channel here may run to."""
    inward = SURFACES[side.surfaces[0]].inward
    return any(stops(joint, side, run) for run in AXES[:2] if run != inward)


def stops(joint: Given, side: Side, run: Axis) -> tuple[Surface, ...]:
    """The surfaces across a run that the channel stops short of: `front edge`, `top end`, `both ends`."""
    said = joint.words.get("stopped", "")
    if not said:
        return ()
    across_run = tuple(surface for surface, lies in SURFACES.items() if lies.inward == run)
    term = parse_side(said)[0]
    if term.qualifier in LOOKING:
        way = WAYS[LOOKING[term.qualifier]]
        return tuple(surface for surface in across_run if outward(surface, side.member.turn) == way)
    return tuple(surface for surface in across_run if surface in term.among)
