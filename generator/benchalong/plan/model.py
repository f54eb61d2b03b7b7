"""The plan: every noun in it, frozen, each field with its meaning and unit. Lengths are exact millimetres.

A part lies in its own directions: `along` from end a to end b, `across` from edge a to edge b, `down`
from the face to the back. All three count from 0; together they make a right-handed set.
A piece stands in the room: x to the right, y to the back, z up, from its left, front, bottom corner.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property
from typing import Literal, TypeAlias

from benchalong.ground.lengths import Length, Point2, Point3
from benchalong.ground.names import NO_NAMES, Names
from benchalong.ground.prose import Prose
from benchalong.ground.shown import Precision, System
from benchalong.plan.quantity import Quantity
from benchalong.plan.rough import Allowance, Board, Match, Sawing, Strips, TestPiece, usual_sawing
from benchalong.plan.rough import Price as Price
from benchalong.plan.tree import Tree
from benchalong.trade.amounts import Rates
from benchalong.trade.species import Woods, woods

SizeName: TypeAlias = str
StockId: TypeAlias = str
PartId: TypeAlias = str
AssemblyId: TypeAlias = str
StepId: TypeAlias = str
StageId: TypeAlias = str

CutKind: TypeAlias = Literal[
    "groove",
    "dado",
    "rabbet",
    "tongue",
    "tenon",
    "mortise",
    "hole",
    "notch",
    "bevel",
    "taper",
    "outline",
    "slot",
]
"""A slot is a groove in the sloping face of a mitre, for a spline; only a joint gives it."""
Surface: TypeAlias = Literal["face", "back", "edge a", "edge b", "end a", "end b"]
Axis: TypeAlias = Literal["along", "across", "down"]
AXES: tuple[Axis, ...] = ("along", "across", "down")
SPAN: Mapping[Axis, str] = {"along": "length", "across": "width", "down": "thickness"}
"""Which of a part's own sizes lies along each."""


@dataclass(frozen=True)
class Size:
    """A named size."""

    name: SizeName
    typed: str
    """The formula as the author typed it."""
    formula: Tree
    value: Quantity
    """A length, or a pure number that becomes a length where one is needed."""
    follows: tuple[SizeName, ...]
    """Every name it follows from, directly or not, in alphabetical order."""
    note: str = ""


@dataclass(frozen=True)
class Stock:
    id: StockId
    kind: Literal["board", "sheet", "turned", "bought"]
    name: str
    species: str = ""
    sawn: str = ""
    buy: str = ""
    thickness: Length | None = None
    """What the geometry works with: the measured thickness where there is one."""
    nominal: Length | None = None
    """The thickness it is called by, when a measured one differs."""
    sheet: tuple[Length, Length] | None = None
    grain_along: Length | None = None
    """For sheets: the length of the side the face grain runs along; None where there is no grain."""
    price: Price | None = None
    grade: str = ""
    waste: Fraction | None = None
    """What is bought on top, as a share; None where it follows from grade and species."""
    sold_in: tuple[Length, ...] = ()
    """The lengths it is sold in, shortest first."""
    board_width: Length | None = None
    """How wide its boards are, as the author says."""
    moisture: Fraction | None = None
    """Percent that it may have when it is bought."""
    is_restless: bool = False
    """Whether it moves when it is cut, and is split rough and flattened later."""
    allowance: Allowance = field(default_factory=Allowance)
    """The author's own for this stock."""
    note: str = ""


@dataclass(frozen=True)
class Corner:
    """A corner of an outline; where radius is above 0 it is rounded by an arc that touches both sides."""

    at: Point2
    radius: Length = Fraction(0)


@dataclass(frozen=True)
class Outline:
    """A closed path through its corners, anticlockwise or clockwise."""

    corners: tuple[Corner, ...]


@dataclass(frozen=True)
class Circle:
    centre: Point2
    diameter: Length


