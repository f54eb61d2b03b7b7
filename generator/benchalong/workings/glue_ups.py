"""Each glue-up as it is rehearsed: what goes in when, what gets no glue, and whether there is time for it.

Seconds for spreading, for putting together and for clamping are *common practice, no source*; so is what a
glue's maker says better. What can't be done in the time is split in two where the ways in allow it.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from benchalong.ground.lengths import Length
from benchalong.ground.problems import Finding
from benchalong.plan.model import Joint, Meeting, Plan
from benchalong.trade.waits import USUAL_GLUE
from benchalong.workings.extent import EXTENT, Sides
from benchalong.workings.glue import GLUE, Glue
from benchalong.workings.jobs.jobs import JOBS
from benchalong.workings.jobs.model import Task, TaskId
from benchalong.workings.working import Worked, Working

SPREAD, PLACE, CLAMP, CHECK = 20, 30, 30, 60
"""Seconds: to spread glue on one joint, to put one piece in its place, to set one clamp, to measure and
correct."""
TIME = USUAL_GLUE.assembly[0]
"""Minutes until all must stand in clamps, by the shorter end of what the glue is said to allow."""
MANY = 8
"""Clamps: more than one person sets in time."""
LARGE = Length(1000)
"""A side longer than this is no work for one pair of hands."""


@dataclass(frozen=True)
class Joined:
    """Joints of one kind that are made as a row goes in."""

    joint: str
    count: int
    glue: str
    """yes, no, middle or dab; `floats` for what lies loose."""

    @property
    def is_glued(self) -> bool:
        return self.glue not in ("no", "floats")


@dataclass(frozen=True)
class Going:
    """What goes in at one time, in any order."""

    marks: tuple[str, ...]
    makes: tuple[Joined, ...]


@dataclass(frozen=True)
class GlueUp:
    task: TaskId
    rows: tuple[Going, ...]
    clamps: int
    diagonal: Length | None
    """Across its two longest sides, outside, to a tenth of a mm; None where it has no such box."""
    minutes: Fraction
    """From the first drop to the last clamp, for one of them."""
    time: Fraction
    """Minutes that the glue gives."""
    first: tuple[str, ...] = ()
    """Where there isn't time: the marks of what is glued first, by itself; empty where all goes at once, or
    no halves can be made."""
    halves: tuple[Fraction, Fraction] | None = None
    """Minutes that each half takes then."""

    needs_help: bool = False
    """Whether it is too large or too many clamps for one person."""

    @property
    def is_in_time(self) -> bool:
        return self.minutes <= self.time

    @property
    def no_glue(self) -> tuple[Joined, ...]:
        return tuple(one for row in self.rows for one in row.makes if not one.is_glued)


def rehearse(plan: Plan, worked: Worked) -> tuple[tuple[GlueUp, ...], tuple[Finding, ...]]:
    tasks = [task for task in worked[JOBS].tasks if task.kind == "glue up" and task.rows and not task.boards]
    if not tasks:
        return (), ()
    extent, glue = worked[EXTENT], worked[GLUE]()
    sides = extent.assemblies if extent else {}
    return tuple(_rehearsed(plan, task, glue, sides.get(task.assembly)) for task in tasks), ()


def _rehearsed(plan: Plan, task: Task, glue: Glue, sides: Sides | None) -> GlueUp:
    turns = tuple(_in_turn(plan, task))
    is_whole = task.id.count("/") == 1
    joints = {one.joint for turn in turns for one in turn.makes if one.is_glued}
    clamps = sum(glue.joints[one].clamps for one in joints if one in glue.joints)
    minutes = _minutes(turns, clamps)
    across = diagonal(sides) if sides and is_whole else None
    is_large = sides is not None and max(sides.width, sides.depth, sides.height) > LARGE
    needs_help = (is_large and is_whole) or clamps >= MANY
    rows = tuple(_rows(task, turns))
    found = GlueUp(task.id, rows, clamps, across, minutes, TIME, needs_help=needs_help)
    return found if found.is_in_time else _halved(found, turns)


def _in_turn(plan: Plan, task: Task) -> Iterator[Going]:
    """Piece by piece; what stands in one row may go in in any order, so also in this."""
    at = {mark: number for number, mark in enumerate(mark for row in task.rows for mark in row)}
    made: list[dict[tuple[str, str], int]] = [{} for _ in at]
    for joint in plan.joints.values():
        for meeting in joint.meetings:
            goes = _goes_in(task, meeting, at)
            if goes is not None and not joint.words.get("hardware"):
                key = (joint.id, _glue(joint, meeting))
                made[goes][key] = made[goes].get(key, 0) + 1
    for mark, kinds in zip(at, made, strict=True):
        yield Going((mark,), tuple(Joined(joint, count, how) for (joint, how), count in kinds.items()))


def _rows(task: Task, turns: tuple[Going, ...]) -> Iterator[Going]:
    by_mark = {turn.marks[0]: turn for turn in turns}
    for row in task.rows:
        counts: dict[tuple[str, str], int] = {}
        for one in (one for mark in row for one in by_mark[mark].makes):
            counts[one.joint, one.glue] = counts.get((one.joint, one.glue), 0) + one.count
        yield Going(row, tuple(Joined(joint, count, how) for (joint, how), count in counts.items()))


def _goes_in(task: Task, meeting: Meeting, at: dict[str, int]) -> int | None:
    """With which row a joint is made: the later of its two; None for one that isn't in this glue-up."""
    if meeting.takes is None or meeting.assembly != task.assembly:
        return None
    one, two = (_member(side.copy, at) for side in (meeting.cut_in, meeting.takes))
    if one is None or two is None or one == two:
        return None
    return max(at[one], at[two])


