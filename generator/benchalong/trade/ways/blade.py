"""The table saw with one blade: channels a kerf at a time; what goes through is in `blade_through`."""

from __future__ import annotations

from fractions import Fraction

from benchalong.trade.ways import at_table
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, way
from benchalong.trade.ways.at_table import (
    CRADLE,
    GAUGE,
    PUSHED,
    across_needs,
    cutter_of,
    deepest,
    fenced_across,
)
from benchalong.trade.ways.blade_through import bevel, crosscut, mitre, outline, resaw, rip, taper
from benchalong.trade.ways.fenced import strokes
from benchalong.trade.ways.model import Refusal
from benchalong.trade.ways.practice import BLADE_HIGHEST, FENCE_REACH
from benchalong.trade.ways.refused import beyond_fence, by_table_saw, standing_end, stopped
from benchalong.trade.ways.settings import cradle, height, heights, length
from benchalong.trade.ways.texts import BACKED, NO_OFFCUT, OTHER_SIDE, TEST_ACROSS, TEST_CHEEKS, TEST_RABBET


def too_narrow(asked: Asked) -> Refusal | None:
    if asked.work.width >= asked.kerf:
        return None
    return asked.refuse(
        "The cut is {} wide and a blade takes {}.",
        "Rout it with a narrower cutter, or saw it by hand.",
        asked.work.width,
        asked.kerf,
    )


def groove(asked: Asked) -> Answered:
    work = asked.work
    is_slanted = work.family == "spline slot"
    return (
        stopped(asked)
        or standing_end(asked)
        or beyond_fence(asked)
        or too_narrow(asked)
        or at_table.groove(
            asked,
            asked.kerf,
            settings=cradle(work),
            needs=(CRADLE,) if is_slanted else PUSHED,
            passes=(work.depth,),
            extra=asked.minutes.jig if is_slanted else Fraction(0),
            rank=0 if is_slanted else 2,
        )
    )


def dado(asked: Asked) -> Answered:
    work = asked.work
    if refused := stopped(asked) or too_narrow(asked):
        return refused
    return way(
        asked,
        cutter_of(asked, asked.kerf),
        settings=(*fenced_across(asked, asked.kerf), height(asked.tool, work.depth)),
        needs=(GAUGE,),
        passes=(work.depth,),
        strokes=strokes(work.width, asked.kerf),
        does=(("Cut both walls first, then what stands between, a kerf at a time.",), BACKED),
        test=TEST_ACROSS,
        why=NO_OFFCUT,
        rank=2,
    )


def rabbet(asked: Asked) -> Answered:
    """Two cuts that meet: flat for the width, on edge for the depth, the waste on the free side."""
    work = asked.work
    if refused := stopped(asked) or standing_across(asked):
        return refused
    return way(
        asked,
        cutter_of(asked, asked.kerf),
        settings=(
            length("fence_far", "Fence to the blade's far side, flat", work.width),
            length("height", "Blade above the table, flat", work.depth),
            length("fence_2", "Fence to the blade, on edge", work.whole(work.inward) - work.depth),
            length("height_2", "Blade above the table, on edge", work.width),
        ),
        guide=f"{work.from_side}, then the side away from the rabbet",
        table=f"{work.in_side}, then {work.from_side}",
        needs=("a tall fence", *across_needs(asked), *PUSHED),
        passes=(work.depth,),
        strokes_in_all=2,
        does=(
            (
                "First flat on the table, then standing, so that the waste falls on the free side and is "
                "never caught between blade and fence.",
            ),
        ),
        test=TEST_RABBET,
        extra=asked.minutes.setting[asked.tool],
        rank=2,
    )


def standing_across(asked: Asked) -> Refusal | None:
    """Standing on its end for the second cut, as a rabbet across the grain would."""
    tall = asked.work.piece.length
    if asked.work.is_along_grain or tall <= FENCE_REACH.most:
        return None
    return asked.refuse(
        "The second cut would stand the piece on its end, {} tall.",
        "Use a stacked cutter, a router or a rabbet plane.",
        tall,
    )


