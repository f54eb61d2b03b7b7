"""The nearest right word for a slip of the hand."""

from __future__ import annotations

import pytest

from benchalong.ground.words import nearest_words, slips

KEYS = ("what", "coats", "wait", "faces", "bare", "note")


@pytest.mark.parametrize(
    ("typed", "known", "near"),
    [
        ("stok", ("name", "stock", "note"), ("stock",)),
        ("lenght", ("length", "width"), ("length",)),
        ("Stock", ("stock", "stick"), ("stock",)),
        ("wat", KEYS, ("wait", "what")),
        ("colour", KEYS, ()),
        ("milimeter", ("inch", "millimetre"), ("millimetre",)),
        ("x", ("is", "at"), ()),
        ("s", ("is", "at"), ("is",)),
        ("", KEYS, ()),
        ("anything", (), ()),
    ],
)
def test_nearest(typed: str, known: tuple[str, ...], near: tuple[str, ...]) -> None:
    assert nearest_words(typed, known) == near


def test_what_is_still_missing_comes_first_among_the_equally_near() -> None:
    assert nearest_words("wat", KEYS, prefer=["what"]) == ("what", "wait")
    assert nearest_words("wat", KEYS, prefer=["wait"]) == ("wait", "what")


@pytest.mark.parametrize(
    ("typed", "word", "count"),
    [
        ("rail", "rail", 0),
        ("ral", "rail", 1),
        ("raill", "rail", 1),
        ("ryil", "rail", 1),
        ("rial", "rail", 1),
        ("lair", "rail", 2),
    ],
)
def test_slips_are_counted(typed: str, word: str, count: int) -> None:
    assert slips(typed, word, most=5) == slips(word, typed, most=5) == count


def test_counting_stops_where_it_no_longer_matters() -> None:
    assert slips("lair", "rail", most=1) is None
    assert slips("a" * 10_000, "rail", most=2) is None