@dataclass(frozen=True)
class Prism:
    """A straight body of wood to take away: a flat shape drawn out along one direction of the part.

    The shape lies in the two other directions, in the order of `AXES` without `axis`: for axis `down`
    its points are (along, across), for `across` (along, down), for `along` (across, down).
    """

    axis: Axis
    shape: Outline | Circle
    start: Length
    end: Length
    outside: bool = False
    """Takes what lies outside the shape, as far as the part's box reaches, instead of what lies inside."""

    @cached_property
    def room(self) -> Mapping[Axis, tuple[Length, Length]]:
        """What it takes up in each direction; of one that takes what lies outside its shape, the shape's
        room. Kept: the plan check compares every cut of a part with every other."""
        first, second = (axis for axis in AXES if axis != self.axis)
        if isinstance(self.shape, Circle):
            radius = self.shape.diameter / 2
            ranges = [(middle - radius, middle + radius) for middle in self.shape.centre]
        else:
            points = [corner.at for corner in self.shape.corners]
            ranges = [(min(values), max(values)) for values in zip(*points, strict=True)]
        return {first: ranges[0], second: ranges[1], self.axis: (self.start, self.end)}


@dataclass(frozen=True)
class CutSize:
    """One number of a cut as a person sets it: `width 5/16 in`."""

    name: str
    length: Length
    sizes: tuple[SizeName, ...] = ()
    """The named sizes it follows from."""


@dataclass(frozen=True)
class Cut:
    """Something taken away from a part."""

    kind: CutKind
    name: str
    """The author's name for it, or its kind."""
    surfaces: tuple[Surface, ...]
    where: str
    """In plain words, without numbers: `in edge a, centred, from end to end`."""
    sizes: tuple[CutSize, ...]
    takes: tuple[Prism, ...]
    """What is taken away, exactly; the part is its box less all of these."""
    note: str = ""
    index: int = 0
    """Which of the part's own cuts it is, counted from 0 as written; of no meaning for a joint's."""
    follows: tuple[SizeName, ...] = ()
    """Every named size that its numbers follow from, the corners of an outline included."""
    joint: str = ""
    """The joint that gives it; none for a part's own."""
    hardware: str = ""
    """The piece of hardware that sits there and takes it; none for others."""


@dataclass(frozen=True)
class Part:
    id: PartId
    name: str
    stock: StockId
    thickness: Length
    width: Length
    length: Length
    """Overall, tongues and tenons included; the grain runs along it."""
    count: int
    """How many the piece needs: counted from the places, or given."""
    marks: tuple[str, ...]
    """One for each copy, from the whole piece down: `LD/H`. Fewer than `count` when copies have none."""
    cuts: tuple[Cut, ...] = ()
    glued_up: str = ""
    """In the author's words."""
    strips: Strips | None = None
    """What these words say; None where there are none."""
    resaw: int = 1
    """Into how many leaves a board may be sawn for it, face to back."""
    rough_with: PartId = ""
    """Another part that it stays in one piece with until both are milled."""
    purpose: str = ""
    shows: str = ""
    note: str = ""
    follows: Mapping[str, tuple[SizeName, ...]] = field(default_factory=dict)
    """thickness, width, length -> the named sizes each follows from."""

    @property
    def box(self) -> Point3:
        """(along, across, down): length, width, thickness."""
        return (self.length, self.width, self.thickness)

    @property
    def is_glued_up(self) -> bool:
        """Whether the author says so."""
        return self.strips is not None and self.strips.is_glued


Turn: TypeAlias = tuple[tuple[int, int, int], tuple[int, int, int], tuple[int, int, int]]
"""Rows x, y, z; columns along, across, down (of a part) or x, y, z (of an assembly). Square turns and mirrors
only."""


Rows: TypeAlias = tuple[
    tuple[Fraction, Fraction, Fraction],
    tuple[Fraction, Fraction, Fraction],
    tuple[Fraction, Fraction, Fraction],
]
"""As a turn, but by any angle: sines and cosines, kept to 1e-12."""


@dataclass(frozen=True)
class Tilt:
    """How something that doesn't stand square was turned after it was placed: point -> turn * point + at."""

    turn: Rows
    at: Point3


@dataclass(frozen=True)
class Placed:
    """A part or assembly in its place within an assembly: point -> turn * point + at."""

    kind: Literal["part", "assembly"]
    of: PartId | AssemblyId
    mark: str
    turn: Turn
    at: Point3
    follows: tuple[SizeName, ...] = ()
    """The named sizes its place follows from."""
    touches: tuple[str, ...] = ()
    """Marks within the same assembly of what it should stand against."""
    index: int = 0
    """Which place of its assembly it is, counted from 0 as written; copies of a row share theirs."""
    tilt: Tilt | None = None
    """How it is turned after that, in the assembly's directions; None for what stands square."""


