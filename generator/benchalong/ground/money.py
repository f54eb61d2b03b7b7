"""Amounts of money as they are shown: two places always, halves away from zero."""

from __future__ import annotations

from fractions import Fraction

from benchalong.ground.lengths import to_nearest


def two_places(amount: Fraction) -> str:
    """`254.80`."""
    whole, rest = divmod(int(to_nearest(amount * 100, Fraction(1))), 100)
    return f"{whole}.{rest:02}"
