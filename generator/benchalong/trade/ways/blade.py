"""The table saw with one blade: channels a kerf at a time; what goes through is in `blade_through`."""

from __future__ import annotations

from fractions import Fraction

from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, degrees, length, way
from benchalong.trade.ways.blade_through import (
    ACCURACY,
    TOOL,
    bevel,
    blade,
    crosscut,
    mitre,
    outline,
    resaw,
    rip,
    taper,
)
from benchalong.trade.ways.fenced import fenced
from benchalong.trade.ways.model import Refusal, Setting, TestCut, Words, Work
from benchalong.trade.ways.practice import (
    BLADE_HIGHEST,
    FENCE_REACH,
)
from benchalong.trade.ways.stack import across_needs, fenced_across
from benchalong.trade.ways.texts import (
    BACKED,
    CENTRED,
    FIT_CHANNEL,
    FIT_TONGUE,
    NO_OFFCUT,
    NOT_STOPPED,
    ONE_FACE,
    OTHER_SIDE,
    STOPPED_INSTEAD,
    beyond_fence,
    standing_end,
)


def groove(asked: Asked) -> Answered:
    work = asked.work
    if work.is_stopped:
        return Refusal(TOOL, NOT_STOPPED, STOPPED_INSTEAD)
    if (refused := standing_end(TOOL, work) or beyond_fence(TOOL, work)) is not None:
        return refused
    if work.width < asked.kerf:
        return narrower_than_blade(asked)
    lies = fenced(work, asked.kerf)
    is_slanted = work.family == "spline slot"
    tilt = (degrees("angle", "Cradle from upright", work.angle),) if is_slanted else ()
    return way(
        asked,
        cutter=blade(asked),
        settings=(*lies.settings, length("height", "Blade above the table", work.depth), *tilt),
        guide=f"{work.from_side}, then {work.far_side}" if lies.is_turned else work.from_side,
        table=work.in_side,
        needs=("a cradle that holds the mitre on the table",)
        if is_slanted
        else ("a featherboard", "a push block"),
        passes=(work.depth,),
        strokes=lies.strokes,
        is_turned=lies.is_turned,
        does=(CENTRED,) if lies.is_turned else (ONE_FACE,),
        test=TestCut(("Cut a groove in scrap of the same thickness.",), FIT_CHANNEL),
        accuracy=ACCURACY,
        extra=asked.minutes.jig if is_slanted else Fraction(0),
        rank=0 if is_slanted else 2,
    )


def narrower_than_blade(asked: Asked) -> Refusal:
    said: Words = ("The cut is ", asked.work.width, " wide and a blade takes ", asked.kerf, ".")
    return Refusal(TOOL, said, ("Rout it with a narrower cutter, or saw it by hand.",))


