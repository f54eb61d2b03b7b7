"""What moves, told for each place where it stands in the piece."""

from __future__ import annotations

from dataclasses import replace

from benchalong.plan.flips import is_mirrored
from benchalong.plan.model import Moves
from benchalong.plan.tilts import after_tilt, carried
from benchalong.plan.turns import Way, moved, turned, turned_way
from benchalong.plan.walk import Standing


def in_piece(moves: Moves, stays: str, goes: str, standing: Standing) -> Moves:
    """From the directions of the assembly it was found in to those of the piece, and the marks with them."""
    before = f"{standing.mark}/" if standing.mark else ""
    at = None if moves.at is None else moved(turned(moves.at, standing.turn), standing.at)
    return replace(
        moves,
        stays=before + stays,
        goes=before + what_goes(stays, goes),
        at=at,
        way=None if moves.way is None else _way(moves, moves.way, standing),
        tilt=after_tilt(carried(moves.tilt, standing.turn, standing.at), standing.tilt),
    )


def what_goes(stays: str, goes: str) -> str:
    """The largest assembly, or else the copy itself, that moves without what stays: `LD` of `LD/H`."""
    fixed, marks = stays.split("/"), goes.split("/")
    common = next((n for n, (a, b) in enumerate(zip(fixed, marks, strict=False)) if a != b), 0)
    return "/".join(marks[: common + 1])


def _way(moves: Moves, way: Way, standing: Standing) -> Way:
    """A mirrored hinge opens the other way round."""
    x, y, z = turned_way(way, standing.turn)
    return (-x, -y, -z) if moves.how == "turns" and is_mirrored(standing.turn) else (x, y, z)
