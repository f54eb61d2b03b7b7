"""The plan language as Markdown, for the README: out of the same table that reading uses."""

from __future__ import annotations

import sys

from benchalong.reading.language import JOBS, Key, Kind, Table
from benchalong.reading.tables import TABLES


def reference(*, heading: str = "###") -> str:
    """A heading and a table of keys for each table of the language; keys that must be there are bold."""
    sections = [_section(table, heading) for table in TABLES]
    return "\n".join([*sections, f"{heading} The jobs of a step\n", f"{', '.join(JOBS)}.\n"])


def _section(table: Table, heading: str) -> str:
    title = f"{heading} {table.called[0].upper()}{table.called[1:]}"
    rows = [f"| {_name(key)} | {_holds(key)} | {key.meaning} |" for key in table.keys]
    where = f"{table.where[0].upper()}{table.where[1:]}."
    if table.shorthand:
        where += f" A bare value stands for `{table.shorthand}`."
    return "\n".join([title, "", where, "", "| key | holds | meaning |", "| --- | --- | --- |", *rows, ""])


def _name(key: Key) -> str:
    return f"**`{key.name}`**" if key.required else f"`{key.name}`"


def _holds(key: Key) -> str:
    words = ", ".join(f"`{word}`" for word in key.words)
    if key.kind is Kind.WORD:
        return words
    return f"{key.kind.value}, or {words}" if words else key.kind.value


if __name__ == "__main__":
    sys.stdout.write(reference())
