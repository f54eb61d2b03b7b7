"""The starter as a travelled plan: a small whole project for tests of what is published."""

from __future__ import annotations

from functools import cache
from hashlib import sha256
from pathlib import Path
from tempfile import TemporaryDirectory

from PIL import Image

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


def digests(folder: Path) -> dict[str, str]:
    files = (path for path in folder.rglob("*") if path.is_file())
    return {str(path.relative_to(folder)): sha256(path.read_bytes()).hexdigest() for path in files}


LID = """\
title: Box
units: inch
sizes:
  wide: 6 in
stock:
  oak: {kind: board, thickness: 3/4 in}
parts:
  lid: {stock: oak, width: wide, length: 2*wide}
assemblies:
  box:
    place:
      - {part: lid, at: [0, 0, 0], along: right, face: up}
stages:
  all: {title: All of it}
"""


def project_with(folder: Path, step: str) -> Path:
    """A lid, a picture of it, and one step."""
    for inside in ("steps", "pictures"):
        (folder / inside).mkdir(parents=True, exist_ok=True)
    (folder / "project.yaml").write_text(LID, encoding="utf-8")
    (folder / "steps" / "01-cut.md").write_text(step, encoding="utf-8")
    Image.new("RGB", (20, 10)).save(folder / "pictures" / "lid.png")
    return folder
