"""The jigsaw: curves and notches, and rough lines, to be smoothed by hand."""

from __future__ import annotations

from benchalong.ground.lengths import Length
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, way
from benchalong.trade.ways.model import Cutter, Setting, Work
from benchalong.trade.ways.practice import JIGSAW_DEEPEST
from benchalong.trade.ways.refused import JOINT, by_saw
from benchalong.trade.ways.settings import length


def saw(asked: Asked) -> Answered:
    work, thick = asked.work, asked.work.piece.thickness
    is_rough = work.family in ("rough crosscut", "split rough")
    is_straight = work.family in ("rip", "crosscut to length", "straight outline", "taper")
    return asked.over(
        thick,
        JIGSAW_DEEPEST,
        "The wood is {} thick; over {} a jigsaw's blade bends.",
        "Use a band saw, or saw it by hand.",
    ) or way(
        asked,
        Cutter("fine blade"),
        settings=marked(work),
        guide="a clamped batten" if is_straight else "by eye to the line",
        table="face",
        needs=("two clamps", *(("a straight batten",) if is_straight else ())),
        with_tools=() if is_rough else ("hand tools",),
        passes=(thick,),
        does=(("Saw on the waste side.",), *(() if is_rough else (("Plane or file to the line.",),))),
        fed=fed(work),
        rank=1 if work.family == "curved outline" else 3,
    )


def marked(work: Work) -> tuple[Setting, ...]:
    kept = {
        "rip": work.width,
        "split rough": work.width,
        "crosscut to length": work.length,
        "rough crosscut": work.length,
    }
    if work.family not in kept:
        return ()
    return (length("mark", "Line from the straight side", kept[work.family]),)


def fed(work: Work) -> Length:
    lengths: dict[str, Length] = {
        "rough crosscut": work.piece.width,
        "crosscut to length": work.piece.width,
        "rip": work.piece.length,
        "split rough": work.piece.length,
        "taper": work.length,
        "notch": 2 * work.depth + work.width,
    }
    return lengths.get(work.family, 2 * (work.length + work.width))


WAYS: Ways = {
    "rough crosscut": saw,
    "split rough": saw,
    "rip": saw,
    "crosscut to length": saw,
    "notch": saw,
    "taper": saw,
    "straight outline": saw,
    "curved outline": saw,
}
REFUSALS: Refusals = {
    **by_saw("A jigsaw"),
    "joint an edge": ("Its blade wanders too much for an edge to glue.", JOINT),
    "bevel": ("Its blade bends in a sloping cut.", "Plane it to the lines."),
    "mitre": ("Its blade wanders too much for a mitre to close.", "Use a mitre saw, or saw and plane."),
}
