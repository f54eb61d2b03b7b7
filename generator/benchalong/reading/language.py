"""The plan language: every table an author may write, every key in it, and what each key holds.

This is the one place that says so. From it come the readers' required keys and closed lists of
words, "is not a key of …" with the nearest right word, and the reference in the README.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from enum import Enum
from functools import cached_property

from benchalong.reading.written import CUT_KINDS, DIRECTIONS, SURFACES
from benchalong.trade.moisture import CLIMATES
from benchalong.trade.waste import GRADES


class Kind(Enum):
    """What a key holds; the value says it to an author."""

    TEXT = "text"
    PROSE = "text, with live sizes"
    MARKDOWN = "Markdown, with live sizes"
    FORMULA = "a size or a formula"
    COUNT = "a whole number"
    WORD = "one of a few words"
    NAME = "a name"
    SLUG = "small letters, digits and hyphens"
    HANDLE = "a handle: letters, digits, hyphens"
    DATE = "a date, year first: 2026-03-02"
    MAIL = "a mail address"
    WEB = "a web address, https://…"
    NUMBER = "a number"
    SESSION = "a length of time, `3 hours`, `90 minutes` or `an evening`"
    PACE = "a number above zero, `1.5`"
    PERCENT = "a share, `45 %`"
    PERCENTS = "two shares, `30 % to 60 %`"
    TEMPERATURE = "a temperature, `20 C` or `68 F`"
    BURDEN = "a weight, `20 kg` or `4 oz`, or one for each length, `25 lb per ft`"
    SHEET = "two sizes, `48 in x 96 in`"
    POINT = "three sizes, [right, back, up]"
    SURFACES = "one surface, or for an arris two in a list"
    TEXTS = "a list of texts"
    PROSES = "a list of texts, with live sizes"
    NAMES = "a name, or a list of names"
    FORMULAS = "names, each with a size or a formula"
    LENGTHS = "a size, or a list of sizes in brackets"
    COUNTS = "names, each with a whole number"
    WORDS = "words, each with a text"
    SWAPS = "names, each with another name"
    TABLE = "a table"
    TABLES = "a list of tables"
    NAMED = "names, each with a table"
    JOBS = "a list of jobs, each with what it is done to"
    CORNERS = "a list of corners, [along, across]"
    LEAVE = "a size, or a size and until when: `1/16 in until hung`"


@dataclass(frozen=True)
class Key:
    name: str
    kind: Kind
    meaning: str
    """One line for the reference, and after "expected" when a required key is missing."""
    required: bool = False
    words: tuple[str, ...] = ()
    """The closed list of a WORD; for a formula, words that may stand in its place."""


@dataclass(frozen=True, eq=False)
class Table:
    """One table of the language."""

    called: str
    """With its article: `a part`."""
    keys: tuple[Key, ...]
    where: str = ""
    """Where it stands, for the reference."""
    shorthand: str = ""
    """The key that a bare text stands for: `stile: 2 in` is `stile: {is: 2 in}`."""
    chosen_by: str = ""
    """The key whose value says which of `variants` it is."""
    variants: Mapping[str, Table] = field(default_factory=dict)

    @cached_property
    def by_name(self) -> dict[str, Key]:
        return {key.name: key for key in self.keys}

    @cached_property
    def required(self) -> tuple[Key, ...]:
        return tuple(key for key in self.keys if key.required)

    @property
    def noun(self) -> str:
        """Without its article: `part`."""
        return self.called.split(" ", 1)[1]


UNITS = ("inch", "millimetre")
YES_NO = ("yes", "no", "true", "false")
PROJECTIONS = ("third angle", "first angle")
STOCK_KINDS = ("board", "sheet", "turned", "bought")
SAWN = ("flat", "quarter", "rift")
MIRRORS = ("left to right", "front to back", "top to bottom")
STATUS = ("open", "answered")
REMOVES = ("outside", "inside")
CHANGE_KINDS = ("size", "joint", "stock", "part", "assembly")
JOBS = (
    "rough cut", "split rough", "flatten", "resaw", "rest", "mill", "choose and mark", "rip", "crosscut",
    "cut", "test piece", "dry-assemble",
    "measure and fit", "glue up", "flush", "sand", "drill", "fit hardware", "finish", "hang", "make jig",
)  # fmt: skip
LOAD_AT = ("spread", "middle")
LOAD_ENDS = ("resting", "fixed")
CENTRED, THROUGH = ("centred",), ("through",)
HARDWARE_KINDS = (
    "hinge", "slide", "stay", "screw", "nail", "dowel", "bolt", "knob", "pull", "catch", "latch", "lock",
    "foot", "hanger", "bracket", "plug", "other",
)  # fmt: skip
MEASURED = ("yes", "no")
SEAT_LIES = ("along", "across")
LATCHES = ("by itself", "by hand", "gives when pushed")

ORIGIN = Table(
    "an origin",
    (
        Key("plan", Kind.TEXT, "the plan this one was made from"),
        Key("rights", Kind.TEXT, "who may do what with it"),
        Key("by", Kind.TEXT, "whose plan it was"),
    ),
    where="`origin:` in project.yaml",
)

SIZE = Table(
    "a size",
    (
        Key("is", Kind.FORMULA, "the size, or the formula it follows from", required=True),
        Key("note", Kind.TEXT, "a word about it"),
    ),
    where="each name under `sizes:`",
    shorthand="is",
)

SHOP = Table(
    "a shop",
    (
        Key("tools", Kind.TEXTS, "the machines and tools at hand"),
        Key("country", Kind.TEXT, "where the shop stands, for local codes"),
        Key("session", Kind.SESSION, "how long a session lasts, `3 hours` or `an evening`"),
        Key(
            "pace",
            Kind.PACE,
            "how many times as long work takes here as it is reckoned; 1.5 is half as long again, 1 unless "
            "said",
        ),
        Key("bench", Kind.TEXT, "the bench there is"),
        Key(
            "made_at",
            Kind.PERCENT,
            "the wood's moisture while it is worked, as a meter shows it; 8 % unless said",
        ),
        Key(
            "humidity",
            Kind.PERCENT,
            "how damp the shop's air is; the moisture follows from it where it isn't said",
        ),
        Key("temperature", Kind.TEMPERATURE, "how warm that air is; 20 C unless said"),
        Key("kerf", Kind.FORMULA, "how wide the saw cuts; 1/8 in or 3.2 mm unless said"),
        Key("trim", Kind.FORMULA, "what comes off each end of a board; 1 in or 25 mm unless said"),
        Key(
            "turns",
            Kind.COUNT,
            "in how many directions one after the other a board may be cut; 2 unless said, 3 for sheets",
        ),
        Key("allowances", Kind.TABLE, "how much larger than finished a part is cut out"),
        Key("resaw", Kind.TABLE, "what sawing a board into leaves takes"),
        Key("jointer", Kind.TABLE, "what the jointer takes"),
        Key("planer", Kind.TABLE, "what the thickness planer takes"),
        Key("car", Kind.FORMULA, "the longest board that goes into the car"),
    ),
    where="`shop:` in project.yaml",
)

HOUSE = Table(
    "a house",
    (
        Key("climate", Kind.WORD, "what the house is like over the year", words=tuple(CLIMATES)),
        Key(
            "humidity",
            Kind.PERCENTS,
            "how damp its air is in the driest month and in the dampest; goes before the climate",
        ),
        Key("moisture", Kind.PERCENTS, "what the wood in it comes to, as a meter shows it; goes before both"),
        Key("temperature", Kind.TEMPERATURE, "how warm that air is; 20 C unless said"),
    ),
    where="`house:` in project.yaml, where the piece will stand",
)

SPECIES = Table(
    "a species",
    (
        Key("name", Kind.TEXT, "what it is called; otherwise its own name in words"),
        Key("also", Kind.TEXTS, "other names it goes by"),
        Key("radial", Kind.NUMBER, "shrinkage across the rings, green to ovendry, in percent"),
        Key("tangential", Kind.NUMBER, "shrinkage along the rings, in percent"),
        Key("volumetric", Kind.NUMBER, "shrinkage of the volume, in percent"),
        Key("moves_radial", Kind.NUMBER, "change for each percent of moisture across the rings: `0.0013`"),
        Key("moves_tangential", Kind.NUMBER, "change for each percent of moisture along the rings"),
        Key("gravity", Kind.NUMBER, "specific gravity at 12 % moisture: `0.5`"),
        Key("stiffness", Kind.NUMBER, "modulus of elasticity at 12 % moisture, in GPa"),
        Key("source", Kind.TEXT, "where the numbers come from", required=True),
        Key("note", Kind.TEXT, "a word about it"),
    ),
    where="each name under `species:`, to add a wood or to correct one of the table's",
)

RATES = Table(
    "a rate",
    (
        Key("finish", Kind.NUMBER, "square metres that a litre covers in one coat; 8.5 unless said"),
        Key("wasted", Kind.PERCENT, "finish left in brush and tin; 10 % unless said"),
        Key("glue", Kind.NUMBER, "grams of glue on a square metre of joint; 180 unless said"),
        Key("squeezed_out", Kind.PERCENT, "glue that comes out of the joint, on top; a third unless said"),
        Key(
            "clamp_every",
            Kind.FORMULA,
            "how far apart clamps stand along a joint; 10 in or 250 mm unless said",
        ),
        Key("lift", Kind.BURDEN, "what one person lifts alone at most; 25 kg unless said"),
    ),
    where="`rates:` in project.yaml, where the trade's usual ones don't suit",
)

LOAD = Table(
    "a load",
    (
        Key("is", Kind.BURDEN, "how heavy it is", required=True),
        Key("at", Kind.WORD, "where it lies; spread unless said", words=LOAD_AT),
        Key("ends", Kind.WORD, "how the ends are held; resting unless said", words=LOAD_ENDS),
        Key("span", Kind.FORMULA, "how far it is between supports; otherwise the length between shoulders"),
        Key("limit", Kind.FORMULA, "how far it may sag, as a share of the span; `1/600` unless said"),
    ),
    where="`load:` of a part that carries something",
    shorthand="is",
)

STOCK = Table(
    "a stock",
    (
        Key("kind", Kind.WORD, "what it is bought as", required=True, words=STOCK_KINDS),
        Key("name", Kind.TEXT, "what it is called; otherwise its own name in words"),
        Key("species", Kind.TEXT, "the wood"),
        Key("sawn", Kind.WORD, "how the board was sawn from the log", words=SAWN),
        Key("buy", Kind.TEXT, "the trade size: `4/4`, `27 mm`"),
        Key("thickness", Kind.FORMULA, "how thick it is called"),
        Key("measured", Kind.FORMULA, "how thick it measures; the plan works with this"),
        Key("sheet", Kind.SHEET, "the two sides of a sheet"),
        Key("grain", Kind.TEXT, "of a sheet: `along 96 in`, or `none`"),
        Key("price", Kind.TEXT, "what it costs: `9.80 per board foot`"),
        Key("grade", Kind.WORD, "how it is graded; the waste follows from it", words=GRADES),
        Key("waste", Kind.PERCENT, "how much is bought on top of what the parts take: `30 %`"),
        Key("sold_in", Kind.LENGTHS, "the lengths it is sold in: `[8 ft, 10 ft]`"),
        Key("board_width", Kind.FORMULA, "how wide its boards are; 6 in or 150 mm unless said"),
        Key("moisture", Kind.PERCENT, "how damp it may be when it is bought, by the meter: `8 %`"),
        Key(
            "restless",
            Kind.WORD,
            "whether it moves when it is cut: split rough, rest, flatten later",
            words=YES_NO,
        ),
        Key("allowances", Kind.TABLE, "how much larger than finished its parts are cut out"),
        Key("note", Kind.TEXT, "a word about it"),
    ),
    where="each name under `stock:`",
)

FITTING = Table(
    "a fitting",
    (
        Key("measured", Kind.NAMES, "the part or assembly it is measured on", required=True),
        Key("after", Kind.TEXT, "the job after which that can be measured: `glue up case`"),
    ),
    where="`cut_when:` of a part or assembly that gets its final size at the bench",
    shorthand="measured",
)
_CUT_WHEN = Key("cut_when", Kind.TABLE, "what it is measured on before it gets its final size")
LEAVE = Table(
    "what is left on",
    (
        Key("is", Kind.LEAVE, "how much wider and longer it stays, and until when: `1/16 in until hung`"),
        Key("width", Kind.FORMULA, "how much wider, where that differs"),
        Key("length", Kind.FORMULA, "how much longer, where that differs"),
        Key("until", Kind.TEXT, "hung, fitted, glued, or a job: `glue up case`"),
    ),
    where="`leave:` of a part or assembly that gets its final size at the bench",
    shorthand="is",
)
_LEAVE = Key("leave", Kind.TABLE, "what stays on until then: `1/16 in until hung`")

PART = Table(
    "a part",
    (
        Key("name", Kind.TEXT, "what it is called; otherwise its own name in words"),
        Key("stock", Kind.NAME, "the stock it is made from", required=True),
        Key("thickness", Kind.FORMULA, "face to back; otherwise the stock's thickness"),
        Key("width", Kind.FORMULA, "across the grain, edge to edge", required=True),
        Key(
            "length", Kind.FORMULA, "along the grain, end to end, tongues and tenons included", required=True
        ),
        Key("count", Kind.COUNT, "how many, when none of them is placed"),
        Key("mark", Kind.TEXT, "what is written on it at the bench"),
        Key(
            "glued_up",
            Kind.TEXT,
            "`true`, `no`, `strips of at most 5 in`, `two boards`; unsaid: where boards are too narrow",
        ),
        Key("resaw", Kind.COUNT, "into how many leaves a board may be sawn for it, face to back: `2`"),
        Key("rough_with", Kind.NAME, "another part that it stays in one piece with until both are milled"),
        Key("for", Kind.TEXT, "what it is for"),
        Key("face", Kind.TEXT, "which side is meant to be seen"),
        Key("load", Kind.TABLE, "what it carries, for shelves and rails: `20 kg`"),
        Key("cuts", Kind.TABLES, "what is taken away from it"),
        _CUT_WHEN,
        _LEAVE,
        Key("note", Kind.TEXT, "a word about it"),
    ),
    where="each name under `parts:`",
)

CORNER = Table(
    "a corner",
    (
        Key("at", Kind.POINT, "where it stands: [from end a, from edge a]", required=True),
        Key("round", Kind.FORMULA, "the radius it is rounded with"),
    ),
    where="each of an outline's `corners:`, when it is rounded; otherwise [from end a, from edge a] alone",
)

_ALL_CUTS = (
    Key("cut", Kind.WORD, "what kind of cut", required=True, words=CUT_KINDS),
    Key("name", Kind.TEXT, "what it is called; otherwise its kind"),
    Key("note", Kind.TEXT, "a word about it"),
)
_ON = Key("on", Kind.SURFACES, "the surface it is cut into", required=True)
_ON_ARRIS = Key("on", Kind.SURFACES, "the arris it is cut along: [edge or end, face or back]", required=True)
_ON_NOTCH = Key(
    "on", Kind.SURFACES, "the edge or end it is cut into; for a corner [end, edge]", required=True
)


def _size(name: str, meaning: str, *, required: bool = True, words: tuple[str, ...] = ()) -> Key:
    return Key(name, Kind.FORMULA, meaning, required=required, words=words)


def _cut(kind: str, *keys: Key) -> Table:
    called = f"{'an' if kind[0] in 'aeiou' else 'a'} {kind}"
    return Table(called, (*_ALL_CUTS[:1], *keys, *_ALL_CUTS[1:]), where=f"`cut: {kind}` in a part's `cuts:`")


CUTS: dict[str, Table] = {
    "groove": _cut(
        "groove",
        _ON,
        _size("width", "how wide"),
        _size("depth", "how deep"),
        _size("across", "to its near wall; centred unless said", required=False, words=CENTRED),
        _size("from", "where it begins; otherwise at the end", required=False),
        _size("to", "where it ends; otherwise at the other end", required=False),
    ),
    "dado": _cut(
        "dado",
        _ON,
        _size("at", "from end a to its near wall", words=CENTRED),
        _size("width", "how wide"),
        _size("depth", "how deep"),
        _size("from", "from edge a to where it begins; otherwise at the edge", required=False),
        _size("to", "from edge a to where it ends; otherwise at the other edge", required=False),
    ),
    "rabbet": _cut(
        "rabbet",
        _ON_ARRIS,
        _size("width", "how far it reaches into the face"),
        _size("depth", "how far it reaches into the thickness"),
        _size("from", "where it begins; otherwise at the end", required=False),
        _size("to", "where it ends; otherwise at the other end", required=False),
    ),
    "tongue": _cut(
        "tongue",
        _ON,
        _size("thickness", "how thick the tongue is"),
        _size("length", "how far it stands"),
        _size(
            "across", "from the face to its near cheek; centred unless said", required=False, words=CENTRED
        ),
    ),
    "tenon": _cut(
        "tenon",
        _ON,
        _size("thickness", "cheek to cheek"),
        _size("width", "across the grain"),
        _size("length", "how far it stands"),
        _size(
            "across", "from the face to its near cheek; centred unless said", required=False, words=CENTRED
        ),
        _size("at", "from edge a to its near edge; centred unless said", required=False, words=CENTRED),
    ),
    "mortise": _cut(
        "mortise",
        _ON,
        _size("width", "wall to wall"),
        _size("length", "end to end"),
        _size("depth", "how deep, or `through`", words=THROUGH),
        _size("at", "to its near end", words=CENTRED),
        _size("across", "to its near wall; centred unless said", required=False, words=CENTRED),
    ),
    "hole": _cut(
        "hole",
        _ON,
        _size("diameter", "how wide"),
        _size("depth", "how deep, or `through`", words=THROUGH),
        _size("at", "to its centre, along the run", words=CENTRED),
        _size("across", "to its centre, across the run; centred unless said", required=False, words=CENTRED),
    ),
    "notch": _cut(
        "notch",
        _ON_NOTCH,
        _size("length", "along the grain"),
        _size("width", "across the grain"),
        _size("at", "to its near wall; not for a corner", required=False, words=CENTRED),
    ),
    "bevel": _cut(
        "bevel",
        _ON_ARRIS,
        _size("width", "how far it reaches into the face"),
        _size("depth", "how far it reaches down"),
    ),
    "taper": _cut(
        "taper",
        _ON,
        _size("from", "from end a to where nothing is taken yet"),
        _size("to", "from end a to where all of it is taken"),
        _size("takes", "how much wood is taken at `to`"),
    ),
    "outline": _cut(
        "outline",
        Key("corners", Kind.CORNERS, "the corners of the shape, in order", required=True),
        Key(
            "removes", Kind.WORD, "which side of the shape is taken away; outside unless said", words=REMOVES
        ),
    ),
}
"""Each kind of cut and its own keys."""

CUT = Table(
    "a cut",
    tuple(
        {
            key.name: replace(key, required=key.name == "cut")
            for table in CUTS.values()
            for key in table.keys
        }.values()
    ),
    chosen_by="cut",
    variants=CUTS,
)
"""A cut whose kind isn't known yet: every key that any kind takes."""

