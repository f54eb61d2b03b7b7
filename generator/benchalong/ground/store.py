"""Finished work that need not be done again, kept by what it was made from."""

from __future__ import annotations

import sys
from collections.abc import Iterable
from functools import cache
from hashlib import sha256
from importlib.util import find_spec
from pathlib import Path
from typing import Protocol

CODE = (".py", ".csv", ".json")
LIBRARIES = ("highspy", "jinja2", "manifold3d", "markdown_it", "markupsafe", "nh3", "numpy", "svgwrite")
"""Those that have a hand in what a site says."""


class Store(Protocol):
    """Texts by key. A key says everything the text was made from; what is not found is simply made again."""

    def get(self, key: str) -> str | None: ...

    def put(self, key: str, text: str) -> None: ...


def code_digest(modules: Iterable[Path], *more: str) -> str:
    """Of the code that makes something, for its key: a changed rule changes every key, where a number to be
    raised by hand would be forgotten once."""
    return sha256(b"".join(module.read_bytes() for module in modules) + "".join(more).encode()).hexdigest()


@cache
def whole_code() -> str:
    """A digest of this whole package with its tables and texts, and of Python's and the libraries' releases:
    for what many rooms have a hand in."""
    package = Path(__file__).parents[1]
    files = sorted(file for file in package.rglob("*") if file.suffix in CODE and file.is_file())
    return code_digest(files, sys.version, *map(library_state, LIBRARIES))


def library_state(library: str) -> str:
    """Changes when another version is installed; the library itself is not loaded."""
    found = find_spec(library)
    state = Path(found.origin).stat() if found and found.origin else None
    return f"{library} {state.st_size} {state.st_mtime_ns}" if state else library


class MemoryStore:
    """A store that lasts as long as the run."""

    def __init__(self) -> None:
        self._texts: dict[str, str] = {}

    def get(self, key: str) -> str | None:
        return self._texts.get(key)

    def put(self, key: str, text: str) -> None:
        self._texts[key] = text


class Shelf:
    """Many small texts kept as one, since a thousand files take longer to open than to make again.

    Found by its name; each text on it by a key that says all it was made from, as anywhere in a store. What
    was not asked for since the shelf was taken out is not put back.
    """

    def __init__(self, store: Store, name: str) -> None:
        self._store = store
        self._name = f"shelf {name}"
        lines = (store.get(self._name) or "").split("\n")
        self._found = {key: text for key, _, text in (line.partition(" ") for line in lines) if text}
        self._used: dict[str, str] = {}

    def get(self, key: str) -> str | None:
        text = self._found.get(key)
        if text is not None:
            self._used[key] = text
        return text

    def put(self, key: str, text: str) -> None:
        """A key without spaces and a text of one line. Raises ValueError for others."""
        if " " in key or "\n" in key or "\n" in text:
            raise ValueError("a shelf holds one line for each key")
        self._used[key] = text

    def put_back(self) -> None:
        """Keep it for the next run."""
        if self._used != self._found:
            self._store.put(self._name, "\n".join(f"{key} {text}" for key, text in self._used.items()))
