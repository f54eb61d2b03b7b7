"""How much glue, finish and how many clamps a job takes, and what wood weighs.

Rates are common practice; each is a field of `Rates`, so that a project may say its own. Weight follows the
Wood Handbook, chapter 4. Areas in square mm, lengths in mm, volumes in mm^3, as the plan has them.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil
from typing import Final

from benchalong.ground.lengths import INCH
from benchalong.trade.species import Species

SQUARE_METRE: Final = Fraction(1_000_000)
CUBIC_METRE: Final = Fraction(1_000_000_000)


@dataclass(frozen=True)
class Rates:
    """What common practice reckons with."""

    glue: Fraction = Fraction(180)
    """Grams per square metre of joint, white or yellow glue on one face: 150 to 200."""
    squeezed_out: Fraction = Fraction(1, 3)
    """Glue on top of that, which comes out of the joint."""
    finish: Fraction = Fraction(17, 2)
    """Square metres one coat of a litre covers: varnish 8.5 to 12, a first coat of oil 6 to 8.5."""
    finish_wasted: Fraction = Fraction(1, 10)
    """Finish on top of that, left in brush and tin."""
    clamp_spacing: Fraction = Fraction(250)
    """Mm between clamps along a joint: 150 to 300 mm, 6 to 12 in."""
    lift: Fraction = Fraction(25)
    """Kilograms one person lifts alone at most; local rules differ."""

    def clamps_every(self, units: str) -> Fraction:
        """The same in a plan in inches as a whole number of them."""
        return 10 * INCH if units == "inch" else self.clamp_spacing


def glue(joint_area: Fraction, rates: Rates = Rates()) -> Fraction:
    """Grams of glue for a joint area in square mm."""
    return joint_area / SQUARE_METRE * rates.glue * (1 + rates.squeezed_out)


def finish(surface: Fraction, coats: int, rates: Rates = Rates()) -> Fraction:
    """Litres of finish for a surface in square mm."""
    return surface / SQUARE_METRE * coats / rates.finish * (1 + rates.finish_wasted)


def clamps(joint_length: Fraction, rates: Rates = Rates()) -> int:
    """Clamps along one joint of a length in mm: one for each started spacing, and one more."""
    return ceil(joint_length / rates.clamp_spacing) + 1


def gravity_from_volumetric(
    gravity: Fraction, volumetric: Fraction, *, before: Fraction, after: Fraction
) -> Fraction:
    """Specific gravity over the volume at another moisture content: equation 4-10, with the part of the
    volumetric shrinkage (percent, green to ovendry) reached at each (percent, equation 4-9)."""
    then, now = (volumetric * (1 - moisture / 30) for moisture in (before, after))
    return gravity * (100 - then) / (100 - now)


def gravity_from_green(green: Fraction, moisture: Fraction) -> Fraction:
    """Specific gravity at a moisture content in percent from the one over the green volume: equation 4-13."""
    return green / (1 - Fraction("0.265") * green * (1 - moisture / 30))


def green_from_gravity(gravity: Fraction, moisture: Fraction) -> Fraction:
    """Equation 4-13 turned round."""
    return gravity / (1 + Fraction("0.265") * gravity * (1 - moisture / 30))


def density_from(gravity: Fraction, moisture: Fraction) -> Fraction:
    """Kilograms per cubic metre of wood with its water: 1000 * G * (1 + M / 100), equation 4-14."""
    return 1000 * gravity * (1 + moisture / 100)


def density(species: Species, moisture: Fraction) -> Fraction | None:
    """Kilograms per cubic metre at a moisture content of 0 to 30 percent; None where no gravity is known."""
    gravity = gravity_at(species, moisture)
    return None if gravity is None else density_from(gravity, moisture)


def gravity_at(species: Species, moisture: Fraction) -> Fraction | None:
    """Ovendry mass over the volume at a moisture content in percent."""
    at_12, volumetric = species.gravity_12, species.volumetric
    if at_12 and volumetric:
        return gravity_from_volumetric(at_12.amount, volumetric.amount, before=Fraction(12), after=moisture)
    if at_12:
        return gravity_from_green(green_from_gravity(at_12.amount, Fraction(12)), moisture)
    if species.gravity_green:
        return gravity_from_green(species.gravity_green.amount, moisture)
    return None


def weight(volume: Fraction, density_kg_m3: Fraction) -> Fraction:
    """Kilograms of a volume in mm^3."""
    return volume / CUBIC_METRE * density_kg_m3
