"""What the author wrote, as plain data: names and texts, nothing worked out.

One class a table of the plan language, one field a key. A `Formula` is a text in the plan's
arithmetic that nobody has parsed yet; a `Name` leads to something defined elsewhere in the project.
Where a value stands in its file is in the `Marks` beside (paths follow keys and indices as typed).
A value that could not be read is left at its default; the problem has been reported by then.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal, TypeAlias

from benchalong.ground.lengths import Length
from benchalong.ground.prose import WrittenProse

Formula: TypeAlias = str
Name: TypeAlias = str

PROJECT_FILE = "project.yaml"

HARDWARE_SIZES = ("length", "width", "depth", "diameter", "closed", "travel", "clearance", "pilot")

CUT_KINDS = (
    "groove", "dado", "rabbet", "tongue", "tenon", "mortise", "hole", "notch", "bevel", "taper", "outline",
)  # fmt: skip
SURFACES = ("face", "back", "edge a", "edge b", "end a", "end b")
DIRECTIONS = ("right", "left", "front", "back", "up", "down")


@dataclass(frozen=True)
class Origin:
    plan: str = ""
    rights: str = ""
    by: str = ""


@dataclass(frozen=True)
class Size:
    """`stile: 2 3/8 in`, or `stile: {is: 2 3/8 in, note: as wide as two fingers}`."""

    formula: Formula
    note: str = ""


@dataclass(frozen=True)
class Allowance:
    """How much larger than finished something is cut out; None where the author said nothing."""

    length: Formula | None = None
    width: Formula | None = None
    thickness: Formula | None = None


@dataclass(frozen=True)
class Stock:
    kind: str = ""
    """board, sheet, turned, bought."""
    name: str = ""
    species: str = ""
    sawn: str = ""
    """flat, quarter, rift, or nothing."""
    buy: str = ""
    """A trade size, not arithmetic: `4/4`, `1x6`, `27 mm`."""
    thickness: Formula | None = None
    measured: Formula | None = None
    sheet: tuple[Formula, Formula] | None = None
    """The two sides of `48 in x 96 in`."""
    grain: str = ""
    """For sheets: `along 96 in`, or `none`."""
    price: str = ""
    """`9.80 per board foot`, `42 per sheet`."""
    grade: str = ""
    waste: Fraction | None = None
    """Percent."""
    sold_in: tuple[Formula, ...] = ()
    board_width: Formula | None = None
    moisture: Fraction | None = None
    """Percent."""
    restless: str = ""
    """yes, no or nothing."""
    allowances: Allowance = Allowance()
    note: str = ""


@dataclass(frozen=True)
class Burden:
    """A weight that something carries."""

    kilograms: Fraction
    per: Length | None = None
    """For each length of this many mm; None when it is the whole."""


@dataclass(frozen=True)
class Rates:
    """What the author reckons with, where it isn't the trade's usual."""

    finish: Fraction | None = None
    """Square metres a litre."""
    wasted: Fraction | None = None
    """Percent."""
    glue: Fraction | None = None
    """Grams a square metre."""
    squeezed_out: Fraction | None = None
    """Percent."""
    clamp_every: Formula | None = None
    lift: Burden | None = None


@dataclass(frozen=True)
class Load:
    """What a part carries, and how."""

    burden: Burden | None = None
    at: str = ""
    """spread or middle."""
    ends: str = ""
    """resting or fixed."""
    span: Formula | None = None
    limit: Formula | None = None


@dataclass(frozen=True)
class Corner:
    """A corner of a shaped outline: from end a, from edge a, and the radius it is rounded with."""

    along: Formula
    across: Formula
    round: Formula | None = None


@dataclass(frozen=True)
class Cut:
    """One cut of a part's own. Which keys a kind takes stands in `language.py`, what they mean in `plan/`."""

    kind: str
    surfaces: tuple[str, ...] = ()
    """What `on:` names: one surface, or for an arris two."""
    sizes: Mapping[str, Formula] = field(default_factory=dict)
    """Lengths by key: width, depth, length, thickness, diameter, at, across, start, stop …; a word such as
    `centred` or `through` stays the word."""
    corners: tuple[Corner, ...] = ()
    """For an outline."""
    removes: str = ""
    """For an outline: `outside` or `inside`."""
    name: str = ""
    note: str = ""


@dataclass(frozen=True)
class Fitting:
    """What a part or assembly is measured on before it gets its final size."""

    measured: tuple[Name, ...] = ()
    after: str = ""
    """A job in words: `glue up case`."""


@dataclass(frozen=True)
class Leave:
    """What is left on, in width and in length, until when."""

    both: str = ""
    """As typed: `1/16 in until hung`."""
    width: Formula | None = None
    length: Formula | None = None
    until: str = ""


