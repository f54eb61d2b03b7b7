"""Exact lengths: fractions of millimetres, so that an inch is 127/5 and a third stays a third."""

from __future__ import annotations

from fractions import Fraction
from typing import TypeAlias

Length: TypeAlias = Fraction
"""A length in millimetres, exactly."""

Point2: TypeAlias = tuple[Length, Length]
Point3: TypeAlias = tuple[Length, Length, Length]

ZERO: Length = Fraction(0)
ORIGIN: Point3 = (ZERO, ZERO, ZERO)
MILLIMETRE: Length = Fraction(1)
INCH: Length = Fraction(127, 5)
"""Exactly 25.4 mm (NIST SP 811, appendix B.8)."""
FOOT: Length = 12 * INCH
METRE: Length = Fraction(1000)


def to_nearest(value: Fraction, step: Fraction) -> Fraction:
    """Round to a multiple of `step`, halves away from zero. Raises ValueError unless step is above zero."""
    if step.numerator <= 0:
        raise ValueError("the step must be above zero")
    # In whole numbers: a large plan rounds tens of thousands of times, and fractions are slow to divide.
    above, below = abs(value.numerator) * step.denominator, value.denominator * step.numerator
    whole = (2 * above + below) // (2 * below)
    return step * whole if value.numerator >= 0 else -step * whole
