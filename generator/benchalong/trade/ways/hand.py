"""Hand tools: saw, chisel, planes. Slow, quiet, and no piece is too small."""

from __future__ import annotations

from fractions import Fraction

from benchalong.ground.lengths import Length
from benchalong.trade.cutters import CHISELS, widest
from benchalong.trade.ways.asked import Answered, Asked, Refusals, Ways, degrees, length, way
from benchalong.trade.ways.blade_through import slope_of
from benchalong.trade.ways.model import Cutter, Refusal, Setting, TestCut, Tool, Words, Work
from benchalong.trade.ways.practice import HAND_RESAW_WIDEST, LAST_PASS, SAW_SMOOTH
from benchalong.trade.ways.texts import FIT_CHANNEL, FIT_SQUARE, FIT_TONGUE, the

TOOL: Tool = "hand tools"
ACCURACY = Length(2, 5)
"""mm; common practice."""
KNIFE: Words = ("Cut both walls as knife lines; pencil is too wide.",)
LEVEL: Words = (
    "Saw the walls, take the waste with a chisel from both ends to the middle, level the floor with a router "
    "plane.",
)


def by_hand(
    asked: Asked,
    cutter: str,
    settings: tuple[Setting, ...],
    *does: Words,
    taken: Fraction,
    needs: tuple[str, ...] = (),
    test: TestCut | None = None,
    width: Length | None = None,
    guide: str = "",
    rank: int = 2,
    accuracy: Length = ACCURACY,
) -> Answered:
    """`taken`: wood to be removed with an edge for one of them, cubic mm."""
    minutes = asked.minutes
    work = asked.work
    for_all = work.count * minutes.by_hand(work.family, taken, is_soft=asked.is_soft)
    return way(
        asked,
        cutter=Cutter(cutter, width),
        settings=settings,
        guide=guide,
        table=work.in_side,
        needs=needs,
        passes=(work.depth,) if work.depth else (),
        does=does,
        test=test,
        accuracy=accuracy,
        for_all=for_all,
        rank=rank,
    )


def volume(work: Work) -> Fraction:
    return work.width * work.depth * work.length


def sawn(work: Work, across: Length) -> Fraction:
    """A kerf of one millimetre: about what sawing takes by hand."""
    return across * work.piece.thickness


def crosscut(asked: Asked) -> Answered:
    work = asked.work
    rough = work.family == "rough crosscut"
    settings = (
        length("mark", "Knife line from the square end" if not rough else "Line from the end", work.length),
    )
    done: Words = ("Square the end to the line with a plane on a shooting board.",)
    return by_hand(
        asked,
        "crosscut saw",
        settings,
        ("Saw on the waste side of the line.",),
        *(() if rough else (done,)),
        taken=sawn(work, work.piece.width),
        needs=("a square", "a bench hook or two trestles"),
        test=None if rough else TestCut(("Cut the first, and lay it against the rod.",), FIT_SQUARE),
        accuracy=Length(2) if rough else ACCURACY,
        rank=1 if rough else 2,
    )


