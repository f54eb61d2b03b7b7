"""Writing a site's files; a file that is the same as in the site before is taken over.

Taken over means a second name for the file that is there: a twentieth of the work of writing it, and it
keeps its date, so that whoever copies the site elsewhere copies only what changed. Nothing of ours ever
writes into a file that exists, so two sites that share one can't get into each other's way.
"""

from __future__ import annotations

import os
import stat
from pathlib import Path


class SiteFiles:
    """Writes files by their path in the site; makes each folder once."""

    def __init__(self, folder: Path, *, before: Path | None = None) -> None:
        """`before` is a site that may not be there."""
        self._folder = str(folder)
        self._before = str(before) if before and before.is_dir() else ""
        self._made: set[str] = {""}
        self._written: set[str] = set()
        self.top: set[str] = set()
        """Names at the top of the site."""

    def write(self, path: str, text: str | bytes) -> None:
        above, _, _ = path.rpartition("/")
        if above not in self._made:
            os.makedirs(os.path.join(self._folder, above), exist_ok=True)
            self._made.add(above)
        if path in self._written:
            raise AssertionError(f"two files of the site would be {path}")
        self._written.add(path)
        self.top.add(path.partition("/")[0])
        data = text.encode() if isinstance(text, str) else text
        if not (self._before and self._take_over(path, data)):
            with open(f"{self._folder}/{path}", "wb", buffering=0) as file:
                file.write(data)

    def _take_over(self, path: str, data: bytes) -> bool:
        """Whether the site before has this very file, and the new one has it now too."""
        old = f"{self._before}/{path}"
        try:
            state = os.lstat(old)
            if not stat.S_ISREG(state.st_mode) or state.st_size != len(data):
                return False
            with open(old, "rb", buffering=0) as file:
                if file.read() != data:
                    return False
            os.link(old, f"{self._folder}/{path}")
        except (OSError, NotImplementedError):  # not every file system and system has second names
            return False
        return True
