"""The piece, or an assembly, pulled apart along the ways its parts really come out.

How far: first as far as it takes to be clear of all that was left; then further, as long as that uncovers
more on the sheet than it costs in size. What comes out later stands nearer, so nothing passes through
anything. Inner assemblies stay whole. A thin line runs back to where a part goes.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from itertools import product
from typing import Any

import numpy as np
from manifold3d import CrossSection, OpType

from benchalong.drawing.eye import PIECE_EYE, Eye
from benchalong.drawing.faces import Floats
from benchalong.drawing.picture import PiecePicture
from benchalong.drawing.piece import Apart, piece_picture
from benchalong.ground.lengths import Point3
from benchalong.plan.model import PartId
from benchalong.workings.blocking import Way
from benchalong.workings.copies import Copy
from benchalong.workings.solids import ShapeId, Solid
from benchalong.workings.ways_out import TakenApart

FREE = 0.05
"""Between a part and what it came out of, against the size of the assembly."""
FURTHEST = 0.7
"""Nothing is pulled further than this beyond being clear, against the size of the assembly."""
STEPS = 14
NEAR = 8.0
"""What was no nearer than this to anything left, in mm, stays where it is: it is apart already."""
CONTACT = 0.5
"""Boxes no further apart than this, in mm, touch."""
HIDDEN = 0.04
"""So much of a thing may be covered, or may cover, without pulling it further."""


def apart_picture(
    taken: TakenApart,
    copies: Sequence[Copy],
    solids: Mapping[ShapeId, Solid],
    *,
    names: Mapping[PartId, str],
    title: str,
    woods: Mapping[PartId, str] | None = None,
    eye: Eye = PIECE_EYE,
) -> PiecePicture:
    """`copies` are all of the piece, or those of this assembly's place, in the order of the piece.

    Raises ValueError when there is nothing to draw.
    """
    inside = {copy.mark: copy for copy in copies}
    members = {unit: [inside[mark] for mark in marks] for unit, marks in taken.members.items()}
    pulled = Pulled(taken, members, solids, eye)
    shown = [copy for own in members.values() for copy in own]
    return piece_picture(shown, solids, names=names, title=title, woods=woods, eye=eye, apart=pulled.apart)


@dataclass(frozen=True, eq=False)
class _Leaving:
    """What goes one way at once, and what it leaves behind."""

    goes: tuple[str, ...]
    way: Way
    rest: tuple[str, ...]


@dataclass(frozen=True, eq=False)
class Pulled:
    """How far each member is pulled."""

    taken: TakenApart
    members: Mapping[str, Sequence[Copy]]
    solids: Mapping[ShapeId, Solid]
    eye: Eye = PIECE_EYE

    @property
    def apart(self) -> Apart:
        shifts = self.shifts
        return Apart(
            {
                copy.mark: _shifted(copy.at, shifts[unit])
                for unit, own in self.members.items()
                for copy in own
            },
            {copy.mark: unit for unit, own in self.members.items() for copy in own},
            tuple(self._threads(shifts)),
        )

    @cached_property
    def shifts(self) -> Mapping[str, Floats]:
        """By member, mm in the room."""
        shifts = {unit: np.zeros(3) for unit in self.members}
        for leaving in reversed(self._leaving):
            by = self._distance(leaving, shifts) * np.array(leaving.way)
            for unit in leaving.goes:
                shifts[unit] = shifts[unit] + by
        return shifts

    @cached_property
    def _leaving(self) -> tuple[_Leaving, ...]:
        """The moves that part what stood together; neighbours in the list that go one way from the same rest,
        such as two doors, go as far as each other."""
        lumps = [frozenset(self.members)]
        found: list[_Leaving] = []
        for move in self.taken.moves:
            lump = next(lump for lump in lumps if lump >= set(move.goes))
            rest = lump - set(move.goes)
            lumps = [*(other for other in lumps if other is not lump), rest, frozenset(move.goes)]
            staying = tuple(unit for unit in self.members if unit in rest)
            if self._gap(move.goes, staying) > NEAR:
                continue
            last = found[-1] if found else None
            if last is not None and last.way == move.way and set(last.rest) == rest | set(move.goes):
                found[-1] = _Leaving((*last.goes, *move.goes), move.way, staying)
            else:
                found.append(_Leaving(move.goes, move.way, staying))
        return tuple(found)

    # how far

    def _distance(self, leaving: _Leaving, shifts: Mapping[str, Floats]) -> float:
        way = np.array(leaving.way)
        least = self._clear(leaving, shifts) + FREE * self.size
        going = [self._outline(unit, shifts[unit]) for unit in leaving.goes]
        staying = CrossSection.batch_boolean([self._outline(u, shifts[u]) for u in leaving.rest], OpType.Add)
        mover = CrossSection.batch_boolean(going, OpType.Add)
        on_sheet = np.array(self.eye.rows)[:2] @ way
        best, found = float("inf"), least
        for step in range(STEPS + 1):
            distance = least + FURTHEST * self.size * step / STEPS
            covered = _share(mover.translate((on_sheet * distance).tolist()), staying)
            cost = covered + 0.6 * distance / self.size
            if cost < best - 1e-9:
                best, found = cost, distance
            if covered <= HIDDEN:
                break
        return found

    def _clear(self, leaving: _Leaving, shifts: Mapping[str, Floats]) -> float:
        """How far it must go until none of the rest stands beside it, or in its way."""
        way = np.array(leaving.way)
        sheet = _across(way)
        moving = [
            self._box(copy, shifts[unit], sheet) for unit in leaving.goes for copy in self.members[unit]
        ]
        resting = [
            self._box(copy, shifts[unit], sheet) for unit in leaving.rest for copy in self.members[unit]
        ]
        most = 0.0
        for low, high in moving:
            for other_low, other_high in resting:
                if (
                    np.minimum(high[:2], other_high[:2]) - np.maximum(low[:2], other_low[:2]) > CONTACT
                ).all():
                    most = max(most, float(other_high[2] - low[2]))
        return most

    def _box(self, copy: Copy, shift: Floats, sheet: Floats) -> tuple[Floats, Floats]:
        points = (self._corners(copy) + shift) @ sheet.T
        return points.min(axis=0), points.max(axis=0)

    def _corners(self, copy: Copy) -> Floats:
        box = self.solids[copy.shape].box
        own = np.array(list(product(*((0.0, side) for side in box))))
        return np.asarray(own @ np.array(copy.turn, dtype=float).T + np.array([float(x) for x in copy.at]))

    def _outline(self, unit: str, shift: Floats) -> Any:
        rows = np.array(self.eye.rows)[:2]
        hulls = [CrossSection.hull_points((self._corners(c) + shift) @ rows.T) for c in self.members[unit]]
        return CrossSection.batch_boolean(hulls, OpType.Add)

    @cached_property
    def size(self) -> float:
        """The longest side of the room it all takes up, in mm."""
        corners = np.concatenate([self._corners(copy) for own in self.members.values() for copy in own])
        return float((corners.max(axis=0) - corners.min(axis=0)).max())

    def _rooms(self, units: Sequence[str]) -> list[tuple[Floats, Floats]]:
        return [self._room(copy) for unit in units for copy in self.members[unit]]

    def _room(self, copy: Copy) -> tuple[Floats, Floats]:
        corners = self._corners(copy)
        return corners.min(axis=0), corners.max(axis=0)

    def _gap(self, going: Sequence[str], rest: Sequence[str]) -> float:
        """How near they stand, box to box, in mm."""
        return min(
            float(np.maximum(np.maximum(low - b, a - high), 0).max())
            for low, high in self._rooms(going)
            for a, b in self._rooms(rest)
        )

    # lines

    def _threads(self, shifts: Mapping[str, Floats]) -> Iterator[Floats]:
        for leaving in self._leaving:
            way = np.array(leaving.way)
            for unit in leaving.goes:
                for other in leaving.rest:
                    run = shifts[unit] - shifts[other]
                    if float(np.linalg.norm(run - way * float(run @ way))) < 1e-6 and float(run @ way) > 1:
                        yield from self._contacts(unit, other, shifts)

    def _contacts(self, unit: str, other: str, shifts: Mapping[str, Floats]) -> Iterator[Floats]:
        """From the middle of a stretch where two touched, on what stays, to where it went. Of many stretches
        the two that lie furthest apart."""
        spots = self._spots(unit, other)
        if len(spots) > 2:
            apart = np.linalg.norm(spots[:, None] - spots[None], axis=2)
            spots = spots[list(np.unravel_index(int(apart.argmax()), apart.shape))]
        for spot in spots:
            yield np.array([spot + shifts[other], spot + shifts[unit]])

    def _spots(self, unit: str, other: str) -> Floats:
        found: list[tuple[bool, Floats]] = []
        for low, high in self._rooms([unit]):
            for a, b in self._rooms([other]):
                near, far = np.maximum(low, a), np.minimum(high, b)
                if (far - near >= -NEAR).all():
                    found.append((bool((far - near >= -CONTACT).all()), (near + far) / 2))
        touch = any(touching for touching, _ in found)
        return np.array([spot for touching, spot in found if touching == touch]).reshape(-1, 3)


def _share(one: Any, other: Any) -> float:
    """How much of the smaller the two have in common."""
    least = min(one.area(), other.area())
    return float((one ^ other).area() / least) if least else 0.0


def _across(way: Floats) -> Floats:
    u = np.cross(np.eye(3)[int(np.argmin(np.abs(way)))], way)
    u /= np.linalg.norm(u)
    return np.array([u, np.cross(way, u), way])


def _shifted(at: Point3, by: Floats) -> Point3:
    """To a thousandth of a mm: no number of it is ever shown."""
    x, y, z = (value + Fraction(round(float(step) * 1000), 1000) for value, step in zip(at, by, strict=True))
    return (x, y, z)
