"""The band saw: thick wood, curves, tapers, cheeks; everything it leaves is planed."""

from __future__ import annotations

from benchalong.ground.lengths import Length
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, degrees, length, way
from benchalong.trade.ways.blade_through import slope_of
from benchalong.trade.ways.model import Cutter, Refusal, Setting, TestCut, Tool, Words
from benchalong.trade.ways.practice import GUARD_ABOVE, RESAW_WIDEST, SAW_SMOOTH, STAND_TALLEST
from benchalong.trade.ways.texts import FIT_TONGUE

TOOL: Tool = "band saw"
ACCURACY = Length(4, 5)
"""mm; common practice."""
DRIFT: Words = ("Set the fence to the way this blade drifts: follow a line in scrap and mark how it lies.",)
GUARD: Words = ("Guard and guides stand just above the wood.",)


def blade(asked: Asked) -> Cutter:
    return Cutter("blade", asked.band_kerf)


def along_fence(
    asked: Asked, fence: Length, *, guide: str, table: str, height: Length, rank: int
) -> Answered:
    work = asked.work
    if height > RESAW_WIDEST.most:
        said: Words = ("The wood stands ", height, " tall; usual band saws take ", RESAW_WIDEST, ".")
        return Refusal(TOOL, said, ("Rip it narrower first, or saw it by hand.",))
    return way(
        asked,
        cutter=blade(asked),
        settings=(
            length("fence", "Fence to the blade", fence),
            length("guard", "Guard above the table", height + asked.limit(GUARD_ABOVE)),
        ),
        guide=guide,
        table=table,
        needs=("a push stick", *(("a tall fence",) if work.family == "resaw" else ())),
        passes=(height,),
        does=(DRIFT, GUARD, ("Plane or joint the sawn side.",)),
        accuracy=ACCURACY,
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


def to_a_line(
    asked: Asked, does: Words, *, settings: tuple[Setting, ...] = (), rank: int, fed: Length
) -> Answered:
    work = asked.work
    return way(
        asked,
        cutter=blade(asked),
        settings=(
            *settings,
            length("guard", "Guard above the table", work.piece.thickness + asked.limit(GUARD_ABOVE)),
        ),
        guide="by eye to the line",
        table="back",
        passes=(work.piece.thickness,),
        does=(does, GUARD),
        accuracy=ACCURACY,
        fed=fed,
        rank=rank,
    )


def crosscut(asked: Asked) -> Answered:
    work = asked.work
    if work.piece.length > 2 * STAND_TALLEST.most and work.family == "rough crosscut":
        said: Words = (
            "The board is ",
            work.piece.length,
            " long; it strikes the saw's column or drops off the table.",
        )
        return Refusal(TOOL, said, ("Cut it with a mitre saw, a jigsaw or a hand saw.",))
    rough = work.family == "rough crosscut"
    settings = (
        length(
            "stop" if not rough else "mark", "Length" if rough else "Stop block to the blade", work.length
        ),
    )
    line: Words = ("Along a square line, or with a mitre gauge.",)
    return to_a_line(asked, line, settings=settings, rank=1 if rough else 3, fed=work.piece.width)


def outline(asked: Asked) -> Answered:
    work = asked.work
    curve: Words = (
        "Relief cuts first where the curve is tight. Saw outside the line, smooth to it by hand.",
    )
    straight: Words = ("Saw outside each line, plane to it.",)
    return to_a_line(
        asked,
        curve if work.family == "curved outline" else straight,
        rank=0 if work.family == "curved outline" else 1,
        fed=2 * (work.length + work.width),
    )


def taper(asked: Asked) -> Answered:
    work = asked.work
    settings = (
        length("mark", "Taken at the far end", work.depth),
        length("over", "Over a length of", work.length),
    )
    return to_a_line(
        asked, ("Saw outside the line, plane to it.",), settings=settings, rank=1, fed=work.length
    )


def notch(asked: Asked) -> Answered:
    work = asked.work
    if work.near and work.far and work.width < 4 * asked.band_kerf:
        return Refusal(
            TOOL, ("The notch is too narrow to turn the blade in.",), ("Saw and chop it by hand.",)
        )
    settings = (
        length("wall", "From the side to the near wall", work.near),
        length("deep", "Deep", work.depth),
    )
    line: Words = ("Saw both walls, then nibble between them along the floor. Pare to the line.",)
    return to_a_line(asked, line, settings=settings, rank=0, fed=2 * work.depth + work.width)


def cheeks(asked: Asked) -> Answered:
    """The cheeks along the fence, from the outer side of each; shoulders are sawn by hand first."""
    work = asked.work
    stands = work.surface == "end"
    fence = work.width + work.far
    settings = [
        length("fence", "Fence to the blade", fence),
        length("stop", "Stop on the fence: as far as the shoulder", work.depth),
    ]
    if work.far != work.near:
        settings.append(length("fence_back", "Fence to the blade, second cheek", work.width + work.near))
    return way(
        asked,
        cutter=blade(asked),
        settings=settings,
        guide=f"{work.far_side}, then {work.from_side}",
        table="edge a" if stands else work.in_side,
        needs=("a push block", "a stop"),
        with_tools=("hand tools",),
        passes=(work.depth,),
        strokes_in_all=2,
        does=(
            (
                "Saw the shoulders by hand on a knife line first; then saw the cheeks down to them, "
                "the waste on the "
                "free side.",
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
    slope = work.angle or slope_of(work)
    tilt = 90 - slope
    if not 0 <= tilt <= 45:
        return Refusal(TOOL, ("The slope is flatter than the table tilts.",), ("Plane it to the lines.",))
    settings = (
        degrees("angle", "Table tilted from level", tilt),
        length("mark", "Width on the face", work.width),
    )
    return to_a_line(
        asked, ("Saw outside the line, plane to it.",), settings=settings, rank=2, fed=work.whole(work.run)
    )


WAYS: Ways = {
    "rough crosscut": crosscut,
    "rip": rip,
    "crosscut to length": crosscut,
    "resaw": resaw,
    "tongue": cheeks,
    "tenon": cheeks,
    "notch": notch,
    "bevel": bevel,
    "taper": taper,
    "straight outline": outline,
    "curved outline": outline,
}
CHANNEL = (
    "Its blade goes right through; it leaves no floor.",
    "Saw it with a table saw, rout it or chop it.",
)
DRILL = ("A band makes no closed hole.", "Drill it.")
REFUSALS: Refusals = {
    "joint a face": ("A saw leaves no flat face.", "Use a jointer or a hand plane."),
    "joint an edge": ("The band wanders too much for an edge to glue.", "Use a jointer or a hand plane."),
    "plane to thickness": ("A sawn face is rough.", "Use a planer or a hand plane."),
    "glue up a panel": ("Gluing takes clamps, no machine.", "Glue it at the bench."),
    "groove": CHANNEL,
    "dado": CHANNEL,
    "stopped dado": CHANNEL,
    "rabbet": (
        "It would take two cuts that wander, along the whole length.",
        "Use a table saw, a router or a rabbet plane.",
    ),
    "mortise": DRILL,
    "pilot hole": DRILL,
    "clearance hole": DRILL,
    "dowel hole": DRILL,
    "mitre": (
        "The band wanders too much for a mitre to close.",
        "Use a mitre saw, a table saw, or saw and plane.",
    ),
    "spline slot": CHANNEL,
    "tails": ("Every slope needs the table tilted anew.", "Saw them by hand."),
    "pins": ("Every slope needs the table tilted anew.", "Saw them by hand."),
    "fingers": ("The band wanders too much for fingers to close.", "Use a finger jig, or saw them by hand."),
    "hinge gain": CHANNEL,
    "flush": ("What is glued up stands no saw.", "Plane or sand it flush."),
    "sand": ("A saw doesn't smooth.", "Sand it at the bench."),
}
