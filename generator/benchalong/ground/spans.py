"""How long a session at the bench lasts, in an author's own words: `3 hours`, `90 minutes`, `an evening`."""

from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction

_NUMBER = r"(?:(\d{1,3})\s+)?(\d{1,4}(?:\.\d{1,2})?|\d{1,2}/[1-9]\d?)"
_PLAIN = re.compile(rf"{_NUMBER}\s*(h|hours?|min|minutes?)\Z")
_BOTH = re.compile(r"(\d{1,2})\s*(?:h|hours?)\s*(?:and\s+)?(\d{1,2})\s*(?:min|minutes?)\Z")
USUAL: Mapping[str, int] = {
    "an hour": 60, "half an hour": 30, "an evening": 180, "a morning": 240, "an afternoon": 240,
    "half a day": 240, "a day": 480,
}  # fmt: skip
"""Minutes. *Common practice, no source.*"""
SHORTEST, LONGEST = 15, 16 * 60
"""Minutes; anything else is a slip."""


def session_minutes(text: str) -> Fraction | None:
    """Minutes; None for what isn't a length of time a person works at one go."""
    words = " ".join(text.lower().split())
    found = Fraction(USUAL[words]) if words in USUAL else _typed(words)
    return found if found is not None and SHORTEST <= found <= LONGEST else None


def _typed(words: str) -> Fraction | None:
    both = _BOTH.match(words)
    if both:
        return Fraction(int(both[1]) * 60 + int(both[2]))
    plain = _PLAIN.match(words)
    if not plain or (plain[1] and "/" not in plain[2]):
        return None
    number = Fraction(plain[2]) + int(plain[1] or 0)
    return number * 60 if plain[3].startswith("h") else number
