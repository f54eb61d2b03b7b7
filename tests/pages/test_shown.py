"""How pages show sizes, and say what rounding did."""

from __future__ import annotations

from fractions import Fraction

import pytest

from benchalong.ground.lengths import INCH, Length
from benchalong.ground.shown import Precision, System
from benchalong.pages.makings import duration, marks_in_short
from benchalong.pages.prose import plain
from benchalong.pages.shown import Shows, exactly, small_error

SHOWS = Shows("inch", Precision())


def test_the_exact_length_stands_beside_the_shown_one() -> None:
    assert SHOWS.size(INCH / 3) == '<data class="size" value="127/15">≈ 11/32 in</data>'
    assert SHOWS.bare(INCH / 3) == '<data class="size bare" value="127/15">≈11/32</data>'


def test_rounding_is_said_for_each_system_it_happens_in() -> None:
    said = SHOWS.rounding(INCH / 3)
    assert '<span class="only-inch">Exactly 1/3 in. The size shown is 0.01 in over.</span>' in said
    assert '<span class="only-millimetre">About 8.4667 mm. The size shown is 0.03 mm over.</span>' in said
    assert SHOWS.rounding(Fraction(127)) == ""
    assert "only-inch" not in SHOWS.rounding(INCH * 3 / 4)


EXACT: list[tuple[Length, System, str]] = [
    (INCH * 31 / 7, "inch", "exactly 4 3/7 in"),
    (Fraction(1, 3), "inch", "exactly 5/381 in"),
    (Fraction(1001, 997), "inch", "about 0.03953 in"),
    (Fraction(241, 4), "millimetre", "exactly 60.25 mm"),
    (Fraction(1, 3), "millimetre", "about 0.3333 mm"),
]


@pytest.mark.parametrize(("length", "system", "text"), EXACT)
def test_exactly(length: Length, system: System, text: str) -> None:
    assert exactly(length, system) == text


ERRORS: list[tuple[Length, System, str]] = [
    (INCH / 64, "inch", "0.016 in"),
    (INCH / 10000, "inch", "less than 0.001 in"),
    (Fraction(1, 20), "millimetre", "0.05 mm"),
    (Fraction(1, 1000), "millimetre", "less than 0.01 mm"),
]


@pytest.mark.parametrize(("error", "system", "text"), ERRORS)
def test_small_errors(error: Length, system: System, text: str) -> None:
    assert small_error(error, system) == text


@pytest.mark.parametrize(
    ("minutes", "text"),
    [(None, ""), (0, "0 min"), (35, "35 min"), (60, "1 h"), (95, "1 h 35 min"), (1440, "24 h")],
)
def test_durations(minutes: int | None, text: str) -> None:
    assert duration(minutes) == text


def test_many_marks_are_cut_short() -> None:
    assert marks_in_short(("A", "B")) == "A, B"
    assert marks_in_short(tuple("ABCDEFGH")) == "A, B, C, D, E, F and 2 more"


def test_rounding_reads_as_a_sentence() -> None:
    assert plain(SHOWS.rounding(INCH / 64)).startswith("Exactly 1/64 in. The size shown is 0.016 in over.")
