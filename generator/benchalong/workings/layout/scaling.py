"""Exact lengths as whole numbers and back: the least common multiple of all denominators is the unit."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from math import lcm


def parts_per_unit(lengths: Iterable[Fraction]) -> int:
    """How many of the whole-number unit make one unit of `lengths`, so that each of them is whole."""
    return lcm(*(length.denominator for length in lengths))


def whole(length: Fraction, per_unit: int) -> int:
    """The length in the whole-number unit. Raises ValueError when it isn't whole in it."""
    scaled = length * per_unit
    if scaled.denominator != 1:
        raise ValueError(f"{length} is not a whole number of 1/{per_unit}")
    return scaled.numerator


def exact(number: int, per_unit: int) -> Fraction:
    return Fraction(number, per_unit)
