"""The table saw with a stacked cutter: channels, rabbets, tongues and tenons in few strokes."""

from __future__ import annotations

from benchalong.ground.lengths import Length
from benchalong.trade.cutters import STACKS, narrowest, widest
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, length, way
from benchalong.trade.ways.fenced import can_turn, fenced
from benchalong.trade.ways.model import Cutter, Refusal, Setting, TestCut, Tool, Words
from benchalong.trade.ways.practice import (
    FENCE_REACH,
    HEAVY_DEEP,
    HEAVY_WIDE,
    SOFT_DEEP,
    STACK_WIDER,
    in_passes,
    takes_stacks,
)
from benchalong.trade.ways.texts import (
    BACKED,
    BURIED,
    CENTRED,
    DRAW_BACK,
    FIT_CHANNEL,
    FIT_TONGUE,
    MOVE_FENCE,
    NO_OFFCUT,
    NOT_STOPPED,
    ONE_FACE,
    OTHER_SIDE,
    STOPPED_INSTEAD,
    beyond_fence,
    standing_end,
)

TOOL: Tool = "table saw with a stacked cutter"
ACCURACY = Length(1, 5)
"""mm; common practice."""
ONE_BLADE = "Use the saw with one blade."


def not_here(asked: Asked) -> Refusal | None:
    """Where saws take no stack."""
    if takes_stacks(asked.country) is not False:
        return None
    return Refusal(
        TOOL,
        ("Most saws sold where this shop stands take no stacked cutter, and guards can't stay on.",),
        ("Use a router table; the saw's manual has the last word.",),
    )


def passes(asked: Asked, depth: Length, width: Length) -> tuple[Length, ...]:
    """Two or more when the channel is deep or wide."""
    most = asked.limit(SOFT_DEEP if asked.is_soft else HEAVY_DEEP)
    is_wide = width > HEAVY_WIDE.most and asked.work.piece.wood == "hard"
    return in_passes(depth, most, asked.step, at_least=2 if is_wide else 1)


def stack_for(asked: Asked, width: Length) -> tuple[Cutter, tuple[str, ...]] | Refusal:
    """A stack as wide as the channel, shims where the plates don't come out even; the widest for a wider
    one."""
    sizes = STACKS[asked.units]
    if width < sizes[0]:
        said: Words = ("The channel is ", width, " wide; the narrowest stack is ", sizes[0], ".")
        return Refusal(TOOL, said, (ONE_BLADE,))
    if width > sizes[-1]:
        return Cutter("stacked cutter", sizes[-1]), ()
    shims = () if width in sizes else ("shims for the stack",)
    return Cutter("stacked cutter", width), shims


def groove(asked: Asked) -> Answered:
    work = asked.work
    if work.is_stopped:
        return Refusal(TOOL, NOT_STOPPED, STOPPED_INSTEAD)
    if (refused := standing_end(TOOL, work) or beyond_fence(TOOL, work)) is not None:
        return refused
    found = stack_for(asked, work.width)
    if isinstance(found, Refusal):
        return found
    cutter, shims = found
    narrow = widest(STACKS, asked.units, work.width, below=work.width)
    if can_turn(work) and narrow is not None and narrow * 2 >= work.width:
        cutter, shims = Cutter("stacked cutter", narrow), ()
    lies = fenced(work, cutter.width or work.width)
    return way(
        asked,
        cutter=cutter,
        settings=(*lies.settings, length("height", "Cutter above the table", work.depth)),
        guide=f"{work.from_side}, then {work.far_side}" if lies.is_turned else work.from_side,
        table=work.in_side,
        needs=(*shims, "a featherboard", "a push block"),
        passes=passes(asked, work.depth, cutter.width or work.width),
        strokes=lies.strokes,
        is_turned=lies.is_turned,
        does=(CENTRED,) if lies.is_turned else (ONE_FACE,),
        test=TestCut(("Cut a groove in scrap of the same thickness.",), FIT_CHANNEL),
        accuracy=ACCURACY,
        rank=0,
    )


