"""Numbers that several tools set alike."""

from __future__ import annotations

import math
from collections.abc import Mapping
from fractions import Fraction

from benchalong.ground.lengths import Length
from benchalong.trade.ways.model import Setting, Tool, Work

HEIGHT: Mapping[Tool, str] = {
    "table saw with a stacked cutter": "Cutter above the table",
    "table saw": "Blade above the table",
    "router table": "Cutter above the table",
    "router": "Plunge below the surface",
}
"""What sets the depth."""


def length(key: str, name: str, value: Length) -> Setting:
    return Setting(key, name, length=value)


def degrees(key: str, name: str, value: Fraction) -> Setting:
    return Setting(key, name, degrees=value)


def height(tool: Tool, value: Length) -> Setting:
    return length("height", HEIGHT[tool], value)


def heights(tool: Tool, work: Work) -> tuple[Setting, ...]:
    """For a tongue's or tenon's cheeks, and its narrow shoulders."""
    found = [height(tool, work.near)]
    if work.far != work.near:
        found.append(length("height_back", f"{HEIGHT[tool]}, second side", work.far))
    if any(work.shoulders):
        found.append(length("height_edge", f"{HEIGHT[tool]}, on edge", max(work.shoulders)))
    return tuple(found)


def ends(work: Work) -> tuple[Setting, ...]:
    """Where a stopped cut begins and ends."""
    found = []
    if work.before:
        found.append(length("begins", "Begins from the end", work.before))
    if work.after:
        found.append(length("ends", "Ends before the other end", work.after))
    return tuple(found)


def tapered(work: Work) -> tuple[Setting, ...]:
    """The two marks of a taper."""
    return (
        length("mark", "Taken at the far end", work.depth),
        length("over", "Over a length of", work.length),
    )


def cradle(work: Work) -> tuple[Setting, ...]:
    """A spline's slot runs square into a mitre, which a cradle holds."""
    return (degrees("angle", "Cradle from upright", work.angle),) if work.family == "spline slot" else ()


def slope_of(work: Work) -> Fraction:
    """A bevel's, in degrees from the face; to a tenth where only its sides are given."""
    if work.angle:
        return work.angle
    if not work.width:
        return Fraction(90)
    return Fraction(round(10 * math.degrees(math.atan2(float(work.depth), float(work.width)))), 10)
