"""Why do two pieces of wood lie in each other? What can be told from their cuts.

Three causes from a cut that was meant to take the other part in: it stops too soon, it isn't deep enough,
it isn't wide enough there. Otherwise: would the two fit if one of them were turned, or were the other hand?
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np

from benchalong.ground.lengths import Length
from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.flips import HALF_TURNS, MIRRORED, Flip, is_mirrored
from benchalong.plan.joints.sides import outward
from benchalong.plan.model import AXES, Axis, Cut, Surface
from benchalong.plan.turns import opposite
from benchalong.workings.cut_checks.bounds import Bounds, meets
from benchalong.workings.overlap import lie_in_each_other
from benchalong.workings.placed import OFF_PLANE, Lying, Placed, Relation
from benchalong.workings.telling import way_in

RECEIVES = ("groove", "dado", "mortise", "rabbet")
CLOSE = Length(1, 1_000)
"""Faces nearer than this, in mm, are taken for one when a region of overlap is compared with a cut."""


@dataclass(frozen=True)
class Cause:
    """Where a cut that receives leaves off too soon."""

    code: str
    cut: Cut
    axis: Axis
    side: Surface
    """Of the receiving part: the one the cut stops short of, or the one it goes into."""
    by: Length
    stops: Length
    """For a stop: how far short of that side."""
    width: Length
    """How wide the cut is along that axis."""


def cause_in(lying: Lying, region: Bounds, enters: Bounds) -> Cause | None:
    """The cut of this part that a region of overlap, in this part's directions, goes beyond.

    `enters` is the room the other takes up. What goes further beyond a cut than the cut is large was never
    meant for it. A shoulder that runs into the wood beside a groove is no tongue too thick: its own end lies
    elsewhere.
    """
    found = [
        cause
        for cut, room in _receiving(lying)
        if meets(room, enters) and (cause := _cause(lying, cut, room, region)) is not None
        if cause.code == "past-stop" or cause.by <= cause.width
        if cause.code != "too-narrow" or _has_its_end(cut, region, enters)
    ]
    return min(found, key=lambda cause: cause.by, default=None)


def _has_its_end(cut: Cut, region: Bounds, enters: Bounds) -> bool:
    """Whether the region reaches as deep under the cut's surface as what enters does."""
    lies = SURFACES[cut.surfaces[0]]
    deep = 0 if lies.is_far else 1
    return abs(region[lies.inward][deep] - enters[lies.inward][deep]) <= CLOSE


def _receiving(lying: Lying) -> Iterator[tuple[Cut, Bounds]]:
    for cut in lying.part.cuts:
        if cut.kind in RECEIVES:
            yield from ((cut, prism.room) for prism in cut.takes)


def _cause(lying: Lying, cut: Cut, room: Bounds, region: Bounds) -> Cause | None:
    """The region lies against one end of the cut's room, and within it in the other two directions."""
    beyond = [axis for axis in AXES if not _within(region[axis], room[axis])]
    if len(beyond) != 1:
        return None
    axis = beyond[0]
    (low, high), (start, stop) = region[axis], room[axis]
    is_far = abs(low - stop) <= CLOSE
    if not is_far and abs(high - start) > CLOSE:
        return None
    whole = lying.part.box[AXES.index(axis)]
    side = next(s for s, d in SURFACES.items() if d.inward == axis and d.is_far == is_far)
    lies = SURFACES[cut.surfaces[0]]
    run: Axis = "across" if cut.kind == "dado" else lies.run
    if axis in {SURFACES[surface].inward for surface in cut.surfaces}:
        code = "too-shallow"
    else:
        code = "past-stop" if axis == run and cut.kind != "mortise" else "too-narrow"
    return Cause(code, cut, axis, side, high - low, whole - stop if is_far else start, stop - start)


def _within(inner: tuple[Length, Length], outer: tuple[Length, Length]) -> bool:
    return outer[0] - CLOSE <= inner[0] and inner[1] <= outer[1] + CLOSE


@dataclass(frozen=True)
class Turned:
    """What would let it fit: a part turned within its own box, or its mirror image."""

    lying: Lying
    flip: Flip

    @property
    def is_other_hand(self) -> bool:
        return len(self.flip) % 2 == 1


def turned_to_fit(placed: Placed, how: Relation, one: Lying, other: Lying) -> Turned | None:
    """The least change of either part's turn with which the two no longer lie in each other."""
    for flip in FLIPS:
        for lying, is_first in ((other, False), (one, True)):
            if lying.part.cuts and _fits(placed, how, flip, is_first=is_first):
                return Turned(lying, flip)
    return None


FLIPS: tuple[Flip, ...] = (*HALF_TURNS[1:], MIRRORED, *(MIRRORED ^ half for half in HALF_TURNS[1:]))


def _fits(placed: Placed, how: Relation, flip: Flip, *, is_first: bool) -> bool:
    one, other = placed.body(how.first), placed.body(how.second)
    box = placed.solids[how.first if is_first else how.second].box
    if is_first:
        one = _flipped(one, box, flip)
    else:
        other = _flipped(other, box, flip)
    return not lie_in_each_other(one, other.transform(how.matrix).translate(OFF_PLANE.tolist()))


def _flipped(body: Any, box: tuple[float, float, float], flip: Flip) -> Any:
    signs = [-1.0 if axis in flip else 1.0 for axis in AXES]
    moves = [size if axis in flip else 0.0 for axis, size in zip(AXES, box, strict=True)]
    return body.transform(np.column_stack([np.diag(signs), moves]))


def turn_words(placed: Placed, fits: Turned) -> str:
    """What to write at its place instead."""
    copy, written = fits.lying.copy, fits.lying.written
    within = copy.mark.rpartition("/")[0]
    said = [
        f"{key}: {way_in(placed, within, opposite(way))} instead of {way_in(placed, within, way)}"
        for key, axis, way in (
            ("along", "along", outward("end b", written)),
            ("face", "down", outward("face", written)),
        )
        if axis in fits.flip
    ]
    if not fits.is_other_hand:
        return f"{copy.mark} looks turned the wrong way; place it with {' and '.join(said)}"
    if is_mirrored(written) != is_mirrored(placed.frames[within]):
        said.append("without its mirror")
    else:
        said.append("mirror: left to right")
    return f"{copy.mark} looks like the wrong hand; place it with {' and '.join(said)}"