def dado(asked: Asked) -> Answered:
    work = asked.work
    if work.is_stopped:
        return Refusal(TOOL, NOT_STOPPED, STOPPED_INSTEAD)
    found = stack_for(asked, work.width)
    if isinstance(found, Refusal):
        return found
    cutter, shims = found
    lies = fenced_across(asked, cutter.width or work.width)
    return way(
        asked,
        cutter=cutter,
        settings=(*lies, length("height", "Cutter above the table", work.depth)),
        guide=work.from_side,
        table=work.in_side,
        needs=(*shims, "a mitre gauge with a backing board"),
        passes=passes(asked, work.depth, cutter.width or work.width),
        strokes=int(-(-work.width // (cutter.width or work.width))),
        does=(
            (f"Hold the work to the mitre gauge, {work.from_side} against the fence or stop.",),
            BACKED,
        ),
        test=TestCut(("Cut across scrap of the same stock.",), FIT_CHANNEL),
        accuracy=ACCURACY,
        why=NO_OFFCUT,
        rank=0,
    )


def fenced_across(asked: Asked, cutter: Length) -> tuple[Setting, ...]:
    """The fence is the stop where it reaches that far, else a block on the mitre gauge."""
    work = asked.work
    stop = work.near > FENCE_REACH.most
    key, name = ("stop", "Stop block to the cutter") if stop else ("fence", "Fence to the cutter")
    settings = [length(key, name, work.near)]
    if cutter < work.width:
        last = work.near + work.width - cutter
        settings.append(length(f"{key}_last", f"{name}, last stroke", last))
    return tuple(settings)


def rabbet(asked: Asked) -> Answered:
    """Part of the stack is buried in a sacrificial fence, so that the fence alone sets the width."""
    work = asked.work
    if work.is_stopped:
        return Refusal(TOOL, NOT_STOPPED, STOPPED_INSTEAD)
    cutter, settings, strokes = buried(asked, work.width)
    return way(
        asked,
        cutter=cutter,
        settings=(*settings, length("height", "Cutter above the table", work.depth)),
        guide=work.from_side,
        table=work.in_side,
        needs=("a sacrificial fence", *across_needs(asked), "a featherboard", "a push block"),
        passes=passes(asked, work.depth, work.width),
        strokes=strokes,
        does=(BURIED,) if strokes == 1 else (MOVE_FENCE,),
        test=TestCut(("Cut a rabbet in scrap of the same thickness.",), FIT_CHANNEL),
        accuracy=ACCURACY,
        extra=asked.minutes.sacrificial_fence,
        why=() if work.is_along_grain else NO_OFFCUT,
        rank=0,
    )


def buried(asked: Asked, width: Length) -> tuple[Cutter, tuple[Setting, ...], int]:
    """A stack wider than the cut, the rest of it inside the sacrificial fence; for a cut wider than any
    stack, the widest in several strokes."""
    far = length("fence_far", "Fence to the cutter's far side", width)
    stack = narrowest(STACKS, asked.units, width + asked.limit(STACK_WIDER))
    if stack is None:
        widest_stack = STACKS[asked.units][-1]
        return Cutter("stacked cutter", widest_stack), (far,), int(-(-width // widest_stack))
    inside = length("buried", "Cutter inside the sacrificial fence", stack - width)
    return Cutter("stacked cutter", stack), (far, inside), 1


def across_needs(asked: Asked) -> tuple[str, ...]:
    return () if asked.work.is_along_grain else ("a mitre gauge with a backing board",)


def cheeks(asked: Asked) -> Answered:
    """A tongue or tenon: a pass on each side, the piece lying flat."""
    work = asked.work
    cutter, settings, strokes = buried(asked, work.depth)
    heights = [length("height", "Cutter above the table", work.near)]
    if work.far != work.near:
        heights.append(length("height_back", "Cutter above the table, second side", work.far))
    deepest = max(work.near, work.far, *work.shoulders)
    if any(work.shoulders):
        heights.append(length("height_edge", "Cutter above the table, on edge", max(work.shoulders)))
    sides = 2 + sum(1 for one in work.shoulders if one)
    cut = passes(asked, deepest, min(work.depth, cutter.width or work.depth))
    return way(
        asked,
        cutter=cutter,
        settings=(*settings, *heights),
        guide=work.in_side,
        table=f"{work.from_side}, then {work.far_side}",
        needs=("a sacrificial fence", *across_needs(asked)),
        passes=cut,
        strokes=strokes,
        strokes_in_all=len(cut) * strokes * sides,
        does=(
            *((DRAW_BACK,) if strokes > 1 else (BURIED,)),
            OTHER_SIDE,
            *(() if work.is_along_grain else (BACKED,)),
        ),
        test=TestCut(("Cut both sides on scrap of the same thickness.",), FIT_TONGUE),
        accuracy=ACCURACY,
        extra=asked.minutes.sacrificial_fence,
        why=() if work.is_along_grain else NO_OFFCUT,
        rank=0,
    )


def notch(asked: Asked) -> Answered:
    work = asked.work
    if (standing := standing_end(TOOL, work)) is not None:
        return standing
    stack = min(work.width, STACKS[asked.units][-1])
    cutter = Cutter("stacked cutter", widest(STACKS, asked.units, stack))
    if cutter.width is None:
        return Refusal(TOOL, ("The notch is narrower than any stack.",), (ONE_BLADE,))
    settings = [length("stop", "Stop block to the cutter", work.near)]
    if cutter.width < work.width:
        last = work.near + work.width - cutter.width
        settings.append(length("stop_last", "Stop block to the cutter, last stroke", last))
    return way(
        asked,
        cutter=cutter,
        settings=(*settings, length("height", "Cutter above the table", work.depth)),
        guide=work.from_side,
        table=work.in_side,
        needs=("a mitre gauge with a tall backing board",),
        passes=passes(asked, work.depth, cutter.width),
        strokes=int(-(-work.width // cutter.width)),
        does=(("Stand the piece against the backing board and clamp it there.",), BACKED),
        test=TestCut(("Cut the notch in scrap.",), FIT_CHANNEL),
        accuracy=ACCURACY,
        rank=1,
    )


def fingers(asked: Asked) -> Answered:
    work = asked.work
    found = stack_for(asked, work.width)
    if isinstance(found, Refusal):
        return found
    cutter, shims = found
    if cutter.width != work.width:
        return Refusal(TOOL, ("The fingers are wider than any stack.",), ("Saw and chop them by hand.",))
    return way(
        asked,
        cutter=cutter,
        settings=(
            length("pin", "Pin to the cutter", work.width),
            length("height", "Cutter above the table", work.depth),
        ),
        guide=work.from_side,
        table=work.in_side,
        needs=(*shims, "a mitre gauge with a finger jig", "a backing board"),
        passes=passes(asked, work.depth, work.width),
        strokes=work.each,
        does=(
            ("The pin in the jig is as wide as a finger and one finger from the cutter.",),
            ("Each gap just cut goes over the pin for the next. Mating ends begin one finger apart.",),
        ),
        test=TestCut(("Cut two scraps and push them together.",), FIT_TONGUE),
        accuracy=Length(1, 10),
        extra=asked.minutes.jig,
        rank=0,
    )


WAYS: Ways = {
    "groove": groove,
    "dado": dado,
    "rabbet": rabbet,
    "tongue": cheeks,
    "tenon": cheeks,
    "notch": notch,
    "spline slot": groove,
    "fingers": fingers,
}
STOPPED = (
    "A saw's cutter is round: it can't end a cut before the edge with a square end, and dropping wood "
    "onto it "
    "is not safe.",
    "Rout it along a guide, or chop it by hand.",
)
ONE = ("A stacked cutter makes channels; it never cuts through.", ONE_BLADE)
REFUSALS: Refusals = {
    "rough crosscut": ONE,
    "crosscut to length": ONE,
    "rip": ONE,
    "resaw": ONE,
    "bevel": ONE,
    "taper": ONE,
    "straight outline": ONE,
    "mitre": ONE,
    "curved outline": (
        "A saw's plate cuts straight lines only.",
        "Use a band saw, a jigsaw or a coping saw.",
    ),
    "stopped dado": STOPPED,
    "mortise": (
        "A mortise is closed on all sides; a saw's cutter can't go in and out.",
        "Drill and chop it, or rout it.",
    ),
    "hinge gain": STOPPED,
    "pilot hole": ("A saw makes no round holes.", "Drill it."),
    "clearance hole": ("A saw makes no round holes.", "Drill it."),
    "dowel hole": ("A saw makes no round holes.", "Drill it."),
    "tails": ("The slopes go both ways; a stack stands square.", "Saw them by hand, or rout them."),
    "pins": ("The slopes go both ways; a stack stands square.", "Saw and chop them by hand."),
    "joint a face": ("A saw leaves no flat face.", "Joint it by machine or by hand plane."),
    "joint an edge": ONE,
    "plane to thickness": ("A saw leaves no even thickness over a face.", "Plane it."),
    "glue up a panel": ("Gluing takes clamps, no machine.", "Glue it at the bench."),
    "flush": ("What is glued up stands no saw.", "Plane or sand it flush."),
    "sand": ("A saw doesn't smooth.", "Sand it at the bench."),
}
