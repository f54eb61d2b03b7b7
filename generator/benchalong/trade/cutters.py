"""Cutters as shops have them: usual diameters and widths, inch and metric.

From memory of what shops stock; common practice, no source. What matters is that a cut is made with the
nearest cutter that isn't wider than it, since a cut can be widened and never narrowed.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from benchalong.ground.lengths import INCH, Length
from benchalong.ground.shown import System

Sizes = Mapping[System, tuple[Length, ...]]


def _inches(*sizes: str) -> tuple[Length, ...]:
    return tuple(Fraction(size) * INCH for size in sizes)


def _steps(first: Fraction, last: Fraction, step: Fraction) -> tuple[Length, ...]:
    return tuple(first + step * n for n in range(int((last - first) / step) + 1))


STRAIGHT: Sizes = {
    "inch": _inches("1/8", "3/16", "1/4", "5/16", "3/8", "1/2", "5/8", "3/4", "1", "5/4", "3/2"),
    "millimetre": tuple(map(Fraction, (3, 4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 22, 25, 30, 35))),
}
"""Straight cutters for routers, diameter."""
STACKS: Sizes = {
    "inch": _steps(INCH / 4, 13 * INCH / 16, INCH / 16),
    "millimetre": _steps(Fraction(6), Fraction(20), Fraction(1)),
}
"""What a stack of blades and chippers adds up to; paper or metal shims make what lies between."""
KERF: Mapping[System, Length] = {"inch": INCH / 8, "millimetre": Fraction(16, 5)}
"""What one full-kerf blade of a table saw takes."""
BAND_KERF: Mapping[System, Length] = {"inch": INCH / 16, "millimetre": Fraction(3, 2)}
"""A band saw's kerf with what is cleaned up after it on one face, rounded up."""
CHISELS: Sizes = {
    "inch": _inches("1/8", "3/16", "1/4", "5/16", "3/8", "1/2", "5/8", "3/4", "1", "5/4", "3/2"),
    "millimetre": tuple(map(Fraction, (3, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 25, 32, 38))),
}
BITS: Sizes = {
    "inch": (
        *_steps(INCH / 16, INCH / 2, INCH / 64),
        *_steps(9 * INCH / 16, INCH, INCH / 16),
        *_steps(9 * INCH / 8, 2 * INCH, INCH / 8),
    ),
    "millimetre": (
        *_steps(Fraction(1), Fraction(13), Fraction(1, 2)),
        *_steps(Fraction(14), Fraction(26), Fraction(1)),
        *_steps(Fraction(28), Fraction(50), Fraction(1)),
    ),
}
"""Twist and brad-point bits, and flat-bottomed ones above half an inch."""


def widest(sizes: Sizes, units: System, most: Length, *, below: Length | None = None) -> Length | None:
    """The widest that isn't wider than `most` (and is narrower than `below`); None when all are."""
    return max(
        (size for size in sizes[units] if size <= most and (below is None or size < below)), default=None
    )


def narrowest(sizes: Sizes, units: System, least: Length) -> Length | None:
    """The narrowest that is at least so wide; None when none is."""
    return min((size for size in sizes[units] if size >= least), default=None)