@dataclass(frozen=True)
class Part:
    name: str = ""
    stock: Name = ""
    thickness: Formula | None = None
    width: Formula | None = None
    length: Formula | None = None
    count: int | None = None
    mark: str = ""
    glued_up: str = ""
    resaw: int | None = None
    rough_with: Name = ""
    purpose: str = ""
    """`for:` in the file: what it's for."""
    shows: str = ""
    """Which side is meant to be seen, in words: `face: front of the door`."""
    load: Load | None = None
    cuts: tuple[Cut, ...] = ()
    cut_when: Fitting | None = None
    leave: Leave | None = None
    note: str = ""


@dataclass(frozen=True)
class Joint:
    """One statement that gives the parts that meet their cuts. Which keys a kind takes stands in
    `joint_language.py`; the meaning in `plan/joints`."""

    kind: str = ""
    cut_in: tuple[str, ...] = ()
    """Sides: a part or mark, then words for its side: `door_stile inner edge`, `LD/H edge b`."""
    takes: tuple[str, ...] = ()
    floats: tuple[Name, ...] = ()
    only: tuple[str, ...] = ()
    sizes: Mapping[str, Formula] = field(default_factory=dict)
    words: Mapping[str, str] = field(default_factory=dict)
    """By key: what is not a size. `tenon: through`, `stopped: front edge`, `hardware: butt_hinge`."""
    name: str = ""
    glue: str = ""
    note: str = ""


@dataclass(frozen=True)
class Turned:
    """How something is turned after it is placed."""

    clockwise: Formula = ""
    """Degrees; may end in the word."""
    seen_from: str = ""
    """front, back, left, right, top, bottom."""
    about: str = ""
    """What of its room stays where it is: middle, corner, or the middle of a side; middle unless said."""


@dataclass(frozen=True)
class Place:
    kind: Literal["part", "assembly"]
    of: Name
    mark: str = ""
    at: tuple[Formula, Formula, Formula] | None = ("0", "0", "0")
    """Each a formula, or a relation: `between SL and SR`. None for a part whose place follows from what
    it fits."""
    along: str = ""
    """Which way the length points; parts only."""
    face: str = ""
    """Which way the face looks; parts only."""
    mirror: str = ""
    """`left to right`, `front to back`, `top to bottom`, or nothing."""
    count: int | None = None
    """How many stand here in a row; None for one."""
    touches: tuple[Name, ...] = ()
    """Marks of what it should stand against."""
    turned: Turned | None = None


@dataclass(frozen=True)
class Assembly:
    name: str = ""
    place: tuple[Place, ...] = ()
    cut_when: Fitting | None = None
    leave: Leave | None = None
    note: str = ""


@dataclass(frozen=True)
class HardwareHole:
    """A hole in the wood under a piece of hardware; counted from its middle."""

    diameter: Formula | None = None
    depth: Formula | None = None
    """`through` stays the word."""
    along: Formula | None = None
    across: Formula | None = None
    screw: Name = ""


@dataclass(frozen=True)
class Seat:
    """Where a piece of hardware sits."""

    on: tuple[str, ...] = ()
    """Sides: `door_stile face`, `LD/M face`."""
    at: Formula | None = None
    """`centred` stays the word, here and below."""
    across: Formula | None = None
    lies: str = "along"
    only: tuple[str, ...] = ()


@dataclass(frozen=True)
class Hardware:
    name: str = ""
    kind: str = ""
    """hinge, slide, screw, knob …, or nothing."""
    size: str = ""
    measured: str = ""
    """yes, no, or nothing."""
    sizes: Mapping[str, Formula] = field(default_factory=dict)
    """length, width, depth, diameter, closed, travel, clearance, pilot: those that are said."""
    weight: Burden | None = None
    held_by: Name = ""
    screws: int | None = None
    holes: tuple[HardwareHole, ...] = ()
    latches: str = ""
    """by itself, by hand, gives when pushed, or nothing."""
    sits: tuple[Seat, ...] = ()
    count: int | None = None
    on_hand: int | None = None
    price: str = ""
    note: str = ""


@dataclass(frozen=True)
class Hanging:
    """How it is held to a wall."""

    rail: Name = ""
    way: str = "rail"
    """rail or cleat."""
    fixings: Name = ""
    into: str = "studs"
    """studs, solid wall or other."""
    each_holds: Burden | None = None
    studs: Formula | None = None
    behind: Formula | None = None
    load: Burden | None = None
    note: str = ""


