"""The table saw with a stacked cutter: channels, rabbets, tongues and tenons in few strokes."""

from __future__ import annotations

from benchalong.ground.lengths import Length
from benchalong.trade.cutters import STACKS, widest
from benchalong.trade.ways import at_table
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, way
from benchalong.trade.ways.at_table import GAUGE, PUSHED, across_needs, cutter_of, deepest, fenced_across
from benchalong.trade.ways.fenced import buried, strokes, turning_cutter
from benchalong.trade.ways.model import Refusal, Words
from benchalong.trade.ways.practice import HEAVY_DEEP, SOFT_DEEP, takes_stacks
from benchalong.trade.ways.refused import SAWN, beyond_fence, by_table_saw, standing_end, stopped
from benchalong.trade.ways.settings import height
from benchalong.trade.ways.texts import BACKED, MOVE_FENCE, NO_OFFCUT, OTHER_SIDE, TEST_ACROSS, TEST_RABBET

ONE_BLADE = "Use the saw with one blade."
SACRIFICIAL = "a sacrificial fence"
BURIED: Words = (
    "The cutter is wider than the cut. With the fence locked, raise the running cutter into the sacrificial "
    "fence; from then on the fence alone sets the width.",
)
DRAW_BACK: Words = (
    "Begin at the shoulder, the end against the fence, then draw the work away from the fence for the rest.",
)


def not_here(asked: Asked) -> Refusal | None:
    """Where saws take no stack."""
    if takes_stacks(asked.country) is not False:
        return None
    return asked.refuse(
        "Most saws sold where this shop stands take no stacked cutter, and guards can't stay on.",
        "Use a router table; the saw's manual has the last word.",
    )


def passes(asked: Asked, depth: Length, width: Length) -> tuple[Length, ...]:
    """Two or more when the channel is deep or wide."""
    most = asked.limit(SOFT_DEEP if asked.is_soft else HEAVY_DEEP)
    return asked.channel_passes(depth, most=most, wide=width)


def too_narrow(asked: Asked) -> Refusal | None:
    narrowest = STACKS[asked.units][0]
    if asked.work.width >= narrowest:
        return None
    return asked.refuse(
        "The channel is {} wide; the narrowest stack is {}.", ONE_BLADE, asked.work.width, narrowest
    )


def stack_for(asked: Asked) -> tuple[Length, tuple[str, ...]]:
    """A stack as wide as the channel, shims where the plates don't come out even; the widest for a wider
    one."""
    width, sizes = asked.work.width, STACKS[asked.units]
    return min(width, sizes[-1]), () if width in sizes or width > sizes[-1] else ("shims for the stack",)


def groove(asked: Asked) -> Answered:
    if refused := stopped(asked) or standing_end(asked) or beyond_fence(asked) or too_narrow(asked):
        return refused
    cutter, shims = stack_for(asked)
    if narrow := turning_cutter(asked, STACKS):
        cutter, shims = narrow, ()
    return at_table.groove(
        asked, cutter, needs=(*shims, *PUSHED), passes=passes(asked, asked.work.depth, cutter), rank=0
    )


def dado(asked: Asked) -> Answered:
    work = asked.work
    if refused := stopped(asked) or too_narrow(asked):
        return refused
    cutter, shims = stack_for(asked)
    return way(
        asked,
        cutter_of(asked, cutter),
        settings=(*fenced_across(asked, cutter), height(asked.tool, work.depth)),
        needs=(*shims, GAUGE),
        passes=passes(asked, work.depth, cutter),
        strokes=strokes(work.width, cutter),
        does=((f"Hold the work to the mitre gauge, {work.from_side} against the fence or stop.",), BACKED),
        test=TEST_ACROSS,
        why=NO_OFFCUT,
        rank=0,
    )


def rabbet(asked: Asked) -> Answered:
    """Part of the stack is buried in a sacrificial fence, so that the fence alone sets the width."""
    work = asked.work
    if refused := stopped(asked):
        return refused
    into = buried(asked, STACKS, work.width, "the sacrificial fence")
    return way(
        asked,
        cutter_of(asked, into.cutter),
        settings=(*into.settings, height(asked.tool, work.depth)),
        needs=(SACRIFICIAL, *across_needs(asked), *PUSHED),
        passes=passes(asked, work.depth, work.width),
        strokes=into.strokes,
        does=(BURIED if into.strokes == 1 else MOVE_FENCE,),
        test=TEST_RABBET,
        extra=asked.minutes.sacrificial_fence,
        why=() if work.is_along_grain else NO_OFFCUT,
        rank=0,
    )


def cheeks(asked: Asked) -> Answered:
    """A tongue or tenon: a pass on each side, the piece lying flat."""
    work = asked.work
    into = buried(asked, STACKS, work.depth, "the sacrificial fence")
    return at_table.cheeks(
        asked,
        into.cutter,
        *into.settings,
        strokes=into.strokes,
        needs=(SACRIFICIAL, *across_needs(asked)),
        passes=passes(asked, deepest(asked), min(work.depth, into.cutter)),
        does=(
            BURIED if into.strokes == 1 else DRAW_BACK,
            OTHER_SIDE,
            *(() if work.is_along_grain else (BACKED,)),
        ),
        extra=asked.minutes.sacrificial_fence,
        why=() if work.is_along_grain else NO_OFFCUT,
        rank=0,
    )


def notch(asked: Asked) -> Answered:
    if refused := standing_end(asked):
        return refused
    cutter = widest(STACKS, asked.units, asked.work.width)
    if cutter is None:
        return asked.refuse("The notch is narrower than any stack.", ONE_BLADE)
    return at_table.notch(
        asked,
        cutter,
        "Stop block to the cutter",
        passes=passes(asked, asked.work.depth, cutter),
        rank=1,
    )


def fingers(asked: Asked) -> Answered:
    if refused := too_narrow(asked):
        return refused
    cutter, shims = stack_for(asked)
    if cutter != asked.work.width:
        return asked.refuse("The fingers are wider than any stack.", "Saw and chop them by hand.")
    return at_table.fingers(
        asked,
        ("The pin in the jig is as wide as a finger and one finger from the cutter.",),
        needs=(*shims, "a mitre gauge with a finger jig"),
        passes=passes(asked, asked.work.depth, cutter),
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
THROUGH = ("A stacked cutter makes channels; it never cuts through.", ONE_BLADE)
BOTH_WAYS = "The slopes go both ways; a stack stands square."
REFUSALS: Refusals = {
    **by_table_saw("cutter"),
    **dict.fromkeys((*SAWN, "bevel", "straight outline", "joint an edge"), THROUGH),
    "tails": (BOTH_WAYS, "Saw them by hand, or rout them."),
    "pins": (BOTH_WAYS, "Saw and chop them by hand."),
}
