"""The router in a table: channels, rabbets and tongues along a fence, in light passes."""

from __future__ import annotations

from fractions import Fraction

from benchalong.ground.lengths import Length
from benchalong.trade.cutters import STRAIGHT
from benchalong.trade.ways import at_table, routed
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, way
from benchalong.trade.ways.at_table import CRADLE, PUSHED, cutter_of, deepest
from benchalong.trade.ways.fenced import buried, near_and_far, strokes
from benchalong.trade.ways.model import Cutter, Refusal, Setting, TestCut, Words, Work
from benchalong.trade.ways.practice import ROUTER_FENCE_REACH
from benchalong.trade.ways.refused import (
    FLUSH,
    GLUE,
    HOLES,
    JOINT,
    PLANE,
    SAND,
    SAWN,
    beyond_cutter,
    standing_end,
)
from benchalong.trade.ways.routed import PLUNGING, cutter_for, groove_cutter, passes
from benchalong.trade.ways.settings import cradle, degrees, height, length
from benchalong.trade.ways.texts import (
    BACKED,
    FIT_CHANNEL,
    MOVE_FENCE,
    ONE_FACE,
    OTHER_SIDE,
    ROUND_ENDS,
    TEST_ACROSS,
    TEST_RABBET,
)

BACKING = "a square push block behind the work"
HOUSED = "a fence that the cutter stands in"
IN_THE_FENCE: Words = (
    "The cutter is wider than the cut and stands partly in the opening of the fence, so that the fence alone "
    "sets the width and the work is never between fence and cutter.",
)


def beyond_reach(asked: Asked) -> Refusal | None:
    return asked.over(
        asked.work.near,
        ROUTER_FENCE_REACH,
        "The cut lies {} from the edge; a router table's fence reaches {}.",
        "Take a hand-held router along a clamped guide.",
    )


def stops(work: Work) -> tuple[Setting, ...]:
    """For a stopped cut: blocks on the fence that the work's ends meet, measured to the cutter's side away
    from the block. The end from which `before` is measured goes first."""
    found = []
    if work.before:
        name = "Rear stop to the cutter's far side"
        found.append(length("stop_first", name, work.length + work.after))
    if work.after:
        name = "Front stop to the cutter's far side"
        found.append(length("stop_last", name, work.before + work.length))
    return tuple(found)


def blocks(work: Work) -> tuple[str, ...]:
    return ("stop blocks on the fence",) if work.is_stopped else ()


def backing(work: Work) -> tuple[str, ...]:
    return () if work.is_along_grain else (BACKING,)


def groove(asked: Asked) -> Answered:
    work = asked.work
    if refused := standing_end(asked) or beyond_cutter(asked) or beyond_reach(asked):
        return refused
    cutter = groove_cutter(asked)
    if isinstance(cutter, Refusal):
        return cutter
    is_slanted = work.family == "spline slot"
    return at_table.groove(
        asked,
        cutter,
        settings=(*stops(work), *cradle(work)),
        needs=(*((CRADLE,) if is_slanted else PUSHED), *blocks(work)),
        passes=passes(asked, work.depth, cutter),
        extra=asked.minutes.jig if is_slanted else Fraction(0),
        rank=1,
    )


def dado(asked: Asked) -> Answered:
    work = asked.work
    cutter = beyond_reach(asked) or cutter_for(asked)
    if isinstance(cutter, Refusal):
        return cutter
    return way(
        asked,
        cutter_of(asked, cutter),
        settings=(*near_and_far(work, cutter), height(asked.tool, work.depth), *stops(work)),
        needs=(BACKING, *blocks(work)),
        passes=passes(asked, work.depth, cutter),
        strokes=strokes(work.width, cutter),
        does=(ONE_FACE, BACKED),
        test=TEST_ACROSS,
        rank=2 if work.is_stopped else 1,
    )


def rabbet(asked: Asked) -> Answered:
    work = asked.work
    into = buried(asked, STRAIGHT, work.width, "the fence")
    return way(
        asked,
        cutter_of(asked, into.cutter),
        settings=(*into.settings, height(asked.tool, work.depth), *stops(work)),
        needs=(HOUSED, *backing(work), *blocks(work)),
        passes=passes(asked, work.depth, into.cutter, wide=work.width),
        strokes=into.strokes,
        does=(IN_THE_FENCE if into.strokes == 1 else MOVE_FENCE,),
        test=TEST_RABBET,
        rank=1,
    )


