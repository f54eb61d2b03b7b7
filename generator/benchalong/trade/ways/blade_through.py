"""One blade at the table saw, right through: ripping, crosscutting, resawing, slopes and mitres."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from benchalong.ground.lengths import Length
from benchalong.trade.ways.asked import Answered, Asked, way
from benchalong.trade.ways.at_table import PUSHED, cutter_of
from benchalong.trade.ways.model import Refusal, Setting, TestCut, Words
from benchalong.trade.ways.practice import BLADE_ABOVE, BLADE_HIGHEST, FENCE_REACH, NARROW_STRIP
from benchalong.trade.ways.settings import degrees, height, length, slope_of
from benchalong.trade.ways.texts import (
    BACKED,
    NEVER_BOTH,
    SQUARE_FIRST,
    STOP_BLOCK,
    TEST_CORNER,
    TEST_FRAME,
    TEST_LENGTH,
)

STEEPEST = 45
"""Degrees that a blade tilts."""
LEANS_AWAY = "a fence on the side the blade leans away from"
FREE_SIDE: Words = (
    "The strip is narrow: it falls on the free side of the blade, never between blade and fence. Set the "
    "fence anew for each strip, or use a stop for thin rips.",
)
KEPT: Words = ("The straight edge runs along the fence; push it past the blade with the strip between.",)


def above(asked: Asked) -> Setting:
    """A cut that goes through: the blade a little higher than the wood."""
    return height(asked.tool, asked.work.piece.thickness + asked.limit(BLADE_ABOVE))


def too_thick(asked: Asked) -> Refusal | None:
    return asked.over(
        asked.work.piece.thickness,
        BLADE_HIGHEST,
        "The wood is {} thick there; usual blades rise to {}.",
        "Saw it at the band saw or by hand.",
    )


def narrow_strip(asked: Asked) -> Refusal:
    return asked.refuse(
        "The strip is {} wide and what is left beside it is narrower than {} too: neither can go between "
        "fence and blade.",
        "Saw it from a wider board, or by hand.",
        asked.work.width,
        NARROW_STRIP,
        is_safety=True,
    )


def rip(asked: Asked) -> Answered:
    """The strip is kept between fence and blade; a narrow one on the free side."""
    work, piece = asked.work, asked.work.piece
    if refused := too_thick(asked):
        return refused
    is_narrow = work.width < NARROW_STRIP.least
    fence = piece.width - asked.kerf - work.width if is_narrow else work.width
    if fence < NARROW_STRIP.least:
        return narrow_strip(asked)
    return way(
        asked,
        cutter_of(asked, asked.kerf),
        settings=(length("fence", "Fence to the blade", fence), above(asked)),
        guide="edge a",
        table="face",
        needs=("the riving knife and guard", "a push stick"),
        passes=(piece.thickness,),
        does=(FREE_SIDE if is_narrow else KEPT,),
        fed=piece.length,
        rank=0,
    )


def resaw(asked: Asked) -> Answered:
    """From both edges, the same face to the fence; the rest by hand where the blade doesn't reach."""
    work, piece = asked.work, asked.work.piece
    if piece.width > 2 * BLADE_HIGHEST.least:
        return asked.refuse(
            "The board is {} wide; from both edges a blade reaches twice {}.",
            "Use a band saw, or rip the board first.",
            piece.width,
            BLADE_HIGHEST,
        )
    rest = piece.thickness - work.width - asked.kerf
    if work.width < NARROW_STRIP.least and rest < NARROW_STRIP.least:
        return narrow_strip(asked)
    deep = piece.width / 2 - asked.limit(BLADE_ABOVE)
    fence = work.width if work.width >= NARROW_STRIP.least else rest
    return way(
        asked,
        cutter_of(asked, asked.kerf),
        settings=(length("fence", "Fence to the blade", fence), height(asked.tool, deep)),
        guide="face",
        table="edge a, then edge b",
        needs=("a tall fence", *PUSHED),
        with_tools=("hand tools",),
        passes=(deep,),
        is_turned=True,
        does=(
            (
                "Stand the board on edge, the flat face to the tall fence. Saw from one edge, turn it end "
                "for end, saw from the other, the same face to the fence.",
            ),
            ("Leave a web in the middle and part it with a hand saw, so that nothing closes on the blade.",),
        ),
        accuracy=Length(1),
        fed=piece.length,
        rank=2,
    )


