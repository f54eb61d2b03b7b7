"""What doesn't stand square: once placed it is turned about a point of the room it took up until then."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from benchalong.ground.lengths import ORIGIN, Point3
from benchalong.ground.marks import Path
from benchalong.plan import model
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.relating import Laid, Stands
from benchalong.plan.standing_by import Spotted
from benchalong.plan.tilts import (
    SEEN_FROM,
    about_point,
    corners_of,
    point_in,
    room_around,
    rows_of,
    square,
    tilted,
)
from benchalong.plan.turns import after, moved, turned

DEGREES = re.compile(r"\s*(?:degrees?|°)\s*\Z")


def leaning(stands: Stands, one: Spotted, laid: Mapping[str, Laid], sums: Reckoning) -> Stands | None:
    """The copy where it lies then; None where its angle can't be told."""
    said = one.entry.place.turned
    path: Path = (*one.path, "turned", "clockwise")
    if said is None or not said.clockwise or said.seen_from not in SEEN_FROM:
        return None
    text = DEGREES.sub("", said.clockwise)
    degrees = sums.quantity(text, path)
    if degrees is None:
        return None
    if degrees.dimension:
        sums.say(path, f"this comes to {degrees.called}, not to an angle", "degrees: 15")
        return None
    rows = rows_of(degrees.value, said.seen_from)
    tilt = about_point(rows, point_in(stands.room, said.about))
    placed = _put(stands.placed, tilt)
    room = room_around(tilted(point, tilt) for point in _points(stands.placed, laid, sums))
    angle = frozenset(sums.follows(text))
    follows = angle.union(*stands.follows)
    placed = replace(placed, follows=tuple(sorted({*placed.follows, *angle})))
    return Stands(placed, room, (follows, follows, follows))


def _points(placed: model.Placed, laid: Mapping[str, Laid], sums: Reckoning) -> Iterator[Point3]:
    """The corners of every box in it, before this turn."""
    if placed.kind == "part":
        own: Iterable[Point3] = corners_of((ORIGIN, sums.draft.boxes[placed.of]))
    else:
        own = (
            tilted(point, inner.placed.tilt)
            for inner in laid[placed.of].stands.values()
            for point in _points(inner.placed, laid, sums)
        )
    yield from (moved(turned(point, placed.turn), placed.at) for point in own)


def _put(placed: model.Placed, tilt: model.Tilt) -> model.Placed:
    """A turn by right angles is one like any other; only what isn't square stays apart."""
    turn = square(tilt.turn)
    if turn is None:
        return replace(placed, tilt=tilt)
    return replace(placed, turn=after(placed.turn, turn), at=tilted(placed.at, tilt))
