"""How far a shelf or rail bends under a load, and how long it may be.

Straight beams of one rectangular section, by the textbook: Wood Handbook equation 9-2 with the constants of
its Table 9-1; the middle load on loose ends also in a public textbook of 1914 ("The Mechanical Properties of
Wood"). Shear adds under one percent to a shelf and is left out. Forces in newtons, lengths in mm, stiffness
in MPa (newtons per square mm): any set of units that agrees with itself will do.

How well a screw holds is not here: no source for it was at hand.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final, Literal, TypeAlias

from benchalong.trade.species import Species

Spread: TypeAlias = Literal["even", "middle"]
"""A load spread evenly over the span, or all of it at the middle."""
Ends: TypeAlias = Literal["resting", "fixed"]
"""Ends that lie loose on their supports, or that can't tilt at all. A shelf in dadoes is between the two,
nearer the first."""

BENDING: Final[dict[tuple[Spread, Ends], Fraction]] = {
    ("even", "resting"): Fraction(5, 384),
    ("even", "fixed"): Fraction(1, 384),
    ("middle", "resting"): Fraction(1, 48),
    ("middle", "fixed"): Fraction(1, 192),
}
"""k in: sag = k * whole load * span^3 / (stiffness * second moment)."""
GRAVITY: Final = 9.80665
"""Newtons per kilogram, exactly, by agreement (NIST SP 811)."""
LASTING: Final = Fraction(2)
"""An estimate: what stays on a solid shelf for years doubles its sag (from memory of the Wood Handbook,
chapter 5). Fibreboard and chipboard creep more."""
LASTING_BOARD: Final = Fraction(3)
"""An estimate for fibreboard and chipboard, the upper end of 2 to 3 times (common practice)."""
COMFORTABLE: Final = Fraction(1, 600)
"""Sag over span that the eye lets pass: 0.02 in per foot (common practice)."""


def second_moment(width: float, thickness: float) -> float:
    """Of a rectangle lying flat: width times thickness cubed over 12, in mm^4."""
    return width * thickness**3 / 12


def sag(
    load: float,
    span: float,
    *,
    stiffness: float,
    moment: float,
    spread: Spread = "even",
    ends: Ends = "resting",
) -> float:
    """How far the middle goes down at once, in mm: `load` is the whole load in newtons, `stiffness` in MPa,
    `moment` the second moment in mm^4."""
    return _as_float(BENDING[spread, ends]) * load * span**3 / (stiffness * moment)


def longest_span(
    load: float,
    *,
    limit: float,
    stiffness: float,
    moment: float,
    spread: Spread = "even",
    ends: Ends = "resting",
) -> float:
    """The span in mm at which sag over span comes to `limit`.

    For an even spread `load` is in newtons per mm of span, since a longer shelf carries more; for the middle
    it is in newtons.
    """
    most = limit * stiffness * moment / (_as_float(BENDING[spread, ends]) * load)
    root: float = most ** (1 / 3 if spread == "even" else 1 / 2)
    return root


def lasting(at_once: float, factor: Fraction = LASTING) -> float:
    """An estimate of the sag after years under the same load, in the unit given."""
    return at_once * _as_float(factor)


def stiffness_of(species: Species) -> float | None:
    """Modulus of elasticity in MPa, small clear wood at 12 percent moisture; None where the table has none.
    A board with knots or sloping grain has less."""
    return None if species.stiffness is None else float(species.stiffness.amount) * 1000


def newtons(kilograms: float) -> float:
    """What a mass weighs."""
    return kilograms * GRAVITY


def _as_float(constant: Fraction) -> float:
    return constant.numerator / constant.denominator
