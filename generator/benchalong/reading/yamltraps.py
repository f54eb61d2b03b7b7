"""What YAML stumbled over, in words a woodworker can act on.

The parser knows where it stopped, and says so in its own terms; what the author meant is seen in
the author's own line. Each trap below looks at both and has its own message. The first that knows
the case speaks; words of both parsers, the C one and the Python one, lead to the same trap.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, TypeAlias

from benchalong.ground.marks import Mark, Place
from benchalong.ground.problems import Problem
from benchalong.reading.tally import Block

START_OF_VALUE = re.compile(r"^\s*(?:- +)*(?:[^\s:\"'\[{][^:]*: +)?(?=\S)")
"""Everything in front of a line's value: indent, dashes, a key."""
QUOTED = re.compile(
    r"(\"(?:[^\"\\]|\\.)*\"|'(?:[^']|'')*')(?=[^\s,}\]:])|(\"[^\"]*\"|'[^']*')(?=\s+[^\s,}\]:#])"
)
"""A quoted text with more text after it."""
NO_SPACE = re.compile(r"^(\s*(?:- +)*)([A-Za-z_][\w ]*):(\S.*)$")
WORD = re.compile(r"^\s*(?:- +)*(\w+)")


@dataclass(frozen=True)
class Stop:
    """Where and why the parser stopped."""

    said: str
    """Its own words, both halves, in lower case."""
    file: str
    lines: list[str]
    first_line: int
    line: int
    """From 0 in the block, as all the rest."""
    column: int
    from_line: int
    """Where the thing began that it was in the middle of."""
    from_column: int

    def text(self, line: int) -> str:
        return self.lines[line] if 0 <= line < len(self.lines) else ""

    def said_any(self, *words: str) -> bool:
        return any(word in self.said for word in words)

    def problem(self, line: int, column: int, length: int, message: str, expected: str) -> Problem:
        mark = Mark(self.file, self.first_line + line, column + 1, max(1, length))
        return Problem(Place((self.file,), mark=mark), message, expected)


Trap: TypeAlias = Callable[[Stop], Problem | None]


def explain(error: Any, block: Block) -> Problem:
    """The problem behind an error of the YAML parser."""
    stop = _stop(error, block)
    for trap in TRAPS:
        problem = trap(stop)
        if problem is not None:
            return problem
    return stop.problem(
        stop.line, stop.column, 1, "this line can't be read as YAML", "`key: value`, one in a line"
    )


def _stop(error: Any, block: Block) -> Stop:
    lines = block.text.split("\n")
    at, since = getattr(error, "problem_mark", None), getattr(error, "context_mark", None)
    line, column = (at.line, at.column) if at else (0, 0)
    from_line, from_column = (since.line, since.column) if since else (line, column)
    if line >= len(lines) or not "".join(lines[line:]).strip():
        line, column = from_line, from_column
    said = f"{getattr(error, 'context', '')} {getattr(error, 'problem', error)}".lower()
    return Stop(said, str(block.path[0]), lines, block.first_line, line, column, from_line, from_column)


def _tab(stop: Stop) -> Problem | None:
    for line in (stop.line, stop.from_line):
        text = stop.text(line)
        indent = text[: len(text) - len(text.lstrip())]
        if "\t" in indent:
            column = indent.index("\t")
            return stop.problem(
                line,
                column,
                1,
                "a tab stands at the beginning of this line",
                "spaces: YAML takes no tabs there",
            )
    return None


def _open_quote(stop: Stop) -> Problem | None:
    if not stop.said_any("unexpected end of stream", "unexpected document separator"):
        return None
    text = stop.text(stop.from_line)
    return stop.problem(
        stop.from_line,
        stop.from_column,
        len(text.rstrip()) - stop.from_column,
        f"the quote that opens here ({text[stop.from_column : stop.from_column + 1]}) never closes",
        "the same quote again at the end of the text",
    )


def _text_after_quote(stop: Stop) -> Problem | None:
    if not stop.said_any("expected"):
        return None
    for line in dict.fromkeys((stop.line, stop.from_line)):
        text = stop.text(line)
        for found in QUOTED.finditer(text):
            before = text[: found.start()].rstrip()
            if before and before[-1] not in ":-,[{":
                continue
            return _quote_ended(stop, line, found.start(), found.end())
    return None


def _quote_ended(stop: Stop, line: int, start: int, end: int) -> Problem:
    text = stop.text(line)
    if text[start] == '"':
        whole = text[start + 1 :].rstrip().rstrip('"')
        closes = '"' if text.rstrip().endswith('""') or '" ' in whole + " " else ""
        inside = "{" in text[:start] or "[" in text[:start]
        meant = "single quotes around the text" if inside else f"single quotes around it: '{whole}{closes}'"
        return stop.problem(
            line, end - 1, 1, "this inch mark ends the quoted text, but more text follows", meant
        )
    return stop.problem(
        line,
        end - 1,
        1,
        "this apostrophe ends the quoted text, but more text follows",
        "double quotes around a text with an apostrophe in it",
    )


def _begins_with_bracket(stop: Stop) -> Problem | None:
    text = stop.text(stop.line)
    start = START_OF_VALUE.match(text)
    at = start.end() if start else 0
    if text[at : at + 1] not in ("[", "{") or not stop.said_any("block") or stop.column <= at:
        return None
    whole = text[at:].rstrip()
    what = "list" if text[at] == "[" else "table"
    return stop.problem(
        stop.line,
        at,
        1,
        f"a text that begins with {text[at]} is taken for a {what}",
        f"the text in quotes: {in_quotes(whole)}",
    )