def _member(copy: str, at: dict[str, int]) -> str | None:
    return next((mark for mark in at if copy == mark or copy.startswith(f"{mark}/")), None)


def _glue(joint: Joint, meeting: Meeting) -> str:
    takes = meeting.takes
    return "floats" if takes is not None and takes.part in joint.floats else joint.glue


def _minutes(turns: tuple[Going, ...], clamps: int) -> Fraction:
    glued, pieces = _glued(turns), sum(len(turn.marks) for turn in turns)
    return Fraction(glued * SPREAD + pieces * PLACE + clamps * CLAMP + CHECK, 60)


def _glued(turns: tuple[Going, ...]) -> int:
    return sum(one.count for turn in turns for one in turn.makes if one.is_glued)


def _halved(found: GlueUp, turns: tuple[Going, ...]) -> GlueUp:
    """Where to stop so that the longer half is shortest: what is glued first stands in clamps by itself. In
    the second half it goes in as one piece. Clamps are shared out by joints."""

    def halves(first: int) -> tuple[Fraction, Fraction]:
        one, two = turns[:first], (Going(("",), ()), *turns[first:])
        shares = [math.ceil(Fraction(found.clamps * _glued(half), _glued(turns))) for half in (one, two)]
        return _minutes(one, shares[0]), _minutes(two, shares[1])

    useful = [k for k in range(2, len(turns)) if _glued(turns[:k]) and _glued(turns[k:])]
    if not useful:
        return found
    best = min(useful, key=lambda first: (max(halves(first)), first))
    marks = tuple(turn.marks[0] for turn in turns[:best])
    return replace(found, first=marks, halves=halves(best))


def diagonal(sides: Sides) -> Length:
    """Corner to corner over the two longest sides (Pythagoras), to a tenth of a mm."""
    _, two, one = sorted((sides.width, sides.depth, sides.height))
    return Fraction(round(math.hypot(float(one), float(two)) * 10), 10)


GLUE_UPS: Working[tuple[GlueUp, ...]] = Working(
    "glue-ups", "How does each glue-up go, and is there time for it?", rehearse, (JOBS, GLUE, EXTENT)
)
