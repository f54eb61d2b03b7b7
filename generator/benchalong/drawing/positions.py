"""Where each kind of cut lies, counted as the plan's language counts: from end a, edge a, the face."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from benchalong.drawing.views import ViewName
from benchalong.drawing.wanted import Box, Span, Within, left_standing, prism_box
from benchalong.ground.lengths import Length
from benchalong.plan.model import AXES, Axis, Circle, CutKind, Outline, Part, Prism


def _groove_positions(inside: Within) -> list[Span]:
    box, edge, end = inside.box, inside.edge, inside.end
    if inside.lies_on("end"):
        near = inside.position("from the face", "down", box.down[0], best=edge)
        return near + inside.stops("across", best=end)
    if inside.lies_on("edge"):
        near = inside.position(
            "from the face", "down", box.down[0], best=end if inside.reaches(end) else edge
        )
        return near + inside.stops("along", best=edge)
    if box.along[1] - box.along[0] < box.across[1] - box.across[0]:
        return _dado_positions(inside)
    near = inside.position(
        "from edge a", "across", box.across[0], best=end if inside.reaches(end) else "face"
    )
    return near + inside.stops("along", best="face")


def _dado_positions(inside: Within) -> list[Span]:
    best = inside.edge if inside.reaches(inside.edge) else "face"
    near = inside.position("from end a", "along", inside.box.along[0], best=best)
    return near + inside.stops("across", best="face")


def _arris_positions(inside: Within) -> list[Span]:
    return inside.stops("across" if inside.lies_on("end") else "along", best="face")


def _tongue_positions(inside: Within) -> list[Span]:
    best = inside.edge if inside.lies_on("end") else inside.end
    return inside.position("from the face", "down", left_standing(inside).down[0], best=best)


def _tenon_positions(inside: Within) -> list[Span]:
    rest = left_standing(inside)
    return _tongue_positions(inside) + inside.position("from edge a", "across", rest.across[0], best="face")


def _mortise_positions(inside: Within) -> list[Span]:
    box = inside.box
    if inside.lies_on("edge"):
        return inside.position("from end a", "along", box.along[0], best=inside.edge) + inside.position(
            "from the face", "down", box.down[0], best=inside.edge
        )
    if inside.lies_on("end"):
        return inside.position("from edge a", "across", box.across[0], best=inside.end) + inside.position(
            "from the face", "down", box.down[0], best=inside.end
        )
    return inside.position("from end a", "along", box.along[0], best="face") + inside.position(
        "from edge a", "across", box.across[0], best="face"
    )


def _hole_positions(inside: Within) -> list[Span]:
    """Of each circle, its centre."""
    words: dict[Axis, str] = {"along": "from end a", "across": "from edge a", "down": "from the face"}
    best: dict[Axis, ViewName] = {"down": "face", "across": inside.edge, "along": inside.end}
    spans: list[Span] = []
    for prism in inside.cut.takes:
        if isinstance(prism.shape, Circle):
            flat = [axis for axis in AXES if axis != prism.axis]
            box = prism_box(prism, inside.part)
            for axis, value in zip(flat, prism.shape.centre, strict=True):
                word = f"centre {words[axis]}"
                spans += inside.position(word, axis, value, best=best[prism.axis], box=box)
    return spans


def _notch_positions(inside: Within) -> list[Span]:
    """None for a notch in a corner."""
    box, spans = inside.box, []
    if box.along[0] > 0 and box.along[1] < inside.part.length:
        spans += inside.position("from end a", "along", box.along[0], best="face")
    if box.across[0] > 0 and box.across[1] < inside.part.width:
        spans += inside.position("from edge a", "across", box.across[0], best="face")
    return spans


def _taper_positions(inside: Within) -> list[Span]:
    best = "face" if inside.lies_on("edge") else inside.edge
    return _stops_of_corners(inside, "along", best=best)


def _nothing(_: Within) -> list[Span]:
    """A slot lies in the middle of its mitre; its `where` says so."""
    return []


def _outline_positions(inside: Within) -> list[Span]:
    """Every corner that isn't on the part's own outline, by what it is away from end a and edge a."""
    return _stops_of_corners(inside, "along", best="face") + _stops_of_corners(inside, "across", best="face")


def _stops_of_corners(inside: Within, axis: Axis, *, best: ViewName) -> list[Span]:
    word = {"along": "corner from end a", "across": "corner from edge a", "down": "corner from the face"}[
        axis
    ]
    spans: list[Span] = []
    for prism in inside.cut.takes:
        if isinstance(prism.shape, Outline) and axis != prism.axis:
            column = [one for one in AXES if one != prism.axis].index(axis)
            values = sorted({corner.at[column] for corner in prism.shape.corners})
            for value in values:
                box = _corner_box(prism, column, value, inside.part)
                if 0 < value < inside.whole(axis):
                    spans += inside.position(word, axis, value, best=best, box=box)
    return spans


def _corner_box(prism: Prism, column: int, value: Length, part: Part) -> Box:
    """The room taken by the corners with one coordinate."""
    assert isinstance(prism.shape, Outline)
    here = tuple(corner for corner in prism.shape.corners if corner.at[column] == value)
    return prism_box(replace(prism, shape=Outline(here)), part)


POSITIONS: Mapping[CutKind, Callable[[Within], list[Span]]] = {
    "groove": _groove_positions,
    "dado": _dado_positions,
    "rabbet": _arris_positions,
    "tongue": _tongue_positions,
    "tenon": _tenon_positions,
    "mortise": _mortise_positions,
    "hole": _hole_positions,
    "notch": _notch_positions,
    "bevel": _arris_positions,
    "taper": _taper_positions,
    "outline": _outline_positions,
    "slot": _nothing,
}
