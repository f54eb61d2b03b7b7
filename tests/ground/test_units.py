"""Unit words, which are all that the units library ever sees."""

from __future__ import annotations

import subprocess
import sys
from fractions import Fraction
from itertools import product
from pathlib import Path
from string import ascii_letters

import pytest

from benchalong.ground.units import COMMON_UNITS, by_pint, unit_length
from conftest import ROOT


@pytest.mark.parametrize(
    ("word", "millimetres"),
    [
        ("in", "127/5"), ("inch", "127/5"), ("inches", "127/5"),
        ("ft", "1524/5"), ("foot", "1524/5"), ("feet", "1524/5"),
        ("yd", "4572/5"), ("yard", "4572/5"), ("mm", "1"), ("cm", "10"), ("dm", "100"), ("m", "1000"),
        ("millimetre", "1"), ("millimeters", "1"), ("metre", "1000"), ("thou", "127/5000"),
    ],
)  # fmt: skip
def test_words_of_length(word: str, millimetres: str) -> None:
    assert unit_length(word) == Fraction(millimetres)


@pytest.mark.parametrize("word", COMMON_UNITS)
def test_every_unit_that_messages_offer_is_one(word: str) -> None:
    assert unit_length(word) is not None
    assert unit_length(word) == by_pint(word)


@pytest.mark.parametrize(
    "word",
    [
        "", "stile", "kg", "s", "min", "hour", "degree", "acre", "litre", "pin", "din", "kin", "cft",
        "nan", "inf", "infinity", "lightyear", "nm", "km", "x",
        "in**2", "in*in", "in^2", "2in", "in in", "m/s", "__class__", "in.real", "i" * 21, "mm\n", "µm", "é",
    ],
)  # fmt: skip
def test_anything_else_is_none(word: str) -> None:
    assert unit_length(word) is None


@pytest.mark.parametrize("letters", ["abcdefghijklm", "nopqrstuvwxyz", "NAIFMETRinfe"])
def test_any_two_letters_are_a_unit_or_none(letters: str) -> None:
    for one, other in product(letters, ascii_letters):
        length = unit_length(one + other)
        assert length is None or 0 < length <= 100_000


def run(code: str, **environment: str) -> str:
    """What a fresh Python prints."""
    env = {"PYTHONPATH": str(ROOT / "generator"), **environment}
    done = subprocess.run([sys.executable, "-c", code], env=env, capture_output=True, text=True, check=True)
    return done.stdout.strip()


LOOK_UP = "from benchalong.ground.units import by_pint; print(by_pint('in'), by_pint('ft'))"


def test_the_cache_changes_nothing(tmp_path: Path) -> None:
    first = run(LOOK_UP, XDG_CACHE_HOME=str(tmp_path))
    assert any(tmp_path.rglob("*"))
    assert run(LOOK_UP, XDG_CACHE_HOME=str(tmp_path)) == first == "127/5 1524/5"


def test_a_spoilt_cache_is_passed_over(tmp_path: Path) -> None:
    run(LOOK_UP, XDG_CACHE_HOME=str(tmp_path))
    for kept in tmp_path.rglob("*.*"):
        kept.write_bytes(b"spoilt")
    assert run(LOOK_UP, XDG_CACHE_HOME=str(tmp_path)) == "127/5 1524/5"


def test_where_nothing_can_be_written_it_goes_without(tmp_path: Path) -> None:
    blocked = tmp_path / "file"
    blocked.write_text("")
    assert run(LOOK_UP, XDG_CACHE_HOME=str(blocked)) == "127/5 1524/5"


def test_the_library_is_not_loaded_before_an_uncommon_unit_is_met() -> None:
    code = (
        "import sys, benchalong.plan.resolve; from benchalong.ground.units import unit_length;"
        "print([(unit_length(word), 'pint' in sys.modules) for word in ('mm', 'decimetre')])"
    )
    assert run(code) == "[(Fraction(1, 1), False), (Fraction(100, 1), True)]"
