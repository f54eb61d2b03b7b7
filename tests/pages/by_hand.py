"""A small plan put together by hand: a box with a shelf, so that every kind of page has something to say."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from benchalong.drawing.picture import Picture
from benchalong.ground.lengths import INCH, Length
from benchalong.ground.marks import Marks
from benchalong.ground.prose import LiveSize, PartName
from benchalong.ground.shown import Precision
from benchalong.plan.formula import parse
from benchalong.plan.model import (
    Amiss,
    Assembly,
    Change,
    Check,
    Copy,
    Corner,
    Cut,
    CutSize,
    Finish,
    HandOver,
    Hardware,
    Jig,
    Job,
    Look,
    Origin,
    Outline,
    Part,
    Placed,
    Plan,
    Prism,
    Question,
    Reply,
    Shape,
    Shop,
    Size,
    Stage,
    Step,
    Stock,
)
from benchalong.plan.model import Picture as Shot
from benchalong.plan.quantity import Quantity
from benchalong.trade.ways.model import Way, Work
from benchalong.workings.order import WORKINGS
from benchalong.workings.working import Worked, work_all

STRAIGHT = ((1, 0, 0), (0, 1, 0), (0, 0, 1))
UPRIGHT = ((0, 0, 1), (0, -1, 0), (1, 0, 0))


def inches(text: str) -> Length:
    return Fraction(text) * INCH


WIDTH = LiveSize("width", inches("12"))
THIRD = LiveSize("width / 3 + depth / 7", inches("12") / 3 + inches("6") / 7)


def _size(name: str, typed: str, value: Length, *follows: str) -> Size:
    return Size(name, typed, parse(typed), Quantity(value, 1), follows, "")


SIZES = {
    "width": _size("width", "12 in", inches("12")),
    "depth": _size("depth", "6 in", inches("6")),
    "shelf_at": _size("shelf_at", "width / 3 + depth / 7", THIRD.length, "depth", "width"),
}
CHANNEL = Outline(
    tuple(
        Corner((THIRD.length + along * inches("3/4"), across * inches("6")))
        for along, across in ((0, 0), (1, 0), (1, 1), (0, 1))
    )
)
DADO = Cut(
    "dado",
    "Dado for the shelf",
    ("face",),
    "in the face, across the grain",
    (
        CutSize("width", inches("3/4"), ()),
        CutSize("depth", inches("1/4"), ()),
        CutSize("at", THIRD.length, ("shelf_at",)),
    ),
    (Prism("down", CHANNEL, Fraction(0), inches("1/4")),),
    "Cut both sides with the same setting.",
)
PARTS = {
    "side": Part(
        "side",
        "Side",
        "pine",
        inches("3/4"),
        inches("6"),
        inches("12"),
        2,
        ("L", "R"),
        (DADO,),
        purpose="Carries the shelf",
        follows={"width": ("depth",), "length": ("width",)},
    ),
    "shelf": Part(
        "shelf",
        "Shelf <thin>",
        "pine",
        inches("3/4"),
        inches("6"),
        THIRD.length * 2,
        1,
        ("S",),
        note="Best board",
    ),
    "wedge": Part("wedge", "Wedge", "beech", inches("1/2"), inches("1"), inches("3"), 4, ()),
}
STEPS = {
    "mill-all": Step(
        "mill-all",
        "wood",
        ("Mill <em>all</em> of it to ", WIDTH),
        why=("So that all of one thickness is alike.",),
        does=(Job("mill", ("side", "shelf")),),
        parts=("side", "shelf"),
        tools=("planer", "block plane"),
        minutes=95,
        wait="overnight",
        hands=2,
        cautions=(("Keep hands off the cutter.",),),
        checks=(
            Check(
                "k1",
                (
                    "All are ",
                    LiveSize("3/4 in", inches("3/4")),
                    " thick.",
                ),
            ),
            Check("k2", ("No snipe.",)),
        ),
        amiss=(Amiss(("It rocks",), ("Twist",), ("Plane the high corners",)),),
        ask=(("What did your boards measure?",),),
        note=(
            "<p>Plane the ",
            PartName("side", "Side"),
            " first, to ",
            THIRD,
            ".</p>",
        ),
        pictures=(Shot("pictures/mill.jpg", "A board in the planer", ("Feed it <b>flat</b>",)),),
    ),
    "cut-dado": Step(
        "cut-dado",
        "wood",
        ("Cut the dado",),
        parts=("side",),
        jigs=("guide",),
        minutes=30,
        note=("<p>Cut.</p>",),
        checks=(Check("k3", ("The shelf goes in by hand.",)),),
    ),
    "fit-shelf": Step("fit-shelf", "fit", ("Fit the shelf",), hardware=("screw",), note=("<p>Fit it.</p>",)),
}
QUESTIONS = {
    "other-wood": Question(
        "other-wood",
        "mill-all",
        "robin",
        "2024-03-02",
        "answered",
        ("Can it be fir?",),
        ("<p>I have fir.</p>",),
        (Reply("ash", "2024-03-03", ("<p>Yes.</p>",)),),
    ),
    "how-flat": Question(
        "how-flat", "mill-all", "wren", "2024-03-05", "open", ("How flat?",), ("<p>Is it?</p>",)
    ),
}
BOX = Assembly(
    "box",
    "Box",
    (
        Placed("part", "side", "L", UPRIGHT, (Fraction(0), inches("6"), Fraction(0))),
        Placed("part", "side", "R", UPRIGHT, (inches("12"), inches("6"), Fraction(0))),
        Placed("part", "shelf", "S", STRAIGHT, (inches("3/4"), Fraction(0), THIRD.length)),
    ),
)
PLAN = Plan(
    id="box",
    title=("Box & shelf",),
    about=("<p>A box for ", PartName("shelf", "Shelf <thin>"), ".</p>"),
    edition="spring",
    units="inch",
    precision=Precision(),
    projection="third angle",
    currency="",
    origin=Origin("our own sheet", "free to share", "the club"),
    shop=Shop(tools=("table saw", "planer")),
    sizes=SIZES,
    stock={
        "pine": Stock("pine", "board", "Pine", "white pine", "flat", "4/4"),
        "beech": Stock("beech", "board", "Beech"),
    },
    parts=PARTS,
    assemblies={"box": BOX},
    piece="box",
    joints={},
    shapes={part.id: Shape(part.id, part.id, "", part.cuts, part.marks) for part in PARTS.values()},
    copies=tuple(Copy(one.of, one.of, one.mark, ("box",), one.turn, one.at) for one in BOX.placed),
    hardware={"screw": Hardware("screw", "Screw", "No. 8", 6, None, "for the shelf")},
    jigs={"guide": Jig("guide", "Dado guide", "for both sides", "an offcut", ("<p>Keep it.</p>",))},
    finish={"oil": Finish("oil", "Oil", 2, "a day", "all", "the dadoes", "Thin the first coat.")},
    changes=(Change("size", "width", "14 in", "fits the wall"), Change("part", "side", "curved", "simpler")),
    cautions=(("Mind the <b>edges</b>.",),),
    words={"Thin shelf": "the one that bends", "kerf": "our own word for it"},
    ask=HandOver("bench@example.org", "https://board.example.org/"),
    look=Look("bench", "en"),
    stages={
        "wood": Stage("wood", ("The wood",), ("<p>All milling.</p>",), ("mill-all", "cut-dado")),
        "fit": Stage("fit", ("Fitting",), (), ("fit-shelf",)),
    },
    steps=STEPS,
    questions=QUESTIONS,
    pictures=("pictures/mill.jpg",),
)

SVG = (
    '<svg class="drawing" viewBox="0 0 {0} {1}" role="img"><title>{2}</title>'
    '<path class="visible" d="M5 5H{3}V{4}H5Z"/></svg>'
)


@dataclass(frozen=True)
class Drawn:
    """Stands in for the drawings: a box for everything, and a note of what was asked for."""

    asked: list[str] = field(default_factory=list)

    def _draw(self, what: str, width: int = 350, height: int = 240) -> Picture:
        self.asked.append(what)
        return Picture(SVG.format(width, height, what, width - 5, height - 5), what, width, height)

    def part(self, part: str) -> Picture:
        return self._draw(f"Three views of {part}")

    def small(self, part: str) -> Picture:
        return self._draw(f"The {part}", 96, 72)

    def year(self, part: str) -> Picture:
        return self._draw(f"The {part} over the year")

    def sawn(self, group: str, number: int) -> Picture:
        return self._draw(f"Board {number} of {group}")

    def in_grooves(self, joint: str, part: str) -> Picture:
        return self._draw(f"The {part} in the grooves of {joint} over the year")

    def piece(self) -> Picture:
        return self._draw("The piece")

    def assembly(self, assembly: str) -> Picture:
        return self._draw(f"The {assembly}")

    def step(self, step: str) -> Picture:
        return self._draw(f"Where {step} is")

    def apart(self, assembly: str) -> Picture:
        return self._draw(f"The {assembly} pulled apart")

    def piece_apart(self) -> Picture:
        return self._draw("The piece pulled apart")

    def section(self, joint: str) -> Picture:
        return self._draw(f"The joint {joint} sawn through")

    def setup(self, work: Work, way: Way) -> Picture:
        return self._draw(f"The {way.tool} set for a {work.family}")


@dataclass(frozen=True)
class Travelled:
    plan: Plan = PLAN
    worked: Worked = field(default_factory=lambda: work_all(PLAN, WORKINGS))
    edition: str = "ab12cd34"
    marks: Marks = field(default_factory=Marks)
