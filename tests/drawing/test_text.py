"""Room for words and numbers."""

from __future__ import annotations

from fractions import Fraction

import pytest

from benchalong.drawing.text import NUMBER, in_lines, number_text, number_width, text_width
from benchalong.ground.lengths import INCH
from benchalong.ground.shown import Precision, System

TEXTS: list[tuple[Fraction, System, str]] = [
    (Fraction(19, 8) * INCH, "inch", "2 3/8"),
    (Fraction(19, 8) * INCH, "millimetre", "≈60.3"),
    (Fraction(60), "inch", "≈2 3/8"),
    (Fraction(60), "millimetre", "60"),
]


@pytest.mark.parametrize(("length", "system", "text"), TEXTS)
def test_number_text(length: Fraction, system: System, text: str) -> None:
    assert number_text(length, system, Precision()) == text


def test_room_is_kept_for_the_wider_system() -> None:
    assert number_width(Fraction(60), Precision()) == text_width("≈2 3/8", NUMBER)
    assert number_width(INCH, Precision()) == text_width("25.4", NUMBER)


def test_an_unknown_letter_counts_as_wide() -> None:
    assert text_width("界", 14) >= 12


def test_lines_break_at_spaces() -> None:
    assert in_lines("the sizes are true", size=12, width=70) == ["the sizes", "are true"]
    assert in_lines("unbreakable", size=12, width=10) == ["unbreakable"]
