"""What shops reckon with when boards are cut up: allowances, kerfs, and what machines take.

All of it is common practice, no source; where a number is a range, the one for a beginner's shop is taken. A
project says its own under `shop:`, and a machine's manual goes before both.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from benchalong.ground.lengths import INCH, Length
from benchalong.trade.proportions import Least


def _usual(inch: Fraction | int, millimetre: Fraction | int) -> Least:
    return Least(inch * INCH, Length(millimetre))


KERF: Final = _usual(Fraction(1, 8), Fraction("3.2"))
TRIM: Final = _usual(1, 25)
"""Off each end of a board, for checks: 1/2 to 2 in."""
TURNS: Final = {"board": 2, "sheet": 3}
"""Directions of cutting, one after the other: a rough board is crosscut to lengths, then ripped; a sheet is
ripped into strips, these are crosscut, and pieces ripped from those."""
LONGER: Final = _usual(1, 25)
"""A part cut out, or a run of parts: room for snipe."""
WIDER: Final = _usual(Fraction(1, 4), 6)
WIDER_NARROW: Final = _usual(Fraction(1, 8), 3)
"""Of parts under `NARROW`, in straight stock."""
NARROW: Final = _usual(3, 75)
THICKER: Final = _usual(Fraction(1, 4), 6)
"""From rough to finished: 4/4 gives 3/4 in, 8/4 gives 1 3/4 in."""
LONG: Final = _usual(48, 1200)
"""Parts over this bow and twist: one quarter more."""
ONE_QUARTER: Final = _usual(Fraction(1, 4), 6)
RESTLESS: Final = _usual(Fraction(1, 4), 6)
"""Wider when split rough, so that what moves can be flattened later."""
GLUED_LONGER: Final = _usual(1, 25)
GLUED_WIDER: Final = _usual(Fraction(1, 4), 6)
"""A glued-up panel before it is trimmed."""
BOARD_WIDTH: Final = _usual(6, 150)
"""Hardwood boards when nothing is known: 6 to 7 in wide, 8 to 10 ft long."""
BOARD_LENGTH: Final = _usual(96, 2400)
RESAW_KERF: Final = _usual(Fraction(1, 16), Fraction("1.6"))
CLEAN_UP: Final = _usual(Fraction(3, 32), Fraction("2.5"))
"""Off each face of a leaf until it is flat: 1/32 to 1/16 in for saw marks, the rest for what it moves."""
JOINTER_WIDTH: Final = _usual(6, 150)
JOINTER_SHORTEST: Final = _usual(12, 300)
JOINTER_NARROWEST: Final = _usual(Fraction(3, 4), 19)
PLANER_WIDTH: Final = _usual(12, 300)
PLANER_SHORTEST: Final = _usual(12, 300)
PLANER_THINNEST: Final = _usual(Fraction(1, 4), 6)
SURFACE_MOST: Final = _usual(Fraction(3, 16), 5)
"""Bought planed: what is thicker than finished by less than this needs no rough allowance."""
ROUNDED_UP: Final = _usual(Fraction(1, 8), 1)
"""Rough lengths and widths are rounded up to this: nobody chalks a sixty-fourth."""

LESS_THAN_CALLED: Final = INCH / 16
"""A board may measure this much less than it is called: sawn and dried, 4/4 is rarely a full inch."""

RESAWN_IN_TWO: Final = {
    Fraction(4): Fraction(5, 16),
    Fraction(5): Fraction(3, 8),
    Fraction(6): Fraction(1, 2),
    Fraction(8): Fraction(3, 4),
}
"""Quarters -> the thickest that two leaves of it end up, in inches: common practice, no source."""
