"""The router in a table: channels, rabbets and tongues along a fence, in light passes."""

from __future__ import annotations

from fractions import Fraction

from benchalong.ground.lengths import Length
from benchalong.trade.cutters import STRAIGHT, narrowest, widest
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, degrees, length, way
from benchalong.trade.ways.blade_through import slope_of
from benchalong.trade.ways.fenced import can_turn, fenced
from benchalong.trade.ways.model import Cutter, Refusal, Setting, TestCut, Tool, Words, Work
from benchalong.trade.ways.practice import (
    HEAVY_DEEP,
    HEAVY_WIDE,
    JOINTER_PASS,
    ROUTER_FENCE_REACH,
    ROUTER_SHARE,
    STACK_WIDER,
    in_passes,
)
from benchalong.trade.ways.texts import (
    BACKED,
    CENTRED,
    FIT_CHANNEL,
    FIT_TONGUE,
    IN_THE_FENCE,
    MOVE_FENCE,
    ONE_FACE,
    OTHER_SIDE,
    beyond_cutter,
    standing_end,
)

TOOL: Tool = "router table"
ACCURACY = Length(1, 5)
"""mm; common practice."""
BACKING = "a square push block behind the work"


def passes(asked: Asked, depth: Length, cutter: Length, *, wide: Length | None = None) -> tuple[Length, ...]:
    """No deeper in one pass than half the cutter's diameter; `wide` of it cuts, all unless said."""
    is_wide = (cutter if wide is None else wide) > HEAVY_WIDE.most and asked.work.piece.wood == "hard"
    most = min(cutter * ROUTER_SHARE, asked.limit(HEAVY_DEEP))
    return in_passes(depth, most, asked.step, at_least=2 if is_wide else 1)


def cutter_for(
    asked: Asked, width: Length, *, tool: Tool = TOOL, most: Length | None = None
) -> Length | Refusal:
    """The widest straight cutter that isn't wider than the channel."""
    found = widest(STRAIGHT, asked.units, width if most is None else min(width, most))
    if found is not None:
        return found
    said: Words = (
        "The cut is ",
        width,
        " wide; the narrowest usual cutter is ",
        STRAIGHT[asked.units][0],
        ".",
    )
    return Refusal(tool, said, ("Saw it: one blade's kerf, or a hand saw.",))


def channel_cutter(asked: Asked, tool: Tool = TOOL) -> Length | Refusal:
    """Of a centred channel one that is narrower than it, so that two passes make it."""
    work = asked.work
    narrow = widest(STRAIGHT, asked.units, work.width, below=work.width)
    if can_turn(work) and narrow is not None and narrow * 2 >= work.width:
        return narrow
    return cutter_for(asked, work.width, tool=tool)


def groove(asked: Asked) -> Answered:
    work = asked.work
    if (refused := standing_end(TOOL, work) or beyond_cutter(TOOL, work)) is not None:
        return refused
    if work.near > ROUTER_FENCE_REACH.most:
        return beyond_reach(work)
    cutter = channel_cutter(asked)
    if isinstance(cutter, Refusal):
        return cutter
    lies = fenced(work, cutter)
    is_slanted = work.family == "spline slot"
    tilt = (degrees("angle", "Cradle from upright", work.angle),) if is_slanted else ()
    needs = (
        ["a cradle that holds the mitre on the table"] if is_slanted else ["a featherboard", "a push block"]
    )
    return way(
        asked,
        cutter=Cutter("straight cutter", cutter),
        settings=(
            *lies.settings,
            length("height", "Cutter above the table", work.depth),
            *stops(work),
            *tilt,
        ),
        guide=f"{work.from_side}, then {work.far_side}" if lies.is_turned else work.from_side,
        table=work.in_side,
        needs=(*needs, *(("stop blocks on the fence",) if work.is_stopped else ())),
        passes=passes(asked, work.depth, cutter),
        strokes=lies.strokes,
        is_turned=lies.is_turned,
        does=(CENTRED,) if lies.is_turned else (ONE_FACE,),
        test=TestCut(("Cut a groove in scrap of the same thickness.",), FIT_CHANNEL),
        accuracy=ACCURACY,
        extra=asked.minutes.jig if is_slanted else Fraction(0),
        rank=1,
    )


def beyond_reach(work: Work) -> Refusal:
    said: Words = (
        "The cut lies ",
        work.near,
        " from the edge; a router table's fence reaches ",
        ROUTER_FENCE_REACH,
        ".",
    )
    return Refusal(TOOL, said, ("Take a hand-held router along a clamped guide.",))


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


