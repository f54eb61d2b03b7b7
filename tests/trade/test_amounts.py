"""Weight, glue, finish, clamps: our own worked figures."""

from __future__ import annotations

from fractions import Fraction

import pytest

from benchalong.trade.amounts import (
    Rates,
    clamps,
    density,
    density_from,
    finish,
    glue,
    gravity_from_green,
    gravity_from_volumetric,
    green_from_gravity,
    weight,
)
from benchalong.trade.species import Species, woods

F = Fraction


def named(name: str) -> Species:
    found = woods().find(name)
    assert found is not None
    return found


def test_a_board_of_white_oak() -> None:
    at_12 = density(named("white oak"), F(12))
    assert at_12 is not None
    assert float(at_12) == pytest.approx(761.6)
    assert float(weight(F(25 * 200 * 2000), at_12)) == pytest.approx(7.62, abs=0.005)
    at_8 = density(named("white oak"), F(8))
    assert at_8 is not None
    assert float(at_8) == pytest.approx(752.5, abs=0.05)


def test_gravity_at_another_moisture() -> None:
    green = F("0.60")
    full = F("16.3") * (1 - F(12) / 30)
    assert float(green / (1 - full / 100)) == pytest.approx(0.6650, abs=5e-5)
    assert float(gravity_from_green(green, F(12))) == pytest.approx(0.6633, abs=5e-5)
    assert gravity_from_green(green_from_gravity(F("0.5"), F(12)), F(12)) == F("0.5")
    eight = gravity_from_volumetric(F("0.68"), F("16.3"), before=F(12), after=F(8))
    assert float(eight) == pytest.approx(0.6968, abs=5e-5)


def test_the_published_formula_for_density() -> None:
    assert float(density_from(F("0.40"), F(12))) == pytest.approx(448)


@pytest.mark.parametrize("name", ["teak", "black cherry", "white oak"])
def test_damper_wood_is_heavier(name: str) -> None:
    dry, damp = density(named(name), F(6)), density(named(name), F(14))
    assert dry is not None
    assert damp is not None
    assert dry < damp


def test_no_gravity_no_weight() -> None:
    assert density(named("iroko"), F(8)) is None


def test_glue_for_an_edge_joint() -> None:
    """2 m by 20 mm: 7.2 g, and a third more for what is squeezed out."""
    assert glue(F(2000 * 20)) == F("9.6")
    assert glue(F(2000 * 20), Rates(squeezed_out=F(0))) == F("7.2")


def test_finish_for_a_table() -> None:
    assert float(finish(F(2_000_000), 3)) == pytest.approx(2 * 3 / 8.5 * 1.1)


@pytest.mark.parametrize(("length", "count"), [(100, 2), (250, 2), (251, 3), (1000, 5)])
def test_clamps_along_a_joint(length: int, count: int) -> None:
    assert clamps(F(length)) == count
