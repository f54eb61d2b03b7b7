"""Jointer and planer: flat, straight, and to one thickness; and the bench, where there is no machine."""

from __future__ import annotations

from benchalong.ground.lengths import METRE, Length
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, degrees, length, way
from benchalong.trade.ways.blade_through import slope_of
from benchalong.trade.ways.model import FAMILIES, Cutter, Family, Refusal, Tool, Words
from benchalong.trade.ways.practice import (
    JOINTER_PASS,
    JOINTER_WIDEST,
    LAST_PASS,
    PLANER_PASS,
    PLANER_WIDEST,
    SANDING_STEP,
    in_passes,
)

JOINTER: Tool = "jointer"
PLANER: Tool = "planer"
BENCH: Tool = "bench"
GRAIN: Words = ("Feed with the grain: the fibres on the side run up and back, away from the cutter.",)


def joint_face(asked: Asked) -> Answered:
    work = asked.work
    if work.piece.width > JOINTER_WIDEST.most:
        said: Words = ("The board is ", work.piece.width, " wide; usual jointers take ", JOINTER_WIDEST, ".")
        return Refusal(
            JOINTER,
            said,
            ("Rip it first, carry it through the planer on a flat board, or plane it by hand.",),
        )
    return jointed(
        asked, table="the hollow face", guide="", does=("The hollow face down, so that it doesn't rock.",)
    )


def joint_edge(asked: Asked) -> Answered:
    return jointed(
        asked, table="edge a", guide="face", does=("The flat face to the fence, the hollow edge down.",)
    )


def jointed(asked: Asked, *, table: str, guide: str, does: Words) -> Answered:
    work = asked.work
    return way(
        asked,
        cutter=Cutter("cutter head"),
        settings=(
            length(
                "takes",
                "Infeed table below the cutter",
                min(work.depth, asked.limit(JOINTER_PASS)) or asked.limit(JOINTER_PASS),
            ),
        ),
        guide=guide,
        table=table,
        needs=("push blocks",),
        passes=in_passes(work.depth, asked.limit(JOINTER_PASS), asked.step / 2),
        does=(does, GRAIN),
        test=None,
        accuracy=Length(1, 10),
        fed=work.piece.length,
        rank=0,
    )


def bevel(asked: Asked) -> Answered:
    work = asked.work
    tilt = 90 - (work.angle or slope_of(work))
    if not work.is_along_grain:
        return Refusal(JOINTER, ("End grain is torn and thrown.",), ("Saw it, or plane it by hand.",))
    if not 0 <= tilt <= 45:
        return Refusal(JOINTER, ("The slope is flatter than the fence tilts.",), ("Plane it to the lines.",))
    return way(
        asked,
        cutter=Cutter("cutter head"),
        settings=(
            degrees("angle", "Fence tilted from upright", tilt),
            length("mark", "Width on the face", work.width),
        ),
        guide="face",
        table=work.in_side,
        needs=("push blocks",),
        passes=in_passes(work.depth, asked.limit(JOINTER_PASS), asked.step / 2),
        does=(GRAIN,),
        accuracy=Length(1, 5),
        fed=work.piece.length,
        rank=2,
    )


def plane(asked: Asked) -> Answered:
    work = asked.work
    if work.piece.width > PLANER_WIDEST.most:
        said: Words = ("The board is ", work.piece.width, " wide; usual planers take ", PLANER_WIDEST, ".")
        return Refusal(PLANER, said, ("Plane the strips before they are glued up, or plane it by hand.",))
    return way(
        asked,
        cutter=Cutter("cutter head"),
        settings=(length("thickness", "Planer set to", work.piece.thickness - work.depth),),
        guide="",
        table="the flat face",
        needs=("support where the wood comes out",),
        passes=planed(asked, work.depth),
        does=(
            GRAIN,
            ("All parts of this thickness through at each setting before it is lowered, test pieces too.",),
            ("Turn the wood over between passes, so that both faces lose alike.",),
        ),
        accuracy=Length(1, 10),
        fed=work.piece.length,
        rank=0,
    )


def planed(asked: Asked, depth: Length) -> tuple[Length, ...]:
    """The last pass is a light one."""
    last = min(depth, asked.limit(LAST_PASS))
    rest = in_passes(depth - last, asked.limit(PLANER_PASS), asked.step / 2)
    return (*rest, last) if last else rest


