"""The band saw: thick wood, curves, tapers, cheeks; everything it leaves is planed."""

from __future__ import annotations

from benchalong.ground.lengths import Length
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, way
from benchalong.trade.ways.model import Cutter, Setting, TestCut, Words
from benchalong.trade.ways.practice import GUARD_ABOVE, RESAW_WIDEST, SAW_SMOOTH, STAND_TALLEST
from benchalong.trade.ways.refused import CHANNELS, HOLES, JOINT, PLANE, SAW_LEAVES, too_flat
from benchalong.trade.ways.settings import degrees, length, slope_of, tapered
from benchalong.trade.ways.texts import FIT_TONGUE

DRIFT: Words = ("Set the fence to the way this blade drifts: follow a line in scrap and mark how it lies.",)
GUARD: Words = ("Guard and guides stand just above the wood.",)
TO_THE_LINE: Words = ("Saw outside the line, plane to it.",)


def blade(asked: Asked) -> Cutter:
    return Cutter("blade", asked.band_kerf)


def guard(asked: Asked, height: Length) -> Setting:
    return length("guard", "Guard above the table", height + asked.limit(GUARD_ABOVE))


AFTER_RIPPING: Words = ("Plane or joint the sawn side.",)
AFTER_RESAWING: Words = (
    "Joint the board's face again before each further leaf. The leaves are planed when they have rested.",
)


def along_fence(
    asked: Asked, fence: Length, *, guide: str, table: str, height: Length, rank: int
) -> Answered:
    work = asked.work
    return asked.over(
        height,
        RESAW_WIDEST,
        "The wood stands {} tall; usual band saws take {}.",
        "Rip it narrower first, or saw it by hand.",
    ) or way(
        asked,
        blade(asked),
        settings=(length("fence", "Fence to the blade", fence), guard(asked, height)),
        guide=guide,
        table=table,
        needs=("a push stick", *(("a tall fence",) if work.family == "resaw" else ())),
        passes=(height,),
        does=(DRIFT, GUARD, AFTER_RESAWING if work.family == "resaw" else AFTER_RIPPING),
        fed=work.piece.length,
        rank=rank,
    )


def rip(asked: Asked) -> Answered:
    work = asked.work
    fence = work.width + asked.limit(SAW_SMOOTH)
    return along_fence(asked, fence, guide="edge a", table="face", height=work.piece.thickness, rank=1)


def resaw(asked: Asked) -> Answered:
    work = asked.work
    return along_fence(asked, work.width, guide="face", table="edge a", height=work.piece.width, rank=0)


def to_a_line(asked: Asked, does: Words, *settings: Setting, rank: int, fed: Length) -> Answered:
    thick = asked.work.piece.thickness
    return way(
        asked,
        blade(asked),
        settings=(*settings, guard(asked, thick)),
        guide="by eye to the line",
        table="back",
        passes=(thick,),
        does=(does, GUARD),
        fed=fed,
        rank=rank,
    )


def split(asked: Asked) -> Answered:
    """Freehand: a rough edge would rock along a fence."""
    work = asked.work
    return to_a_line(
        asked,
        ("Chalk a straight line; the rough edge goes nowhere near the fence. Hollow face down.",),
        length("mark", "From the edge to the line", work.width),
        rank=0,
        fed=work.piece.length,
    )


def crosscut(asked: Asked) -> Answered:
    work = asked.work
    is_rough = work.family == "rough crosscut"
    if is_rough and work.piece.length > 2 * STAND_TALLEST.most:
        return asked.refuse(
            "The board is {} long; it strikes the saw's column or drops off the table.",
            "Cut it with a mitre saw, a jigsaw or a hand saw.",
            work.piece.length,
        )
    key, name = ("mark", "Length") if is_rough else ("stop", "Stop block to the blade")
    return to_a_line(
        asked,
        ("Along a square line, or with a mitre gauge.",),
        length(key, name, work.length),
        rank=1 if is_rough else 3,
        fed=work.piece.width,
    )


