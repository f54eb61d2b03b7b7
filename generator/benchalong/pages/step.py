"""A step's page, in the order a builder needs it, and the step itself as the paper edition shows it too."""

from __future__ import annotations

import json
from dataclasses import dataclass

from markupsafe import Markup

from benchalong.ground.prose import Prose, live_sizes
from benchalong.pages.glue_ups import GlueUpShown, glue_ups_in
from benchalong.pages.held import HeldShown, cautions_in_step, held_in_step
from benchalong.pages.joint import JointLine, joint_line
from benchalong.pages.joints_of_step import joints_of_step
from benchalong.pages.makings import Makings, drawn, duration
from benchalong.pages.part import PartLine, part_line
from benchalong.pages.prose import Fills
from benchalong.pages.questions import Thread, threads_of
from benchalong.pages.setups import cautions_of_work, setups_in_step
from benchalong.pages.shell import Link, Shell
from benchalong.plan.model import DoneTo, Job, Plan, Step, StepId

HANDS = {1: "One person", 2: "Two people", 3: "Three people"}


@dataclass(frozen=True)
class CheckLine:
    """Something to tick; `key` is what the tick is kept under."""

    key: str
    text: Markup


@dataclass(frozen=True)
class AmissLine:
    sign: Markup
    cause: Markup
    cure: Markup


@dataclass(frozen=True)
class JobLine:
    """One line of what is done: `Mill`, and to what."""

    job: str
    to: tuple[str, ...]


@dataclass(frozen=True)
class Thing:
    """A jig or a piece of hardware."""

    name: str
    about: str


@dataclass(frozen=True)
class PictureShown:
    path: str
    """From the site's root."""
    alt: str
    caption: Markup


@dataclass(frozen=True)
class StepShown:
    """A step, wherever it is shown."""

    id: StepId
    number: int
    title: Markup
    why: Markup
    cautions: tuple[Markup, ...]
    jobs: tuple[JobLine, ...]
    minutes: str
    wait: str
    hands: str
    needs_help: bool
    """Whether one person is not enough."""
    tools: tuple[str, ...]
    jigs: tuple[Thing, ...]
    hardware: tuple[Thing, ...]
    parts: tuple[PartLine, ...]
    is_rounded: bool
    """Whether any size of these parts is shown rounded."""
    picture: Markup
    """Its assembly, with the parts it touches standing out."""
    joints: tuple[JointLine, ...]
    """Those that it makes, tries or closes, as far as can be told."""
    note: Markup
    glue_ups: tuple[GlueUpShown, ...]
    setups: tuple[Link, ...]
    """Those of the work that it does."""
    pictures: tuple[PictureShown, ...]
    checks: tuple[CheckLine, ...]
    amiss: tuple[AmissLine, ...]
    asks: tuple[Markup, ...]
    """What the author asks the builders here."""
    held: tuple[HeldShown, ...]
    """How the piece is held, where this step hangs it."""


@dataclass(frozen=True)
class HandOverShown:
    """Where a question can go."""

    mail: str
    """A `mailto:` address; empty where the project names none."""
    mail_address: str
    board: str


@dataclass(frozen=True)
class StepPage:
    shell: Shell
    stage: Link
    stage_number: int
    stages: int
    steps: int
    """How many the whole build has."""
    step: StepShown
    threads: tuple[Thread, ...]
    hand_over: HandOverShown
    previous: Link | None
    next: Link | None
    data: Markup
    """For the page's own script: the step's id and the sizes it shows, by name."""


def step_page(makings: Makings, step: Step) -> StepPage:
    number = makings.number[step.id]
    stages = tuple(makings.plan.stages)
    shown = step_shown(makings, step, makings.inner)
    title = makings.inner.plain(step.title)
    return StepPage(
        shell=Shell("step", f"steps/{step.id}.html", title),
        stage=makings.stage_link(step.stage),
        stage_number=stages.index(step.stage) + 1,
        stages=len(stages),
        steps=len(makings.order),
        step=shown,
        threads=threads_of(makings, step.id, makings.inner, headings=4),
        hand_over=_hand_over(makings),
        previous=makings.step_link(makings.order[number - 2].id) if number > 1 else None,
        next=makings.step_link(makings.order[number].id) if number < len(makings.order) else None,
        data=embedded_json(sizes_shown(makings, step)),
    )


