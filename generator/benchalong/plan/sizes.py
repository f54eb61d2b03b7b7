"""The named sizes, each with formula, value and what it follows from; and how finely lengths are shown."""

from __future__ import annotations

from fractions import Fraction

from benchalong.ground.lengths import INCH, Length
from benchalong.ground.shown import Precision
from benchalong.plan.draft import Draft
from benchalong.plan.formula import parse
from benchalong.plan.model import Size
from benchalong.plan.reckoning import Reckoning
from benchalong.reading.written import PROJECT_FILE

DEFAULT_STEPS: dict[str, tuple[str, str]] = {
    "inch": ("1/32 in", "0.1 mm"),
    "millimetre": ("0.5 mm", "1/32 in"),
}
"""By the project's units: the step in its own system, the step in the other."""


def settle_precision(draft: Draft) -> Draft:
    """Adds `precision`."""
    sums = Reckoning(draft)
    project = draft.written
    own, other = DEFAULT_STEPS[project.units]
    steps = (
        _step(project.nearest or own, "nearest", sums, is_inch=project.units == "inch"),
        _step(project.nearest_other or other, "nearest_other", sums, is_inch=project.units != "inch"),
    )
    if steps[0] is None or steps[1] is None:
        return sums.done()
    inch, millimetre = steps if project.units == "inch" else reversed(steps)
    return sums.done(precision=Precision(inch or Fraction(1), millimetre or Fraction(1)))


def _step(text: str, key: str, sums: Reckoning, *, is_inch: bool) -> Length | None:
    length = sums.length(text, (PROJECT_FILE, key))
    if length is None:
        return None
    if is_inch and _is_binary_fraction(length / INCH):
        return length
    if not is_inch and length in (Fraction(1, 10), Fraction(1, 2), Fraction(1)):
        return length
    expected = "1/8 in, 1/16 in, 1/32 in or 1/64 in" if is_inch else "0.1 mm, 0.5 mm or 1 mm"
    sums.say((PROJECT_FILE, key), f"lengths can't be shown to the nearest {text}", expected)
    return None


def _is_binary_fraction(inches: Fraction) -> bool:
    """1, 1/2, 1/4 … 1/64."""
    return inches.numerator == 1 and inches.denominator in (1, 2, 4, 8, 16, 32, 64)


def take_sizes(draft: Draft) -> Draft:
    """Adds `sizes`; those that could not be worked out are left out, and have been reported."""
    sizes = {}
    for name, written in draft.written.sizes.items():
        known = draft.names[name]
        if known.value is not None:
            follows = tuple(sorted(known.follows))
            sizes[name] = Size(
                name, written.formula, parse(written.formula), known.value, follows, written.note
            )
    return Reckoning(draft).done(sizes=sizes)
