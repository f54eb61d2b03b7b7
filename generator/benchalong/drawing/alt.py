"""A drawing in one sentence without numbers, for who can't see it."""

from __future__ import annotations

from collections.abc import Sequence

from benchalong.drawing.views import ViewName
from benchalong.plan.model import Cut, Part

PREPOSITIONS = {"tongue": "on", "tenon": "on", "bevel": "on", "taper": "on", "rabbet": "along", "notch": "at"}
ON_AN_ARRIS = ("rabbet", "bevel", "notch")
"""Kinds that name two surfaces; the first says enough."""


def drawing_alt(part: Part, views: Sequence[ViewName]) -> str:
    """`Door rail in three views: face, edge a and end b, with a tongue on both ends.`"""
    kinds = dict.fromkeys(cut.kind for cut in part.cuts)
    said = [_cuts_said([cut for cut in part.cuts if cut.kind == kind]) for kind in kinds]
    tail = f", with {listed(said)}" if said else ", without cuts"
    return f"{part.name} in three views: {listed(views)}{tail}."


def _cuts_said(cuts: Sequence[Cut]) -> str:
    kind = cuts[0].kind
    if kind == "outline":
        return "a shaped outline" if len(cuts) == 1 else "shaped outlines"
    places = {_place(cut) for cut in cuts}
    for pair in ("end", "edge"):
        if places == {f"{pair} a", f"{pair} b"} and len(cuts) == 2:
            return f"a {kind} {PREPOSITIONS.get(kind, 'in')} both {pair}s"
    return f"a {cuts_in_words(cuts)}" if len(cuts) == 1 else cuts_in_words(cuts)


def cuts_in_words(cuts: Sequence[Cut]) -> str:
    """`rabbets along end a and end b`, `hole in the face`: cuts of one kind by where they are."""
    kind = cuts[0].kind
    places = list(dict.fromkeys(_place(cut) for cut in cuts))
    noun = kind if len(cuts) == 1 else many(kind)
    return f"{noun} {PREPOSITIONS.get(kind, 'in')} {listed(places)}"


def many(word: str) -> str:
    """The word for more than one."""
    return f"{word}es" if word.endswith(("ch", "sh", "s", "x", "o")) else f"{word}s"


def _place(cut: Cut) -> str:
    surfaces = cut.surfaces[:1] if cut.kind in ON_AN_ARRIS else cut.surfaces
    return listed([f"the {surface}" if surface in ("face", "back") else surface for surface in surfaces])


def listed(words: Sequence[str]) -> str:
    """`a, b and c`; nothing for none."""
    return f"{', '.join(words[:-1])} and {words[-1]}" if len(words) > 1 else "".join(words)
