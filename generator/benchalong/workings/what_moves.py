"""Which things move in the piece, how, and what goes with each: doors, lids, drawers."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

import numpy as np

from benchalong.plan.model import Joint, Moves, Plan
from benchalong.workings.placed import Placed
from benchalong.workings.pose import floats
from benchalong.workings.sweep import Sliding, Turning

RIGHT_ANGLE = Fraction(90)


@dataclass(frozen=True)
class Moving:
    """One thing that moves, in one place."""

    joint: str
    goes: str
    """Its mark."""
    moves: Moves
    copies: tuple[int, ...]
    """All that goes with it, by number; what hangs on it, too."""
    first: tuple[str, ...] = ()
    """Marks of what must be open before."""


def movings(plan: Plan, placed: Placed) -> tuple[Moving, ...]:
    """Each thing that moves once, however many hinges it has; a stay says how far it opens."""
    held = {
        m.goes: m.angle
        for joint in plan.joints.values()
        for m in joint.moves
        if m.how == "is held" and m.angle
    }
    found: dict[str, tuple[Joint, Moves]] = {}
    for joint in plan.joints.values():
        for moves in joint.moves:
            if moves.how != "is held" and moves.way is not None:
                angle = min(filter(None, (moves.angle, held.get(moves.goes))), default=None)
                found.setdefault(moves.goes, (joint, replace(moves, angle=angle)))
    groups = {goes: _group(goes, found, placed) for goes in found}
    return tuple(
        Moving(joint.id, goes, moves, tuple(sorted(groups[goes])))
        for goes, (joint, moves) in found.items()
        if groups[goes]
    )


def _group(goes: str, found: Mapping[str, tuple[Joint, Moves]], placed: Placed) -> set[int]:
    """Its copies, and those of what is fixed to it and moves by itself."""
    marks, todo = {goes}, [goes]
    while todo:
        here = todo.pop()
        hanging = [m for m, (_, moves) in found.items() if _is_in(moves.stays, here) and m not in marks]
        marks.update(hanging)
        todo += hanging
    return {one.number for one in placed.lying if any(_is_in(one.copy.mark, mark) for mark in marks)}


def _is_in(mark: str, of: str) -> bool:
    return mark == of or mark.startswith(f"{of}/")


def motion_of(moves: Moves) -> Turning | Sliding:
    assert moves.way is not None
    rows, by = floats(moves.tilt) if moves.tilt is not None else (np.eye(3), np.zeros(3))
    way = rows @ np.array(moves.way, dtype=float)
    if moves.how == "turns":
        assert moves.at is not None
        at = rows @ np.array([float(x) for x in moves.at]) + by
        return Turning(at, way, float(moves.angle or RIGHT_ANGLE))
    x, y, z = way.tolist()
    return Sliding((x, y, z), float(moves.travel or 0))
