"""Places said by relation, in one of the three directions of `at`: `right of SL`, `between SL and SR`.

A relation is told from a formula by its words: no formula has two words side by side. What may be said
differs by direction, so that each has the plain word for it: to the right, to the back, up.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, TypeAlias

from benchalong.ground.words import nearest_words
from benchalong.plan.refused import Refused, Span

How: TypeAlias = Literal["beyond", "before", "between", "spread", "flush", "inside", "middle"]

BESIDE: tuple[Mapping[str, How], ...] = (
    {"right of": "beyond", "left of": "before"},
    {"behind": "beyond", "in front of": "before"},
    {"on": "beyond", "above": "beyond", "under": "before", "below": "before"},
)
"""The words for standing next to something, by direction."""
SIDES: tuple[tuple[str, str], ...] = (("left", "right"), ("front", "back"), ("bottom", "top"))
"""The near and the far side of what stands there, by direction."""
DIRECTIONS = ("to the right", "to the back", "up")
TWO: Mapping[str, How] = {"between": "between", "spread between": "spread"}
BY_SIDE: Mapping[str, How] = {"against": "beyond", "flush with": "flush", "in from": "inside"}
ONE: Mapping[str, How] = {"middle of": "middle"}
PHRASES = sorted(
    {*TWO, *BY_SIDE, *ONE, *(phrase for words in BESIDE for phrase in words)}, key=lambda p: (-len(p), p)
)
ROWS = ("every", "leaving")

_PHRASE = re.compile(rf"\s*({'|'.join(map(re.escape, PHRASES))})\s+(?=[A-Za-z])")
_ROW = re.compile(r"(.*[\w)'\"])\s+(every|leaving)\s+([\w(-].*)\Z", re.DOTALL)
_WORDS = re.compile(r"\s*[A-Za-z]\S*\s+[A-Za-z]")
_BOTH = re.compile(r"(\S+)\s+and\s+(\S+)\s*\Z")
_WHO = re.compile(r"(\S+)(?:\s+into\s+(\S+))?(?:\s+by\s+(\S.*))?\s*\Z", re.DOTALL)
_SIDE = re.compile(r"(?:the\s+)?(\S+)\s+of\s+(\S+)(?:\s+into\s+(\S+))?(?:\s+by\s+(\S.*))?\s*\Z", re.DOTALL)


@dataclass(frozen=True)
class Words:
    """A stretch of the author's text."""

    text: str
    span: Span


@dataclass(frozen=True)
class Relation:
    how: How
    whom: tuple[Words, ...]
    """Marks or names: one, or the two it stands between."""
    is_far: bool = False
    """For flush and inside: whether the far side is meant."""
    by: Words | None = None
    """The room that is left, a formula."""
    into: Words | None = None
    """The joint that it goes into."""


@dataclass(frozen=True)
class Spot:
    """Where something stands in one direction, or the first of a row."""

    start: Relation | Words
    """A relation or a formula."""
    step: Words | None = None
    """From one copy of a row to the next, a formula."""
    is_clear: bool = False
    """Whether the step is the clear room between two copies; else it counts from corner to corner."""

    @property
    def is_row(self) -> bool:
        return self.step is not None or (isinstance(self.start, Relation) and self.start.how == "spread")


def parse_spot(text: str, axis: int) -> Spot:
    """One of the three of `at`. Raises Refused."""
    row = _ROW.match(text)
    start, end = (row[1], row.end(1)) if row else (text, len(text))
    found = Words(start, (0, end))
    relation = parse_relation(start, axis)
    if row is None:
        return Spot(relation or found)
    if relation is not None and relation.how in ("spread", "between"):
        expected = "spread between … and … alone, or a place for the first and every or leaving"
        raise Refused(f"what stands {relation.how} two has no step", row.span(2), expected)
    return Spot(relation or found, _words(row, 3), row[2] == "leaving")


