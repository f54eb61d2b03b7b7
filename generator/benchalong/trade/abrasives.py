"""Abrasives: which grits, and how much wood a disc or quarter sheet sands before it is dull.

Common practice, no source: grits go up by no more than half again, and hardwood dulls a disc of 125 or
150 mm, or a quarter sheet, after about half a square metre.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from typing import Final

from benchalong.trade.amounts import SQUARE_METRE

GRITS: Final = (120, 150, 180)
SANDED_BY_ONE: Final = Fraction(1, 2)
"""Square metres."""


def discs(surface: Fraction) -> int:
    """Discs or quarter sheets of each grit for a surface in square mm."""
    return ceil(surface / SQUARE_METRE / SANDED_BY_ONE)