@dataclass(frozen=True)
class Assembly:
    id: AssemblyId
    name: str
    placed: tuple[Placed, ...]
    note: str = ""


@dataclass(frozen=True)
class Copy:
    """One piece of wood where it stands: a point of the shape -> turn * point + at; never mirrored."""

    part: PartId
    shape: str
    mark: str
    """From the whole piece down: `LD/H`."""
    assemblies: tuple[AssemblyId, ...]
    """It stands in, from the piece down."""
    turn: Turn
    at: Point3
    tilt: Tilt | None = None
    """How it is turned from there, in the piece's directions; copies that are square to each other have the
    same, None where they are square to the piece."""


@dataclass(frozen=True)
class Shape:
    """Copies of one part that are the same piece of wood to make, as they lie or after a half turn."""

    id: str
    """The part's id; for a second shape of the part `door_stile-2`."""
    part: PartId
    hand: Literal["", "left", "right"]
    """Of two that are each other's mirror image; the one that stands further left is the left."""
    cuts: tuple[Cut, ...]
    """The part's own first, then the joints'."""
    marks: tuple[str, ...]
    turned: Names = NO_NAMES
    """Marks of the copies that are turned half round to stand in their place."""


@dataclass(frozen=True)
class SideOf:
    """A side of one copy, in the part's own words."""

    copy: str
    """Its mark from the whole piece down."""
    part: PartId
    surfaces: tuple[Surface, ...]
    """One; for an arris two."""


@dataclass(frozen=True)
class Meeting:
    """Two copies that a joint brings together."""

    assembly: AssemblyId
    """The smallest that holds both."""
    cut_in: SideOf
    takes: SideOf | None = None

    @property
    def marks(self) -> frozenset[str]:
        """Of the two copies; of one where nothing goes in."""
        return frozenset(side.copy for side in (self.cut_in, self.takes) if side)


@dataclass(frozen=True)
class Moves:
    """What a hinge, slide or stay lets move, in one place where it stands; in the directions of the piece."""

    how: Literal["turns", "slides", "is held"]
    stays: str
    """The mark of the copy it is fixed to."""
    goes: str
    """The mark of what moves, from the piece down: an assembly (`LD`) or one copy."""
    at: Point3 | None = None
    """A point on the axis that it turns about."""
    way: tuple[int, int, int] | None = None
    """Which way it slides; or the way of the axis, looking along which it opens clockwise."""
    angle: Fraction | None = None
    """How far it opens, in degrees."""
    travel: Length | None = None
    """How far it slides."""
    tilt: Tilt | None = None
    """How all of this is turned from there, where it doesn't stand square to the piece."""


@dataclass(frozen=True)
class Joint:
    """One statement that gives the parts that meet their matching cuts."""

    id: str
    kind: str
    name: str
    sizes: tuple[CutSize, ...]
    """Its own sizes, those it has by default and those that follow."""
    words: Mapping[str, str]
    """What isn't a size: `stub`, `through`, `centred`."""
    glue: str
    """yes, no, middle or dab."""
    meetings: tuple[Meeting, ...]
    floats: tuple[PartId, ...] = ()
    note: str = ""
    moves: tuple[Moves, ...] = ()
    """One for each place where something moves."""
    unfilled: tuple[SideOf, ...] = ()
    """Sides of `cut_in` that nothing goes into where they stand."""
    unmet: tuple[SideOf, ...] = ()
    """Sides of `takes` that reach nothing where they stand."""
    pieces: int = 0
    """How much of its hardware it takes in the whole piece; 0 where that can't be told."""

    def length_of(self, key: str) -> Length:
        """One of its sizes; 0 where it has none of that name."""
        return next((size.length for size in self.sizes if size.name == key), Length(0))

    @property
    def receivers(self) -> tuple[SideOf, ...]:
        """The sides it cuts, each once: those that something goes into, then those that nothing does."""
        return tuple(dict.fromkeys((*(meeting.cut_in for meeting in self.meetings), *self.unfilled)))

    @property
    def has(self) -> frozenset[str]:
        """The keys of its words and sizes, and `floats` where parts lie loose in it: what is said of a joint
        depends on which it has."""
        loose = ("floats",) if self.floats else ()
        return frozenset((*self.words, *(size.name for size in self.sizes), *loose))


