"""How a project begins: a small one that publishes as it is, laid down whole or not at all."""

from __future__ import annotations

import os
import secrets
import shutil
from pathlib import Path

from benchalong.ground.folders import shipped
from benchalong.ground.shown import System
from benchalong.publishing.destination import Refused

STARTER = "starter"
BOTH = "both"
"""The files that are the same whatever the plan counts in; beside it a folder for each system."""


def lay_down(folder: Path, *, units: System) -> None:
    """A new project in `folder`, which must not exist yet or be empty. Raises Refused for any other."""
    _refuse_taken(folder)
    whole = folder.absolute()
    new = whole.with_name(f".{whole.name}.benchalong-begin-{secrets.token_hex(4)}")
    whole.parent.mkdir(parents=True, exist_ok=True)
    try:
        for source in (BOTH, units):
            shutil.copytree(
                shipped("content") / STARTER / source, new, copy_function=_copy, dirs_exist_ok=True
            )
        if whole.exists():
            whole.rmdir()
        new.rename(whole)
    finally:
        shutil.rmtree(new, ignore_errors=True)


def _copy(source: str, target: str) -> None:
    """The text alone: what is installed may be read-only, and a project is there to be written in."""
    Path(target).write_bytes(Path(source).read_bytes())


def _refuse_taken(folder: Path) -> None:
    if folder.is_symlink():
        raise Refused(f"{folder} is a link to another place; name a new folder")
    if folder.exists() and not folder.is_dir():
        raise Refused(f"{folder} is a file; name a new folder")
    if folder.is_dir() and any(os.scandir(folder)):
        raise Refused(f"{folder} holds files already; name a new or an empty folder")
