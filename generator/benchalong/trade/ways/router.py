"""The hand-held router: along a clamped guide, its own fence, or between two guides. The tool goes to the
work."""

from __future__ import annotations

from benchalong.ground.lengths import Length
from benchalong.trade.cutters import STRAIGHT, widest
from benchalong.trade.ways import routed
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, way
from benchalong.trade.ways.fenced import fenced, near_and_far, strokes
from benchalong.trade.ways.model import Cutter, Refusal, TestCut, Words, Work
from benchalong.trade.ways.practice import HAND_ROUTER_CUTTER, HEAVY_DEEP, in_passes
from benchalong.trade.ways.refused import FLUSH, GLUE, HOLES, JOINT, PLANE, SAND, SAWN, beyond_cutter
from benchalong.trade.ways.routed import PLUNGING, cutter_for, groove_cutter, passes
from benchalong.trade.ways.settings import cradle, ends, height, length
from benchalong.trade.ways.texts import CENTRED, FIT_CHANNEL, FIT_LEAF, FIT_TONGUE, ROUND_ENDS

STRAIGHT_CUTTER = "straight cutter"
GUIDE = "a straight guide board and two clamps"
FENCE = "the router's fence"
SUPPORT = "boards clamped level beside the edge, so that the router doesn't tip"
SPACER: Words = (
    "Measure once from the side of the router's base to the cutter and saw a spacer so wide: it sets the "
    "guide from any wall.",
)
TWO_GUIDES: Words = (
    "The cutter is narrower than the cut: rout along the near wall, then move the guide by the difference "
    "and rout along the far wall.",
)
SQUARE: Words = ("The end stays round: square it with a chisel, or round what goes in.",)


def supported(work: Work) -> tuple[str, ...]:
    return (SUPPORT,) if work.surface != "face" else ()


def squared(work: Work) -> tuple[Words, ...]:
    return (SQUARE,) if work.is_stopped else ()


def groove(asked: Asked) -> Answered:
    """Along a surface, the router's own fence runs along the side of the piece."""
    work = asked.work
    cutter = beyond_cutter(asked) or groove_cutter(asked)
    if isinstance(cutter, Refusal):
        return cutter
    lies = fenced(work, cutter)
    is_slanted = work.family == "spline slot"
    return way(
        asked,
        Cutter(STRAIGHT_CUTTER, cutter),
        settings=(*lies.settings, height(asked.tool, work.depth), *ends(work), *cradle(work)),
        guide=lies.guide,
        needs=(FENCE, *supported(work), *(("a cradle that holds the mitre",) if is_slanted else ())),
        passes=passes(asked, work.depth, cutter),
        strokes=lies.strokes,
        is_turned=lies.is_turned,
        does=(CENTRED,) if lies.is_turned else squared(work),
        test=TestCut(("Rout a groove in scrap of the same thickness.",), FIT_CHANNEL),
        rank=1 if work.is_stopped else 2,
    )


def dado(asked: Asked) -> Answered:
    """Along a guide, from one wall to the other."""
    work = asked.work
    cutter = cutter_for(asked, most=HAND_ROUTER_CUTTER.least)
    if isinstance(cutter, Refusal):
        return cutter
    is_narrow = cutter < work.width
    return way(
        asked,
        Cutter(STRAIGHT_CUTTER, cutter),
        settings=(
            length("wall", "From the side to the near wall", work.near),
            *((length("shift", "Move the guide by", work.width - cutter),) if is_narrow else ()),
            height(asked.tool, work.depth),
            *ends(work),
        ),
        guide=f"a guide board, square to {work.from_side}" if work.across == "length" else "a guide board",
        needs=(GUIDE, *supported(work)),
        passes=passes(asked, work.depth, cutter),
        strokes=strokes(work.width, cutter),
        does=(SPACER, *((TWO_GUIDES,) if is_narrow else ()), *squared(work)),
        test=TestCut(("Rout scrap of the same stock along the guide.",), FIT_CHANNEL),
        rank=0 if work.is_stopped else 1,
    )


def rabbet(asked: Asked) -> Answered:
    work = asked.work
    cutter = STRAIGHT[asked.units][-1] if work.width > HAND_ROUTER_CUTTER.least else None
    return way(
        asked,
        Cutter(STRAIGHT_CUTTER if cutter else "rabbet cutter with a bearing", cutter),
        settings=(
            length("reach", "How far the cutter reaches in", work.width),
            height(asked.tool, work.depth),
            *ends(work),
        ),
        needs=(FENCE if cutter else "a bearing that leaves this width",),
        passes=in_passes(work.depth, asked.limit(HEAVY_DEEP), asked.step),
        strokes=strokes(work.width, cutter) if cutter else 1,
        does=(("Across the grain first, then along it; or clamp scrap at the far corner.",),),
        test=TestCut(("Rout a rabbet in scrap.",), FIT_CHANNEL),
        rank=2,
    )


