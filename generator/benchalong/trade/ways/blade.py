"""The table saw with one blade: ripping, crosscutting, and channels a kerf at a time."""

from __future__ import annotations

import math
from fractions import Fraction

from benchalong.ground.lengths import Length
from benchalong.trade.ways.asked import Answered, Asked, Made, Refusals, Ways, degrees, length, way
from benchalong.trade.ways.fenced import fenced
from benchalong.trade.ways.model import Cutter, Refusal, Setting, TestCut, Tool, Words, Work
from benchalong.trade.ways.practice import (
    BLADE_ABOVE,
    BLADE_HIGHEST,
    FENCE_REACH,
    NARROW_STRIP,
)
from benchalong.trade.ways.stack import across_needs, fenced_across
from benchalong.trade.ways.texts import (
    BACKED,
    CENTRED,
    FIT_CHANNEL,
    FIT_SQUARE,
    FIT_TONGUE,
    NEVER_BOTH,
    NO_OFFCUT,
    NOT_STOPPED,
    ONE_FACE,
    OTHER_SIDE,
    STOP_BLOCK,
    STOPPED_INSTEAD,
    beyond_fence,
    standing_end,
)

TOOL: Tool = "table saw"
ACCURACY = Length(2, 5)
"""mm; common practice."""
STEEPEST = 45
"""Degrees that a blade tilts."""


def blade(asked: Asked) -> Cutter:
    return Cutter("blade", asked.kerf)


def above(asked: Asked, thickness: Length) -> Setting:
    """A cut that goes through: the blade a little higher than the wood."""
    return length("height", "Blade above the table", thickness + asked.limit(BLADE_ABOVE))


def too_thick(thickness: Length) -> Refusal | None:
    if thickness <= BLADE_HIGHEST.most:
        return None
    said: Words = ("The wood is ", thickness, " thick there; usual blades rise to ", BLADE_HIGHEST, ".")
    return Refusal(TOOL, said, ("Saw it at the band saw or by hand.",))


def rip(asked: Asked) -> Answered:
    """The strip is kept between fence and blade; a narrow one on the free side."""
    work = asked.work
    if (refused := too_thick(work.piece.thickness)) is not None:
        return refused
    is_narrow = work.width < NARROW_STRIP.least
    fence = work.piece.width - asked.kerf - work.width if is_narrow else work.width
    if is_narrow and fence < NARROW_STRIP.least:
        return narrow_strip(work)
    free: Words = (
        "The strip is narrow: it falls on the free side of the blade, never between blade and fence. Set the "
        "fence anew for each strip, or use a stop for thin rips.",
    )
    kept: Words = ("The straight edge runs along the fence; push it past the blade with the strip between.",)
    return way(
        asked,
        Made(
            tool=TOOL,
            cutter=blade(asked),
            settings=(length("fence", "Fence to the blade", fence), above(asked, work.piece.thickness)),
            guide="edge a",
            table="face",
            needs=("the riving knife and guard", "a push stick"),
            passes=(work.piece.thickness,),
            does=(free if is_narrow else kept,),
            accuracy=ACCURACY,
            fed=work.piece.length,
            rank=0,
        ),
    )


def narrow_strip(work: Work) -> Refusal:
    said: Words = (
        "The strip is ",
        work.width,
        " wide and what is left beside it is narrower than ",
        NARROW_STRIP,
        " too: neither can go between fence and blade.",
    )
    return Refusal(TOOL, said, ("Saw it from a wider board, or by hand.",), is_safety=True)


def crosscut(asked: Asked) -> Answered:
    work = asked.work
    if work.piece.width > FENCE_REACH.most:
        said: Words = (
            "The piece is ",
            work.piece.width,
            " wide; over ",
            FENCE_REACH,
            " no mitre gauge guides it.",
        )
        return Refusal(TOOL, said, ("Use a track saw, or saw it by hand and plane the end.",))
    if (refused := too_thick(work.piece.thickness)) is not None:
        return refused
    return way(
        asked,
        Made(
            tool=TOOL,
            cutter=blade(asked),
            settings=(
                length("stop", "Stop block to the blade", work.length),
                above(asked, work.piece.thickness),
            ),
            guide="edge a",
            table="face",
            needs=("a mitre gauge or sled with a backing board", "a stop block"),
            passes=(work.piece.thickness,),
            does=(("Square one end first. Then bring that end to the stop.",), STOP_BLOCK, BACKED),
            test=TestCut(("Cut two offcuts at the stop.",), FIT_SQUARE),
            accuracy=ACCURACY,
            fed=work.piece.width,
            strokes_in_all=2,
            why=NEVER_BOTH,
            rank=0,
        ),
    )


