"""Exact lengths and rounding."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchalong.ground.lengths import FOOT, INCH, METRE, MILLIMETRE, to_nearest

fractions = st.fractions(min_value=-10000, max_value=10000, max_denominator=10**6)
steps = st.sampled_from([Fraction(1, 10), Fraction(1, 2), Fraction(1), INCH / 32, INCH / 64, Fraction(1, 3)])


def test_units_are_exact_fractions_of_a_millimetre() -> None:
    assert [Fraction(length) for length in ("1", "25.4", "304.8", "1000")] == [MILLIMETRE, INCH, FOOT, METRE]


@pytest.mark.parametrize(
    ("value", "step", "rounded"),
    [
        ("1/2", "1", 1), ("-1/2", "1", -1), ("3/2", "1", 2), ("-3/2", "1", -2), ("5/2", "1", 3),
        ("49/100", "1", 0), ("-49/100", "1", 0), ("0", "1", 0), ("1/3", "1/3", "1/3"), ("1/2", "1/3", "2/3"),
    ],
)  # fmt: skip
def test_halves_go_away_from_zero(value: str, step: str, rounded: str | int) -> None:
    assert to_nearest(Fraction(value), Fraction(step)) == Fraction(rounded)


@given(fractions, steps)
def test_rounding_is_never_off_by_more_than_half_a_step(value: Fraction, step: Fraction) -> None:
    rounded = to_nearest(value, step)
    assert (rounded / step).denominator == 1
    assert abs(rounded - value) <= step / 2


@given(fractions, steps)
def test_rounding_is_the_same_below_zero(value: Fraction, step: Fraction) -> None:
    assert to_nearest(-value, step) == -to_nearest(value, step)


@pytest.mark.parametrize("step", [Fraction(0), Fraction(-1)])
def test_a_step_is_above_zero(step: Fraction) -> None:
    with pytest.raises(ValueError, match="above zero"):
        to_nearest(Fraction(1), step)
