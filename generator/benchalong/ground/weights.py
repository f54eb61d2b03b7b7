"""Weights as they are shown: kilograms and grams, or pounds and ounces, one system at a time."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from benchalong.ground.lengths import to_nearest
from benchalong.ground.shown import System, decimal

POUND: Final = Fraction("0.45359237")
"""Kilograms, exactly, by agreement (NIST SP 811, appendix B.8)."""
OUNCE: Final = POUND / 16


def weight_text(kilograms: Fraction, system: System) -> str:
    """`16.6 kg`, `36.5 lb`; under a kilogram in grams or ounces."""
    is_small = kilograms < 1
    if system == "inch":
        return f"{decimal(kilograms / OUNCE, 1)} oz" if is_small else f"{decimal(kilograms / POUND, 1)} lb"
    return f"{to_nearest(kilograms * 1000, Fraction(1))} g" if is_small else f"{decimal(kilograms, 1)} kg"