def dado(asked: Asked) -> Answered:
    work = asked.work
    if work.is_stopped:
        return Refusal(TOOL, NOT_STOPPED, STOPPED_INSTEAD)
    if work.width < asked.kerf:
        return narrower_than_blade(asked)
    return way(
        asked,
        cutter=blade(asked),
        settings=(
            *fenced_across(asked, asked.kerf),
            length("height", "Blade above the table", work.depth),
        ),
        guide=work.from_side,
        table=work.in_side,
        needs=("a mitre gauge with a backing board",),
        passes=(work.depth,),
        strokes=int(-(-work.width // asked.kerf)),
        does=(("Cut both walls first, then what stands between, a kerf at a time.",), BACKED),
        test=TestCut(("Cut across scrap of the same stock.",), FIT_CHANNEL),
        accuracy=ACCURACY,
        why=NO_OFFCUT,
        rank=2,
    )


def rabbet(asked: Asked) -> Answered:
    """Two cuts that meet: flat for the width, on edge for the depth, the waste on the free side."""
    work = asked.work
    if work.is_stopped:
        return Refusal(TOOL, NOT_STOPPED, STOPPED_INSTEAD)
    if (standing := standing_across(work)) is not None:
        return standing
    thick = work.whole(work.inward)
    return way(
        asked,
        cutter=blade(asked),
        settings=(
            length("fence_far", "Fence to the blade's far side, flat", work.width),
            length("height", "Blade above the table, flat", work.depth),
            length("fence_2", "Fence to the blade, on edge", thick - work.depth),
            length("height_2", "Blade above the table, on edge", work.width),
        ),
        guide=f"{work.from_side}, then the side away from the rabbet",
        table=f"{work.in_side}, then {work.from_side}",
        needs=("a tall fence", *across_needs(asked), "a featherboard", "a push block"),
        passes=(work.depth,),
        strokes_in_all=2,
        does=(
            (
                "First flat on the table, then standing, so that the waste falls on the free side and "
                "is never "
                "caught between blade and fence.",
            ),
        ),
        test=TestCut(("Cut a rabbet in scrap of the same thickness.",), FIT_CHANNEL),
        accuracy=ACCURACY,
        extra=asked.minutes.setting[TOOL],
        rank=2,
    )


def standing_across(work: Work) -> Refusal | None:
    """Standing on its end for the second cut, as a rabbet across the grain would."""
    if work.is_along_grain or work.piece.length <= FENCE_REACH.most:
        return None
    said: Words = ("The second cut would stand the piece on its end, ", work.piece.length, " tall.")
    return Refusal(TOOL, said, ("Use a stacked cutter, a router or a rabbet plane.",))


def cheeks(asked: Asked) -> Answered:
    """Flat on the table, a kerf at a time, for what is cut across the grain; along it by two cuts on each
    side."""
    return edge_cheeks(asked) if asked.work.is_along_grain else end_cheeks(asked)


def heights(work: Work) -> list[Setting]:
    found = [length("height", "Blade above the table", work.near)]
    if work.far != work.near:
        found.append(length("height_back", "Blade above the table, second side", work.far))
    if any(work.shoulders):
        found.append(length("height_edge", "Blade above the table, on edge", max(work.shoulders)))
    return found


def end_cheeks(asked: Asked) -> Answered:
    work = asked.work
    sides = 2 + sum(1 for one in work.shoulders if one)
    strokes = int(-(-work.depth // asked.kerf))
    return way(
        asked,
        cutter=blade(asked),
        settings=(length("fence_far", "Fence to the blade's far side", work.depth), *heights(work)),
        guide=work.in_side,
        table=f"{work.from_side}, then {work.far_side}",
        needs=("a mitre gauge with a backing board",),
        passes=(max(work.near, work.far, *work.shoulders),),
        strokes=strokes,
        strokes_in_all=strokes * sides,
        does=(
            ("Begin at the shoulder, the end against the fence, then draw the work back a kerf at a time.",),
            OTHER_SIDE,
            BACKED,
        ),
        test=TestCut(("Cut both sides on scrap of the same thickness.",), FIT_TONGUE),
        accuracy=ACCURACY,
        why=NO_OFFCUT,
        rank=1,
    )


def edge_cheeks(asked: Asked) -> Answered:
    work = asked.work
    second = length("fence_2_back", "Fence to the blade, on edge, second cheek", work.width + work.near)
    back = (second,) if work.far != work.near else ()
    settings = (
        length("fence_far", "Fence to the blade's far side, flat", work.depth),
        *heights(work),
        length("fence_2", "Fence to the blade, on edge", work.width + work.far),
        *back,
        length("height_2", "Blade above the table, on edge", work.depth),
    )
    return way(
        asked,
        cutter=blade(asked),
        settings=settings,
        guide=f"{work.in_side}; on edge, the side away from the cheek",
        table=f"{work.from_side} and {work.far_side}; then {work.in_side}",
        needs=("a tall fence", "a featherboard", "a push block"),
        passes=(max(work.near, work.far),),
        strokes_in_all=4,
        does=(
            ("Saw both shoulders flat on the table, then both cheeks on edge, the waste on the free side.",),
        ),
        test=TestCut(("Cut both sides on scrap of the same thickness.",), FIT_TONGUE),
        accuracy=ACCURACY,
        extra=asked.minutes.setting[TOOL],
        rank=2,
    )


def notch(asked: Asked) -> Answered:
    work = asked.work
    if (standing := standing_end(TOOL, work)) is not None:
        return standing
    if work.depth > BLADE_HIGHEST.most:
        said: Words = ("The notch is ", work.depth, " deep; usual blades rise to ", BLADE_HIGHEST, ".")
        return Refusal(TOOL, said, ("Use a band saw, or saw it by hand.",))
    settings = [length("stop", "Stop block to the blade", work.near)]
    if asked.kerf < work.width:
        last = work.near + work.width - asked.kerf
        settings.append(length("stop_last", "Stop block to the blade, last stroke", last))
    return way(
        asked,
        cutter=blade(asked),
        settings=(*settings, length("height", "Blade above the table", work.depth)),
        guide=work.from_side,
        table=work.in_side,
        needs=("a mitre gauge with a tall backing board",),
        passes=(work.depth,),
        strokes=int(-(-work.width // asked.kerf)),
        does=(("Stand the piece against the backing board and clamp it there.",), BACKED),
        test=TestCut(("Cut the notch in scrap.",), FIT_CHANNEL),
        accuracy=ACCURACY,
        rank=2,
    )


WAYS: Ways = {
    "rip": rip,
    "crosscut to length": crosscut,
    "resaw": resaw,
    "groove": groove,
    "dado": dado,
    "rabbet": rabbet,
    "tongue": cheeks,
    "tenon": cheeks,
    "notch": notch,
    "bevel": bevel,
    "taper": taper,
    "straight outline": outline,
    "mitre": mitre,
    "spline slot": groove,
}
DRILL = ("A saw makes no round holes.", "Drill it.")
STOPPED = (
    "A saw's blade is round: it can't end a cut before the edge with a square end, and dropping wood onto "
    "it is "
    "not safe.",
    "Rout it along a guide, or chop it by hand.",
)
REFUSALS: Refusals = {
    "rough crosscut": (
        "A rough board lies neither flat on the table nor straight to the gauge; it rocks and binds.",
        "Use a mitre saw, a jigsaw or a hand saw.",
    ),
    "curved outline": (
        "A saw's plate cuts straight lines only.",
        "Use a band saw, a jigsaw or a coping saw.",
    ),
    "stopped dado": STOPPED,
    "mortise": (
        "A mortise is closed on all sides; a saw's blade can't go in and out.",
        "Drill and chop it, or rout it.",
    ),
    "hinge gain": STOPPED,
    "pilot hole": DRILL,
    "clearance hole": DRILL,
    "dowel hole": DRILL,
    "tails": (
        "The blade's usual teeth leave no clean corner between slopes.",
        "Saw them by hand, or rout them.",
    ),
    "pins": ("The slopes go both ways, and the corners between stay round.", "Saw and chop them by hand."),
    "fingers": (
        "A finger is wider than one kerf: two settings for each, and the errors add up.",
        "Use a stacked cutter, a router table or a hand saw.",
    ),
    "joint a face": ("A saw leaves no flat face.", "Joint it by machine or by hand plane."),
    "joint an edge": (
        "Without a straight edge to run along the fence the board rocks and binds.",
        "Joint it, plane it, or saw it along a track.",
    ),
    "plane to thickness": ("A saw leaves no even thickness over a face.", "Plane it."),
    "glue up a panel": ("Gluing takes clamps, no machine.", "Glue it at the bench."),
    "flush": ("What is glued up stands no saw.", "Plane or sand it flush."),
    "sand": ("A saw doesn't smooth.", "Sand it at the bench."),
}