FACES, EDGES, ENDS = SURFACES[:2], SURFACES[2:4], SURFACES[4:]
CUT_SURFACES: dict[str, tuple[tuple[tuple[str, ...], ...], ...]] = {
    "groove": ((SURFACES,),),
    "dado": ((FACES,),),
    "rabbet": ((EDGES + ENDS, FACES),),
    "tongue": ((EDGES + ENDS,),),
    "tenon": ((ENDS,),),
    "mortise": ((SURFACES,),),
    "hole": ((SURFACES,),),
    "notch": ((EDGES + ENDS,), (ENDS, EDGES)),
    "bevel": ((EDGES + ENDS, FACES),),
    "taper": ((EDGES + FACES,),),
    "outline": (),
}
"""What `on:` may name for each kind of cut: one surface out of a group, or two out of two groups."""

SIDES_OF_ROOM = ("left", "right", "front", "back", "bottom", "top")
TURNED = Table(
    "a turn",
    (
        Key(
            "clockwise",
            Kind.FORMULA,
            "by how many degrees: `15`; below zero the other way round",
            required=True,
        ),
        Key(
            "seen_from",
            Kind.WORD,
            "from which side that is clockwise: left, right, front, back, bottom or top",
            required=True,
            words=SIDES_OF_ROOM,
        ),
        Key(
            "about",
            Kind.WORD,
            "what stays where it is: the middle of the room it takes up, the left, front, bottom corner, "
            "or the middle of one of its sides; the middle unless said",
            words=("middle", "corner", *SIDES_OF_ROOM),
        ),
    ),
    where="`turned:` of a place, for what doesn't stand square; it is placed first and turned then",
)