def bevel(asked: Asked) -> Answered:
    """The blade tilts by what the slope lacks of square; a steep one is sawn with the piece on edge."""
    work, slope = asked.work, slope_of(asked.work)
    tilt, table = (90 - slope, work.in_side) if slope >= STEEPEST else (slope, work.from_side)
    return way(
        asked,
        cutter_of(asked, asked.kerf),
        settings=(
            degrees("angle", "Blade tilted from upright", tilt),
            length("mark", "Width on the face", work.width),
        ),
        guide="the side away from the bevel",
        table=table,
        needs=(*PUSHED, LEANS_AWAY),
        passes=(work.depth,),
        does=(("Set the fence so that the blade comes out on the line; the waste falls on the free side.",),),
        test=TestCut(("Cut scrap of the same section.",), ("The slope meets both lines.",)),
        fed=work.whole(work.run),
        rank=1,
    )


def taper(asked: Asked) -> Answered:
    work = asked.work
    return too_thick(asked) or way(
        asked,
        cutter_of(asked, asked.kerf),
        settings=(
            length("sled", "Wood over the sled's edge at the far end", work.depth),
            length("over", "Over a length of", work.length),
            above(asked),
        ),
        guide="the sled",
        table="face",
        needs=("a taper sled with clamps",),
        passes=(work.piece.thickness,),
        does=(
            ("The line lies on the sled's edge; clamps hold the piece, no hand.",),
            ("A stop on the sled takes the end, so that every piece lies alike.",),
            ("Keep one offcut for clamping.",),
        ),
        extra=asked.minutes.jig,
        rank=0,
    )


def outline(asked: Asked) -> Answered:
    return too_thick(asked) or way(
        asked,
        cutter_of(asked, asked.kerf),
        settings=(above(asked),),
        guide="the sled",
        table="face",
        needs=("a sled with clamps",),
        passes=(asked.work.piece.thickness,),
        does=(
            (
                "Each line in turn on the sled's edge; clamps hold the piece. Not for corners "
                "that lie inside.",
            ),
        ),
        accuracy=Length(1, 2),
        extra=asked.minutes.jig,
        rank=2,
    )


def crosscut(asked: Asked) -> Answered:
    work = asked.work
    return (
        asked.over(
            work.piece.width,
            FENCE_REACH,
            "The piece is {} wide; over {} no mitre gauge guides it.",
            "Use a track saw, or saw it by hand and plane the end.",
        )
        or too_thick(asked)
        or at_gauge(
            asked,
            length("stop", "Stop block to the blade", work.length),
            does=(SQUARE_FIRST, STOP_BLOCK, BACKED),
            test=TEST_LENGTH,
            ends=2,
        )
    )


def mitre(asked: Asked) -> Answered:
    """A frame's mitre turns the gauge, a case's tilts the blade."""
    work = asked.work
    if work.run == "length":
        return long_mitre(asked)
    name = "Blade tilted from upright" if work.run == "width" else "Mitre gauge turned from square"
    return at_gauge(
        asked,
        degrees("angle", name, work.angle),
        length("stop", "Stop block to the blade, at the long side", work.piece.length),
        does=(STOP_BLOCK, BACKED),
        test=TEST_FRAME,
        ends=1,
    )


def at_gauge(
    asked: Asked, *settings: Setting, does: Sequence[Words], test: TestCut, ends: Literal[1, 2]
) -> Answered:
    """Across the piece, to a stop; `ends`: how many are cut for one."""
    piece = asked.work.piece
    return way(
        asked,
        cutter_of(asked, asked.kerf),
        settings=(*settings, above(asked)),
        guide="edge a",
        table="face",
        needs=("a mitre gauge or sled with a backing board", "a stop block"),
        passes=(piece.thickness,),
        does=does,
        test=test,
        fed=piece.width,
        strokes_in_all=ends,
        why=NEVER_BOTH,
        rank=0,
    )


def long_mitre(asked: Asked) -> Answered:
    work = asked.work
    return way(
        asked,
        cutter_of(asked, asked.kerf),
        settings=(degrees("angle", "Blade tilted from upright", work.angle), above(asked)),
        guide="the other edge",
        table="face",
        needs=(LEANS_AWAY, "a push stick"),
        passes=(work.piece.thickness,),
        does=(("Set the fence so that the blade comes out on the line.",),),
        test=TEST_CORNER,
        fed=work.piece.length,
        rank=0,
    )
