"""Weights, volumes and areas in words; what a unit is worth stands in pint's own tables too."""

from __future__ import annotations

from fractions import Fraction

import pint
import pytest

from benchalong.ground.amounts import FLUID_OUNCE, OUNCE, QUART, area_text, volume_text, weight_text
from benchalong.ground.lengths import FOOT
from benchalong.ground.shown import System

UNITS: pint.UnitRegistry[float] = pint.UnitRegistry()


@pytest.mark.parametrize(
    ("ours", "unit", "in_unit"),
    [
        (QUART, "US_liquid_quart", "litre"),
        (FLUID_OUNCE, "US_fluid_ounce", "litre"),
        (OUNCE, "avoirdupois_ounce", "kilogram"),
        (FOOT**2, "square_foot", "millimetre**2"),
    ],
)
def test_a_unit_is_worth_what_pint_says(ours: Fraction, unit: str, in_unit: str) -> None:
    assert float(ours) == pytest.approx(UNITS.Quantity(1, unit).to(in_unit).magnitude, rel=1e-12)


SAID: list[tuple[str, str, System]] = [
    ("16.6", "16.6 kg", "millimetre"),
    ("16.6", "36.6 lb", "inch"),
    ("0.0387", "39 g", "millimetre"),
    ("0.0387", "1.4 oz", "inch"),
    ("0.0059", "5.9 g", "millimetre"),
    ("0.0059", "0.21 oz", "inch"),
    ("0.6", "1.3 lb", "inch"),
]


@pytest.mark.parametrize(("kilograms", "text", "system"), SAID)
def test_weights(kilograms: str, text: str, system: System) -> None:
    assert weight_text(Fraction(kilograms), system) == text


VOLUMES: list[tuple[str, str, System]] = [
    ("1.31", "1.4 litres", "millimetre"),
    ("1.31", "1.4 quarts", "inch"),
    ("2", "2 litres", "millimetre"),
    ("0.301", "310 ml", "millimetre"),
    ("0.301", "11 fl oz", "inch"),
]


@pytest.mark.parametrize(("litres", "text", "system"), VOLUMES)
def test_volumes_are_rounded_up(litres: str, text: str, system: System) -> None:
    assert volume_text(Fraction(litres), system) == text


def test_areas() -> None:
    assert area_text(Fraction(530_000), "millimetre") == "0.53 m²"
    assert area_text(Fraction(530_000), "inch") == "5.7 sq ft"