PLACE = Table(
    "a place",
    (
        Key("part", Kind.NAME, "the part that stands here"),
        Key("assembly", Kind.NAME, "or the assembly that stands here"),
        Key("mark", Kind.TEXT, "this copy's own mark"),
        Key(
            "at",
            Kind.POINT,
            "left, front, bottom corner of the room it takes up: [right, back, up]; none for what `fits`. "
            "Each a size, or where it stands by what is there: `right of SL`, `left of SR`, `behind BK`, "
            "`in front of BK`, `on CB`, `under CT`, `between SL and SR` (in the middle), `middle of CB`, "
            "`flush with front of SL`, `in from front of SL by 1/8 in`, `against front of BK`. "
            "After these `by 1/16 in` leaves room, and `into shelf_dado` goes in as far as that joint takes",
        ),
        Key(
            "count",
            Kind.COUNT,
            "how many stand here in a row, marked S1, S2 …; in `at` then `spread between SL and SR` (equal "
            "room between them all), or after a place `every 10 in` (from one to the next) or "
            "`leaving 1 in` (clear room between them)",
        ),
        Key("touches", Kind.NAMES, "marks of what it should stand against; the check says where it doesn't"),
        Key("turned", Kind.TABLE, "how it is turned once it is placed, where it doesn't stand square"),
        Key("along", Kind.WORD, "of a part: which way its length points", words=DIRECTIONS),
        Key("face", Kind.WORD, "of a part: which way its face looks", words=DIRECTIONS),
        Key("mirror", Kind.WORD, "the mirror image; along and face say how it ends up", words=MIRRORS),
    ),
    where="each of an assembly's `place:`",
)

