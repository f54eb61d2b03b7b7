"""A style kept by subject: a folder of styles, in order of its files' names, is one file of the site.

`styles/sheet/10-colours.css`, `20-words.css` … become `sheet.css`. Rules further on win over those before, so
the names begin with a number. A file `sheet.css` stands in for the whole folder.
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path


def style_names(above: Path, ending: str) -> list[str]:
    """Every style in a folder and in the folders of it: `print.css`, `sheet/10-colours.css`."""
    inner = [entry for entry in above.iterdir() if entry.is_dir() and not entry.is_symlink()]
    found = [*above.iterdir(), *(file for folder in inner for file in folder.iterdir())]
    return sorted(file.relative_to(above).as_posix() for file in found if file.name.endswith(ending))


def whole_names(names: Iterable[str], ending: str) -> set[str]:
    """The files that folders become: `sheet.css`."""
    return {name.split("/")[0] + ending for name in names if "/" in name}


def pieces_of(whole: str, names: Iterable[str], ending: str) -> list[str]:
    """What a whole file is put together from, in order; itself where it is there."""
    known = set(names)
    folder = whole.removesuffix(ending) + "/"
    return [whole] if whole in known else sorted(name for name in known if name.startswith(folder))
