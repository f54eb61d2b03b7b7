"""A formula cut into its smallest pieces, bounded before anything heavy sees it."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, TypeAlias

from benchalong.plan.refused import Refused, Span

Kind: TypeAlias = Literal["number", "vulgar", "word", "mark", "operator", "end"]

LONGEST = 500
"""Characters in a formula."""
MOST = 200
"""Pieces in a formula."""
MOST_DIGITS = 20
"""Digits in one number."""

VULGAR = {
    "½": Fraction(1, 2), "⅓": Fraction(1, 3), "⅔": Fraction(2, 3), "¼": Fraction(1, 4), "¾": Fraction(3, 4),
    "⅕": Fraction(1, 5), "⅖": Fraction(2, 5), "⅗": Fraction(3, 5), "⅘": Fraction(4, 5), "⅙": Fraction(1, 6),
    "⅚": Fraction(5, 6), "⅛": Fraction(1, 8), "⅜": Fraction(3, 8), "⅝": Fraction(5, 8), "⅞": Fraction(7, 8),
    "⅐": Fraction(1, 7), "⅑": Fraction(1, 9), "⅒": Fraction(1, 10),
}  # fmt: skip
INCH_MARKS = '"″“”'
FOOT_MARKS = "'′‘’"
SAME = {"×": "*", "·": "*", "⋅": "*", "÷": "/", "∕": "/", "⁄": "/", "−": "-", "–": "-"}
"""Signs that mean what the plain one means, each one character wide so that places stay true."""
_SAME = str.maketrans(SAME)

_PIECES = re.compile(
    r"(?P<space>[ \t\u00a0\u202f\u2009]+)"
    r"|(?P<number>[0-9]+(?:\.[0-9]+)?|\.[0-9]+)"
    rf"|(?P<vulgar>[{''.join(VULGAR)}])"
    r"|(?P<word>[^\W\d]\w*(?:\.[^\W\d]\w*)*)"
    rf"|(?P<mark>''|[{INCH_MARKS}{FOOT_MARKS}])"
    r"|(?P<operator>[-+*/(),])"
)
_WIDE_COMMA = re.compile(r"(?<![\w.])[0-9]+,[0-9]")
_POWER = re.compile(r"\*\s*\*|\^")


@dataclass(frozen=True)
class Token:
    kind: Kind
    text: str
    start: int
    end: int

    @property
    def span(self) -> Span:
        return (self.start, self.end)


def tokens(text: str) -> tuple[Token, ...]:
    """The pieces of a formula, an `end` last. Raises Refused, with the stretch at fault."""
    if len(text) > LONGEST:
        raise Refused(
            f"this formula has {len(text)} characters", expected=f"at most {LONGEST}; give parts of it names"
        )
    plain = plain_signs(text)
    if not plain.strip():
        raise Refused("there is nothing here", expected="a length, a number or a formula")
    _refuse_lookalikes(plain)
    found = tuple(_pieces(plain))
    if len(found) > MOST:
        raise Refused(
            f"this formula has more than {MOST} numbers, names and signs",
            expected="shorter ones; give parts of it names",
        )
    return (*found, Token("end", "", len(plain), len(plain)))


def plain_signs(text: str) -> str:
    """The text with each sign replaced by the plain one that means the same."""
    return text if text.isascii() else text.translate(_SAME)


def _pieces(text: str) -> list[Token]:
    found: list[Token] = []
    position = 0
    while position < len(text):
        match = _PIECES.match(text, position)
        if match is None or match.lastgroup is None:
            raise _stranger(text, position)
        if match.lastgroup == "number":
            _bound_digits(match)
        if match.lastgroup != "space":
            kind: Kind = match.lastgroup  # type: ignore[assignment]
            found.append(Token(kind, match.group(), match.start(), match.end()))
        position = match.end()
    return found


def _bound_digits(match: re.Match[str]) -> None:
    if len(match.group()) - match.group().count(".") > MOST_DIGITS:
        raise Refused("this number is too long", match.span(), expected=f"at most {MOST_DIGITS} digits")


def _refuse_lookalikes(text: str) -> None:
    """What is well known from elsewhere and would be read as something else here."""
    if comma := _WIDE_COMMA.search(text):
        end = re.compile(r"[0-9]*").match(text, comma.end())
        span = (comma.start(), end.end() if end else comma.end())
        typed = text[span[0] : span[1]]
        pointed = typed.replace(",", ".")
        raise Refused(
            f"the comma in {typed} reads two ways",
            span,
            f"a point, {pointed}; a comma between two values has a space after it",
        )
    if power := _POWER.search(text):
        raise Refused("there are no powers here", power.span(), "a product, such as stile*stile")


def _stranger(text: str, position: int) -> Refused:
    letter = text[position]
    span = (position, position + 1)
    if letter in "[]{}":
        return Refused(f"{letter} has no meaning in arithmetic", span, "round brackets ( )")
    if letter in "\r\n":
        return Refused("a formula stands on one line", span)
    if letter in "=<>":
        return Refused(
            f"{letter} has no meaning in a formula", span, "a length, a number or arithmetic with + - * / ( )"
        )
    if not letter.isprintable():
        return Refused(
            "there is a character here that can't be seen", span, "plain letters, digits and signs"
        )
    return Refused(f"{letter} has no meaning in arithmetic", span, "numbers, names and + - * / ( )")
