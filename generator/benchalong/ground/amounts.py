"""Weights, volumes and areas as they are shown, one system at a time: kilograms, litres and square metres, or
pounds, quarts and square feet."""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from typing import Final

from benchalong.ground.lengths import FOOT, INCH
from benchalong.ground.shown import System, decimal

POUND: Final = Fraction("0.45359237")
"""Kilograms, exactly, by agreement (NIST SP 811, appendix B.8)."""
OUNCE: Final = POUND / 16
WORTH: Final = {"kg": Fraction(1), "g": Fraction(1, 1000), "lb": POUND, "oz": OUNCE}
"""In kilograms."""
PLACES: Final = {"g": 0, "oz": 1}
QUART: Final = INCH**3 * Fraction(231, 4) / 1_000_000
"""Litres: a US gallon is 231 cubic inches (NIST SP 811, appendix B.8, gives the same number)."""
FLUID_OUNCE: Final = QUART / 32


def weight_text(kilograms: Fraction, system: System) -> str:
    """`16.6 kg`, `36.5 lb`; under a kilogram in grams, under a pound in ounces; a few grams more finely."""
    large, small, few = ("lb", "oz", OUNCE) if system == "inch" else ("kg", "g", Fraction(1, 100))
    if kilograms >= WORTH[large]:
        return f"{decimal(kilograms / WORTH[large], 1)} {large}"
    places = PLACES[small] + (kilograms < few)
    return f"{decimal(kilograms / WORTH[small], places)} {small}"


def volume_text(litres: Fraction, system: System) -> str:
    """What suffices: `1.4 litres`, `1.5 quarts`, rounded up; under a quart in millilitres or fluid ounces."""
    is_small = litres < QUART
    if system == "inch":
        return f"{ceil(litres / FLUID_OUNCE)} fl oz" if is_small else f"{_tenths_up(litres / QUART)} quarts"
    return f"{ceil(litres * 100) * 10} ml" if is_small else f"{_tenths_up(litres)} litres"


def area_text(square_mm: Fraction, system: System) -> str:
    """`0.53 m²`, `5.7 sq ft`."""
    if system == "inch":
        return f"{decimal(square_mm / FOOT**2, 1)} sq ft"
    return f"{decimal(square_mm / 1_000_000, 2)} m²"


def _tenths_up(value: Fraction) -> str:
    return decimal(Fraction(ceil(value * 10), 10), 1)
