"""Where a site goes, and how it gets there whole.

A site is written into a new folder beside its place, then the old one is moved away, the new one moved
in and the old one deleted. Whoever reads meanwhile sees the old site or the new one, never a mixture,
and whatever fails leaves the old one where it was. What is not ours is never touched.
"""

from __future__ import annotations

import contextlib
import json
import os
import secrets
import shutil
import time
from collections.abc import Iterator
from pathlib import Path

MARKER = "benchalong-site.json"
"""The file that says a folder is a site of ours, and what it holds at its top."""

LEFT_ALONE = 3600
"""Seconds after which a half-written folder beside a site counts as left over from an interrupted run."""


class Refused(Exception):
    """The folder can't be published into; the message is a sentence for the user."""


class Destination:
    """A folder that may be published into: empty, missing, or a site of ours."""

    def __init__(self, into: Path, *, project: Path | None) -> None:
        """Raises Refused for any other folder. `project` is the folder that must stay untouched."""
        self.shown = into
        _refuse_links(into)
        self.folder = Path(os.path.abspath(into)).parent.resolve() / Path(os.path.abspath(into)).name
        if project is not None:
            _refuse_project(self.folder, project.resolve(), into)
        _refuse_standing_in(self.folder, into)
        self._bring_back()
        _refuse_foreign(self.folder, into)

    @contextlib.contextmanager
    def new_site(self) -> Iterator[Path]:
        """A folder to write the new site into; it takes the old one's place when the block ends well."""
        self._clear_left_over()
        new = new_beside(self.folder, "new")
        try:
            yield new
            self._swap(new)
        finally:
            shutil.rmtree(new, ignore_errors=True)

    def _swap(self, new: Path) -> None:
        if not self.folder.exists():
            new.rename(self.folder)
            return
        _refuse_foreign(self.folder, self.shown)
        old = _name_beside(self.folder, "old")
        self.folder.rename(old)
        try:
            new.rename(self.folder)
        except BaseException:
            old.rename(self.folder)
            raise
        shutil.rmtree(old, ignore_errors=True)

    def _bring_back(self) -> None:
        """The old site, when a run was cut off just between moving it away and moving the new one in."""
        if self.folder.exists():
            return
        for old in self._left_over("old"):
            if is_site(old):
                old.rename(self.folder)
                return

    def _clear_left_over(self) -> None:
        for folder in (*self._left_over("new"), *self._left_over("old")):
            with contextlib.suppress(OSError):
                if time.time() - folder.stat().st_mtime > LEFT_ALONE:
                    shutil.rmtree(folder, ignore_errors=True)

    def _left_over(self, which: str) -> list[Path]:
        prefix = _prefix(self.folder, which)
        with contextlib.suppress(OSError):
            return sorted(entry for entry in self.folder.parent.iterdir() if entry.name.startswith(prefix))
        return []


def new_beside(folder: Path, which: str) -> Path:
    """A new, empty folder beside `folder`, whose place it can take by being renamed. Raises Refused."""
    new = _name_beside(folder, which)
    try:
        folder.parent.mkdir(parents=True, exist_ok=True)
        new.mkdir()
    except OSError as error:
        why = (error.strerror or "").lower()
        raise Refused(f"{folder.parent} can't be written into: {why}; name a folder elsewhere") from None
    return new


def is_site(folder: Path) -> bool:
    """Whether the folder says that benchalong wrote it."""
    return _held(folder) is not None


def marker_text(project: str, edition: str, holds: set[str]) -> str:
    """What stands in the marker: no dates, so that the same project gives the same bytes."""
    said = {
        "made_by": "benchalong",
        "project": project,
        "edition": edition,
        "holds": sorted({*holds, MARKER}),
    }
    return json.dumps(said, indent=2, ensure_ascii=False) + "\n"


def _name_beside(folder: Path, which: str) -> Path:
    return folder.with_name(f"{_prefix(folder, which)}{secrets.token_hex(4)}")


def _prefix(folder: Path, which: str) -> str:
    return f".{folder.name}.benchalong-{which}-"


def _held(folder: Path) -> frozenset[str] | None:
    """What a publish put at the top of a site of ours; None for any other folder."""
    try:
        said = json.loads((folder / MARKER).read_text(encoding="utf-8"))
        return frozenset(said["holds"]) if said["made_by"] == "benchalong" else None
    except (OSError, ValueError, KeyError, TypeError):
        return None


def _refuse_links(into: Path) -> None:
    if into.is_symlink():
        raise Refused(f"{into} is a link to another place; name the folder itself")
    if into.exists() and not into.is_dir():
        raise Refused(f"{into} is a file; name a folder for the site")


def _refuse_project(folder: Path, project: Path, shown: Path) -> None:
    if _same(folder, project):
        raise Refused(f"{shown} is the project itself; publish into another folder, beside it")
    if any(_same(above, project) for above in folder.parents):
        raise Refused(f"{shown} lies inside the project; publish into a folder beside it")
    if any(_same(folder, above) for above in project.parents):
        raise Refused(f"{shown} holds the project; publish into a folder of its own")


def _refuse_standing_in(folder: Path, shown: Path) -> None:
    here = Path.cwd()
    if folder.exists() and any(_same(folder, above) for above in (here, *here.parents)):
        raise Refused(f"you are standing in {shown}, and it would be replaced; go up a folder first")


def _refuse_foreign(folder: Path, shown: Path) -> None:
    if not folder.exists():
        return
    try:
        present = {entry.name for entry in os.scandir(folder)}
    except PermissionError:
        raise Refused(f"{shown} can't be looked into: permission denied") from None
    if not present:
        return
    held = _held(folder)
    if held is None:
        raise Refused(f"{shown} holds files and is not a site of ours; name an empty or a new folder")
    if more := sorted(present - held):
        named = ", ".join(more[:3]) + (" and more" if len(more) > 3 else "")
        raise Refused(f"{shown} holds what no publish wrote ({named}), and would lose it; move it out first")


def _same(one: Path, other: Path) -> bool:
    if one == other:
        return True
    with contextlib.suppress(OSError):
        return os.path.samefile(one, other)
    return False
