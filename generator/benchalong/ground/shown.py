"""How a length is shown: in one system at a time, rounded only here, and the rounding said.

The page's own script shows lengths by the same rules when a reader switches system; one table of
cases in the tests (`tests/ground/shown_cases.txt`) serves both.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, TypeAlias

from benchalong.ground.lengths import INCH, Length, to_nearest

System: TypeAlias = Literal["inch", "millimetre"]
SYSTEMS: tuple[System, ...] = ("inch", "millimetre")


@dataclass(frozen=True)
class Precision:
    """How finely lengths are shown, in each system."""

    inch: Length = INCH / 32
    """Step for inches, in mm; a binary fraction of an inch."""
    millimetre: Length = Fraction(1, 10)
    """Step for millimetres, in mm; a tenth, a half or a whole millimetre."""

    def step(self, system: System) -> Length:
        return self.inch if system == "inch" else self.millimetre


DRILLS = Precision(INCH / 64, Fraction(1, 10))
"""What a drill or a calliper is set by, however finely the plan shows its sizes: bits come in 64ths of an
inch and tenths of a millimetre."""


@dataclass(frozen=True)
class Shown:
    """A length as a reader sees it."""

    number: str
    """The number alone: `2 3/8`, `60.3`. Never with a sign for rounding."""
    unit: str
    """`in` or `mm`."""
    error: Length
    """What is shown less what is meant, in mm; 0 when nothing was rounded."""

    @property
    def is_rounded(self) -> bool:
        return self.error != 0

    @property
    def text(self) -> str:
        """Number and unit, marked as rounded where it is: `2 3/8 in`, `≈ 60.3 mm`."""
        return f"{'≈ ' if self.is_rounded else ''}{self.number} {self.unit}"


def shown(length: Length, system: System, precision: Precision) -> Shown:
    """The length in one system, to the precision given, halves away from zero."""
    rounded = to_nearest(length, precision.step(system))
    if system == "inch":
        return Shown(mixed_fraction(rounded / INCH), "in", rounded - length)
    return Shown(decimal(rounded), "mm", rounded - length)


def mixed_fraction(value: Fraction) -> str:
    """A fraction as a woodworker writes it, in lowest terms: `2 3/8`, `7/16`, `-1 1/2`, `0`."""
    sign = "-" if value.numerator < 0 else ""
    whole, rest = divmod(abs(value.numerator), value.denominator)
    if not rest:
        return f"{sign}{whole}"
    part = f"{rest}/{value.denominator}"
    return f"{sign}{whole} {part}" if whole else f"{sign}{part}"


def decimal(value: Fraction, places: int = 6) -> str:
    """A decimal without trailing zeros, halves away from zero at the last place: `60.3`, `19`."""
    above, below = abs(value.numerator) * 10**places, value.denominator
    scaled = (2 * above + below) // (2 * below)
    sign = "-" if scaled and value.numerator < 0 else ""
    if not places:
        return f"{sign}{scaled}"
    digits = str(scaled).rjust(places + 1, "0")
    whole, rest = digits[:-places], digits[-places:].rstrip("0")
    return f"{sign}{whole}.{rest}" if rest else f"{sign}{whole}"
