"""What shows in the examples' own pictures, against the z-buffer: each as it stands and pulled apart."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import pytest

from benchalong.drawing import piece
from benchalong.drawing.drawings import Drawings
from benchalong.drawing.eye import PIECE_EYE
from benchalong.drawing.hidden import Standing
from benchalong.ground.store import MemoryStore
from benchalong.road import travel
from benchalong.workings.copies import Copy
from benchalong.workings.solids import ShapeId, Solid
from conftest import EXAMPLES, ROOT
from drawing.test_hidden import Thing, wrong_pixels

PIXELS = 240
"""Across each picture."""
LEAST = {"seed-cupboard": 6, "step-stool": 2}
"""Pictures there must be: of the piece and each assembly, whole and pulled apart."""


def scenes(project: str, monkeypatch: pytest.MonkeyPatch) -> dict[str, list[Thing]]:
    """What each picture is drawn from, taken from the drawing itself just before hidden surfaces go."""
    travelled = travel(ROOT / "content" / project)
    drawings = Drawings(travelled.plan, travelled.worked, MemoryStore())
    drawn: list[list[Thing]] = []
    stand = piece._standing

    def noted(copies: Sequence[Copy], solids: Mapping[ShapeId, Solid], *more: Any) -> list[Standing]:
        bodies = stand(copies, solids, *more)
        drawn.append([Thing(solids[copy.shape], body) for copy, body in zip(copies, bodies, strict=True)])
        return bodies

    monkeypatch.setattr(piece, "_standing", noted)
    found: dict[str, list[Thing]] = {}
    for assembly in travelled.plan.assemblies:
        for way, draw in (("whole", drawings.assembly), ("apart", drawings.apart)):
            if draw(assembly) is not None:
                found[f"{assembly}, {way}"] = drawn.pop()
            assert drawn == []
    return found


@pytest.mark.parametrize("project", EXAMPLES)
def test_every_picture_agrees_with_a_z_buffer(project: str, monkeypatch: pytest.MonkeyPatch) -> None:
    pictures = scenes(project, monkeypatch)
    assert len(pictures) >= LEAST[project], list(pictures)
    wrong = {name: wrong_pixels(things, PIECE_EYE, PIXELS) for name, things in pictures.items()}
    assert wrong == dict.fromkeys(pictures, 0)
