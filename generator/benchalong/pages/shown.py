"""Lengths on a page: shown in the author's system, with the exact length beside for the page's own script.

A plan says the same few hundred lengths over and over, so each is worked out once.
"""

from __future__ import annotations

from fractions import Fraction

from markupsafe import Markup

from benchalong.ground.amounts import area_text, volume_text, weight_text
from benchalong.ground.lengths import INCH, Length
from benchalong.ground.shown import DRILLS, SYSTEMS, Precision, System, decimal, mixed_fraction, shown

FINEST_FRACTION = 1024
"""With a larger number below the line a fraction of an inch says nothing to anyone; a decimal does."""


class Shows:
    """Shows lengths in one system; keeps what it has shown."""

    def __init__(self, units: System, precision: Precision) -> None:
        self.units: System = units
        self.precision = precision
        self._sizes: dict[Length, Markup] = {}
        self._bare: dict[Length, Markup] = {}
        self._roundings: dict[Length, Markup] = {}

    def size(self, length: Length) -> Markup:
        """`<data class="size" value="305/8">1 1/2 in</data>`: the value is exact, in mm."""
        found = self._sizes.get(length)
        if found is None:
            found = self._sizes[length] = _size(length, self.text(length))
        return found

    def bare(self, length: Length) -> Markup:
        """The number alone, for a column whose head names the unit."""
        found = self._bare.get(length)
        if found is None:
            seen = shown(length, self.units, self.precision)
            text = f"{'≈' if seen.is_rounded else ''}{seen.number}"
            found = self._bare[length] = _size(length, text, "size bare")
        return found

    def hole(self, length: Length) -> Markup:
        """What a drill or a calliper is set by: in 64ths of an inch, or tenths of a millimetre."""
        return _size(length, shown(length, self.units, DRILLS).text, "size drill")

    def hole_rounding(self, length: Length) -> Markup:
        """The same as `rounding`, for a hole."""
        return _roundings(length, DRILLS)

    def weight(self, kilograms: Fraction) -> Markup:
        """`16.6 kg` or `36.5 lb`, as the page's system asks; both stand there, and one is seen."""
        return either(weight_text(kilograms, "inch"), weight_text(kilograms, "millimetre"))

    def volume(self, litres: Fraction) -> Markup:
        """`1.4 litres` or `1.4 quarts`, rounded up."""
        return either(volume_text(litres, "inch"), volume_text(litres, "millimetre"))

    def area(self, square_mm: Fraction) -> Markup:
        return either(area_text(square_mm, "inch"), area_text(square_mm, "millimetre"))

    def text(self, length: Length) -> str:
        """The same as plain text."""
        return shown(length, self.units, self.precision).text

    def fine(self, length: Length) -> Markup:
        """A small length that matters more finely than the plan's sizes are shown, such as play: where that
        would round it, to a thousandth of an inch or a hundredth of a millimetre."""
        if not any(shown(length, system, self.precision).is_rounded for system in SYSTEMS):
            return self.size(length)
        texts = {system: _fine(length, system, self.precision) for system in SYSTEMS}
        return either(texts["inch"], texts["millimetre"])

    def rounding(self, length: Length) -> Markup:
        """What rounding does to this length, for each system it is rounded in; empty where nothing is lost.

        Both systems' sentences are there; a style shows the one that belongs to the system on the page.
        """
        found = self._roundings.get(length)
        if found is None:
            found = self._roundings[length] = _roundings(length, self.precision)
        return found


def either(inch: str, millimetre: str) -> Markup:
    return Markup('<span class="only-inch">{}</span><span class="only-millimetre">{}</span>').format(
        inch, millimetre
    )


def _size(length: Length, text: str, classes: str = "size") -> Markup:
    return Markup('<data class="{}" value="{}">{}</data>').format(classes, str(length), text)


def _fine(length: Length, system: System, precision: Precision) -> str:
    seen = shown(length, system, precision)
    return small_error(length, system) if seen.is_rounded else seen.text


def _roundings(length: Length, precision: Precision) -> Markup:
    said = [_rounding(length, system, precision) for system in SYSTEMS]
    return Markup(" ").join(part for part in said if part)


def _rounding(length: Length, system: System, precision: Precision) -> Markup:
    seen = shown(length, system, precision)
    if not seen.is_rounded:
        return Markup("")
    error = abs(seen.error)
    way = "over" if seen.error > 0 else "under"
    return Markup('<span class="only-{}">{}. The size shown is {} {}.</span>').format(
        system, exactly(length, system).capitalize(), small_error(error, system), way
    )


def exactly(length: Length, system: System) -> str:
    """The length as exactly as it can be read: a short fraction of an inch, or a decimal.

    `exactly 4 6/7 in`, or `about 8.4667 mm` where no decimal says it all.
    """
    if system == "millimetre":
        return _decimal_text(length, "mm", places=4)
    inches = length / INCH
    if inches.denominator <= FINEST_FRACTION:
        return f"exactly {mixed_fraction(inches)} in"
    return _decimal_text(inches, "in", places=5)


def small_error(error: Length, system: System) -> str:
    """An error above zero, to a thousandth of an inch or a hundredth of a millimetre."""
    value, places, unit = (error / INCH, 3, "in") if system == "inch" else (error, 2, "mm")
    text = decimal(value, places)
    return f"less than {decimal(Fraction(1, 10**places), places)} {unit}" if text == "0" else f"{text} {unit}"


def _decimal_text(value: Fraction, unit: str, *, places: int) -> str:
    text = decimal(value, places)
    return f"{'exactly' if Fraction(text) == value else 'about'} {text} {unit}"
