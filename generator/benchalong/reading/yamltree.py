"""YAML text -> texts, lists and tables, exactly as typed.

The library's parser says what stands where; the tree is put up here from its events, one by one,
for four reasons: nothing is turned into something else (`on`, `1:8` and `4/4` stay texts), depth
and number of nodes are bounded before anything is built, what an anchor multiplies is counted, and
nothing is nested on the machine's own stack.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, ClassVar, Final, TypeAlias

import yaml

from benchalong.ground.marks import Mark
from benchalong.reading.tally import Block, Tally
from benchalong.reading.text import ODD, unseen
from benchalong.reading.yamltraps import explain


class Unread:
    """Stands where something could not be read and has been reported."""


UNREAD: Final = Unread()
Value: TypeAlias = "str | Unread | list[Value] | dict[str, Value] | None"
"""None: a key with nothing after it."""

NO_TAGS = ("a tag (what begins with !) is not read here", "a text that begins with ! in quotes")
MOST_DEEP = 30
MOST_NODES = 200_000
"""In one file, anchors counted as often as they are used."""

LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
"""The C parser where there is one; it is five times faster."""


class Refused(Exception):
    """The rest of this block is not looked at."""

    def __init__(self, event: Any, message: str, expected: str) -> None:
        super().__init__(message)
        self.event = event
        self.expected = expected


@dataclass
class Anchored:
    """What an anchor stands for, and how many nodes that is."""

    value: Any
    nodes: int
    is_open: bool = False


class Builder:
    """Puts a tree up from events. `spots.py` overrides the four small methods at the top, to note where each
    node stands."""

    def __init__(self, block: Block, tally: Tally) -> None:
        self.block = block
        self.tally = tally
        self.root: Any = None
        self._stack: list[tuple[Any, str | None, int]] = []
        self._here: Any = None
        self._key: str | None = None
        self._awaits_value = False
        self._anchors: dict[str, Anchored] = {}
        self._merged: dict[int, list[tuple[Any, Any]]] = {}
        self._key_lines: dict[tuple[int, str], int] = {}
        self._nodes = 0
        self._documents = 0

    def scalar(self, event: Any) -> Any:
        return event.value if event.value or event.style else None

    def sequence(self, event: Any) -> Any:  # noqa: ARG002
        return []

    def mapping(self, event: Any) -> Any:  # noqa: ARG002
        return {}

    def keyed(self, table: Any, key: str, event: Any) -> None:
        """A key was read; the value follows."""

    def build(self) -> Any:
        """The tree, or UNREAD when the text breaks off (reported)."""
        loader = LOADER(self.block.text)
        try:
            while (event := loader.get_event()) is not None:
                self._take[type(event)](self, event)
        except yaml.YAMLError as error:
            self.tally.problems.append(explain(error, self.block))
            return UNREAD
        except Refused as refusal:
            self._complain(refusal.event, str(refusal), refusal.expected)
            return UNREAD
        finally:
            loader.dispose()
        return self.root

    def _scalar(self, event: Any) -> None:
        self._count(event, 1)
        if event.tag is not None:
            self._complain(event, *NO_TAGS)
        value = self.scalar(event) if event.tag is None else UNREAD
        if event.style == '"' and (odd := ODD.search(event.value)):
            self._complain(event, unseen(odd[0]), "the text without it")
            value = UNREAD
        if event.anchor is not None:
            self._anchors[event.anchor] = Anchored(value, 1)
        if isinstance(self._here, dict) and not self._awaits_value:
            self._take_key(event)
        else:
            self._put(value, event)

    def _alias(self, event: Any) -> None:
        known = self._anchors.get(event.anchor)
        if known is None:
            raise Refused(
                event,
                f"*{event.anchor} leads to nothing: no &{event.anchor} stands above",
                "a text that begins with * in quotes",
            )
        if known.is_open:
            raise Refused(
                event,
                f"*{event.anchor} stands inside &{event.anchor}, so it would never end",
                "the values written out",
            )
        self._count(event, known.nodes)
        if isinstance(self._here, dict) and not self._awaits_value:
            raise Refused(event, "an anchor can't stand for a key", "the key written out")
        self._put(known.value, event)

    def _open(self, event: Any) -> None:
        self._count(event, 1)
        if event.tag is not None:
            self._complain(event, *NO_TAGS)
        if isinstance(self._here, dict) and not self._awaits_value:
            raise Refused(event, "a list or table can't be a key", "a name before the colon")
        if len(self._stack) >= MOST_DEEP:
            raise Refused(event, f"this is nested more than {MOST_DEEP} deep", "a flatter plan")
        value = self.sequence(event) if type(event) is yaml.SequenceStartEvent else self.mapping(event)
        if event.anchor is not None:
            self._anchors[event.anchor] = Anchored(value, self._nodes, is_open=True)
        self._put(value if event.tag is None else UNREAD, event)
        self._stack.append((self._here, event.anchor, self._nodes))
        self._here, self._awaits_value = value, False

    def _close(self, event: Any) -> None:  # noqa: ARG002
        done = self._here
        for merged, place in self._merged.pop(id(done), ()):
            self._merge(done, merged, place)
        self._here, anchor, nodes = self._stack.pop()
        if anchor is not None:
            self._anchors[anchor] = Anchored(done, self._nodes - nodes + 1)
        self._awaits_value = False

    def _document(self, event: Any) -> None:
        self._documents += 1
        if self._documents > 1:
            raise Refused(
                event, "a second document begins here", "one document in a file, without `---` lines"
            )

    def _nothing(self, event: Any) -> None:
        """Begins and ends of streams and documents say nothing."""

    _take: ClassVar[dict[type, Callable[[Builder, Any], None]]] = {
        yaml.ScalarEvent: _scalar,
        yaml.AliasEvent: _alias,
        yaml.SequenceStartEvent: _open,
        yaml.MappingStartEvent: _open,
        yaml.SequenceEndEvent: _close,
        yaml.MappingEndEvent: _close,
        yaml.DocumentStartEvent: _document,
        yaml.DocumentEndEvent: _nothing,
        yaml.StreamStartEvent: _nothing,
        yaml.StreamEndEvent: _nothing,
    }

    def _take_key(self, event: Any) -> None:
        key = event.value
        self._key, self._awaits_value = key, True
        if key in self._here:
            first = self._key_lines[id(self._here), key] + self.block.first_line
            self._complain(
                event, f"{key} is written twice; it stands in line {first} already", "each key once"
            )
            self._key = None
        elif not key:
            self._complain(event, "a key is missing before the colon", "a name, a colon, a space and a value")
            self._key = None
        else:
            self._key_lines[id(self._here), key] = event.start_mark.line
            self.keyed(self._here, key, event)

    def _put(self, value: Any, event: Any) -> None:
        here = self._here
        if here is None:
            self.root = value
        elif isinstance(here, list):
            here.append(value)
        else:
            self._awaits_value = False
            if self._key == "<<":
                self._merged.setdefault(id(here), []).append((value, event))
            elif self._key is not None:
                here[self._key] = value

    def _merge(self, table: Any, merged: Any, event: Any) -> None:
        """`<<: *base`: what the table doesn't say itself it takes from another."""
        for other in merged if isinstance(merged, list) else [merged]:
            if not isinstance(other, dict):
                self._complain(
                    event, "<< takes in what isn't a table", "`<<: *name`, where &name marks a table"
                )
                return
            self._take_in(table, other)

    def _take_in(self, table: Any, other: Any) -> None:
        for key, value in other.items():
            table.setdefault(key, value)

    def _count(self, event: Any, nodes: int) -> None:
        self._nodes += nodes
        if self._nodes > MOST_NODES:
            raise Refused(
                event,
                f"this file holds more than {MOST_NODES:,} values, anchors counted each time",
                "a smaller plan",
            )

    def _complain(self, event: Any, message: str, expected: str) -> None:
        self.tally.add_at(mark_of(event, self.block), message, expected=expected)


def read_block(block: Block, tally: Tally) -> Value:
    """The tree of a block; UNREAD, with the path among the unreadable, when it can't be read at all."""
    value: Value = Builder(block, tally).build()
    if value is UNREAD:
        tally.unreadable.add(block.path)
    return value


def mark_of(event: Any, block: Block) -> Mark:
    """Where an event stands in its file; at least one character, and never past its first line."""
    start, end = event.start_mark, event.end_mark
    length = end.column - start.column if end.line == start.line else 1
    return Mark(str(block.path[0]), block.first_line + start.line, start.column + 1, max(1, length))
