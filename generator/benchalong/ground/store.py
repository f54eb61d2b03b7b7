"""Finished work that need not be done again, kept by what it was made from."""

from __future__ import annotations

from typing import Protocol


class Store(Protocol):
    """Texts by key. A key says everything the text was made from; what is not found is simply made again."""

    def get(self, key: str) -> str | None: ...

    def put(self, key: str, text: str) -> None: ...


class MemoryStore:
    """A store that lasts as long as the run."""

    def __init__(self) -> None:
        self._texts: dict[str, str] = {}

    def get(self, key: str) -> str | None:
        return self._texts.get(key)

    def put(self, key: str, text: str) -> None:
        self._texts[key] = text