def _second_colon(stop: Stop) -> Problem | None:
    if not stop.said_any("mapping values are not allowed"):
        return None
    text = stop.text(stop.line)
    start = START_OF_VALUE.match(text)
    at = start.end() if start else 0
    if 0 < at <= stop.column and text[:at].rstrip().endswith(":"):
        return stop.problem(
            stop.line,
            stop.column,
            1,
            "a second colon in one line reads as a second key",
            f"the text in quotes: {text[:at].strip()} {in_quotes(text[at:].rstrip())}",
        )
    return None


def _no_colon(stop: Stop) -> Problem | None:
    """A key without its colon, or without the space after it, is found out only in the line after."""
    if not stop.said_any("mapping values are not allowed", "could not find expected ':'"):
        return None
    for line in (stop.from_line, stop.line - 1):
        text = stop.text(line)
        glued = NO_SPACE.match(text)
        if glued:
            expected = f"`{glued[2]}: {glued[3]}`"
            return stop.problem(
                line, len(glued[1]) + len(glued[2]), 1, "no space stands after the colon", expected
            )
        if text.strip() and ": " not in f"{text} ":
            start = len(text) - len(text.lstrip())
            return stop.problem(
                line, start, len(text.strip()), "no colon stands in this line", "`key: value`"
            )
    return None


def _further_in(stop: Stop) -> Problem | None:
    if not stop.said_any("mapping values are not allowed"):
        return None
    text = stop.text(stop.line)
    start = len(text) - len(text.lstrip())
    return stop.problem(
        stop.line,
        start,
        len(text.strip()),
        "this line stands further in than the line above it allows",
        "the same indent as the keys it belongs to",
    )


def _inside_brackets(stop: Stop) -> Problem | None:
    if not stop.said_any("flow sequence", "flow mapping"):
        return None
    opening, closing = ("[", "]") if stop.said_any("flow sequence") else ("{", "}")
    if stop.line == stop.from_line:
        return stop.problem(
            stop.line,
            stop.column,
            1,
            f"a comma is missing between {opening} and {closing}, or a text with a colon in it has no quotes",
            "`{key: value, key: value}`, `[one, two]`",
        )
    return stop.problem(
        stop.from_line,
        stop.from_column,
        1,
        f"what {opening} opens here is never closed, or a comma is missing",
        f"a {closing} after the last of them",
    )


def _odd_first_letter(stop: Stop) -> Problem | None:
    if not stop.said_any("cannot start any token", "expected alphabetic", "block scalar", "node content"):
        return None
    for at in (stop.from_column, stop.column):
        letter = stop.text(stop.line)[at : at + 1]
        if letter and letter in "@`%*&>|!,]}":
            whole = stop.text(stop.line)[at:].rstrip()
            return stop.problem(
                stop.line,
                at,
                1,
                f"a text can't begin with {letter}",
                f"the text in quotes: {in_quotes(whole)}",
            )
    return None


def _list_after_key(stop: Stop) -> Problem | None:
    if not stop.said_any("sequence entries are not allowed"):
        return None
    return stop.problem(
        stop.line,
        stop.column,
        1,
        "a list can't begin in the line of its key",
        "the first `- ` in the next line",
    )


def _backslash(stop: Stop) -> Problem | None:
    if not stop.said_any("escape character"):
        return None
    return stop.problem(
        stop.line,
        max(0, stop.text(stop.line).rfind("\\", 0, stop.column + 1)),
        1,
        "a backslash between double quotes means something else",
        "single quotes around the text",
    )


def _no_key(stop: Stop) -> Problem | None:
    text = stop.text(stop.line)
    start = len(text) - len(text.lstrip())
    if not text.lstrip().startswith(": "):
        return None
    return stop.problem(stop.line, start, 1, "a key is missing before the colon", "`key: value`")


def _too_deep(stop: Stop) -> Problem | None:
    if not stop.said_any("depth", "nest"):
        return None
    return stop.problem(
        stop.line, stop.column, 1, "brackets stand too deep inside each other", "a flatter plan"
    )


def _out_of_line(stop: Stop) -> Problem | None:
    if not stop.said_any("expected key", "'-' indicator", "block end", "block collection"):
        return None
    text = stop.text(stop.line)
    start = len(text) - len(text.lstrip())
    other = "the list" if stop.said_any("collection", "'-' indicator") else "the keys"
    return stop.problem(
        stop.line,
        start,
        len(text.strip()),
        "this line doesn't line up with those above it",
        f"the indent of {other} above, in line {stop.first_line + stop.from_line} and after",
    )


TRAPS: tuple[Trap, ...] = (
    _tab, _open_quote, _text_after_quote, _begins_with_bracket, _second_colon, _no_colon, _further_in,
    _inside_brackets, _odd_first_letter, _list_after_key, _backslash, _no_key, _too_deep, _out_of_line,
)  # fmt: skip


def in_quotes(text: str) -> str:
    """The text as YAML takes it whatever it holds; single quotes where it has double ones inside."""
    return f"'{text.replace(chr(39), chr(39) * 2)}'" if '"' in text or "\\" in text else f'"{text}"'