def carried(asked: Asked) -> Answered:
    """One face flat without a jointer: the board lies on a flat one, wedged so that it can't rock."""
    work = asked.work
    if work.piece.width > PLANER_WIDEST.most:
        said: Words = ("The board is ", work.piece.width, " wide; usual planers take ", PLANER_WIDEST, ".")
        return Refusal(PLANER, said, ("Rip it first, or plane it by hand.",))
    return way(
        asked,
        cutter=Cutter("cutter head"),
        settings=(length("takes", "Comes off", work.depth),),
        guide="",
        table="the hollow face, on a carrier board",
        needs=("a flat carrier board with a stop at its end", "wedges or shims"),
        passes=planed(asked, work.depth),
        does=(
            ("Wedge the board where it doesn't touch, so that neither rollers nor cutter press it flat.",),
            ("When the upper face is flat all over, take the carrier away and turn the board over.",),
        ),
        accuracy=Length(1, 5),
        fed=work.piece.length,
        extra=asked.minutes.jig,
        rank=1,
    )


JOINTER_WAYS: Ways = {"joint a face": joint_face, "joint an edge": joint_edge, "bevel": bevel}
PLANER_WAYS: Ways = {"joint a face": carried, "plane to thickness": plane}


def glue(asked: Asked) -> Answered:
    work = asked.work
    lines = max(0, work.count - 1)
    minutes = asked.minutes
    return way(
        asked,
        cutter=Cutter("clamps"),
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
    work, minutes = asked.work, asked.minutes
    piece = work.piece
    area = 2 * piece.length * piece.width / METRE / METRE
    return way(
        asked,
        cutter=Cutter("abrasive paper"),
        needs=("a sanding block or sander", "a mask", "dust drawn off"),
        table="the bench",
        does=(
            (
                "80 or 100 grit only where there are tool marks, then 120, 150, 180: no jump over one "
                "and a half "
                "times. Along the grain.",
            ),
        ),
        for_all=minutes.pace * minutes.sanding * area * work.count,
        rank=0,
    )


def flush(asked: Asked) -> Answered:
    work, minutes = asked.work, asked.minutes
    if work.depth > SANDING_STEP.most:
        said: Words = (
            "The step is ",
            work.depth,
            "; over ",
            SANDING_STEP,
            " a block rounds the edges before it is gone.",
        )
        return Refusal(BENCH, said, ("Plane it flush by hand.",))
    return way(
        asked,
        cutter=Cutter("abrasive paper"),
        needs=("a hard, flat sanding block",),
        table="the bench",
        passes=(work.depth,) if work.depth else (),
        does=(("Pencil across the joint; sand until the pencil is gone on both sides.",),),
        accuracy=Length(1, 5),
        for_all=minutes.pace * 3 * work.count,
        rank=1,
    )


BENCH_WAYS: Ways = {"glue up a panel": glue, "sand": sand, "flush": flush}


def _refusals(said: dict[Family, tuple[str, str]], rest: tuple[str, str], ways: Ways) -> Refusals:
    return {family: said.get(family, rest) for family in FAMILIES if family not in ways}


JOINTER_REFUSALS: Refusals = _refusals(
    {
        "plane to thickness": (
            "It makes a face flat, but not parallel to the other.",
            "Use a planer or a hand plane.",
        ),
        "rabbet": (
            "Only some have a ledge for it, and the guard comes off.",
            "Use a table saw, a router or a rabbet plane.",
        ),
        "taper": (
            "Lowering wood onto a running cutter head is a practised hand's work.",
            "Use a table saw's sled, a band saw or a plane.",
        ),
        "glue up a panel": ("Gluing takes clamps, no machine.", "Glue it at the bench."),
        "flush": ("What is glued up doesn't go over a jointer.", "Plane or sand it flush."),
        "sand": ("A jointer leaves ripples that paper takes off.", "Sand it at the bench."),
    },
    ("A jointer makes faces and edges flat and cuts nothing else.", "Saw it, rout it or work it by hand."),
    JOINTER_WAYS,
)
PLANER_REFUSALS: Refusals = _refusals(
    {
        "joint an edge": (
            "Wood stood on edge tips between the rollers.",
            "Use a jointer, a track saw or a hand plane.",
        ),
        "resaw": ("Planing half a board to dust wastes it.", "Use a band saw."),
        "glue up a panel": ("Gluing takes clamps, no machine.", "Glue it at the bench."),
        "flush": (
            "What is glued up across the grain doesn't go through a planer.",
            "Plane or sand it flush.",
        ),
        "sand": ("A planer leaves ripples that paper takes off.", "Sand it at the bench."),
    },
    ("A planer makes wood of one thickness and cuts nothing else.", "Saw it, rout it or work it by hand."),
    PLANER_WAYS,
)
BENCH_REFUSALS: Refusals = _refusals(
    {},
    ("Clamps, rules and paper cut nothing.", "It takes a saw, a router, a drill or hand tools."),
    BENCH_WAYS,
)
