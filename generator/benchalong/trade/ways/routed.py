"""What a router does alike in a table and in the hand: its cutter, its passes, bevels and edges."""

from __future__ import annotations

from collections.abc import Sequence

from benchalong.ground.lengths import Length
from benchalong.trade.cutters import STRAIGHT, widest
from benchalong.trade.ways.asked import Answered, Asked, way
from benchalong.trade.ways.fenced import turning_cutter
from benchalong.trade.ways.model import Cutter, Refusal, Words
from benchalong.trade.ways.practice import HEAVY_DEEP, ROUTER_SHARE, in_passes
from benchalong.trade.ways.settings import length, slope_of

PLUNGING = "straight cutter that cuts at its end"


def passes(asked: Asked, depth: Length, cutter: Length, *, wide: Length | None = None) -> tuple[Length, ...]:
    """No deeper in one pass than half the cutter's diameter; `wide` of it cuts, all unless said."""
    most = min(cutter * ROUTER_SHARE, asked.limit(HEAVY_DEEP))
    return asked.channel_passes(depth, most=most, wide=cutter if wide is None else wide)


def cutter_for(asked: Asked, *, most: Length | None = None) -> Length | Refusal:
    """The widest straight cutter that isn't wider than the channel."""
    width = asked.work.width
    return widest(STRAIGHT, asked.units, width if most is None else min(width, most)) or asked.refuse(
        "The cut is {} wide; the narrowest usual cutter is {}.",
        "Saw it: one blade's kerf, or a hand saw.",
        width,
        STRAIGHT[asked.units][0],
    )


def groove_cutter(asked: Asked) -> Length | Refusal:
    """Of a centred channel one that is narrower than it, so that two passes make it."""
    return turning_cutter(asked, STRAIGHT) or cutter_for(asked)


def bevel(asked: Asked, more: str, *, needs: Sequence[str], does: Words, instead: str) -> Answered:
    """`more` of the cutter."""
    work = asked.work
    if slope_of(work) != 45:
        return asked.refuse(
            "The bevel doesn't slope at half a right angle, and no usual cutter has its slope.", instead
        )
    return way(
        asked,
        Cutter(f"cutter for bevels at 45 degrees{more}"),
        settings=(length("height", "Bevel, measured down from the face", work.depth),),
        needs=needs,
        passes=in_passes(work.depth, asked.limit(HEAVY_DEEP), asked.step),
        does=(does,),
        fed=work.whole(work.run),
        rank=0,
    )