ASSEMBLY = Table(
    "an assembly",
    (
        Key("name", Kind.TEXT, "what it is called; otherwise its own name in words"),
        Key("place", Kind.TABLES, "what stands where in it", required=True),
        _CUT_WHEN,
        _LEAVE,
        Key("note", Kind.TEXT, "a word about it"),
    ),
    where="each name under `assemblies:`",
)

HARDWARE_HOLE = Table(
    "a hole for hardware",
    (
        Key("diameter", Kind.FORMULA, "how wide; the pilot hole of its screw unless said"),
        Key("depth", Kind.FORMULA, "how deep, or `through`; as long as its screw unless said", words=THROUGH),
        Key("along", Kind.FORMULA, "from the hardware's middle, along its length; 0 unless said"),
        Key("across", Kind.FORMULA, "from its middle, across its length; of a hinge, away from the barrel"),
        Key("screw", Kind.NAME, "the screw that goes in"),
    ),
    where="each of a piece of hardware's `holes:`",
)

SEAT = Table(
    "a seat",
    (
        Key(
            "on",
            Kind.TEXTS,
            "the side it sits on: `door_stile face`, or one copy's: `LD/M face`",
            required=True,
        ),
        Key("at", Kind.FORMULA, "to its middle, along that side; centred unless said", words=CENTRED),
        Key("across", Kind.FORMULA, "to its middle, across that side; centred unless said", words=CENTRED),
        Key("lies", Kind.WORD, "which way its length lies on that side; along unless said", words=SEAT_LIES),
        Key("only", Kind.TEXTS, "the only copies it sits on, by mark: `LD/M`"),
    ),
    where="each of a piece of hardware's `sits:`",
)

