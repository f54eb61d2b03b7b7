"""What parts are there to cut, from which stock and how thick?

Grouped by stock and by thickness, the thickest first, since all of one thickness is milled together.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass

from benchalong.ground.lengths import Length
from benchalong.ground.problems import Finding
from benchalong.plan.model import Cut, Part, PartId, Plan, StockId
from benchalong.workings.working import Worked, Working

STANDING = ("tongue", "tenon")
"""Cuts that leave wood standing beyond a shoulder."""


@dataclass(frozen=True)
class Row:
    part: PartId
    count: int
    marks: tuple[str, ...]
    thickness: Length
    width: Length
    length: Length
    """Overall, tongues and tenons included."""
    shoulder_length: Length | None
    """Between the shoulders, what a stop block is set to; None without tongues or tenons on the ends."""
    spares: int = 0
    """How many more are cut than the piece needs."""


@dataclass(frozen=True)
class Group:
    stock: StockId
    thickness: Length
    rows: tuple[Row, ...]
    """The longest first, then the widest."""


@dataclass(frozen=True)
class CutList:
    groups: tuple[Group, ...]
    """By stock in the order of the plan, the thickest of each first."""


def list_cuts(plan: Plan, _: Worked) -> tuple[CutList, tuple[Finding, ...]]:
    groups: defaultdict[tuple[StockId, Length], list[Part]] = defaultdict(list)
    for part in plan.parts.values():
        groups[part.stock, part.thickness].append(part)
    rank = {stock: number for number, stock in enumerate(plan.stock)}
    ordered = sorted(groups, key=lambda key: (rank[key[0]], -key[1]))
    return CutList(tuple(Group(*key, _rows(groups[key], plan.spares)) for key in ordered)), ()


def _rows(parts: list[Part], spares: Mapping[PartId, int]) -> tuple[Row, ...]:
    ordered = sorted(parts, key=lambda part: (-part.length, -part.width, part.id))
    return tuple(_row(part, spares.get(part.id, 0)) for part in ordered)


def _row(part: Part, spares: int) -> Row:
    return Row(
        part.id,
        part.count,
        part.marks,
        part.thickness,
        part.width,
        part.length,
        shoulder_length(part),
        spares,
    )


def shoulder_length(part: Part) -> Length | None:
    """The length less what stands beyond the shoulders at both ends; None where nothing does."""
    standing = [_stands(part, end) for end in ("end a", "end b")]
    return part.length - sum(standing) if any(standing) else None


def _stands(part: Part, end: str) -> Length:
    """How far tongues and tenons stand beyond the shoulder at one end; 0 where there are none."""
    lengths = (_length(cut) for cut in part.cuts if cut.kind in STANDING and end in cut.surfaces)
    return max(lengths, default=Length(0))


def _length(cut: Cut) -> Length:
    return next((size.length for size in cut.sizes if size.name == "length"), Length(0))


CUT_LIST: Working[CutList] = Working("cut list", "What is there to cut, from which stock?", list_cuts)
