"""Weights and lengths in the author's units, and findings at their place."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Path, Place
from benchalong.ground.problems import Finding, Level
from benchalong.ground.shown import Precision, shown
from benchalong.ground.weights import weight_text
from benchalong.plan.model import Plan
from benchalong.reading.written import PROJECT_FILE

NEAR = Precision(Length(127, 5) / 16, Length(1))
"""Distances of a whole piece, told as near as they are worked out: 1/16 in, 1 mm."""


def heavy(plan: Plan, kilograms: float) -> str:
    return weight_text(Fraction(round(kilograms * 1000), 1000), plan.units)


def far(plan: Plan, length: float) -> str:
    return shown(measured(length), plan.units, NEAR).text


def measured(length: float) -> Length:
    """To a hundredth of a mm."""
    return Length(round(length * 100), 100)


def finding(
    code: str,
    level: Level,
    path: Path,
    subject: str,
    message: str,
    remedy: str,
    numbers: Mapping[str, float] | None = None,
) -> Finding:
    lengths = {name: measured(value) for name, value in (numbers or {}).items()}
    place = Place((PROJECT_FILE, *path))
    return Finding(code, level, place, subject, message, remedy, lengths)
