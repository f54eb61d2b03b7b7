"""The mitre saw: to length and to an angle, across the wood."""

from __future__ import annotations

from collections.abc import Sequence

from benchalong.ground.lengths import Length
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, way
from benchalong.trade.ways.model import Cutter, Refusal, Setting, TestCut, Words
from benchalong.trade.ways.practice import MITRE_SAW_PLAIN, MITRE_SAW_WIDEST
from benchalong.trade.ways.refused import CURVED, INSIDE_CORNER, JOINT, by_saw, too_flat
from benchalong.trade.ways.settings import degrees, length, slope_of
from benchalong.trade.ways.texts import SQUARE_FIRST, STOP_BLOCK, TEST_FRAME, TEST_LENGTH


def chop(
    asked: Asked,
    *settings: Setting,
    table: str = "face",
    stop: Sequence[str] = ("a stop block",),
    passes: Sequence[Length] = (),
    does: Sequence[Words] = (),
    test: TestCut | None = None,
    accuracy: Length | None = None,
    ends: int = 1,
    rank: int,
) -> Answered:
    """`ends`: how many are cut for one; the pass goes through the wood unless said."""
    piece = asked.work.piece
    slides = ("a saw that slides",) if piece.width > MITRE_SAW_PLAIN.most else ()
    return too_wide(asked) or way(
        asked,
        Cutter("blade"),
        settings=settings,
        guide="edge a",
        table=table,
        needs=(*slides, "support level with the table", *stop),
        passes=passes or (piece.thickness,),
        does=does,
        test=test,
        accuracy=accuracy,
        fed=piece.width,
        strokes_in_all=ends,
        rank=rank,
    )


def too_wide(asked: Asked) -> Refusal | None:
    return asked.over(
        asked.work.piece.width,
        MITRE_SAW_WIDEST,
        "The piece is {} wide; mitre saws that slide reach about {}.",
        "Use a track saw, a table saw's sled, or a hand saw.",
    )


def rough(asked: Asked) -> Answered:
    return chop(
        asked,
        length("mark", "Line from the end", asked.work.length),
        stop=(),
        does=(("Look for checks at the board's end and cut them off first.",),),
        accuracy=Length(2),
        rank=0,
    )


def to_length(asked: Asked) -> Answered:
    return chop(
        asked,
        length("stop", "Stop block to the blade", asked.work.length),
        does=(SQUARE_FIRST, STOP_BLOCK),
        test=TEST_LENGTH,
        ends=2,
        rank=1,
    )


def mitre(asked: Asked) -> Answered:
    work = asked.work
    if work.run == "length":
        return asked.refuse(
            "It saws across; this mitre runs along the edge.", "Use a table saw or a hand plane."
        )
    name = "Blade tilted from upright" if work.run == "width" else "Saw turned from square"
    return chop(
        asked,
        degrees("angle", name, work.angle),
        length("stop", "Stop block to the blade, at the long side", work.piece.length),
        does=(STOP_BLOCK,),
        test=TEST_FRAME,
        rank=0,
    )


def bevel(asked: Asked) -> Answered:
    work = asked.work
    tilt = 90 - slope_of(work)
    if work.run == "length":
        return asked.refuse(
            "It saws across; this bevel runs along the edge.", "Plane it, or saw it at a table."
        )
    return too_flat(asked, tilt, "saw") or chop(
        asked,
        degrees("angle", "Blade tilted from upright", tilt),
        length("mark", "Width on the face", work.width),
        table="back",
        passes=(work.depth,),
        rank=2,
    )


WAYS: Ways = {
    "rough crosscut": rough,
    "crosscut to length": to_length,
    "bevel": bevel,
    "mitre": mitre,
}
THROWN = "It only saws across; wood fed along it is thrown."
REFUSALS: Refusals = {
    **by_saw("A mitre saw"),
    "joint an edge": ("It only saws across.", JOINT),
    "split rough": (THROWN, "Use a band saw, a track saw or a hand saw."),
    "rip": (THROWN, "Use a table saw, a track saw or a hand saw."),
    "notch": INSIDE_CORNER,
    "taper": ("It only saws across.", "Use a table saw's sled, a band saw or a plane."),
    "straight outline": ("It only saws across, and only straight through.", "Use a band saw or a hand saw."),
    "curved outline": CURVED,
}
