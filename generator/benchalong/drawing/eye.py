"""Where a picture is seen from: a parallel projection of the room onto the sheet.

The sheet counts right and up, in mm of the room before any scale. `away` is a third number that grows
along each line of sight; only its order matters, so any three rows that are not in one plane will do.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians, sin
from typing import TypeAlias

Vector: TypeAlias = tuple[float, float, float]


@dataclass(frozen=True)
class Eye:
    """Three rows, each a number for x to the right, y to the back and z up."""

    right: Vector
    up: Vector
    away: Vector

    @property
    def rows(self) -> tuple[Vector, Vector, Vector]:
        return (self.right, self.up, self.away)


def turned_eye(*, aside: float, above: float) -> Eye:
    """Square onto the sheet, from `aside` degrees right of the front and `above` degrees over level."""
    ca, sa, cb, sb = cos(radians(aside)), sin(radians(aside)), cos(radians(above)), sin(radians(above))
    return Eye((ca, sa, 0.0), (-sa * sb, ca * sb, cb), (-sa * cb, ca * cb, -sb))


def slanted_eye(*, slant: float, short: float) -> Eye:
    """The front true to shape; what runs to the back is drawn up to the right, `slant` degrees over level
    and `short` of its length (ISO 5456-3, cabinet projection, with a half and 45 degrees)."""
    aside, up = short * cos(radians(slant)), short * sin(radians(slant))
    return Eye((1.0, aside, 0.0), (0.0, up, 1.0), (0.0, 1.0, 0.0))


PIECE_EYE = turned_eye(aside=27.0, above=17.0)
"""From front, right and above; the front keeps nine tenths of its width, so doors still look like doors."""
