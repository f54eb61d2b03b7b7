"""Saws that come to the work, or that chop: track saw, mitre saw, jigsaw."""

from __future__ import annotations

from benchalong.ground.lengths import Length
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, degrees, length, way
from benchalong.trade.ways.blade_through import slope_of
from benchalong.trade.ways.model import Cutter, Refusal, Setting, TestCut, Tool, Words, Work
from benchalong.trade.ways.practice import (
    BLADE_ABOVE,
    JIGSAW_DEEPEST,
    MITRE_SAW_PLAIN,
    MITRE_SAW_WIDEST,
    TRACK_DEEPEST,
)
from benchalong.trade.ways.texts import FIT_SQUARE, STOP_BLOCK

TRACK: Tool = "track saw"
CHOP: Tool = "mitre saw"
JIG: Tool = "jigsaw"
ON_FOAM: Words = ("Lay the wood on a sheet of waste or foam, its show side down, and saw into that.",)


def track(asked: Asked, *settings: Setting, does: tuple[Words, ...], fed: Length, rank: int) -> Answered:
    work = asked.work
    if work.piece.thickness > TRACK_DEEPEST.most:
        said: Words = (
            "The wood is ",
            work.piece.thickness,
            " thick; usual track saws reach ",
            TRACK_DEEPEST,
            ".",
        )
        return Refusal(TRACK, said, ("Saw it at the table or band saw, or by hand.",))
    return way(
        asked,
        cutter=Cutter("blade"),
        settings=(
            *settings,
            length("height", "Blade below the track", work.piece.thickness + asked.limit(BLADE_ABOVE)),
        ),
        guide="the track, on the line",
        table="face",
        needs=("a track longer than the cut", "two clamps"),
        passes=(work.piece.thickness,),
        does=(*does, ON_FOAM),
        accuracy=Length(1, 2),
        fed=fed,
        rank=rank,
    )


def is_sheet(asked: Asked) -> bool:
    return asked.work.piece.wood == "sheet"


def track_rip(asked: Asked) -> Answered:
    work = asked.work
    edge: Words = ("Measure from the straight edge at both ends of the cut.",)
    return track(
        asked,
        length("mark", "From the straight edge to the track", work.width),
        does=(edge,),
        fed=work.piece.length,
        rank=0 if is_sheet(asked) else 1,
    )


def track_edge(asked: Asked) -> Answered:
    work = asked.work
    straight: Words = (
        "One cut along the track makes a crooked edge straight. Plane it where it is to be glued.",
    )
    return track(
        asked,
        length("takes", "Comes off at most", work.depth),
        does=(straight,),
        fed=work.piece.length,
        rank=1,
    )


def track_crosscut(asked: Asked) -> Answered:
    work = asked.work
    square: Words = ("Square the track to the straight edge.",)
    is_wide = work.piece.width > MITRE_SAW_WIDEST.most
    return track(
        asked,
        length("mark", "From the square end to the track", work.length),
        does=(square,),
        fed=work.piece.width,
        rank=0 if is_wide or is_sheet(asked) else 2,
    )


def track_line(asked: Asked) -> Answered:
    work = asked.work
    line: Words = (
        "Lay the track on each line. Not for corners that lie inside: stop short and finish by hand.",
    )
    return track(asked, does=(line,), fed=2 * (work.length + work.width), rank=1)


def track_taper(asked: Asked) -> Answered:
    work = asked.work
    settings = (
        length("mark", "Taken at the far end", work.depth),
        length("over", "Over a length of", work.length),
    )
    return track(asked, *settings, does=(("Lay the track from mark to mark.",),), fed=work.length, rank=1)


def track_slope(asked: Asked) -> Answered:
    """A bevel or mitre along an edge or across a panel, the saw tilted."""
    work = asked.work
    tilt = work.angle if work.family == "mitre" else 90 - (work.angle or slope_of(work))
    if not 0 <= tilt <= 45:
        return Refusal(TRACK, ("The slope is flatter than the saw tilts.",), ("Plane it to the lines.",))
    across_face = work.family == "mitre" and work.run == "thickness"
    name = "Track turned from square" if across_face else "Saw tilted from upright"
    return track(
        asked,
        degrees("angle", name, tilt),
        does=(("Try the angle in scrap.",),),
        fed=work.whole(work.run),
        rank=2,
    )


