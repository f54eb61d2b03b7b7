"""The drill press and the hand-held drill."""

from __future__ import annotations

from collections.abc import Mapping

from benchalong.ground.lengths import Length
from benchalong.trade.cutters import BITS, narrowest, widest
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, way
from benchalong.trade.ways.model import Cutter, Family, Refusal, Setting, TestCut, Words, Work
from benchalong.trade.ways.practice import DRILL_DEEPEST, DRILL_REACH, PRESS_TALLEST
from benchalong.trade.ways.refused import CHANNELS, CORNERS, FLUSH, GLUE, JOINT, PLANE, SAND, SAWN
from benchalong.trade.ways.settings import length
from benchalong.trade.ways.texts import FIT_CHANNEL

THROUGH: Words = ("Lay scrap under the work, tight to it, so that the far side doesn't break out.",)
CENTRE: Words = ("Mark each centre with an awl; the bit's point finds it.",)
FITS: Mapping[Family, Words] = {
    "pilot hole": ("The screw turns in without splitting the wood and still bites.",),
    "clearance hole": ("The screw passes without turning.",),
    "dowel hole": ("The dowel slides in by hand and doesn't wobble.",),
}
BLOCK = "a guide block drilled square"
BY_HAND = "Drill it by hand with a guide block."


def bit_for(asked: Asked) -> Length | Refusal:
    """A pilot's bit is not wider than it, a clearance hole's not narrower; a dowel's is exact."""
    work = asked.work
    if work.family == "dowel hole" or work.width in BITS[asked.units]:
        return work.width
    if work.family == "clearance hole":
        return narrowest(BITS, asked.units, work.width) or no_bit(asked)
    return widest(BITS, asked.units, work.width) or no_bit(asked)


def no_bit(asked: Asked) -> Refusal:
    return asked.refuse(
        "No usual bit makes a hole {} across.",
        "Take a hole saw or an adjustable bit, at a drill press only.",
        asked.work.width,
    )


def too_deep(asked: Asked) -> Refusal | None:
    return asked.over(
        asked.work.depth,
        DRILL_DEEPEST,
        "The hole is {} deep; a press goes down about {}.",
        "Begin it at the press and go on with a drill in the hand.",
    )


def beyond_column(asked: Asked) -> Refusal | None:
    return asked.over(
        min(asked.work.near, asked.work.far),
        DRILL_REACH,
        "The hole lies {} from the edge; a press reaches about {}.",
        BY_HAND,
    )


def too_tall(asked: Asked) -> Refusal | None:
    tall = asked.work.piece.length
    if asked.work.surface != "end" or tall <= PRESS_TALLEST.most:
        return None
    return asked.refuse("The piece would stand {} tall under the press.", BY_HAND, tall)


def deep(work: Work, name: str) -> tuple[Setting, ...]:
    return () if work.through else (length("height", name, work.depth),)


def scrap(work: Work) -> tuple[str, ...]:
    return ("scrap under it",) if work.through else ()


def over_scrap(work: Work) -> tuple[Words, ...]:
    return (THROUGH,) if work.through else ()


def press_hole(asked: Asked) -> Answered:
    """Fence and stop are measured to the centre."""
    work, bit = asked.work, bit_for(asked)
    if isinstance(bit, Refusal):
        return bit
    if refused := too_deep(asked) or beyond_column(asked) or too_tall(asked):
        return refused
    return way(
        asked,
        Cutter("bit", bit),
        settings=(
            length("fence", "Fence to the centre", work.near + work.width / 2),
            length("stop", "Stop block to the centre", work.before + work.length / 2),
            *deep(work, "Deep"),
        ),
        table="the side opposite" if work.surface != "end" else "the other end",
        needs=("a fence", "a stop block", "a clamp", *scrap(work)),
        passes=(work.depth,) if work.depth else (),
        does=(
            ("The fence sets one distance, the stop block the other; the press sets the depth.",),
            *over_scrap(work),
        ),
        test=TestCut(("Drill one in scrap and measure it.",), FITS[work.family]),
        fed=work.depth,
        strokes_in_all=work.each,
        rank=0,
    )


