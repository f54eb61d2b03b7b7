"""The tables of the plan language for how a piece is held, and the load it is for."""

from __future__ import annotations

from benchalong.reading.language import Key, Kind, Table

WAYS = ("rail", "cleat")
INTO = ("studs", "solid wall", "other")
RESTRAINED = ("yes", "no")

HANGING = Table(
    "a way to hang",
    (
        Key("rail", Kind.NAME, "the part that the fixings go through: `hanging_rail`", required=True),
        Key(
            "way", Kind.WORD, "through a rail, or with a cleat hooked over its fellow on the wall", words=WAYS
        ),
        Key(
            "fixings",
            Kind.NAME,
            "the hardware that holds it to the wall; its count is how many",
            required=True,
        ),
        Key("into", Kind.WORD, "what they hold in; studs unless said", words=INTO),
        Key("each_holds", Kind.BURDEN, "what the fixing's maker lets one carry, for other walls than studs"),
        Key("studs", Kind.FORMULA, "how far apart the studs stand; as is usual in the country unless said"),
        Key("behind", Kind.FORMULA, "what lies between the piece and what holds; wallboard unless said"),
        Key("load", Kind.BURDEN, "all that is put in it; what its parts carry unless said"),
        Key("note", Kind.TEXT, "a word about it"),
    ),
    where="`hanging:` in project.yaml, for a piece that hangs on a wall",
)

STANDING = Table(
    "a way to stand",
    (
        Key("carries", Kind.BURDEN, "who stands or sits on it: `120 kg`"),
        Key("on", Kind.NAMES, "the parts that are stood or sat on"),
        Key("restrained", Kind.WORD, "whether it is fixed to the wall against tipping", words=RESTRAINED),
        Key("pull", Kind.BURDEN, "what may hang on an open door or drawer; a child of 50 lb unless said"),
        Key("note", Kind.TEXT, "a word about it"),
    ),
    where="`standing:` in project.yaml, for a piece that stands on the floor",
)
