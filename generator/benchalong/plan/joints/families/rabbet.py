"""A step along an arris that what enters lies in. It runs as far as the arris does."""

from __future__ import annotations

from collections.abc import Iterable

from benchalong.plan.joints.family import Family, Given, Loss, nothing
from benchalong.plan.joints.member import Side


def step(joint: Given, side: Side, _: tuple[Side, ...]) -> Iterable[Loss]:
    """`width` lies in the face, `depth` goes into the thickness."""
    flat = [surface for surface in side.surfaces if surface in ("face", "back")]
    square = [surface for surface in side.surfaces if surface not in flat]
    yield Loss("rabbet", (*square, *flat), {"width": joint["width"], "depth": joint["depth"]})


FAMILY = Family(cut_in=step, takes=nothing)
