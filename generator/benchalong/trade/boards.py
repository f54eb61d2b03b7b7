"""Boards as yards sell them: quarters, sawn and planed thicknesses, board feet and cubic metres.

Hardwood is sold rough by the quarter of an inch and counted in board feet, by the rules of the National
Hardwood Lumber Association (NHLA). Elsewhere it is sold by the millimetre and counted in cubic metres.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from math import floor
from typing import Final

from benchalong.ground.lengths import FOOT, INCH, METRE, Length, to_nearest

QUARTERS: Final = tuple(Fraction(number) for number in (4, 5, 6, 8, 10, 12, 16))
"""What yards stock, in quarters of an inch."""

PLANED: Final[Mapping[Fraction, Length]] = {
    Fraction(quarters): Fraction(planed) * INCH
    for quarters, planed in (
        ("3/2", "3/16"), ("2", "5/16"), ("5/2", "7/16"), ("3", "9/16"), ("4", "13/16"), ("5", "17/16"),
        ("6", "21/16"), ("7", "3/2"), ("8", "7/4"), ("12", "11/4"), ("14", "13/4"), ("16", "15/4"),
    )
}  # fmt: skip
"""Quarters -> thickness planed on both faces (S2S) by the NHLA rules, as secondary pages quote them. They are
for grading: what a yard sells may be a sixteenth off."""

SAWN: Final = tuple(Length(millimetres) for millimetres in (20, 27, 32, 40, 50, 60, 65, 80, 100))
"""Sawn thicknesses of European hardwood, mm: from memory of EN 1313-2; yards differ by 1 or 2 mm."""

BOARD_FOOT: Final = FOOT * FOOT * INCH
"""144 cubic inches."""
CUBIC_METRE: Final = METRE**3

LENGTHS_INCH: Final = tuple(FOOT * feet for feet in range(4, 17))
"""Whole feet, 4 to 16: the NHLA's standard lengths."""
SHORTEST_BOARD: Final[Mapping[str, Length]] = {"FAS": 8 * FOOT, "No. 1 common": 4 * FOOT}
NARROWEST_BOARD: Final[Mapping[str, Length]] = {"FAS": 6 * INCH, "No. 1 common": 3 * INCH}
"""The smallest board of a grade."""


def board_feet(thickness: Length, width: Length, length: Length) -> Fraction:
    """Exactly, by rough size. Under an inch it counts as an inch thick."""
    return max(thickness, INCH) * width * length / BOARD_FOOT


def surface_measure(width: Length, length: Length) -> Fraction:
    """Square feet of one board's face, exactly; the length down to the whole foot, as a tally takes it."""
    return width / INCH * floor(length / FOOT) / 12


def tally(quarters: Fraction, width: Length, length: Length) -> Fraction:
    """Board feet of one board as a grader writes them down: its surface measure to the nearest whole foot,
    times its thickness. A half goes up here; in a yard halves go up and down in turn."""
    return to_nearest(surface_measure(width, length), Fraction(1)) * max(quarters, Fraction(4)) / 4


def cubic_metres(volume: Fraction) -> Fraction:
    """Of a volume in cubic mm."""
    return volume / CUBIC_METRE


def board_feet_in(cubic: Fraction) -> Fraction:
    """Board feet in so many cubic metres, by definition: 423.776."""
    return cubic * CUBIC_METRE / BOARD_FOOT


def leaf(rough: Length, leaves: int, kerf: Length) -> Length:
    """How thick each leaf is as it leaves the saw, when a board is sawn into equal ones."""
    return (rough - (leaves - 1) * kerf) / leaves


def from_leaf(rough: Length, leaves: int, kerf: Length, clean_up: Length) -> Length:
    """How thick a leaf ends up once both its faces are flat."""
    return leaf(rough, leaves, kerf) - 2 * clean_up


def strips_from(width: Length, strip: Length, kerf: Length) -> int:
    """How many strips a width gives: the last needs no kerf beyond it."""
    return floor((width + kerf) / (strip + kerf))


def quarters_called(quarters: Fraction) -> str:
    return f"{quarters}/4"
