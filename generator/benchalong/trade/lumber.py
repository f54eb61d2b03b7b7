"""Softwood by its nominal size, and what it really measures.

Minimum dressed sizes at 19 % moisture or less ("dry") by the American Softwood Lumber Standard, PS 20, as
secondary pages quote its tables; the current edition is PS 20-20. A nominal `1x6` is 3/4 by 5 1/2 in.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from benchalong.ground.lengths import FOOT, INCH, Length


def _inches(*pairs: tuple[str, str]) -> Mapping[Fraction, Length]:
    return {Fraction(nominal): Fraction(dressed) * INCH for nominal, dressed in pairs}


BOARD_THICKNESS: Final = _inches(
    ("3/8", "5/16"), ("1/2", "7/16"), ("5/8", "9/16"), ("3/4", "5/8"), ("1", "3/4"), ("5/4", "1"),
    ("3/2", "5/4"),
)  # fmt: skip
BOARD_WIDTH: Final = _inches(
    ("2", "3/2"), ("3", "5/2"), ("4", "7/2"), ("5", "9/2"), ("6", "11/2"), ("7", "13/2"), ("8", "29/4"),
    ("9", "33/4"), ("10", "37/4"), ("11", "41/4"), ("12", "45/4"), ("14", "53/4"), ("16", "61/4"),
)  # fmt: skip
DIMENSION_THICKNESS: Final = _inches(
    ("2", "3/2"), ("5/2", "2"), ("3", "5/2"), ("7/2", "3"), ("4", "7/2"), ("9/2", "4"),
)  # fmt: skip
"""Widths of dimension lumber are those of boards."""


@dataclass(frozen=True)
class Nominal:
    """A nominal size and the dressed one behind it."""

    nominal_thickness: Fraction
    """Inches, by which it is called and counted."""
    nominal_width: Fraction
    thickness: Length
    """As it measures."""
    width: Length

    def board_feet(self, length: Length) -> Fraction:
        """By the nominal size: a 1x6 of 8 ft is 4 board feet."""
        return self.nominal_thickness * self.nominal_width * (length / FOOT) / 12


def nominal(thickness: Fraction, width: Fraction) -> Nominal | None:
    """The size called so; None where the standard has none. Timbers, 5 in and thicker, lose 1/2 in up to 6 in
    and 3/4 in up to 15 in."""
    thick = BOARD_THICKNESS.get(thickness) or DIMENSION_THICKNESS.get(thickness) or _timber(thickness)
    wide = BOARD_WIDTH.get(width) if thickness < 5 else _timber(width)
    if thick is None or wide is None:
        return None
    return Nominal(thickness, width, thick, wide)


def _timber(side: Fraction) -> Length | None:
    if not 5 <= side <= 15:
        return None
    return (side - (Fraction(1, 2) if side <= 6 else Fraction(3, 4))) * INCH
