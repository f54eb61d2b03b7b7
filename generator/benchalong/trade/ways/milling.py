"""Jointer and planer: flat, straight, and to one thickness."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from benchalong.ground.lengths import Length
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, way
from benchalong.trade.ways.model import Cutter, Setting, Words
from benchalong.trade.ways.practice import (
    JOINTER_PASS,
    JOINTER_WIDEST,
    LAST_PASS,
    PLANER_PASS,
    PLANER_WIDEST,
    in_passes,
)
from benchalong.trade.ways.refused import FLUSH, GLUE, PLANE, SAND, all_but, too_flat
from benchalong.trade.ways.settings import degrees, length, slope_of

HEAD = Cutter("cutter head")
GRAIN: Words = ("Feed with the grain: the fibres on the side run up and back, away from the cutter.",)


def joint_face(asked: Asked) -> Answered:
    return asked.over(
        asked.work.piece.width,
        JOINTER_WIDEST,
        "The board is {} wide; usual jointers take {}.",
        "Rip it first, carry it through the planer on a flat board, or plane it by hand.",
    ) or jointed(
        asked, table="the hollow face", guide="", does=("The hollow face down, so that it doesn't rock.",)
    )


def joint_edge(asked: Asked) -> Answered:
    return jointed(
        asked, table="edge a", guide="face", does=("The flat face to the fence, the hollow edge down.",)
    )


def jointed(asked: Asked, *, table: str, guide: str, does: Words) -> Answered:
    work = asked.work
    takes = min(work.depth, asked.limit(JOINTER_PASS)) or asked.limit(JOINTER_PASS)
    return way(
        asked,
        HEAD,
        settings=(length("takes", "Infeed table below the cutter", takes),),
        guide=guide,
        table=table,
        needs=("push blocks",),
        passes=asked.light_passes(),
        does=(does, GRAIN),
        fed=work.piece.length,
        rank=0,
    )


def bevel(asked: Asked) -> Answered:
    work = asked.work
    tilt = 90 - slope_of(work)
    if not work.is_along_grain:
        return asked.refuse("End grain is torn and thrown.", "Saw it, or plane it by hand.")
    return too_flat(asked, tilt, "fence") or way(
        asked,
        HEAD,
        settings=(
            degrees("angle", "Fence tilted from upright", tilt),
            length("mark", "Width on the face", work.width),
        ),
        guide="face",
        needs=("push blocks",),
        passes=asked.light_passes(),
        does=(GRAIN,),
        accuracy=Length(1, 5),
        fed=work.piece.length,
        rank=2,
    )


def plane(asked: Asked) -> Answered:
    work = asked.work
    return planed(
        asked,
        length("thickness", "Planer set to", work.piece.thickness - work.depth),
        table="the flat face",
        needs=("support where the wood comes out",),
        does=(
            GRAIN,
            ("All parts of this thickness through at each setting before it is lowered, test pieces too.",),
            ("Turn the wood over between passes, so that both faces lose alike.",),
        ),
        instead="Plane the strips before they are glued up, or plane it by hand.",
        rank=0,
    )


def carried(asked: Asked) -> Answered:
    """One face flat without a jointer: the board lies on a flat one, wedged so that it can't rock."""
    return planed(
        asked,
        length("takes", "Comes off", asked.work.depth),
        table="the hollow face, on a carrier board",
        needs=("a flat carrier board with a stop at its end", "wedges or shims"),
        does=(
            ("Wedge the board where it doesn't touch, so that neither rollers nor cutter press it flat.",),
            ("When the upper face is flat all over, take the carrier away and turn the board over.",),
        ),
        instead="Rip it first, or plane it by hand.",
        accuracy=Length(1, 5),
        extra=asked.minutes.jig,
        rank=1,
    )


def planed(
    asked: Asked,
    setting: Setting,
    *,
    table: str,
    needs: Sequence[str],
    does: Sequence[Words],
    instead: str,
    accuracy: Length | None = None,
    extra: Fraction = Fraction(0),
    rank: int,
) -> Answered:
    piece = asked.work.piece
    return asked.over(
        piece.width, PLANER_WIDEST, "The board is {} wide; usual planers take {}.", instead
    ) or way(
        asked,
        HEAD,
        settings=(setting,),
        guide="",
        table=table,
        needs=needs,
        passes=planer_passes(asked),
        does=does,
        accuracy=accuracy,
        fed=piece.length,
        extra=extra,
        rank=rank,
    )


def planer_passes(asked: Asked) -> tuple[Length, ...]:
    """The last pass is a light one."""
    depth = asked.work.depth
    last = min(depth, asked.limit(LAST_PASS))
    rest = in_passes(depth - last, asked.limit(PLANER_PASS), asked.step / 2)
    return (*rest, last) if last else rest


JOINTER_WAYS: Ways = {"joint a face": joint_face, "joint an edge": joint_edge, "bevel": bevel}
PLANER_WAYS: Ways = {"joint a face": carried, "plane to thickness": plane}
JOINTER_REFUSALS: Refusals = {
    **all_but(
        JOINTER_WAYS,
        "A jointer makes faces and edges flat and cuts nothing else.",
        "Saw it, rout it or work it by hand.",
    ),
    "plane to thickness": ("It makes a face flat, but not parallel to the other.", PLANE),
    "rabbet": (
        "Only some have a ledge for it, and the guard comes off.",
        "Use a table saw, a router or a rabbet plane.",
    ),
    "taper": (
        "Lowering wood onto a running cutter head is a practised hand's work.",
        "Use a table saw's sled, a band saw or a plane.",
    ),
    "glue up a panel": GLUE,
    "flush": ("What is glued up doesn't go over a jointer.", FLUSH),
    "sand": ("A jointer leaves ripples that paper takes off.", SAND),
}
PLANER_REFUSALS: Refusals = {
    **all_but(
        PLANER_WAYS,
        "A planer makes wood of one thickness and cuts nothing else.",
        "Saw it, rout it or work it by hand.",
    ),
    "joint an edge": (
        "Wood stood on edge tips between the rollers.",
        "Use a jointer, a track saw or a hand plane.",
    ),
    "resaw": ("Planing half a board to dust wastes it.", "Use a band saw."),
    "glue up a panel": GLUE,
    "flush": ("What is glued up across the grain doesn't go through a planer.", FLUSH),
    "sand": ("A planer leaves ripples that paper takes off.", SAND),
}