@dataclass(frozen=True)
class Standing:
    """How it stands on the floor."""

    carries: Burden | None = None
    on: tuple[Name, ...] = ()
    restrained: str = "no"
    """yes or no."""
    pull: Burden | None = None
    note: str = ""


@dataclass(frozen=True)
class Jig:
    name: str = ""
    purpose: str = ""
    """`for:` in the file."""
    made_from: str = ""
    note: WrittenProse = ()


@dataclass(frozen=True)
class Finish:
    what: str = ""
    coats: int | None = None
    wait: str = ""
    on: tuple[Name, ...] = ()
    faces: str = ""
    bare: str = ""
    """What stays bare."""
    note: str = ""


@dataclass(frozen=True)
class Change:
    """What this plan changes from the one it came from."""

    kind: str = ""
    """size, joint, stock, part or assembly."""
    of: Name = ""
    was: str = ""
    why: str = ""


@dataclass(frozen=True)
class Air:
    """How damp it is somewhere; percents, degrees Celsius."""

    climate: str = ""
    """A named one."""
    humidity: tuple[Fraction, Fraction] | None = None
    moisture: tuple[Fraction, Fraction] | None = None
    """Of the wood."""
    celsius: Fraction | None = None


@dataclass(frozen=True)
class Jointer:
    width: Formula | None = None
    shortest: Formula | None = None
    narrowest: Formula | None = None


@dataclass(frozen=True)
class Planer:
    width: Formula | None = None
    shortest: Formula | None = None
    thinnest: Formula | None = None


@dataclass(frozen=True)
class Resaw:
    kerf: Formula | None = None
    clean_up: Formula | None = None


@dataclass(frozen=True)
class Sawing:
    """What cutting out is reckoned with; nothing where the trade's usual holds."""

    kerf: Formula | None = None
    trim: Formula | None = None
    turns: int | None = None
    allowances: Mapping[str, Allowance] = field(default_factory=dict)
    """By `all`, `board`, `sheet`, `turned`, `glued_up`."""
    resaw: Resaw = Resaw()
    jointer: Jointer = Jointer()
    planer: Planer = Planer()
    car: Formula | None = None


@dataclass(frozen=True)
class TestPiece:
    """A piece milled with the parts, to try settings on."""

    __test__ = False  # its name makes pytest think it were a test

    stock: Name = ""
    thickness: Formula | None = None
    width: Formula | None = None
    length: Formula | None = None
    count: int = 1
    name: str = ""
    purpose: str = ""
    """`for:` in the file."""


@dataclass(frozen=True)
class Match:
    """Parts that come from one board, or match."""

    parts: tuple[str, ...] = ()
    """Parts, or marks of copies."""
    how: str = ""
    show_side: str = ""
    note: str = ""


@dataclass(frozen=True)
class Shop:
    tools: tuple[str, ...] = ()
    country: str = ""
    session: str = ""
    pace: Fraction | None = None
    bench: str = ""
    air: Air = Air()
    sawing: Sawing = Sawing()


@dataclass(frozen=True)
class Wood:
    """A species as the author knows it."""

    name: str = ""
    also: tuple[str, ...] = ()
    radial: Fraction | None = None
    tangential: Fraction | None = None
    volumetric: Fraction | None = None
    moves_radial: Fraction | None = None
    moves_tangential: Fraction | None = None
    gravity: Fraction | None = None
    stiffness: Fraction | None = None
    source: str = ""
    note: str = ""


@dataclass(frozen=True)
class HandOver:
    """Where a builder's question may go besides text and file: `ask: {mail: …, board: …}`."""

    mail: str = ""
    board: str = ""


@dataclass(frozen=True)
class Look:
    theme: str = ""
    language: str = "en"
    accent: str = ""
    paper: str = ""
    """The page's ground colour in light mode."""


@dataclass(frozen=True)
class Stage:
    title: WrittenProse = ()
    about: WrittenProse = ()


@dataclass(frozen=True)
class Amiss:
    sign: WrittenProse = ()
    cause: WrittenProse = ()
    cure: WrittenProse = ()


@dataclass(frozen=True)
class Does:
    """One line of a step's `does:`: a kind of job and what it is done to."""

    job: str
    to: tuple[Name, ...] = ()


@dataclass(frozen=True)
class Picture:
    file: str = ""
    """Inside the project, with forward slashes: `pictures/glue-up.jpg`."""
    alt: str = ""
    caption: WrittenProse = ()


