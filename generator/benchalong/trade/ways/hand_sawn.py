"""Boards and lines by hand: sawn beside the line, planed to it; and how any work by hand is put together."""

from __future__ import annotations

from fractions import Fraction

from benchalong.ground.lengths import Length
from benchalong.trade.ways.asked import Answered, Asked, way
from benchalong.trade.ways.model import Cutter, Setting, TestCut, Words, Work
from benchalong.trade.ways.practice import HAND_RESAW_WIDEST, SAW_SMOOTH
from benchalong.trade.ways.settings import degrees, length, slope_of, tapered
from benchalong.trade.ways.texts import FIT_SQUARE, TEST_CORNER

BESIDE: Words = ("Saw beside the line, plane to it.",)


def by_hand(
    asked: Asked,
    cutter: str,
    *does: Words,
    settings: tuple[Setting, ...] = (),
    taken: Fraction,
    needs: tuple[str, ...] = (),
    test: TestCut | None = None,
    width: Length | None = None,
    guide: str = "",
    rank: int = 2,
    accuracy: Length | None = None,
) -> Answered:
    """`taken`: wood to be removed with an edge for one of them, cubic mm."""
    work = asked.work
    return way(
        asked,
        Cutter(cutter, width),
        settings=settings,
        guide=guide,
        needs=needs,
        passes=(work.depth,) if work.depth else (),
        does=does,
        test=test,
        accuracy=accuracy,
        for_all=work.count * asked.minutes.by_hand(work.family, taken, is_soft=asked.is_soft),
        rank=rank,
    )


def sawn(work: Work, across: Length) -> Fraction:
    """A kerf of one millimetre: about what sawing takes by hand."""
    return across * work.piece.thickness


def rough(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(
        asked,
        "crosscut saw",
        ("Saw on the waste side of the line.",),
        settings=(length("mark", "Line from the end", work.length),),
        taken=sawn(work, work.piece.width),
        needs=("a square", "a bench hook or two trestles"),
        accuracy=Length(2),
        rank=1,
    )


def to_length(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(
        asked,
        "crosscut saw",
        ("Saw on the waste side of the line.",),
        ("Square the end to the line with a plane on a shooting board.",),
        settings=(length("mark", "Knife line from the square end", work.length),),
        taken=sawn(work, work.piece.width),
        needs=("a square", "a bench hook or two trestles"),
        test=TestCut(("Cut the first, and lay it against the rod.",), FIT_SQUARE),
    )


def split(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(
        asked,
        "rip saw",
        ("Chalk a straight line. Wedge the cut open where it closes on the saw.",),
        settings=(length("mark", "From the edge to the line", work.width),),
        taken=sawn(work, work.piece.length),
        needs=("two trestles", "a wedge"),
        accuracy=Length(2),
    )


def rip(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(
        asked,
        "rip saw",
        BESIDE,
        settings=(
            length("mark", "Gauge line from the straight edge", work.width + SAW_SMOOTH.least),
            length("width", "Plane to width", work.width),
        ),
        taken=sawn(work, work.piece.length),
        needs=("a marking gauge",),
    )


def resaw(asked: Asked) -> Answered:
    work, piece = asked.work, asked.work.piece
    return asked.over(
        piece.width,
        HAND_RESAW_WIDEST,
        "The board is {} wide; over {} a hand saw wanders.",
        "Use a band saw, or buy thinner stock.",
    ) or by_hand(
        asked,
        "rip saw",
        ("Saw from one corner, turn the board round, saw from the other; again until the cuts meet.",),
        settings=(length("mark", "Gauge line from the face, all round", work.width),),
        taken=piece.width * piece.length,
        needs=("a marking gauge",),
        accuracy=Length(2),
        rank=3,
    )


def plane_face(asked: Asked) -> Answered:
    return planed(
        asked,
        ("Plane across, then along; winding sticks and a straightedge show what is high.",),
        length("mark", "Comes off at most", asked.work.depth),
        across=asked.work.piece.width,
        tried_with="winding sticks",
    )


def plane_edge(asked: Asked) -> Answered:
    return planed(
        asked,
        ("Plane until the shaving comes whole, then try it with square and straightedge.",),
        length("mark", "Comes off at most", asked.work.depth),
        across=asked.work.piece.thickness,
        tried_with="a square",
    )


def plane_to_thickness(asked: Asked) -> Answered:
    piece = asked.work.piece
    return planed(
        asked,
        ("Gauge from the flat face all round, plane the other side down to the line.",),
        length("mark", "Gauge line from the flat face", piece.thickness - asked.work.depth),
        across=piece.width,
        tried_with="winding sticks",
    )


def planed(asked: Asked, does: Words, mark: Setting, *, across: Length, tried_with: str) -> Answered:
    """Flat, straight or to thickness: to gauge lines, what it is tried with deciding."""
    work = asked.work
    return by_hand(
        asked,
        "bench plane",
        does,
        settings=(mark,),
        taken=across * work.piece.length * work.depth / 4,
        needs=("a straightedge", tried_with),
    )


def bevel(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(
        asked,
        "bench plane",
        ("Pencil both lines; a gauge would leave a scratch. Plane to them, across the grain first.",),
        settings=(
            length("mark", "Line on the face", work.width),
            length("height", "Line down from the face", work.depth),
            degrees("angle", "Slope from the face", slope_of(work)),
        ),
        taken=work.width * work.depth / 2 * work.whole(work.run),
        rank=1,
    )


def taper(asked: Asked) -> Answered:
    work = asked.work
    return by_hand(asked, "rip saw and plane", BESIDE, settings=tapered(work), taken=sawn(work, work.length))


def outline(asked: Asked) -> Answered:
    work = asked.work
    is_curved = work.family == "curved outline"
    return by_hand(
        asked,
        "coping saw and spokeshave" if is_curved else "hand saw and plane",
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
        ("Saw in a mitre box, then shoot the end on a mitre shooting board.",),
        settings=(
            degrees("angle", "From square", work.angle),
            length("mark", "Length, at the long side", work.piece.length),
        ),
        taken=sawn(work, work.piece.width),
        needs=("a mitre box", "a shooting board"),
        test=TEST_CORNER,
    )
