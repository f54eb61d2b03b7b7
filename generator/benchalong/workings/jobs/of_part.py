"""A task on all copies of one part."""

from __future__ import annotations

from benchalong.plan.model import Part
from benchalong.workings.jobs.model import Task


def part_task(kind: str, part: Part, title: str, *called: str, **given: object) -> Task:
    """A task on all copies of one part."""
    told: dict[str, object] = {"id": f"{kind.replace(' ', '-')}/{part.id}", "parts": (part.id,)} | given
    return Task(
        kind=kind,
        title=title,
        called=(kind, *called),
        marks=part.marks,
        count=part.count,
        **told,  # type: ignore[arg-type]
    )