def dado(asked: Asked) -> Answered:
    work = asked.work
    if work.near > ROUTER_FENCE_REACH.most:
        return beyond_reach(work)
    cutter = cutter_for(asked, work.width)
    if isinstance(cutter, Refusal):
        return cutter
    strokes = int(-(-work.width // cutter))
    settings = [length("fence", "Fence to the cutter", work.near)]
    if strokes > 1:
        settings.append(
            length("fence_last", "Fence to the cutter, last stroke", work.near + work.width - cutter)
        )
    return way(
        asked,
        cutter=Cutter("straight cutter", cutter),
        settings=(*settings, length("height", "Cutter above the table", work.depth), *stops(work)),
        guide=work.from_side,
        table=work.in_side,
        needs=(BACKING, *(("stop blocks on the fence",) if work.is_stopped else ())),
        passes=passes(asked, work.depth, cutter),
        strokes=strokes,
        does=(ONE_FACE, BACKED),
        test=TestCut(("Cut across scrap of the same stock.",), FIT_CHANNEL),
        accuracy=ACCURACY,
        rank=2 if work.is_stopped else 1,
    )


def buried(asked: Asked, width: Length) -> tuple[Length, tuple[Setting, ...], int]:
    """A cutter wider than the cut, the rest inside the fence's opening."""
    far = length("fence_far", "Fence to the cutter's far side", width)
    cutter = narrowest(STRAIGHT, asked.units, width + asked.limit(STACK_WIDER))
    if cutter is None:
        largest = STRAIGHT[asked.units][-1]
        return largest, (far,), int(-(-width // largest))
    return cutter, (far, length("buried", "Cutter inside the fence", cutter - width)), 1


def rabbet(asked: Asked) -> Answered:
    work = asked.work
    cutter, settings, strokes = buried(asked, work.width)
    return way(
        asked,
        cutter=Cutter("straight cutter", cutter),
        settings=(*settings, length("height", "Cutter above the table", work.depth), *stops(work)),
        guide=work.from_side,
        table=work.in_side,
        needs=(
            "a fence that the cutter stands in",
            *(() if work.is_along_grain else (BACKING,)),
            *(("stop blocks on the fence",) if work.is_stopped else ()),
        ),
        passes=passes(asked, work.depth, cutter, wide=work.width),
        strokes=strokes,
        does=(IN_THE_FENCE,) if strokes == 1 else (MOVE_FENCE,),
        test=TestCut(("Cut a rabbet in scrap of the same thickness.",), FIT_CHANNEL),
        accuracy=ACCURACY,
        rank=1,
    )


def cheeks(asked: Asked) -> Answered:
    work = asked.work
    cutter, settings, strokes = buried(asked, work.depth)
    heights = [length("height", "Cutter above the table", work.near)]
    if work.far != work.near:
        heights.append(length("height_back", "Cutter above the table, second side", work.far))
    if any(work.shoulders):
        heights.append(length("height_edge", "Cutter above the table, on edge", max(work.shoulders)))
    sides = 2 + sum(1 for one in work.shoulders if one)
    cut = passes(asked, max(work.near, work.far, *work.shoulders), cutter, wide=work.depth)
    return way(
        asked,
        cutter=Cutter("straight cutter", cutter),
        settings=(*settings, *heights),
        guide=work.in_side,
        table=f"{work.from_side}, then {work.far_side}",
        needs=("a fence that the cutter stands in", *(() if work.is_along_grain else (BACKING,))),
        passes=cut,
        strokes=strokes,
        strokes_in_all=len(cut) * strokes * sides,
        does=(IN_THE_FENCE if strokes == 1 else MOVE_FENCE, OTHER_SIDE),
        test=TestCut(("Cut both sides on scrap of the same thickness.",), FIT_TONGUE),
        accuracy=ACCURACY,
        rank=1,
    )


def mortise(asked: Asked) -> Answered:
    """Between two stops; the ends stay round and are squared with a chisel."""
    work = asked.work
    if (refused := beyond_cutter(TOOL, work)) is not None:
        return refused
    cutter = cutter_for(asked, work.width)
    if isinstance(cutter, Refusal):
        return cutter
    settings = [
        length("fence", "Fence to the cutter", work.near),
        length("height", "Cutter above the table", work.depth),
    ]
    if cutter < work.width:
        settings.append(
            length("fence_last", "Fence to the cutter, last stroke", work.near + work.width - cutter)
        )
    return way(
        asked,
        cutter=Cutter("straight cutter that cuts at its end", cutter),
        settings=(*settings, *stops(work)),
        guide=work.from_side,
        table=work.in_side,
        needs=("two stop blocks on the fence", "a push block"),
        with_tools=("hand tools",),
        passes=passes(asked, work.depth, cutter),
        strokes=int(-(-work.width // cutter)),
        does=(ONE_FACE, ("Square the round ends with a chisel, or round the tenon to suit.",)),
        test=TestCut(("Cut one in scrap.",), FIT_CHANNEL),
        accuracy=ACCURACY,
        rank=2,
    )


def bevel(asked: Asked) -> Answered:
    work = asked.work
    slope = work.angle or slope_of(work)
    if slope != 45:
        said: Words = ("The bevel doesn't slope at half a right angle, and no usual cutter has its slope.",)
        return Refusal(TOOL, said, ("Saw it with the blade tilted, or plane it to the lines.",))
    return way(
        asked,
        cutter=Cutter("cutter for bevels at 45 degrees"),
        settings=(length("height", "Bevel, measured down from the face", work.depth),),
        guide=work.from_side,
        table=work.in_side,
        needs=("a fence that the cutter stands in", "a push block"),
        passes=in_passes(work.depth, asked.limit(HEAVY_DEEP), asked.step),
        does=(("Both ends first, then the long edges: they clean up what tears at the ends.",),),
        accuracy=ACCURACY,
        fed=work.whole(work.run),
        rank=0,
    )


def fingers(asked: Asked) -> Answered:
    work = asked.work
    cutter = cutter_for(asked, work.width)
    if isinstance(cutter, Refusal) or cutter != work.width:
        said: Words = (
            "No usual cutter is exactly ",
            work.width,
            " wide, and a finger jig needs just that.",
        )
        return Refusal(TOOL, said, ("Choose a finger as wide as a cutter, or saw them by hand.",))
    return way(
        asked,
        cutter=Cutter("straight cutter", cutter),
        settings=(
            length("pin", "Pin to the cutter", work.width),
            length("height", "Cutter above the table", work.depth),
        ),
        guide=work.from_side,
        table=work.in_side,
        needs=("a sled with a finger jig", "a backing board"),
        passes=passes(asked, work.depth, cutter),
        strokes=work.each,
        does=(("Each gap just cut goes over the pin for the next. Mating ends begin one finger apart.",),),
        test=TestCut(("Cut two scraps and push them together.",), FIT_TONGUE),
        accuracy=Length(1, 10),
        extra=asked.minutes.jig,
        rank=1,
    )


def tails(asked: Asked) -> Answered:
    work = asked.work
    return way(
        asked,
        cutter=Cutter("dovetail cutter of the same slope"),
        settings=(
            length("height", "Cutter above the table", work.depth),
            degrees("slope", "Slope", work.angle),
        ),
        guide="the sled",
        table=work.in_side,
        needs=("a sled that holds the piece on its end", "marks on the sled for each gap"),
        passes=(work.depth,),
        strokes=work.each,
        does=(
            (
                "A dovetail cutter takes its whole depth at once: saw out most of the waste first "
                "with a straight one.",
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
        cutter=Cutter("long straight cutter"),
        settings=(length("takes", "Outfeed half of the fence forward by", work.depth),),
        guide="edge a",
        table="face",
        needs=("a fence in two halves with shims",),
        passes=in_passes(work.depth, asked.limit(JOINTER_PASS), asked.step / 2),
        does=(("The cutter stands level with the outfeed half, as on a jointer.",),),
        accuracy=ACCURACY,
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
SAW = ("A router is no saw: cutting through with it is slow, dusty and throws the offcut.", "Saw it.")
DRILL = ("A cutter in a table can't be lowered into a piece for a hole.", "Drill it.")
REFUSALS: Refusals = {
    "rough crosscut": SAW,
    "joint a face": ("A fence and a small cutter flatten no face.", "Use a jointer or a hand plane."),
    "plane to thickness": (
        "A fence and a small cutter bring no face to an even thickness.",
        "Use a planer or a hand plane.",
    ),
    "rip": SAW,
    "crosscut to length": SAW,
    "resaw": SAW,
    "glue up a panel": ("Gluing takes clamps, no machine.", "Glue it at the bench."),
    "pilot hole": DRILL,
    "clearance hole": DRILL,
    "dowel hole": DRILL,
    "notch": ("So much wood out of an edge catches and throws the work.", "Saw it."),
    "taper": SAW,
    "straight outline": SAW,
    "curved outline": (
        "It follows a pattern but doesn't saw the shape out.",
        "Saw the curve first, then smooth it by hand.",
    ),
    "mitre": SAW,
    "pins": ("One sloping cutter leaves the wrong side sloping.", "Saw and chop them by hand to the tails."),
    "hinge gain": (
        "A door or side is too large to be held over a cutter for so small a place.",
        "Take a hand-held router or a chisel.",
    ),
    "flush": ("What is glued up doesn't go over a table.", "Plane or sand it flush."),
    "sand": ("A cutter doesn't smooth.", "Sand it at the bench."),
}
