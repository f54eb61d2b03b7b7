"""How much water wood holds in a room, and the rooms that pieces are made and live in.

Moisture content is mass of water over ovendry mass, in percent. The equation is the one with two hydrates
by Hailwood and Horrobin, Wood Handbook (FPL-GTR-190 and FPL-GTR-282), equation 4-5, in degrees Celsius.
It knows no species, no finish and no difference between drying and wetting, and strays up to 0.9 percent
from what it was fitted to: fit for whole and half percents.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from benchalong.ground.lengths import to_nearest

COLDEST: Final = -1.2
WARMEST: Final = 99.0
"""Degrees Celsius: 30 to 210 degrees Fahrenheit, the part of the Handbook's Table 4-2 it was held against."""
DRIEST_AIR: Final = 0.05
DAMPEST_AIR: Final = 0.95
"""Relative humidity as a share, the first and last column of that table."""
ROOM: Final = 20.0
"""Degrees Celsius taken where no temperature is given; 10 degrees more make about half a percent."""


class OutOfRange(ValueError):
    """An equation was asked for something outside what it was made for."""


def equilibrium(celsius: float, humidity: float) -> float:
    """Moisture content in percent that wood comes to in air of a relative humidity (a share, 0.5 for 50 %).

    Raises OutOfRange outside 30 to 210 degrees Fahrenheit and 5 to 95 percent humidity.
    """
    _within(celsius, COLDEST, WARMEST, "a temperature", "degrees Celsius")
    _within(humidity, DRIEST_AIR, DAMPEST_AIR, "a relative humidity", "as a share")
    w = 349 + 1.29 * celsius + 0.0135 * celsius**2
    k = 0.805 + 0.000736 * celsius - 0.00000273 * celsius**2
    k1 = 6.27 - 0.00938 * celsius - 0.000303 * celsius**2
    k2 = 1.91 + 0.0407 * celsius - 0.000293 * celsius**2
    x = k * humidity
    first = x / (1 - x)
    second = (k1 * x + 2 * k1 * k2 * x**2) / (1 + k1 * x + k1 * k2 * x**2)
    return 1800 / w * (first + second)


def humidity_for(celsius: float, moisture: float) -> float:
    """The relative humidity, as a share, that brings wood to a moisture content in percent.

    Raises OutOfRange where that air would be drier than 5 or damper than 95 percent.
    """
    low, high = DRIEST_AIR, DAMPEST_AIR
    _within(moisture, equilibrium(celsius, low), equilibrium(celsius, high), "a moisture content", "percent")
    for _ in range(60):
        middle = (low + high) / 2
        if equilibrium(celsius, middle) < moisture:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def moisture_at(humidity_pct: Fraction, celsius: float = ROOM) -> Fraction:
    """Moisture content in percent, to a tenth, in air of a relative humidity in percent."""
    return to_nearest(Fraction(equilibrium(celsius, float(humidity_pct) / 100)), Fraction(1, 10))


def _within(value: float, least: float, most: float, what: str, unit: str) -> None:
    if not least <= value <= most:
        raise OutOfRange(f"{what} of {value:g} ({unit}) is outside {least:g} to {most:g}")


@dataclass(frozen=True)
class Climate:
    """The driest and the dampest that wood in a house comes to over the year, in percent moisture content."""

    driest: Fraction
    dampest: Fraction
    said: str
    """Where the two come from, in words."""


CLIMATES: Mapping[str, Climate] = {
    "temperate house": Climate(Fraction(6), Fraction(12), "a temperate house, heated in winter"),
    "dry winters": Climate(Fraction(4), Fraction(9), "a house heated through dry winters"),
    "damp coast": Climate(Fraction(8), Fraction(12), "a house on a damp coast"),
    "central Europe": Climate(Fraction(6), Fraction(12), "heated rooms in central Europe"),
    "summer without cooling": Climate(Fraction(9, 2), Fraction(12), "heated in winter, not cooled in summer"),
}
"""Common practice, without a published source: ranges that makers design for."""
CLIMATES_STANDING = "common practice"
ASSUMED = "temperate house"
"""The house taken where the project names none; pages say so."""
GLUED_APART: Final = Fraction(2)
"""Percent: at most so far apart is the moisture of boards that are glued to each other; common practice."""
MADE_AT: Final = Fraction(8)
"""Percent, where the shop is not named: the damp end of the 6 to 8 percent for furniture stock (Wood
Handbook, chapter 13)."""


def of_humidity(low_pct: Fraction, high_pct: Fraction, celsius: float = ROOM) -> Climate:
    """The range between two relative humidities in percent. Raises OutOfRange as `equilibrium` does."""
    driest, dampest = sorted((moisture_at(low_pct, celsius), moisture_at(high_pct, celsius)))
    return Climate(driest, dampest, f"{float(low_pct):g} to {float(high_pct):g} % relative humidity")
