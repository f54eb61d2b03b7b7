"""What a thing costs: `9.80 per board foot`, `42 per sheet`, `6 each`."""

from __future__ import annotations

import re
from fractions import Fraction

from benchalong.ground.marks import Path
from benchalong.ground.words import nearest_words
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.rough import Price

PER = ("board foot", "sheet", "foot", "metre", "square metre", "square foot", "cubic metre")
_SAID = {"each": "each"} | {f"per {what}": what for what in PER}
_AMOUNT = re.compile(r"(?P<amount>[0-9]{1,9}(?:\.[0-9]{1,4})?)(?P<rest>.*)")
_LESS = re.compile(r"[-\u2212\u2013] ?[0-9]")
_EXPECTED = "an amount and what it is for, such as 9.80 per board foot, 42 per sheet or 6 each"


def price(text: str, path: Path, sums: Reckoning) -> Price | None:
    """The price meant; None when there is none or it can't be read, which is reported."""
    if not text.strip():
        return None
    match = _AMOUNT.fullmatch(text.strip())
    if match is None:
        is_less = _LESS.match(text.strip()) is not None
        sums.say(
            path, "a price can't be below nothing" if is_less else "a price begins with its amount", _EXPECTED
        )
        return None
    per = " ".join(match["rest"].split())
    if per not in _SAID:
        meant = nearest_words(per.removeprefix("per "), (*PER, "each"))
        sums.say(path, f"this price does not say what it is for: {text.strip()}", _EXPECTED, meant)
        return None
    return Price(Fraction(match["amount"]), _SAID[per])
