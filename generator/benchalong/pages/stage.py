"""A stage's page: what it's for, its steps, and everything to be ticked in it."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from benchalong.pages.makings import Makings, duration
from benchalong.pages.part import PartLine, part_line
from benchalong.pages.shell import Link, Shell
from benchalong.pages.step import HANDS, CheckLine, checks_shown, embedded_json, sizes_shown
from benchalong.plan.model import Stage, StageId, Step, StepId


@dataclass(frozen=True)
class StepLine:
    """A step where its stage lists it."""

    id: StepId
    number: int
    link: Link
    minutes: str
    wait: str
    hands: str
    needs_help: bool
    checks: tuple[CheckLine, ...]
    parts: tuple[PartLine, ...]


@dataclass(frozen=True)
class StagePage:
    shell: Shell
    id: StageId
    number: int
    stages: int
    title: Markup
    about: Markup
    steps: tuple[StepLine, ...]
    has_checks: bool
    tools: tuple[str, ...]
    """Everything its steps use, in the order of first use."""
    minutes: str
    """Work in the whole stage; empty unless every step says its own."""
    previous: Link | None
    next: Link | None
    data: Markup
    """For the page's own script: for each step the sizes it shows, as on the step's own page."""


def stage_page(makings: Makings, stage: Stage) -> StagePage:
    plan = makings.plan
    order = tuple(plan.stages)
    number = order.index(stage.id)
    steps = tuple(plan.steps[step] for step in stage.steps)
    return StagePage(
        shell=Shell("stage", f"stages/{stage.id}.html", makings.inner.plain(stage.title)),
        id=stage.id,
        number=number + 1,
        stages=len(order),
        title=makings.stage_titles[stage.id],
        about=makings.inner.fill(stage.about, headings=2),
        steps=tuple(step_line(makings, step) for step in steps),
        has_checks=any(step.checks for step in steps),
        tools=tuple(dict.fromkeys(tool for step in steps for tool in step.tools)),
        minutes=whole_time(steps),
        previous=makings.stage_link(order[number - 1]) if number else None,
        next=makings.stage_link(order[number + 1]) if number + 1 < len(order) else None,
        data=embedded_json({"steps": {step.id: sizes_shown(makings, step) for step in steps}}),
    )


def step_line(makings: Makings, step: Step) -> StepLine:
    return StepLine(
        id=step.id,
        number=makings.number[step.id],
        link=makings.step_link(step.id),
        minutes=duration(step.minutes),
        wait=step.wait,
        hands=HANDS.get(step.hands, f"{step.hands} people"),
        needs_help=step.hands > 1,
        checks=checks_shown(makings.inner, step),
        parts=tuple(part_line(makings, part) for part in step.parts),
    )


def whole_time(steps: tuple[Step, ...]) -> str:
    """The work in all these steps; empty unless each says its own."""
    minutes = [step.minutes for step in steps if step.minutes is not None]
    return duration(sum(minutes)) if minutes and len(minutes) == len(steps) else ""
