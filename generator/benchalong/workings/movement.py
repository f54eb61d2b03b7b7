"""How much does every part grow and shrink across the grain between the driest and the dampest it will see?

Changes are given to a hundredth of a millimetre: the tables carry no more.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Protocol, cast

from benchalong.ground.lengths import Length, to_nearest
from benchalong.ground.problems import Finding
from benchalong.plan.model import Part, PartId, Plan, Stock
from benchalong.plan.moistures import Moistures
from benchalong.trade.movement import (
    Change,
    Equation,
    Sawn,
    across_thickness,
    across_width,
    along_grain,
)
from benchalong.trade.species import Species, Standing
from benchalong.workings.climate import CLIMATE, Climate
from benchalong.workings.woods import WOODS, Woods
from benchalong.workings.working import Worked, Working

STEP = Length(1, 100)
SLIGHT = Length(1, 2)
"""Mm between driest and dampest, under which there is nothing to allow for."""
ASSUMED_SAWN: Sawn = "flat"
"""Where the stock doesn't say how it was sawn: flat-sawn moves the most."""


@dataclass(frozen=True)
class Shares:
    """What a size changes by over the year, as a share of what it is when it is worked; exact."""

    to_driest: Fraction
    """Below zero where it shrinks."""
    to_dampest: Fraction

    @property
    def swing(self) -> Fraction:
        """Between driest and dampest."""
        return self.to_dampest - self.to_driest


NO_CHANGE = Shares(Fraction(0), Fraction(0))


@dataclass(frozen=True)
class Across:
    """One size across the grain over the year, in mm."""

    made: Length
    shares: Shares

    @property
    def to_driest(self) -> Length:
        """What is added from made to driest: below zero where it shrinks."""
        return _changed(self.made, self.shares.to_driest)

    @property
    def to_dampest(self) -> Length:
        return _changed(self.made, self.shares.to_dampest)

    @property
    def driest(self) -> Length:
        return self.made + self.to_driest

    @property
    def dampest(self) -> Length:
        return self.made + self.to_dampest

    @property
    def swing(self) -> Length:
        """Between driest and dampest."""
        return self.to_dampest - self.to_driest


@dataclass(frozen=True)
class Moves:
    """How one part moves."""

    part: PartId
    species: Species
    sawn: Sawn
    is_sawn_assumed: bool
    width: Across
    thickness: Across
    as_quarter: Across
    """Its width if it were quarter-sawn."""
    along: Length
    """The most its length changes between driest and dampest; too little to matter."""
    by: Equation
    """The equation that gave the larger way of its width."""
    standing: Standing
    """Of the value its width was worked out from."""

    @property
    def is_slight(self) -> bool:
        """Whether its width moves too little to allow for."""
        return self.width.swing < SLIGHT


@dataclass(frozen=True)
class Movement:
    parts: Mapping[PartId, Moves]
    still: tuple[PartId, ...]
    """Sheets: they don't move enough to matter."""
    unknown: tuple[PartId, ...]
    """Of a wood that isn't named, or that the table says nothing of."""


def work_out_movement(plan: Plan, worked: Worked) -> tuple[Movement, tuple[Finding, ...]]:
    climate, woods = worked[CLIMATE], worked[WOODS]
    found = {part.id: _moves(part, plan.stock[part.stock], woods, climate) for part in plan.parts.values()}
    moves = {part: each for part, each in found.items() if each is not None}
    still = tuple(part.id for part in plan.parts.values() if plan.stock[part.stock].kind == "sheet")
    unknown = tuple(part for part in plan.parts if part not in moves and part not in still)
    return Movement(moves, still, unknown), ()


def _moves(part: Part, stock: Stock, woods: Woods, climate: Climate) -> Moves | None:
    species = woods.solid.get(stock.id)
    if species is None:
        return None
    sawn = cast(Sawn, stock.sawn or ASSUMED_SAWN)
    width, thickness, quarter = (
        over_the_year(across, species, way, climate)
        for across, way in ((across_width, sawn), (across_thickness, sawn), (across_width, "quarter"))
    )
    if width is None or thickness is None or quarter is None:
        return None
    return Moves(
        part.id,
        species,
        sawn,
        not stock.sawn,
        Across(part.width, width.shares),
        Across(part.thickness, thickness.shares),
        Across(part.width, quarter.shares),
        to_nearest(along_grain(part.length, before=climate.driest, after=climate.dampest), STEP),
        width.larger.by,
        width.larger.standing,
    )


class HowMuch(Protocol):
    """`across_width` or `across_thickness`."""

    def __call__(
        self, species: Species, sawn: Sawn, *, before: Fraction, after: Fraction
    ) -> Change | None: ...


@dataclass(frozen=True)
class Year:
    """Both ways from the moisture it is worked at."""

    dry: Change
    damp: Change

    @property
    def shares(self) -> Shares:
        return Shares(self.dry.share, self.damp.share)

    @property
    def larger(self) -> Change:
        return max((self.dry, self.damp), key=lambda change: abs(change.share))


def over_the_year(across: HowMuch, species: Species, sawn: Sawn, climate: Climate | Moistures) -> Year | None:
    """None where the table has nothing to go by."""
    dry, damp = (
        across(species, sawn, before=climate.made_at, after=after)
        for after in (climate.driest, climate.dampest)
    )
    return None if dry is None or damp is None else Year(dry, damp)


def _changed(size: Length, share: Fraction) -> Length:
    return to_nearest(size * share, STEP)


MOVEMENT: Working[Movement] = Working(
    "movement",
    "How much does each part grow and shrink across the grain?",
    work_out_movement,
    (CLIMATE, WOODS),
)
