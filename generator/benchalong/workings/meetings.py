"""Do the parts of each joint meet, close where they should, and have the play they were meant to?

Parts that lie in each other are told of by the clashes; this looks at what is left open.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from benchalong.ground.lengths import Length
from benchalong.ground.problems import Finding
from benchalong.plan.model import Joint, Plan
from benchalong.workings.clashes import CLASHES
from benchalong.workings.facing import Faces
from benchalong.workings.fit import Fit, fit_of
from benchalong.workings.joined.closes import BOTTOMS, CLOSES, closes
from benchalong.workings.joined.look import JointLook
from benchalong.workings.joined.unmet import unfilled, unmet
from benchalong.workings.overlap import TOUCHING, Clash
from benchalong.workings.panels import look_at_panels
from benchalong.workings.placed import PLACED, Placed
from benchalong.workings.working import Worked, Working


@dataclass(frozen=True)
class JointFit:
    """Everything measured at one joint."""

    fits: tuple[Fit, ...]

    @property
    def end(self) -> tuple[Length, Length] | None:
        """The least and the greatest room beyond the end of what enters."""
        return _range(fit.end for fit in self.fits)

    @property
    def play(self) -> Mapping[str, tuple[Length, Length]]:
        """By direction of what enters: the least and the greatest play in all, both sides together."""
        found: dict[str, list[Length]] = {}
        for fit in self.fits:
            for key, size in fit.in_all.items():
                found.setdefault(key, []).append(size)
        return {key: (min(sizes), max(sizes)) for key, sizes in found.items()}


def check_meetings(plan: Plan, worked: Worked) -> tuple[Mapping[str, JointFit], tuple[Finding, ...]]:
    placed, clashes = worked[PLACED], worked[CLASHES].clashes
    faces = Faces(placed)
    clashing = {clash.marks for clash in clashes}
    found: dict[str, JointFit] = {}
    findings: list[Finding] = []
    for joint in plan.joints.values():
        fits = tuple(
            fit
            for meeting in joint.meetings
            if (fit := fit_of(meeting, placed, faces, has_shoulder=joint.kind in BOTTOMS)) is not None
        )
        found[joint.id] = JointFit(fits)
        free = [fit for fit in fits if fit.marks not in clashing]
        findings += _looked_at(plan, placed, joint, free)
    return found, tuple(findings)


def _looked_at(plan: Plan, placed: Placed, joint: Joint, fits: list[Fit]) -> Iterator[Finding]:
    loose, fixed = list[Fit](), list[Fit]()
    for fit in fits:
        takes = fit.meeting.takes
        (loose if takes and takes.part in joint.floats else fixed).append(fit)
    look = JointLook(plan, placed, joint, fixed)
    yield from unmet(look)
    yield from closes(look)
    yield from look_at_panels(plan, placed, joint, loose)
    yield from unfilled(look)


def _range(values: Iterable[Length | None]) -> tuple[Length, Length] | None:
    known = [value for value in values if value is not None]
    return (min(known), max(known)) if known else None


def troubled_copies(plan: Plan, clashes: Iterable[Clash], fits: Mapping[str, JointFit]) -> frozenset[str]:
    """The marks of copies that clash, meet nothing or stay open: what is told of them hangs on that."""
    found = {mark for clash in clashes for mark in clash.marks}
    for joint in plan.joints.values():
        if joint.kind in CLOSES:
            found |= {m for f in fits[joint.id].fits if (f.shoulder or 0) > TOUCHING for m in f.marks}
        if joint.unmet:
            found |= {side.copy for side in (*joint.unmet, *joint.receivers)}
    return frozenset(found)


MEETINGS: Working[Mapping[str, JointFit]] = Working(
    "meetings",
    "Do the parts of each joint meet and close, and with how much play?",
    check_meetings,
    (PLACED, CLASHES),
)
