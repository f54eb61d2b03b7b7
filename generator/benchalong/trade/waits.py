"""What sets, dries or rests while nobody works: glues, finishes, wood. Common practice, no source.

The bottle and the can go before all of these.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from benchalong.ground.lengths import INCH, Length

Range = tuple[Fraction, Fraction]
"""From, to; minutes or hours as said."""


def _range(low: int, high: int) -> Range:
    return (Fraction(low), Fraction(high))


@dataclass(frozen=True)
class Glue:
    """Times of one kind of glue at room temperature."""

    name: str
    open: Range
    """Minutes from the first drop until it no longer wets."""
    assembly: Range
    """Minutes until everything must stand in its clamps."""
    clamped: Range
    """Minutes in clamps where nothing pulls at the joint."""
    loaded: Fraction
    """Hours until it is planed, machined or stressed."""
    coldest: Fraction | None = None
    """Degrees Celsius."""


GLUES: Mapping[str, Glue] = {
    "white or yellow glue": Glue(
        "white or yellow glue", _range(5, 10), _range(10, 20), _range(30, 60), Fraction(24), Fraction(10)
    ),
    "slow white glue": Glue(
        "slow white glue", _range(10, 15), _range(20, 30), _range(45, 90), Fraction(24), Fraction(10)
    ),
    "liquid hide glue": Glue(
        "liquid hide glue", _range(5, 10), _range(20, 30), _range(120, 240), Fraction(24), Fraction(10)
    ),
    "slow epoxy": Glue("slow epoxy", _range(60, 90), _range(60, 90), _range(480, 720), Fraction(24), None),
    "polyurethane glue": Glue(
        "polyurethane glue", _range(15, 20), _range(20, 30), _range(60, 240), Fraction(24), None
    ),
}
USUAL_GLUE = GLUES["white or yellow glue"]

EDGE_GLUED_HANDLED = Fraction(1)
"""Hours before an edge-glued panel is moved; it waits overnight before it is planed."""
GLUE_AFTER_PLANING = Fraction(24)
"""Hours within which a planed edge is glued."""
MILLED_WAITS = Fraction(3)
"""Days that milled wood may lie before its joinery."""
RESAWN_RESTS: Range = (Fraction(1), Fraction(7))
"""Days, stickered and weighted."""
SPLIT_RESTS: Range = (Fraction(1), Fraction(3))
"""Days, stickered: restless wood after it is split rough; a night at least."""
HALF_MILLED_RESTS: Range = (Fraction(1), Fraction(3))
"""Days between flattening and milling of what moves."""

FINISH_DRIES: Mapping[str, Fraction] = {
    "oil": Fraction(24),
    "hardwax oil": Fraction(24),
    "varnish": Fraction(24),
    "waterborne": Fraction(4),
    "shellac": Fraction(2),
    "lacquer": Fraction(2),
    "wax": Fraction(1),
    "paint": Fraction(12),
    "stain": Fraction(12),
    "soap": Fraction(12),
}
"""Hours from one coat to the next; from memory, and the can rules."""
COATS: Mapping[str, int] = {
    "oil": 2,
    "hardwax oil": 2,
    "varnish": 3,
    "waterborne": 3,
    "shellac": 4,
    "lacquer": 3,
}
"""Two of oil, three to four of what lies on the surface."""
OTHER_FINISH_DRIES = Fraction(24)

CLAMP_SPACING: tuple[Length, Length] = (6 * INCH, 12 * INCH)
"""Least and greatest, mm."""


def drying(what: str) -> Fraction:
    """Hours from coat to coat of a finish, by the words an author uses for it; a day where none is known."""
    words = what.lower()
    found = [hours for name, hours in FINISH_DRIES.items() if name in words]
    return max(found, default=OTHER_FINISH_DRIES)


def clamp_spacing(board_width: Length) -> Length:
    """Twice the width of the board outside, since pressure spreads at half a right angle; 6 to 12 in."""
    least, most = CLAMP_SPACING
    return min(most, max(least, 2 * board_width))


def clamps_for(length: Length, spacing: Length) -> int:
    """ceil(length / spacing) + 1, over and under by turns. Raises ValueError unless spacing is above zero."""
    if spacing <= 0:
        raise ValueError("the spacing must be above zero")
    return int(-(-length // spacing)) + 1
