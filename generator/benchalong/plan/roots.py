"""Sines, cosines, tangents and square roots, worked with whole numbers only.

So that every machine gets the same digits: angles in degrees, ratios kept to 1e-12, roots of areas
to 1e-9 mm, halves away from zero, and exact from there on.
"""

from __future__ import annotations

from fractions import Fraction
from math import isqrt

from benchalong.ground.lengths import to_nearest

RATIO_STEP = Fraction(1, 10**12)
LENGTH_STEP = Fraction(1, 10**9)
"""In mm."""

_SCALE = 10**40
_PI = 31415926535897932384626433832795028841972
"""Pi times 10**40: 3.14159 26535 89793 23846 26433 83279 50288 41971 69… (OEIS A000796)."""

_EVEN = {Fraction(0): Fraction(0), Fraction(30): Fraction(1, 2), Fraction(90): Fraction(1)}


def square_root(value: Fraction, step: Fraction) -> Fraction:
    """The root of a number not below zero, to the nearest multiple of `step`; exact where it is even."""
    over, under = isqrt(value.numerator), isqrt(value.denominator)
    if over * over == value.numerator and under * under == value.denominator:
        return Fraction(over, under)
    halves = isqrt(int(value * 4 / (step * step)))
    return (halves + 1) // 2 * step


def sine(degrees: Fraction) -> Fraction:
    return to_nearest(_sine(degrees), RATIO_STEP)


def cosine(degrees: Fraction) -> Fraction:
    return to_nearest(_sine(degrees + 90), RATIO_STEP)


def tangent(degrees: Fraction) -> Fraction:
    """Raises ZeroDivisionError at 90 degrees and its like."""
    return to_nearest(_sine(degrees) / _sine(degrees + 90), RATIO_STEP)


def _sine(degrees: Fraction) -> Fraction:
    """To about 1e-38; exactly 0, 1/2 and 1 where it is."""
    turned = degrees % 360
    if turned >= 180:
        return -_sine(turned - 180)
    if turned > 90:
        turned = 180 - turned
    return _EVEN[turned] if turned in _EVEN else _series(turned)


def _series(degrees: Fraction) -> Fraction:
    """The sine's power series x - x^3/3! + x^5/5! - …, for 0 to 90 degrees."""
    x = int(degrees * _PI / 180)
    square = x * x // _SCALE
    total, term, n = 0, x, 1
    while term:
        total += term
        term = -(abs(term) * square // _SCALE // ((n + 1) * (n + 2))) * (1 if term > 0 else -1)
        n += 2
    return Fraction(total, _SCALE)