HARDWARE = Table(
    "a piece of hardware",
    (
        Key("name", Kind.TEXT, "what it is called; otherwise its own name in words"),
        Key("kind", Kind.WORD, "what kind of thing", words=HARDWARE_KINDS),
        Key("size", Kind.TEXT, "as the shop sells it"),
        Key("measured", Kind.WORD, "whether its sizes were measured on the thing itself", words=MEASURED),
        Key("length", Kind.FORMULA, "how long it is; of a hinge, its leaf"),
        Key("width", Kind.FORMULA, "how wide it is; of a hinge, its leaf from the barrel"),
        Key("depth", Kind.FORMULA, "how far it stands out; of a slide, the room it takes between the sides"),
        Key("diameter", Kind.FORMULA, "of a round one; of a screw, its shank"),
        Key("closed", Kind.FORMULA, "of a hinge: both leaves together with the hinge closed"),
        Key("travel", Kind.FORMULA, "of a slide: how far it pulls out"),
        Key("clearance", Kind.FORMULA, "of a screw: the hole it goes through; from its diameter unless said"),
        Key("pilot", Kind.FORMULA, "of a screw: the hole it holds in; from its diameter unless said"),
        Key("weight", Kind.BURDEN, "what one weighs: `40 g`"),
        Key("held_by", Kind.NAME, "the screw that holds it"),
        Key("screws", Kind.COUNT, "how many screws in each; of a hinge, in each leaf"),
        Key("holes", Kind.TABLES, "the holes it takes, where they aren't its screws in a row"),
        Key("latches", Kind.WORD, "of a latch or catch: how it lets go", words=LATCHES),
        Key("sits", Kind.TABLES, "where it sits, a line for each place"),
        Key("count", Kind.COUNT, "how many; as its places and joints ask unless said"),
        Key("on_hand", Kind.COUNT, "how many are there already and needn't be bought"),
        Key("price", Kind.TEXT, "what it costs: `4.20 each`"),
        Key("note", Kind.TEXT, "a word about it"),
    ),
    where="each name under `hardware:`",
)

