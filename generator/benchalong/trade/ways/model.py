"""The nouns: a piece of work, a way to do it, and a refusal.

A cut is a box in the surface it is made in: across its run `near`, `width` and `far` fill the workpiece;
along its run `before`, `length` and `after` do; `depth` goes into the wood. All lengths are exact and in mm.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, TypeAlias, get_args

from benchalong.ground.lengths import ZERO, Length

Family: TypeAlias = Literal[
    "rough crosscut",
    "split rough",
    "joint a face",
    "joint an edge",
    "plane to thickness",
    "rip",
    "crosscut to length",
    "resaw",
    "glue up a panel",
    "groove",
    "dado",
    "stopped dado",
    "rabbet",
    "tongue",
    "tenon",
    "mortise",
    "pilot hole",
    "clearance hole",
    "dowel hole",
    "notch",
    "bevel",
    "taper",
    "straight outline",
    "curved outline",
    "mitre",
    "spline slot",
    "tails",
    "pins",
    "fingers",
    "hinge gain",
    "flush",
    "sand",
]
"""Kinds of work as a shop tells them apart, about in the order they are done. What each measures:

rough crosscut, crosscut to length: `length` is what is kept (along the piece).
split rough, rip: `width` is the strip that is kept, the one sawn before its edges are true.
resaw: `width` is the thickness that is kept.
joint a face, joint an edge, plane to thickness: `depth` is what comes off. flush: `depth` is the step.
glue up a panel: the piece is the panel, `count` its strips.
groove, dado, rabbet, spline slot: the wood taken. notch, hinge gain: the same; they run "thickness", so that
`width` lies along the edge or end they are cut in.
tongue, tenon: `width` is what is left standing between the cheeks, `depth` how far it stands; of a tenon
`shoulders` says what its two narrow sides lose.
holes: `width` and `length` are the diameter.
bevel: `width` into the face, `depth` down from it, `angle` from the face. taper: `depth` is what is taken at
the far end, over `length`. outline: the room that is sawn round.
mitre: `angle` from square, over the surface whose run is given: run "width" slopes through the thickness (a
case's corner), run "thickness" across the face (a frame's).
mortise, holes: the length goes along the run. tails, pins, fingers run "thickness": `each` of them on one
end, `width` the narrowest gap between them, `depth` how far they reach, `angle` their slope from the run of
the grain.
"""
FAMILIES: tuple[Family, ...] = get_args(Family)

Tool: TypeAlias = Literal[
    "table saw with a stacked cutter",
    "table saw",
    "router table",
    "router",
    "hand tools",
    "track saw",
    "band saw",
    "mitre saw",
    "jointer",
    "planer",
    "drill press",
    "drill",
    "jigsaw",
    "bench",
]
"""`table saw` has one blade. `router` is held in the hand. `bench` is what every shop has: clamps, rules,
abrasive paper on a block."""
TOOLS: tuple[Tool, ...] = get_args(Tool)

Wood: TypeAlias = Literal["hard", "soft", "sheet"]
SurfaceKind: TypeAlias = Literal["face", "edge", "end"]
Direction: TypeAlias = Literal["length", "width", "thickness"]
Words: TypeAlias = "tuple[str | Length | Limit, ...]"
"""A text with lengths in it, to be shown in the reader's system."""

INWARD: Mapping[SurfaceKind, Direction] = {"face": "thickness", "edge": "width", "end": "length"}
SIDES: Mapping[Direction, tuple[str, str]] = {
    "length": ("end a", "end b"),
    "width": ("edge a", "edge b"),
    "thickness": ("face", "back"),
}
"""The two sides between which a direction is measured."""
OPPOSITE: Mapping[str, str] = {
    **dict(SIDES.values()),
    **{two: one for one, two in SIDES.values()},
}


@dataclass(frozen=True)
class Limit:
    """A limit of common practice, as each system says it: 12 in, 300 mm. A part at either figure keeps it."""

    inch: Length
    """In mm."""
    millimetre: Length

    @property
    def least(self) -> Length:
        return min(self.inch, self.millimetre)

    @property
    def most(self) -> Length:
        return max(self.inch, self.millimetre)


@dataclass(frozen=True, kw_only=True)
class Piece:
    """The wood that goes to the tool, as it is just before this work. The grain runs along its length."""

    length: Length
    width: Length
    thickness: Length
    wood: Wood = "hard"