def cheeks(asked: Asked) -> Answered:
    """Flat on the table, a kerf at a time, for what is cut across the grain; along it by two cuts on each
    side."""
    return edge_cheeks(asked) if asked.work.is_along_grain else end_cheeks(asked)


def end_cheeks(asked: Asked) -> Answered:
    depth = asked.work.depth
    return at_table.cheeks(
        asked,
        asked.kerf,
        length("fence_far", "Fence to the blade's far side", depth),
        strokes=strokes(depth, asked.kerf),
        needs=(GAUGE,),
        passes=(deepest(asked),),
        does=(
            ("Begin at the shoulder, the end against the fence, then draw the work back a kerf at a time.",),
            OTHER_SIDE,
            BACKED,
        ),
        why=NO_OFFCUT,
        rank=1,
    )


def edge_cheeks(asked: Asked) -> Answered:
    work = asked.work
    second = length("fence_2_back", "Fence to the blade, on edge, second cheek", work.width + work.near)
    return way(
        asked,
        cutter_of(asked, asked.kerf),
        settings=(
            length("fence_far", "Fence to the blade's far side, flat", work.depth),
            *heights(asked.tool, work),
            length("fence_2", "Fence to the blade, on edge", work.width + work.far),
            *(() if work.is_centred else (second,)),
            length("height_2", "Blade above the table, on edge", work.depth),
        ),
        guide=f"{work.in_side}; on edge, the side away from the cheek",
        table=f"{work.from_side} and {work.far_side}; then {work.in_side}",
        needs=("a tall fence", *PUSHED),
        passes=(max(work.near, work.far),),
        strokes_in_all=4,
        does=(
            ("Saw both shoulders flat on the table, then both cheeks on edge, the waste on the free side.",),
        ),
        test=TEST_CHEEKS,
        extra=asked.minutes.setting[asked.tool],
        rank=2,
    )


def notch(asked: Asked) -> Answered:
    depth = asked.work.depth
    return (
        standing_end(asked)
        or asked.over(
            depth,
            BLADE_HIGHEST,
            "The notch is {} deep; usual blades rise to {}.",
            "Use a band saw, or saw it by hand.",
        )
        or at_table.notch(asked, asked.kerf, "Stop block to the blade", passes=(depth,), rank=2)
    )


WAYS: Ways = {
    "rip": rip,
    "crosscut to length": crosscut,
    "resaw": resaw,
    "groove": groove,
    "dado": dado,
    "rabbet": rabbet,
    "tongue": cheeks,
    "tenon": cheeks,
    "notch": notch,
    "bevel": bevel,
    "taper": taper,
    "straight outline": outline,
    "mitre": mitre,
    "spline slot": groove,
}
REFUSALS: Refusals = {
    **by_table_saw("blade"),
    "rough crosscut": (
        "A rough board lies neither flat on the table nor straight to the gauge; it rocks and binds.",
        "Use a mitre saw, a jigsaw or a hand saw.",
    ),
    "split rough": (
        "A rough board has no straight edge for the fence and rocks on the table: it binds and is thrown.",
        "Use a band saw, a track saw or a hand saw; or joint one face and one edge first, and rip it.",
    ),
    "tails": (
        "The blade's usual teeth leave no clean corner between slopes.",
        "Saw them by hand, or rout them.",
    ),
    "pins": ("The slopes go both ways, and the corners between stay round.", "Saw and chop them by hand."),
    "fingers": (
        "A finger is wider than one kerf: two settings for each, and the errors add up.",
        "Use a stacked cutter, a router table or a hand saw.",
    ),
    "joint an edge": (
        "Without a straight edge to run along the fence the board rocks and binds.",
        "Joint it, plane it, or saw it along a track.",
    ),
}
