"""Something that turns about an axis or slides, moved through its whole travel: what it runs into.

A slide is decided at once, on the sheet square to its way. A turn is made in exact small turns: so many that
nothing between two of them stands further out than `CHORD`; where bodies run into each other, the angle at
which they do so most is then searched for.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import product
from math import acos, ceil, radians
from typing import Any

import numpy as np

from benchalong.workings.blocking import Body, Views, Way, room_before, shared_width, sheet_of
from benchalong.workings.bodies import Floats
from benchalong.workings.placed import Placed

CHORD = 0.02
"""How far a turn may pass something by unseen, in mm."""
TOUCHING = 0.02
"""As for parts that stand still: what lies in each other by no more only touches, mm."""
FINELY = 24
"""Steps of the search for the deepest angle: each takes a third off the stretch it lies in."""


@dataclass(frozen=True)
class Hit:
    """Two copies that run into each other."""

    mover: int
    other: int
    by: float
    """How much the one would have to be smaller there, in mm."""
    at: float
    """Where it begins: degrees from closed, or mm out."""


@dataclass(frozen=True, eq=False)
class Turning:
    point: Floats
    way: Floats
    """Of the axis; looking along it, it opens clockwise."""
    angle: float
    """Degrees."""

    def matrices(self, degrees: Floats) -> Floats:
        """(n, 3, 3), by the formula of Rodrigues."""
        x, y, z = self.way.tolist()
        cross = np.array([[0, -z, y], [z, 0, -x], [-y, x, 0]])
        sine, cosine = (f(np.radians(degrees))[:, None, None] for f in (np.sin, np.cos))
        return np.asarray(np.eye(3) + sine * cross + (1 - cosine) * (cross @ cross))

    def turned(self, body: Body, degrees: float) -> Body:
        matrix = self.matrices(np.array([degrees]))[0]
        return Body(body.shape, matrix @ body.turn, matrix @ (body.at - self.point) + self.point)


@dataclass(frozen=True, eq=False)
class Sliding:
    way: Way
    travel: float
    """mm."""


class Sweep:
    """Bodies by their numbers, with their solids."""

    def __init__(self, placed: Placed, views: Views) -> None:
        self._placed = placed
        self._views = views

    def reach(self, motion: Turning | Sliding, movers: Sequence[Body]) -> tuple[Floats, Floats]:
        """The least and the greatest corner of the room it all goes through."""
        corners = np.concatenate([self.corners(body) for body in movers])
        if isinstance(motion, Sliding):
            ends = np.concatenate([corners, corners + motion.travel * np.array(motion.way)])
            return ends.min(axis=0), ends.max(axis=0)
        turns = motion.matrices(self._angles(motion, movers))
        swept = np.einsum("aij,cj->aci", turns, corners - motion.point) + motion.point
        return swept.min(axis=(0, 1)) - CHORD, swept.max(axis=(0, 1)) + CHORD

    def corners(self, body: Body) -> Floats:
        """(8, 3): of its box, in the room."""
        own = np.array(list(product(*((0.0, side) for side in self._placed.solids[body.shape].box))))
        return np.asarray(own @ body.turn.T + body.at)

    # what slides

    def slides_into(
        self, motion: Sliding, movers: Sequence[tuple[int, Body]], others: Sequence[tuple[int, Body]]
    ) -> list[Hit]:
        sheet = sheet_of(motion.way)
        found = []
        for one, mover in movers:
            a = self._views.along(mover, sheet)
            for two, other in others:
                b, off = self._views.along(other, sheet), sheet @ (other.at - mover.at)
                if (a.low[:2] >= b.high[:2] + off[:2]).any() or (a.high[:2] <= b.low[:2] + off[:2]).any():
                    continue
                room = room_before(b, a, off)
                if room is not None and room < motion.travel - TOUCHING:
                    beside = shared_width(b, a, off, motion.travel)
                    found.append(Hit(one, two, min(motion.travel - room, beside), max(room, 0.0)))
        return found

    # what turns

    def turns_into(
        self, motion: Turning, movers: Sequence[tuple[int, Body]], others: Sequence[tuple[int, Body]]
    ) -> list[Hit]:
        if not movers or not others:
            return []
        angles = self._angles(motion, [body for _, body in movers])
        still = np.array([self.corners(body) for _, body in others])
        found = []
        for one, mover in movers:
            near = self._near(motion, mover, angles, still)
            for place in np.flatnonzero(near.any(axis=0)).tolist():
                two, other = others[place]
                hit = self._turned_hit(motion, (one, mover), (two, other), angles, near[:, place])
                if hit is not None:
                    found.append(hit)
        return found

    def _angles(self, motion: Turning, movers: Sequence[Body]) -> Floats:
        points = np.concatenate([self.corners(body) for body in movers]) - motion.point
        reach = float(np.linalg.norm(np.cross(points, motion.way), axis=1).max())
        step = 2 * acos(max(-1.0, 1 - CHORD / max(reach, CHORD)))
        return np.linspace(0, motion.angle, max(2, ceil(radians(motion.angle) / step) + 1))

    def _near(self, motion: Turning, mover: Body, angles: Floats, still: Floats) -> Any:
        """(angles, others): whether the boxes meet; tried along the directions of both."""
        turns = motion.matrices(angles)
        corners = np.einsum("aij,cj->aci", turns, self.corners(mover) - motion.point) + motion.point
        low, high = corners.min(axis=1), corners.max(axis=1)
        meet = (high[:, None] > still.min(axis=1) + TOUCHING) & (low[:, None] < still.max(axis=1) - TOUCHING)
        near = meet.all(axis=2)
        rows = np.flatnonzero(near.any(axis=1))
        own = np.einsum("aij,jk->aki", turns[rows], mover.turn)  # rows: the mover's own directions, turned
        spans = np.einsum("aki,aci->akc", own, corners[rows])
        others = np.einsum("aki,oci->aokc", own, still)
        apart = (others.min(axis=3) >= spans.max(axis=2)[:, None] - TOUCHING) | (
            others.max(axis=3) <= spans.min(axis=2)[:, None] + TOUCHING
        )
        near[rows] &= ~apart.any(axis=2)
        return near

    def _turned_hit(
        self, motion: Turning, mover: tuple[int, Body], other: tuple[int, Body], angles: Floats, near: Any
    ) -> Hit | None:
        still = self._solid(other[1])

        def depth(angle: float) -> float:
            return _depth(self._solid(motion.turned(mover[1], angle)) ^ still)

        depths = np.array(
            [depth(angle) if may else 0.0 for angle, may in zip(angles.tolist(), near.tolist(), strict=True)]
        )
        if depths.max() <= TOUCHING:
            return None
        most = int(depths.argmax())
        by = _greatest(depth, float(angles[max(0, most - 1)]), float(angles[min(len(angles) - 1, most + 1)]))
        begins = float(angles[int(np.flatnonzero(depths > TOUCHING)[0])])
        return Hit(mover[0], other[0], max(by, float(depths.max())), begins)

    def _solid(self, body: Body) -> Any:
        return self._placed.body(body.shape).transform(np.column_stack([body.turn, body.at]))


def _depth(both: Any) -> float:
    """How deep two bodies lie in each other: the least side of the room of what they share, in mm."""
    if both.is_empty() or 2 * both.volume() <= TOUCHING / 10 * both.surface_area():
        return 0.0
    bounds = both.bounding_box()
    return float(min(bounds[n + 3] - bounds[n] for n in range(3)))


def _greatest(value: Callable[[float], float], low: float, high: float) -> float:
    """Of a function with one hump between the two, by thirds."""
    for _ in range(FINELY):
        one, two = low + (high - low) / 3, high - (high - low) / 3
        if value(one) < value(two):
            low = one
        else:
            high = two
    return value((low + high) / 2)
