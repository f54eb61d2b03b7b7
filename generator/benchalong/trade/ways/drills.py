"""The drill press and the hand-held drill."""

from __future__ import annotations

from collections.abc import Callable

from benchalong.ground.lengths import Length
from benchalong.trade.cutters import BITS, narrowest, widest
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, length, way
from benchalong.trade.ways.model import Cutter, Refusal, Setting, TestCut, Tool, Words, Work
from benchalong.trade.ways.practice import DRILL_DEEPEST, DRILL_REACH, PRESS_TALLEST
from benchalong.trade.ways.texts import FIT_CHANNEL

PRESS: Tool = "drill press"
DRILL: Tool = "drill"
THROUGH: Words = ("Lay scrap under the work, tight to it, so that the far side doesn't break out.",)
CENTRE: Words = ("Mark each centre with an awl; the bit's point finds it.",)


def bit_for(asked: Asked) -> Length | None:
    """A pilot's bit is not wider than it, a clearance hole's not narrower; a dowel's is exact."""
    work = asked.work
    if work.width in BITS[asked.units]:
        return work.width
    if work.family == "clearance hole":
        return narrowest(BITS, asked.units, work.width)
    if work.family == "dowel hole":
        return work.width
    return widest(BITS, asked.units, work.width)


def no_bit(asked: Asked, tool: Tool) -> Refusal:
    said: Words = (
        "No usual bit makes a hole ",
        asked.work.width,
        " across.",
    )
    return Refusal(tool, said, ("Take a hole saw or an adjustable bit, at a drill press only.",))


def press_hole(asked: Asked) -> Answered:
    work = asked.work
    bit = bit_for(asked)
    if bit is None:
        return no_bit(asked, PRESS)
    if work.depth > DRILL_DEEPEST.most:
        return too_deep(work)
    if min(work.near, work.far) > DRILL_REACH.most:
        said: Words = (
            "The hole lies ",
            min(work.near, work.far),
            " from the edge; a press reaches about ",
            DRILL_REACH,
            ".",
        )
        return Refusal(PRESS, said, ("Drill it by hand with a guide block.",))
    if work.surface == "end" and work.piece.length > PRESS_TALLEST.most:
        said = (
            "The piece would stand ",
            work.piece.length,
            " tall under the press.",
        )
        return Refusal(PRESS, said, ("Drill it by hand with a guide block.",))
    return way(
        asked,
        cutter=Cutter("bit", bit),
        settings=hole_settings(work),
        guide=work.from_side,
        table="the side opposite" if work.surface != "end" else "the other end",
        needs=("a fence", "a stop block", "a clamp", *(("scrap under it",) if work.through else ())),
        passes=(work.depth,) if work.depth else (),
        does=(
            ("The fence sets one distance, the stop block the other; the press sets the depth.",),
            *((THROUGH,) if work.through else ()),
        ),
        test=TestCut(("Drill one in scrap and measure it.",), fit_of(work)),
        accuracy=Length(1, 4),
        fed=work.depth,
        strokes_in_all=work.each,
        rank=0,
    )


def too_deep(work: Work) -> Refusal:
    said: Words = ("The hole is ", work.depth, " deep; a press goes down about ", DRILL_DEEPEST, ".")
    return Refusal(PRESS, said, ("Begin it at the press and go on with a drill in the hand.",))


def hole_settings(work: Work) -> tuple[Setting, ...]:
    """Fence and stop are measured to the centre."""
    found = [
        length("fence", "Fence to the centre", work.near + work.width / 2),
        length("stop", "Stop block to the centre", work.before + work.length / 2),
    ]
    if not work.through:
        found.append(length("height", "Deep", work.depth))
    return tuple(found)


def fit_of(work: Work) -> Words:
    fits: dict[str, Words] = {
        "pilot hole": ("The screw turns in without splitting the wood and still bites.",),
        "clearance hole": ("The screw passes without turning.",),
        "dowel hole": ("The dowel slides in by hand and doesn't wobble.",),
    }
    return fits.get(work.family, FIT_CHANNEL)


