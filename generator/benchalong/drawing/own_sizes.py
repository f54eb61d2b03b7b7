"""Each kind of cut's own sizes, and the view in which each shows its true shape. One function a kind."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from benchalong.drawing.views import LOOKING, ViewName
from benchalong.drawing.wanted import Box, Span, Within, left_standing
from benchalong.ground.lengths import ZERO
from benchalong.plan.model import Axis, CutKind


def _groove_sizes(inside: Within) -> list[Span]:
    """Width and depth in the view along the groove where it runs out there, else where it is looked into."""
    box, edge, end = inside.box, inside.edge, inside.end
    if inside.lies_on("end"):
        return inside.own("width", "down", box.down, best=edge) + inside.own(
            "depth", "along", box.along, best=edge
        )
    if inside.lies_on("edge"):
        runs_out = inside.reaches(end)
        wide = inside.own("width", "down", box.down, best=end if runs_out else edge)
        return wide + inside.own("depth", "across", box.across, best=end if runs_out else "face")
    wide_axis: Axis = "across" if box.along[1] - box.along[0] >= box.across[1] - box.across[0] else "along"
    if wide_axis == "along":
        return _dado_sizes(inside)
    wide = inside.own("width", "across", box.across, best=end if inside.reaches(end) else "face")
    return wide + inside.own("depth", "down", box.down, best=end)


def _dado_sizes(inside: Within) -> list[Span]:
    box, edge = inside.box, inside.edge
    wide = inside.own("width", "along", box.along, best=edge if inside.reaches(edge) else "face")
    return wide + inside.own("depth", "down", box.down, best=edge)


def _arris_sizes(inside: Within) -> list[Span]:
    """Of a rabbet or bevel: its profile, seen from where it runs out."""
    box = inside.box
    if inside.lies_on("end"):
        profile = inside.edge
        return inside.own("width", "along", box.along, best=profile) + inside.own(
            "depth", "down", box.down, best=profile
        )
    profile = inside.end
    return inside.own("width", "across", box.across, best=profile) + inside.own(
        "depth", "down", box.down, best=profile
    )


def _tongue_sizes(inside: Within) -> list[Span]:
    box, rest = inside.box, left_standing(inside)
    if inside.lies_on("end"):
        long = inside.own("length", "along", box.along, best=inside.edge)
        return long + inside.own("thickness", "down", rest.down, best=inside.edge, box=box)
    long = inside.own("length", "across", box.across, best=inside.end)
    return long + inside.own("thickness", "down", rest.down, best=inside.end, box=box)


def _tenon_sizes(inside: Within) -> list[Span]:
    box, rest = inside.box, left_standing(inside)
    wide = inside.own("width", "across", rest.across, best="face", box=box)
    return _tongue_sizes(inside) + (wide if rest.across != (ZERO, inside.part.width) else [])


def _mortise_sizes(inside: Within) -> list[Span]:
    box = inside.box
    words: dict[Axis, str] = {"along": "length", "across": "width", "down": "width"}
    if inside.lies_on("edge"):
        words["across"], best = "depth", inside.edge
    elif inside.lies_on("end"):
        words.update({"across": "length", "along": "depth"})
        best = inside.end
    else:
        words["down"], best = "depth", "face"
    spans = []
    for axis, word in words.items():
        shown = best if axis != LOOKING[best].into else inside.edge if axis == "down" else "face"
        if word != "depth" or box.on(axis) != (ZERO, inside.whole(axis)):
            spans += inside.own(word, axis, box.on(axis), best=shown)
    return spans


def _hole_sizes(inside: Within) -> list[Span]:
    """The depth; the diameter stands at a leader."""
    axis = inside.cut.takes[0].axis if inside.cut.takes else "down"
    if inside.box.on(axis) == (ZERO, inside.whole(axis)):
        return []
    best: dict[Axis, ViewName] = {"down": inside.edge, "across": "face", "along": "face"}
    return inside.own("depth", axis, inside.box.on(axis), best=best[axis])


def _notch_sizes(inside: Within) -> list[Span]:
    box = inside.box
    return inside.own("length", "along", box.along, best="face") + inside.own(
        "width", "across", box.across, best="face"
    )


def _taper_sizes(inside: Within) -> list[Span]:
    """How much is taken where most is taken."""
    if inside.lies_on("edge"):
        return inside.own("takes", "across", inside.box.across, best="face", box=_deepest(inside))
    return inside.own("takes", "down", inside.box.down, best=inside.edge, box=_deepest(inside))


def _deepest(inside: Within) -> Box:
    """The end of a taper at which most is taken: the end of the part it runs out at."""
    box, end = inside.box, inside.part.length
    side = (end, end) if box.along[1] == end and box.along[0] > 0 else (box.along[0], box.along[0])
    return replace(box, along=side)


def _no_spans(inside: Within) -> list[Span]:  # noqa: ARG001
    return []


SIZES: Mapping[CutKind, Callable[[Within], list[Span]]] = {
    "groove": _groove_sizes,
    "dado": _dado_sizes,
    "rabbet": _arris_sizes,
    "tongue": _tongue_sizes,
    "tenon": _tenon_sizes,
    "mortise": _mortise_sizes,
    "hole": _hole_sizes,
    "notch": _notch_sizes,
    "bevel": _arris_sizes,
    "taper": _taper_sizes,
    "outline": _no_spans,
    "slot": _no_spans,
}
