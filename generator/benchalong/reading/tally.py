"""What a run of reading gathers besides values: problems, what could not be read, and each file's text."""

from __future__ import annotations

from dataclasses import dataclass, field

from benchalong.ground.marks import Mark, Marks, Path, Place
from benchalong.ground.problems import Problem


@dataclass(frozen=True)
class Block:
    """A stretch of YAML in a file: the whole of `project.yaml`, or a block between two `---` lines."""

    path: Path
    """What stands in front of the paths of its values."""
    first_line: int
    """The line of the file it begins on, from 1."""
    text: str


@dataclass
class Source:
    """A file as it was typed, and what it is made up of; marks are worked out from it when asked for."""

    text: str
    blocks: list[Block] = field(default_factory=list)
    notes: list[tuple[Path, int]] = field(default_factory=list)
    """Markdown in the file: its path and first line."""


@dataclass
class Tally:
    """Gathered while reading goes on after each problem."""

    problems: list[Problem] = field(default_factory=list)
    unreadable: set[Path] = field(default_factory=set)
    sources: dict[str, Source] = field(default_factory=dict)
    marks_so_far: dict[str, tuple[int, Marks]] = field(default_factory=dict)
    """For those problems that look at the author's line while reading goes on; see `spots.py`."""
    size_names: frozenset[str] = frozenset()
    """Names under `sizes:`, once they are known: a word that is near `centred` may be one of these."""
    pictures: frozenset[str] = frozenset()
    """Every picture file in the project."""

    def add(self, place: Place, message: str, *, expected: str = "", meant: tuple[str, ...] = ()) -> None:
        """A problem with a value: the value counts as unread from here on."""
        self.problems.append(Problem(place, message, expected, meant))
        self.unreadable.add(place.path)

    def add_at(self, mark: Mark, message: str, *, expected: str = "", meant: tuple[str, ...] = ()) -> None:
        """A problem with a line that has no path of its own."""
        self.problems.append(Problem(Place((mark.file,), mark=mark), message, expected, meant))

    def add_file(self, file: str, message: str, *, expected: str = "", meant: tuple[str, ...] = ()) -> None:
        """A problem with a file as a whole, or with a folder: none of it can be read."""
        self.add(Place((file,), mark=Mark(file, 1, 1)), message, expected=expected, meant=meant)