def curve(asked: Asked) -> Answered:
    return to_a_line(
        asked,
        ("Relief cuts first where the curve is tight. Saw outside the line, smooth to it by hand.",),
        rank=0,
        fed=2 * (asked.work.length + asked.work.width),
    )


def outline(asked: Asked) -> Answered:
    return to_a_line(
        asked,
        ("Saw outside each line, plane to it.",),
        rank=1,
        fed=2 * (asked.work.length + asked.work.width),
    )


def taper(asked: Asked) -> Answered:
    return to_a_line(asked, TO_THE_LINE, *tapered(asked.work), rank=1, fed=asked.work.length)


def notch(asked: Asked) -> Answered:
    work = asked.work
    if work.near and work.far and work.width < 4 * asked.band_kerf:
        return asked.refuse("The notch is too narrow to turn the blade in.", "Saw and chop it by hand.")
    return to_a_line(
        asked,
        ("Saw both walls, then nibble between them along the floor. Pare to the line.",),
        length("wall", "From the side to the near wall", work.near),
        length("deep", "Deep", work.depth),
        rank=0,
        fed=2 * work.depth + work.width,
    )


def cheeks(asked: Asked) -> Answered:
    """The cheeks along the fence, from the outer side of each; shoulders are sawn by hand first."""
    work = asked.work
    stands = work.surface == "end"
    second = length("fence_back", "Fence to the blade, second cheek", work.width + work.near)
    return way(
        asked,
        blade(asked),
        settings=(
            length("fence", "Fence to the blade", work.width + work.far),
            length("stop", "Stop on the fence: as far as the shoulder", work.depth),
            *(() if work.is_centred else (second,)),
        ),
        guide=f"{work.far_side}, then {work.from_side}",
        table="edge a" if stands else work.in_side,
        needs=("a push block", "a stop"),
        with_tools=("hand tools",),
        passes=(work.depth,),
        strokes_in_all=2,
        does=(
            (
                "Saw the shoulders by hand on a knife line first; then saw the cheeks down to them, the "
                "waste on the free side.",
            ),
            ("Pare to fit.",),
        ),
        test=TestCut(("Saw both cheeks on scrap of the same thickness.",), FIT_TONGUE),
        accuracy=Length(1, 2),
        fed=work.depth if stands else work.length,
        rank=2,
    )


def bevel(asked: Asked) -> Answered:
    work = asked.work
    tilt = 90 - slope_of(work)
    return too_flat(asked, tilt, "table") or to_a_line(
        asked,
        TO_THE_LINE,
        degrees("angle", "Table tilted from level", tilt),
        length("mark", "Width on the face", work.width),
        rank=2,
        fed=work.whole(work.run),
    )


WAYS: Ways = {
    "rough crosscut": crosscut,
    "split rough": split,
    "rip": rip,
    "crosscut to length": crosscut,
    "resaw": resaw,
    "tongue": cheeks,
    "tenon": cheeks,
    "notch": notch,
    "bevel": bevel,
    "taper": taper,
    "straight outline": outline,
    "curved outline": curve,
}
NO_FLOOR = (
    "Its blade goes right through; it leaves no floor.",
    "Saw it with a table saw, rout it or chop it.",
)
SLOPES = ("Every slope needs the table tilted anew.", "Saw them by hand.")
REFUSALS: Refusals = {
    **SAW_LEAVES,
    **dict.fromkeys((*CHANNELS, "hinge gain"), NO_FLOOR),
    **dict.fromkeys((*HOLES, "mortise"), ("A band makes no closed hole.", "Drill it.")),
    "joint a face": ("A saw leaves no flat face.", JOINT),
    "joint an edge": ("The band wanders too much for an edge to glue.", JOINT),
    "plane to thickness": ("A sawn face is rough.", PLANE),
    "rabbet": (
        "It would take two cuts that wander, along the whole length.",
        "Use a table saw, a router or a rabbet plane.",
    ),
    "mitre": (
        "The band wanders too much for a mitre to close.",
        "Use a mitre saw, a table saw, or saw and plane.",
    ),
    "tails": SLOPES,
    "pins": SLOPES,
    "fingers": ("The band wanders too much for fingers to close.", "Use a finger jig, or saw them by hand."),
}
