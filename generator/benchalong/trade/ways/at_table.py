"""Cuts that a stack, one blade and a router table make alike: the wood goes over a cutter that stands in a
table."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from benchalong.ground.lengths import Length
from benchalong.trade.ways.asked import Answered, Asked, way
from benchalong.trade.ways.fenced import fenced, near_and_far, strokes
from benchalong.trade.ways.model import Cutter, Setting, TestCut, Tool, Words
from benchalong.trade.ways.practice import FENCE_REACH
from benchalong.trade.ways.settings import height, heights, length
from benchalong.trade.ways.texts import (
    BACKED,
    CENTRED,
    FIT_CHANNEL,
    FIT_TONGUE,
    ONE_FACE,
    TEST_CHEEKS,
    TEST_GROOVE,
)

CUTTERS: Mapping[Tool, str] = {
    "table saw with a stacked cutter": "stacked cutter",
    "table saw": "blade",
    "router table": "straight cutter",
}
CRADLE = "a cradle that holds the mitre on the table"
PUSHED = ("a featherboard", "a push block")
GAUGE = "a mitre gauge with a backing board"


def cutter_of(asked: Asked, width: Length) -> Cutter:
    return Cutter(CUTTERS[asked.tool], width)


def groove(
    asked: Asked,
    cutter: Length,
    *,
    settings: Sequence[Setting] = (),
    needs: Sequence[str],
    passes: Sequence[Length],
    extra: Fraction = Fraction(0),
    rank: int,
) -> Answered:
    work, lies = asked.work, fenced(asked.work, cutter)
    return way(
        asked,
        cutter_of(asked, cutter),
        settings=(*lies.settings, height(asked.tool, work.depth), *settings),
        guide=lies.guide,
        needs=needs,
        passes=passes,
        strokes=lies.strokes,
        is_turned=lies.is_turned,
        does=(CENTRED if lies.is_turned else ONE_FACE,),
        test=TEST_GROOVE,
        extra=extra,
        rank=rank,
    )


def cheeks(
    asked: Asked,
    cutter: Length,
    *settings: Setting,
    strokes: int,
    needs: Sequence[str],
    passes: Sequence[Length],
    does: Sequence[Words],
    extra: Fraction = Fraction(0),
    why: Words = (),
    rank: int,
) -> Answered:
    """A tongue or tenon, the piece lying flat: one side, then the other, then its narrow shoulders."""
    work = asked.work
    sides = 2 + sum(1 for one in work.shoulders if one)
    return way(
        asked,
        cutter_of(asked, cutter),
        settings=(*settings, *heights(asked.tool, work)),
        guide=work.in_side,
        table=f"{work.from_side}, then {work.far_side}",
        needs=needs,
        passes=passes,
        strokes=strokes,
        strokes_in_all=len(passes) * strokes * sides,
        does=does,
        test=TEST_CHEEKS,
        extra=extra,
        why=why,
        rank=rank,
    )


def deepest(asked: Asked) -> Length:
    """Of a tongue's or tenon's sides."""
    return max(asked.work.near, asked.work.far, *asked.work.shoulders)


def notch(asked: Asked, cutter: Length, stop: str, *, passes: Sequence[Length], rank: int) -> Answered:
    work = asked.work
    return way(
        asked,
        cutter_of(asked, cutter),
        settings=(*near_and_far(work, cutter, "stop", stop), height(asked.tool, work.depth)),
        needs=("a mitre gauge with a tall backing board",),
        passes=passes,
        strokes=strokes(work.width, cutter),
        does=(("Stand the piece against the backing board and clamp it there.",), BACKED),
        test=TestCut(("Cut the notch in scrap.",), FIT_CHANNEL),
        rank=rank,
    )


def fingers(
    asked: Asked, *does: Words, needs: Sequence[str], passes: Sequence[Length], rank: int
) -> Answered:
    """The cutter is as wide as a finger."""
    work = asked.work
    return way(
        asked,
        cutter_of(asked, work.width),
        settings=(length("pin", "Pin to the cutter", work.width), height(asked.tool, work.depth)),
        needs=(*needs, "a backing board"),
        passes=passes,
        strokes=work.each,
        does=(
            *does,
            ("Each gap just cut goes over the pin for the next. Mating ends begin one finger apart.",),
        ),
        test=TestCut(("Cut two scraps and push them together.",), FIT_TONGUE),
        accuracy=Length(1, 10),
        extra=asked.minutes.jig,
        rank=rank,
    )


def fenced_across(asked: Asked, cutter: Length) -> tuple[Setting, ...]:
    """The fence is the stop where it reaches that far, else a block on the mitre gauge."""
    if asked.work.near > FENCE_REACH.most:
        return near_and_far(asked.work, cutter, "stop", "Stop block to the cutter")
    return near_and_far(asked.work, cutter)


def across_needs(asked: Asked) -> tuple[str, ...]:
    return () if asked.work.is_along_grain else (GAUGE,)
