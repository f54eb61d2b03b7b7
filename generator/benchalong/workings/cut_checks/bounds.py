"""The room a cut takes up in its part, exactly, and how that compares with the part's own box."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TypeAlias

from benchalong.ground.lengths import Length
from benchalong.plan.model import AXES, Axis, Cut, Part, Prism

Range: TypeAlias = tuple[Length, Length]
Bounds: TypeAlias = Mapping[Axis, Range]

SIDES: Mapping[Axis, tuple[str, str]] = {
    "along": ("end a", "end b"),
    "across": ("edge a", "edge b"),
    "down": ("the face", "the back"),
}
"""The surface where each axis begins, and where it ends."""
SQUARE = ("groove", "dado", "rabbet", "tongue", "tenon", "mortise", "notch")
"""Kinds that fill the room they take up."""


def whole(part: Part) -> Bounds:
    return {axis: (Length(0), size) for axis, size in zip(AXES, part.box, strict=True)}


def reach_beyond(prism: Prism, part: Part) -> dict[str, Length]:
    """How far it reaches beyond the part, by the surface it leaves the wood at."""
    room, box = prism.room, whole(part)
    low = {SIDES[axis][0]: -room[axis][0] for axis in AXES}
    high = {SIDES[axis][1]: room[axis][1] - box[axis][1] for axis in AXES}
    return {side: over for side, over in {**low, **high}.items() if over > 0}


def meets(one: Bounds, other: Bounds) -> bool:
    """Whether the two have room in common."""
    return all(max(one[axis][0], other[axis][0]) < min(one[axis][1], other[axis][1]) for axis in AXES)


def holds(outer: Bounds, inner: Bounds) -> bool:
    return all(outer[axis][0] <= inner[axis][0] and inner[axis][1] <= outer[axis][1] for axis in AXES)


def is_empty(room: Bounds) -> bool:
    return any(low >= high for low, high in room.values())


def spanned(room: Bounds, part: Part) -> tuple[Axis, ...]:
    """The directions in which nothing of the part is left beside it."""
    box = whole(part)
    return tuple(axis for axis in AXES if room[axis][0] <= 0 and room[axis][1] >= box[axis][1])


def length_of(cut: Cut, key: str) -> Length | None:
    """A size of the cut as it was given; None where it wasn't."""
    return next((size.length for size in cut.sizes if size.name == key), None)
