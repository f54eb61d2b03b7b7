"""The hand-held router: along a clamped guide, its own fence, or between two guides. The tool goes to the
work."""

from __future__ import annotations

from collections.abc import Sequence

from benchalong.ground.lengths import Length
from benchalong.trade.cutters import STRAIGHT
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, degrees, length, way
from benchalong.trade.ways.blade_through import slope_of
from benchalong.trade.ways.fenced import fenced
from benchalong.trade.ways.model import Cutter, Refusal, Setting, TestCut, Tool, Words, Work
from benchalong.trade.ways.practice import HAND_ROUTER_CUTTER, HEAVY_DEEP, JOINTER_PASS, in_passes
from benchalong.trade.ways.router_table import channel_cutter, cutter_for, passes
from benchalong.trade.ways.texts import CENTRED, FIT_CHANNEL, FIT_TONGUE, beyond_cutter

TOOL: Tool = "router"
ACCURACY = Length(3, 10)
"""mm; common practice."""
GUIDE = "a straight guide board and two clamps"
SUPPORT = "boards clamped level beside the edge, so that the router doesn't tip"
SPACER: Words = (
    "Measure once from the side of the router's base to the cutter and saw a spacer so wide: it sets the "
    "guide from "
    "any wall.",
)
TWO_GUIDES: Words = (
    "The cutter is narrower than the cut: rout along the near wall, then move the guide by the difference "
    "and rout "
    "along the far wall.",
)
SQUARE: Words = ("The end stays round: square it with a chisel, or round what goes in.",)


def depth(work: Work) -> Setting:
    return length("height", "Plunge below the surface", work.depth)


def groove(asked: Asked) -> Answered:
    """Along a surface, the router's own fence runs along the side of the piece."""
    work = asked.work
    if (refused := beyond_cutter(TOOL, work)) is not None:
        return refused
    cutter = channel_cutter(asked, TOOL)
    if isinstance(cutter, Refusal):
        return cutter
    lies = fenced(work, cutter)
    is_slanted = work.family == "spline slot"
    tilt = (degrees("angle", "Cradle from upright", work.angle),) if is_slanted else ()
    return way(
        asked,
        cutter=Cutter("straight cutter", cutter),
        settings=(*lies.settings, depth(work), *ends(work), *tilt),
        guide=f"{work.from_side}, then {work.far_side}" if lies.is_turned else work.from_side,
        table=work.in_side,
        needs=(
            "the router's fence",
            *((SUPPORT,) if work.surface != "face" else ()),
            *(("a cradle that holds the mitre",) if is_slanted else ()),
        ),
        passes=passes(asked, work.depth, cutter),
        strokes=lies.strokes,
        is_turned=lies.is_turned,
        does=(CENTRED,) if lies.is_turned else (SQUARE,) if work.is_stopped else (),
        test=TestCut(("Rout a groove in scrap of the same thickness.",), FIT_CHANNEL),
        accuracy=ACCURACY,
        rank=1 if work.is_stopped else 2,
    )


def ends(work: Work) -> tuple[Setting, ...]:
    found = []
    if work.before:
        found.append(length("begins", "Begins from the end", work.before))
    if work.after:
        found.append(length("ends", "Ends before the other end", work.after))
    return tuple(found)


def dado(asked: Asked) -> Answered:
    work = asked.work
    cutter = cutter_for(asked, work.width, tool=TOOL, most=HAND_ROUTER_CUTTER.least)
    if isinstance(cutter, Refusal):
        return cutter
    return along_guide(asked, cutter, rank=0 if work.is_stopped else 1)


