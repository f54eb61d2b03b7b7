"""The plan check's page: what was asked, what could not be looked at and why, what was found, and how much
play each joint has. An author can send it to others; it says that it is no dry fit."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from benchalong.drawing.alt import listed
from benchalong.ground.words import counted, in_sentence
from benchalong.pages.findings import FindingLine, found
from benchalong.pages.makings import Makings, joint_name
from benchalong.pages.play import PlayLine, play_of
from benchalong.pages.shell import Link, Shell
from benchalong.plan.model import Plan
from benchalong.workings.copies import COPIES
from benchalong.workings.order import WORKINGS
from benchalong.workings.placed import PLACED
from benchalong.workings.telling import start
from benchalong.workings.working import Working


@dataclass(frozen=True)
class JointPlay:
    joint: Link
    kind: str
    play: tuple[PlayLine, ...]


@dataclass(frozen=True)
class CheckPage:
    shell: Shell
    asked: tuple[str, ...]
    """Every question that was asked of the whole plan, as a woodworker would ask it."""
    looked_at: str
    """`12 sizes, 8 parts, …`."""
    not_looked: tuple[str, ...]
    """What could not be looked at, and why: a sentence each."""
    faults: tuple[FindingLine, ...]
    doubts: tuple[FindingLine, ...]
    notes: tuple[FindingLine, ...]
    joints: tuple[JointPlay, ...]


def check_page(makings: Makings) -> CheckPage:
    plan = makings.plan
    return CheckPage(
        shell=Shell("check", "check.html", "Plan check"),
        asked=tuple(working.question for working in WORKINGS if plan.copies or not _needs_places(working)),
        looked_at=_looked_at(plan),
        not_looked=tuple(_not_looked(makings)),
        faults=found(makings, "fault"),
        doubts=found(makings, "doubt"),
        notes=found(makings, "note"),
        joints=tuple(
            JointPlay(makings.joint_link(joint), joint.kind.capitalize(), play)
            for joint in plan.joints.values()
            if (play := play_of(makings, joint))
        ),
    )


def _looked_at(plan: Plan) -> str:
    amounts = (
        (len(plan.sizes), "size"),
        (len(plan.parts), "part"),
        (sum(len(part.cuts) for part in plan.parts.values()), "cut"),
        (len(plan.joints), "joint"),
        (len(plan.copies), "placed piece"),
        (len(plan.steps), "step"),
    )
    return listed([counted(count, noun) for count, noun in amounts if count])


def _needs_places(working: Working[Any]) -> bool:
    """Whether it looks at where parts stand."""
    return working in (COPIES, PLACED) or any(_needs_places(need) for need in working.needs)


def _not_looked(makings: Makings) -> Iterator[str]:
    plan = makings.plan
    standing = {copy.part for copy in plan.copies}
    loose = [in_sentence(part.name) for part in plan.parts.values() if part.id not in standing]
    if not plan.copies:
        yield "Nothing is placed yet, so these could not be asked:"
        yield from (working.question for working in WORKINGS if _needs_places(working))
    elif loose:
        stand, fit = ("stands", "it fits") if len(loose) == 1 else ("stand", "they fit")
        yield f"{start(listed(loose))} {stand} nowhere in the piece, so whether {fit} was not looked at."
    for joint in plan.joints.values() if plan.copies else ():
        if not joint.meetings:
            yield f"Nothing meets in the joint {joint_name(joint)}, so there was nothing to measure."
    if not plan.steps:
        yield "There are no steps yet, so their order was not looked at."
