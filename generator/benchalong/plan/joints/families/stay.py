"""What holds a lid or flap open, and stops it there.

It is screwed on: nothing is cut for it but the holes of its screws, and those only where the plan says
where its two plates sit. Most are marked from the stay itself, with the lid held open.
"""

from __future__ import annotations

from collections.abc import Iterable

from benchalong.plan.joints.families.holes import screw_hole
from benchalong.plan.joints.families.opening import opens_by
from benchalong.plan.joints.family import Family, Given, Loss
from benchalong.plan.joints.member import Side
from benchalong.plan.model import Moves


def holding(joint: Given, _: Side, __: Side) -> Moves:
    """The hinge says about what it turns; this says how far."""
    return Moves("is held", "", "", angle=opens_by(joint))


def on_what_stays(joint: Given, side: Side, partners: tuple[Side, ...]) -> Iterable[Loss]:
    return _plate(joint, side, "cut_in") if partners else ()


def on_what_moves(joint: Given, side: Side, partners: tuple[Side, ...]) -> Iterable[Loss]:
    return _plate(joint, side, "takes") if partners else ()


def _plate(joint: Given, side: Side, which: str) -> Iterable[Loss]:
    at, across = (joint.sizes.get(f"{which}_{key}") for key in ("at", "across"))
    if at is None or across is None:
        return
    for bore in joint.bores:
        yield screw_hole(bore, side, at=at + bore.along, across=across + bore.across)


def how_many(_: Given, __: Side, ___: Side) -> int:
    return 1


FAMILY = Family(
    cut_in=on_what_stays, takes=on_what_moves, apart="apart", faces=False, moves=holding, pieces=how_many
)