@dataclass(frozen=True)
class Step:
    id: str
    """The file's name without number and ending: `steps/03-mill-all.md` is `mill-all`."""
    file: str
    number: int
    stage: Name = ""
    title: WrittenProse = ()
    why: WrittenProse = ()
    does: tuple[Does, ...] = ()
    parts: tuple[Name, ...] = ()
    """Parts the step touches besides those in `does`."""
    tools: tuple[str, ...] = ()
    jigs: tuple[Name, ...] = ()
    hardware: tuple[Name, ...] = ()
    minutes: int | None = None
    wait: str = ""
    hands: int = 1
    cautions: tuple[WrittenProse, ...] = ()
    checks: tuple[WrittenProse, ...] = ()
    check_sources: tuple[str, ...] = ()
    """The checks as typed, before live sizes: what a tick is remembered by."""
    amiss: tuple[Amiss, ...] = ()
    ask: tuple[WrittenProse, ...] = ()
    pictures: tuple[Picture, ...] = ()
    note: WrittenProse = ()
    note_pictures: tuple[str, ...] = ()
    """Files that the note itself shows."""


@dataclass(frozen=True)
class Reply:
    by: str = ""
    when: str = ""
    text: WrittenProse = ()


@dataclass(frozen=True)
class Question:
    id: str
    file: str
    step: Name = ""
    by: str = ""
    when: str = ""
    """A date, `2026-03-02`."""
    status: str = "open"
    """open or answered."""
    title: WrittenProse = ()
    text: WrittenProse = ()
    replies: tuple[Reply, ...] = ()


@dataclass(frozen=True)
class Defect:
    """A rectangle of a board to keep clear of."""

    at: tuple[Formula, Formula] | None = None
    """From end a, from edge a."""
    length: Formula | None = None
    width: Formula | None = None
    what: str = ""


@dataclass(frozen=True)
class Board:
    """A board or sheet that is there already, in the project or with a builder."""

    stock: Name = ""
    length: Formula | None = None
    width: Formula | None = None
    thickness: Formula | None = None
    count: int = 1
    defects: tuple[Defect, ...] = ()
    sapwood: str = ""
    """`edge a 1 in`."""
    price: str = ""
    note: str = ""


@dataclass(frozen=True)
class Builder:
    """One builder's edition, read and checked; `comparing/` will lay it over the project."""

    handle: str
    file: str
    name: str = ""
    sizes: Mapping[Name, Formula] = field(default_factory=dict)
    stock: Mapping[Name, Name] = field(default_factory=dict)
    """Part to the stock it is made from instead."""
    boards: tuple[Board, ...] = ()
    tools: tuple[str, ...] = ()
    humidity: str = ""
    house: Air = Air()
    measured: Mapping[Name, Formula] = field(default_factory=dict)
    note: str = ""


@dataclass(frozen=True)
class Project:
    title: WrittenProse = ()
    id: str = ""
    about: WrittenProse = ()
    edition: str = ""
    units: Literal["inch", "millimetre"] = "inch"
    nearest: Formula | None = None
    nearest_other: Formula | None = None
    currency: str = ""
    projection: str = "third angle"
    piece: Name = ""
    """The assembly that is the whole piece; may be left out when only one stands in no other."""
    origin: Origin = Origin()
    sizes: Mapping[Name, Size] = field(default_factory=dict)
    shop: Shop = Shop()
    house: Air = Air()
    species: Mapping[Name, Wood] = field(default_factory=dict)
    rates: Rates = Rates()
    stock: Mapping[Name, Stock] = field(default_factory=dict)
    boards: tuple[Board, ...] = ()
    spares: Mapping[Name, int] = field(default_factory=dict)
    test_pieces: Mapping[Name, TestPiece] = field(default_factory=dict)
    matches: Mapping[Name, Match] = field(default_factory=dict)
    chosen_at_the_bench: tuple[Name, ...] = ()
    parts: Mapping[Name, Part] = field(default_factory=dict)
    joints: Mapping[Name, Joint] = field(default_factory=dict)
    assemblies: Mapping[Name, Assembly] = field(default_factory=dict)
    hardware: Mapping[Name, Hardware] = field(default_factory=dict)
    hanging: Hanging | None = None
    standing: Standing | None = None
    jigs: Mapping[Name, Jig] = field(default_factory=dict)
    finish: Mapping[Name, Finish] = field(default_factory=dict)
    changes: tuple[Change, ...] = ()
    cautions: tuple[WrittenProse, ...] = ()
    words: Mapping[str, str] = field(default_factory=dict)
    ask: HandOver = HandOver()
    look: Look = Look()
    stages: Mapping[Name, Stage] = field(default_factory=dict)
    steps: tuple[Step, ...] = ()
    """In the order of their numbers."""
    questions: tuple[Question, ...] = ()
    builders: tuple[Builder, ...] = ()
    pictures: tuple[str, ...] = ()
    """Every picture file in the project."""