def along_guide(asked: Asked, cutter: Length, *, rank: int, does: Sequence[Words] = ()) -> Answered:
    work = asked.work
    strokes = int(-(-work.width // cutter))
    settings = [length("wall", "From the side to the near wall", work.near)]
    if strokes > 1:
        settings.append(length("shift", "Move the guide by", work.width - cutter))
    return way(
        asked,
        cutter=Cutter("straight cutter", cutter),
        settings=(*settings, depth(work), *ends(work)),
        guide=f"a guide board, square to {work.from_side}" if work.across == "length" else "a guide board",
        table=work.in_side,
        needs=(GUIDE, *((SUPPORT,) if work.surface != "face" else ())),
        passes=passes(asked, work.depth, cutter),
        strokes=strokes,
        does=(
            SPACER,
            *((TWO_GUIDES,) if strokes > 1 else ()),
            *((SQUARE,) if work.is_stopped else ()),
            *does,
        ),
        test=TestCut(("Rout scrap of the same stock along the guide.",), FIT_CHANNEL),
        accuracy=ACCURACY,
        rank=rank,
    )


def rabbet(asked: Asked) -> Answered:
    work = asked.work
    cutter = STRAIGHT[asked.units][-1] if asked.work.width > HAND_ROUTER_CUTTER.least else None
    strokes = 1 if cutter is None else int(-(-work.width // cutter))
    name = "rabbet cutter with a bearing" if cutter is None else "straight cutter"
    return way(
        asked,
        cutter=Cutter(name, cutter),
        settings=(length("reach", "How far the cutter reaches in", work.width), depth(work), *ends(work)),
        guide=work.from_side,
        table=work.in_side,
        needs=("the router's fence" if cutter else "a bearing that leaves this width",),
        passes=in_passes(work.depth, asked.limit(HEAVY_DEEP), asked.step),
        strokes=strokes,
        does=(("Across the grain first, then along it; or clamp scrap at the far corner.",),),
        test=TestCut(("Rout a rabbet in scrap.",), FIT_CHANNEL),
        accuracy=ACCURACY,
        rank=2,
    )


def cheeks(asked: Asked) -> Answered:
    """Several rails side by side, a guide across all of them; then all turned over."""
    work = asked.work
    found = cutter_for(
        asked, max(work.depth, STRAIGHT[asked.units][0]), tool=TOOL, most=HAND_ROUTER_CUTTER.least
    )
    if isinstance(found, Refusal):
        return found
    heights = [length("height", "Plunge below the surface", work.near)]
    if work.far != work.near:
        heights.append(length("height_back", "Plunge, second side", work.far))
    cut = passes(asked, max(work.near, work.far), found)
    strokes = int(-(-work.depth // found))
    return way(
        asked,
        cutter=Cutter("straight cutter", found),
        settings=(length("shoulder", "From the end to the shoulder", work.depth), *heights),
        guide="a guide board at the shoulder",
        table=f"{work.from_side}, then {work.far_side}",
        needs=(GUIDE, "scrap of the same thickness beside the work, to carry the router"),
        with_tools=("hand tools",) if any(work.shoulders) else (),
        passes=cut,
        strokes=strokes,
        strokes_in_all=len(cut) * strokes * 2,
        does=(
            ("Clamp all pieces side by side, ends level, and rout one side of all; turn all over.",),
            *((("Saw the narrow shoulders by hand.",),) if any(work.shoulders) else ()),
        ),
        test=TestCut(("Rout both sides of scrap of the same thickness.",), FIT_TONGUE),
        accuracy=ACCURACY,
        rank=2,
    )


def mortise(asked: Asked) -> Answered:
    work = asked.work
    if (refused := beyond_cutter(TOOL, work)) is not None:
        return refused
    cutter = cutter_for(asked, work.width, tool=TOOL)
    if isinstance(cutter, Refusal):
        return cutter
    strokes = int(-(-work.width // cutter))
    settings = [length("fence", "Fence to the cutter", work.near), depth(work), *ends(work)]
    if strokes > 1:
        settings.append(
            length("fence_last", "Fence to the cutter, last stroke", work.near + work.width - cutter)
        )
    return way(
        asked,
        cutter=Cutter("straight cutter that cuts at its end", cutter),
        settings=settings,
        guide=work.from_side,
        table=work.in_side,
        needs=("the router's fence", SUPPORT, "two stops"),
        with_tools=("hand tools",),
        passes=passes(asked, work.depth, cutter),
        strokes=strokes,
        does=(("Square the round ends with a chisel, or round the tenon to suit.",),),
        test=TestCut(("Rout one in scrap.",), FIT_CHANNEL),
        accuracy=ACCURACY,
        rank=0,
    )


def hinge_gain(asked: Asked) -> Answered:
    work = asked.work
    return way(
        asked,
        cutter=Cutter("straight cutter"),
        settings=(
            length("height", "Plunge: as thick as the leaf", work.depth),
            length("wall", "From the end", work.near),
        ),
        guide="by eye to a knife line, or a pattern",
        table=work.in_side,
        needs=(SUPPORT, "a knife line round the leaf itself"),
        with_tools=("hand tools",),
        passes=(work.depth,),
        does=(("Rout near the line, then pare to it with a chisel.",),),
        test=TestCut(("Rout one in scrap and lay the leaf in.",), ("The leaf lies level with the wood.",)),
        accuracy=Length(1, 5),
        rank=1,
    )


def bevel(asked: Asked) -> Answered:
    work = asked.work
    if (work.angle or slope_of(work)) != 45:
        said: Words = ("The bevel doesn't slope at half a right angle, and no usual cutter has its slope.",)
        return Refusal(TOOL, said, ("Plane it to the lines.",))
    return way(
        asked,
        cutter=Cutter("cutter for bevels at 45 degrees, with a bearing"),
        settings=(length("height", "Bevel, measured down from the face", work.depth),),
        guide=work.from_side,
        table=work.in_side,
        passes=in_passes(work.depth, asked.limit(HEAVY_DEEP), asked.step),
        does=(("Across the grain first, then along it.",),),
        accuracy=ACCURACY,
        fed=work.whole(work.run),
        rank=0,
    )


def edge(asked: Asked) -> Answered:
    work = asked.work
    return way(
        asked,
        cutter=Cutter("long straight cutter with a bearing"),
        settings=(length("takes", "Beyond the guide", work.depth),),
        guide="a straight guide board",
        table="face",
        needs=(GUIDE,),
        passes=in_passes(work.depth, asked.limit(JOINTER_PASS), asked.step / 2),
        accuracy=ACCURACY,
        fed=work.piece.length,
        rank=2,
    )


def outline(asked: Asked) -> Answered:
    """Sawn first; a pattern then makes all alike."""
    work = asked.work
    if work.piece.thickness > HAND_ROUTER_CUTTER.most:
        said: Words = (
            "The wood is ",
            work.piece.thickness,
            " thick; a cutter with a bearing reaches about ",
            HAND_ROUTER_CUTTER,
            ".",
        )
        return Refusal(TOOL, said, ("Saw it and smooth it by hand.",))
    return way(
        asked,
        cutter=Cutter("straight cutter with a bearing"),
        settings=(length("height", "Cutter below the base", work.piece.thickness),),
        guide="a pattern",
        table="face",
        needs=("a pattern of thin sheet", "most of the waste sawn off first"),
        with_tools=("hand tools",),
        passes=(work.piece.thickness,),
        does=(("Saw outside the line with a coping saw first; the router takes only the rest.",),),
        accuracy=ACCURACY,
        rank=2,
        extra=asked.minutes.jig,
    )


WAYS: Ways = {
    "joint an edge": edge,
    "groove": groove,
    "dado": dado,
    "stopped dado": dado,
    "rabbet": rabbet,
    "tongue": cheeks,
    "tenon": cheeks,
    "mortise": mortise,
    "bevel": bevel,
    "straight outline": outline,
    "curved outline": outline,
    "spline slot": groove,
    "hinge gain": hinge_gain,
}
SAW = ("A router is no saw: cutting through with it is slow and dusty.", "Saw it.")
DRILL = ("A drill is quicker and its bit goes deeper.", "Drill it.")
REFUSALS: Refusals = {
    "rough crosscut": SAW,
    "joint a face": ("Without a bridge to run on it follows every hollow.", "Use a jointer or a hand plane."),
    "plane to thickness": (
        "Without a bridge to run on it follows every hollow.",
        "Use a planer or a hand plane.",
    ),
    "rip": SAW,
    "crosscut to length": SAW,
    "resaw": SAW,
    "glue up a panel": ("Gluing takes clamps, no machine.", "Glue it at the bench."),
    "pilot hole": DRILL,
    "clearance hole": DRILL,
    "dowel hole": DRILL,
    "notch": ("So much wood out of an edge catches and pulls the router off its line.", "Saw it."),
    "taper": SAW,
    "mitre": SAW,
    "tails": ("Without a jig made for it the router has nothing to stand on at an end.", "Saw them by hand."),
    "pins": (
        "Without a jig made for it the router has nothing to stand on at an end.",
        "Saw and chop them by hand.",
    ),
    "fingers": (
        "Without a jig made for it the router has nothing to stand on at an end.",
        "Use a table with a finger jig, or saw them by hand.",
    ),
    "flush": ("A router on a glued-up piece tips at the edges.", "Plane or sand it flush."),
    "sand": ("A cutter doesn't smooth.", "Sand it at the bench."),
}
