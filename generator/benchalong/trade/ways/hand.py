"""Hand tools: saw, chisel, planes. Slow, quiet, and no piece is too small. Joints are here; boards and lines
are in `hand_sawn`."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from benchalong.ground.lengths import Length
from benchalong.trade.cutters import CHISELS, widest
from benchalong.trade.ways import hand_sawn
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways
from benchalong.trade.ways.hand_sawn import by_hand
from benchalong.trade.ways.model import Family, TestCut, Words, Work
from benchalong.trade.ways.practice import LAST_PASS
from benchalong.trade.ways.refused import SAND
from benchalong.trade.ways.settings import degrees, ends, length
from benchalong.trade.ways.texts import FIT_CHANNEL, FIT_LEAF, FIT_TONGUE, the

GAUGE = "a marking gauge"
MARKERS = (GAUGE, "a marking knife")
KNIFE: Words = ("Cut both walls as knife lines; pencil is too wide.",)
LEVEL: Words = (
    "Saw the walls, take the waste with a chisel from both ends to the middle, level the floor with a router "
    "plane.",
)
CORNER: Mapping[Family, tuple[Words, ...]] = {
    "tails": (("Gauge the depth all round, saw two boards at once, chop from both faces.",),),
    "pins": (
        ("Lay the tails on the end and knife round them: pins are marked from tails, never measured.",),
        ("Saw on the waste side, chop from both faces, pare to the gauge line.",),
    ),
    "fingers": (("Mark the second board from the first. Saw on the waste side, chop from both faces.",),),
}


def volume(work: Work) -> Fraction:
    return work.width * work.depth * work.length


def channel(asked: Asked) -> Answered:
    """A plough plane along the grain, saw and chisel across it."""
    work = asked.work
    is_ploughed = work.is_along_grain and not work.is_stopped
    plough: Words = (f"Plough with the fence on {the(work.from_side)}; the same side for every piece.",)
    return by_hand(
        asked,
        "plough plane" if is_ploughed else "back saw and chisel",
        *((plough,) if is_ploughed else (KNIFE, LEVEL)),
        settings=(
            length("wall", "From the side to the near wall", work.near),
            length("height", "Deep", work.depth),
            *ends(work),
        ),
        taken=volume(work),
        width=widest(CHISELS, asked.units, work.width),
        guide=work.from_side,
        needs=MARKERS,
        test=TestCut(("Cut one in scrap.",), FIT_CHANNEL),
        rank=1 if work.is_stopped else 2,
    )


def rabbet(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(
        asked,
        "rabbet plane" if not work.is_stopped else "chisel",
        ("Across the grain cut the wall with a knife first.",),
        settings=(
            length("reach", "Fence: width of the step", work.width),
            length("height", "Deep", work.depth),
            *ends(work),
        ),
        taken=volume(work),
        guide=work.from_side,
        needs=(GAUGE,),
        test=TestCut(("Plane one in scrap.",), FIT_CHANNEL),
    )


def cheeks(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(
        asked,
        "tenon saw" if not work.is_along_grain else "rabbet plane",
        ("Gauge both cheeks from the same face, saw the cheeks, then the shoulders on the knife line.",),
        ("Pare to fit with a shoulder plane.",),
        settings=(
            length("shoulder", "Knife line from the end", work.depth),
            length("height", "Gauge from the face", work.near),
            length("width", "Left standing", work.width),
        ),
        taken=(work.near + work.far) * work.depth * work.whole(work.run) / 4,
        needs=(*MARKERS, "a square"),
        test=TestCut(("Fit each to its own place, and mark both.",), FIT_TONGUE),
    )


def mortise(asked: Asked) -> Answered:
    work = asked.work
    chisel = widest(CHISELS, asked.units, work.width)
    if chisel is None:
        return asked.refuse("No usual chisel is so narrow.", "Make the mortise as wide as a chisel.")
    return by_hand(
        asked,
        "mortise chisel",
        ("Chop from the middle to both ends, lever out the chips, leave the ends for last.",),
        *((("Chop from both sides to the middle.",),) if work.through else ()),
        settings=(
            length("wall", "Gauge from the side to the near wall", work.near),
            length("width", "Between the gauge's pins", work.width),
            length("height", "Deep", work.depth),
            *ends(work),
        ),
        taken=volume(work),
        width=chisel,
        guide=work.from_side,
        needs=("a mortise gauge", "a mallet"),
        test=TestCut(("Chop one in scrap.",), FIT_CHANNEL),
    )


def pilot(asked: Asked) -> Answered:
    return by_hand(
        asked,
        "bradawl or gimlet",
        ("Press the edge in across the grain, then turn.",),
        settings=(length("height", "Deep", asked.work.depth),),
        taken=Fraction(0),
        accuracy=Length(1),
        rank=3,
    )


def notch(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(
        asked,
        "back saw and chisel",
        KNIFE,
        ("Saw down both walls, chop the waste from both faces to the middle.",)
        if work.near and work.far
        else ("Saw down both lines of the corner.",),
        settings=(
            length("wall", "From the side to the near wall", work.near),
            length("width", "Wide", work.width),
            length("height", "Deep", work.depth),
        ),
        taken=volume(work) / 4,
        needs=("a marking knife", "a square"),
        rank=1,
    )


def spline(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(
        asked,
        "back saw",
        ("Gauge both walls, saw both, clear what is between. Make the spline to the slot.",),
        settings=(
            length("wall", "From the side to the near wall", work.near),
            length("height", "Deep", work.depth),
            length("width", "Wide", work.width),
        ),
        taken=volume(work),
        test=TestCut(("Saw one in scrap.",), FIT_CHANNEL),
    )


def corner(asked: Asked) -> Answered:
    """Tails, pins and fingers: the first from the drawing, the second from the first."""
    work = asked.work
    return by_hand(
        asked,
        "dovetail saw and chisel",
        *CORNER[work.family],
        settings=(
            length("height", "Gauge line from the end", work.depth),
            *((degrees("slope", "Slope", work.angle),) if work.angle else ()),
        ),
        taken=work.width * work.depth * work.piece.thickness * work.each,
        needs=(*MARKERS, *(("a sliding bevel",) if work.angle else ())),
        test=TestCut(("Cut one corner in scrap.",), ("It goes together once, with light taps.",)),
        rank=1 if work.family == "fingers" else 0,
    )


def hinge_gain(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(
        asked,
        "chisel",
        ("Lay the leaf itself on the wood and knife round it. Chop shallow cuts, then pare level.",),
        settings=(
            length("wall", "From the end to the near wall", work.near),
            length("width", "Long", work.width),
            length("height", "Deep: as thick as the leaf", work.depth),
        ),
        taken=volume(work),
        needs=("a marking knife", "the hinge itself"),
        test=TestCut(("Cut one in scrap and lay the leaf in.",), FIT_LEAF),
        accuracy=Length(1, 5),
        rank=0,
    )


def flush(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(
        asked,
        "block plane or scraper",
        ("Plane from the edge inward, with the grain, until the finest shaving comes from both pieces.",),
        settings=(length("takes", "Comes off", work.depth),),
        taken=work.depth * max(work.length, Length(1)) * max(work.width, Length(1)),
        accuracy=LAST_PASS.least / 4,
        rank=0,
    )


WAYS: Ways = {
    "rough crosscut": hand_sawn.rough,
    "split rough": hand_sawn.split,
    "joint a face": hand_sawn.plane_face,
    "joint an edge": hand_sawn.plane_edge,
    "plane to thickness": hand_sawn.plane_to_thickness,
    "rip": hand_sawn.rip,
    "crosscut to length": hand_sawn.to_length,
    "resaw": hand_sawn.resaw,
    "groove": channel,
    "dado": channel,
    "stopped dado": channel,
    "rabbet": rabbet,
    "tongue": cheeks,
    "tenon": cheeks,
    "mortise": mortise,
    "pilot hole": pilot,
    "notch": notch,
    "bevel": hand_sawn.bevel,
    "taper": hand_sawn.taper,
    "straight outline": hand_sawn.outline,
    "curved outline": hand_sawn.outline,
    "mitre": hand_sawn.mitre,
    "spline slot": spline,
    "tails": corner,
    "pins": corner,
    "fingers": corner,
    "hinge gain": hinge_gain,
    "flush": flush,
}
NO_HOLE = ("Saws, chisels and planes make no round hole.", "Take a drill, or a brace and bit.")
REFUSALS: Refusals = {
    "glue up a panel": ("Gluing takes clamps and a flat place.", "Glue it at the bench."),
    "clearance hole": NO_HOLE,
    "dowel hole": NO_HOLE,
    "sand": (
        "An edge tool leaves a surface that may need no paper, but a finish asks for one grit all over.",
        SAND,
    ),
}