@dataclass(frozen=True)
class Bore:
    """A hole in the wood under a piece of hardware."""

    diameter: Length
    depth: Length | None
    """From the side it sits on; None for right through."""
    along: Length
    """From the middle of the hardware, along its length."""
    across: Length
    """From its middle, across its length; of a hinge, away from the barrel."""
    screw: str = ""
    """The hardware that goes in."""


@dataclass(frozen=True)
class Seated:
    """One piece of hardware in one place where it sits, in the directions of the piece."""

    mark: str
    """Of the copy that it sits on."""
    part: PartId
    side: Surface
    """Of that part, in the author's words."""
    looks: tuple[int, int, int]
    """Which way it stands out."""
    middle: Point3
    """Of what it takes up of that side."""
    room: tuple[Point3, Point3] | None
    """The room it takes; None where its own sizes don't say."""
    is_round: bool = False
    follows: tuple[SizeName, ...] = ()
    """The named sizes its place follows from."""


@dataclass(frozen=True)
class Hardware:
    id: str
    name: str
    size: str = ""
    """As the shop sells it."""
    count: int | None = None
    """How many to have: as said, or else as its places and joints ask; None when neither is known."""
    price: Price | None = None
    note: str = ""
    kind: str = ""
    """hinge, slide, stay, screw, knob …, or nothing."""
    measured: Literal["", "yes", "no"] = ""
    """Whether its sizes were measured on the thing itself; nothing when that isn't said."""
    sizes: tuple[CutSize, ...] = ()
    """length, width, depth, diameter, closed, travel, clearance, pilot: those it has."""
    weight: Fraction | None = None
    """Of one, in kilograms."""
    held_by: str = ""
    """The hardware that holds it."""
    screws: int = 0
    """How many on each side that it is fixed to."""
    bores: tuple[Bore, ...] = ()
    """On each side that it is fixed to."""
    latches: str = ""
    """by itself, by hand, gives when pushed, or nothing."""
    said: int | None = None
    """The count as the author says it."""
    needed: int | None = None
    """What its places and joints come to; None where nothing in the plan asks for it."""
    seated: tuple[Seated, ...] = ()
    on_hand: int = 0
    """How many are there already."""

    def size_of(self, name: str) -> Length | None:
        return next((size.length for size in self.sizes if size.name == name), None)


@dataclass(frozen=True)
class Hanging:
    """How the piece is held to a wall."""

    rail: PartId
    way: Literal["rail", "cleat"]
    fixings: str
    """The hardware that holds it."""
    into: Literal["studs", "solid wall", "other"]
    each_holds: Fraction | None
    """Kilograms that one fixing carries by its maker's word."""
    studs: Length
    """How far apart studs stand, middle to middle."""
    is_studs_assumed: bool
    behind: Length
    """What lies between the piece and what holds."""
    is_behind_assumed: bool
    load: Fraction | None
    """Kilograms put in it; None where what its parts carry is all that is known."""
    note: str = ""


@dataclass(frozen=True)
class StandsFree:
    """How the piece stands on the floor."""

    carries: Fraction | None
    """Kilograms of who stands or sits on it."""
    on: tuple[PartId, ...]
    restrained: bool
    """Whether it is fixed to the wall against tipping."""
    pull: Fraction
    """Kilograms that may hang on an open door or drawer."""
    is_pull_assumed: bool
    note: str = ""


@dataclass(frozen=True)
class Jig:
    id: str
    name: str
    purpose: str = ""
    made_from: str = ""
    note: Prose = ()


@dataclass(frozen=True)
class Finish:
    id: str
    what: str
    coats: int | None = None
    wait: str = ""
    faces: str = ""
    bare: str = ""
    note: str = ""
    on: tuple[PartId | AssemblyId, ...] = ()
    """The parts it goes on before they are glued, the assemblies it goes on after; none where not said."""


