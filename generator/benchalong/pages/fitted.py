"""What is fitted, not just cut: the size it is sawn to first, and the job that makes it final."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from markupsafe import Markup

from benchalong.pages.makings import Makings
from benchalong.plan.model import Fitted, PartId
from benchalong.workings.jobs.jobs import JOBS
from benchalong.workings.jobs.model import Task


@dataclass(frozen=True)
class FittedShown:
    width: Markup
    """What it is sawn to first; empty where it isn't sawn before it is measured."""
    length: Markup
    job: str
    """The job that makes it final: `Measure and fit Back to Case`."""
    after: tuple[str, ...]
    """The jobs that it waits for."""


def fitted_shown(makings: Makings, part: PartId) -> FittedShown | None:
    """None for a part that is simply cut to its sizes."""
    fitted = makings.plan.fitted.get(part)
    return None if fitted is None else _shown(makings, part, fitted)


def _shown(makings: Makings, part: PartId, fitted: Fitted) -> FittedShown:
    jobs = makings.worked[JOBS]
    task = jobs.makes_final(part)
    first = fitted.first_size(makings.plan.parts[part])
    size = makings.shows.size
    return FittedShown(
        width=size(first[1]) if first else Markup(""),
        length=size(first[0]) if first else Markup(""),
        job=task.title if task else "",
        after=_waited_for(jobs.by_id, task) if task else (),
    )


def _waited_for(by_id: Mapping[str, Task], task: Task) -> tuple[str, ...]:
    return tuple(by_id[need.first].title for need in task.needs if need.rule == "measured")


def first_in_short(makings: Makings, part: PartId) -> Markup:
    """For a line of the cut list: what it is sawn to first; empty for a part that is simply cut."""
    shown = fitted_shown(makings, part)
    if shown is None:
        return Markup("")
    return (
        Markup("first {} by {}").format(shown.width, shown.length) if shown.width else Markup("not sawn yet")
    )
