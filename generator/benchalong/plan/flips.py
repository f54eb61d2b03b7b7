"""A part turned end for end, edge for edge, or face for back; and its mirror image.

Flipping one direction, or all three, makes the mirror image; flipping two is a half turn about the third,
which any piece of wood can make. So a mirrored copy is another piece of wood exactly when no half turn
brings its cuts back to those of the first.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import TypeAlias

from benchalong.ground.lengths import Length, Point2, Point3
from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.model import (
    AXES,
    Axis,
    Circle,
    Corner,
    Cut,
    CutKind,
    CutSize,
    Outline,
    Prism,
    Surface,
    Turn,
)
from benchalong.plan.turns import moved, turned

Flip: TypeAlias = frozenset[Axis]
"""The directions that are turned round."""

UNFLIPPED: Flip = frozenset()
HALF_TURNS: tuple[Flip, ...] = (
    UNFLIPPED,
    frozenset(("along", "across")),
    frozenset(("across", "down")),
    frozenset(("along", "down")),
)
"""What a piece of wood can do and still fill the same box; first those that keep its face in sight."""
MIRRORED: Flip = frozenset(("across",))
"""The mirror image that keeps face and ends."""

SURFACE_PAIRS: dict[Axis, tuple[Surface, Surface]] = {
    "along": ("end a", "end b"),
    "across": ("edge a", "edge b"),
    "down": ("face", "back"),
}


def flipped_surface(surface: Surface, flip: Flip) -> Surface:
    for axis, (near, far) in SURFACE_PAIRS.items():
        if axis in flip and surface in (near, far):
            return far if surface == near else near
    return surface


def flipped_prism(prism: Prism, box: Point3, flip: Flip) -> Prism:
    """The body where it lies once the part is flipped within its box."""
    first, second = (axis for axis in AXES if axis != prism.axis)

    def point(at: Point2) -> Point2:
        return (_flipped(at[0], first, box, flip), _flipped(at[1], second, box, flip))

    shape: Outline | Circle
    if isinstance(prism.shape, Circle):
        shape = Circle(point(prism.shape.centre), prism.shape.diameter)
    else:
        shape = Outline(tuple(Corner(point(corner.at), corner.radius) for corner in prism.shape.corners))
    start, end = sorted(_flipped(value, prism.axis, box, flip) for value in (prism.start, prism.end))
    return Prism(prism.axis, shape, start, end, prism.outside)


def flipped_cut(cut: Cut, box: Point3, flip: Flip) -> Cut:
    """The same cut on the flipped part: its words follow its surfaces, and what is measured from an edge, end
    or face that has changed sides is measured anew from the one that is there now."""
    if not flip:
        return cut
    return replace(
        cut,
        surfaces=tuple(flipped_surface(surface, flip) for surface in cut.surfaces),
        where=_flipped_words(cut.where, flip),
        sizes=_flipped_sizes(cut, box, flip),
        takes=tuple(flipped_prism(prism, box, flip) for prism in cut.takes),
    )


SPANS: Mapping[tuple[CutKind, str], str] = {
    ("groove", "across"): "width",
    ("dado", "at"): "width",
    ("mortise", "at"): "length",
    ("mortise", "across"): "width",
    ("tenon", "at"): "width",
    ("tenon", "across"): "thickness",
    ("tongue", "across"): "thickness",
    ("hole", "at"): "",
    ("hole", "across"): "",
}
"""The size of what is placed by a size to its near wall; a hole is placed by its centre. A place that isn't
here is left out where its side has changed: the drawing tells it."""


def _flipped_sizes(cut: Cut, box: Point3, flip: Flip) -> tuple[CutSize, ...]:
    known = {size.name: size.length for size in cut.sizes}
    axes = _measured_along(cut)
    found = []
    for size in cut.sizes:
        axis = axes.get(size.name)
        if axis not in flip:
            found.append(size)
        elif size.name in ("from", "to") and cut.kind != "taper":
            other = "to" if size.name == "from" else "from"
            found.append(replace(size, name=other, length=_flipped(size.length, axis, box, flip)))
        elif (span := SPANS.get((cut.kind, size.name))) is not None:
            length = _flipped(size.length, axis, box, flip) - known.get(span, Length(0))
            found.append(replace(size, length=length))
    return tuple(sorted(found, key=lambda size: _place_of(size.name, cut)))


def _place_of(name: str, cut: Cut) -> int:
    """Where a size stands among a cut's: where it was, so that a turned cut still starts before it ends."""
    names = [size.name for size in cut.sizes]
    return names.index(name) if name in names else names.index("to" if name == "from" else "from")


def _measured_along(cut: Cut) -> Mapping[str, Axis]:
    """By name of a size that says where: the direction in which it is measured. An outline has none."""
    if not cut.surfaces:
        return {}
    lies = SURFACES[cut.surfaces[0]]
    run: Axis = "across" if cut.kind == "dado" else lies.run
    at: Axis = "along" if cut.kind == "dado" else lies.run
    return {"at": at, "across": lies.across, "from": run, "to": run}


def flipped_place(turn: Turn, at: Point3, box: Point3, flip: Flip) -> tuple[Turn, Point3]:
    """Turn and place that put the flipped part where the part was."""
    signs = tuple(-1 if axis in flip else 1 for axis in AXES)
    rows = [(row[0] * signs[0], row[1] * signs[1], row[2] * signs[2]) for row in turn]
    corner = tuple(box[n] if axis in flip else Length(0) for n, axis in enumerate(AXES))
    by = turned((corner[0], corner[1], corner[2]), turn)
    return (rows[0], rows[1], rows[2]), moved(at, by)


def is_mirrored(turn: Turn) -> bool:
    (a, b, c), (d, e, f), (g, h, i) = turn
    return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g) < 0


def _flipped(value: Length, axis: Axis, box: Point3, flip: Flip) -> Length:
    return box[AXES.index(axis)] - value if axis in flip else value


def _flipped_words(text: str, flip: Flip) -> str:
    for axis, (near, far) in SURFACE_PAIRS.items():
        if axis in flip:
            text = text.replace(near, "\0").replace(far, near).replace("\0", far)
    return text
