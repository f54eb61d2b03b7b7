"""The way a load takes through the joints, from what it lies on to what the fixings go through."""

from __future__ import annotations

from collections import defaultdict, deque
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from benchalong.plan.model import Joint, Meeting, PartId, Plan
from benchalong.trade.joints import MOVING


@dataclass(frozen=True)
class Step:
    """From one copy to the next."""

    joint: Joint
    meeting: Meeting
    to: str
    """The mark of the copy it comes to."""


@dataclass(frozen=True)
class Way:
    """A load on its way to the rail."""

    part: PartId
    """What it lies on."""
    kilograms: Fraction
    """On one copy."""
    marks: tuple[str, ...]
    """The copies that carry so much, by mark."""
    joints: tuple[str, ...]
    """By id, in the order in which they carry it."""
    through: tuple[PartId, ...]
    """The parts between them; the rail is the last."""
    sides: int
    """At how many places the first joint takes it over."""


@dataclass(frozen=True)
class Network:
    plan: Plan
    steps: Mapping[str, tuple[Step, ...]]
    """From each copy, by its mark."""


def network(plan: Plan) -> Network:
    """All joints that hold parts to each other; what lets them move carries them, too, but nothing else."""
    found: defaultdict[str, list[Step]] = defaultdict(list)
    for joint in plan.joints.values():
        for meeting in joint.meetings if joint.kind not in MOVING else ():
            if meeting.takes is not None and meeting.takes.part not in joint.floats:
                one, other = meeting.cut_in.copy, meeting.takes.copy
                found[one].append(Step(joint, meeting, other))
                found[other].append(Step(joint, meeting, one))
    return Network(plan, {mark: tuple(steps) for mark, steps in found.items()})


def shortest(net: Network, start: str, goal: PartId) -> tuple[Step, ...] | None:
    """The fewest joints to any copy of the part; None where there is no way."""
    part_of = {copy.mark: copy.part for copy in net.plan.copies}
    before: dict[str, tuple[Step, ...]] = {start: ()}
    waiting = deque([start])
    while waiting:
        here = waiting.popleft()
        if part_of[here] == goal:
            return before[here]
        for step in net.steps.get(here, ()):
            if step.to not in before:
                before[step.to] = (*before[here], step)
                waiting.append(step.to)
    return None


def ways(net: Network, goal: PartId) -> Iterator[Way]:
    """Of every part that carries something; those without a way are left out."""
    part_of = {copy.mark: copy.part for copy in net.plan.copies}
    for part, _load in net.plan.loads.items():
        alike: defaultdict[tuple[tuple[str, ...], tuple[PartId, ...], int], list[str]] = defaultdict(list)
        for copy in (copy for copy in net.plan.copies if copy.part == part):
            steps = shortest(net, copy.mark, goal)
            if steps is not None:
                joints = tuple(step.joint.id for step in steps)
                through = tuple(part_of[step.to] for step in steps)
                alike[joints, through, _sides(net, copy.mark, joints)].append(copy.mark)
        for (joints, through, sides), marks in alike.items():
            whole = load_on(net.plan, part)
            yield Way(part, whole, tuple(marks), joints, through, sides)


def load_on(plan: Plan, part: PartId) -> Fraction:
    """Kilograms on one copy of a part: the whole of what is said, or so much for each length of it."""
    load = plan.loads[part]
    return load.kilograms * ((load.span or plan.parts[part].length) / load.per if load.per else 1)


def _sides(net: Network, mark: str, joints: tuple[str, ...]) -> int:
    """At how many places the joint it leaves by holds it."""
    return sum(step.joint.id == joints[0] for step in net.steps.get(mark, ())) if joints else 0
