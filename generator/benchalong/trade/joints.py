"""What the trade says of each kind of joint: what it is, what its sizes are called, what shops keep to.

The practice is common, with no source but shops; each line is told as such and never as a rule.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class Practice:
    """One line of common practice; where it names lengths, once in inches and once in millimetres."""

    inch: str
    millimetre: str = ""
    """The same as in inches when left out."""


@dataclass(frozen=True)
class Kind:
    """A kind of joint in words."""

    about: str
    """What it is, in a sentence or two."""
    holds: str
    """What the side that is cut does to the other, between their names: `takes`, `meets`."""
    sizes: Mapping[str, str]
    """What its sizes are called, by key, in the order in which a person sets them."""
    first: tuple[str, ...]
    """The sizes to know at the bench, in short."""
    practice: tuple[Practice, ...] = ()


PLAY = "Play, on each side"

KINDS: Mapping[str, Kind] = {
    "tongue and groove": Kind(
        "A tongue left standing along one part goes into a groove along the other. Where it holds a frame, "
        "the panel lies loose in the same grooves.",
        "takes",
        {
            "width": "Groove, width",
            "depth": "Groove, depth",
            "across": "Groove, from the face",
            "tongue_width": "Tongue, thickness",
            "tongue_length": "Tongue, length",
            "play": PLAY,
            "end_play": "Room left beyond the tongue",
            "stop_by": "Stops short by",
            "panel_side_play": "Room beside the panel, at each edge",
            "panel_end_play": "Room beside the panel, at each end",
        },
        ("width", "depth", "tongue_length"),
        (
            Practice("A groove is about a third as wide as its part is thick, and runs in the middle."),
            Practice(
                "A groove for a panel is 1/4 to 3/8 in deep, and no deeper than half the part.",
                "A groove for a panel is 6 to 10 mm deep, and no deeper than half the part.",
            ),
            Practice("All grooves of a set are cut at one setting, with the same face against the fence."),
            Practice(
                "A solid panel is never glued into its grooves: it swells and shrinks across the grain."
            ),
        ),
    ),
    "dado": Kind(
        "A channel across one part takes the end or edge of another at its full thickness.",
        "takes",
        {
            "width": "Channel, width",
            "depth": "Channel, depth",
            "reach": "How far the other goes in",
            "play": PLAY,
            "end_play": "Room left at the bottom",
            "stop_by": "Stops short by",
            "notch": "Corner taken off at the stop, width",
        },
        ("width", "depth", "reach"),
        (
            Practice(
                "A dado is about a third as deep as its part is thick, and seldom deeper than half of it."
            ),
            Practice(
                "Fit its width to the very board that goes in: sheets are often thinner than they are called."
            ),
            Practice(
                "Wood between a dado and the end of its part is kept to 1/4 in or more; short grain breaks.",
                "Wood between a dado and the end of its part is kept to 6 mm or more; short grain breaks.",
            ),
        ),
    ),
    "rabbet": Kind(
        "A step cut along an edge or end takes the other part.",
        "takes",
        {"width": "Step, width in the face", "depth": "Step, depth into the thickness", "play": PLAY},
        ("width", "depth"),
        (
            Practice(
                "A rabbet is as wide as what lies in it is thick, and half to two thirds as deep as its part."
            ),
        ),
    ),
    "mortise and tenon": Kind(
        "The end of one part is cut back to a tenon, which goes into a mortise in the other.",
        "takes",
        {
            "thickness": "Tenon, thickness",
            "width": "Tenon, width",
            "tenon_length": "Tenon, length",
            "shoulder": "Shoulder at each edge",
            "haunch_width": "Haunch, width",
            "haunch_length": "Haunch, length",
            "mortise_width": "Mortise, width",
            "mortise_length": "Mortise, length",
            "depth": "Mortise, depth",
            "across": "Tenon, from the face",
            "play": PLAY,
            "end_play": "Room left beyond the tenon",
        },
        ("thickness", "width", "tenon_length", "depth"),
        (
            Practice(
                "A tenon is about a third as thick as its part: the size of the nearest chisel or cutter."
            ),
            Practice(
                "A tenon is two to three times as long as it is thick, or two thirds of what it goes into."
            ),
            Practice(
                "A mortise is 1/16 to 1/8 in deeper than its tenon is long.",
                "A mortise is 1.5 to 3 mm deeper than its tenon is long.",
            ),
            Practice("It goes together by hand, and stays when it is lifted."),
        ),
    ),
    "half lap": Kind(
        "Two parts cross or meet, each cut to part of its thickness, and lie in each other.",
        "meets",
        {"depth": "Taken from the first", "play": PLAY},
        ("depth",),
        (Practice("Each gives half, so that both faces come out level."),),
    ),
    "mitre": Kind(
        "Both ends are cut at half the angle of the corner. A spline, if there is one, is a loose tongue "
        "across it.",
        "meets",
        {
            "spline_thickness": "Spline, thickness",
            "spline_width": "Spline, width",
            "spline_depth": "Groove for the spline, depth in each side",
            "play": PLAY,
            "end_play": "Room left beyond each edge of the spline",
        },
        ("spline_thickness", "spline_depth", "spline_width"),
        (
            Practice("Glue on end grain holds poorly: a mitre alone is for what carries nothing."),
            Practice("The grain of a spline runs across the joint, or it splits along it."),
        ),
    ),
    "box joint": Kind(
        "Straight fingers on one end go between straight fingers on the other.",
        "meets",
        {"finger": "Finger, width", "play": PLAY},
        ("finger",),
        (Practice("Make a pair of test pieces first: the play of every finger adds up."),),
    ),
    "dovetail": Kind(
        "Wedge-shaped tails on one end go between pins on the other, and can't be pulled apart one way.",
        "meets",
        {
            "slope": "Slope",
            "pin": "Pin, width at its narrow side",
            "tail_length": "Tail, length",
            "lap": "Wood left in front",
            "play": PLAY,
        },
        ("slope", "pin", "tail_length", "lap"),
        (
            Practice("Slope 1 in 8 for hardwood, 1 in 6 for softwood."),
            Practice(
                "A half-blind one leaves 1/8 to 1/4 in of wood in front.",
                "A half-blind one leaves 3 to 6 mm of wood in front.",
            ),
        ),
    ),
    "butt": Kind(
        "Two parts meet plainly, with nothing let in: held by screws, nails, dowels, or glue alone.",
        "meets",
        {
            "every": "At most so far apart",
            "from_end": "First one, from each end",
            "clearance": "Hole it passes through",
            "pilot": "Pilot hole",
            "pilot_depth": "Pilot hole, depth",
            "dowel": "Dowel, diameter",
            "dowel_depth": "Dowel hole, depth on each side",
            "play": PLAY,
        },
        ("clearance", "pilot", "pilot_depth", "dowel", "dowel_depth"),
        (
            Practice("Glue alone on end grain holds poorly."),
            Practice("A dowel is a third to half as thick as its part. There are at least two in a joint."),
            Practice(
                "Never screw or glue a wide board tight across its grain: from about 4 in it needs room to "
                "move.",
                "Never screw or glue a wide board tight across its grain: from about 100 mm it needs room "
                "to move.",
            ),
        ),
    ),
    "hinge": Kind(
        "One part turns on the other. Each loses the place for its leaf, cut to the hinge as measured.",
        "carries",
        {
            "length": "Leaf, length",
            "width": "Leaf, width",
            "closed": "Both leaves, closed",
            "gain": "Depth let in on each side",
            "gap": "Gap between the two, closed",
            "set": "Hinge, from each end",
            "play": PLAY,
        },
        ("length", "width", "gain", "gap"),
        (
            Practice("Measure the hinge in your hand before you cut for it."),
            Practice("Set one screw in each leaf first, try it, then drill the others."),
        ),
    ),
    "slide": Kind(
        "One part pulls out along the other.",
        "carries",
        {
            "travel": "Pulls out by",
            "clearance": "Room between the two sides",
            "width": "Its groove, width",
            "depth": "Its groove, depth",
            "play": PLAY,
        },
        ("travel", "clearance"),
        (Practice("Measure the slide in your hand before you cut for it: makers differ."),),
    ),
    "stay": Kind(
        "It holds a lid or flap, and lets it open so far.",
        "holds",
        {
            "apart": "Apart",
            "cut_in_at": "Its plate on what stays, along",
            "cut_in_across": "Its plate on what stays, across",
            "takes_at": "Its plate on what moves, along",
            "takes_across": "Its plate on what moves, across",
            "play": PLAY,
        },
        (),
        (Practice("Hold the lid at its full opening and mark the holes from the stay itself."),),
    ),
}

NEEDED: Mapping[str, tuple[str, ...]] = {
    "stop_by": ("stopped",),
    "notch": ("stopped",),
    "panel_side_play": ("floats",),
    "panel_end_play": ("floats",),
    "end_play of mitre": ("spline_thickness",),
    "spline_depth": ("spline_thickness",),
    "spline_width": ("spline_thickness",),
    "clearance of butt": ("hardware",),
    "pilot": ("hardware",),
    "pilot_depth": ("hardware",),
    "every": ("hardware", "dowel"),
    "from_end": ("hardware", "dowel"),
    "dowel_depth": ("dowel",),
}
"""Sizes that mean something only where the joint has one of these: a word, another size, a loose panel."""

FACTS: Mapping[str, str] = {
    "stopped": "Stops short of",
    "hardware": "Held with",
    "count": "How many in each place",
    "tails": "Tails",
    "barrel": "Barrel looks",
    "opens": "Opens",
    "pulls": "Pulls out",
}
"""What a joint says in words and that its name doesn't say already."""

