"""Lengths against outside sources."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pint
import pytest

from benchalong.ground.lengths import FOOT, INCH
from benchalong.ground.shown import Precision, shown
from benchalong.ground.units import unit_length
from benchalong.plan.evaluate import evaluate
from benchalong.plan.formula import parse
from benchalong.plan.quantity import Quantity
from benchalong.plan.tree import Name

# NIST Special Publication 811 (2008), Guide for the Use of the International System of Units, appendix B.8,
# "Factors for units listed alphabetically": inch, foot and yard are exact there [memory]. That the inch is
# 25.4 mm and the yard 0.9144 m, exactly, since the agreement of 1 July 1959 [found-2nd: probsee.com/p/Inch].
NIST_SP_811 = {"inch": Fraction("0.0254"), "foot": Fraction("0.3048"), "yard": Fraction("0.9144")}
"""In metres, exactly."""


@pytest.mark.parametrize(("unit", "metres"), NIST_SP_811.items())
def test_units_are_those_of_nist(unit: str, metres: Fraction) -> None:
    assert unit_length(unit) == metres * 1000


def test_our_own_constants_are_those_of_nist() -> None:
    assert (NIST_SP_811["inch"], NIST_SP_811["foot"]) == (INCH / 1000, FOOT / 1000)


@pytest.mark.parametrize("unit", ["inch", "foot", "yard", "mm", "cm", "m"])
def test_units_are_those_of_the_units_library_in_floats(unit: str) -> None:
    """An independent way through the same library: its own default registry, in floats."""
    length = unit_length(unit)
    assert length is not None
    assert float(length) == pytest.approx(pint.UnitRegistry()(unit).to("millimetre").magnitude, rel=1e-14)


# Decimal equivalents of 64ths of an inch to four places, as printed in workshop tables; these here from
# engineeringtoolbox.com/amp/fractional-decimal-equivalents-d_1159.html [found].
DECIMAL_EQUIVALENTS = """
1/64 0.0156   1/32 0.0313   3/64 0.0469   1/16 0.0625   5/64 0.0781   3/32 0.0938   7/64 0.1094   1/8 0.1250
9/64 0.1406   5/32 0.1563  11/64 0.1719   3/16 0.1875  13/64 0.2031   7/32 0.2188  15/64 0.2344   1/4 0.2500
17/64 0.2656  9/32 0.2813  19/64 0.2969   5/16 0.3125  21/64 0.3281  11/32 0.3438  23/64 0.3594   3/8 0.3750
25/64 0.3906 13/32 0.4063  27/64 0.4219   7/16 0.4375  29/64 0.4531  15/32 0.4688  31/64 0.4844   1/2 0.5000
33/64 0.5156 17/32 0.5313  35/64 0.5469   9/16 0.5625  37/64 0.5781  19/32 0.5938  39/64 0.6094   5/8 0.6250
41/64 0.6406 21/32 0.6563  43/64 0.6719  11/16 0.6875  45/64 0.7031  23/32 0.7188  47/64 0.7344   3/4 0.7500
49/64 0.7656 25/32 0.7813  51/64 0.7969  13/16 0.8125  53/64 0.8281  27/32 0.8438  55/64 0.8594   7/8 0.8750
57/64 0.8906 29/32 0.9063  59/64 0.9219  15/16 0.9375  61/64 0.9531  31/32 0.9688  63/64 0.9844
"""
PRINTED = DECIMAL_EQUIVALENTS.split()
EQUIVALENTS = list(zip(PRINTED[::2], PRINTED[1::2], strict=True))


def value_of(formula: str) -> Quantity:
    def no_names(name: Name) -> Quantity:
        raise AssertionError(name)

    return evaluate(parse(formula), no_names, INCH)


@pytest.mark.parametrize(("fraction", "printed"), EQUIVALENTS)
def test_fractions_are_read_as_the_workshop_table_has_them(fraction: str, printed: str) -> None:
    inches = value_of(f"{fraction} in").value / INCH
    exact = Decimal(inches.numerator) / Decimal(inches.denominator)
    assert str(exact.quantize(Decimal("0.0001"), ROUND_HALF_UP)) == printed


@pytest.mark.parametrize(("fraction", "printed"), EQUIVALENTS)
def test_decimals_are_shown_as_the_fraction_the_table_has_for_them(fraction: str, printed: str) -> None:
    seen = shown(value_of(f"{printed} in").value, "inch", Precision(inch=INCH / 64))
    assert seen.number == fraction


# Millimetres for inch fractions to four places, as in two tables that agree
# ([found] machinecalcs.com/decimal-to-fraction-chart, utilitiesbunker.com/kb/fraction-to-decimal-chart);
# where a value ends in exactly half a place the two round differently, so none of those is here.
MILLIMETRES = {
    "1/64": "0.3969", "3/64": "1.1906", "1/16": "1.5875", "1/8": "3.1750", "3/16": "4.7625",
    "15/64": "5.9531", "1/4": "6.3500", "5/16": "7.9375", "3/8": "9.5250", "7/16": "11.1125",
    "1/2": "12.7000", "33/64": "13.0969", "5/8": "15.8750", "11/16": "17.4625", "3/4": "19.0500",
    "49/64": "19.4469", "7/8": "22.2250", "15/16": "23.8125",
}  # fmt: skip


@pytest.mark.parametrize(("fraction", "printed"), MILLIMETRES.items())
def test_fractions_in_millimetres(fraction: str, printed: str) -> None:
    exact = value_of(f"{fraction} in").value
    assert abs(exact - Fraction(printed)) <= Fraction(1, 20000)
