"""Words for a side of a part: its own (`edge a`), or from where it sits (`inner edge`, `top end`)."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from benchalong.ground.lengths import Length
from benchalong.ground.words import nearest_words
from benchalong.plan.flips import SURFACE_PAIRS
from benchalong.plan.model import AXES, Surface, Turn
from benchalong.plan.refused import Span
from benchalong.plan.turns import WAYS, Room, Way, axis_of

NOUNS: Mapping[str, tuple[Surface, ...]] = {
    "face": ("face", "back"),
    "faces": ("face", "back"),
    "edge": ("edge a", "edge b"),
    "edges": ("edge a", "edge b"),
    "end": ("end a", "end b"),
    "ends": ("end a", "end b"),
}
LOOKING = {"left": "left", "right": "right", "front": "front", "back": "back", "top": "up", "bottom": "down"}
"""Words for where a side looks once the part sits in its place."""
QUALIFIERS = ("inner", "outer", "both", *LOOKING)
EXPECTED = "a side: edge a, inner edge, both ends, top end, face; or an arris, back edge inner face"


class NotASide(Exception):
    """Words that name no side; says why, and which stretch of them it is about."""

    def __init__(
        self,
        message: str,
        expected: str = EXPECTED,
        *,
        span: Span | None = None,
        meant: tuple[str, ...] = (),
    ) -> None:
        super().__init__(message)
        self.message, self.expected, self.span, self.meant = message, expected, span, meant


@dataclass(frozen=True)
class Term:
    """One side in words: `inner edge` is (`inner`, the two edges); `edge a` is ("", that edge)."""

    qualifier: str
    among: tuple[Surface, ...]
    words: str

    @property
    def noun(self) -> str:
        """face, edge or end."""
        return next(noun for noun, surfaces in NOUNS.items() if self.among[0] in surfaces)

    @property
    def is_end(self) -> bool:
        return self.among[0] in NOUNS["ends"]


def split_side(text: str) -> tuple[str, str]:
    """Who, and which side of it: `door_stile inner edge` -> (`door_stile`, `inner edge`)."""
    who, _, side = text.strip().partition(" ")
    return who, side.strip()


def parse_side(side: str) -> tuple[Term, ...]:
    """One term, or for an arris two. Raises NotASide."""
    words, terms = list(re.finditer(r"\S+", side)), list[Term]()
    while words:
        term, used = _term(words)
        terms.append(term)
        words = words[used:]
    if not terms:
        raise NotASide("no side is named here")
    if len(terms) > 2:
        raise NotASide(f"“{side}” names more than two sides")
    if len(terms) == 2 and terms[0].noun == terms[1].noun:
        raise NotASide(f"“{side}” are two sides that make no arris", "an edge or end, and a face")
    return tuple(terms)


def _term(found: list[re.Match[str]]) -> tuple[Term, int]:
    words = [word[0] for word in found]
    first, second = words[0], words[1] if len(words) > 1 else ""
    if first in NOUNS and second in ("a", "b"):
        name = f"{first} {second}"
        return Term("", tuple(surface for surface in NOUNS[first] if surface == name), name), 2
    if first in QUALIFIERS and second in NOUNS:
        return Term(first, NOUNS[second], f"{first} {second}"), 2
    if first == "back":
        return Term("", ("back",), "back"), 1
    if first == "face":
        return Term("", ("face",), "face"), 1
    if first in NOUNS:
        raise NotASide(
            f"“{first}” could be two sides",
            f"which of them: {' or '.join(NOUNS[first])}, or inner {first}",
            span=found[0].span(),
        )
    if first in QUALIFIERS:
        wrong = found[min(1, len(found) - 1)]
        message = f"“{first}” needs edge, end or face after it"
        raise NotASide(message, span=wrong.span(), meant=nearest_words(second, NOUNS) if second else ())
    meant = nearest_words(first, (*NOUNS, *QUALIFIERS))
    raise NotASide(f"“{first}” is no word for a side", span=found[0].span(), meant=meant)


def outward(surface: Surface, turn: Turn) -> Way:
    """Which way a surface looks once the part is turned."""
    for column, axis in enumerate(AXES):
        near, far = SURFACE_PAIRS[axis]
        if surface in (near, far):
            sign = 1 if surface == far else -1
            return (sign * turn[0][column], sign * turn[1][column], sign * turn[2][column])
    raise ValueError(surface)


def find_surfaces(term: Term, turn: Turn, room: Room, whole: Room) -> tuple[Surface, ...]:
    """The part's own surfaces that a term means, one or for `both` two. Raises NotASide.

    `room` is what the part takes up, `whole` what the assembly does; inner looks towards its middle.
    """
    if term.qualifier in ("", "both"):
        return term.among
    ways = {surface: outward(surface, turn) for surface in term.among}
    if term.qualifier in LOOKING:
        found = [surface for surface, way in ways.items() if way == WAYS[LOOKING[term.qualifier]]]
        if found:
            return tuple(found)
        raise NotASide(
            f"no {term.words} here: these look {' and '.join(sorted(map(_called, ways.values())))}"
        )
    wanted = 1 if term.qualifier == "inner" else -1
    found = [surface for surface, way in ways.items() if _towards(way, room, whole) == wanted]
    if len(found) == 1:
        return tuple(found)
    raise NotASide(
        f"{term.words} can't be told: the part sits in the middle", f"one of {', '.join(term.among)}"
    )


def _towards(way: Way, room: Room, whole: Room) -> int:
    """1 when the way leads towards the middle of the whole, -1 when away from it, 0 when neither."""
    axis = axis_of(way)
    lies, middle = _middle(room, axis), _middle(whole, axis)
    return 0 if lies == middle else (1 if middle > lies else -1) * way[axis]


def _middle(room: Room, axis: int) -> Length:
    near, far = room
    return (near[axis] + far[axis]) / 2


def _called(way: Way) -> str:
    return next(name for name, other in WAYS.items() if other == way)