JIG = Table(
    "a jig",
    (
        Key("name", Kind.TEXT, "what it is called; otherwise its own name in words"),
        Key("for", Kind.TEXT, "what it is for"),
        Key("made_from", Kind.TEXT, "what it is made from"),
        Key("note", Kind.MARKDOWN, "how it is made"),
    ),
    where="each name under `jigs:`",
)

FINISH = Table(
    "a finish",
    (
        Key("what", Kind.TEXT, "what goes on", required=True),
        Key("coats", Kind.COUNT, "how many coats"),
        Key("wait", Kind.TEXT, "how long between coats"),
        Key("on", Kind.NAMES, "the parts it goes on before they are glued, or the assemblies, after"),
        Key("faces", Kind.TEXT, "where it goes"),
        Key("bare", Kind.TEXT, "what stays bare"),
        Key("note", Kind.TEXT, "a word about it"),
    ),
    where="each name under `finish:`",
)

CHANGE = Table(
    "a change",
    (
        Key("size", Kind.NAME, "the size that was changed"),
        Key("joint", Kind.NAME, "or the joint"),
        Key("stock", Kind.NAME, "or the stock"),
        Key("part", Kind.NAME, "or the part"),
        Key("assembly", Kind.NAME, "or the assembly"),
        Key("was", Kind.TEXT, "what it was in the plan this one comes from"),
        Key("why", Kind.TEXT, "why it was changed"),
    ),
    where="each of `changes:`",
)

