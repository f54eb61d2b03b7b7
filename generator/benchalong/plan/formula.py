"""The plan's arithmetic: from a text to a tree.

The grammar, one function a rule below:

    formula  = whole | sum
    whole    = [sign] (feet [["-"] inches] | mixed [unit])      up to the end, a bracket or a comma
    sum      = product {("+" | "-") product}
    product  = signed {("*" | "/") signed}
    signed   = ("-" | "+") signed | atom
    atom     = value | name | name "(" formula {"," formula} ")" | "(" formula ")"
    value    = fraction unit | number [unit]

A length of more than one number (`1 3/4 in`, `2 ft 6 in`) stands only as a whole, since in the middle of
arithmetic it reads two ways. Trees are plain data, equal when they mean the same: where a piece
stood in the text is kept for messages only.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction
from functools import lru_cache

from benchalong.ground.lengths import FOOT, INCH, Length
from benchalong.ground.units import COMMON_UNITS, unit_length
from benchalong.ground.words import nearest_words
from benchalong.plan.cursor import Cursor
from benchalong.plan.refused import Refused, Span, Unnamed
from benchalong.plan.tokens import FOOT_MARKS, INCH_MARKS, VULGAR, Token
from benchalong.plan.tree import Binary, Call, Measure, Name, Negative, Number, Operator, Tree

FUNCTIONS = ("min", "max", "nearest", "sqrt", "sin", "cos", "tan")


_UNIT = rf"(?:\s*[{INCH_MARKS}{FOOT_MARKS}]|\s*(?:in|inch|inches|ft|foot|feet|mm|cm|m)\b)?"
_HYPHENED = re.compile(rf"(?P<whole>[0-9]+)(?:-\s*|\s+-)(?P<rest>[0-9]+\s*/\s*[0-9]+{_UNIT})")
_MIXED = re.compile(rf"[0-9]+(?:\s+[0-9]+\s*/\s*[0-9]+|\s*[{''.join(VULGAR)}]){_UNIT}")


@lru_cache(maxsize=8192)
def parse(text: str) -> Tree:
    """The tree of a formula. Raises Refused, with what is wrong and where."""
    return _Parser(text).all()


class _Parser(Cursor):
    """The rules, and what is refused on the way."""

    def all(self) -> Tree:
        """formula, and then nothing more"""
        tree = self.formula()
        if self.sees(")"):
            raise Refused("this bracket closes nothing", self.here.span, "as many ( as )")
        self.refuse_comma()
        if self.here.kind != "end":
            raise self.side_by_side()
        return tree

    def formula(self) -> Tree:
        """formula = whole | sum"""
        return self.whole() or self.sum()

    def whole(self) -> Tree | None:
        """whole = [sign] (feet [["-"] inches] | mixed [unit]), up to the end, a bracket or a comma"""
        before = self.position
        start = self.here.start
        negative = self.take().text == "-" if self.sees("-", "+") else False
        tree = self.several_numbers()
        if tree is None or not (self.here.kind == "end" or self.sees(")", ",")):
            self.position = before
            return None
        tree = (
            Number(tree.value, self.span_from(start))
            if isinstance(tree, Number)
            else Measure(tree.length, self.span_from(start))
        )
        return Negative(tree, tree.span) if negative else tree

    def several_numbers(self) -> Number | Measure | None:
        """feet [["-"] inches] | mixed [unit]"""
        start = self.here.start
        first = self.mixed()
        if first is None:
            return None
        unit = self.unit()
        if unit is None:
            return Number(first, self.span_from(start))
        if unit == FOOT and (rest := self.inches()) is not None:
            return Measure(first * FOOT + rest, self.span_from(start))
        return Measure(first * unit, self.span_from(start))

    def inches(self) -> Length | None:
        """the inches after feet: ["-"] mixed unit"""
        before = self.position
        if self.sees_hyphen():
            self.take()
        number = self.mixed()
        unit = self.unit() if number is not None else None
        if number is None or unit != INCH:
            self.position = before
            return None
        return number * INCH

    def mixed(self) -> Fraction | None:
        """mixed = whole number [["-"] fraction] | fraction | number"""
        if self.here.kind == "vulgar":
            return VULGAR[self.take().text]
        if self.here.kind != "number":
            return None
        fraction = self.fraction()
        if fraction is not None:
            return fraction
        token = self.take()
        number = Fraction(token.text)
        if not _is_whole(token):
            return number
        return number + self.rest_of_mixed(token)

    def rest_of_mixed(self, whole: Token) -> Fraction:
        """the fraction after a whole number; after a hyphen only when a unit follows"""
        before = self.position
        hyphen = self.sees_hyphen()
        if hyphen:
            self.take()
        rest = self.proper_fraction(whole)
        if rest is None or (hyphen and not self.sees_unit()):
            self.position = before
            return Fraction(0)
        return rest

    def proper_fraction(self, whole: Token) -> Fraction | None:
        if self.here.kind == "vulgar":
            return VULGAR[self.take().text]
        start = self.here.start
        rest = self.fraction()
        if rest is not None and rest >= 1:
            raise Refused(
                f"the fraction after {whole.text} is not below one",
                self.span_from(start),
                "a fraction such as 3/4",
            )
        return rest

    def fraction(self) -> Fraction | None:
        """fraction = whole number "/" whole number"""
        over, line, under = self.here, self.ahead(1), self.ahead(2)
        if not (_is_whole(over) and line.text == "/" and _is_whole(under)):
            return None
        if int(under.text) == 0:
            raise Refused(
                "this divides by zero", (over.start, under.end), "a number other than zero under the line"
            )
        self.position += 3
        return Fraction(int(over.text), int(under.text))

    def sees_hyphen(self) -> bool:
        """a - with no space before or after it, outside all brackets"""
        if not self.sees("-") or self.depth:
            return False
        return self.tokens[self.position - 1].end == self.here.start and self.here.end == self.ahead(1).start

    def sum(self) -> Tree:
        """sum = product {("+" | "-") product}"""
        left = self.product()
        while self.sees("+", "-"):
            left = self.binary(left, self.product)
        return left

    def product(self) -> Tree:
        """product = signed {("*" | "/") signed}"""
        left = self.signed()
        while self.sees("*", "/"):
            if self.sees("/"):
                self.refuse_two_lines()
            left = self.binary(left, self.signed)
        return left

    def binary(self, left: Tree, rule: Callable[[], Tree]) -> Tree:
        operator: Operator = self.take().text  # type: ignore[assignment]
        right = rule()
        return Binary(operator, left, right, (left.span[0], right.span[1]))

    def signed(self) -> Tree:
        """signed = ("-" | "+") signed | atom"""
        if not self.sees("-", "+"):
            return self.atom()
        sign = self.take()
        self.deeper(sign)
        of = self.signed()
        self.depth -= 1
        return Negative(of, (sign.start, of.span[1])) if sign.text == "-" else of

    def atom(self) -> Tree:
        """atom = value | name | call | "(" formula ")" """
        if self.here.kind in ("number", "vulgar"):
            return self.value()
        if self.here.kind == "word":
            return self.call() if self.ahead(1).text == "(" else self.name()
        if self.sees("("):
            return self.bracket()
        raise self.missing_value()

    def value(self) -> Tree:
        """value = fraction unit | number [unit]"""
        start = self.here.start
        self.refuse_mixed()
        fraction = self.fraction_with_unit()
        if fraction is not None:
            return Measure(fraction, self.span_from(start))
        token = self.take()
        number = VULGAR[token.text] if token.kind == "vulgar" else Fraction(token.text)
        unit = self.unit()
        if unit == FOOT:
            self.refuse_inches(start)
        tree = Number(number, token.span) if unit is None else Measure(number * unit, self.span_from(start))
        self.refuse_neighbour(token, tree)
        return tree

    def fraction_with_unit(self) -> Length | None:
        before = self.position
        fraction = self.fraction()
        unit = self.unit() if fraction is not None else None
        if fraction is None or unit is None:
            self.position = before
            return None
        return fraction * unit

    def name(self) -> Tree:
        token = self.take()
        if self.here.kind in ("number", "word", "vulgar"):
            raise self.side_by_side()
        return Name(token.text, token.span)

    def call(self) -> Tree:
        """call = function "(" formula {"," formula} ")" """
        function = self.take()
        if function.text not in FUNCTIONS:
            raise _unknown_function(function)
        opened = self.take()
        self.deeper(opened)
        arguments = [self.formula()]
        while self.sees(","):
            self.take()
            arguments.append(self.formula())
        self.close(opened)
        self.depth -= 1
        return Call(function.text, tuple(arguments), self.span_from(function.start))

    def bracket(self) -> Tree:
        opened = self.take()
        self.deeper(opened)
        tree = self.formula()
        self.close(opened)
        self.depth -= 1
        return tree

    def refuse_comma(self) -> None:
        if self.sees(","):
            raise Refused(
                "a comma stands only between the values of min, max and nearest",
                self.here.span,
                "a point for decimals: 1.5",
            )

    def close(self, opened: Token) -> None:
        if self.here.kind == "end":
            raise Refused("this bracket is never closed", opened.span, "a ) for each (")
        self.refuse_comma()
        if not self.sees(")"):
            raise self.side_by_side()
        self.take()

    # what is refused, and why

    def refuse_mixed(self) -> None:
        """A mixed fraction inside arithmetic."""
        start = self.here.start
        if two_ways := _HYPHENED.match(self.plain, start):
            whole, rest = two_ways["whole"], two_ways["rest"]
            raise Refused(
                f"{two_ways.group()} reads two ways, as a mixed fraction and as a subtraction",
                two_ways.span(),
                f"({whole} {rest}) for the mixed fraction, {whole} - {rest} for the subtraction",
            )  # fmt: skip
        if mixed := _MIXED.match(self.plain, start):
            raise self.not_whole("a mixed fraction", mixed.span())

    def refuse_inches(self, start: int) -> None:
        """Feet followed by inches inside arithmetic."""
        if self.inches() is not None or self.here.kind in ("number", "vulgar"):
            raise self.not_whole("a length in feet and inches", self.span_from(start))

    def not_whole(self, what: str, span: Span) -> Refused:
        typed = self.text[slice(*span)]
        return Refused(
            f"{what} stands only as a whole value, not inside arithmetic",
            span,
            f"brackets around it: ({typed})",
        )

    def refuse_two_lines(self) -> None:
        """`x / 3/4 in` reads two ways."""
        before = self.position
        self.take()
        start = self.here.start
        length = self.fraction_with_unit()
        end, self.position = self.tokens[self.position - 1].end, before
        if length is not None:
            typed = self.text[start:end]
            raise Refused(
                f"dividing by {typed} reads two ways", (start, end), f"brackets around it: ({typed})"
            )

    def refuse_neighbour(self, number: Token, tree: Tree) -> None:
        """What can't follow a number directly."""
        if self.here.kind == "word" and isinstance(tree, Number):
            raise Unnamed(
                f"{self.here.text} is no unit of length",
                self.here.span, "a unit such as in, ft, mm or m, or a sign between number and name",
                nearest_words(self.here.text, COMMON_UNITS), number.text, self.here.text,
            )  # fmt: skip
        if self.sees("("):
            raise Refused(
                "a sign is missing between the number and the bracket",
                (number.start, self.here.end),
                f"{self.text[number.start : self.here.start].strip()}*( for a product",
            )  # fmt: skip
        if self.here.kind in ("word", "number", "vulgar", "mark"):
            raise self.side_by_side()

    def side_by_side(self) -> Refused:
        before = self.tokens[self.position - 1]
        if self.here.kind == "mark":
            return Refused(f"the mark {self.here.text} stands after a number only", self.here.span)
        if before.text == ")" and self.here.kind == "word" and unit_length(self.here.text) is not None:
            return Refused(
                "a unit stands right after a number only",
                self.here.span,
                f"a product after a bracket: *1 {self.here.text}",
            )
        return Refused(
            f"a sign is missing between {before.text} and {self.here.text}",
            (before.start, self.here.end),
            "+ - * or / between them",
        )

    def missing_value(self) -> Refused:
        expected = "a number, a length, a name or a bracket"
        if self.here.kind == "mark":
            return Refused(
                f"the mark {self.here.text} stands after a number only", self.here.span, "a number before it"
            )
        if self.here.kind == "end":
            last = self.tokens[self.position - 1]
            if last.text == "(":
                return Refused("this bracket is never closed", last.span, "a ) for each (")
            return Refused(f"nothing follows the {last.text}", last.span, expected)
        if self.position == 0:
            return Refused(f"a formula can't begin with {self.here.text}", self.here.span, expected)
        return Refused(
            f"{self.here.text} can't follow {self.tokens[self.position - 1].text}", self.here.span, expected
        )


def _is_whole(token: Token) -> bool:
    return token.kind == "number" and "." not in token.text


def _unknown_function(token: Token) -> Refused:
    functions = f"{', '.join(FUNCTIONS[:-1])} or {FUNCTIONS[-1]}"
    return Refused(
        f"there is no function {token.text}",
        token.span,
        f"{functions}; for a product {token.text}*(",
        tuple(word for word in nearest_words(token.text, FUNCTIONS) if len(word) == len(token.text)),
    )
