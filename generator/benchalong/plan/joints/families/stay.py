"""What holds a lid or flap open, and stops it there. It is screwed on: nothing is cut for it."""

from __future__ import annotations

from benchalong.plan.joints.families.opening import opens_by
from benchalong.plan.joints.family import Family, Given, nothing
from benchalong.plan.joints.member import Side
from benchalong.plan.model import Moves


def holding(joint: Given, _: Side, __: Side) -> Moves:
    """The hinge says about what it turns; this says how far."""
    return Moves("is held", "", "", angle=opens_by(joint))


FAMILY = Family(cut_in=nothing, takes=nothing, apart="apart", faces=False, moves=holding)
