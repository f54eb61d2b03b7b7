"""Boards and softwood by our own arithmetic."""

from __future__ import annotations

from fractions import Fraction

import pytest

from benchalong.ground.lengths import FOOT, INCH, Length
from benchalong.trade.boards import from_leaf, strips_from, surface_measure, tally
from benchalong.trade.sizes import trade_size
from benchalong.trade.waste import BY_GRADE, GRADES, waste


@pytest.mark.parametrize(
    ("quarters", "width", "feet", "surface", "tallied"),
    [
        (8, "13/2", 8, "13/3", 8),  # surface measure 4.33 goes to 4
        (5, "29/4", 10, "145/24", "15/2"),
        (6, "19/2", 12, "19/2", 15),  # an exact half goes up here; down it would be 13.5
        (4, "6", "17/2", "4", 4),  # the length down to the whole foot
    ],
)
def test_a_tally_rounds_each_board(
    quarters: int, width: str, feet: str | int, surface: str, tallied: str | int
) -> None:
    wide, long = Fraction(width) * INCH, Fraction(feet) * FOOT
    assert surface_measure(wide, long) == Fraction(surface)
    assert tally(Fraction(quarters), wide, long) == Fraction(tallied)


@pytest.mark.parametrize(
    ("width", "strip", "kerf", "number"),
    [
        ("2440", "300", "3.2", 8),
        ("1220", "300", "3.2", 4),
        ("1219.2", "300", "3.2", 4),
        ("100", "101", "3", 0),
    ],
)
def test_strips_from_a_width(width: str, strip: str, kerf: str, number: int) -> None:
    assert strips_from(Length(width), Length(strip), Length(kerf)) == number


def test_six_quarters_into_two() -> None:
    """1 1/2 less a kerf of 1/16, halved, less 3/32 off each of its faces."""
    left = from_leaf(Fraction(3, 2) * INCH, 2, INCH / 16, 3 * INCH / 32)
    assert left == Fraction(17, 32) * INCH


@pytest.mark.parametrize(
    ("text", "called", "inches"),
    [
        ("4/4", "4/4", "1"),
        ("6/4", "6/4", "3/2"),
        ("3/4 in", "3/4 in", "3/4"),
        ("1 1/2 in", "1 1/2 in", "3/2"),
    ],
)
def test_trade_sizes(text: str, called: str, inches: str) -> None:
    found = trade_size(text)
    assert found is not None
    assert (found.called, found.thickness) == (called, Fraction(inches) * INCH)


def test_a_sawn_thickness_is_its_own() -> None:
    found = trade_size("27 mm")
    assert found is not None
    assert found.thickness == 27


@pytest.mark.parametrize("text", ["", "thick", "4/0", "1x13", "0/4", "1/0 in", "1 x", "four quarters"])
def test_what_is_no_trade_size(text: str) -> None:
    assert trade_size(text) is None


def test_waste_is_the_authors_then_the_grades_then_the_species() -> None:
    assert waste(kind="board", species="black cherry", grade="FAS", said=Fraction(1, 5)).added == Fraction(
        1, 5
    )
    assert waste(kind="board", species="black cherry", grade="FAS").added == Fraction(15, 100)
    assert waste(kind="board", species="black cherry").added == Fraction(30, 100)
    assert waste(kind="board", species="white oak", sawn="quarter").added == Fraction(30, 100)
    assert waste(kind="board", species="lilac").added == Fraction(30, 100)
    assert waste(kind="sheet").added == Fraction(125, 1000)
    assert waste(kind="turned").added == 0
    assert set(BY_GRADE) == set(GRADES)


def test_waste_is_added_and_not_part_of_what_is_bought() -> None:
    """10 board feet and 25 % on top make 12.5; 25 % of the purchase lost would make 13.3."""
    assert 10 * (1 + waste(kind="board", said=Fraction(1, 4)).added) == Fraction(25, 2)