TRACK_WAYS: Ways = {
    "rough crosscut": track_crosscut,
    "joint an edge": track_edge,
    "rip": track_rip,
    "crosscut to length": track_crosscut,
    "bevel": track_slope,
    "taper": track_taper,
    "straight outline": track_line,
    "mitre": track_slope,
}


def chop(asked: Asked) -> Answered:
    work = asked.work
    rough = work.family == "rough crosscut"
    if (refused := too_wide(work)) is not None:
        return refused
    settings = (
        length(
            "mark" if rough else "stop",
            "Line from the end" if rough else "Stop block to the blade",
            work.length,
        ),
    )
    return way(
        asked,
        cutter=Cutter("blade"),
        settings=settings,
        guide="edge a",
        table="face",
        needs=chop_needs(work, rough=rough),
        passes=(work.piece.thickness,),
        does=(("Look for checks at the board's end and cut them off first.",),)
        if rough
        else (("Square one end first. Then bring that end to the stop.",), STOP_BLOCK),
        test=None if rough else TestCut(("Cut two offcuts at the stop.",), FIT_SQUARE),
        accuracy=Length(2) if rough else Length(2, 5),
        fed=work.piece.width,
        strokes_in_all=1 if rough else 2,
        rank=0 if rough else 1,
    )


def chop_needs(work: Work, *, rough: bool) -> tuple[str, ...]:
    slides = ("a saw that slides",) if work.piece.width > MITRE_SAW_PLAIN.most else ()
    return (*slides, "support level with the table", *(() if rough else ("a stop block",)))


def too_wide(work: Work) -> Refusal | None:
    if work.piece.width <= MITRE_SAW_WIDEST.most:
        return None
    said: Words = (
        "The piece is ",
        work.piece.width,
        " wide; mitre saws that slide reach about ",
        MITRE_SAW_WIDEST,
        ".",
    )
    return Refusal(CHOP, said, ("Use a track saw, a table saw's sled, or a hand saw.",))


def chop_mitre(asked: Asked) -> Answered:
    work = asked.work
    if work.run == "length":
        return Refusal(
            CHOP, ("It saws across; this mitre runs along the edge.",), ("Use a table saw or a hand plane.",)
        )
    if (refused := too_wide(work)) is not None:
        return refused
    name = "Blade tilted from upright" if work.run == "width" else "Saw turned from square"
    return way(
        asked,
        cutter=Cutter("blade"),
        settings=(
            degrees("angle", name, work.angle),
            length("stop", "Stop block to the blade, at the long side", work.piece.length),
        ),
        guide="edge a",
        table="face",
        needs=chop_needs(work, rough=False),
        passes=(work.piece.thickness,),
        does=(STOP_BLOCK,),
        test=TestCut(("Cut both ends of four scraps and put them together.",), ("All four corners close.",)),
        accuracy=Length(2, 5),
        fed=work.piece.width,
        rank=0,
    )


def chop_bevel(asked: Asked) -> Answered:
    work = asked.work
    tilt = 90 - (work.angle or slope_of(work))
    if work.run == "length":
        return Refusal(
            CHOP, ("It saws across; this bevel runs along the edge.",), ("Plane it, or saw it at a table.",)
        )
    if not 0 <= tilt <= 45:
        return Refusal(CHOP, ("The slope is flatter than the saw tilts.",), ("Plane it to the lines.",))
    if (refused := too_wide(work)) is not None:
        return refused
    return way(
        asked,
        cutter=Cutter("blade"),
        settings=(
            degrees("angle", "Blade tilted from upright", tilt),
            length("mark", "Width on the face", work.width),
        ),
        guide="edge a",
        table="back",
        needs=chop_needs(work, rough=False),
        passes=(work.depth,),
        accuracy=Length(2, 5),
        fed=work.piece.width,
        rank=2,
    )


CHOP_WAYS: Ways = {
    "rough crosscut": chop,
    "crosscut to length": chop,
    "bevel": chop_bevel,
    "mitre": chop_mitre,
}


