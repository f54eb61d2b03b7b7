"""Two sides that lie flat against each other, held by glue alone, by screws or nails, or by dowels.

A screw goes right through what is cut in, in a hole that clears it, and holds in a pilot hole in what enters.
A dowel has a hole of its own size in both. All sit in a row along the middle of where the two touch, the same
from both ends. A size of 0 leaves its hole out: a nail needs no clearance.
"""

from __future__ import annotations

from collections.abc import Iterable

from benchalong.ground.lengths import Length, Point3
from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.flips import SURFACE_PAIRS
from benchalong.plan.joints.families.contact import contact, length_of, on_surface, row_of_points, spread
from benchalong.plan.joints.family import Family, Given, Loss
from benchalong.plan.joints.member import Side
from benchalong.plan.model import Surface


def goes_through(joint: Given, side: Side, partners: tuple[Side, ...]) -> Iterable[Loss]:
    """Clearance holes, drilled from where the heads will be; or one half of each dowel's hole."""
    for partner in partners:
        if _dowel(joint):
            yield from _dowel_holes(joint, side, _points(joint, side, partner))
        elif _is_screwed(joint):
            far = _opposite(side.surfaces[0])
            for point in _points(joint, side, partner):
                yield from _hole(side, far, point, joint["clearance"], depth=None)


def holds(joint: Given, side: Side, partners: tuple[Side, ...]) -> Iterable[Loss]:
    """Pilot holes; or the other half of each dowel's hole."""
    for partner in partners:
        points = _points(joint, partner, side)
        if _dowel(joint):
            yield from _dowel_holes(joint, side, points)
        elif _is_screwed(joint):
            for point in points:
                yield from _hole(side, side.surfaces[0], point, joint["pilot"], joint["pilot_depth"])


def _dowel(joint: Given) -> bool:
    return joint.sizes.get("dowel", 0) > 0


def _is_screwed(joint: Given) -> bool:
    return bool(joint.words.get("hardware"))


def _points(joint: Given, cut_in: Side, takes: Side) -> tuple[Point3, ...]:
    room, looks = contact(cut_in, takes), cut_in.looks[0]
    count = joint.words.get("count")
    places = spread(
        length_of(room, looks),
        from_end=joint["from_end"],
        every=joint["every"],
        count=int(count) if count else None,
    )
    return row_of_points(room, looks, places)


def _dowel_holes(joint: Given, side: Side, points: tuple[Point3, ...]) -> Iterable[Loss]:
    for point in points:
        yield from _hole(side, side.surfaces[0], point, joint["dowel"], joint["dowel_depth"])


def _hole(side: Side, on: Surface, point: Point3, diameter: Length, depth: Length | None) -> Iterable[Loss]:
    if diameter <= 0:
        return
    spot, lies = on_surface(point, side), SURFACES[on]
    lengths = {"diameter": diameter, "at": spot[lies.run], "across": spot[lies.across]}
    if depth is None:
        yield Loss("hole", (on,), lengths, {"depth": "through"})
    else:
        yield Loss("hole", (on,), {**lengths, "depth": depth})


def _opposite(surface: Surface) -> Surface:
    return next(
        far if surface == near else near for near, far in SURFACE_PAIRS.values() if surface in (near, far)
    )


def how_many(joint: Given, side: Side, partner: Side) -> int:
    return len(_points(joint, side, partner))


FAMILY = Family(cut_in=goes_through, takes=holds, pieces=how_many)
