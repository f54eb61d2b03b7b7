"""Weights and lengths in the author's units, and findings at their place."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from benchalong.ground.amounts import weight_text
from benchalong.ground.lengths import Length
from benchalong.ground.marks import Path, Place
from benchalong.ground.problems import Finding, Level
from benchalong.ground.shown import Precision, shown
from benchalong.plan.model import PartId, Plan
from benchalong.reading.written import PROJECT_FILE
from benchalong.workings.telling import place_sizes

NEAR = Precision(Length(127, 5) / 16, Length(1))
"""Distances of a whole piece, told as near as they are worked out: 1/16 in, 1 mm."""


def heavy(plan: Plan, kilograms: float) -> str:
    return weight_text(Fraction(round(kilograms * 1000), 1000), plan.units)


def far(plan: Plan, length: float) -> str:
    return shown(measured(length), plan.units, NEAR).text


def measured(length: float) -> Length:
    """To a hundredth of a mm."""
    return Length(round(length * 100), 100)


def sizes_of_part(plan: Plan, part: PartId) -> set[str]:
    """The named sizes that a part's own three follow from."""
    return {name for names in plan.parts[part].follows.values() for name in names}


def sizes_of_piece(plan: Plan) -> tuple[str, ...]:
    """All that its parts and places follow from: where its weight acts hangs on every one."""
    return place_sizes(plan, *plan.copies)


def finding(
    code: str,
    level: Level,
    path: Path,
    subject: str,
    message: str,
    remedy: str,
    numbers: Mapping[str, float] | None = None,
    sizes: Iterable[str] = (),
) -> Finding:
    lengths = {name: measured(value) for name, value in (numbers or {}).items()}
    place = Place((PROJECT_FILE, *path))
    return Finding(code, level, place, subject, message, remedy, lengths, tuple(sorted(set(sizes))))