def rip(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(
        asked,
        "rip saw",
        (
            length("mark", "Gauge line from the straight edge", work.width + SAW_SMOOTH.least),
            length("width", "Plane to width", work.width),
        ),
        ("Saw beside the line, plane to it.",),
        taken=sawn(work, work.piece.length),
        needs=("a marking gauge",),
        rank=2,
    )


def resaw(asked: Asked) -> Answered:
    work = asked.work
    if work.piece.width > HAND_RESAW_WIDEST.most:
        said: Words = (
            "The board is ",
            work.piece.width,
            " wide; over ",
            HAND_RESAW_WIDEST,
            " a hand saw wanders.",
        )
        return Refusal(TOOL, said, ("Use a band saw, or buy thinner stock.",))
    return by_hand(
        asked,
        "rip saw",
        (length("mark", "Gauge line from the face, all round", work.width),),
        ("Saw from one corner, turn the board round, saw from the other; again until the cuts meet.",),
        taken=work.piece.width * work.piece.length,
        needs=("a marking gauge",),
        accuracy=Length(2),
        rank=3,
    )


def plane(asked: Asked) -> Answered:
    """Flat, straight or to thickness: to gauge lines, the winding sticks deciding."""
    work, piece = asked.work, asked.work.piece
    on_edge = work.family == "joint an edge"
    taken = (piece.thickness if on_edge else piece.width) * piece.length * work.depth / 4
    line = piece.thickness - work.depth if work.family == "plane to thickness" else work.depth
    name = "Gauge line from the flat face" if work.family == "plane to thickness" else "Comes off at most"
    says: dict[str, Words] = {
        "joint a face": ("Plane across, then along; winding sticks and a straightedge show what is high.",),
        "joint an edge": ("Plane until the shaving comes whole, then try it with square and straightedge.",),
        "plane to thickness": ("Gauge from the flat face all round, plane the other side down to the line.",),
    }
    return by_hand(
        asked,
        "bench plane",
        (length("mark", name, line),),
        says[work.family],
        taken=taken,
        needs=("a straightedge", "winding sticks") if not on_edge else ("a straightedge", "a square"),
        rank=2,
    )


def channel(asked: Asked) -> Answered:
    """A plough plane along the grain, saw and chisel across it."""
    work = asked.work
    chisel = widest(CHISELS, asked.units, work.width)
    settings = (
        length("wall", "From the side to the near wall", work.near),
        length("height", "Deep", work.depth),
        *ends(work),
    )
    is_ploughed = work.is_along_grain and not work.is_stopped
    says: Words = (f"Plough with the fence on {the(work.from_side)}; the same side for every piece.",)
    return by_hand(
        asked,
        "plough plane" if is_ploughed else "back saw and chisel",
        settings,
        *((says,) if is_ploughed else (KNIFE, LEVEL)),
        taken=volume(work),
        width=chisel,
        guide=work.from_side,
        needs=("a marking gauge", "a marking knife"),
        test=TestCut(("Cut one in scrap.",), FIT_CHANNEL),
        rank=1 if work.is_stopped else 2,
    )


def ends(work: Work) -> tuple[Setting, ...]:
    found = []
    if work.before:
        found.append(length("begins", "Begins from the end", work.before))
    if work.after:
        found.append(length("ends", "Ends before the other end", work.after))
    return tuple(found)


def rabbet(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(
        asked,
        "rabbet plane" if not work.is_stopped else "chisel",
        (
            length("reach", "Fence: width of the step", work.width),
            length("height", "Deep", work.depth),
            *ends(work),
        ),
        ("Across the grain cut the wall with a knife first.",),
        taken=volume(work),
        guide=work.from_side,
        needs=("a marking gauge",),
        test=TestCut(("Plane one in scrap.",), FIT_CHANNEL),
    )


def cheeks(asked: Asked) -> Answered:
    work = asked.work
    settings = [
        length("shoulder", "Knife line from the end", work.depth),
        length("height", "Gauge from the face", work.near),
    ]
    settings.append(length("width", "Left standing", work.width))
    taken = (work.near + work.far) * work.depth * work.whole(work.run) / 4
    return by_hand(
        asked,
        "tenon saw" if not work.is_along_grain else "rabbet plane",
        tuple(settings),
        ("Gauge both cheeks from the same face, saw the cheeks, then the shoulders on the knife line.",),
        ("Pare to fit with a shoulder plane.",),
        taken=taken,
        needs=("a marking gauge", "a marking knife", "a square"),
        test=TestCut(("Fit each to its own place, and mark both.",), FIT_TONGUE),
        rank=2,
    )


def mortise(asked: Asked) -> Answered:
    work = asked.work
    chisel = widest(CHISELS, asked.units, work.width)
    if chisel is None:
        return Refusal(TOOL, ("No usual chisel is so narrow.",), ("Make the mortise as wide as a chisel.",))
    return by_hand(
        asked,
        "mortise chisel",
        (
            length("wall", "Gauge from the side to the near wall", work.near),
            length("width", "Between the gauge's pins", work.width),
            length("height", "Deep", work.depth),
            *ends(work),
        ),
        ("Chop from the middle to both ends, lever out the chips, leave the ends for last.",),
        *((("Chop from both sides to the middle.",),) if work.through else ()),
        taken=volume(work),
        width=chisel,
        guide=work.from_side,
        needs=("a mortise gauge", "a mallet"),
        test=TestCut(("Chop one in scrap.",), FIT_CHANNEL),
        rank=2,
    )


def pilot(asked: Asked) -> Answered:
    return by_hand(
        asked,
        "bradawl or gimlet",
        (length("height", "Deep", asked.work.depth),),
        ("Press the edge in across the grain, then turn.",),
        taken=Fraction(0),
        accuracy=Length(1),
        rank=3,
    )


def notch(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(
        asked,
        "back saw and chisel",
        (
            length("wall", "From the side to the near wall", work.near),
            length("width", "Wide", work.width),
            length("height", "Deep", work.depth),
        ),
        KNIFE,
        ("Saw down both walls, chop the waste from both faces to the middle.",)
        if work.near and work.far
        else ("Saw down both lines of the corner.",),
        taken=volume(work) / 4,
        needs=("a marking knife", "a square"),
        test=None,
        rank=1,
    )


def bevel(asked: Asked) -> Answered:
    work = asked.work
    slope = work.angle or slope_of(work)
    return by_hand(
        asked,
        "bench plane",
        (
            length("mark", "Line on the face", work.width),
            length("height", "Line down from the face", work.depth),
            degrees("angle", "Slope from the face", slope),
        ),
        ("Pencil both lines; a gauge would leave a scratch. Plane to them, across the grain first.",),
        taken=work.width * work.depth / 2 * work.whole(work.run),
        rank=1,
    )


def taper(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(
        asked,
        "rip saw and plane",
        (length("mark", "Taken at the far end", work.depth), length("over", "Over a length of", work.length)),
        ("Saw beside the line, plane to it.",),
        taken=sawn(work, work.length),
        rank=2,
    )


def outline(asked: Asked) -> Answered:
    work = asked.work
    is_curved = work.family == "curved outline"
    return by_hand(
        asked,
        "coping saw and spokeshave" if is_curved else "hand saw and plane",
        (),
        ("Draw it from the sizes, or from a pattern where there are several. Saw outside the line.",),
        ("Smooth with the grain: downhill from both sides.",),
        taken=sawn(work, max(work.length, work.width)) * 4,
        accuracy=Length(1),
        rank=2 if is_curved else 1,
    )


def mitre(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(
        asked,
        "back saw and plane",
        (
            degrees("angle", "From square", work.angle),
            length("mark", "Length, at the long side", work.piece.length),
        ),
        ("Saw in a mitre box, then shoot the end on a mitre shooting board.",),
        taken=sawn(work, work.piece.width),
        needs=("a mitre box", "a shooting board"),
        test=TestCut(("Cut two scraps and put them together.",), ("The corner closes and is square.",)),
        rank=2,
    )


def spline(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(
        asked,
        "back saw",
        (
            length("wall", "From the side to the near wall", work.near),
            length("height", "Deep", work.depth),
            length("width", "Wide", work.width),
        ),
        ("Gauge both walls, saw both, clear what is between. Make the spline to the slot.",),
        taken=volume(work),
        test=TestCut(("Saw one in scrap.",), FIT_CHANNEL),
        rank=2,
    )


def corner(asked: Asked) -> Answered:
    """Tails, pins and fingers: the first from the drawing, the second from the first."""
    work = asked.work
    says: dict[str, tuple[Words, ...]] = {
        "tails": (("Gauge the depth all round, saw two boards at once, chop from both faces.",),),
        "pins": (
            ("Lay the tails on the end and knife round them: pins are marked from tails, never measured.",),
            ("Saw on the waste side, chop from both faces, pare to the gauge line.",),
        ),
        "fingers": (("Mark the second board from the first. Saw on the waste side, chop from both faces.",),),
    }
    return by_hand(
        asked,
        "dovetail saw and chisel",
        (
            length("height", "Gauge line from the end", work.depth),
            *((degrees("slope", "Slope", work.angle),) if work.angle else ()),
        ),
        *says[work.family],
        taken=work.width * work.depth * work.piece.thickness * work.each,
        needs=("a marking gauge", "a marking knife", *(("a sliding bevel",) if work.angle else ())),
        test=TestCut(("Cut one corner in scrap.",), ("It goes together once, with light taps.",)),
        rank=1 if work.family == "fingers" else 0,
    )


def hinge_gain(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(
        asked,
        "chisel",
        (
            length("wall", "From the end to the near wall", work.near),
            length("width", "Long", work.width),
            length("height", "Deep: as thick as the leaf", work.depth),
        ),
        ("Lay the leaf itself on the wood and knife round it. Chop shallow cuts, then pare level.",),
        taken=volume(work),
        needs=("a marking knife", "the hinge itself"),
        test=TestCut(("Cut one in scrap and lay the leaf in.",), ("The leaf lies level with the wood.",)),
        accuracy=Length(1, 5),
        rank=0,
    )


def flush(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(
        asked,
        "block plane or scraper",
        (length("takes", "Comes off", work.depth),),
        ("Plane from the edge inward, with the grain, until the finest shaving comes from both pieces.",),
        taken=work.depth * max(work.length, Length(1)) * max(work.width, Length(1)),
        accuracy=LAST_PASS.least / 4,
        rank=0,
    )


WAYS: Ways = {
    "rough crosscut": crosscut,
    "joint a face": plane,
    "joint an edge": plane,
    "plane to thickness": plane,
    "rip": rip,
    "crosscut to length": crosscut,
    "resaw": resaw,
    "groove": channel,
    "dado": channel,
    "stopped dado": channel,
    "rabbet": rabbet,
    "tongue": cheeks,
    "tenon": cheeks,
    "mortise": mortise,
    "pilot hole": pilot,
    "notch": notch,
    "bevel": bevel,
    "taper": taper,
    "straight outline": outline,
    "curved outline": outline,
    "mitre": mitre,
    "spline slot": spline,
    "tails": corner,
    "pins": corner,
    "fingers": corner,
    "hinge gain": hinge_gain,
    "flush": flush,
}
REFUSALS: Refusals = {
    "glue up a panel": ("Gluing takes clamps and a flat place.", "Glue it at the bench."),
    "clearance hole": ("Saws, chisels and planes make no round hole.", "Take a drill, or a brace and bit."),
    "dowel hole": ("Saws, chisels and planes make no round hole.", "Take a drill, or a brace and bit."),
    "sand": (
        "An edge tool leaves a surface that may need no paper, but a finish asks for one grit all over.",
        "Sand it at the bench.",
    ),
}
