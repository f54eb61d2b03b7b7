"""Where does every copy of every part stand in the piece?"""

from __future__ import annotations

from dataclasses import dataclass

from benchalong.ground.lengths import Point3
from benchalong.ground.problems import Finding
from benchalong.plan.model import AssemblyId, PartId, Plan, Turn
from benchalong.plan.walk import walk
from benchalong.workings.working import Worked, Working


@dataclass(frozen=True)
class Copy:
    """One piece of wood where it stands: a point of the part -> turn * point + at."""

    part: PartId
    mark: str
    """From the whole piece down: `LD/H`."""
    assemblies: tuple[AssemblyId, ...]
    """It stands in, from the piece down."""
    turn: Turn
    at: Point3


def place_copies(plan: Plan, _: Worked) -> tuple[tuple[Copy, ...], tuple[Finding, ...]]:
    """Every copy in the order written; none while nothing is placed."""
    if plan.piece is None:
        return (), ()
    standing = walk(plan.assemblies, plan.piece)
    return tuple(Copy(s.of, s.mark, s.assemblies, s.turn, s.at) for s in standing if s.is_part), ()


COPIES: Working[tuple[Copy, ...]] = Working(
    "copies", "Where does every copy of every part stand?", place_copies
)
