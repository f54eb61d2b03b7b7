"""How a project begins: a small one that publishes as it is, laid down whole or not at all."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

from benchalong.ground.folders import shipped
from benchalong.ground.shown import System
from benchalong.publishing.destination import Refused, new_beside

STARTER = "starter"
BOTH = "both"
"""The files that are the same whatever the plan counts in; beside it a folder for each system."""


def lay_down(folder: Path, *, units: System) -> None:
    """A new project in `folder`, which must not exist yet or be empty. Raises Refused for any other."""
    _refuse_taken(folder)
    whole = folder.absolute()
    new = new_beside(whole, "begin")
    try:
        for source in (BOTH, units):
            _copy_all(shipped("content") / STARTER / source, new)
        _move(new, whole)
    finally:
        shutil.rmtree(new, ignore_errors=True)


def _copy_all(source: Path, target: Path) -> None:
    """The texts alone: what is installed may be read-only, and a project is there to be written in."""
    for file in sorted(path for path in source.rglob("*") if path.is_file()):
        copy = target / file.relative_to(source)
        copy.parent.mkdir(parents=True, exist_ok=True)
        copy.write_bytes(file.read_bytes())


def _move(new: Path, whole: Path) -> None:
    """An empty folder that is there is filled, not replaced: its owner may be standing in it."""
    if not whole.exists():
        new.rename(whole)
        return
    for entry in sorted(new.iterdir()):
        entry.rename(whole / entry.name)


def _refuse_taken(folder: Path) -> None:
    if folder.is_symlink():
        raise Refused(f"{folder} is a link to another place; name a new folder")
    if folder.exists() and not folder.is_dir():
        raise Refused(f"{folder} is a file; name a new folder")
    if folder.is_dir() and any(os.scandir(folder)):
        raise Refused(f"{folder} holds files already; name a new or an empty folder")
