"""Where each value of a file stands. Worked out only for files that a message speaks of."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any, TypeVar

from benchalong.ground.marks import Mark, Marks, Path
from benchalong.reading.language import SIZE
from benchalong.reading.tally import Block, Source, Tally
from benchalong.reading.yamltree import Builder, mark_of

T = TypeVar("T")


@dataclass
class Spot:
    """A text and where it stands."""

    mark: Mark
    inset: int | None


class SpotTable(dict[str, Any]):
    """A table, with its own mark and its keys' marks."""

    def __init__(self, mark: Mark) -> None:
        super().__init__()
        self.mark = mark
        self.key_marks: dict[str, Mark] = {}


class SpotList(list[Any]):
    def __init__(self, mark: Mark) -> None:
        super().__init__()
        self.mark = mark


class SpotBuilder(Builder):
    """Puts up the same tree with marks in place of texts."""

    def scalar(self, event: Any) -> Any:
        if event.style in ("|", ">"):
            return self._block_text(event)
        start, end = event.start_mark, event.end_mark
        is_followed = end.line == start.line and end.column - start.column == len(event.value) + 2 * bool(
            event.style
        )
        return Spot(mark_of(event, self.block), bool(event.style) + 0 if is_followed else None)

    def sequence(self, event: Any) -> Any:
        return SpotList(mark_of(event, self.block))

    def mapping(self, event: Any) -> Any:
        return SpotTable(mark_of(event, self.block))

    def keyed(self, table: Any, key: str, event: Any) -> None:
        table.key_marks[key] = mark_of(event, self.block)

    def _take_in(self, table: Any, other: Any) -> None:
        super()._take_in(table, other)
        for key, mark in other.key_marks.items():
            table.key_marks.setdefault(key, mark)

    def _block_text(self, event: Any) -> Spot:
        """A block after `|` is followed from its first line on; one after `>` is folded and can't be."""
        lines = self.block.text.split("\n")
        line = event.start_mark.line + 1
        filled = next((text for text in lines[line:] if text.strip()), "")
        indent = len(filled) - len(filled.lstrip(" "))
        here = lines[line] if line < len(lines) else ""
        mark = Mark(
            str(self.block.path[0]), self.block.first_line + line, indent + 1, max(1, len(here) - indent)
        )
        return Spot(mark, 0 if event.style == "|" else None)


@dataclass
class FileMarks:
    """The marks of one file, by path."""

    values: dict[Path, Mark] = field(default_factory=dict)
    keys: dict[Path, Mark] = field(default_factory=dict)
    insets: dict[Path, int | None] = field(default_factory=dict)

    def add(self, spot: Any, path: Path) -> None:
        if isinstance(spot, Spot):
            self.values[path], self.insets[path] = spot.mark, spot.inset
        elif isinstance(spot, SpotTable):
            self._add_table(spot, path)
        elif isinstance(spot, SpotList):
            self.values[path] = spot.mark
            for index, item in enumerate(spot):
                self.add(item, (*path, index))

    def _add_table(self, table: SpotTable, path: Path) -> None:
        self.values[path] = table.mark
        bare = table.get(SIZE.shorthand)
        if isinstance(bare, Spot):
            self.values[path], self.insets[path] = bare.mark, bare.inset
        for key, mark in table.key_marks.items():
            self.keys[(*path, key)] = mark
        for key, value in table.items():
            self.add(value, (*path, key))


def file_marks(source: Source) -> FileMarks:
    """Marks of everything in a file that could be read."""
    marks = FileMarks()
    for block in source.blocks:
        marks.add(_spots(block), block.path)
    for path, line in source.notes:
        marks.values[path], marks.insets[path] = Mark(str(path[0]), line, 1), 0
    return marks


def _spots(block: Block) -> Any:
    return SpotBuilder(block, Tally()).build()


class _Sources:
    """The marks of each file, worked out at the first question about it."""

    def __init__(self, sources: Mapping[str, Source]) -> None:
        self.sources = sources
        self._known: dict[str, FileMarks] = {}

    def of(self, file: str) -> FileMarks:
        if file not in self._known:
            source = self.sources.get(file)
            self._known[file] = file_marks(source) if source else FileMarks()
        return self._known[file]


class _ByPath(Mapping[Path, T]):
    """One of the three tables of marks, over all files."""

    def __init__(self, sources: _Sources, table: str) -> None:
        self._sources = sources
        self._table = table

    def _of(self, file: str) -> dict[Path, T]:
        found: dict[Path, T] = getattr(self._sources.of(file), self._table)
        return found

    def __getitem__(self, path: Path) -> T:
        return self._of(str(path[0]) if path else "")[path]

    def __iter__(self) -> Iterator[Path]:
        for file in self._sources.sources:
            yield from self._of(file)

    def __len__(self) -> int:
        return sum(len(self._of(file)) for file in self._sources.sources)


class _Lines(Mapping[str, tuple[str, ...]]):
    """The lines of each file, split at the first question about it."""

    def __init__(self, sources: Mapping[str, Source]) -> None:
        self._sources = sources
        self._known: dict[str, tuple[str, ...]] = {}

    def __getitem__(self, file: str) -> tuple[str, ...]:
        if file not in self._known:
            self._known[file] = tuple(self._sources[file].text.split("\n"))
        return self._known[file]

    def __iter__(self) -> Iterator[str]:
        return iter(self._sources)

    def __len__(self) -> int:
        return len(self._sources)


def marks_of(sources: Mapping[str, Source]) -> Marks:
    """The table of marks that goes with what was read."""
    known = _Sources(sources)
    return Marks(_ByPath(known, "values"), _ByPath(known, "keys"), _ByPath(known, "insets"), _Lines(sources))


def marks_so_far(file: str, tally: Tally) -> Marks:
    """The marks of one file while reading goes on; made again only when the file has a block more."""
    source = tally.sources.get(file)
    if source is None:
        return Marks()
    known = tally.marks_so_far.get(file)
    if known is None or known[0] != len(source.blocks):
        known = tally.marks_so_far[file] = (len(source.blocks), marks_of({file: source}))
    return known[1]
