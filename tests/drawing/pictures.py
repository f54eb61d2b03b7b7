"""Every picture that a project's site may show, drawn anew."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from pathlib import Path

from benchalong.drawing.drawings import Drawings
from benchalong.drawing.picture import Picture
from benchalong.ground.store import MemoryStore
from benchalong.road import Travelled, travel
from benchalong.workings.boards.boards import BOARDS
from benchalong.workings.floating import FLOATING


def travel_text(text: str) -> Travelled:
    """A project without steps."""
    with tempfile.TemporaryDirectory() as name:
        (Path(name) / "steps").mkdir()
        (Path(name) / "project.yaml").write_text(text, encoding="utf-8")
        return travel(Path(name))


def all_pictures(travelled: Travelled) -> dict[str, Picture]:
    """By a name that says what it is of."""
    drawings = Drawings(travelled.plan, travelled.worked, MemoryStore())
    return {name: picture for name, picture in _each(travelled, drawings) if picture is not None}


def _each(travelled: Travelled, drawings: Drawings) -> Iterator[tuple[str, Picture | None]]:
    plan, worked = travelled.plan, travelled.worked
    for shape in plan.shapes:
        yield f"part {shape}", drawings.part(shape)
        yield f"small {shape}", drawings.small(shape)
    for assembly in plan.assemblies:
        yield f"assembly {assembly}", drawings.assembly(assembly)
        yield f"apart {assembly}", drawings.apart(assembly)
    for step in plan.steps:
        yield f"step {step}", drawings.step(step)
    for joint in plan.joints:
        yield f"section {joint}", drawings.section(joint)
    for part in plan.parts:
        yield f"year {part}", drawings.year(part)
    for panel in worked[FLOATING]:
        yield f"in grooves {panel.part}", drawings.in_grooves(panel.joint, panel.part)
    for group in worked[BOARDS]().groups:
        for board in (*group.boards, *group.more):
            yield f"sawn {group.id} {board.number}", drawings.sawn(group.id, board.number)