def cheeks(asked: Asked) -> Answered:
    work = asked.work
    into = buried(asked, STRAIGHT, work.depth, "the fence")
    return at_table.cheeks(
        asked,
        into.cutter,
        *into.settings,
        strokes=into.strokes,
        needs=(HOUSED, *backing(work)),
        passes=passes(asked, deepest(asked), into.cutter, wide=work.depth),
        does=(IN_THE_FENCE if into.strokes == 1 else MOVE_FENCE, OTHER_SIDE),
        rank=1,
    )


def mortise(asked: Asked) -> Answered:
    """Between two stops; the ends stay round and are squared with a chisel."""
    work = asked.work
    cutter = beyond_cutter(asked) or cutter_for(asked)
    if isinstance(cutter, Refusal):
        return cutter
    near, *far = near_and_far(work, cutter)
    return way(
        asked,
        Cutter(PLUNGING, cutter),
        settings=(near, height(asked.tool, work.depth), *far, *stops(work)),
        needs=("two stop blocks on the fence", "a push block"),
        with_tools=("hand tools",),
        passes=passes(asked, work.depth, cutter),
        strokes=strokes(work.width, cutter),
        does=(ONE_FACE, ROUND_ENDS),
        test=TestCut(("Cut one in scrap.",), FIT_CHANNEL),
        rank=2,
    )


def bevel(asked: Asked) -> Answered:
    return routed.bevel(
        asked,
        "",
        needs=(HOUSED, "a push block"),
        does=("Both ends first, then the long edges: they clean up what tears at the ends.",),
        instead="Saw it with the blade tilted, or plane it to the lines.",
    )


def fingers(asked: Asked) -> Answered:
    work = asked.work
    if cutter_for(asked) != work.width:
        return asked.refuse(
            "No usual cutter is exactly {} wide, and a finger jig needs just that.",
            "Choose a finger as wide as a cutter, or saw them by hand.",
            work.width,
        )
    return at_table.fingers(
        asked,
        needs=("a sled with a finger jig",),
        passes=passes(asked, work.depth, work.width),
        rank=1,
    )


def tails(asked: Asked) -> Answered:
    work = asked.work
    return way(
        asked,
        Cutter("dovetail cutter of the same slope"),
        settings=(height(asked.tool, work.depth), degrees("slope", "Slope", work.angle)),
        guide="the sled",
        needs=("a sled that holds the piece on its end", "marks on the sled for each gap"),
        passes=(work.depth,),
        strokes=work.each,
        does=(
            (
                "A dovetail cutter takes its whole depth at once: saw out most of the waste first with a "
                "straight one.",
            ),
            ("Saw the pins by hand to these tails.",),
        ),
        test=TestCut(("Cut one gap in scrap.",), ("Its slope is the one drawn.",)),
        accuracy=Length(1, 4),
        extra=asked.minutes.jig,
        rank=2,
    )


def edge(asked: Asked) -> Answered:
    """The outfeed half of the fence stands forward by what comes off."""
    work = asked.work
    return way(
        asked,
        Cutter("long straight cutter"),
        settings=(length("takes", "Outfeed half of the fence forward by", work.depth),),
        guide="edge a",
        table="face",
        needs=("a fence in two halves with shims",),
        passes=asked.light_passes(),
        does=(("The cutter stands level with the outfeed half, as on a jointer.",),),
        fed=work.piece.length,
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
    "spline slot": groove,
    "tails": tails,
    "fingers": fingers,
}
REFUSALS: Refusals = {
    **dict.fromkeys(
        (*SAWN, "straight outline"),
        ("A router is no saw: cutting through with it is slow, dusty and throws the offcut.", "Saw it."),
    ),
    **dict.fromkeys(HOLES, ("A cutter in a table can't be lowered into a piece for a hole.", "Drill it.")),
    "joint a face": ("A fence and a small cutter flatten no face.", JOINT),
    "plane to thickness": ("A fence and a small cutter bring no face to an even thickness.", PLANE),
    "glue up a panel": GLUE,
    "notch": ("So much wood out of an edge catches and throws the work.", "Saw it."),
    "curved outline": (
        "It follows a pattern but doesn't saw the shape out.",
        "Saw the curve first, then smooth it by hand.",
    ),
    "pins": ("One sloping cutter leaves the wrong side sloping.", "Saw and chop them by hand to the tails."),
    "hinge gain": (
        "A door or side is too large to be held over a cutter for so small a place.",
        "Take a hand-held router or a chisel.",
    ),
    "flush": ("What is glued up doesn't go over a table.", FLUSH),
    "sand": ("A cutter doesn't smooth.", SAND),
}
