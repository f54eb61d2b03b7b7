"""Finished work kept between runs, in the user's cache folder.

Texts only, never anything that could run. A store that is damaged, full or not writable makes a
publish slower, never wrong and never fail. Each text stands with the key it was made from, so a
damaged or foreign file is simply not found.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import sys
import time
from pathlib import Path

KEPT_FOR = 60 * 24 * 3600
"""Seconds after which an unused text goes."""
LARGEST = 256 * 1024 * 1024
"""Bytes the whole store may take; the oldest go first."""


def cache_folder() -> Path:
    """Where this system keeps what can be made again."""
    if named := os.environ.get("XDG_CACHE_HOME"):
        return Path(named) / "benchalong"
    if sys.platform == "darwin":
        return Path.home() / "Library" / "Caches" / "benchalong"
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA") or Path.home()) / "benchalong" / "cache"
    return Path.home() / ".cache" / "benchalong"


class FolderStore:
    """Texts in files named by the hash of their key."""

    def __init__(self, folder: Path) -> None:
        self._folder = str(folder)
        self._made: set[str] = set()
        self._writable = True

    def get(self, key: str) -> str | None:
        try:
            with open(self._file(key), encoding="utf-8", newline="") as file:
                head, text, end = _taken_apart(file.read())
        except (OSError, ValueError):
            return None
        return text if head == _name(key) and end == _check(text) else None

    def put(self, key: str, text: str) -> None:
        if not self._writable:
            return
        file = self._file(key)
        half = f"{file}.{os.getpid()}"
        try:
            self._make(os.path.dirname(file))
            with open(half, "w", encoding="utf-8", newline="") as new:
                new.write(f"{_name(key)}\n{_check(text)}\n{text}")
            os.replace(half, file)
        except (OSError, ValueError):
            self._writable = False
            with contextlib.suppress(OSError):
                os.unlink(half)

    def prune(self, now: float | None = None) -> None:
        """Drop what was not made lately, and the oldest when all together is too large."""
        files = sorted(_files(self._folder), reverse=True)
        oldest = (time.time() if now is None else now) - KEPT_FOR
        kept = 0
        for made, size, name in files:
            kept += size
            if made < oldest or kept > LARGEST:
                with contextlib.suppress(OSError):
                    os.unlink(name)

    def _file(self, key: str) -> str:
        name = _name(key)
        return os.path.join(self._folder, name[:2], name)

    def _make(self, folder: str) -> None:
        if folder not in self._made:
            os.makedirs(folder, exist_ok=True)
            self._made.add(folder)


def _name(key: str) -> str:
    return hashlib.sha256(key.encode()).hexdigest()


def _taken_apart(whole: str) -> tuple[str, str, str]:
    head, check, text = whole.split("\n", 2)
    return head, text, check


def _check(text: str) -> str:
    return hashlib.blake2b(text.encode(), digest_size=8).hexdigest()


def _files(folder: str) -> list[tuple[float, int, str]]:
    found = []
    for above, _, names in os.walk(folder):
        for name in names:
            with contextlib.suppress(OSError):
                state = os.stat(os.path.join(above, name))
                found.append((state.st_mtime, state.st_size, os.path.join(above, name)))
    return found
