"""One blade at the table saw, right through: ripping, crosscutting, resawing, slopes and mitres."""

from __future__ import annotations

import math
from fractions import Fraction

from benchalong.ground.lengths import Length
from benchalong.trade.ways.asked import Answered, Asked, degrees, length, way
from benchalong.trade.ways.model import Cutter, Refusal, Setting, TestCut, Tool, Words, Work
from benchalong.trade.ways.practice import (
    BLADE_ABOVE,
    BLADE_HIGHEST,
    FENCE_REACH,
    NARROW_STRIP,
)
from benchalong.trade.ways.texts import (
    BACKED,
    FIT_SQUARE,
    NEVER_BOTH,
    STOP_BLOCK,
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
            ("Leave a web in the middle and part it with a hand saw, so that nothing closes on the blade.",),
        ),
        accuracy=Length(1),
        fed=work.piece.length,
        rank=2,
    )


def bevel(asked: Asked) -> Answered:
    """The blade tilts by what the slope lacks of square; a steep one is sawn with the piece on edge."""
    work = asked.work
    slope = work.angle or slope_of(work)
    tilt, table = (90 - slope, work.in_side) if slope >= STEEPEST else (slope, work.from_side)
    return way(
        asked,
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
        does=(("Set the fence so that the blade comes out on the line; the waste falls on the free side.",),),
        test=TestCut(("Cut scrap of the same section.",), ("The slope meets both lines.",)),
        accuracy=ACCURACY,
        fed=work.whole(work.run),
        rank=1,
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
    )


def outline(asked: Asked) -> Answered:
    work = asked.work
    if (refused := too_thick(work.piece.thickness)) is not None:
        return refused
    return way(
        asked,
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
        test=TestCut(("Cut both ends of four scraps and put them together.",), ("All four corners close.",)),
        accuracy=ACCURACY,
        fed=work.piece.width,
        why=NEVER_BOTH,
        rank=0,
    )


def long_mitre(asked: Asked) -> Answered:
    work = asked.work
    return way(
        asked,
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
    )
