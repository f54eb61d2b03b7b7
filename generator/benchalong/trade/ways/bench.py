"""The bench, where there is no machine: clamps, rules, and abrasive paper on a block."""

from __future__ import annotations

from benchalong.ground.lengths import METRE, ZERO, Length
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, way
from benchalong.trade.ways.model import Cutter
from benchalong.trade.ways.practice import SANDING_STEP
from benchalong.trade.ways.refused import all_but
from benchalong.trade.ways.settings import length


def glue(asked: Asked) -> Answered:
    work, minutes = asked.work, asked.minutes
    lines = max(0, work.count - 1)
    return way(
        asked,
        Cutter("clamps"),
        settings=(length("width", "Panel, before trimming", work.piece.width),),
        guide="",
        table="the marked faces alternate over and under as the triangle says",
        needs=("clamps over and under by turns", "cauls"),
        does=(
            ("Dry first: every joint closes under light pressure, without a gap at the ends.",),
            ("Tighten from the middle outward; a few beads of glue all along are right.",),
            ("Scrape the beads off when they are like rubber.",),
        ),
        accuracy=Length(1, 2),
        for_all=minutes.pace * (minutes.glue_line * lines * work.piece.length / METRE + 5),
        rank=0,
    )


def sand(asked: Asked) -> Answered:
    piece, minutes = asked.work.piece, asked.minutes
    area = 2 * piece.length * piece.width / METRE / METRE
    return way(
        asked,
        Cutter("abrasive paper"),
        guide="",
        table="the bench",
        needs=("a sanding block or sander", "a mask", "dust drawn off"),
        does=(
            (
                "80 or 100 grit only where there are tool marks, then 120, 150, 180: no jump over one and a "
                "half times. Along the grain.",
            ),
        ),
        accuracy=ZERO,
        for_all=minutes.pace * minutes.sanding * area * asked.work.count,
        rank=0,
    )


def flush(asked: Asked) -> Answered:
    work = asked.work
    return asked.over(
        work.depth,
        SANDING_STEP,
        "The step is {}; over {} a block rounds the edges before it is gone.",
        "Plane it flush by hand.",
    ) or way(
        asked,
        Cutter("abrasive paper"),
        guide="",
        table="the bench",
        needs=("a hard, flat sanding block",),
        passes=(work.depth,) if work.depth else (),
        does=(("Pencil across the joint; sand until the pencil is gone on both sides.",),),
        for_all=asked.minutes.pace * 3 * work.count,
        rank=1,
    )


WAYS: Ways = {"glue up a panel": glue, "sand": sand, "flush": flush}
REFUSALS: Refusals = all_but(
    WAYS, "Clamps, rules and paper cut nothing.", "It takes a saw, a router, a drill or hand tools."
)
