"""How much more is bought than the parts take, by grade and by species.

Percent *added* to what the rough sizes come to, not percent of the purchase that is lost: of 10 board feet
needed, 25 % added makes 12.5. The middle of what shops reckon with is taken, and shown on the page.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Final, Literal, TypeAlias

Standing: TypeAlias = Literal["common practice", "memory", "said"]

GRADES: Final = ("FAS", "selects", "No. 1 common", "No. 2A common", "clear", "knotty")
"""NHLA's for hardwood; the last two for softwood boards."""


@dataclass(frozen=True)
class Waste:
    added: Fraction
    """As a share: a quarter is 25 %."""
    why: str
    standing: Standing


def _usual(low: int, high: int, why: str, standing: Standing = "common practice") -> Waste:
    return Waste(Fraction(low + high, 200), f"{why}: {low} to {high} %", standing)


BY_GRADE: Final[Mapping[str, Waste]] = {
    "FAS": _usual(10, 20, "FAS, clear face at least 83 1/3 %"),
    "selects": _usual(10, 20, "selects"),
    "No. 1 common": _usual(30, 40, "No. 1 common, clear at least 66 2/3 %"),
    "No. 2A common": _usual(50, 100, "No. 2A common, clear at least 50 %", "memory"),
    "clear": _usual(10, 15, "clear softwood boards"),
    "knotty": _usual(20, 30, "knotty softwood boards"),
}

BY_SPECIES: Final[tuple[tuple[str, Waste], ...]] = (
    ("walnut", _usual(35, 50, "walnut, sapwood left out")),
    ("cherry", _usual(25, 35, "cherry, sapwood left out")),
    ("white oak", _usual(20, 30, "white oak")),
    ("ash", _usual(20, 25, "ash")),
    ("maple", _usual(25, 30, "maple")),
    ("poplar", _usual(15, 20, "poplar")),
)
"""By a word that stands in the species' name."""

QUARTERSAWN: Final = Waste(Fraction(30, 100), "quarter-sawn: 30 %", "common practice")
SHEETS: Final = _usual(10, 15, "sheets, before a layout says better")
UNKNOWN: Final = Waste(
    Fraction(30, 100), "boards of random width: 30 %, since no grade is said", "common practice"
)
NONE: Final = Waste(Fraction(0), "", "said")


def waste(
    *, kind: str, species: str = "", sawn: str = "", grade: str = "", said: Fraction | None = None
) -> Waste:
    """What is added. The author's own goes before the grade, the grade before the species."""
    if said is not None:
        return Waste(said, "as the plan says", "said")
    if kind == "sheet":
        return SHEETS
    if kind != "board":
        return NONE
    if grade in BY_GRADE:
        return BY_GRADE[grade]
    if sawn == "quarter":
        return QUARTERSAWN
    words = species.lower().split()
    found = (each for name, each in BY_SPECIES if all(word in words for word in name.split()))
    return next(found, UNKNOWN)