MOVING = ("hinge", "slide", "stay")
"""Kinds that let something move, and that nobody would glue."""

CUTS: Mapping[tuple[str, str], str] = {
    ("hinge", "mortise"): "Gain",
    ("mitre", "bevel"): "Mitre",
    ("mitre", "taper"): "Mitre",
    ("half lap", "notch"): "Half lap",
    ("half lap", "groove"): "Half lap",
    ("half lap", "dado"): "Half lap",
    ("half lap", "rabbet"): "Half lap",
}
"""What a kind of joint calls a kind of cut; else the cut goes by its own kind."""

GLUE: Mapping[str, str] = {
    "yes": "Yes",
    "no": "None",
    "middle": "In the middle only, so that the rest can move",
    "dab": "A dab, to keep it from rattling",
}
"""How it is glued, after the word glue."""

GLUED: Mapping[str, str] = {
    "yes": "Glued",
    "no": "Not glued",
    "middle": "Glued in the middle only, so that the rest can move",
    "dab": "A dab of glue, to keep it from rattling",
}
"""The same as a sentence."""


def called(kind: str, words: Mapping[str, str], has: frozenset[str]) -> str:
    """`Mortise and tenon, haunched`; `has` as for `is_told`."""
    which = words.get("tenon") or words.get("dovetail") or ""
    if kind == "mitre":
        which = "splined" if "spline_thickness" in has else "plain"
    return f"{kind[:1].upper()}{kind[1:]}{f', {which}' if which else ''}"


def is_told(kind: str, key: str, has: frozenset[str]) -> bool:
    """Whether a size means something in a joint that has these words, sizes and loose parts."""
    needed = NEEDED.get(f"{key} of {kind}") or NEEDED.get(key, ())
    return not needed or any(one in has for one in needed)
