"""Which sizes a part's drawing must give: each once, in the view where it shows best.

Whole sizes come from the part, the rest from the bodies its cuts take away, so that the numbers are those
of the wood that is left.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from benchalong.drawing.own_sizes import SIZES
from benchalong.drawing.positions import POSITIONS
from benchalong.drawing.remarks import likeness, notes
from benchalong.drawing.text import HOLE
from benchalong.drawing.views import LOOKING, ViewName
from benchalong.drawing.wanted import (
    SHOULDERS,
    WHOLE,
    Box,
    Point,
    Range,
    RoundSize,
    Span,
    Wanted,
    Within,
    around_all,
    prism_box,
)
from benchalong.ground.lengths import ZERO, Length
from benchalong.plan.model import AXES, Axis, Circle, Corner, Cut, Part, Prism

SLOPING, NARROW = ("slot",), "narrow width"
"""Cuts that lie square to no view, and the size of one that narrows: they stand in the list."""
MOST_POSITIONS = 12
"""More places of corners and centres than this stand in a list, by letters."""


def wanted_sizes(part: Part, *, rather: str = "") -> Wanted:
    """Each size once; equal cuts give their own sizes once and a note that they are alike. `rather` names the
    edge to be shown where either would do."""
    views = chosen_views(part, rather=rather)
    points = _points(part)
    told: set[tuple[object, ...]] = set()
    spans, rounds = list(_whole_sizes(part, views)), list[RoundSize]()
    for cut in (cut for cut in part.cuts if cut.takes):
        inside = Within(part, cut, views)
        is_listed = bool(points) and _is_told_by_points(cut)
        if likeness(cut) not in told:
            spans += SIZES[cut.kind](inside)
            rounds += [one for one in _rounds(inside) if one.sign != "R" or not is_listed]
        if not is_listed:
            spans += POSITIONS[cut.kind](inside)
        told.add(likeness(cut))
    loose = dict.fromkeys(
        (f"{cut.name}: {size.name}", size.length)
        for cut in part.cuts
        for size in cut.sizes
        if not cut.takes or cut.kind in SLOPING or size.name == NARROW
    )
    return Wanted(views, _once(spans), _each_round(rounds), points, tuple(loose), tuple(notes(part)))


def _points(part: Part) -> tuple[Point, ...]:
    """Corners and centres on the face, if size lines for all of them would be too many."""
    found: dict[Point, None] = {}
    for prism in (prism for cut in part.cuts if _is_told_by_points(cut) for prism in cut.takes):
        found.update(dict.fromkeys(one for one in _points_of(prism) if not _is_corner(one, part)))
    inner = [value for point in found for value in (("along", point.along), ("across", point.across))]
    return tuple(sorted(found, key=_along_first)) if len(set(inner)) > MOST_POSITIONS else ()


def _along_first(point: Point) -> tuple[Length, Length, Length]:
    return (point.along, point.across, point.radius)


def _points_of(prism: Prism) -> list[Point]:
    if isinstance(prism.shape, Circle):
        return [Point(*prism.shape.centre, ZERO)]
    return [Point(*corner.at, corner.radius) for corner in prism.shape.corners]


def _is_told_by_points(cut: Cut) -> bool:
    return cut.kind in ("outline", "hole") and all(prism.axis == "down" for prism in cut.takes)


def _is_corner(point: Point, part: Part) -> bool:
    """Whether it is a sharp corner of the part's own box."""
    return point.along in (0, part.length) and point.across in (0, part.width) and not point.radius


def _each_round(rounds: Sequence[RoundSize]) -> tuple[RoundSize, ...]:
    """Each radius once for the whole part; a diameter for each kind of hole."""
    kept: dict[object, RoundSize] = {}
    for one in rounds:
        kept.setdefault((one.sign, one.length, one.view) if one.sign == "R" else one, one)
    return tuple(kept.values())


def chosen_views(part: Part, *, rather: str = "") -> tuple[ViewName, ...]:
    """The face, and of edges and ends the one with more cuts; edge a, or the edge named, and end b when
    equal."""
    seen = [surface for cut in part.cuts for surface in cut.surfaces]
    edge: ViewName = (
        "edge b" if seen.count("edge b") + (rather == "edge b") > seen.count("edge a") else "edge a"
    )
    end: ViewName = "end a" if seen.count("end a") > seen.count("end b") else "end b"
    return ("face", edge, end)