@dataclass(frozen=True)
class Change:
    kind: str
    of: str
    was: str
    why: str


@dataclass(frozen=True)
class Origin:
    plan: str = ""
    rights: str = ""
    by: str = ""


@dataclass(frozen=True)
class Air:
    """How damp it is somewhere, as far as it was said; percents and degrees Celsius."""

    climate: str = ""
    """One of the trade's named ones."""
    humidity: tuple[Fraction, Fraction] | None = None
    """Of the air over the year, the driest first."""
    moisture: tuple[Fraction, Fraction] | None = None
    """Of the wood itself; goes before the humidity, which goes before the climate."""
    celsius: Fraction | None = None

    @property
    def says_how_damp(self) -> bool:
        return bool(self.climate or self.humidity or self.moisture)


@dataclass(frozen=True)
class Load:
    """What a part carries."""

    kilograms: Fraction
    per: Length | None
    """For each length of this many mm of the span; None when it is the whole."""
    at: Literal["spread", "middle"]
    ends: Literal["resting", "fixed"]
    span: Length | None
    """Between supports; None when it is the length between the part's shoulders."""
    limit: Fraction | None
    """Sag over span that is let pass; None for the trade's own."""
    follows: tuple[SizeName, ...] = ()


@dataclass(frozen=True)
class Shop:
    tools: tuple[str, ...] = ()
    country: str = ""
    session: str = ""
    pace: Fraction = Fraction(1)
    """How many times as long work takes here as it is reckoned."""
    bench: str = ""
    air: Air = Air()
    sawing: Sawing = field(default_factory=usual_sawing)
    """What cutting boards up is reckoned with."""


@dataclass(frozen=True)
class BuilderAir:
    """One builder's own shop and house, as far as they say."""

    handle: str
    name: str
    file: str
    shop: Air = Air()
    house: Air = Air()


@dataclass(frozen=True)
class HandOver:
    mail: str = ""
    board: str = ""


@dataclass(frozen=True)
class Look:
    theme: str
    language: str
    accent: str = ""
    paper: str = ""


@dataclass(frozen=True)
class DoneTo:
    """One thing that a line of a step's work is done to. Where several of these are said, all hold at once:
    `side shelf_dado` is that joint's cut in that part, `frame tongue` the tongues of that joint."""

    parts: tuple[PartId, ...] = ()
    """More than one where a pattern names them."""
    assemblies: tuple[AssemblyId, ...] = ()
    hardware: tuple[str, ...] = ()
    jigs: tuple[str, ...] = ()
    joints: tuple[str, ...] = ()
    cuts: tuple[CutKind, ...] = ()


@dataclass(frozen=True)
class Job:
    """One line of what a step does."""

    kind: str
    """A job word: mill, cut, dry-assemble, glue up …"""
    parts: tuple[PartId, ...] = ()
    assemblies: tuple[AssemblyId, ...] = ()
    hardware: tuple[str, ...] = ()
    jigs: tuple[str, ...] = ()
    to: tuple[DoneTo, ...] = ()
    """Each thing the line names, in its order, as narrow as it was said."""


Until: TypeAlias = Literal["fitted", "glued", "hung"]


@dataclass(frozen=True)
class Fitted:
    """How a part or assembly comes to its final size: not by its number but by what it has to meet."""

    measured: tuple[PartId | AssemblyId, ...] = ()
    """What it is measured on; nothing where wood is only left on."""
    after: Job | None = None
    """The job after which that can be measured."""
    wider: Length | None = None
    """How much wider it stays until then; None where it isn't cut before it is measured."""
    longer: Length | None = None
    """How much longer; None as well."""
    until: Until = "fitted"
    """What the wood is left on for, where no job says it: it is fitted to what it is measured on, it is glued
    in, its hinges hold it."""
    until_job: Job | None = None
    follows: tuple[SizeName, ...] = ()

    def first_size(self, part: Part) -> tuple[Length, Length] | None:
        """(length, width) a part is cut to first; None where it isn't cut before it is measured."""
        if self.wider is None or self.longer is None:
            return None
        return part.length + self.longer, part.width + self.wider


@dataclass(frozen=True)
class Amiss:
    sign: Prose
    cause: Prose
    cure: Prose


