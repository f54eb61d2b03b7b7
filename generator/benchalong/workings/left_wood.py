"""How much wood is left beside and under each cut, and do cuts break into each other?

Worked out exactly, on the grid of all planes of a part's box and its square cuts: along each direction the
wood lies in runs, and a run between two cuts, or between a cut and the outside, is a wall. What a tongue or
tenon leaves standing between its own cheeks is no wall; its proportions are looked at elsewhere.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding, Level
from benchalong.plan.model import AXES, Axis, Cut, Part, Plan
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.proportions import LEAST_WALL, SHORT_GRAIN
from benchalong.workings.cut_checks.bounds import SIDES, Bounds, is_empty, meets
from benchalong.workings.solids import SOLIDS, Solid, loose_pieces
from benchalong.workings.telling import Telling, cut_at, once
from benchalong.workings.working import Worked, Working

CHANNELS = ("groove", "dado", "rabbet", "mortise", "slot")
"""Cuts that leave walls."""
SQUARE = (*CHANNELS, "tongue", "tenon", "notch")
OUTSIDE = -1
Owners: TypeAlias = NDArray[np.int64]


@dataclass(frozen=True)
class Wall:
    """A run of wood next to a cut."""

    cut: Cut
    other: Cut | None
    """The cut on its other side; None for the outside."""
    axis: Axis
    thickness: Length
    at_far_end: bool
    """Whether the wall lies where the axis ends, seen from the cut."""


def look_at_left_wood(plan: Plan, worked: Worked) -> tuple[None, tuple[Finding, ...]]:
    found: list[Finding] = []
    for name, part in worked[SOLIDS].parts.items():
        looking = _Looking(plan, part)
        found += looking.walls()
        found += looking.break_ins()
        found += looking.pieces(worked[SOLIDS][name])
    return None, once(found)


def walls_of(part: Part) -> tuple[Wall, ...]:
    """The thinnest wall on each side of each cut, by what is on its other side."""
    cuts = [cut for cut in part.cuts if cut.kind in SQUARE and cut.takes]
    rooms = [(number, prism.room) for number, cut in enumerate(cuts) for prism in cut.takes]
    rooms = [(number, room) for number, room in rooms if not is_empty(room)]
    if not any(cut.kind in CHANNELS for cut in cuts):
        return ()
    planes = {axis: _planes(axis, part, [room for _, room in rooms]) for axis in AXES}
    owners = _owners(rooms, planes)
    found: dict[tuple[int, int, Axis, bool], Wall] = {}
    for n, axis in enumerate(AXES):
        for number, other, thickness, far in _runs(np.moveaxis(owners, n, 2), planes[axis]):
            wall = Wall(cuts[number], None if other == OUTSIDE else cuts[other], axis, thickness, far)
            key = (number, other, axis, far)
            if key not in found or thickness < found[key].thickness:
                found[key] = wall
    return tuple(found.values())


def _planes(axis: Axis, part: Part, rooms: list[Bounds]) -> list[Length]:
    whole = part.box[AXES.index(axis)]
    inside = {value for room in rooms for value in room[axis] if 0 < value < whole}
    return sorted(inside | {Length(0), whole})


def _owners(rooms: list[tuple[int, Bounds]], planes: dict[Axis, list[Length]]) -> Owners:
    """For each cell the number of the cut that takes it, else OUTSIDE - 1: wood."""
    owners = np.full([len(planes[axis]) - 1 for axis in AXES], OUTSIDE - 1)
    for number, room in rooms:
        spans = []
        for axis in AXES:
            low, high = room[axis]
            inside = [n for n, plane in enumerate(planes[axis][:-1]) if low <= plane < high]
            spans.append(slice(inside[0], inside[-1] + 1) if inside else slice(0, 0))
        owners[spans[0], spans[1], spans[2]] = number
    return owners


def _runs(owners: Owners, planes: list[Length]) -> Iterator[tuple[int, int, Length, bool]]:
    """(cut, what is on the other side, thickness, whether the wall lies beyond the cut), each once."""
    lines = np.unique(owners.reshape(-1, owners.shape[2]), axis=0)
    for line in lines.tolist():
        start = 0
        while start < len(line):
            end = start
            while end < len(line) and (line[end] == OUTSIDE - 1) == (line[start] == OUTSIDE - 1):
                end += 1
            if line[start] == OUTSIDE - 1:
                before = line[start - 1] if start else OUTSIDE
                after = line[end] if end < len(line) else OUTSIDE
                if before != after:
                    thickness = planes[end] - planes[start]
                    if before != OUTSIDE:
                        yield before, after, thickness, True
                    if after != OUTSIDE:
                        yield after, before, thickness, False
            start = end


class _Looking:
    def __init__(self, plan: Plan, part: Part) -> None:
        self.plan, self.part, self.telling = plan, part, Telling(plan)

    def walls(self) -> Iterator[Finding]:
        told: set[frozenset[int]] = set()
        for wall in sorted(walls_of(self.part), key=lambda wall: wall.thickness):
            both = frozenset((id(wall.cut), id(wall.other)))
            if wall.cut.kind in CHANNELS and both not in told and self._is_thin(wall):
                told.add(both)
                yield self._thin(wall)

    def _is_thin(self, wall: Wall) -> bool:
        """Not where rabbets meet at a corner; the walls of a joint's mortise are a matter of proportions."""
        if wall.other is not None and wall.other.kind in ("rabbet", "notch") and wall.cut.kind == "rabbet":
            return False
        if wall.cut.kind == "mortise" and wall.cut.joint and wall.other is None:
            return False
        return wall.thickness < self._least(wall)

    def _least(self, wall: Wall) -> Length:
        least = SHORT_GRAIN if wall.axis == "along" and wall.cut.kind == "dado" else LEAST_WALL
        return least.of(self.plan.units)

    def _thin(self, wall: Wall) -> Finding:
        left, least = self.telling.shown(wall.thickness), self._least(wall)
        towards = (
            f"and {_called(wall.other)}"
            if wall.other is not None
            else f"and {SIDES[wall.axis][wall.at_far_end]}"
        )
        message = (
            f"{self.part.name}: only {left} of wood is left between {_called(wall.cut)} {towards};"
            f" common practice is {self.telling.shown(least)} or more"
        )
        remedy = f"move the cut by {self.telling.shown(least - wall.thickness)}, or make it so much smaller"
        numbers = {"left": wall.thickness, "least": least}
        return self._finding("thin-wall", "doubt", wall.cut, message, remedy, numbers)

    def break_ins(self) -> Iterator[Finding]:
        """A hole or mortise that ends inside the wood and runs into a cut made from another side."""
        told: set[frozenset[tuple[str, int, str]]] = set()
        for cut in self.part.cuts:
            if cut.kind not in ("hole", "mortise") or not cut.takes or self._is_through(cut):
                continue
            for other in self.part.cuts:
                both = frozenset((one.joint, one.index, one.kind) for one in (cut, other))
                if both not in told and self._breaks_into(cut, other):
                    told.add(both)
                    message = f"{self.part.name}: {_called(cut)} breaks into {_called(other)}"
                    remedy = "move one of them, or make it less deep"
                    yield self._finding("cuts-break-into-each-other", "doubt", cut, message, remedy, {})
                    break

    def _breaks_into(self, cut: Cut, other: Cut) -> bool:
        if other is cut or other.kind not in (*CHANNELS, "hole") or set(cut.surfaces) & set(other.surfaces):
            return False
        if cut.joint and cut.joint == other.joint and cut.kind == other.kind == "mortise":
            return False
        return any(meets(a.room, b.room) for a in cut.takes for b in other.takes)

    def _is_through(self, cut: Cut) -> bool:
        room = cut.takes[0].room
        n = next(n for n, axis in enumerate(AXES) if cut.surfaces[0].replace("the ", "") in _sides(axis))
        return room[AXES[n]] == (Length(0), self.part.box[n])

    def pieces(self, solid: Solid) -> Iterator[Finding]:
        volumes = loose_pieces(solid)
        if len(volumes) > 1:
            message = f"{self.part.name}: its cuts together leave {len(volumes)} separate pieces of wood"
            remedy = "let some wood stand between them: look at the cuts that meet from two sides"
            place = Place((PROJECT_FILE, "parts", self.part.id)).key()
            yield Finding(
                "part-falls-apart", "fault", place, self.part.id, message, remedy, {}, self._sizes(None)
            )
        elif not volumes:
            message = f"{self.part.name}: its cuts together leave nothing of it"
            place = Place((PROJECT_FILE, "parts", self.part.id)).key()
            yield Finding(
                "part-all-cut-away",
                "fault",
                place,
                self.part.id,
                message,
                "make them smaller",
                {},
                self._sizes(None),
            )

    def _finding(
        self, code: str, level: Level, cut: Cut, message: str, remedy: str, numbers: dict[str, Length]
    ) -> Finding:
        place = cut_at(self.part.id, cut)
        return Finding(code, level, place, self.part.id, message, remedy, numbers, self._sizes(cut))

    def _sizes(self, cut: Cut | None) -> tuple[str, ...]:
        cuts = [cut] if cut else self.part.cuts
        own = {name for one in cuts for size in one.sizes for name in size.sizes}
        return tuple(sorted(own.union(*self.part.follows.values())))


def _sides(axis: Axis) -> tuple[str, ...]:
    return tuple(side.removeprefix("the ") for side in SIDES[axis])


def _called(cut: Cut | None) -> str:
    if cut is None:
        return "the outside"
    where = cut.where.split(",")[0]
    return f"the {cut.kind} {where}" if cut.name == cut.kind else f"the {cut.kind} “{cut.name}” {where}"


LEFT_WOOD: Working[None] = Working(
    "left wood", "Is enough wood left beside and under each cut?", look_at_left_wood, (SOLIDS,)
)
