"""How much finish does the piece take?"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from benchalong.ground.lengths import to_nearest
from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan
from benchalong.trade.amounts import finish
from benchalong.workings.bulks import BULKS, Bulks
from benchalong.workings.working import Worked, Working

SQUARE_CENTIMETRE = Fraction(100)
MILLILITRE = Fraction(1, 1000)


@dataclass(frozen=True)
class FinishAmount:
    """Litres, to a millilitre."""

    coats: int
    """As the plan says, else one."""
    litres: Fraction


@dataclass(frozen=True)
class Amounts:
    surface: Fraction
    """Of all parts on all sides, in square mm, to a square centimetre. Faces that meet inside a joint or stay
    bare are counted: it is the most there can be."""
    finish: Mapping[str, FinishAmount]
    """By the plan's finishes, each as if it went all over."""


def work_out_amounts(plan: Plan, worked: Worked) -> tuple[Callable[[], Amounts], tuple[Finding, ...]]:
    """Worked out when first asked for, as weights are."""
    return cache(lambda: _amounts(plan, worked[BULKS])), ()


def _amounts(plan: Plan, bulks: Bulks) -> Amounts:
    whole = sum(bulks[part.id].surface * part.count for part in plan.parts.values())
    surface = to_nearest(Fraction(whole), SQUARE_CENTIMETRE)
    amounts = {each.id: _amount(surface, each.coats or 1, plan) for each in plan.finish.values()}
    return Amounts(surface, amounts)


def _amount(surface: Fraction, coats: int, plan: Plan) -> FinishAmount:
    return FinishAmount(coats, to_nearest(finish(surface, coats, plan.rates), MILLILITRE))


AMOUNTS: Working[Callable[[], Amounts]] = Working(
    "amounts", "How much finish does it take?", work_out_amounts, (BULKS,)
)