def resaw(asked: Asked) -> Answered:
    """From both edges, the same face to the fence; the rest by hand where the blade doesn't reach."""
    work = asked.work
    if work.piece.width > 2 * BLADE_HIGHEST.least:
        said: Words = (
            "The board is ",
            work.piece.width,
            " wide; from both edges a blade reaches twice ",
            BLADE_HIGHEST,
            ".",
        )
        return Refusal(TOOL, said, ("Use a band saw, or rip the board first.",))
    rest = work.piece.thickness - work.width - asked.kerf
    if work.width < NARROW_STRIP.least and rest < NARROW_STRIP.least:
        return narrow_strip(work)
    half = work.piece.width / 2
    fence = work.width if work.width >= NARROW_STRIP.least else rest
    return way(
        asked,
        Made(
            tool=TOOL,
            cutter=blade(asked),
            settings=(
                length("fence", "Fence to the blade", fence),
                length("height", "Blade above the table", half - asked.limit(BLADE_ABOVE)),
            ),
            guide="face",
            table="edge a, then edge b",
            needs=("a tall fence", "a featherboard", "a push block"),
            with_tools=("hand tools",),
            passes=(half - asked.limit(BLADE_ABOVE),),
            is_turned=True,
            does=(
                (
                    "Stand the board on edge, the flat face to the tall fence. Saw from one edge, turn it "
                    "end for end, "
                    "saw from the other, the same face to the fence.",
                ),
                (
                    "Leave a web in the middle and part it with a hand saw, so that nothing closes on the "
                    "blade.",
                ),
            ),
            accuracy=Length(1),
            fed=work.piece.length,
            rank=2,
        ),
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
        Made(
            tool=TOOL,
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
        ),
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
        Made(
            tool=TOOL,
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
        ),
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
        Made(
            tool=TOOL,
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
        ),
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
        Made(
            tool=TOOL,
            cutter=blade(asked),
            settings=(length("fence_far", "Fence to the blade's far side", work.depth), *heights(work)),
            guide=work.in_side,
            table=f"{work.from_side}, then {work.far_side}",
            needs=("a mitre gauge with a backing board",),
            passes=(max(work.near, work.far, *work.shoulders),),
            strokes=strokes,
            strokes_in_all=strokes * sides,
            does=(
                (
                    "Begin at the shoulder, the end against the fence, then draw the work back a kerf at "
                    "a time.",
                ),
                OTHER_SIDE,
                BACKED,
            ),
            test=TestCut(("Cut both sides on scrap of the same thickness.",), FIT_TONGUE),
            accuracy=ACCURACY,
            why=NO_OFFCUT,
            rank=1,
        ),
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
        Made(
            tool=TOOL,
            cutter=blade(asked),
            settings=settings,
            guide=f"{work.in_side}; on edge, the side away from the cheek",
            table=f"{work.from_side} and {work.far_side}; then {work.in_side}",
            needs=("a tall fence", "a featherboard", "a push block"),
            passes=(max(work.near, work.far),),
            strokes_in_all=4,
            does=(
                (
                    "Saw both shoulders flat on the table, then both cheeks on edge, the waste on the "
                    "free side.",
                ),
            ),
            test=TestCut(("Cut both sides on scrap of the same thickness.",), FIT_TONGUE),
            accuracy=ACCURACY,
            extra=asked.minutes.setting[TOOL],
            rank=2,
        ),
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
        Made(
            tool=TOOL,
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
        ),
    )


