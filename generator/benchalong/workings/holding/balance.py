"""What each copy weighs and where its weight acts, as it stands shut or opened."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import numpy as np

from benchalong.plan.model import Plan
from benchalong.workings.bodies import Floats
from benchalong.workings.placed import Lying, Placed
from benchalong.workings.pose import pose
from benchalong.workings.solids import Solid
from benchalong.workings.weights import Weights


@dataclass(frozen=True, eq=False)
class Mass:
    """Something with weight: kilograms, and the point it acts in, mm in the room."""

    kilograms: float
    centre: Floats


def centre_of(solid: Solid) -> Floats:
    """Of its volume, in its own directions: each triangle and the origin make a tetrahedron."""
    if solid.is_empty:
        return np.array(solid.box) / 2
    corners = solid.vertices[solid.triangles]
    volumes = np.einsum("ij,ij->i", corners[:, 0], np.cross(corners[:, 1], corners[:, 2])) / 6
    return np.asarray((volumes[:, None] * corners.sum(axis=1) / 4).sum(axis=0) / volumes.sum())


def masses(plan: Plan, placed: Placed, weights: Weights) -> Mapping[int, Mass]:
    """By number of a copy, shut; without those whose wood isn't known. Hardware counts where it sits."""
    found = {}
    each = {thing.name: thing.weight for thing in plan.hardware.values()}
    for one in placed.lying:
        weight = each.get(one.hardware) if one.hardware else weights.parts.get(one.copy.part)
        if weight is not None:
            found[one.number] = Mass(float(weight), in_room(one, centre_of(placed.solids[one.copy.shape])))
    return found


def in_room(one: Lying, point: Floats) -> Floats:
    turn, at = pose(one.copy)
    return np.asarray(turn @ point + at)


def together(parts: Iterable[Mass]) -> Mass:
    """All as one; nothing weighs nothing at the origin."""
    listed = list(parts)
    whole = sum(part.kilograms for part in listed)
    if not whole:
        return Mass(0.0, np.zeros(3))
    return Mass(whole, np.asarray(sum(part.kilograms * part.centre for part in listed) / whole))
