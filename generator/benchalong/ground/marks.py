"""Where things stand in the author's files.

Values do not carry their place; a table beside them does. So two projects that differ in a comment
are equal in all that follows, and only messages know of lines and columns.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Literal, TypeAlias

Path: TypeAlias = tuple[str | int, ...]
"""The way to a value: the file, relative to the project, then keys and indices.
`("project.yaml", "parts", "door_rail", "length")`, `("steps/03-mill.md", "checks", 0)`.
The body of a note is `(file, "note")`."""


@dataclass(frozen=True)
class Mark:
    """A stretch of one line in a file; line and column count from 1, the length in characters."""

    file: str
    line: int
    column: int
    length: int = 1


@dataclass(frozen=True)
class Place:
    """What a message is about: a value, its key, or a stretch of a scalar's own text."""

    path: Path
    on: Literal["value", "key"] = "value"
    start: int | None = None
    """First character inside the scalar's text, from 0; None for the whole."""
    end: int | None = None
    """One past the last character inside the scalar's text."""
    mark: Mark | None = None
    """Where it stands, for what has no path: a line that can't be read at all."""

    def key(self) -> Place:
        return Place(self.path, on="key")


def at(*path: str | int) -> Place:
    """The place of a value: `at("project.yaml", "sizes", "stile")`."""
    return Place(path)


@dataclass(frozen=True)
class Marks:
    """Path to mark, and each file's lines as the author wrote them."""

    values: Mapping[Path, Mark] = field(default_factory=dict)
    keys: Mapping[Path, Mark] = field(default_factory=dict)
    insets: Mapping[Path, int | None] = field(default_factory=dict)
    """For texts: how many characters stand between the mark and the text itself (1 for a quote);
    None when the text can't be followed character by character (folded, escaped). A text of several
    lines (a note, a block after `|`) goes on at the same column of the lines that follow."""
    lines: Mapping[str, tuple[str, ...]] = field(default_factory=dict)

    def find(self, place: Place) -> Mark:
        """The mark of a place; of the nearest thing around it when the place itself isn't written."""
        if place.mark is not None:
            return place.mark
        if place.on == "key" and place.path in self.keys:
            return self.keys[place.path]
        path = self._written(place.path)
        mark = self.values.get(path)
        if mark is None:
            return self._around(place.path)
        if place.start is None:
            return mark
        return self._inside(replace(place, path=path), mark)

    def line(self, mark: Mark) -> str:
        """The author's own line, without its line break; empty when there is none."""
        lines = self.lines.get(mark.file, ())
        return lines[mark.line - 1] if 0 < mark.line <= len(lines) else ""

    def _written(self, path: Path) -> Path:
        """The path as written: a list of one may be written as that one alone, a table as its one text."""
        is_alone = path not in self.values and path[:-1] in self.insets
        return path[:-1] if is_alone else path

    def _around(self, path: Path) -> Mark:
        for length in range(len(path) - 1, 0, -1):
            around = path[:length]
            if around in self.keys:
                return self.keys[around]
            if around in self.values:
                return self.values[around]
        return Mark(str(path[0]) if path else "", 1, 1)

    def _inside(self, place: Place, mark: Mark) -> Mark:
        inset = self.insets.get(place.path)
        if inset is None or place.start is None:
            return mark
        length = 1 if place.end is None else max(1, place.end - place.start)
        return self._onward(Mark(mark.file, mark.line, mark.column + inset, length), place.start)

    def _onward(self, mark: Mark, characters: int) -> Mark:
        """So many characters further on, from line to line of a text that starts in the mark's column."""
        line = mark.line
        while characters:
            here = max(0, len(self.line(Mark(mark.file, line, 1))) - (mark.column - 1))
            if characters <= here or line >= len(self.lines.get(mark.file, ())):
                break
            characters -= here + 1
            line += 1
        return Mark(mark.file, line, mark.column + characters, mark.length)
