"""How damp the wood is when it is worked, and how dry and damp it gets in the house, in percent.

What was measured nearest to the wood goes first: its own moisture, then the humidity of the air, then a
climate by name, then what common practice takes. Held within what the equations are good for; where that
changes anything, the workings say so.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from benchalong.plan.model import Air
from benchalong.trade.moisture import (
    ASSUMED,
    CLIMATES,
    COLDEST,
    DAMPEST_AIR,
    DRIEST_AIR,
    MADE_AT,
    ROOM,
    WARMEST,
    moisture_at,
)
from benchalong.trade.movement import WETTEST


@dataclass(frozen=True)
class Moistures:
    """Moisture contents in percent."""

    made_at: Fraction
    driest: Fraction
    dampest: Fraction


def moistures(shop: Air, house: Air) -> Moistures:
    made_at = (range_of(shop) or (MADE_AT, MADE_AT))[0]
    named = CLIMATES[house.climate or ASSUMED]
    driest, dampest = range_of(house) or (named.driest, named.dampest)
    return Moistures(made_at, driest, dampest)


def range_of(air: Air) -> tuple[Fraction, Fraction] | None:
    """Moisture over the year; None where only a climate or nothing was said."""
    if air.moisture:
        low, high = air.moisture
        return min(low, WETTEST), min(high, WETTEST)
    if air.humidity:
        low, high = (moisture_at(within_air(share), warmth(air)) for share in air.humidity)
        return low, high
    return None


def warmth(air: Air) -> float:
    """Degrees Celsius."""
    return ROOM if air.celsius is None else min(max(float(air.celsius), COLDEST), WARMEST)


def within_air(percent: Fraction) -> Fraction:
    return min(max(percent, _percent(DRIEST_AIR)), _percent(DAMPEST_AIR))


def _percent(share: float) -> Fraction:
    return Fraction(round(share * 100))
