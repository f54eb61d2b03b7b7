"""Which parts make a set, and which piece of the cabinetmaker's triangle does each carry?

The triangle is the trade's own mark for which way the parts of a set face: the parts are laid side by side,
one triangle is drawn across all of them, its point up or away, and where its lines meet again every part is
where it was. Which parts make a set is said in `sets.py`, for each assembly by itself. How a set lies side
by side follows from where it stands: the room between its parts is closed up, the triangle drawn, and each
part takes its piece along. So the record knows no picture, and each picture shows what it can see of it.

How large a triangle is and where on its parts it stands is ours; the mark is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

import numpy as np

from benchalong.ground.problems import Finding
from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.model import AXES, AssemblyId, PartId, Plan, Surface
from benchalong.trade.joints import MOVING
from benchalong.workings.bodies import Floats
from benchalong.workings.faces import Bools
from benchalong.workings.placed import PLACED, Lying, Placed
from benchalong.workings.set_pieces import Layout, across_the_set, carried
from benchalong.workings.sets import POINT, Apart, Looks, plane_of, row_of, run_of, sets_of, side_that
from benchalong.workings.solids import ShapeId, Solid
from benchalong.workings.working import Worked, Working

CENTRES = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8)
"""Where along the parts the triangle may stand, best first."""
SPOTS = np.linspace(0.02, 0.98, 9)
"""Where along each line wood is looked for."""
FLAT, NEAR = 1e-6, 1e-4
Spot: TypeAlias = tuple[float, float, float]


@dataclass(frozen=True)
class Piece:
    """What one part of a set carries."""

    mark: str
    """Of the copy, from the whole piece down."""
    part: PartId
    shape: ShapeId
    side: Surface
    """Of the wood, in the shape's own directions."""
    named: Surface
    """What the author calls that side."""
    carries: str
    """`left half`, `base`, `point`."""
    lines: tuple[tuple[Spot, Spot], ...]
    """In the shape's own directions, mm."""


@dataclass(frozen=True)
class Triangle:
    """The mark on one set."""

    assembly: AssemblyId
    within: str
    """The assembly's mark from the whole piece down; empty for the piece itself."""
    looks: Looks
    pieces: tuple[Piece, ...]
    """From left to right, from below up, from the nearest on."""

    @property
    def points(self) -> Literal["up", "away"]:
        return "away" if self.looks == "up" else "up"

    @property
    def sides(self) -> str:
        """Where it is drawn: `their faces`, `their front edges`."""
        edge = {"front": "front", "up": "upper", "right": "right"}[self.looks]
        return "their faces" if self.pieces[0].named in ("face", "back") else f"their {edge} edges"

    @property
    def marks(self) -> tuple[str, ...]:
        """Of its copies, as they are called within the assembly."""
        return tuple(piece.mark.rsplit("/", 1)[-1] for piece in self.pieces)


def mark_sets(plan: Plan, worked: Worked) -> tuple[tuple[Triangle, ...], tuple[Finding, ...]]:
    placed, apart = worked[PLACED], _apart(plan)
    by_assembly: dict[tuple[str, AssemblyId], list[Lying]] = {}
    for lying in placed.lying:
        within = lying.copy.mark.rpartition("/")[0]
        by_assembly.setdefault((within, lying.copy.assemblies[-1]), []).append(lying)
    found = [
        Triangle(assembly, within, looks, pieces)
        for (within, assembly), inside in by_assembly.items()
        for looks, pieces in _marked_sets(inside, apart, placed)
    ]
    return tuple(found), ()


def _apart(plan: Plan) -> Apart:
    """Pairs of copies that a hinge, slide or stay holds together."""
    return frozenset(
        meeting.marks
        for joint in plan.joints.values()
        if joint.kind in MOVING
        for meeting in joint.meetings
        if meeting.takes is not None
    )


def _marked_sets(
    inside: Sequence[Lying], apart: Apart, placed: Placed
) -> Iterator[tuple[Looks, tuple[Piece, ...]]]:
    """Each copy in one set at most."""
    taken: set[int] = set()
    for looks, group in sets_of(inside, apart):
        numbers = {lying.number for lying in group}
        if not numbers & taken and (pieces := _marked(group, looks, placed)):
            taken |= numbers
            yield looks, pieces


def _marked(group: Sequence[Lying], looks: Looks, placed: Placed) -> tuple[Piece, ...]:
    """Empty where no place along the parts has wood under all lines."""
    run, row = run_of(group[0]), row_of(group[0], looks)
    broad = tuple(float(lying.room[1][row] - lying.room[0][row]) for lying in group)
    layout = Layout(broad, float(group[0].part.length), is_row_up=row == POINT[looks])
    for centre in CENTRES:
        lines = across_the_set(layout, centre * layout.length)
        pieces = tuple(
            _piece(lying, looks, (run, row), own, word)
            for lying, own, word in zip(group, lines, carried(layout), strict=True)
        )
        if all(_is_on_wood(piece, placed.solids[piece.shape]) for piece in pieces):
            return pieces
    return ()


def _piece(lying: Lying, looks: Looks, ways: tuple[int, int], lines: Sequence[Floats], word: str) -> Piece:
    """`lines` run along and across the part, from its own corner; `ways` says where that is in the room."""
    run, row = ways
    n, plane = plane_of(lying, looks)
    room = np.zeros((len(lines), 2, 3))
    room[:, :, n] = plane
    room[:, :, row] = float(lying.room[0][row]) + np.array(lines)[:, :, 0]
    room[:, :, run] = float(lying.room[0][run]) + np.array(lines)[:, :, 1]
    at = np.array([float(value) for value in lying.copy.at])
    own = np.round((room - at) @ np.array(lying.copy.turn, dtype=float), 4).tolist()
    side, copy = side_that(lying, looks), lying.copy
    drawn = tuple(((*one,), (*other,)) for one, other in own)
    return Piece(copy.mark, copy.part, copy.shape, side, lying.named(side), word, drawn)


def _is_on_wood(piece: Piece, solid: Solid) -> bool:
    """Whether the flat side is there under every spot that is looked at."""
    lies = SURFACES[piece.side]
    axis = AXES.index(lies.inward)
    flat = [n for n in range(3) if n != axis]
    corners, facing = solid.vertices[solid.triangles], solid.normals[:, axis] * (1 if lies.is_far else -1)
    level = np.abs(corners[:, :, axis] - (solid.box[axis] if lies.is_far else 0.0)).max(axis=1)
    in_plane = (facing > 1 - FLAT) & (level < NEAR)
    lines = np.array(piece.lines)[:, :, flat]
    spots = (lines[:, :1] + SPOTS[:, None] * (lines[:, 1:] - lines[:, :1])).reshape(-1, 2)
    return bool(_covered(spots, corners[in_plane][:, :, flat]).all())


def _covered(spots: Floats, triangles: Floats) -> Bools:
    """For each spot whether any triangle holds it."""
    runs = np.roll(triangles, -1, axis=1) - triangles
    to = spots[:, None, None] - triangles
    turn = runs[..., 0] * to[..., 1] - runs[..., 1] * to[..., 0]
    holds: Bools = np.logical_or((turn >= -FLAT).all(axis=2), (turn <= FLAT).all(axis=2))
    return np.asarray(holds.any(axis=1))


TRIANGLES: Working[tuple[Triangle, ...]] = Working(
    "triangles",
    "Which parts make a set, and which piece of the triangle does each carry?",
    mark_sets,
    (PLACED,),
)
