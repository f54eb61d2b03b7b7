"""Lengths as a reader sees them. The table is shared with the page's own script."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from typing import cast

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchalong.ground.lengths import INCH
from benchalong.ground.shown import SYSTEMS, Precision, System, decimal, mixed_fraction, shown

CASES = Path(__file__).parent / "shown_cases.txt"


def cases() -> Iterator[tuple[str, str, str, str]]:
    for line in CASES.read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            exact, system, step, text = (field.strip() for field in line.split("|"))
            yield exact, system, step, text


def in_steps_of(system: str, step: str) -> Precision:
    return Precision(inch=Fraction(step)) if system == "inch" else Precision(millimetre=Fraction(step))


@pytest.mark.parametrize(("exact", "system", "step", "text"), list(cases()))
def test_as_the_table_says(exact: str, system: str, step: str, text: str) -> None:
    assert shown(Fraction(exact), cast(System, system), in_steps_of(system, step)).text == text


def test_the_table_is_long_enough_to_mean_something() -> None:
    assert len(list(cases())) >= 60


@given(st.fractions(min_value=-5000, max_value=5000, max_denominator=10**5))
def test_what_is_shown_plus_its_error_is_what_is_meant(length: Fraction) -> None:
    inches = shown(length, "inch", Precision())
    sign = -1 if inches.number.startswith("-") else 1
    read = sign * sum(Fraction(word) for word in inches.number.lstrip("-").split()) * INCH
    assert read - inches.error == length
    millimetres = shown(length, "millimetre", Precision())
    assert Fraction(millimetres.number) - millimetres.error == length


@given(st.fractions(min_value=-5000, max_value=5000, max_denominator=10**5))
def test_rounding_is_said_whenever_it_happens(length: Fraction) -> None:
    for system in SYSTEMS:
        seen = shown(length, system, Precision())
        assert seen.text.startswith("≈") == (seen.error != 0) == seen.is_rounded


@pytest.mark.parametrize(
    ("value", "text"),
    [
        ("0", "0"),
        ("1/3", "0.333333"),
        ("2/3", "0.666667"),
        ("-5/2", "-2.5"),
        ("100", "100"),
        ("1/10000000", "0"),
    ],
)
def test_decimals_have_no_trailing_zeros(value: str, text: str) -> None:
    assert decimal(Fraction(value)) == text


@pytest.mark.parametrize(
    ("value", "text"), [("3/2", "1 1/2"), ("-3/2", "-1 1/2"), ("6/8", "3/4"), ("4", "4")]
)
def test_mixed_fractions_are_in_lowest_terms(value: str, text: str) -> None:
    assert mixed_fraction(Fraction(value)) == text
