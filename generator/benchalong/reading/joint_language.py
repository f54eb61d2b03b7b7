"""The tables of the plan language for joints: one table a kind, all with the same few words in common.

`cut_in` is what loses wood to receive, `takes` is what enters. What a size comes to when it isn't
written stands in `plan/joints/sizes.py`, since that is meaning.
"""

from __future__ import annotations

from dataclasses import replace

from benchalong.reading.language import CENTRED, Key, Kind, Table

JOINT_KINDS = (
    "tongue and groove", "dado", "rabbet", "mortise and tenon", "half lap", "mitre", "box joint", "dovetail",
    "butt", "hinge", "slide", "stay",
)  # fmt: skip
GLUE = ("yes", "no", "middle", "dab")
TENONS = ("stub", "through", "haunched")
DOVETAILS = ("through", "half-blind")
LOOKS = ("left", "right", "front", "back", "up", "down")

NO_JOINTS = ("hinge", "slide", "stay")
"""Kinds that nobody calls joints."""

_FIRST = (
    Key("kind", Kind.WORD, "what kind of joint", required=True, words=JOINT_KINDS),
    Key("cut_in", Kind.TEXTS, "the sides that lose wood to receive: `door_stile inner edge`", required=True),
    Key("takes", Kind.TEXTS, "the sides that enter: `door_rail both ends`", required=True),
)
_LAST = (
    Key("only", Kind.TEXTS, "the only copies it is for, by mark: `LD/H`"),
    Key("name", Kind.TEXT, "what it is called; otherwise its own name in words"),
    Key("glue", Kind.WORD, "whether it is glued", words=GLUE),
    Key("play", Kind.FORMULA, "the room left on purpose, on each side"),
    Key("note", Kind.TEXT, "a word about it"),
)


def _size(name: str, meaning: str, *, words: tuple[str, ...] = (), required: bool = False) -> Key:
    return Key(name, Kind.FORMULA, meaning, required=required, words=words)


def _joint(kind: str, *keys: Key, needs_takes: bool = True) -> Table:
    called = f"a {kind}" if kind in NO_JOINTS else f"a {kind.removesuffix(' joint')} joint"
    first = tuple(
        replace(key, required=False) if key.name == "takes" and not needs_takes else key for key in _FIRST
    )
    return Table(called, (*first, *keys, *_LAST), where=f"`kind: {kind}` under `joints:`")


_END_PLAY = _size("end_play", "room left beyond the end of what enters")
_ACROSS = _size("across", "from the face to the near wall; centred unless said", words=CENTRED)
_STOPPED = Key("stopped", Kind.TEXT, "the side it stops short of: `front edge`")
_STOP_BY = _size("stop_by", "how far short of it")

