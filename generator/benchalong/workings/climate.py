"""How damp is the wood when it is worked, and how dry and damp will it get in the house?

What the project doesn't say is taken from common practice, and says so itself.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.plan.model import Air, Plan
from benchalong.plan.moistures import moistures, warmth, within_air
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.moisture import ASSUMED, CLIMATES
from benchalong.trade.movement import WETTEST
from benchalong.workings.working import Worked, Working


@dataclass(frozen=True)
class Climate:
    """Moisture contents of the wood in percent."""

    made_at: Fraction
    driest: Fraction
    dampest: Fraction
    shop: str
    """Where the first comes from, in words."""
    house: str
    """Where the other two come from."""
    is_shop_assumed: bool
    is_house_assumed: bool


def find_climate(plan: Plan, _: Worked) -> tuple[Climate, tuple[Finding, ...]]:
    shop, house = plan.shop.air, plan.house
    found = moistures(shop, house)
    is_shop_assumed = shop.moisture is None and shop.humidity is None
    is_house_assumed = not (house.climate or house.moisture or house.humidity)
    climate = Climate(
        found.made_at,
        found.driest,
        found.dampest,
        "furniture stock, as usual" if is_shop_assumed else said_of(shop),
        CLIMATES[ASSUMED].said if is_house_assumed else said_of(house),
        is_shop_assumed,
        is_house_assumed,
    )
    return climate, (*_limits(shop, "shop"), *_limits(house, "house"), *_unfit(climate))


def said_of(air: Air) -> str:
    """Where what is known of an air comes from, in words; something must be known."""
    if air.moisture:
        return "as measured in the wood"
    if air.humidity:
        low, high = air.humidity
        damp = f"{float(low):g}" if low == high else f"{float(low):g} to {float(high):g}"
        return f"air of {damp} % humidity at {warmth(air):.3g} °C"
    return CLIMATES[air.climate].said


def _limits(air: Air, section: str) -> Iterator[Finding]:
    """What lies outside the equations, and was taken at their limit."""
    moisture = "made_at" if section == "shop" else "moisture"
    if air.moisture and air.moisture[1] > WETTEST:
        yield _outside(
            section,
            moisture,
            f"wood at {float(air.moisture[1]):g} % moisture hasn't begun to shrink; 30 % is taken",
            "measure the wood again, or let it dry first",
        )
    elif air.humidity and not air.moisture and not all(within_air(one) == one for one in air.humidity):
        yield _outside(
            section,
            "humidity",
            "the moisture in wood can be worked out from 5 to 95 % humidity; beyond, the limit is taken",
            "give a humidity from 5 to 95 %",
        )
    elif air.humidity and air.celsius is not None and float(air.celsius) != warmth(air):
        yield _outside(
            section,
            "temperature",
            "the moisture in wood can be worked out from -1 to 99 °C; beyond, the limit is taken",
            "give the temperature of the room",
        )


def _outside(section: str, key: str, message: str, remedy: str) -> Finding:
    place = Place((PROJECT_FILE, section, key))
    return Finding("climate-outside-equation", "doubt", place, section, message, remedy)


def _unfit(climate: Climate) -> Iterator[Finding]:
    """Wood that is worked damper or drier than it will ever be again; only said of what the project says."""
    if climate.is_shop_assumed or climate.is_house_assumed:
        return
    at, low, high = (f"{float(each):g} %" for each in (climate.made_at, climate.driest, climate.dampest))
    place = Place((PROJECT_FILE, "shop")).key()
    if climate.made_at > climate.dampest:
        message = f"the wood is worked at {at}, damper than it will ever be in the house ({high})"
        yield Finding(
            "worked-too-damp", "doubt", place, "shop", message, f"let it lie indoors until it shows {high}"
        )
    elif climate.made_at < climate.driest:
        message = f"the wood is worked at {at}, drier than it will ever be in the house ({low})"
        yield Finding("worked-too-dry", "doubt", place, "shop", message, f"let it lie until it shows {low}")


CLIMATE: Working[Climate] = Working("climate", "How dry and how damp will the wood get?", find_climate)
