"""A project's folder: which files are in it, that none leads out of it, and what they hold."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

from benchalong.reading.tally import Tally
from benchalong.reading.text import MOST_BYTES, MOST_NOTE_BYTES, decode

MOST_FILES = 5_000
"""In one of the project's folders."""
PICTURE_STARTS = {
    ".png": (b"\x89PNG\r\n\x1a\n",),
    ".jpg": (b"\xff\xd8\xff",),
    ".jpeg": (b"\xff\xd8\xff",),
    ".gif": (b"GIF87a", b"GIF89a"),
    ".webp": (b"RIFF",),
}
"""Endings of picture files, and the bytes they begin with."""


class Folder:
    """Looks into a project; says what can't be had, and hands out nothing that lies outside it."""

    def __init__(self, root: Path, tally: Tally) -> None:
        self.root = root
        self.tally = tally
        self._real = Path(os.path.realpath(root))

    def text(self, file: str) -> str | None:
        """What a file holds; None when that can't be had (reported)."""
        most = MOST_NOTE_BYTES if file.endswith(".md") else MOST_BYTES
        try:
            with open(self.root / file, "rb") as opened:
                data = opened.read(most + 1)
        except OSError as error:
            self.tally.add_file(file, f"{file} can't be read: {_reason(error)}")
            return None
        return decode(data, file, self.tally, most=most)

    def is_inside(self, file: str) -> bool:
        """Whether a file or folder, links followed, lies within the project; reported when not."""
        real = Path(os.path.realpath(self.root / file))
        if real == self._real or self._real in real.parents:
            return True
        self.tally.add_file(file, f"{file} leads out of the project", expected="the file itself in its place")
        return False

    def files(self, name: str) -> list[str]:
        """The files in one of the project's folders, `steps/03-mill.md`, in the order of their names.
        Hidden files are passed over; a folder that isn't there holds none."""
        found = [entry for entry in self._entries(name) if not entry.name.startswith(".")]
        if len(found) > MOST_FILES:
            self.tally.add_file(
                name, f"{name}/ holds more than {MOST_FILES:,} files", expected="a smaller project"
            )
            return []
        return sorted(
            f"{name}/{entry.name}" for entry in found if self._is_plain(entry, f"{name}/{entry.name}")
        )

    def pictures(self, name: str) -> Iterator[str]:
        """Picture files; anything else in their folder is reported."""
        for file in self.files(name):
            if self._is_picture(file):
                yield file

    def _entries(self, name: str) -> list[os.DirEntry[str]]:
        folder = self.root / name
        if not os.path.lexists(folder):
            return []
        if not folder.is_dir():
            self.tally.add_file(
                name, f"{name} is a file, and a folder is expected here", expected=f"a folder {name}/"
            )
            return []
        try:
            with os.scandir(folder) as entries:
                return list(entries) if self.is_inside(name) else []
        except OSError as error:
            self.tally.add_file(name, f"the folder {name}/ can't be read: {_reason(error)}")
            return []

    def _is_plain(self, entry: os.DirEntry[str], file: str) -> bool:
        if not entry.name.isprintable():
            shown = ascii(entry.name)
            self.tally.add_file(
                f"{file.rpartition('/')[0]}/{shown}",
                f"the file name {shown} can't be used",
                expected="a name without control characters",
            )
            return False
        if entry.is_symlink() and not self.is_inside(file):
            return False
        if entry.is_file():
            return True
        what = "a folder" if entry.is_dir() else "not a file"
        self.tally.add_file(
            file,
            f"{file} is {what}, and only files are read here",
            expected="the files themselves, without folders",
        )
        return False

    def _is_picture(self, file: str) -> bool:
        ending = os.path.splitext(file)[1].lower()
        if ending not in PICTURE_STARTS:
            reason = ": an SVG can carry a program" if ending == ".svg" else ""
            self.tally.add_file(
                file, f"{file} is not taken as a picture{reason}", expected="png, jpg, webp or gif"
            )
            return False
        try:
            with open(self.root / file, "rb") as opened:
                start = opened.read(12)
        except OSError as error:
            self.tally.add_file(file, f"{file} can't be read: {_reason(error)}")
            return False
        if start.startswith(PICTURE_STARTS[ending]) and (ending != ".webp" or start[8:] == b"WEBP"):
            return True
        self.tally.add_file(
            file, f"{file} doesn't hold what its ending says", expected=f"a picture saved as {ending[1:]}"
        )
        return False


def _reason(error: OSError) -> str:
    return (error.strerror or type(error).__name__).lower()