JOINTS: dict[str, Table] = {
    "tongue and groove": _joint(
        "tongue and groove",
        _size("width", "of the groove, wall to wall"),
        _size("depth", "of the groove"),
        _END_PLAY,
        _ACROSS,
        _STOPPED,
        _STOP_BY,
        Key("floats", Kind.NAMES, "a panel that lies loose in the grooves"),
        _size(
            "panel_side_play",
            "room beside the panel, across its grain; what its wood needs in its house where the panel's "
            "width is `fits` and nothing is said, else 1/8 in or 3 mm",
            words=("by movement",),
        ),
        _size("panel_end_play", "room beside the panel, along its grain"),
    ),
    "dado": _joint(
        "dado",
        _size("width", "wall to wall; what enters and its play unless said"),
        _size("depth", "how deep"),
        _END_PLAY,
        _STOPPED,
        _STOP_BY,
        _size("notch", "how wide the corner is that what enters loses at the stop"),
    ),
    "rabbet": _joint(
        "rabbet",
        _size("width", "how far it reaches into the face"),
        _size("depth", "how far it reaches into the thickness"),
    ),
    "mortise and tenon": _joint(
        "mortise and tenon",
        Key("tenon", Kind.WORD, "which kind; stub unless said", words=TENONS),
        _size("thickness", "of the tenon, cheek to cheek"),
        _size("shoulder", "what the tenon leaves at each edge of its part"),
        _size("width", "of the tenon, across the grain; what the shoulders leave unless said"),
        _size("depth", "of the mortise; of a through one, how far the tenon reaches"),
        _END_PLAY,
        _size("across", "from the tenoned part's face to the near cheek; centred unless said", words=CENTRED),
        _size("haunch_length", "how far the haunch stands"),
        _size("haunch_width", "how wide the haunch is: from the tenon to the outer edge"),
    ),
    "half lap": _joint("half lap", _size("depth", "taken from what is cut in; half unless said")),
    "mitre": _joint(
        "mitre",
        _size("spline_thickness", "of a loose tongue across the mitre; none unless said"),
        _size("spline_depth", "how deep its groove goes into each side"),
        _size("end_play", "room left beyond each edge of the spline"),
    ),
    "box joint": _joint("box joint", _size("finger", "how wide each finger is")),
    "dovetail": _joint(
        "dovetail",
        Key("dovetail", Kind.WORD, "which kind; through unless said", words=DOVETAILS),
        Key("tails", Kind.COUNT, "how many tails; one for each two tail lengths of width unless said"),
        _size("slope", "one over how steep: 1/8 for hardwood, 1/6 for softwood"),
        _size("pin", "how wide a pin is at its narrow side"),
        _size("lap", "of a half-blind one: the wood left in front"),
    ),
    "butt": _joint(
        "butt",
        Key("hardware", Kind.NAME, "the screw, nail or dowel it is held with; glue alone unless said"),
        Key("count", Kind.COUNT, "how many in each place; as `every` asks unless said"),
        _size("every", "how far apart they are at most"),
        _size("from_end", "from each end to the first"),
        _size("clearance", "the hole in what it goes through, `cut_in`; 0 for none; the screw's unless said"),
        _size("pilot", "the hole in what it holds in, `takes`; 0 for none; the screw's unless said"),
        _size("pilot_depth", "how deep the pilot hole goes"),
        _size("dowel", "of a dowel: its diameter"),
        _size("dowel_depth", "how deep it goes on each side"),
    ),
    "hinge": _joint(
        "hinge",
        Key("hardware", Kind.NAME, "the hinge"),
        _size("length", "of the leaf, as measured; the hardware's unless said"),
        _size("width", "of the leaf from the barrel, as measured; the hardware's unless said"),
        _size("closed", "both leaves together, the hinge closed, as measured; the hardware's unless said"),
        _size("gap", "between the two sides when it is closed"),
        _size("set", "from each end of what turns to the hinge"),
        Key("count", Kind.COUNT, "how many; two unless said, three above 1 m"),
        Key("barrel", Kind.WORD, "which way the barrel looks; to the front unless said", words=LOOKS),
        Key("opens", Kind.TEXT, "how far it opens: `110 degrees`; 90 unless said"),
    ),
    "slide": _joint(
        "slide",
        Key("hardware", Kind.NAME, "the slide"),
        Key("pulls", Kind.WORD, "which way it pulls out; to the front unless said", words=LOOKS),
        _size("travel", "how far it pulls out; the hardware's unless said"),
        _size("clearance", "the room it takes between the two sides; the hardware's depth, or its play"),
        _size("width", "of its groove, where it is let in"),
        _size("depth", "of its groove, where it is let in"),
    ),
    "stay": _joint(
        "stay",
        Key("hardware", Kind.NAME, "the stay"),
        Key("opens", Kind.TEXT, "how far it lets the lid open: `95 degrees`", required=True),
        _size("apart", "how far what it joins stands apart; touching unless said"),
        _size(
            "cut_in_at",
            "where its plate sits on what stays: to its middle, along that side",
        ),
        _size("cut_in_across", "to its middle, across that side"),
        _size("takes_at", "where its plate sits on what moves: to its middle, along that side"),
        _size("takes_across", "to its middle, across that side"),
    ),
}
"""Each kind of joint and its own keys."""

JOINT = Table(
    "a joint",
    tuple(
        {
            key.name: replace(key, required=key.name == "kind")
            for table in JOINTS.values()
            for key in table.keys
        }.values()
    ),
    where="each name under `joints:`",
    chosen_by="kind",
    variants=JOINTS,
)
"""A joint whose kind isn't known yet: every key that any kind takes."""