def drill_hole(asked: Asked) -> Answered:
    work = asked.work
    bit = bit_for(asked)
    if bit is None:
        return no_bit(asked, DRILL)
    is_dowel = work.family == "dowel hole"
    return way(
        asked,
        cutter=Cutter("bit", bit),
        settings=(
            length("wall", "From the side to the centre", work.near + work.width / 2),
            length("stop", "From the end to the centre", work.before + work.length / 2),
            *(() if work.through else (length("height", "Deep: tape or a collar on the bit", work.depth),)),
        ),
        guide="a guide block" if is_dowel else "by eye beside a square",
        table=work.in_side,
        needs=(
            *(("a guide block drilled square",) if is_dowel else ("a square beside the bit",)),
            *(("scrap under it",) if work.through else ()),
        ),
        passes=(work.depth,) if work.depth else (),
        does=(CENTRE, *((THROUGH,) if work.through else ())),
        test=TestCut(("Drill one in scrap.",), fit_of(work)),
        accuracy=Length(1, 2),
        fed=work.depth,
        strokes_in_all=work.each,
        rank=2 if is_dowel else 1,
    )


def bored(tool: Tool, rank: int) -> Callable[[Asked], Answered]:
    """A mortise: a row of holes inside its lines, the rest with a chisel."""

    def mortise(asked: Asked) -> Answered:
        work = asked.work
        bit = widest(BITS, asked.units, work.width)
        if bit is None:
            return no_bit(asked, tool)
        if tool == PRESS and work.depth > DRILL_DEEPEST.most:
            return too_deep(work)
        holes = int(max(1, -(-work.length // bit)))
        return way(
            asked,
            cutter=Cutter("bit", bit),
            settings=(
                length("fence", "Fence to the centre", work.near + work.width / 2),
                length("begins", "Begins from the end", work.before),
                length("length", "Long", work.length),
                length("height", "Deep", work.depth),
            ),
            guide=work.from_side if tool == PRESS else "a guide block",
            table="the side opposite" if tool == PRESS else work.in_side,
            needs=("a fence",) if tool == PRESS else ("a guide block drilled square",),
            with_tools=("hand tools",),
            passes=(work.depth,),
            does=(
                (
                    "Bore both ends first, then between them, holes just touching; bits wander into "
                    "holes that overlap.",
                ),
                ("Pare the walls to the gauge lines and square the ends with a chisel.",),
            ),
            test=TestCut(("Make one in scrap.",), FIT_CHANNEL),
            accuracy=Length(1, 4) if tool == PRESS else Length(1, 2),
            fed=work.depth,
            strokes_in_all=holes + 4,
            rank=rank,
        )

    return mortise


PRESS_WAYS: Ways = {
    "pilot hole": press_hole,
    "clearance hole": press_hole,
    "dowel hole": press_hole,
    "mortise": bored(PRESS, 1),
}
DRILL_WAYS: Ways = {
    "pilot hole": drill_hole,
    "clearance hole": drill_hole,
    "dowel hole": drill_hole,
    "mortise": bored(DRILL, 3),
}


def _refusals() -> Refusals:
    saw = ("A drill makes holes and cuts no line.", "Saw it.")
    channel = ("Holes in a row leave no straight wall.", "Saw it, rout it or chop it.")
    return {
        "rough crosscut": saw,
        "joint a face": ("A drill flattens nothing.", "Use a jointer or a hand plane."),
        "joint an edge": ("A drill flattens nothing.", "Use a jointer or a hand plane."),
        "plane to thickness": ("A drill flattens nothing.", "Use a planer or a hand plane."),
        "rip": saw,
        "crosscut to length": saw,
        "resaw": saw,
        "glue up a panel": ("Gluing takes clamps, no machine.", "Glue it at the bench."),
        "groove": channel,
        "dado": channel,
        "stopped dado": channel,
        "rabbet": channel,
        "tongue": channel,
        "tenon": channel,
        "notch": saw,
        "bevel": ("A drill makes no slope.", "Plane it."),
        "taper": saw,
        "straight outline": saw,
        "curved outline": saw,
        "mitre": saw,
        "spline slot": channel,
        "tails": channel,
        "pins": channel,
        "fingers": channel,
        "hinge gain": ("A gain is flat and square; a bit leaves neither.", "Chop it, or rout it."),
        "flush": ("A drill smooths nothing.", "Plane or sand it flush."),
        "sand": ("A drill smooths nothing.", "Sand it at the bench."),
    }


REFUSALS = _refusals()