HAND_OVER = Table(
    "a way to ask",
    (
        Key("mail", Kind.MAIL, "where questions may be mailed"),
        Key("board", Kind.WEB, "the club's own board"),
    ),
    where="`ask:` in project.yaml",
)

LOOK = Table(
    "a look",
    (
        Key("theme", Kind.TEXT, "the theme's name"),
        Key("language", Kind.TEXT, "the language the project is written in: `en`"),
        Key("accent", Kind.TEXT, 'the colour of links and buttons: `"#2f5d50"`'),
        Key("paper", Kind.TEXT, "the pages' own colour in light"),
    ),
    where="`look:` in project.yaml",
)

STAGE = Table(
    "a stage",
    (
        Key("title", Kind.PROSE, "what the stage is called", required=True),
        Key("about", Kind.MARKDOWN, "what happens in it"),
    ),
    where="each name under `stages:`, in the order of work",
)

PROJECT = Table(
    "a project",
    (
        Key("title", Kind.PROSE, "what the piece is called", required=True),
        Key("id", Kind.SLUG, "the project's short name; otherwise made from the title"),
        Key("about", Kind.MARKDOWN, "what it is"),
        Key("edition", Kind.TEXT, "the author's name for this edition of the plan"),
        Key("units", Kind.WORD, "the system the author thinks in", required=True, words=UNITS),
        Key("nearest", Kind.FORMULA, "how finely sizes are shown; 1/32 in or 0.5 mm unless said"),
        Key("nearest_other", Kind.FORMULA, "the same for the other system; 0.1 mm or 1/32 in unless said"),
        Key("currency", Kind.TEXT, "what prices are in"),
        Key("projection", Kind.WORD, "how the views of a drawing are arranged", words=PROJECTIONS),
        Key("piece", Kind.NAME, "the assembly that is the whole piece"),
        Key("origin", Kind.TABLE, "where the plan comes from"),
        Key("sizes", Kind.NAMED, "the named sizes"),
        Key("shop", Kind.TABLE, "the shop it is built in"),
        Key("house", Kind.TABLE, "the house it will stand in"),
        Key("species", Kind.NAMED, "woods the table lacks, or has wrong"),
        Key("rates", Kind.TABLE, "how much is reckoned for a job"),
        Key("stock", Kind.NAMED, "what parts are made from"),
        Key("boards", Kind.TABLES, "the boards and sheets that are there already"),
        Key("parts", Kind.NAMED, "the parts"),
        Key("spares", Kind.COUNTS, "how many more of a part are cut than the piece needs: `{door_stile: 1}`"),
        Key("test_pieces", Kind.NAMED, "pieces milled with the parts, to try settings on"),
        Key("matches", Kind.NAMED, "parts that must come from one board, or match"),
        Key(
            "chosen_at_the_bench", Kind.NAMES, "parts that are alike until they are chosen by eye and marked"
        ),
        Key("joints", Kind.NAMED, "what gives parts that meet their matching cuts"),
        Key("assemblies", Kind.NAMED, "what is joined together, and where it stands"),
        Key("hardware", Kind.NAMED, "hinges, screws, knobs"),
        Key("hanging", Kind.TABLE, "how it is held to a wall, and the load it is for"),
        Key("standing", Kind.TABLE, "how it stands on the floor, and who it carries"),
        Key("jigs", Kind.NAMED, "what is made to help with the work"),
        Key("finish", Kind.NAMED, "what goes on the wood"),
        Key("changes", Kind.TABLES, "what was changed from the plan it comes from"),
        Key("cautions", Kind.PROSES, "what holds for the whole build"),
        Key("words", Kind.WORDS, "words of the trade, each with what it means"),
        Key("ask", Kind.TABLE, "where a builder's question may go"),
        Key("look", Kind.TABLE, "how the pages look"),
        Key("stages", Kind.NAMED, "the chapters of the build"),
    ),
    where="`project.yaml`",
)

