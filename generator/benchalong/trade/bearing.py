"""What a part bears that somebody stands on: the stress in its middle, against what breaks its wood.

The stress is the textbook's, of a straight beam on two supports. What breaks wood is told from its weight,
since the table of species has no strengths: an estimate, and marked as one where it is shown.
"""

from __future__ import annotations

from typing import Final

from benchalong.trade.sheets import Sheet
from benchalong.trade.species import Species

CARE: Final = 4
"""How many times what bears a person must be short of breaking, for knots, a jump, years: our own choice."""
SHEET_SHARE: Final = 0.5
"""Of the strength of clear wood of the same weight that a plywood has along its face grain: an estimate,
since about half of its layers run across. Chipboard and fibreboard have less and are not to be stood on."""


def modulus_of_rupture(gravity: float) -> float:
    """What bends clear straight wood to breaking, in N/mm2 at 12 percent moisture: 171.3 * G^1.13, the Wood
    Handbook's relation for hardwoods (from memory of its Table 5-11a); its one for softwoods gives more."""
    return float(171.3 * gravity**1.13)


def breaking_stress(species: Species | None, sheet: Sheet | None) -> float | None:
    """What wood is let bear where people stand, in N/mm2: its modulus of rupture over `CARE`. None where it
    isn't known, or where nobody should stand on it."""
    if species is not None and species.gravity_12 is not None:
        return modulus_of_rupture(float(species.gravity_12.amount)) / CARE
    if sheet is not None and "plywood" in sheet.name:
        return SHEET_SHARE * modulus_of_rupture(float(sheet.density) / 1120) / CARE
    return None


def middle_stress(load: float, span: float, *, width: float, thickness: float) -> float:
    """In the outermost wood of a part that rests on both ends, with the load at its middle, in N/mm2:
    3 * load * span / (2 * width * thickness^2), by the textbook."""
    return 3 * load * span / (2 * width * thickness**2)


def thickness_for(load: float, span: float, *, width: float, stress: float) -> float:
    """How thick it must be for the stress to come to no more, in mm."""
    root: float = (3 * load * span / (2 * width * stress)) ** 0.5
    return root
