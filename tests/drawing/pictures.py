"""Every picture that a project's site may show, drawn anew."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from pathlib import Path

from benchalong.drawing.drawings import Drawings
from benchalong.drawing.picture import Picture
from benchalong.ground.store import MemoryStore
from benchalong.plan.model import Plan
from benchalong.road import Travelled, travel


def travel_text(text: str) -> Travelled:
    """A project without steps."""
    with tempfile.TemporaryDirectory() as name:
        (Path(name) / "steps").mkdir()
        (Path(name) / "project.yaml").write_text(text, encoding="utf-8")
        return travel(Path(name))


def all_pictures(travelled: Travelled) -> dict[str, Picture]:
    """By a name that says what it is of."""
    plan = travelled.plan
    drawings = Drawings(plan, travelled.worked, MemoryStore())
    return {name: picture for name, picture in _each(plan, drawings) if picture is not None}


def _each(plan: Plan, drawings: Drawings) -> Iterator[tuple[str, Picture | None]]:
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
