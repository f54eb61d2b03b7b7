"""What do the parts, the assemblies and the piece weigh, hardware and finish left aside?"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from benchalong.ground.lengths import to_nearest
from benchalong.ground.problems import Finding
from benchalong.plan.model import AssemblyId, PartId, Plan, StockId
from benchalong.trade.amounts import density, weight
from benchalong.workings.bulks import BULKS
from benchalong.workings.climate import CLIMATE
from benchalong.workings.copies import COPIES
from benchalong.workings.woods import WOODS
from benchalong.workings.working import Worked, Working

GRAM = Fraction(1, 1000)


@dataclass(frozen=True)
class Weights:
    """In kilograms, to a gram, at the moisture the wood is worked at."""

    parts: Mapping[PartId, Fraction]
    """One copy of each; without those whose wood or sheet isn't known."""
    assemblies: Mapping[AssemblyId, Fraction]
    """One of each, of the parts that could be weighed."""
    piece: Fraction | None
    """All copies, and the parts that have no place; None where no part could be weighed."""
    unknown: tuple[PartId, ...]
    """Parts that could not be weighed, so that what holds them is heavier than said."""
    is_for_two: bool
    """Whether the piece is more than one person lifts alone."""


def weigh(plan: Plan, worked: Worked) -> tuple[Callable[[], Weights], tuple[Finding, ...]]:
    """Weighed when it is first asked for: the plan check needs no weights."""
    return cache(lambda: _weights(plan, worked)), ()


def _weights(plan: Plan, worked: Worked) -> Weights:
    densities, bulks = _densities(worked), worked[BULKS]
    parts = {
        part.id: to_nearest(weight(Fraction(bulks[part.id].volume), densities[part.stock]), GRAM)
        for part in plan.parts.values()
        if part.stock in densities
    }
    copies = worked[COPIES]
    loose = (part for part in plan.parts.values() if part.id not in {copy.part for copy in copies})
    placed = Counter(copy.part for copy in copies)
    whole = _sum(parts, placed + Counter({part.id: part.count for part in loose}))
    return Weights(
        parts,
        {assembly: _sum(parts, _held(plan, assembly)) for assembly in plan.assemblies},
        whole if parts else None,
        tuple(part for part in plan.parts if part not in parts),
        whole > plan.rates.lift,
    )


def _densities(worked: Worked) -> dict[StockId, Fraction]:
    """Kilograms per cubic metre."""
    woods, moisture = worked[WOODS], worked[CLIMATE].made_at
    solid = {stock: density(species, moisture) for stock, species in woods.solid.items()}
    known = {stock: each for stock, each in solid.items() if each is not None}
    return known | {stock: sheet.density for stock, sheet in woods.sheets.items()}


def _held(plan: Plan, assembly: AssemblyId) -> Counter[PartId]:
    """How many of each part stand in an assembly and in those inside it."""
    found: Counter[PartId] = Counter()
    for placed in plan.assemblies[assembly].placed:
        found += Counter({placed.of: 1}) if placed.kind == "part" else _held(plan, placed.of)
    return found


def _sum(parts: Mapping[PartId, Fraction], counts: Mapping[PartId, int]) -> Fraction:
    return sum((parts[part] * count for part, count in counts.items() if part in parts), Fraction(0))


WEIGHTS: Working[Callable[[], Weights]] = Working(
    "weights", "What do the parts and the piece weigh?", weigh, (COPIES, BULKS, CLIMATE, WOODS)
)