@dataclass(frozen=True, kw_only=True)
class Work:
    """One kind of cut or milling on one kind of piece, `count` times over."""

    family: Family
    piece: Piece
    surface: SurfaceKind = "face"
    """The surface the cut is made in."""
    run: Direction = "length"
    """The way the cut runs; along the grain when it is the length."""
    width: Length = ZERO
    """Across the run."""
    depth: Length = ZERO
    """Into the wood."""
    length: Length = ZERO
    """Along the run."""
    near: Length = ZERO
    """From the side it is measured from to the near wall."""
    before: Length = ZERO
    """Along the run, wood left before it begins."""
    shoulders: tuple[Length, Length] = (ZERO, ZERO)
    angle: Fraction = Fraction(0)
    """Degrees; of tails and pins the slope."""
    each: int = 1
    """How many like ones on one end (tails, fingers) or in one row (holes)."""
    count: int = 1
    """How many of these in all: on how many pieces, or how many ends of pieces."""
    through: bool = False
    """Whether it goes out on the other side."""
    is_frame: bool = False
    """Of a spline slot: in a frame's mitre, which slopes across the face, and not in a case's."""
    cut_in: str = ""
    """The side it is cut in, in the part's own words: `edge a`. The first of its kind unless said."""
    near_side: str = ""
    """The side `near` is measured from; the first of the two unless said."""

    @property
    def inward(self) -> Direction:
        return INWARD[self.surface]

    @property
    def across(self) -> Direction:
        """The direction across the run, in the surface."""
        named: tuple[Direction, ...] = ("length", "width", "thickness")
        return next(one for one in named if one not in (self.inward, self.run))

    def whole(self, direction: Direction) -> Length:
        """The workpiece's own size."""
        sizes: dict[Direction, Length] = {
            "length": self.piece.length,
            "width": self.piece.width,
            "thickness": self.piece.thickness,
        }
        return sizes[direction]

    @property
    def far(self) -> Length:
        """From the far wall to the other side."""
        return self.whole(self.across) - self.near - self.width

    @property
    def after(self) -> Length:
        """Along the run, wood left after it ends."""
        return self.whole(self.run) - self.before - self.length

    @property
    def is_centred(self) -> bool:
        return self.near == self.far

    @property
    def is_along_grain(self) -> bool:
        return self.run == "length"

    @property
    def is_stopped(self) -> bool:
        return self.before > 0 or self.after > 0

    @property
    def in_side(self) -> str:
        return self.cut_in or SIDES[self.inward][0]

    @property
    def from_side(self) -> str:
        return self.near_side or SIDES[self.across][0]

    @property
    def far_side(self) -> str:
        return OPPOSITE[self.from_side]


@dataclass(frozen=True)
class Setting:
    """One number to set; a number to start from, since the test cut decides."""

    key: str
    """`fence`, `height`, `stop`, `angle` …: the same word for the same thing in every way."""
    name: str
    """As a page says it: `Fence to the cutter`."""
    length: Length | None = None
    degrees: Fraction | None = None
    count: int | None = None


@dataclass(frozen=True)
class Cutter:
    name: str
    """`straight cutter`, `stacked cutter`, `chisel`, `twist bit`, `blade`."""
    width: Length | None = None
    """Or diameter; None where it is of no account."""


@dataclass(frozen=True)
class TestCut:
    """A cut in scrap first; the fit decides, not the numbers."""

    make: Words
    fit: Words
    __test__ = False
    """It is no test of pytest's."""


@dataclass(frozen=True, kw_only=True)
class Way:
    """How the work is done with one tool."""

    tool: Tool
    cutter: Cutter
    needs: tuple[str, ...] = ()
    """What it takes in addition, in words: `a sacrificial fence`."""
    with_tools: tuple[Tool, ...] = ()
    """Other tools it can't be finished without; no way is offered where they aren't at hand."""
    settings: tuple[Setting, ...] = ()
    guide: str = ""
    """What runs along the fence or guide: `face`; `face, then back`. Empty where there is none."""
    table: str = ""
    """What lies on the table, or under the tool's sole."""
    passes: tuple[Length, ...] = ()
    """What each pass takes of the depth; together all of it."""
    strokes: int = 1
    """How often each piece passes the cutter at one depth: once a place."""
    is_turned: bool = False
    """Whether every pass is run twice, the piece turned end for end between."""
    does: tuple[Words, ...] = ()
    """What to do, a line each, in order."""
    test: TestCut | None = None
    accuracy: Length = ZERO
    """What the width or place comes out within, by common practice."""
    to_set: Fraction = Fraction(0)
    """Minutes for the setup, its test cut included."""
    for_all: Fraction = Fraction(0)
    """Minutes for all `count` of them, once set."""
    cautions: tuple[Words, ...] = ()
    why: Words = ()
    rank: int = 0
    """Lower is better."""

    def setting(self, key: str) -> Setting | None:
        return next((one for one in self.settings if one.key == key), None)

    @property
    def minutes(self) -> Fraction:
        return self.to_set + self.for_all


@dataclass(frozen=True)
class Refusal:
    """Why a tool doesn't do this work here."""

    tool: Tool
    reason: Words
    instead: Words
    is_safety: bool = False
    """Whether the tool could do it on a larger piece, and this one is too small for safe hands."""


@dataclass(frozen=True)
class Answer:
    """What the tools at hand come to for one work."""

    ways: tuple[Way, ...]
    """The best first."""
    refusals: tuple[Refusal, ...]

    @property
    def best(self) -> Way | None:
        return self.ways[0] if self.ways else None
