"""Words for units of length, by pint, and nothing but words: no formula ever reaches it.

The library is loaded when the first unit is met, keeps exact fractions, and reads its definitions from
a cache folder where one can be written (a twentieth of the time).
"""

from __future__ import annotations

import os
import re
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

from benchalong.ground.lengths import Length

if TYPE_CHECKING:
    from pint import UnitRegistry

COMMON_UNITS = (
    "in", "inch", "inches", "ft", "foot", "feet", "yd", "yard", "yards", "mm", "cm", "dm", "m",
    "millimetre", "millimetres", "centimetre", "centimetres", "metre", "metres", "thou",
)  # fmt: skip
"""The units a woodworker types, for messages; every other unit of length that has a word is read as well."""

SMALLEST, GREATEST = Fraction(1, 1000), Fraction(100_000)
"""In mm. Beyond these a word is likelier a slip than a unit: `pin` would be a trillionth of an inch."""

_WORD = re.compile(r"[A-Za-z]{1,20}")


@cache
def unit_length(word: str) -> Length | None:
    """How long one of the unit is, exactly; None for what is no unit of length."""
    return _by_pint(word) if _WORD.fullmatch(word) else None


def _by_pint(word: str) -> Length | None:
    from pint.errors import DefinitionSyntaxError, UndefinedUnitError

    registry = _registry()
    try:
        unit = registry.parse_units(word)
    except (UndefinedUnitError, DefinitionSyntaxError, ValueError):  # `nan` and `inf` are read as numbers
        return None
    if unit.dimensionality != {"[length]": 1} or not _is_in_use(word, registry):
        return None
    length = registry.Quantity(Fraction(1), unit).to("millimetre").magnitude
    return length if isinstance(length, Fraction) and SMALLEST <= length <= GREATEST else None


def _is_in_use(word: str, registry: UnitRegistry[Fraction]) -> bool:
    """Only metres come in tens and thousands: `din` is a slip for `in`, not ten of them."""
    return any(not prefix or name == "meter" for prefix, name, _ in registry.parse_unit_name(word))


@cache
def _registry() -> UnitRegistry[Fraction]:
    from pint import UnitRegistry

    try:
        return UnitRegistry(non_int_type=Fraction, cache_folder=_cache_folder())
    except Exception:  # a spoilt cache may fail in any way; without one there is only time to lose
        return UnitRegistry(non_int_type=Fraction)


def _cache_folder() -> Path | None:
    """Where definitions may be kept between runs; None where nothing can be written."""
    base = os.environ.get("XDG_CACHE_HOME") or os.path.join(os.path.expanduser("~"), ".cache")
    folder = Path(base) / "benchalong" / "units"
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError:
        return None
    return folder if os.access(folder, os.W_OK) else None
