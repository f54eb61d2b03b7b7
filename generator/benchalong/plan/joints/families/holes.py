"""The holes that a piece of hardware takes in a side it is screwed to."""

from __future__ import annotations

from collections.abc import Iterable

from benchalong.ground.lengths import Length, Point3
from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.joints.families.contact import on_surface
from benchalong.plan.joints.family import Given, Loss
from benchalong.plan.joints.member import Side
from benchalong.plan.model import Bore


def holes(joint: Given, side: Side, points: Iterable[Point3]) -> Iterable[Loss]:
    """One at each point, in the order of the hardware's own."""
    lies = SURFACES[side.surfaces[0]]
    for bore, point in zip(joint.bores, points, strict=True):
        spot = on_surface(point, side)
        yield screw_hole(bore, side, at=spot[lies.run], across=spot[lies.across])


def screw_hole(bore: Bore, side: Side, *, at: Length, across: Length) -> Loss:
    """Its middle `at` along the side and `across` it."""
    lengths = {"diameter": bore.diameter, "at": at, "across": across}
    if bore.depth is None:
        return Loss("hole", side.surfaces[:1], lengths, {"depth": "through"}, name="screw hole")
    return Loss("hole", side.surfaces[:1], {**lengths, "depth": bore.depth}, name="screw hole")