def _whole_sizes(part: Part, views: tuple[ViewName, ...]) -> Iterator[Span]:
    face, edge, end = views
    box = Box((ZERO, part.length), (ZERO, part.width), (ZERO, part.thickness))
    yield Span("length", "along", ZERO, part.length, (face, edge), box, WHOLE)
    shoulders = shoulder_range(part)
    if shoulders is not None:
        yield Span("length between shoulders", "along", *shoulders, (face, edge), box, SHOULDERS)
    yield Span("width", "across", ZERO, part.width, (face, end), box, WHOLE)
    yield Span("thickness", "down", ZERO, part.thickness, (end, edge), box, WHOLE)


def shoulder_range(part: Part) -> Range | None:
    """From shoulder to shoulder of a part with tongues or tenons on its ends; None for others."""
    first, last = ZERO, part.length
    for cut in part.cuts:
        if cut.kind in ("tongue", "tenon") and cut.takes:
            box = around_all([prism_box(prism, part) for prism in cut.takes])
            first = max(first, box.along[1]) if "end a" in cut.surfaces else first
            last = min(last, box.along[0]) if "end b" in cut.surfaces else last
    return (first, last) if (first > 0 or last < part.length) and first < last else None


def _rounds(inside: Within) -> list[RoundSize]:
    """The first circle of a cut, or each radius of its outlines once."""
    looked_at: dict[Axis, ViewName] = {"down": "face", "across": inside.edge, "along": inside.end}
    found: dict[tuple[str, Length], RoundSize] = {}
    for prism in inside.cut.takes:
        view = looked_at[prism.axis]
        for what, sign, length, spot, radius in _round_shapes(prism):
            flipped = LOOKING[view].right != next(axis for axis in AXES if axis != prism.axis)
            centre = (spot[1], spot[0]) if flipped else spot
            name = f"{inside.called}: {what}"
            found.setdefault((sign, length), RoundSize(name, sign, length, view, centre, radius))
    return list(found.values())


def _round_shapes(prism: Prism) -> Iterator[tuple[str, str, Length, tuple[float, float], float]]:
    shape = prism.shape
    if isinstance(shape, Circle):
        centre = (float(shape.centre[0]), float(shape.centre[1]))
        yield "diameter", HOLE, shape.diameter, centre, float(shape.diameter) / 2
        return
    for i, corner in enumerate(shape.corners):
        if corner.radius > 0:
            yield (
                "radius",
                "R",
                corner.radius,
                _arc_middle(shape.corners[i - 1], corner, shape.corners[i + 1 - len(shape.corners)]),
                0.0,
            )


def _arc_middle(before: Corner, corner: Corner, after: Corner) -> tuple[float, float]:
    """The point of a round corner that is nearest to the sharp one."""
    x, y = float(corner.at[0]), float(corner.at[1])
    ways = [(float(one.at[0]) - x, float(one.at[1]) - y) for one in (before, after)]
    (ax, ay), (bx, by) = ((u / (math.hypot(u, v) or 1), v / (math.hypot(u, v) or 1)) for u, v in ways)
    half = math.acos(max(-1.0, min(1.0, ax * bx + ay * by))) / 2
    far = math.hypot(ax + bx, ay + by)
    if far < 1e-9 or half < 1e-6:
        return (x, y)
    away = float(corner.radius) * (1 / math.sin(half) - 1) / far
    return (x + (ax + bx) * away, y + (ay + by) * away)


def _once(spans: Sequence[Span]) -> tuple[Span, ...]:
    """Each position once, and each own size once a view; the first that asked names it."""
    kept: dict[tuple[object, ...], Span] = {}
    for span in spans:
        view = span.views[0] if span.asked_of else ""
        kept.setdefault((span.axis, span.start, span.end, view, span.asked_of), span)
    owned = {key[:3] for key in kept if key[4]}
    return tuple(span for key, span in kept.items() if key[4] or key[:3] not in owned)
