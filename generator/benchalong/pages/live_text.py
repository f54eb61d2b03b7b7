"""A message of the plan check with its lengths live, so that it reads in either system.

A message is plain text in the author's units. A length in it that is shown unrounded says itself exactly;
one marked as rounded is looked up among the numbers the finding names, and is shown as finely as it is told.
What an author typed in the other system stays as typed.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from fractions import Fraction

from markupsafe import Markup, escape

from benchalong.ground.lengths import INCH, MILLIMETRE, Length
from benchalong.ground.shown import System
from benchalong.pages.shown import Shows
from benchalong.workings.telling import finer_text

UNITS: Mapping[System, str] = {"inch": "in", "millimetre": "mm"}
SHOWN = re.compile(
    r"(?<![\w./-])(?P<rounded>≈ ?)?(?P<number>[0-9]+ [0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]+(?:\.[0-9]+)?)"
    r" (?P<unit>in|mm)(?![\w/])"
)


def live(text: str, shows: Shows, numbers: Iterable[Length] = ()) -> Markup:
    """The text with a live size for each length in it that can be told for certain."""
    numbers = tuple(numbers)
    known = {shows.text(length): shows.size(length) for length in numbers}
    finely = {finer_text(length, shows.units, shows.precision): shows.fine(length) for length in numbers}
    found, end = Markup(""), 0
    for match in SHOWN.finditer(text):
        is_ours = match["unit"] == UNITS[shows.units]
        exact = _exactly(match) if is_ours else None
        said = (
            known.get(match[0]) or finely.get(match[0]) or (shows.size(exact) if exact is not None else None)
        )
        if said is not None:
            found += escape(text[end : match.start()]) + said
            end = match.end()
    return found + escape(text[end:])


def _exactly(match: re.Match[str]) -> Length | None:
    """None where the number is rounded, or where `in` may be no unit: `2 in the case`."""
    number, is_inch = match["number"], match["unit"] == "in"
    if match["rounded"] or (is_inch and "/" not in number):
        return None
    try:
        return sum(map(Fraction, number.split()), start=Fraction(0)) * (INCH if is_inch else MILLIMETRE)
    except ZeroDivisionError:
        return None
