"""Numbers with units that are no lengths: shares in percent, temperatures, weights."""

from __future__ import annotations

import re
from fractions import Fraction

from benchalong.ground.lengths import FOOT, METRE, Length
from benchalong.ground.spans import session_minutes
from benchalong.reading.written import Burden

_NUMBER = r"(\d{1,6}(?:\.\d{1,6})?)"
_ALONE = re.compile(rf"{_NUMBER}\Z")
_PERCENT = re.compile(rf"{_NUMBER}\s*%\Z")
_PERCENTS = re.compile(rf"{_NUMBER}\s*%?\s+to\s+{_NUMBER}\s*%\Z")
_TEMPERATURE = re.compile(rf"(-?){_NUMBER}\s*°?\s*([CF])\Z")
_BURDEN = re.compile(rf"{_NUMBER}\s*(kg|g|lb|oz)(?:\s+per\s+(m|metre|ft|foot))?\Z")
_KILOGRAMS = {
    "kg": Fraction(1),
    "g": Fraction(1, 1000),
    "lb": Fraction("0.45359237"),
    "oz": Fraction("0.45359237") / 16,
}
"""Exactly, by agreement (NIST SP 811, appendix B.8)."""
_EACH: dict[str, Length] = {"m": METRE, "metre": METRE, "ft": FOOT, "foot": FOOT}


def number(text: str) -> Fraction | None:
    """`0.63`."""
    found = _ALONE.match(text)
    return Fraction(found[1]) if found else None


def session(text: str) -> str | None:
    """`3 hours`, `an evening`: as typed, where it says how long."""
    return None if session_minutes(text) is None else text


def pace(text: str) -> Fraction | None:
    """`1.5`, above zero."""
    return number(text) or None


def percent(text: str) -> Fraction | None:
    """`45 %`, in percent."""
    found = _PERCENT.match(text)
    return Fraction(found[1]) if found else None


def percents(text: str) -> tuple[Fraction, Fraction] | None:
    """`30 % to 60 %`, in percent, the smaller first; both must be given."""
    found = _PERCENTS.match(text)
    if not found:
        return None
    low, high = sorted((Fraction(found[1]), Fraction(found[2])))
    return low, high


def celsius(text: str) -> Fraction | None:
    """`20 C` or `68 F`, in degrees Celsius."""
    found = _TEMPERATURE.match(text)
    if not found:
        return None
    value = Fraction(found[1] + found[2])
    return value if found[3] == "C" else (value - 32) * Fraction(5, 9)


def burden(text: str) -> Burden | None:
    """`20 kg`, `25 lb per ft`."""
    found = _BURDEN.match(text)
    if not found:
        return None
    return Burden(Fraction(found[1]) * _KILOGRAMS[found[2]], _EACH[found[3]] if found[3] else None)