def bevel(asked: Asked) -> Answered:
    """The blade tilts by what the slope lacks of square; a steep one is sawn with the piece on edge."""
    work = asked.work
    slope = work.angle or slope_of(work)
    tilt, table = (90 - slope, work.in_side) if slope >= STEEPEST else (slope, work.from_side)
    return way(
        asked,
        Made(
            tool=TOOL,
            cutter=blade(asked),
            settings=(
                degrees("angle", "Blade tilted from upright", tilt),
                length("mark", "Width on the face", work.width),
            ),
            guide="the side away from the bevel",
            table=table,
            needs=("a featherboard", "a push block", "a fence on the side the blade leans away from"),
            with_tools=(),
            passes=(work.depth,),
            does=(
                ("Set the fence so that the blade comes out on the line; the waste falls on the free side.",),
            ),
            test=TestCut(("Cut scrap of the same section.",), ("The slope meets both lines.",)),
            accuracy=ACCURACY,
            fed=work.whole(work.run),
            rank=1,
        ),
    )


def slope_of(work: Work) -> Fraction:
    """Degrees from the face, to a tenth."""
    if not work.width:
        return Fraction(90)
    return Fraction(round(10 * math.degrees(math.atan2(float(work.depth), float(work.width)))), 10)


def taper(asked: Asked) -> Answered:
    work = asked.work
    if (refused := too_thick(work.whole("thickness"))) is not None:
        return refused
    return way(
        asked,
        Made(
            tool=TOOL,
            cutter=blade(asked),
            settings=(
                length("sled", "Wood over the sled's edge at the far end", work.depth),
                length("over", "Over a length of", work.length),
                above(asked, work.whole("thickness")),
            ),
            guide="the sled",
            table="face",
            needs=("a taper sled with clamps",),
            passes=(work.whole("thickness"),),
            does=(
                ("The line lies on the sled's edge; clamps hold the piece, no hand.",),
                ("A stop on the sled takes the end, so that every piece lies alike.",),
                ("Keep one offcut for clamping.",),
            ),
            accuracy=ACCURACY,
            extra=asked.minutes.jig,
            rank=0,
        ),
    )


def outline(asked: Asked) -> Answered:
    work = asked.work
    if (refused := too_thick(work.piece.thickness)) is not None:
        return refused
    return way(
        asked,
        Made(
            tool=TOOL,
            cutter=blade(asked),
            settings=(above(asked, work.piece.thickness),),
            guide="the sled",
            table="face",
            needs=("a sled with clamps",),
            passes=(work.piece.thickness,),
            does=(
                (
                    "Each line in turn on the sled's edge; clamps hold the piece. Not for corners that "
                    "lie inside.",
                ),
            ),
            accuracy=Length(1, 2),
            extra=asked.minutes.jig,
            rank=2,
        ),
    )


def mitre(asked: Asked) -> Answered:
    """A frame's mitre turns the gauge, a case's tilts the blade."""
    work = asked.work
    is_case = work.run == "width"
    if work.run == "length":
        return long_mitre(asked)
    name = "Blade tilted from upright" if is_case else "Mitre gauge turned from square"
    return way(
        asked,
        Made(
            tool=TOOL,
            cutter=blade(asked),
            settings=(
                degrees("angle", name, work.angle),
                length("stop", "Stop block to the blade, at the long side", work.piece.length),
                above(asked, work.piece.thickness),
            ),
            guide="edge a",
            table="face",
            needs=("a mitre gauge or sled with a backing board", "a stop block"),
            passes=(work.piece.thickness,),
            does=(STOP_BLOCK, BACKED),
            test=TestCut(
                ("Cut both ends of four scraps and put them together.",), ("All four corners close.",)
            ),
            accuracy=ACCURACY,
            fed=work.piece.width,
            why=NEVER_BOTH,
            rank=0,
        ),
    )


def long_mitre(asked: Asked) -> Answered:
    work = asked.work
    return way(
        asked,
        Made(
            tool=TOOL,
            cutter=blade(asked),
            settings=(
                degrees("angle", "Blade tilted from upright", work.angle),
                above(asked, work.piece.thickness),
            ),
            guide="the other edge",
            table="face",
            needs=("a fence on the side the blade leans away from", "a push stick"),
            passes=(work.piece.thickness,),
            does=(("Set the fence so that the blade comes out on the line.",),),
            test=TestCut(("Cut two scraps and put them together.",), ("The corner closes and is square.",)),
            accuracy=ACCURACY,
            fed=work.piece.length,
            rank=0,
        ),
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
