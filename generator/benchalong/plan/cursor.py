"""A place in a formula's pieces: what stands here, what comes next, how deep it is nested."""

from __future__ import annotations

from benchalong.ground.lengths import FOOT, INCH, Length
from benchalong.ground.units import unit_length
from benchalong.plan.refused import Refused, Span
from benchalong.plan.tokens import INCH_MARKS, Token, plain_signs, tokens

DEEPEST = 40
"""Brackets, signs and functions one inside another."""


class Cursor:
    def __init__(self, text: str) -> None:
        self.text = text
        self.plain = plain_signs(text)
        self.tokens = tokens(text)
        self.position = 0
        self.depth = 0

    @property
    def here(self) -> Token:
        return self.tokens[self.position]

    def ahead(self, steps: int) -> Token:
        return self.tokens[min(self.position + steps, len(self.tokens) - 1)]

    def take(self) -> Token:
        token = self.here
        if token.kind != "end":
            self.position += 1
        return token

    def sees(self, *signs: str) -> bool:
        return self.here.kind == "operator" and self.here.text in signs

    def span_from(self, start: int) -> Span:
        return (start, self.tokens[self.position - 1].end)

    def deeper(self, by: Token) -> None:
        self.depth += 1
        if self.depth > DEEPEST:
            raise Refused(
                "this is nested too deep", by.span, f"at most {DEEPEST} brackets one inside another"
            )

    def unit(self) -> Length | None:
        """a unit of length, as a word or a mark"""
        length = self.sees_unit()
        if length is not None:
            self.take()
        return length

    def sees_unit(self) -> Length | None:
        token = self.here
        if token.kind == "mark":
            return INCH if token.text in INCH_MARKS or token.text == "''" else FOOT
        return unit_length(token.text) if token.kind == "word" else None