@dataclass(frozen=True)
class Check:
    """Something to tick."""

    key: str
    """Stays the same while the words stay the same, sizes apart: what a tick is kept under."""
    text: Prose


@dataclass(frozen=True)
class Picture:
    file: str
    alt: str
    caption: Prose = ()


@dataclass(frozen=True)
class Step:
    id: StepId
    stage: StageId
    title: Prose
    why: Prose = ()
    does: tuple[Job, ...] = ()
    parts: tuple[PartId, ...] = ()
    """Every part it touches: from `does` (assemblies opened up), from `parts`, from names in its note."""
    tools: tuple[str, ...] = ()
    jigs: tuple[str, ...] = ()
    hardware: tuple[str, ...] = ()
    minutes: int | None = None
    wait: str = ""
    hands: int = 1
    cautions: tuple[Prose, ...] = ()
    checks: tuple[Check, ...] = ()
    amiss: tuple[Amiss, ...] = ()
    ask: tuple[Prose, ...] = ()
    pictures: tuple[Picture, ...] = ()
    note: Prose = ()
    note_pictures: tuple[str, ...] = ()
    file: str = ""
    """Where it is written, from the project's folder: `steps/03-mill.md`."""


@dataclass(frozen=True)
class Stage:
    id: StageId
    title: Prose
    about: Prose
    steps: tuple[StepId, ...]


@dataclass(frozen=True)
class Reply:
    by: str
    when: str
    text: Prose


@dataclass(frozen=True)
class Question:
    id: str
    step: StepId
    by: str
    when: str
    status: Literal["open", "answered"]
    title: Prose
    text: Prose
    replies: tuple[Reply, ...] = ()


@dataclass(frozen=True)
class Plan:
    id: str
    title: Prose
    about: Prose
    edition: str
    """The author's name for this edition of the plan; may be empty."""
    units: System
    precision: Precision
    projection: Literal["third angle", "first angle"]
    currency: str
    origin: Origin
    shop: Shop
    sizes: Mapping[SizeName, Size]
    stock: Mapping[StockId, Stock]
    parts: Mapping[PartId, Part]
    assemblies: Mapping[AssemblyId, Assembly]
    piece: AssemblyId | None
    """The assembly that is the whole piece; None while nothing is placed."""
    joints: Mapping[str, Joint]
    shapes: Mapping[str, Shape]
    copies: tuple[Copy, ...]
    """Every copy that stands in the piece, in the order written."""
    hardware: Mapping[str, Hardware]
    jigs: Mapping[str, Jig]
    finish: Mapping[str, Finish]
    changes: tuple[Change, ...]
    cautions: tuple[Prose, ...]
    words: Mapping[str, str]
    ask: HandOver
    look: Look
    stages: Mapping[StageId, Stage]
    """In the order of work."""
    steps: Mapping[StepId, Step]
    """In the order of work."""
    questions: Mapping[str, Question]
    pictures: tuple[str, ...]
    """Every picture file the project shows."""
    used_sizes: Names = NO_NAMES
    """The sizes that something uses: a formula, a part, a place, a text."""
    house: Air = Air()
    """The house the piece will stand in."""
    woods: Woods = field(default_factory=woods)
    """The trade's table with the author's own woods over it."""
    builder_airs: tuple[BuilderAir, ...] = ()
    """Of the builders who say something of theirs."""
    loads: Mapping[PartId, Load] = field(default_factory=dict)
    fitted: Mapping[PartId | AssemblyId, Fitted] = field(default_factory=dict)
    """Parts and assemblies that get their final size at the bench."""
    hanging: Hanging | None = None
    standing: StandsFree | None = None
    rates: Rates = field(default_factory=Rates)
    """What amounts are reckoned with."""
    boards: tuple[Board, ...] = ()
    """Those that are there already."""
    spares: Mapping[PartId, int] = field(default_factory=dict)
    """How many more of a part are cut than the piece needs."""
    test_pieces: Mapping[str, TestPiece] = field(default_factory=dict)
    matches: Mapping[str, Match] = field(default_factory=dict)
    chosen_at_the_bench: tuple[PartId, ...] = ()
    """Parts that are alike until they are chosen by eye and marked."""
