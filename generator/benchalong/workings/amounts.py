"""How much finish does the piece take?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

import numpy as np

from benchalong.ground.lengths import to_nearest
from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan
from benchalong.trade.amounts import finish
from benchalong.workings.solids import SOLIDS, Solid
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


def work_out_amounts(plan: Plan, worked: Worked) -> tuple[Amounts, tuple[Finding, ...]]:
    solids = worked[SOLIDS]
    whole = sum(surface_of(solids[part.id]) * part.count for part in plan.parts.values())
    surface = to_nearest(Fraction(whole), SQUARE_CENTIMETRE)
    amounts = {each.id: _amount(surface, each.coats or 1, plan) for each in plan.finish.values()}
    return Amounts(surface, amounts), ()


def surface_of(solid: Solid) -> float:
    """In square mm."""
    corners = solid.vertices[solid.triangles]
    normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    return float(np.linalg.norm(normals, axis=1).sum() / 2)


def _amount(surface: Fraction, coats: int, plan: Plan) -> FinishAmount:
    return FinishAmount(coats, to_nearest(finish(surface, coats, plan.rates), MILLILITRE))


AMOUNTS: Working[Amounts] = Working("amounts", "How much finish does it take?", work_out_amounts, (SOLIDS,))
