"""How deep two pieces of wood lie in each other, and where.

Judged by depth, 2 x volume / surface, not by volume: parts that only touch come out as sheets without
thickness. Those sheets are taken off an overlap before anything is measured, or a large shoulder that
touches would water down the depth of what lies in it: only what is still there when it is moved a hair in
every direction counts.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, cast

import manifold3d
import numpy as np

from benchalong.ground.lengths import Length
from benchalong.plan.model import AXES, Axis, Turn
from benchalong.plan.turns import Room
from benchalong.workings.placed import Lying, Placed, Range, Relation, own_ranges
from benchalong.workings.telling import exact

TOUCHING = 0.02
"""Parts that lie in each other by no more than this, in mm, only touch."""
HAIR = 0.004
"""In mm: thinner parts of an overlap than this are contact, not overlap."""
SHEET = 1e-3
"""In mm3: an overlap of less is contact, whatever its shape."""
FAR = 20_000.0
"""In mm: further than any part reaches."""


@dataclass(frozen=True)
class Region:
    """One body of wood that two parts both claim, in the first part's directions."""

    ranges: Mapping[Axis, Range]
    axis: Axis
    """Along which the second stands in the first, or the thinnest where that can't be told."""
    sign: int
    """Which way along it the second comes out again: 1 or -1."""
    volume: float

    @property
    def depth(self) -> Range:
        return self.ranges[self.axis]

    @property
    def room(self) -> Room:
        low, high = zip(*(self.ranges[axis] for axis in AXES), strict=True)
        return low, high


@dataclass(frozen=True)
class Clash:
    """Two copies that lie in each other."""

    one: Lying
    other: Lying
    how: Relation
    regions: tuple[Region, ...]
    """In the first one's directions, the deepest first."""

    @property
    def marks(self) -> frozenset[str]:
        return frozenset((self.one.copy.mark, self.other.copy.mark))

    def seen_by_other(self, region: Region) -> Mapping[Axis, Range]:
        assert self.how.is_square
        return own_ranges(region.room, cast(Turn, self.how.turn), self.how.at)


def lie_in_each_other(one: Any, other: Any) -> bool:
    """Whether two solids share wood, and don't only touch."""
    return bool(_bodies(one ^ other))


def regions(placed: Placed, how: Relation) -> tuple[Region, ...]:
    """Each body of the overlap, the deepest first; none when they only touch."""
    bodies = _bodies(placed.body(how.first) ^ placed.second(how))
    found = [_region(placed, how, body) for body in bodies]
    return tuple(sorted(found, key=lambda region: region.depth[0] - region.depth[1]))


def _bodies(both: Any) -> list[Any]:
    """What both take up, sheets taken off, in bodies that are more than a touch."""
    if both.is_empty() or both.volume() <= SHEET:
        return []
    return [body for body in _without_sheets(both).decompose() if _depth(body) > TOUCHING]


def _depth(body: Any) -> float:
    """A hair is given back, which taking off the sheets has taken."""
    surface = float(body.surface_area())
    return 2 * float(body.volume()) / surface + HAIR if surface else 0.0


def _without_sheets(both: Any) -> Any:
    """What is left when everything thinner than a hair is taken off."""
    half = HAIR / 2
    corners = [(x, y, z) for x in (-half, half) for y in (-half, half) for z in (-half, half)]
    core = both
    for corner in corners:
        core = core ^ both.translate(corner)
    return core


def _region(placed: Placed, how: Relation, core: Any) -> Region:
    low_x, low_y, low_z, high_x, high_y, high_z = core.bounding_box()
    half = HAIR / 2
    spans = [(low - half, high + half) for low, high in ((low_x, high_x), (low_y, high_y), (low_z, high_z))]
    ranges = {axis: (exact(low), exact(high)) for axis, (low, high) in zip(AXES, spans, strict=True)}
    axis, sign = _stands_in(placed, how, spans)
    return Region(ranges, axis, sign, float(core.volume()))


def _stands_in(placed: Placed, how: Relation, spans: list[tuple[float, float]]) -> tuple[Axis, int]:
    """Which way the second enters the first: along which it ends inside, while the first ends round it."""
    grown = [(low - 1e-3, high + 1e-3) for low, high in spans]
    box = manifold3d.Manifold.cube([high - low for low, high in grown]).translate([low for low, _ in grown])
    first = placed.body(how.first) ^ box
    second = placed.second(how) ^ box
    best: list[tuple[bool, float, int, int]] = []
    for n, (low, high) in enumerate(spans):
        ends = [[_is_flush(body, n, low, 0), _is_flush(body, n, high, 1)] for body in (first, second)]
        enters_up = ends[0][0] and not ends[1][0] and ends[1][1] and not ends[0][1]
        enters_down = ends[0][1] and not ends[1][1] and ends[1][0] and not ends[0][0]
        best.append((not (enters_up or enters_down), high - low, n, -1 if enters_up else 1))
    _, _, n, sign = min(best)
    return AXES[n], sign if not best[n][0] else _shorter_way(placed, how, n)


def _is_flush(body: Any, axis: int, value: float, high: int) -> bool:
    """Whether a body ends at this place of the axis and doesn't go on beyond it."""
    bounds = body.bounding_box()
    return bool(abs(bounds[axis + 3 * high] - value) < 5e-4)


def _shorter_way(placed: Placed, how: Relation, n: int) -> int:
    """1 when the second comes out sooner upwards along the axis."""
    first = placed.body(how.first).bounding_box()
    second = placed.second(how).bounding_box()
    return 1 if first[n + 3] - second[n] <= second[n + 3] - first[n] else -1


def thickness_there(placed: Placed, how: Relation, region: Region, axis: Axis, *, of_second: bool) -> Length:
    """How thick one of the two is along an axis of the first, where the region lies."""
    low, high = (np.array(side, dtype=float) for side in region.room)
    n = AXES.index(axis)
    middle, half = (low + high) / 2, (high - low) / 2 * 0.9
    half[n] = FAR
    probe = manifold3d.Manifold.cube((2 * half).tolist()).translate((middle - half).tolist())
    body = placed.second(how) if of_second else placed.body(how.first)
    bounds = (body ^ probe).bounding_box()
    return exact(bounds[n + 3] - bounds[n])
