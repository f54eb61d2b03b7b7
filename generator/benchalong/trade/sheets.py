"""Sheet goods: told by the words on their label, with what they weigh and how stiff they are.

Sheets move so little with the seasons that it doesn't matter at the bench, along and across alike.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from benchalong.trade.species import GPA_PER_MPSI
from benchalong.trade.strength import LASTING, LASTING_BOARD


@dataclass(frozen=True)
class Sheet:
    name: str
    words: tuple[str, ...]
    """Any of which in its name tells it."""
    density: Fraction
    """Kilograms per cubic metre: an estimate without a published source. Sheets of one kind differ."""
    stiffness: Fraction
    """Modulus of elasticity along the face grain, in GPa: the lower end of its range, common practice."""
    lasting: Fraction
    """How many times the sag at once grows under a load that stays: an estimate."""


SHEETS: Final = (
    Sheet("MDF", ("mdf", "fibreboard"), Fraction(750), Fraction("0.5") * GPA_PER_MPSI, LASTING_BOARD),
    Sheet(
        "chipboard",
        ("chipboard", "particleboard", "particle board"),
        Fraction(680),
        Fraction("0.35") * GPA_PER_MPSI,
        LASTING_BOARD,
    ),
    Sheet(
        "birch plywood",
        ("birch plywood", "birch ply"),
        Fraction(680),
        Fraction("1.2") * GPA_PER_MPSI,
        LASTING,
    ),
    Sheet("plywood", ("plywood", "ply"), Fraction(600), Fraction("1.2") * GPA_PER_MPSI, LASTING),
)
"""The more particular ones first."""


def sheet_called(name: str) -> Sheet | None:
    """The kind of sheet a label speaks of; None when it doesn't say."""
    said = f" {' '.join(name.lower().replace('-', ' ').split())} "
    return next((sheet for sheet in SHEETS if any(f" {word} " in said for word in sheet.words)), None)
