"""The holes that a piece of hardware takes in a side it is screwed to."""

from __future__ import annotations

from collections.abc import Iterable

from benchalong.ground.lengths import Point3
from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.joints.families.contact import on_surface
from benchalong.plan.joints.family import Given, Loss
from benchalong.plan.joints.member import Side


def holes(joint: Given, side: Side, points: Iterable[Point3]) -> Iterable[Loss]:
    """One at each point, in the order of the hardware's own."""
    lies = SURFACES[side.surfaces[0]]
    for bore, point in zip(joint.bores, points, strict=True):
        spot = on_surface(point, side)
        lengths = {"diameter": bore.diameter, "at": spot[lies.run], "across": spot[lies.across]}
        if bore.depth is None:
            yield Loss("hole", side.surfaces[:1], lengths, {"depth": "through"}, name="screw hole")
        else:
            yield Loss("hole", side.surfaces[:1], {**lengths, "depth": bore.depth}, name="screw hole")
