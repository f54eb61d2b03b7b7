"""What each kind of cut takes away. One function a kind; tongues and tenons take what stands beside them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TypeAlias

from benchalong.ground.lengths import ZERO, Length
from benchalong.plan.cuts.given import Given
from benchalong.plan.cuts.surfaces import SURFACES, Range, block, flat_shape, inward
from benchalong.plan.model import Axis, Circle, Outline, Prism, Surface

Taken: TypeAlias = tuple[Prism, ...]
Point: TypeAlias = dict[Axis, Length]


def groove(cut: Given) -> Taken:
    """A channel along the run of one surface."""
    lies = cut.directions
    return (
        block(
            {
                lies.run: cut.stretch(lies.run),
                lies.across: cut.room("across", cut.lengths["width"], lies.across),
                lies.inward: inward(cut.box, cut.on, ZERO, cut.depth()),
            },
            drawn=lies.run,
        ),
    )


def dado(cut: Given) -> Taken:
    """A channel across the grain, in face or back."""
    return (
        block(
            {
                "along": cut.room("at", cut.lengths["width"], "along"),
                "across": cut.stretch("across"),
                "down": inward(cut.box, cut.on, ZERO, cut.depth()),
            },
            drawn="across",
        ),
    )


def rabbet(cut: Given) -> Taken:
    """A step along an arris: `width` lies in the face or back, `depth` goes into the thickness."""
    side, flat = cut.surfaces
    run = SURFACES[side].run
    return (
        block(
            {
                run: cut.stretch(run),
                SURFACES[side].inward: inward(cut.box, side, ZERO, cut.lengths["width"]),
                "down": inward(cut.box, flat, ZERO, cut.depth()),
            },
            drawn=run,
        ),
    )


def tongue(cut: Given) -> Taken:
    """What stands beside a tongue: both cheeks, over the whole run."""
    lies = cut.directions
    stands = inward(cut.box, cut.on, ZERO, cut.lengths["length"])
    cheeks = _beside(cut.room("across", cut.lengths["thickness"], "down"), cut.whole("down"))
    run = (ZERO, cut.whole(lies.run))
    return tuple(
        block({lies.run: run, lies.inward: stands, "down": cheek}, drawn=lies.run) for cheek in cheeks
    )


def tenon(cut: Given) -> Taken:
    """What stands beside a tenon: cheeks over the whole width, and what is left at its two edges."""
    stands = inward(cut.box, cut.on, ZERO, cut.lengths["length"])
    thick = cut.room("across", cut.lengths["thickness"], "down")
    wide = cut.room("at", cut.lengths["width"], "across")
    width = (ZERO, cut.whole("across"))
    cheeks = [(width, cheek) for cheek in _beside(thick, cut.whole("down"))]
    edges = [(edge, thick) for edge in _beside(wide, cut.whole("across"))]
    return tuple(
        block({"along": stands, "across": across, "down": down}, drawn="along")
        for across, down in cheeks + edges
    )


def mortise(cut: Given) -> Taken:
    """A square-cornered hole."""
    lies = cut.directions
    return (
        block(
            {
                lies.run: cut.room("at", cut.lengths["length"], lies.run),
                lies.across: cut.room("across", cut.lengths["width"], lies.across),
                lies.inward: inward(cut.box, cut.on, ZERO, cut.depth()),
            },
            drawn=lies.inward,
        ),
    )


def hole(cut: Given) -> Taken:
    """A round hole, measured to its centre."""
    lies = cut.directions
    centre = (cut.middle("at", lies.run), cut.middle("across", lies.across))
    start, end = inward(cut.box, cut.on, ZERO, cut.depth())
    return (Prism(lies.inward, Circle(centre, cut.lengths["diameter"]), start, end),)


def notch(cut: Given) -> Taken:
    """A square bite right through the thickness, out of a corner, an edge or an end."""
    through = (ZERO, cut.whole("down"))
    length, width = cut.lengths["length"], cut.lengths["width"]
    if len(cut.surfaces) == 2:
        end, edge = cut.surfaces
        along, across = inward(cut.box, end, ZERO, length), inward(cut.box, edge, ZERO, width)
    elif cut.directions.inward == "across":
        along, across = cut.room("at", length, "along"), inward(cut.box, cut.on, ZERO, width)
    else:
        along, across = inward(cut.box, cut.on, ZERO, length), cut.room("at", width, "across")
    return (block({"along": along, "across": across, "down": through}, drawn="down"),)


def bevel(cut: Given) -> Taken:
    """A sloping face along an arris: `width` in the face or back, `depth` down from it."""
    side, flat = cut.surfaces
    lies = SURFACES[side]
    corner = {lies.inward: _under(cut, side, ZERO), "down": _under(cut, flat, ZERO)}
    points: tuple[Point, ...] = (
        corner,
        {**corner, lies.inward: _under(cut, side, cut.lengths["width"])},
        {**corner, "down": _under(cut, flat, cut.lengths["depth"])},
    )
    return (Prism(lies.run, flat_shape(points, lies.run), ZERO, cut.whole(lies.run)),)


def taper(cut: Given) -> Taken:
    """A slope along the part: nothing taken at `from`, `takes` taken at `to` and beyond."""
    lies = cut.directions
    start, stop, takes = cut.lengths["from"], cut.lengths["to"], cut.lengths["takes"]
    beyond = cut.whole("along") if stop > start else ZERO
    profile = [(start, ZERO), (stop, takes), (beyond, takes), (beyond, ZERO)]
    if stop == beyond:
        del profile[2]
    points: tuple[Point, ...] = tuple(
        {"along": along, lies.inward: _under(cut, cut.on, deep)} for along, deep in profile
    )
    drawn: Axis = "down" if lies.inward == "across" else "across"
    return (Prism(drawn, flat_shape(points, drawn), ZERO, cut.whole(drawn)),)


def outline(cut: Given) -> Taken:
    """A shape sawn through the thickness: what lies outside it goes, or what lies inside."""
    return (Prism("down", Outline(cut.corners), ZERO, cut.whole("down"), outside=cut.removes != "inside"),)


def _beside(stands: Range, whole: Length) -> list[Range]:
    """What is left of the whole on both sides of what stands."""
    return [side for side in ((ZERO, stands[0]), (stands[1], whole)) if side[0] < side[1]]


def _under(cut: Given, surface: Surface, deep: Length) -> Length:
    """A place on the surface's inward axis."""
    return inward(cut.box, surface, deep, deep)[0]


KINDS: Mapping[str, Callable[[Given], Taken]] = {
    "groove": groove,
    "dado": dado,
    "rabbet": rabbet,
    "tongue": tongue,
    "tenon": tenon,
    "mortise": mortise,
    "hole": hole,
    "notch": notch,
    "bevel": bevel,
    "taper": taper,
    "outline": outline,
}
