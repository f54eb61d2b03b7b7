"""The starter as a travelled plan: a small whole project for tests of what is published."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from benchalong.command_line.beginning import lay_down
from benchalong.ground.shown import System
from benchalong.road import Travelled, travel


@cache
def shelf(units: System = "inch") -> Travelled:
    with TemporaryDirectory() as folder:
        lay_down(Path(folder) / "shelf", units=units)
        return travel(Path(folder) / "shelf")


def changed(folder: Path, old: str, new: str, file: str = "project.yaml") -> None:
    """Change one line of a project on the disk."""
    path = folder / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")
