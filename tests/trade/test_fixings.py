"""What fixings carry, when a piece tips, what a tread bears: limits, directions, and units."""

from __future__ import annotations

from fractions import Fraction
from typing import Any, cast

import pint
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from benchalong.trade import bearing, fixings

U: Any = pint.UnitRegistry()
kilos = st.floats(0.1, 500)
mm = st.floats(1, 2000)


@given(weight=kilos, behind=st.floats(-500, 1000), pull=kilos, before=mm)
def test_feet_moved_as_told_just_balance(weight: float, behind: float, pull: float, before: float) -> None:
    needs = fixings.feet_forward(weight, behind=behind, pull=pull, before=before)
    left = fixings.stays_up(weight, behind=behind + needs, pull=pull, before=before - needs)
    assert needs >= 0
    assert left == pytest.approx(0, abs=1e-6) if needs else left >= 0


@given(weight=kilos, behind=mm, pull=kilos, before=mm, more=st.floats(1, 500))
def test_a_longer_drawer_and_a_heavier_child_never_steady_it(
    weight: float, behind: float, pull: float, before: float, more: float
) -> None:
    here = fixings.stays_up(weight, behind=behind, pull=pull, before=before)
    assert fixings.stays_up(weight, behind=behind, pull=pull, before=before + more) < here
    assert fixings.stays_up(weight, behind=behind, pull=pull + more, before=before) < here
    assert fixings.stays_up(weight + more, behind=behind, pull=pull, before=before) > here


def test_nothing_pulled_tips_nothing_that_stands_within_its_feet() -> None:
    assert fixings.feet_forward(20.0, behind=5.0, pull=0.0, before=300.0) == 0


@given(shank=st.floats(2, 12), thread=st.floats(1, 150), gravity=st.floats(0.3, 0.9))
def test_a_screw_holds_more_the_thicker_deeper_and_denser(
    shank: float, thread: float, gravity: float
) -> None:
    here = fixings.withdrawal(shank, thread, gravity)
    assert fixings.withdrawal(shank * 2, thread, gravity) == pytest.approx(2 * here)
    assert fixings.withdrawal(shank, thread * 2, gravity) == pytest.approx(2 * here)
    assert fixings.withdrawal(shank, thread, gravity * 2) == pytest.approx(4 * here)
    assert fixings.used(here) == pytest.approx(here / 2)


def test_withdrawal_and_shear_in_either_system() -> None:
    shank, thread = 0.19 * U.inch, 2 * U.inch
    pounds = 2850 * 0.42**2 * 0.19 * 2 * U.pound_force
    found = fixings.withdrawal(shank.to("mm").magnitude, thread.to("mm").magnitude) * U.newton
    assert found.to("pound_force").magnitude == pytest.approx(pounds.magnitude)
    across = cast(Any, fixings.across)(5 * U.mm) * U.newton / U.mm**2
    assert across.check("[force]")
    assert across.to("newton").magnitude == pytest.approx(425)


def test_the_pull_out_of_a_wall_is_in_the_unit_of_the_weight() -> None:
    pull_out = cast(Any, fixings.pull_out)
    pull = pull_out(30 * U.kilogram, from_wall=6 * U.inch, above_foot=600 * U.mm)
    assert pull.check("[mass]")
    assert pull.to("kilogram").magnitude == pytest.approx(30 * 152.4 / 600)


def test_moments_keep_their_units() -> None:
    stays = cast(Any, fixings.stays_up)(40 * U.pound, behind=5 * U.inch, pull=50 * U.pound, before=4 * U.inch)
    assert stays.to("pound * inch").magnitude == pytest.approx(0)


@given(load=st.floats(10, 3000), span=st.floats(100, 1500), width=st.floats(50, 600), thick=st.floats(5, 60))
def test_the_thickness_told_is_just_enough(load: float, span: float, width: float, thick: float) -> None:
    stress = bearing.middle_stress(load, span, width=width, thickness=thick)
    assert bearing.thickness_for(load, span, width=width, stress=stress) == pytest.approx(thick)


def test_stress_is_a_stress() -> None:
    stress = cast(Any, bearing.middle_stress)
    found = stress(1177 * U.newton, 14 * U.inch, width=220 * U.mm, thickness=0.75 * U.inch)
    # M = FL/4 over the section modulus bt^2/6
    moment, modulus = 1177 * 14 * 25.4 / 4, 220 * 19.05**2 / 6
    assert found.to("megapascal").magnitude == pytest.approx(moment / modulus)


def test_nobody_is_told_to_stand_on_chipboard() -> None:
    from benchalong.trade.sheets import sheet_called

    assert bearing.breaking_stress(None, sheet_called("chipboard")) is None
    assert bearing.breaking_stress(None, None) is None
    assert bearing.breaking_stress(None, sheet_called("birch plywood")) == pytest.approx(12.2, abs=0.1)


@given(length=st.integers(100, 3000), apart=st.integers(300, 700))
def test_studs_met_are_one_apart(length: int, apart: int) -> None:
    least, best = fixings.studs_met(Fraction(length), Fraction(apart))
    assert best == least + 1
    assert least * apart <= length


@given(from_wall=mm, above=mm, weight=kilos)
def test_a_deeper_cupboard_pulls_more_and_a_taller_one_less(
    from_wall: float, above: float, weight: float
) -> None:
    assume(above > 2)
    here = fixings.pull_out(weight, from_wall=from_wall, above_foot=above)
    assert fixings.pull_out(weight, from_wall=from_wall + 1, above_foot=above) > here
    assert fixings.pull_out(weight, from_wall=from_wall, above_foot=above + 1) < here
