"""A glue-up on the page of the step that does it: rehearsed dry, then done in that order."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from markupsafe import Markup

from benchalong.drawing.alt import listed
from benchalong.ground.shown import decimal
from benchalong.pages.makings import Makings, joint_name
from benchalong.pages.setup import steps_of
from benchalong.pages.shell import Link
from benchalong.plan.model import Step
from benchalong.trade.waits import USUAL_GLUE
from benchalong.workings.glue_ups import GLUE_UPS, GlueUp, Going, Joined
from benchalong.workings.jobs.jobs import JOBS

HOW = {
    "yes": "glue on all of it",
    "middle": "glue in the middle only",
    "dab": "a dab of glue",
    "no": "no glue",
    "floats": "no glue: it must move",
}


@dataclass(frozen=True)
class MadeShown:
    joint: Link
    count: int
    how: str


@dataclass(frozen=True)
class GoingShown:
    marks: str
    makes: tuple[MadeShown, ...]


@dataclass(frozen=True)
class GlueUpShown:
    id: str
    title: str
    alike: int
    """How many of them; each is glued up by itself."""
    rows: tuple[GoingShown, ...]
    clamps: int
    """0 where they can't be counted."""
    hands: str
    diagonal: Markup
    """Empty where there is none to measure."""
    minutes: str
    time: str
    glue: str
    clamped: str
    is_in_time: bool
    first: str
    """Marks of what is glued first where it must be split in two; empty otherwise."""
    halves: tuple[str, str] | None
    both_in_time: bool


def glue_ups_in(makings: Makings, step: Step) -> tuple[GlueUpShown, ...]:
    by_id = makings.worked[JOBS].by_id
    return tuple(
        _shown(makings, each)
        for each in makings.worked[GLUE_UPS]
        if step.id in steps_of(makings, by_id[each.task])
    )


def _shown(makings: Makings, each: GlueUp) -> GlueUpShown:
    task = makings.worked[JOBS].by_id[each.task]
    return GlueUpShown(
        each.task.replace("/", "-"),
        task.title,
        task.count,
        tuple(_row(makings, row) for row in each.rows),
        each.clamps,
        "Have a second pair of hands." if each.needs_help else "",
        makings.shows.size(each.diagonal) if each.diagonal else Markup(""),
        _minutes(each.minutes),
        _minutes(each.time),
        USUAL_GLUE.name,
        f"{USUAL_GLUE.clamped[0]} to {USUAL_GLUE.clamped[1]} minutes",
        each.is_in_time,
        listed(each.first) if each.first else "",
        (_minutes(each.halves[0]), _minutes(each.halves[1])) if each.halves else None,
        each.halves is not None and max(each.halves) <= each.time,
    )


def _row(makings: Makings, row: Going) -> GoingShown:
    return GoingShown(listed(row.marks), tuple(_made(makings, one) for one in row.makes))


def _made(makings: Makings, one: Joined) -> MadeShown:
    joint = makings.plan.joints[one.joint]
    return MadeShown(Link(makings.joint_link(joint).path, joint_name(joint)), one.count, HOW[one.glue])


def _minutes(minutes: Fraction) -> str:
    return f"{decimal(minutes, 0)} min"