def jig(asked: Asked) -> Answered:
    work = asked.work
    if work.piece.thickness > JIGSAW_DEEPEST.most:
        said: Words = (
            "The wood is ",
            work.piece.thickness,
            " thick; over ",
            JIGSAW_DEEPEST,
            " a jigsaw's blade bends.",
        )
        return Refusal(JIG, said, ("Use a band saw, or saw it by hand.",))
    rough = work.family == "rough crosscut"
    is_straight = work.family in ("rip", "crosscut to length", "straight outline", "taper")
    kept = {"rip": work.width, "crosscut to length": work.length, "rough crosscut": work.length}.get(
        work.family
    )
    return way(
        asked,
        cutter=Cutter("fine blade"),
        settings=() if kept is None else (length("mark", "Line from the straight side", kept),),
        guide="a clamped batten" if is_straight else "by eye to the line",
        table="face",
        needs=("two clamps", *(("a straight batten",) if is_straight else ())),
        with_tools=() if rough else ("hand tools",),
        passes=(work.piece.thickness,),
        does=(("Saw on the waste side.",), *(() if rough else (("Plane or file to the line.",),))),
        accuracy=Length(1),
        fed=fed(work),
        rank=1 if work.family == "curved outline" else 3,
    )


def fed(work: Work) -> Length:
    lengths: dict[str, Length] = {
        "rough crosscut": work.piece.width,
        "crosscut to length": work.piece.width,
        "rip": work.piece.length,
        "taper": work.length,
        "notch": 2 * work.depth + work.width,
    }
    return lengths.get(work.family, 2 * (work.length + work.width))


JIG_WAYS: Ways = {
    "rough crosscut": jig,
    "rip": jig,
    "crosscut to length": jig,
    "notch": jig,
    "taper": jig,
    "straight outline": jig,
    "curved outline": jig,
}


def _common(what: str) -> Refusals:
    """What none of the three does."""
    channel = (
        f"{what} cuts right through, or leaves a kerf and no flat floor.",
        "Rout it, or saw and chop it by hand.",
    )
    drill = (f"{what} makes no round holes.", "Drill it.")
    hand = (f"{what} can't be guided to so fine a line.", "Saw them by hand.")
    return {
        "joint a face": ("A saw leaves no flat face.", "Use a jointer or a hand plane."),
        "plane to thickness": (
            "A saw leaves no even thickness over a face.",
            "Use a planer or a hand plane.",
        ),
        "resaw": (f"{what} doesn't reach through the width of a board.", "Use a band saw."),
        "glue up a panel": ("Gluing takes clamps, no machine.", "Glue it at the bench."),
        "groove": channel,
        "dado": channel,
        "stopped dado": channel,
        "rabbet": channel,
        "tongue": channel,
        "tenon": channel,
        "mortise": channel,
        "spline slot": channel,
        "hinge gain": channel,
        "pilot hole": drill,
        "clearance hole": drill,
        "dowel hole": drill,
        "tails": hand,
        "pins": hand,
        "fingers": hand,
        "flush": ("What is glued up stands no saw.", "Plane or sand it flush."),
        "sand": ("A saw doesn't smooth.", "Sand it at the bench."),
    }


CURVED = ("Its plate cuts straight lines only.", "Use a band saw, a jigsaw or a coping saw.")
TRACK_REFUSALS: Refusals = {
    **_common("A track saw"),
    "notch": ("Its round blade cuts past the inside corner.", "Use a jigsaw, or saw it by hand."),
    "curved outline": CURVED,
}
CHOP_REFUSALS: Refusals = {
    **_common("A mitre saw"),
    "joint an edge": ("It only saws across.", "Use a jointer or a hand plane."),
    "rip": (
        "It only saws across; wood fed along it is thrown.",
        "Use a table saw, a track saw or a hand saw.",
    ),
    "notch": ("Its round blade cuts past the inside corner.", "Use a jigsaw, or saw it by hand."),
    "taper": ("It only saws across.", "Use a table saw's sled, a band saw or a plane."),
    "straight outline": ("It only saws across, and only straight through.", "Use a band saw or a hand saw."),
    "curved outline": CURVED,
}
JIG_REFUSALS: Refusals = {
    **_common("A jigsaw"),
    "joint an edge": ("Its blade wanders too much for an edge to glue.", "Use a jointer or a hand plane."),
    "bevel": ("Its blade bends in a sloping cut.", "Plane it to the lines."),
    "mitre": ("Its blade wanders too much for a mitre to close.", "Use a mitre saw, or saw and plane."),
}
