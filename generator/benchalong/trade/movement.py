"""How wood grows and shrinks across the grain as its moisture changes.

Two equations of the Wood Handbook, chapter 13. Between 6 and 14 percent moisture the dimensional change
coefficient (equation 13-2); outside, the equation that works from shrinkage (13-3). Moisture contents are
in percent (8 means 8 percent of the ovendry mass); sizes in mm, or in whatever unit they are given in: a
change comes out in the same. Everything is exact when what goes in is.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Final, Literal, TypeAlias

from benchalong.trade.moisture import OutOfRange
from benchalong.trade.species import Species, Standing, Value

Sawn: TypeAlias = Literal["flat", "quarter", "rift"]
Rings: TypeAlias = Literal["radial", "tangential"]
Equation: TypeAlias = Literal["coefficient", "shrinkage"]

COEFFICIENT_FROM: Final = Fraction(6)
COEFFICIENT_TO: Final = Fraction(14)
"""Percent: the range that equation 13-2 is good for."""
WETTEST: Final = Fraction(30)
"""Percent: neither equation is to be used above."""
ALONG: Final = Fraction(2, 1000)
"""Green to ovendry, along the grain: 0.1 to 0.2 percent for sound wood (Wood Handbook, chapter 4; a wood
council's page). The larger is taken."""
PASSED_OVER: Final = frozenset({"California red oak"})
"""Whose coefficients are so far below the wood's own shrinkage that they are not used for it."""


@dataclass(frozen=True)
class Change:
    """How much a size changes, as a share of what it is at the first moisture content."""

    share: Fraction
    by: Equation
    standing: Standing
    """Of the value it was worked out from; the weaker one for rift-sawn wood, which takes two."""


def by_coefficient(size: Fraction, coefficient: Fraction, *, before: Fraction, after: Fraction) -> Fraction:
    """Change of a size by equation 13-2: size times coefficient times the change in moisture, in percent."""
    return size * coefficient * (after - before)


def by_shrinkage(
    size: Fraction, shrinkage: Fraction, *, before: Fraction, after: Fraction, starts_at: Fraction
) -> Fraction:
    """Change of a size by equation 13-3: size * (M1 - M0) / (30 * 100 / S - 30 + M0), with the moisture
    content at which shrinking starts in place of 30 where the wood's own is lower.

    `shrinkage` is in percent from green to ovendry, the moisture contents in percent.
    """
    return size * (after - before) / (starts_at * 100 / shrinkage - starts_at + before)


def coefficient_from(shrinkage: Fraction, starts_at: Fraction = WETTEST) -> Fraction:
    """The coefficient that follows from a shrinkage in percent: equation 13-3 about 10 percent moisture."""
    return by_shrinkage(Fraction(1), shrinkage, before=Fraction(10), after=Fraction(11), starts_at=starts_at)


def shrinkage_from(coefficient: Fraction, starts_at: Fraction = WETTEST) -> Fraction:
    """The same turned round: the shrinkage in percent that a coefficient follows from."""
    return starts_at * 100 * coefficient / (1 + coefficient * (starts_at - 10))


def across_width(species: Species, sawn: Sawn, *, before: Fraction, after: Fraction) -> Change | None:
    """Change of a board's width. None where the table has nothing to go by; OutOfRange outside 0 to 30 %."""
    return _change(species, WIDTH[sawn], before=before, after=after)


def across_thickness(species: Species, sawn: Sawn, *, before: Fraction, after: Fraction) -> Change | None:
    """Change of a board's thickness, where the rings lie the other way round than in its width."""
    return _change(species, THICKNESS[sawn], before=before, after=after)


WIDTH: Final[dict[Sawn, tuple[Rings, ...]]] = {
    "flat": ("tangential",),
    "quarter": ("radial",),
    "rift": ("radial", "tangential"),
}
THICKNESS: Final[dict[Sawn, tuple[Rings, ...]]] = WIDTH | {"flat": ("radial",), "quarter": ("tangential",)}
"""Which way the rings lie. In rift-sawn wood they stand near 45 degrees, which gives the mean of the two."""


def along_grain(length: Fraction, *, before: Fraction, after: Fraction) -> Fraction:
    """The most a length changes along the grain: the published 0.2 percent shared out evenly over 30 percent
    of moisture. Small enough that a length is treated as fixed."""
    _check(before, after)
    return length * ALONG * (after - before) / WETTEST


def _change(
    species: Species, rings: tuple[Rings, ...], *, before: Fraction, after: Fraction
) -> Change | None:
    _check(before, after)
    changes = [_one(species, way, before, after) for way in rings]
    known = [change for change in changes if change is not None]
    if len(known) < len(changes):
        return None
    share = sum((change.share for change in known), Fraction(0)) / len(known)
    weakest = max(known, key=lambda change: _WEAK.index(change.standing))
    return Change(share, weakest.by, weakest.standing)


_WEAK: Final[tuple[Standing, ...]] = ("stated", "seen", "group value", "memory")


def _one(species: Species, way: Rings, before: Fraction, after: Fraction) -> Change | None:
    """13-2 where both moisture contents lie within its range, else 13-3; but never less than 13-2 gives for
    the part of the way within its range, or a borrowed coefficient would make a wider range move less."""
    coefficient, shrinkage = _values(species, way)
    if coefficient is None and shrinkage is None:
        return None
    printed = coefficient and Change(
        by_coefficient(Fraction(1), coefficient.amount, before=_inside(before), after=_inside(after)),
        "coefficient",
        coefficient.standing,
    )
    if printed and _inside(before) == before and _inside(after) == after:
        return printed
    other = _by_shrinkage(species, coefficient, shrinkage, before, after)
    return max((printed, other), key=lambda change: abs(change.share)) if printed else other


def _values(species: Species, way: Rings) -> tuple[Value | None, Value | None]:
    coefficient = species.c_radial if way == "radial" else species.c_tangential
    shrinkage = species.radial if way == "radial" else species.tangential
    return (None if species.c_of in PASSED_OVER else coefficient), shrinkage


def _by_shrinkage(
    species: Species, coefficient: Value | None, shrinkage: Value | None, before: Fraction, after: Fraction
) -> Change:
    """Where only a coefficient is known, the shrinkage it follows from stands in."""
    value = shrinkage or coefficient
    assert value is not None
    percent = value.amount if shrinkage else shrinkage_from(value.amount, species.starts_at)
    dry, wet = (min(moisture, species.starts_at) for moisture in (before, after))
    share = by_shrinkage(Fraction(1), percent, before=dry, after=wet, starts_at=species.starts_at)
    return Change(share, "shrinkage", value.standing)


def _inside(moisture: Fraction) -> Fraction:
    return min(max(moisture, COEFFICIENT_FROM), COEFFICIENT_TO)


def _check(*moistures: Fraction) -> None:
    for moisture in moistures:
        if not 0 <= moisture <= WETTEST:
            raise OutOfRange(f"a moisture content of {float(moisture):g} % is outside 0 to 30 %")