def step_shown(makings: Makings, step: Step, fills: Fills, *, headings: int = 3) -> StepShown:
    """The note's own headings begin at the level given."""
    plan = makings.plan
    parts = tuple(part_line(makings, part) for part in step.parts)
    return StepShown(
        id=step.id,
        number=makings.number[step.id],
        title=makings.step_titles[step.id],
        why=fills.fill(step.why),
        cautions=(
            *(fills.fill(caution) for caution in step.cautions),
            *cautions_in_step(makings, step),
            *cautions_of_work(makings, step),
        ),
        jobs=tuple(_job(plan, job) for job in step.does),
        minutes=duration(step.minutes),
        wait=step.wait,
        hands=HANDS.get(step.hands, f"{step.hands} people"),
        needs_help=step.hands > 1,
        tools=step.tools,
        jigs=tuple(Thing(plan.jigs[jig].name, plan.jigs[jig].purpose) for jig in step.jigs),
        hardware=tuple(
            Thing(plan.hardware[thing].name, plan.hardware[thing].size) for thing in step.hardware
        ),
        parts=parts,
        is_rounded=any(part.is_rounded for part in parts),
        picture=drawn(makings.drawings.step(step.id)),
        joints=tuple(joint_line(makings, joint) for joint in joints_of_step(makings, step)),
        note=fills.fill(step.note, headings=headings),
        glue_ups=glue_ups_in(makings, step),
        setups=setups_in_step(makings, step),
        pictures=tuple(PictureShown(pic.file, pic.alt, fills.fill(pic.caption)) for pic in step.pictures),
        checks=checks_shown(fills, step),
        amiss=tuple(AmissLine(*map(fills.fill, (line.sign, line.cause, line.cure))) for line in step.amiss),
        asks=tuple(fills.fill(asked) for asked in step.ask),
        held=held_in_step(makings, step),
    )


def checks_shown(fills: Fills, step: Step) -> tuple[CheckLine, ...]:
    return tuple(CheckLine(check.key, fills.fill(check.text)) for check in step.checks)


def _job(plan: Plan, job: Job) -> JobLine:
    whole = [to for to in job.to if not (to.joints or to.cuts)]
    names = [plan.assemblies[of].name for to in whole for of in to.assemblies]
    names += [plan.parts[of].name for to in whole for of in to.parts]
    names += [plan.hardware[of].name for to in whole for of in to.hardware]
    names += [_narrowed(plan, to) for to in job.to if to not in whole]
    return JobLine(job.kind[:1].upper() + job.kind[1:], tuple(names))


def _narrowed(plan: Plan, to: DoneTo) -> str:
    """What is cut, and in brackets what narrows it: `Side (shelf dado)`, `door frame (tongue)`."""
    parts, joints = [plan.parts[of].name for of in to.parts], [plan.joints[of].name for of in to.joints]
    head, rest = (parts, [*joints, *to.cuts]) if parts else (joints, list(to.cuts))
    if not head:
        return ", ".join(to.cuts)
    return f"{', '.join(head)} ({', '.join(rest)})" if rest else ", ".join(head)


def _hand_over(makings: Makings) -> HandOverShown:
    ask = makings.plan.ask
    return HandOverShown(
        mail=f"mailto:{ask.mail}" if ask.mail else "", mail_address=ask.mail, board=ask.board
    )


def sizes_shown(makings: Makings, step: Step) -> dict[str, object]:
    """The step's id and every size it shows, exact in mm, by name, with words for the names."""
    sizes: dict[str, str] = {}
    names: dict[str, str] = {}
    for part in (makings.plan.parts[of] for of in step.parts):
        for side, length in (("thickness", part.thickness), ("width", part.width), ("length", part.length)):
            sizes[f"{part.id}.{side}"] = str(length)
            names[f"{part.id}.{side}"] = f"{part.name}, {side}"
    for piece in live_sizes(_prose_of(step)):
        sizes.setdefault(piece.formula, str(piece.length))
        names.setdefault(piece.formula, piece.formula.replace("_", " "))
    return {"step": step.id, "sizes": sizes, "names": names}


def _prose_of(step: Step) -> Prose:
    checks = (piece for check in step.checks for piece in check.text)
    return (*step.title, *step.why, *step.note, *checks)


def embedded_json(value: object) -> Markup:
    """JSON that may stand inside a script element: nothing in it can end the element."""
    text = json.dumps(value, ensure_ascii=False, separators=(",", ":"))
    return Markup(text.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029"))
