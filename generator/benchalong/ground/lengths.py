"""Exact lengths: fractions of millimetres, so that an inch is 127/5 and a third stays a third."""

from __future__ import annotations

from fractions import Fraction
from typing import TypeAlias

Length: TypeAlias = Fraction
"""A length in millimetres, exactly."""

Point2: TypeAlias = tuple[Length, Length]
Point3: TypeAlias = tuple[Length, Length, Length]

MILLIMETRE: Length = Fraction(1)
INCH: Length = Fraction(127, 5)
"""Exactly 25.4 mm (NIST SP 811, appendix B.8)."""
FOOT: Length = 12 * INCH
METRE: Length = Fraction(1000)


def to_nearest(value: Fraction, step: Fraction) -> Fraction:
    """Round to a multiple of `step`, halves away from zero. Raises ValueError unless step is above zero."""
    if step <= 0:
        raise ValueError("the step must be above zero")
    count = abs(value) / step
    whole = (2 * count.numerator + count.denominator) // (2 * count.denominator)
    return step * whole if value >= 0 else -step * whole
