"""The track saw: it comes to the work and cuts where its track lies."""

from __future__ import annotations

from benchalong.ground.lengths import Length
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, way
from benchalong.trade.ways.model import Cutter, Setting, Words
from benchalong.trade.ways.practice import BLADE_ABOVE, MITRE_SAW_WIDEST, TRACK_DEEPEST
from benchalong.trade.ways.refused import CURVED, INSIDE_CORNER, by_saw, too_flat
from benchalong.trade.ways.settings import degrees, length, slope_of, tapered

ON_FOAM: Words = ("Lay the wood on a sheet of waste or foam, its show side down, and saw into that.",)


def track(asked: Asked, *settings: Setting, does: str, fed: Length, rank: int) -> Answered:
    thick = asked.work.piece.thickness
    return asked.over(
        thick,
        TRACK_DEEPEST,
        "The wood is {} thick; usual track saws reach {}.",
        "Saw it at the table or band saw, or by hand.",
    ) or way(
        asked,
        Cutter("blade"),
        settings=(*settings, length("height", "Blade below the track", thick + asked.limit(BLADE_ABOVE))),
        guide="the track, on the line",
        table="face",
        needs=("a track longer than the cut", "two clamps"),
        passes=(thick,),
        does=((does,), ON_FOAM),
        fed=fed,
        rank=rank,
    )


def is_sheet(asked: Asked) -> bool:
    return asked.work.piece.wood == "sheet"


def rip(asked: Asked) -> Answered:
    work = asked.work
    return track(
        asked,
        length("mark", "From the straight edge to the track", work.width),
        does="Measure from the straight edge at both ends of the cut.",
        fed=work.piece.length,
        rank=0 if is_sheet(asked) else 1,
    )


def split(asked: Asked) -> Answered:
    work = asked.work
    return track(
        asked,
        length("mark", "From the edge to the track", work.width),
        does="The board lies still, hollow side down, and the track needs no straight edge.",
        fed=work.piece.length,
        rank=1,
    )


def edge(asked: Asked) -> Answered:
    work = asked.work
    return track(
        asked,
        length("takes", "Comes off at most", work.depth),
        does="One cut along the track makes a crooked edge straight. Plane it where it is to be glued.",
        fed=work.piece.length,
        rank=1,
    )


def crosscut(asked: Asked) -> Answered:
    work = asked.work
    is_wide = work.piece.width > MITRE_SAW_WIDEST.most
    return track(
        asked,
        length("mark", "From the square end to the track", work.length),
        does="Square the track to the straight edge.",
        fed=work.piece.width,
        rank=0 if is_wide or is_sheet(asked) else 2,
    )


def outline(asked: Asked) -> Answered:
    return track(
        asked,
        does="Lay the track on each line. Not for corners that lie inside: stop short and finish by hand.",
        fed=2 * (asked.work.length + asked.work.width),
        rank=1,
    )


def taper(asked: Asked) -> Answered:
    work = asked.work
    return track(asked, *tapered(work), does="Lay the track from mark to mark.", fed=work.length, rank=1)


def slope(asked: Asked) -> Answered:
    """A bevel or mitre along an edge or across a panel, the saw tilted."""
    work = asked.work
    is_mitre = work.family == "mitre"
    tilt = work.angle if is_mitre else 90 - slope_of(work)
    is_across_face = is_mitre and work.run == "thickness"
    name = "Track turned from square" if is_across_face else "Saw tilted from upright"
    return too_flat(asked, tilt, "saw") or track(
        asked, degrees("angle", name, tilt), does="Try the angle in scrap.", fed=work.whole(work.run), rank=2
    )


WAYS: Ways = {
    "rough crosscut": crosscut,
    "split rough": split,
    "joint an edge": edge,
    "rip": rip,
    "crosscut to length": crosscut,
    "bevel": slope,
    "taper": taper,
    "straight outline": outline,
    "mitre": slope,
}
REFUSALS: Refusals = {**by_saw("A track saw"), "notch": INSIDE_CORNER, "curved outline": CURVED}
