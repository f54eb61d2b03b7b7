"""The first example made larger: bays of it, as they'd line a wall."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

CUPBOARD = Path(__file__).resolve().parents[2] / "content" / "seed-cupboard"
EACH = 61
"""Parts in a pair of bays: two cupboards of 23 parts, three doors of 5."""

BAYS = """\
  large_bay:
    place:
      - {assembly: cupboard, mark: C, at: [0 in, 0 in, 0 in]}
      - {assembly: door, mark: D1, at: [40 in, 0 in, 0 in]}
      - {assembly: door, mark: D2, at: [60 in, 0 in, 0 in], mirror: left to right}
  small_bay:
    place:
      - {assembly: cupboard, mark: C, at: [0 in, 0 in, 0 in], mirror: left to right}
      - {assembly: door, mark: D1, at: [40 in, 0 in, 0 in]}
  house:
    name: House
    place:
"""


def write_scaled(folder: Path, pairs: int) -> None:
    """A project of so many times 61 parts, each four deep: bay, cupboard, door, panel."""
    shutil.copytree(CUPBOARD, folder, dirs_exist_ok=True)
    file = folder / "project.yaml"
    text = file.read_text(encoding="utf-8").replace("piece: cupboard", "piece: house")
    text = re.sub(r"\nmatches:\n(?:  .*\n)*", "\n", text)  # it names copies by marks that are others here
    file.write_text(text.replace("\nhardware:", f"{BAYS}{_places(pairs)}\nhardware:", 1), encoding="utf-8")


def _places(pairs: int) -> str:
    """Two rows of bays, one above the other, touching."""
    lines = []
    for n in range(pairs):
        x, z = 160 * (n // 2), 35 * (n % 2)
        lines += [
            f"      - {{assembly: large_bay, mark: L{n}, at: [{x} in, 0 in, {z} in]}}",
            f"      - {{assembly: small_bay, mark: S{n}, at: [{x + 80} in, 0 in, {z} in]}}",
        ]
    return "\n".join(lines) + "\n"
