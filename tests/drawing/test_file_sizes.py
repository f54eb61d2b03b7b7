"""Pictures stay small: the whole piece pulled apart in under 120 kB."""

from __future__ import annotations

from pathlib import Path

import pytest

from bench.scaled import write_scaled
from benchalong.drawing.drawings import Drawings
from benchalong.ground.store import MemoryStore
from benchalong.road import travel
from conftest import ROOT

MOST = 120_000
"""Bytes."""


def apart_sizes(project: Path) -> dict[str, int]:
    """Bytes of each pulled-apart picture, by assembly."""
    travelled = travel(project)
    drawings = Drawings(travelled.plan, travelled.worked, MemoryStore())
    pictures = {name: drawings.apart(name) for name in travelled.plan.assemblies}
    assert pictures[travelled.plan.piece or ""] is not None
    return {name: len(picture.svg.encode()) for name, picture in pictures.items() if picture is not None}


@pytest.mark.parametrize("project", ["seed-cupboard", "step-stool", "joint-samples"])
def test_pulled_apart_pictures_are_small(project: str) -> None:
    sizes = apart_sizes(ROOT / "content" / project)
    assert max(sizes.values()) < MOST, sizes


def test_and_of_a_piece_of_sixty_parts(tmp_path: Path) -> None:
    write_scaled(tmp_path / "scaled", 1)
    sizes = apart_sizes(tmp_path / "scaled")
    assert max(sizes.values()) < MOST, sizes