def drill_hole(asked: Asked) -> Answered:
    work, bit = asked.work, bit_for(asked)
    if isinstance(bit, Refusal):
        return bit
    is_dowel = work.family == "dowel hole"
    return way(
        asked,
        Cutter("bit", bit),
        settings=(
            length("wall", "From the side to the centre", work.near + work.width / 2),
            length("stop", "From the end to the centre", work.before + work.length / 2),
            *deep(work, "Deep: tape or a collar on the bit"),
        ),
        guide="a guide block" if is_dowel else "by eye beside a square",
        needs=(BLOCK if is_dowel else "a square beside the bit", *scrap(work)),
        passes=(work.depth,) if work.depth else (),
        does=(CENTRE, *over_scrap(work)),
        test=TestCut(("Drill one in scrap.",), FITS[work.family]),
        fed=work.depth,
        strokes_in_all=work.each,
        rank=2 if is_dowel else 1,
    )


def press_mortise(asked: Asked) -> Answered:
    return bored(asked, guide=asked.work.from_side, table="the side opposite", needs="a fence", rank=1)


def drill_mortise(asked: Asked) -> Answered:
    return bored(asked, guide="a guide block", table=asked.work.in_side, needs=BLOCK, rank=3)


def bored(asked: Asked, *, guide: str, table: str, needs: str, rank: int) -> Answered:
    """A mortise: a row of holes inside its lines, the rest with a chisel."""
    work = asked.work
    bit = widest(BITS, asked.units, work.width)
    if bit is None:
        return no_bit(asked)
    if asked.tool == "drill press" and (refused := too_deep(asked)):
        return refused
    holes = int(max(1, -(-work.length // bit)))
    return way(
        asked,
        Cutter("bit", bit),
        settings=(
            length("fence", "Fence to the centre", work.near + work.width / 2),
            length("begins", "Begins from the end", work.before),
            length("length", "Long", work.length),
            length("height", "Deep", work.depth),
        ),
        guide=guide,
        table=table,
        needs=(needs,),
        with_tools=("hand tools",),
        passes=(work.depth,),
        does=(
            (
                "Bore both ends first, then between them, holes just touching; bits wander into holes that "
                "overlap.",
            ),
            ("Pare the walls to the gauge lines and square the ends with a chisel.",),
        ),
        test=TestCut(("Make one in scrap.",), FIT_CHANNEL),
        fed=work.depth,
        strokes_in_all=holes + 4,
        rank=rank,
    )


PRESS_WAYS: Ways = {
    "pilot hole": press_hole,
    "clearance hole": press_hole,
    "dowel hole": press_hole,
    "mortise": press_mortise,
}
DRILL_WAYS: Ways = {
    "pilot hole": drill_hole,
    "clearance hole": drill_hole,
    "dowel hole": drill_hole,
    "mortise": drill_mortise,
}
NO_LINE = ("A drill makes holes and cuts no line.", "Saw it.")
NO_WALL = ("Holes in a row leave no straight wall.", "Saw it, rout it or chop it.")
REFUSALS: Refusals = {
    **dict.fromkeys((*SAWN, "notch", "straight outline", "curved outline"), NO_LINE),
    **dict.fromkeys((*CHANNELS, "rabbet", "tongue", "tenon", *CORNERS), NO_WALL),
    "joint a face": ("A drill flattens nothing.", JOINT),
    "joint an edge": ("A drill flattens nothing.", JOINT),
    "plane to thickness": ("A drill flattens nothing.", PLANE),
    "glue up a panel": GLUE,
    "bevel": ("A drill makes no slope.", "Plane it."),
    "hinge gain": ("A gain is flat and square; a bit leaves neither.", "Chop it, or rout it."),
    "flush": ("A drill smooths nothing.", FLUSH),
    "sand": ("A drill smooths nothing.", SAND),
}