def parse_relation(text: str, axis: int) -> Relation | None:
    """None for what is a formula. Raises Refused."""
    found = _PHRASE.match(text)
    if found is None:
        _refuse_unknown(text, axis)
        return None
    phrase, rest = found[1], found.end()
    if phrase in TWO:
        both = _read(_BOTH, text, rest, f"{phrase} SL and SR")
        return Relation(TWO[phrase], (_words(both, 1), _words(both, 2)))
    if phrase in BY_SIDE:
        return _by_side(phrase, text, rest, axis)
    if phrase not in ONE and phrase not in BESIDE[axis]:
        raise Refused(_cant_say(phrase, axis), found.span(1), _expected(axis))
    who = _read(_WHO, text, rest, f"{phrase} SL, or {phrase} SL by 1 in")
    how = {**ONE, **BESIDE[axis]}[phrase]
    if how == "middle":
        _refuse_more(who, (2, 3), "middle of SL")
    return Relation(how, (_words(who, 1),), by=_maybe(who, 3), into=_maybe(who, 2))


def _by_side(phrase: str, text: str, rest: int, axis: int) -> Relation:
    near, far = SIDES[axis]
    by = " by 1 in" if phrase == "in from" else ""
    found = _read(_SIDE, text, rest, f"{phrase} {near} of SL{by}, or {phrase} {far} of SL{by}")
    if found[1] not in SIDES[axis]:
        expected, meant = f"{near} or {far}", nearest_words(found[1], SIDES[axis])
        raise Refused(_cant_say(found[1], axis), found.span(1), expected, meant)
    is_far, how = found[1] == far, BY_SIDE[phrase]
    if phrase == "against":
        how = "beyond" if is_far else "before"
    elif phrase == "flush with":
        _refuse_more(found, (3, 4), f"flush with {found[1]} of SL, or in from {found[1]} of SL by 1 in")
    else:
        _refuse_more(found, (3,), f"in from {found[1]} of SL by 1 in")
        if found[4] is None:
            message = "how far in from that side isn't said"
            raise Refused(message, (0, len(text)), f"in from {found[1]} of SL by 1 in")
    return Relation(how, (_words(found, 2),), is_far, _maybe(found, 4), _maybe(found, 3))


def _read(form: re.Pattern[str], text: str, start: int, expected: str) -> re.Match[str]:
    found = form.match(text, start)
    if found is None:
        raise Refused(f"“{text.strip()}” can't be read as a place", (0, len(text)), expected)
    return found


def _refuse_more(found: re.Match[str], groups: tuple[int, ...], expected: str) -> None:
    for group in groups:
        if found[group] is not None:
            raise Refused("this relation takes no more words", found.span(group), expected)


def _refuse_unknown(text: str, axis: int) -> None:
    """Words side by side are no formula: a relation with a slip in it."""
    if _WORDS.match(text) is None:
        return
    words = text.split()
    phrases = [*TWO, *BY_SIDE, *ONE, *BESIDE[axis]]
    tries = [
        (" ".join(words[:n]), [phrase for phrase in phrases if phrase.count(" ") == n - 1]) for n in (3, 2, 1)
    ]
    meant = next((found for said, known in tries for found in nearest_words(said, known)), "")
    message = f"“{' '.join(words)}” says no place that is known"
    start = len(text) - len(text.lstrip())
    raise Refused(message, (start, len(text.rstrip())), _expected(axis), (meant,) if meant else ())


def _cant_say(words: str, axis: int) -> str:
    return f"“{words}” can't say how far {DIRECTIONS[axis]}"


def _expected(axis: int) -> str:
    near, far = SIDES[axis]
    beside = ", ".join(BESIDE[axis])
    return (
        f"a size, or one of {beside}, between, spread between, middle of, "
        f"against {near} of, flush with {near} of, in from {near} of (or {far} of)"
    )


def _words(found: re.Match[str], group: int) -> Words:
    return Words(found[group], found.span(group))


def _maybe(found: re.Match[str], group: int) -> Words | None:
    return None if found[group] is None else _words(found, group)
