"""A number with its dimension: pure, a length, an area or a volume."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from benchalong.ground.lengths import Length

DIMENSIONS = {
    -2: "one over an area",
    -1: "one over a length",
    0: "a pure number",
    1: "a length",
    2: "an area",
    3: "a volume",
}


@dataclass(frozen=True)
class Quantity:
    value: Fraction
    """In mm to the power of `dimension`."""
    dimension: int = 0

    def as_length(self, unit: Length) -> Length:
        """The length meant; a bare number counts in `unit`. Raises ValueError for an area and the like."""
        if self.dimension == 1:
            return self.value
        if self.dimension == 0:
            return self.value * unit
        raise ValueError(f"{self.called} is not a length")

    @property
    def called(self) -> str:
        return DIMENSIONS.get(self.dimension, f"a length to the power of {self.dimension}")
