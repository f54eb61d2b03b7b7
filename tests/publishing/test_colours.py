"""A project's own colours: written right, and readable."""

from __future__ import annotations

import pytest

from benchalong.publishing.colours import ThemeColours, colour_problems, colours_css, is_colour

THEME = ThemeColours(text="#1a1a1a", quiet="#4a4a4a", paper="#ffffff", on_accent="#ffffff")


@pytest.mark.parametrize(
    ("text", "right"),
    [
        ("#7a3b1e", True),
        ("#fff", True),
        ("#FFF", True),
        ("red", False),
        ("#12345", False),
        ("#7a3b1e;", False),
    ],
)
def test_a_colour_is_three_or_six_digits(text: str, right: bool) -> None:
    assert is_colour(text) is right


def test_colours_that_can_be_read_are_no_problem() -> None:
    assert colour_problems("#7a3b1e", "#fffdf6", THEME) == ()


def test_none_at_all_are_no_problem() -> None:
    assert colour_problems("", "", THEME) == ()


def test_a_word_is_not_a_colour() -> None:
    (problem,) = colour_problems("brown", "", THEME)
    assert problem.place.path == ("project.yaml", "look", "accent")
    assert problem.message == "'brown' is not a colour"


def test_too_little_contrast_says_found_and_needed() -> None:
    (problem,) = colour_problems("#cccccc", "", THEME)
    assert (
        problem.message == "#cccccc and the paper (#ffffff) are too near to read: the contrast is 1.61 to 1"
    )
    assert problem.expected == "a contrast of at least 4.5 to 1"


def test_dark_paper_is_refused_for_the_text_on_it() -> None:
    (problem,) = colour_problems("", "#333333", THEME)
    assert problem.place.path == ("project.yaml", "look", "paper")


def test_the_sheet_holds_only_what_is_set() -> None:
    assert "--accent: #7a3b1e;" in colours_css("#7A3B1E", "")
    assert "--paper" not in colours_css("#7A3B1E", "")
    assert "{" not in colours_css("", "")
