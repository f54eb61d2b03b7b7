"""Words for units of length, by pint, and nothing but words: no formula ever reaches it.

The library keeps exact fractions, and reads its definitions from a cache folder where one can be written (a
twentieth of the time). It takes longer to load than most plans to read, so the units that woodworkers type
stand here too, checked against it by a test, and it is loaded when another is met.
"""

from __future__ import annotations

import os
import re
from collections.abc import Mapping
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

from benchalong.ground.lengths import FOOT, INCH, METRE, MILLIMETRE, Length

if TYPE_CHECKING:
    from pint import UnitRegistry

COMMON: Mapping[str, Length] = {
    **dict.fromkeys(("in", "inch", "inches"), INCH),
    **dict.fromkeys(("ft", "foot", "feet"), FOOT),
    **dict.fromkeys(("yd", "yard", "yards"), 3 * FOOT),
    "mm": MILLIMETRE, "cm": METRE / 100, "dm": METRE / 10, "m": METRE,
    **dict.fromkeys(("millimetre", "millimetres"), MILLIMETRE),
    **dict.fromkeys(("centimetre", "centimetres"), METRE / 100),
    **dict.fromkeys(("metre", "metres"), METRE),
    "thou": INCH / 1000,
}  # fmt: skip
COMMON_UNITS = tuple(COMMON)
"""The units a woodworker types, for messages; every other unit of length that has a word is read as well."""

SMALLEST, GREATEST = Fraction(1, 1000), Fraction(100_000)
"""In mm. Beyond these a word is likelier a slip than a unit: `pin` would be a trillionth of an inch."""

_WORD = re.compile(r"[A-Za-z]{1,20}")


@cache
def unit_length(word: str) -> Length | None:
    """How long one of the unit is, exactly; None for what is no unit of length."""
    if word in COMMON:
        return COMMON[word]
    return by_pint(word) if _WORD.fullmatch(word) else None


def by_pint(word: str) -> Length | None:
    """The same, for a word of letters, as the library says it."""
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
