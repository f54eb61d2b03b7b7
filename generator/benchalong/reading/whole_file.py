"""A file that is YAML from its first line to its last."""

from __future__ import annotations

from benchalong.ground.marks import Mark
from benchalong.reading.language import Table
from benchalong.reading.shape import Entry
from benchalong.reading.tally import Block, Source, Tally
from benchalong.reading.yamltree import Unread, read_block


def whole_file(file: str, text: str, table: Table, tally: Tally) -> Entry | None:
    """The file as one table of the language; None when it isn't one (reported)."""
    block = Block((file,), 1, text)
    tally.sources[file] = Source(text, [block])
    values = read_block(block, tally)
    if isinstance(values, dict):
        return Entry(table, values, (file,), tally)
    if not isinstance(values, Unread):
        tally.unreadable.add((file,))
        found = "this file is empty" if values is None else "this file holds no keys"
        expected = ", ".join(f"`{key.name}: …`" for key in table.required or table.keys[:2])
        tally.add_at(Mark(file, 1, 1), found, expected=expected)
    return None
