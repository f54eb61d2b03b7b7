"""How each piece of wood that stands in the piece moves along each axis of the room.

Along its grain not at all; across it by the share of its width or of its thickness.
"""

from __future__ import annotations

from benchalong.plan.model import AXES, Axis, Surface
from benchalong.workings.movement import NO_CHANGE, Movement, Shares
from benchalong.workings.placed import Lying

EDGES: tuple[Surface, ...] = ("edge a", "edge b")
ENDS: tuple[Surface, ...] = ("end a", "end b")


def axis_of(lying: Lying, n: int) -> Axis:
    """Which of its own directions lies along an axis of the room (0, 1, 2 for x, y, z)."""
    row = lying.copy.turn[n]
    return next(axis for axis, entry in zip(AXES, row, strict=True) if entry)


def axis_in_room(lying: Lying, axis: Axis) -> int:
    """The other way round."""
    return next(n for n in range(3) if axis_of(lying, n) == axis)


def shares_along(lying: Lying, n: int, movement: Movement) -> Shares | None:
    """What its size along an axis of the room changes by; None where its wood isn't known."""
    axis, part = axis_of(lying, n), lying.copy.part
    if axis == "along" or part in movement.still:
        return NO_CHANGE
    moves = movement.parts.get(part)
    if moves is None:
        return None
    return moves.width.shares if axis == "across" else moves.thickness.shares
