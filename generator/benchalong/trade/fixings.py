"""What holds a piece to a wall, and what keeps one that stands on its feet: usual figures, kept far within.

How hard a wood screw is to pull out of side grain is the allowable load of the American design rule:
2850 * G^2 * D pounds for each inch of thread (G specific gravity, D shank in inches); seen in a public table
with its worked example (engineeringtoolbox.com, "Wood Screws - Withdrawal Force"). Half of it is used here.
What a screw carries across its length is common practice, no source: 17 newtons for each square mm of its
shank's square; again half of that is used. None of it is a certificate: local codes and licensed practice
decide.

Forces in newtons, lengths in mm, unless a name says otherwise.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Final

from benchalong.ground.lengths import INCH, Length

WITHIN: Final = Fraction(1, 2)
"""How much of the usual figure is used: a home-made fixing is never all it could be."""
STUD_GRAVITY: Final = 0.42
"""Of spruce, pine or fir as studs are sold (common practice): the softest that is usual."""
ACROSS: Final = 17.0
"""Newtons across its length for each square mm of a screw's shank squared (common practice, no source)."""
DEEP_ENOUGH: Final = INCH * 3 / 2
"""Mm of thread in the stud at least: 1 1/2 in (common practice)."""
FEWEST: Final = 2
"""Fixings, whatever the load: one alone lets a piece turn."""
WALLBOARD: Final = {"inch": INCH / 2, "millimetre": Length(25, 2)}
"""What lies between the piece and the stud, where it isn't said."""
RAIL_THICK: Final = 16 * Length(1)
RAIL_WIDE: Final = 50 * Length(1)
"""A hanging rail is hardly ever less: 5/8 in by 2 in (common practice)."""
NEWTONS_PER_POUND: Final = 4.4482216152605
STUDS: Final[Mapping[str, tuple[Length, str]]] = {
    "US": (16 * INCH, "16 in in most houses, 24 in in some"),
    "CA": (16 * INCH, "16 in in most houses, 24 in in some"),
    "GB": (Length(600), "600 mm, or 400 mm"),
    "IE": (Length(600), "600 mm, or 400 mm"),
    "AU": (Length(600), "600 mm, or 450 mm"),
    "NZ": (Length(600), "600 mm, or 400 mm"),
    "DE": (Length(625), "625 mm in light walls; most walls are solid"),
    "AT": (Length(625), "625 mm in light walls; most walls are solid"),
    "CH": (Length(625), "625 mm in light walls; most walls are solid"),
    "FR": (Length(600), "600 mm in light walls; most walls are solid"),
}
"""How far apart the studs of a light wall stand, middle to middle, by country: common practice, no source."""
ANYWHERE: Final = (Length(600), "600 mm, where nothing else is known")

CHILD: Final = Fraction("22.68")
"""Kilograms that a child hangs on an open drawer or door: 50 lb, as older American tests for clothes chests
had it (from memory; ASTM F2057 now asks for more, and loaded drawers)."""
MAY_HIDE: Final = 31_000_000
"""Cubic mm shut in by a lid from which a child's way out must be thought of: 1.1 cubic feet, as ASTM F963 has
it for toy chests (from memory)."""
CLEAR: Final = 150
"""Mm that each inside measure of such a box has at least (from memory of the same)."""
AIR: Final = 650
"""Square mm of each of two openings for air that stay open whatever stands against the box (the same)."""
FINGERS: Final = 12
"""Mm a lid stands over, or is cut out, for a finger to get under it (common practice)."""
LIGHT_LID: Final = Fraction(1)
"""Kilograms from which a lid that falls hurts fingers (common practice, no source)."""


def withdrawal(shank: float, thread: float, gravity: float = STUD_GRAVITY) -> float:
    """Newtons that a wood screw may be pulled with, out of side grain: the design rule's allowable load."""
    inch = 25.4
    return 2850 * gravity**2 * (shank / inch) * (thread / inch) * NEWTONS_PER_POUND


def across(shank: float) -> float:
    """Newtons that a screw may carry across its length."""
    return ACROSS * shank**2


def used(usual: float) -> float:
    """What is let count of a usual figure."""
    return usual * float(WITHIN)


def pull_out(weight: float, *, from_wall: float, above_foot: float) -> float:
    """What tears at the upper fixings, in the unit of the weight: it hangs `from_wall` in front of the wall
    and turns about its lower edge, `above_foot` under the fixings."""
    return weight * from_wall / above_foot


def studs_apart(country: str) -> tuple[Length, str]:
    return STUDS.get(country.strip().upper()[:2], ANYWHERE)


def studs_met(length: Length, apart: Length) -> tuple[int, int]:
    """How many studs a rail of that length meets, wherever it hangs, and at best."""
    return int(length / apart), int(length / apart) + 1


def stays_up(weight: float, *, behind: float, pull: float, before: float) -> float:
    """How far it is from tipping, as a moment: its weight so far behind the line its feet tip over, against a
    pull so far before it. Below zero it tips."""
    return weight * behind - pull * before


def feet_forward(weight: float, *, behind: float, pull: float, before: float) -> float:
    """How much further forward its feet must stand for the two to balance; zero where they do already."""
    return max(0.0, -stays_up(weight, behind=behind, pull=pull, before=before) / (weight + pull))