def cheeks(asked: Asked) -> Answered:
    """Several rails side by side, a guide across all of them; then all turned over."""
    work = asked.work
    least, most = STRAIGHT[asked.units][0], HAND_ROUTER_CUTTER.least
    cutter = widest(STRAIGHT, asked.units, min(work.depth, most)) or least
    cut = passes(asked, max(work.near, work.far), cutter)
    back = length("height_back", "Plunge, second side", work.far)
    has_shoulders = any(work.shoulders)
    return way(
        asked,
        Cutter(STRAIGHT_CUTTER, cutter),
        settings=(
            length("shoulder", "From the end to the shoulder", work.depth),
            height(asked.tool, work.near),
            *(() if work.is_centred else (back,)),
        ),
        guide="a guide board at the shoulder",
        table=f"{work.from_side}, then {work.far_side}",
        needs=(GUIDE, "scrap of the same thickness beside the work, to carry the router"),
        with_tools=("hand tools",) if has_shoulders else (),
        passes=cut,
        strokes=strokes(work.depth, cutter),
        strokes_in_all=len(cut) * strokes(work.depth, cutter) * 2,
        does=(
            ("Clamp all pieces side by side, ends level, and rout one side of all; turn all over.",),
            *((("Saw the narrow shoulders by hand.",),) if has_shoulders else ()),
        ),
        test=TestCut(("Rout both sides of scrap of the same thickness.",), FIT_TONGUE),
        rank=2,
    )


def mortise(asked: Asked) -> Answered:
    work = asked.work
    cutter = beyond_cutter(asked) or cutter_for(asked)
    if isinstance(cutter, Refusal):
        return cutter
    near, *far = near_and_far(work, cutter)
    return way(
        asked,
        Cutter(PLUNGING, cutter),
        settings=(near, height(asked.tool, work.depth), *ends(work), *far),
        needs=(FENCE, SUPPORT, "two stops"),
        with_tools=("hand tools",),
        passes=passes(asked, work.depth, cutter),
        strokes=strokes(work.width, cutter),
        does=(ROUND_ENDS,),
        test=TestCut(("Rout one in scrap.",), FIT_CHANNEL),
        rank=0,
    )


def hinge_gain(asked: Asked) -> Answered:
    work = asked.work
    return way(
        asked,
        Cutter(STRAIGHT_CUTTER),
        settings=(
            length("height", "Plunge: as thick as the leaf", work.depth),
            length("wall", "From the end", work.near),
        ),
        guide="by eye to a knife line, or a pattern",
        needs=(SUPPORT, "a knife line round the leaf itself"),
        with_tools=("hand tools",),
        passes=(work.depth,),
        does=(("Rout near the line, then pare to it with a chisel.",),),
        test=TestCut(("Rout one in scrap and lay the leaf in.",), FIT_LEAF),
        accuracy=Length(1, 5),
        rank=1,
    )


def bevel(asked: Asked) -> Answered:
    return routed.bevel(
        asked,
        ", with a bearing",
        needs=(),
        does=("Across the grain first, then along it.",),
        instead="Plane it to the lines.",
    )


def edge(asked: Asked) -> Answered:
    work = asked.work
    return way(
        asked,
        Cutter("long straight cutter with a bearing"),
        settings=(length("takes", "Beyond the guide", work.depth),),
        guide="a straight guide board",
        table="face",
        needs=(GUIDE,),
        passes=asked.light_passes(),
        fed=work.piece.length,
        rank=2,
    )


def outline(asked: Asked) -> Answered:
    """Sawn first; a pattern then makes all alike."""
    thick = asked.work.piece.thickness
    return asked.over(
        thick,
        HAND_ROUTER_CUTTER,
        "The wood is {} thick; a cutter with a bearing reaches about {}.",
        "Saw it and smooth it by hand.",
    ) or way(
        asked,
        Cutter("straight cutter with a bearing"),
        settings=(length("height", "Cutter below the base", thick),),
        guide="a pattern",
        table="face",
        needs=("a pattern of thin sheet", "most of the waste sawn off first"),
        with_tools=("hand tools",),
        passes=(thick,),
        does=(("Saw outside the line with a coping saw first; the router takes only the rest.",),),
        extra=asked.minutes.jig,
        rank=2,
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
NO_BRIDGE = "Without a bridge to run on it follows every hollow."
NO_JIG = "Without a jig made for it the router has nothing to stand on at an end."
REFUSALS: Refusals = {
    **dict.fromkeys(SAWN, ("A router is no saw: cutting through with it is slow and dusty.", "Saw it.")),
    **dict.fromkeys(HOLES, ("A drill is quicker and its bit goes deeper.", "Drill it.")),
    "joint a face": (NO_BRIDGE, JOINT),
    "plane to thickness": (NO_BRIDGE, PLANE),
    "glue up a panel": GLUE,
    "notch": ("So much wood out of an edge catches and pulls the router off its line.", "Saw it."),
    "tails": (NO_JIG, "Saw them by hand."),
    "pins": (NO_JIG, "Saw and chop them by hand."),
    "fingers": (NO_JIG, "Use a table with a finger jig, or saw them by hand."),
    "flush": ("A router on a glued-up piece tips at the edges.", FLUSH),
    "sand": ("A cutter doesn't smooth.", SAND),
}
