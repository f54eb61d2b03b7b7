"""Places in files that are not the plan: a template, a style, a picture, the command line itself.

The marks of the plan know only what was read as the plan. A message about anything else brings its own
line along, so that one printer shows every message the same way.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from benchalong.ground.marks import Mark, Marks, Place
from benchalong.ground.problems import Problem, Unreadable


@dataclass(frozen=True)
class Pointed:
    """A problem and the stretch of text it is about."""

    mark: Mark
    line: str
    """The author's own line; may be empty."""
    message: str
    expected: str = ""
    meant: tuple[str, ...] = ()


def unreadable(pointed: Iterable[Pointed], marks: Marks | None = None) -> Unreadable:
    """The exception that carries these problems, and marks that know their lines."""
    known = marks or Marks()
    lines = dict(known.lines)
    problems = []
    for one in pointed:
        lines[one.mark.file] = _with_line(lines.get(one.mark.file, ()), one)
        place = Place((one.mark.file,), mark=one.mark)
        problems.append(Problem(place, one.message, one.expected, one.meant))
    return Unreadable(tuple(problems), replace(known, lines=lines))


def in_text(file: str, text: str, start: int, end: int | None = None) -> tuple[Mark, str]:
    """The mark of a stretch of a text, given in characters from 0, and the line it stands on."""
    first = text.rfind("\n", 0, start) + 1
    last = text.find("\n", start)
    line = text[first : len(text) if last < 0 else last].rstrip("\r")
    length = max(1, min((end or start + 1), first + len(line)) - start)
    return Mark(file, text.count("\n", 0, start) + 1, start - first + 1, length), line


def on_line(file: str, text: str, number: int) -> tuple[Mark, str]:
    """The mark of a whole line, counted from 1, and the line itself."""
    lines = text.split("\n")
    line = lines[number - 1].rstrip("\r") if 0 < number <= len(lines) else ""
    indent = len(line) - len(line.lstrip())
    return Mark(file, number, indent + 1, max(1, len(line.strip()))), line


def where_named(marks: Marks, name: str) -> tuple[Mark, str] | None:
    """The first place in the author's files where a file is named; None when it can't be found."""
    for file, lines in sorted(marks.lines.items()):
        for number, line in enumerate(lines, 1):
            if (column := line.find(name)) >= 0:
                return Mark(file, number, column + 1, len(name)), line
    return None


def _with_line(lines: tuple[str, ...], one: Pointed) -> tuple[str, ...]:
    filled = [*lines, *([""] * max(0, one.mark.line - len(lines)))]
    filled[one.mark.line - 1] = one.line
    return tuple(filled)
