"""Both parts cut at a slope, from the inner corner to the outer one: 45 degrees when they are equally wide.

A spline is a loose tongue across the mitre. Where boards meet in their thickness (a case) its slot runs
from edge to edge in the middle of the mitre, square to it; where they meet in their width (a frame) it
lies in the middle of the thickness and runs along the mitre, open at both corners.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from benchalong.ground.lengths import Length
from benchalong.plan.cuts.surfaces import Range, flat_shape
from benchalong.plan.joints.families.corner import Corner, corners
from benchalong.plan.joints.family import Family, Given, Loss
from benchalong.plan.joints.member import Side
from benchalong.plan.model import Prism
from benchalong.plan.roots import square_root

ROOT_STEP = Fraction(1, 10**15)
"""To which the length of a mitre is known, in mm; everything else is exact."""


def mitre(joint: Given, side: Side, partners: tuple[Side, ...]) -> Iterable[Loss]:
    """The slope, and the slot of a spline in it; the same rule for both sides."""
    for corner in corners(side, partners):
        yield _slope(corner)
        if joint["spline_thickness"] > 0 and joint["spline_depth"] > 0:
            yield _slot(joint, corner)


def _slope(corner: Corner) -> Loss:
    """Across the thickness a bevel; across the width a taper off the inner edge."""
    long, wide = corner.size(corner.deep), corner.size(corner.thick)
    if corner.thick == "down":
        return Loss("bevel", (corner.end, corner.inner), {"width": long, "depth": wide})
    start, stop = corner.under(corner.end, long), corner.under(corner.end, Length(0))
    return Loss("taper", (corner.inner,), {"from": start, "to": stop, "takes": wide})


def _slot(joint: Given, corner: Corner) -> Loss:
    thickness, depth = joint["spline_thickness"] + 2 * joint["play"], joint["spline_depth"]
    is_case = corner.thick == "down"
    takes = _across(corner, thickness, depth) if is_case else _along(corner, thickness, depth)
    return Loss("slot", (corner.end,), {"width": thickness, "depth": depth}, takes=(takes,), name="spline")


def _across(corner: Corner, thickness: Length, depth: Length) -> Prism:
    """Square to the mitre, in its middle. Backwards it reaches only into what the mitre takes."""
    long, wide, slope = _measures(corner)
    along = (long / slope * thickness / 2, wide / slope * thickness / 2)
    into = (wide / slope, -long / slope)
    back = min(depth, long * (slope - thickness) / (2 * wide), wide * (slope - thickness) / (2 * long))
    points = tuple(
        corner.at(
            end=long / 2 + sign * along[0] + far * into[0], outer=wide / 2 + sign * along[1] + far * into[1]
        )
        for sign, far in ((-1, -back), (-1, depth), (1, depth), (1, -back))
    )
    return Prism(corner.run, flat_shape(points, corner.run), *corner.room[corner.run])


def _along(corner: Corner, thickness: Length, depth: Length) -> Prism:
    """A strip beside the whole mitre, in the middle of the thickness."""
    long, wide, slope = _measures(corner)
    shift = depth * slope / wide
    zero = Length(0)
    points = (
        corner.at(end=zero, outer=zero),
        corner.at(end=shift, outer=zero),
        corner.at(end=long + shift, outer=wide),
        corner.at(end=zero, outer=wide),
    )
    return Prism(corner.run, flat_shape(points, corner.run), *_middle(corner.room[corner.run], thickness))


def _measures(corner: Corner) -> tuple[Length, Length, Length]:
    """Of the mitre: how much of the length it takes, how wide it is, and how long its slope is."""
    long, wide = corner.size(corner.deep), corner.size(corner.thick)
    return long, wide, square_root(long * long + wide * wide, ROOT_STEP)


def _middle(span: Range, size: Length) -> Range:
    middle = (span[0] + span[1]) / 2
    return (middle - size / 2, middle + size / 2)


FAMILY = Family(cut_in=mitre, takes=mitre)