AMISS = Table(
    "a thing that goes amiss",
    (
        Key("sign", Kind.PROSE, "what is seen", required=True),
        Key("cause", Kind.PROSE, "what it comes from"),
        Key("cure", Kind.PROSE, "what to do then"),
    ),
    where="each of a step's `amiss:`",
)

PICTURE = Table(
    "a picture",
    (
        Key("file", Kind.TEXT, "the file: `pictures/glue-up.jpg`", required=True),
        Key("alt", Kind.TEXT, "what is seen in it, for those who can't", required=True),
        Key("caption", Kind.PROSE, "a line under it"),
    ),
    where="each of a step's `pictures:`",
)

STEP = Table(
    "a step",
    (
        Key("stage", Kind.NAME, "the stage it belongs to", required=True),
        Key("title", Kind.PROSE, "what is done", required=True),
        Key("why", Kind.PROSE, "why it is done"),
        Key(
            "does",
            Kind.JOBS,
            "the jobs: `mill: [door_stile, door_rail]`; also a joint, a pattern (`door_*`), or words that "
            "narrow each other (`cut: frame tongue`, `cut: side shelf_dado`)",
        ),
        Key("parts", Kind.NAMES, "parts it touches besides"),
        Key("tools", Kind.TEXTS, "tools it takes"),
        Key("jigs", Kind.NAMES, "jigs it takes"),
        Key("hardware", Kind.NAMES, "hardware it takes"),
        Key("minutes", Kind.COUNT, "how long it takes"),
        Key("wait", Kind.TEXT, "how long to wait after it"),
        Key("hands", Kind.COUNT, "how many people it takes"),
        Key("cautions", Kind.PROSES, "what can hurt, said before the work"),
        Key("checks", Kind.PROSES, "what to tick"),
        Key("amiss", Kind.TABLES, "what goes wrong: sign, cause, cure"),
        Key("ask", Kind.PROSES, "what the author asks the builders"),
        Key("pictures", Kind.TABLES, "pictures of it"),
    ),
    where="between the two `---` lines of `steps/NN-name.md`; Markdown follows",
)

QUESTION = Table(
    "a question",
    (
        Key("step", Kind.NAME, "the step it is about", required=True),
        Key("by", Kind.HANDLE, "who asks", required=True),
        Key("when", Kind.DATE, "the day it was asked", required=True),
        Key("status", Kind.WORD, "open unless said", words=STATUS),
        Key("title", Kind.PROSE, "the question in a line", required=True),
    ),
    where="the first block of `questions/ID.md`; Markdown follows",
)

REPLY = Table(
    "a reply",
    (
        Key("by", Kind.HANDLE, "who answers", required=True),
        Key("when", Kind.DATE, "the day it was answered", required=True),
    ),
    where="each further block of `questions/ID.md`; Markdown follows",
)

BUILDER = Table(
    "a builder",
    (
        Key("name", Kind.TEXT, "what the others call them"),
        Key("sizes", Kind.FORMULAS, "sizes they change"),
        Key("stock", Kind.SWAPS, "parts they make from another stock"),
        Key("boards", Kind.TABLES, "the boards they have"),
        Key("tools", Kind.TEXTS, "the tools they own"),
        Key(
            "humidity",
            Kind.TEXT,
            "how damp their shop is, and the house: `45 % in the shop, 30 % to 60 % in the house`",
        ),
        Key("house", Kind.TABLE, "the house theirs will stand in, where it isn't the project's"),
        Key("measured", Kind.FORMULAS, "sizes as they came out at the bench"),
        Key("note", Kind.TEXT, "a word about it"),
    ),
    where="`builders/HANDLE.yaml`",
)
