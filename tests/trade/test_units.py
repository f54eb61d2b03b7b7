"""Units through every formula, by a library that keeps them: an inch can't be taken for a millimetre.

Where a formula is plain arithmetic, quantities go through it as they are. Where it has a unit built in (a
litre, a gram per square metre), the same is worked out with quantities beside it.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any, cast

import pint
import pytest

from benchalong.trade import amounts, moisture, movement, room, strength
from benchalong.trade.species import woods

U: Any = pint.UnitRegistry()
PERCENT = U.percent
by_coefficient = cast(Any, movement.by_coefficient)
by_shrinkage = cast(Any, movement.by_shrinkage)
sag = cast(Any, strength.sag)
longest_span = cast(Any, strength.longest_span)
second_moment = cast(Any, strength.second_moment)


def test_temperature_is_in_degrees_celsius_and_humidity_a_share() -> None:
    warm = U.Quantity(70.0, "degF").to("degC").magnitude
    humidity = (60.0 * PERCENT).to("dimensionless").magnitude
    # The Handbook's own equation in degrees Fahrenheit gives 10.97.
    assert moisture.equilibrium(warm, humidity) == pytest.approx(10.97, abs=0.02)


def test_movement_by_coefficient_is_in_the_unit_of_the_size() -> None:
    change = by_coefficient(11.8 * U.inch, 0.00248 / PERCENT, before=12.0 * PERCENT, after=6.0 * PERCENT)
    assert change.check("[length]")
    assert change.to("mm").magnitude == pytest.approx(11.8 * 25.4 * 0.00248 * -6)


def test_movement_by_shrinkage_is_too() -> None:
    percent = {"before": 4.0, "after": 12.0, "starts_at": 30.0}
    change = by_shrinkage(300.0 * U.mm, 7.1, **percent)
    inches = by_shrinkage((300.0 * U.mm).to("inch"), 7.1, **percent)
    assert change.check("[length]")
    assert inches.to("mm").magnitude == pytest.approx(change.magnitude)


def test_moisture_and_shrinkage_share_their_unit() -> None:
    """30 * 100 / S is percent moisture: S in percent, so 100 is percent too."""
    full = 30.0 * PERCENT * (100.0 * PERCENT) / (7.1 * PERCENT)
    below = full - 30.0 * PERCENT + 4.0 * PERCENT
    share = (8.0 * PERCENT / below).to("dimensionless").magnitude
    assert share == pytest.approx(by_shrinkage(1.0, 7.1, before=4.0, after=12.0, starts_at=30.0))


@pytest.mark.parametrize("ends", ["resting", "fixed"])
@pytest.mark.parametrize("spread", ["even", "middle"])
def test_sag_in_either_system(spread: str, ends: str) -> None:
    moment = second_moment(11.25 * U.inch, 0.75 * U.inch)
    assert moment.check("[length]**4")
    how = {"spread": spread, "ends": ends}
    inch = sag(75 * U.pound_force, 36 * U.inch, stiffness=1.82e6 * U.psi, moment=moment, **how)
    assert inch.check("[length]")
    ours = strength.sag(
        (75 * U.pound_force).to("newton").magnitude,
        914.4,
        stiffness=(1.82e6 * U.psi).to("MPa").magnitude,
        moment=strength.second_moment(285.75, 19.05),
        **cast(Any, how),
    )
    assert inch.to("mm").magnitude == pytest.approx(ours)


@pytest.mark.parametrize(
    ("spread", "load"), [("even", 25 * U.pound_force / U.foot), ("middle", 75 * U.pound_force)]
)
def test_longest_span_is_a_length(spread: str, load: Any) -> None:
    moment = second_moment(11.25 * U.inch, 0.75 * U.inch)
    span = longest_span(load, limit=1 / 600, stiffness=1.82e6 * U.psi, moment=moment, spread=spread)
    assert span.to_base_units().check("[length]")
    ours = strength.longest_span(
        load.to("newton/mm" if spread == "even" else "newton").magnitude,
        limit=1 / 600,
        stiffness=(1.82e6 * U.psi).to("MPa").magnitude,
        moment=strength.second_moment(285.75, 19.05),
        spread=cast(Any, spread),
    )
    assert span.to("mm").magnitude == pytest.approx(ours)


def test_stiffness_of_the_table_is_pounds_per_square_inch() -> None:
    cherry = woods().find("black cherry")
    assert cherry
    assert strength.stiffness_of(cherry) == pytest.approx((1.49e6 * U.psi).to("MPa").magnitude, rel=1e-6)


def test_what_a_mass_weighs() -> None:
    assert strength.newtons(10) == pytest.approx((10 * U.kg * U.standard_gravity).to("newton").magnitude)


def test_weight_of_a_volume() -> None:
    volume = 25 * U.mm * 200 * U.mm * 2000 * U.mm
    heavy = volume * (0.68 * 1000 * U.kg / U.m**3) * (1 + (12 * PERCENT).to("dimensionless"))
    ours = amounts.weight(Fraction(25 * 200 * 2000), amounts.density_from(Fraction("0.68"), Fraction(12)))
    assert float(ours) == pytest.approx(heavy.to("kg").magnitude)


def test_glue_in_grams() -> None:
    rates = amounts.Rates()
    spread = 2 * U.m * 20 * U.mm * float(rates.glue) * U.g / U.m**2 * (1 + float(rates.squeezed_out))
    assert float(amounts.glue(Fraction(2000 * 20))) == pytest.approx(spread.to("gram").magnitude)


def test_finish_in_litres() -> None:
    rates = amounts.Rates()
    spread = 1.5 * U.m**2 * 2 / (float(rates.finish) * U.m**2 / U.litre) * (1 + float(rates.finish_wasted))
    assert float(amounts.finish(Fraction(1_500_000), 2)) == pytest.approx(spread.to("litre").magnitude)


def test_room_and_widths_of_a_panel_in_either_system() -> None:
    inch = room.Frame(cast(Any, 9.5 * U.inch), cast(Any, (0.4 * U.inch, 0.4 * U.inch)))
    moves: Any = {"to_driest": -0.005, "to_dampest": 0.01}
    widths = cast(Any, room.widths_today)(inch, **moves, play=1 * U.mm, hold=3 * U.mm)
    millimetres = room.Frame(Fraction("241.3"), (Fraction("10.16"), Fraction("10.16")))
    exact: Any = {"to_driest": Fraction("-0.005"), "to_dampest": Fraction("0.01")}
    ours = room.widths_today(millimetres, **exact, play=Fraction(1), hold=Fraction(3))
    assert widths.most.to("mm").magnitude == pytest.approx(float(ours.most))
    assert widths.least.to("mm").magnitude == pytest.approx(float(ours.least))
    left = cast(Any, room.room)(inch, 10 * U.inch, **moves)
    there = room.room(millimetres, Fraction(254), **exact)
    assert left.at_dampest.to("mm").magnitude == pytest.approx(float(there.at_dampest))
    assert left.held_at_driest.to("mm").magnitude == pytest.approx(float(there.held_at_driest))


def test_the_play_beside_a_panel_is_a_length() -> None:
    play = cast(Any, room.side_play)(10.3 * U.inch, (1.0 * PERCENT).to("dimensionless"), 0.8 * U.mm)
    assert play.check("[length]")
    ours = room.side_play(Fraction("10.3") * Fraction(127, 5), Fraction(1, 100), Fraction("0.8"))
    assert play.to("mm").magnitude == pytest.approx(float(ours))


def test_clamps_by_the_millimetre() -> None:
    length = (40 * U.inch).to("mm").magnitude
    assert amounts.clamps(Fraction(length)) == 6
