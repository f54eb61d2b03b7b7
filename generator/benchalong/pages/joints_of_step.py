"""Which joints a step is about: nobody types it, so it is told from its jobs, its parts and its words.

Cutting touches either side of a joint, closing both; while wood is milled, ripped or sanded, joints would be
in the way. A part may take part in many joints, so where a cutting step speaks of the sizes of some, it is
about those.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping

from benchalong.ground.prose import live_sizes
from benchalong.pages.makings import Makings
from benchalong.plan.model import Joint, Step, StepId
from benchalong.trade.joints import MOVING

MAKES = {"cut", "test piece", "drill"}
CLOSES = {"dry-assemble", "measure and fit", "glue up"}
HANGS = {"hang", "fit hardware"}
TELLING = 2
"""A size that more joints than this follow from, such as the stock's thickness, tells none from another."""
NAME = re.compile(r"[a-z]\w*(?:\.\w+)?")


def joints_of_step(makings: Makings, step: Step) -> tuple[Joint, ...]:
    """In the order of the plan."""
    return makings.once("joints of step", step.id, lambda: _joints(makings, step))


def steps_of_joint(makings: Makings, joint: Joint) -> tuple[StepId, ...]:
    """In the order of work."""
    return tuple(step.id for step in makings.order if joint in joints_of_step(makings, step))


def _joints(makings: Makings, step: Step) -> tuple[Joint, ...]:
    jobs = {job.kind for job in step.does}
    touched = makings.joints_of(step.parts)
    closed = tuple(joint for joint in touched if _closes(jobs, step, joint))
    if jobs and not jobs & MAKES:
        return closed
    spoken_of = _spoken_of(makings, step)
    made = tuple(joint for joint in touched if joint.id in spoken_of)
    return tuple(joint for joint in touched if joint in (*made, *closed)) if made else touched


def _closes(jobs: set[str], step: Step, joint: Joint) -> bool:
    both = ({meeting.cut_in.part, meeting.takes.part} for meeting in joint.meetings if meeting.takes)
    are_there = any(sides <= set(step.parts) for sides in both)
    return are_there and bool(jobs & (HANGS if joint.kind in MOVING else CLOSES))


def _spoken_of(makings: Makings, step: Step) -> set[str]:
    checks = (piece for check in step.checks for piece in check.text)
    prose = (*step.title, *step.why, *step.note, *checks)
    said = {name for piece in live_sizes(prose) for name in NAME.findall(piece.formula)}
    return {joint for joint, names in _telling_names(makings).items() if names & said}


def _telling_names(makings: Makings) -> Mapping[str, set[str]]:
    """By joint: its own sizes by name, and the named sizes that few joints but this follow from."""
    return makings.once("telling names", "", lambda: _names(makings))


def _names(makings: Makings) -> dict[str, set[str]]:
    joints = makings.plan.joints.values()
    follows = {joint.id: {name for size in joint.sizes for name in size.sizes} for joint in joints}
    common = Counter(name for names in follows.values() for name in names)
    return {
        joint.id: {f"{joint.id}.{size.name}" for size in joint.sizes}
        | {name for name in follows[joint.id] if common[name] <= TELLING}
        for joint in joints
    }
