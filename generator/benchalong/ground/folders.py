"""Where the themes and examples lie: inside the installed package, or beside it in a checkout."""

from __future__ import annotations

from pathlib import Path

PACKAGE = Path(__file__).resolve().parent.parent


def shipped(name: str) -> Path:
    """The folder `themes` or `content`. Raises FileNotFoundError when the installation is broken."""
    for folder in (PACKAGE / name, PACKAGE.parent.parent / name):
        if folder.is_dir():
            return folder
    raise FileNotFoundError(f"the folder {name} is missing from this installation of benchalong")
