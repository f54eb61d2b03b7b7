"""The six surfaces of a part, and the directions a cut is measured in on each.

Each surface has a run (the direction a groove goes), an across, and a way into the wood. Face and back
run along and are measured across from edge a; edges run along and are measured down from the face;
ends run across from edge a and are measured down from the face.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeAlias

from benchalong.ground.lengths import Length
from benchalong.plan.draft import Box
from benchalong.plan.model import AXES, Axis, Outline, Prism, Surface
from benchalong.plan.model import Corner as Corner

Range: TypeAlias = tuple[Length, Length]
Ranges: TypeAlias = Mapping[Axis, Range]


@dataclass(frozen=True)
class Directions:
    run: Axis
    across: Axis
    inward: Axis
    is_far: bool
    """Whether the surface lies where the inward axis ends, not where it begins."""


SURFACES: Mapping[Surface, Directions] = {
    "face": Directions("along", "across", "down", is_far=False),
    "back": Directions("along", "across", "down", is_far=True),
    "edge a": Directions("along", "down", "across", is_far=False),
    "edge b": Directions("along", "down", "across", is_far=True),
    "end a": Directions("across", "down", "along", is_far=False),
    "end b": Directions("across", "down", "along", is_far=True),
}


def extent(box: Box, axis: Axis) -> Length:
    return box[AXES.index(axis)]


def inward(box: Box, surface: Surface, start: Length, end: Length) -> Range:
    """From so deep to so deep under a surface, on the axis that leads into the wood."""
    directions = SURFACES[surface]
    if not directions.is_far:
        return (start, end)
    whole = extent(box, directions.inward)
    return (whole - end, whole - start)


def block(ranges: Ranges, *, drawn: Axis) -> Prism:
    """A square-edged body, drawn out along one axis."""
    first, second = (ranges[axis] for axis in AXES if axis != drawn)
    points = ((first[0], second[0]), (first[1], second[0]), (first[1], second[1]), (first[0], second[1]))
    return Prism(drawn, Outline(tuple(Corner(point) for point in points)), *ranges[drawn])


def flat_shape(points: tuple[Mapping[Axis, Length], ...], drawn: Axis) -> Outline:
    """An outline through points given by axis."""
    first, second = (axis for axis in AXES if axis != drawn)
    return Outline(tuple(Corner((point[first], point[second])) for point in points))
