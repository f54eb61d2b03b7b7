"""Does a groove that runs right through show as a hole at an end of its part?

It does where nothing fills it just inside the end and no other piece of wood covers it from outside. Copies
that don't fit are left out: what would fill their grooves isn't where it should be.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import manifold3d

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.flips import SURFACE_PAIRS
from benchalong.plan.model import AXES, Axis, Cut, Part, Plan, Surface
from benchalong.plan.turns import axis_of
from benchalong.workings.clashes import CLASHES
from benchalong.workings.cut_checks.bounds import Bounds, holds
from benchalong.workings.meetings import MEETINGS, troubled_copies
from benchalong.workings.placed import PLACED, Lying, Placed, Relation, relation
from benchalong.workings.telling import Telling, called, cut_at, likewise, the
from benchalong.workings.working import Worked, Working

INSIDE, OUTSIDE = 0.2, 5.0
"""In mm: how far into the groove, and out beyond the end, is looked. What covers the end within half the
way out hides it: the end of a tongue doesn't touch the bottom of its groove either."""
OPEN = 0.5
"""Of the mouth: less than this open is the room left at the bottom, more is a hole."""
Key = tuple[str, int, Surface, frozenset[Relation]]


@dataclass(frozen=True)
class Mouth:
    """Where a groove comes out of its part."""

    part: Part
    cut: Cut
    end: Surface
    room: Bounds

    @property
    def size(self) -> tuple[Length, Length]:
        """Width and depth of the groove."""
        lies = SURFACES[self.cut.surfaces[0]]
        (near, far), (mouth, bottom) = self.room[lies.across], self.room[lies.inward]
        return far - near, bottom - mouth


def look_at_groove_ends(plan: Plan, worked: Worked) -> tuple[None, tuple[Finding, ...]]:
    placed = worked[PLACED]
    shows: dict[Key, bool] = {}
    found: dict[object, list[tuple[Lying, Mouth]]] = {}
    troubled = troubled_copies(plan, worked[CLASHES].clashes, worked[MEETINGS])
    mouths = {name: tuple(_mouths(part)) for name, part in placed.solids.parts.items()}
    for lying in placed.lying:
        for number, mouth in enumerate(mouths[lying.copy.shape] if lying.copy.mark not in troubled else ()):
            near = [relation(lying, other) for other in _near(placed, lying, mouth.end)]
            key = (lying.copy.shape, number, mouth.end, frozenset(near))
            if key not in shows:
                shows[key] = _shows(placed, mouth, near)
            if shows[key]:
                found.setdefault((lying.copy.part, _place(mouth), *mouth.size), []).append((lying, mouth))
    return None, tuple(_finding(plan, same) for same in found.values())


def _near(placed: Placed, lying: Lying, end: Surface) -> Iterator[Lying]:
    """Those beside it that reach to the plane of this end."""
    way = lying.way(end)
    n = axis_of(way)
    plane = lying.room[way[n] > 0][n]
    for other in placed.beside[lying.number]:
        if other.copy.tilt != lying.copy.tilt or other.room[0][n] <= plane <= other.room[1][n]:
            yield other


def _mouths(part: Part) -> Iterator[Mouth]:
    """Of each groove the ends it runs out at; not where another cut has taken the wood round it."""
    for cut in part.cuts:
        if cut.kind != "groove" or not cut.takes:
            continue
        run: Axis = SURFACES[cut.surfaces[0]].run
        room, whole = cut.takes[0].room, part.box[AXES.index(run)]
        for end, (place, limit) in zip(
            SURFACE_PAIRS[run], zip(room[run], (Length(0), whole), strict=True), strict=True
        ):
            if place == limit and not _is_gone(part, cut, {**room, run: (limit, limit)}):
                yield Mouth(part, cut, end, {**room, run: (limit, limit)})


def _is_gone(part: Part, cut: Cut, mouth: Bounds) -> bool:
    return any(holds(prism.room, mouth) for other in part.cuts if other != cut for prism in other.takes)


def _shows(placed: Placed, mouth: Mouth, near: list[Relation]) -> bool:
    inside, outside = _slab(mouth, inwards=True), _slab(mouth, inwards=False)
    others = [placed.second(how) for how in near]
    return _open_share(inside, others) > OPEN and _open_share(outside, others) > OPEN


def _slab(mouth: Mouth, *, inwards: bool) -> Any:
    lies = SURFACES[mouth.end]
    spans = [[float(value) for value in mouth.room[axis]] for axis in AXES]
    up = lies.is_far is not inwards
    n = AXES.index(lies.inward)
    far = INSIDE if inwards else OUTSIDE
    spans[n] = [spans[n][0] - (0 if up else far), spans[n][1] + (far if up else 0)]
    return manifold3d.Manifold.cube([high - low for low, high in spans]).translate([low for low, _ in spans])


def _open_share(slab: Any, others: list[Any]) -> float:
    whole = slab.volume()
    filled = sum((slab ^ other).volume() for other in others)
    return 1.0 - float(filled / whole)


def _finding(plan: Plan, same: list[tuple[Lying, Mouth]]) -> Finding:
    telling, (lying, first) = Telling(plan), same[0]
    width, depth = first.size
    message = (
        f"the groove in {the(lying.named(first.cut.surfaces[0]))} of {called(lying)} "
        f"comes out at {the(lying.named(first.end))} and shows there"
        f" as a hole of {telling.shown(width)} x {telling.shown(depth)}"
    )
    also = likewise(f"{other.named(mouth.end)} of {other.copy.mark}" for other, mouth in same[1:])
    remedy = (
        f"stop it {telling.shown(depth)} or more short of that end, fill it, or leave it if "
        "nobody sees that end"
    )
    sizes = tuple(sorted({name for size in first.cut.sizes for name in size.sizes}))
    numbers = {"width": width, "depth": depth}
    return Finding(
        "groove-end-shows",
        "doubt",
        _place(first),
        first.part.id,
        message[0].upper() + message[1:] + also,
        remedy,
        numbers,
        sizes,
    )


def _place(mouth: Mouth) -> Place:
    return cut_at(mouth.part.id, mouth.cut)


GROOVE_ENDS: Working[None] = Working(
    "groove ends", "Does a groove show as a hole at an end?", look_at_groove_ends, (PLACED, CLASHES, MEETINGS)
)
