"""How far things are pulled apart in a picture.

First as far as it takes to be clear of all that is left; then further, as long as that uncovers more on the
sheet than it costs in size. What comes out later stands nearer, so nothing passes through anything.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import product
from typing import Any

import numpy as np
from manifold3d import CrossSection, OpType

from benchalong.drawing.eye import PIECE_EYE, Eye
from benchalong.workings.blocking import Way, sheet_of
from benchalong.workings.bodies import Floats
from benchalong.workings.copies import Copy
from benchalong.workings.pose import pose
from benchalong.workings.solids import ShapeId, Solid
from benchalong.workings.ways_out import TakenApart

FREE = 0.05
"""Between a part and what it came out of, against the size of the assembly."""
FURTHEST = 0.7
"""Nothing is pulled further than this beyond being clear, against the size of the assembly."""
STEPS = 14
"""So many distances are tried."""
WORTH = 0.6
"""What pulling it further by the size of the assembly costs, against all of a thing being covered."""
HIDDEN = 0.04
"""So much of a thing may be covered, or may cover, without pulling it further."""
NEAR = 8.0
"""What was no nearer than this to anything left, in mm, stays where it is: it is apart already."""
CONTACT = 0.5
"""Boxes no further apart than this, in mm, touch."""


@dataclass(frozen=True)
class Leaving:
    """What goes one way at once, and what it leaves behind."""

    goes: tuple[str, ...]
    way: Way
    rest: tuple[str, ...]


@dataclass(frozen=True, eq=False)
class Pulled:
    """One assembly, its members by their marks."""

    taken: TakenApart
    members: Mapping[str, Sequence[Copy]]
    solids: Mapping[ShapeId, Solid]
    eye: Eye = PIECE_EYE

    @cached_property
    def shifts(self) -> Mapping[str, Floats]:
        """How far each member is pulled, in mm in the room."""
        shifts = {unit: np.zeros(3) for unit in self.members}
        for leaving in reversed(self._leaving):
            by = self._distance(leaving, shifts) * np.array(leaving.way)
            for unit in leaving.goes:
                shifts[unit] = shifts[unit] + by
        return shifts

    def threads(self) -> Iterator[Floats]:
        """Lines (2, 3) from where a member went back to what it left, as far as that still stands in line."""
        for leaving in self._leaving:
            way = np.array(leaving.way)
            for unit, other in product(leaving.goes, leaving.rest):
                run = self.shifts[unit] - self.shifts[other]
                along = float(run @ way)
                if along > 1 and float(np.linalg.norm(run - way * along)) < 1e-6:
                    for spot in self._contacts(unit, other):
                        yield np.array([spot + self.shifts[other], spot + self.shifts[unit]])

    @cached_property
    def _leaving(self) -> tuple[Leaving, ...]:
        """The moves that part what stood together; neighbours in the list that go one way from the same rest,
        such as two doors, go as far as each other."""
        lumps = [frozenset(self.members)]
        found: list[Leaving] = []
        for move in self.taken.moves:
            lump = next(lump for lump in lumps if lump >= set(move.goes))
            rest = lump - set(move.goes)
            lumps = [*(other for other in lumps if other is not lump), rest, frozenset(move.goes)]
            staying = tuple(unit for unit in self.members if unit in rest)
            last = found[-1] if found else None
            if self._gap(move.goes, staying) > NEAR:
                continue
            if last is not None and last.way == move.way and set(last.rest) == rest | set(move.goes):
                found[-1] = Leaving((*last.goes, *move.goes), move.way, staying)
            else:
                found.append(Leaving(move.goes, move.way, staying))
        return tuple(found)

    # how far

    def _distance(self, leaving: Leaving, shifts: Mapping[str, Floats]) -> float:
        least = self._clear(leaving, shifts) + FREE * self.size
        mover, staying = (self._outline(units, shifts) for units in (leaving.goes, leaving.rest))
        on_sheet = self._rows @ np.array(leaving.way)
        best, found = float("inf"), least
        for step in range(STEPS + 1):
            distance = least + FURTHEST * self.size * step / STEPS
            covered = _share(mover.translate((on_sheet * distance).tolist()), staying)
            cost = covered + WORTH * distance / self.size
            if cost < best - 1e-9:
                best, found = cost, distance
            if covered <= HIDDEN:
                break
        return found

    def _clear(self, leaving: Leaving, shifts: Mapping[str, Floats]) -> float:
        """How far it must go until none of the rest stands beside it, or in its way."""
        sheet = sheet_of(leaving.way)
        low, high = self._reach(leaving.goes, shifts, sheet)
        other_low, other_high = self._reach(leaving.rest, shifts, sheet)
        overlap = np.minimum(high[:, None, :2], other_high[:, :2]) - np.maximum(
            low[:, None, :2], other_low[:, :2]
        )
        ahead = other_high[None, :, 2] - low[:, None, 2]
        return float(np.where((overlap > CONTACT).all(axis=2), ahead, 0.0).max(initial=0.0))

    def _reach(
        self, units: Sequence[str], shifts: Mapping[str, Floats], sheet: Floats
    ) -> tuple[Floats, Floats]:
        points = np.concatenate([(self._corners[unit] + shifts[unit]) @ sheet.T for unit in units])
        return points.min(axis=1), points.max(axis=1)

    @cached_property
    def _corners(self) -> Mapping[str, Floats]:
        """(copies, 8, 3): by member the corners of its boxes where they belong."""
        return {unit: np.array([self._box(copy) for copy in own]) for unit, own in self.members.items()}

    def _box(self, copy: Copy) -> Floats:
        own = np.array(list(product(*((0.0, side) for side in self.solids[copy.shape].box))))
        turn, at = pose(copy)
        return np.asarray(own @ turn.T + at)

    @cached_property
    def size(self) -> float:
        """The longest side of the room it all takes up, in mm."""
        corners = np.concatenate([corners.reshape(-1, 3) for corners in self._corners.values()])
        return float((corners.max(axis=0) - corners.min(axis=0)).max())

    @cached_property
    def _rows(self) -> Floats:
        return np.array(self.eye.rows)[:2]

    @cached_property
    def _outlines(self) -> Mapping[str, Any]:
        """By member what it covers on the sheet where it belongs, its parts as whole boxes."""
        return {
            unit: CrossSection.batch_boolean(
                [CrossSection.hull_points(box @ self._rows.T) for box in boxes], OpType.Add
            )
            for unit, boxes in self._corners.items()
        }

    def _outline(self, units: Sequence[str], shifts: Mapping[str, Floats]) -> Any:
        moved = [self._outlines[unit].translate((self._rows @ shifts[unit]).tolist()) for unit in units]
        return CrossSection.batch_boolean(moved, OpType.Add)

    # where they touched

    def _rooms(self, units: Sequence[str]) -> tuple[Floats, Floats]:
        corners = np.concatenate([self._corners[unit] for unit in units])
        return corners.min(axis=1), corners.max(axis=1)

    def _gap(self, going: Sequence[str], rest: Sequence[str]) -> float:
        """How near they stand, box to box, in mm."""
        (low, high), (other_low, other_high) = self._rooms(going), self._rooms(rest)
        apart = np.maximum(low[:, None] - other_high, other_low - high[:, None])
        return float(np.maximum(apart.max(axis=2), 0).min())

    def _contacts(self, unit: str, other: str) -> Floats:
        """The middle of each stretch where two touched, or else were near; of many the two that lie furthest
        apart."""
        spots = self._spots(unit, other)
        if len(spots) <= 2:
            return spots
        apart = np.linalg.norm(spots[:, None] - spots[None], axis=2)
        return spots[list(np.unravel_index(int(apart.argmax()), apart.shape))]

    def _spots(self, unit: str, other: str) -> Floats:
        (low, high), (other_low, other_high) = self._rooms([unit]), self._rooms([other])
        near, far = np.maximum(low[:, None], other_low), np.minimum(high[:, None], other_high)
        overlap = (far - near).min(axis=2)
        chosen = overlap >= (-CONTACT if (overlap >= -CONTACT).any() else -NEAR)
        return np.asarray(((near + far) / 2)[chosen])


def _share(one: Any, other: Any) -> float:
    """How much of the smaller the two have in common."""
    least = min(one.area(), other.area())
    return float((one ^ other).area() / least) if least else 0.0
