"""One joint: its kind says which keys it takes."""

from __future__ import annotations

from benchalong.reading.joint_language import JOINT, JOINT_KINDS
from benchalong.reading.language import Kind
from benchalong.reading.shape import Entry
from benchalong.reading.written import Joint

COMMON = ("kind", "cut_in", "takes", "only", "floats", "name", "glue", "note")
"""Keys that have a field of their own; the rest go by kind."""


def joint(entry: Entry) -> Joint:
    if entry.table is JOINT:
        return _of_no_kind(entry)
    own = [key for key in entry.table.keys if key.name not in COMMON]
    sizes = {key.name: entry.formula(key.name) for key in own if key.kind is Kind.FORMULA}
    words = {key.name: _word(entry, key.name, key.kind) for key in own if key.kind is not Kind.FORMULA}
    return Joint(
        kind=entry.text("kind", Kind.WORD),
        cut_in=entry.texts("cut_in"),
        takes=entry.texts("takes"),
        floats=entry.names("floats") if "floats" in entry.table.by_name else (),
        only=entry.texts("only"),
        sizes={key: size for key, size in sizes.items() if size is not None},
        words={key: word for key, word in words.items() if word},
        name=entry.text("name"),
        glue=entry.word("glue"),
        note=entry.text("note"),
    )


def _word(entry: Entry, key: str, kind: Kind) -> str:
    if kind is Kind.WORD:
        return entry.word(key)
    if kind is Kind.NAME:
        return entry.name(key)
    if kind is Kind.COUNT:
        count = entry.count(key)
        return "" if count is None else str(count)
    return entry.text(key)


def _of_no_kind(entry: Entry) -> Joint:
    """What it does can't be said, so its kind is all that is looked at."""
    kind = entry.text("kind", Kind.WORD)
    if kind:
        entry.one_of(kind, JOINT_KINDS, (*entry.path, "kind"), "a joint")
    entry.tally.unreadable.add(entry.path)
    return Joint()
