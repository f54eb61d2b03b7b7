"""Moisture from humidity and back, and where the equation ends."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchalong.trade.moisture import (
    CLIMATES,
    COLDEST,
    DAMPEST_AIR,
    DRIEST_AIR,
    WARMEST,
    OutOfRange,
    equilibrium,
    humidity_for,
    moisture_at,
    of_humidity,
)

warm = st.floats(COLDEST, WARMEST)
damp = st.floats(DRIEST_AIR, DAMPEST_AIR)


@given(warm, damp, damp)
def test_damper_air_makes_damper_wood(celsius: float, one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert equilibrium(celsius, low) <= equilibrium(celsius, high)


@given(warm, damp)
def test_humidity_leads_back(celsius: float, humidity: float) -> None:
    assert humidity_for(celsius, equilibrium(celsius, humidity)) == pytest.approx(humidity, abs=1e-9)


@given(damp)
def test_wood_never_comes_to_more_than_it_can_hold_without_free_water(humidity: float) -> None:
    assert 0 < equilibrium(20, humidity) < 30


@pytest.mark.parametrize(("celsius", "humidity"), [(-2, 0.5), (100, 0.5), (20, 0.04), (20, 0.96), (20, 50)])
def test_outside_its_range_the_equation_is_not_used(celsius: float, humidity: float) -> None:
    with pytest.raises(OutOfRange):
        equilibrium(celsius, humidity)


def test_no_air_leads_to_wood_as_wet_as_that() -> None:
    with pytest.raises(OutOfRange, match="a moisture content of 28"):
        humidity_for(20, 28)


def test_shown_to_a_tenth() -> None:
    assert moisture_at(Fraction(50)) == Fraction("9.3")


def test_a_range_of_humidity_is_a_climate() -> None:
    house = of_humidity(Fraction(60), Fraction(30), 21)
    assert (house.driest, house.dampest) == (Fraction("6.2"), Fraction(11))


def test_every_named_house_has_its_driest_below_its_dampest_and_within_the_equations() -> None:
    assert all(0 < house.driest < house.dampest < 30 for house in CLIMATES.values())
