"""Does what moves move freely? Doors, lids and drawers are taken through their whole travel.

Each is moved while all others are shut. Where it runs into another that moves, too, that one is opened first:
a drawer may wait for its door. Two that each wait for the other bind. At last each two whose ways cross are
tried with one of them wide open and the other on its way.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import combinations

import numpy as np

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding, Level
from benchalong.ground.words import in_sentence
from benchalong.plan.model import Plan
from benchalong.workings.clashes import CLASHES
from benchalong.workings.hardware import HARDWARE
from benchalong.workings.opened import Bench
from benchalong.workings.placed import Lying
from benchalong.workings.sweep import TOUCHING, Hit, Turning
from benchalong.workings.telling import Telling, called, exact, place_sizes
from benchalong.workings.what_moves import Moving, motion_of, movings
from benchalong.workings.working import Worked, Working

EARLY = 30
"""What binds before it is open so many degrees binds by an edge."""
MOST_PAIRS = 300
"""So many pairs are tried with both open."""
HANGS = "hang"
"""The job after which the back of the piece is against a wall."""


def move_all(plan: Plan, worked: Worked) -> tuple[tuple[Moving, ...], tuple[Finding, ...]]:
    fitted = worked[HARDWARE]
    placed = fitted.placed
    clashing = frozenset((c.one.number, c.other.number) for c in worked[CLASHES].clashes)
    clashing |= fitted.clashing
    bench, moving = Bench(plan, placed, clashing), movings(plan, placed)
    loose = {number for one in moving for number in one.copies}
    fixed = [one.number for one in placed.lying if one.number not in loose]
    findings: list[Finding] = []
    waits: dict[str, dict[str, Hit]] = {}
    for one in moving:
        hits = bench.hits(one, fixed)
        findings += [_Told(bench, one, _worst(hits)).finding()] if hits else []
        findings += _into_wall(bench, one)
        waits[one.goes] = {
            other.goes: _worst(found)
            for other in moving
            if bench.near(one).intersection(other.copies)
            and not set(other.copies) & set(one.copies)
            and (found := bench.hits(one, other.copies))
        }
    findings += _waiting(bench, moving, waits)
    findings += _both_open(plan, bench, moving, waits)
    return tuple(replace(one, first=tuple(waits[one.goes])) for one in moving), tuple(findings)


def _worst(hits: Sequence[Hit]) -> Hit:
    return max(hits, key=lambda hit: (round(hit.by, 4), -hit.at, -hit.mover, -hit.other))


def _waiting(
    bench: Bench, moving: Sequence[Moving], waits: Mapping[str, Mapping[str, Hit]]
) -> Iterator[Finding]:
    """Two that wait for each other bind; one that waits for another must pass it when that is open."""
    by_mark = {one.goes: one for one in moving}
    for one in moving:
        for mark, hit in waits[one.goes].items():
            other = by_mark[mark]
            if one.goes in waits[mark]:
                if one.goes < mark:
                    yield _Told(bench, one, hit).finding(" while both are shut")
            elif found := bench.hits(one, other.copies, opened=other):
                yield _Told(bench, one, _worst(found)).finding(f", even with {_name(bench, other)} wide open")


def _both_open(
    plan: Plan, bench: Bench, moving: Sequence[Moving], waits: Mapping[str, Mapping[str, Hit]]
) -> Iterator[Finding]:
    """Two that don't hinder each other shut: one wide open, the other on its way."""
    pairs = [
        (one, other)
        for one, other in combinations(moving, 2)
        if not set(one.copies) & set(other.copies)
        and other.goes not in waits[one.goes]
        and one.goes not in waits[other.goes]
        and bench.cross(one, other)
    ]
    for one, other in pairs[:MOST_PAIRS]:
        for goes, stands in ((one, other), (other, one)):
            if found := bench.hits(goes, stands.copies, opened=stands):
                told = _Told(bench, goes, _worst(found))
                yield told.finding(
                    f" while {_name(bench, stands)} is open", code="open-into-open", level="doubt"
                )
                break
    if len(pairs) > MOST_PAIRS:
        yield Finding(
            "open-pairs-left-out",
            "note",
            Place(("project.yaml", "joints")).key(),
            plan.id,
            f"{len(pairs)} pairs of what opens come near each other; only {MOST_PAIRS} were tried both open",
            "look at the others at the bench",
        )


def _name(bench: Bench, moving: Moving) -> str:
    """`door LD`."""
    lying = bench.placed.lying[moving.copies[0]]
    depth = moving.goes.count("/") + 1
    if len(lying.copy.assemblies) <= depth:
        return called(lying)
    name = bench.plan.assemblies[lying.copy.assemblies[depth]].name
    return f"{in_sentence(name)} {moving.goes}"


def _subject(bench: Bench, moving: Moving) -> str:
    lying = bench.placed.lying[moving.copies[0]]
    depth = moving.goes.count("/") + 1
    return lying.copy.part if len(lying.copy.assemblies) <= depth else lying.copy.assemblies[depth]


class _Told:
    """A hit on its way to words."""

    def __init__(self, bench: Bench, moving: Moving, hit: Hit) -> None:
        self.bench, self.moving, self.hit = bench, moving, hit
        self.turns = moving.moves.how == "turns"

    def finding(self, when: str = "", *, code: str = "", level: Level = "fault") -> Finding:
        by = exact(round(self.hit.by, 3))
        said = Telling(self.bench.plan).shown(by)
        one, other = (self.bench.placed.lying[n] for n in (self.hit.mover, self.hit.other))
        name = _name(self.bench, self.moving)
        goes = "open" if self.turns else "slide out"
        message = (
            f"{name[:1].upper()}{name[1:]} doesn't {goes} freely{when}:"
            f" {called(one)} runs into {called(other)} by {said}, {self._from()}"
        )
        return Finding(
            code or ("turns-into" if self.turns else "slides-into"),
            level,
            Place(("project.yaml", "joints", self.moving.joint)).key(),
            _subject(self.bench, self.moving),
            message,
            self._remedy(one, other, said),
            {"by": by},
            place_sizes(self.bench.plan, one.copy, other.copy),
        )

    def _from(self) -> str:
        if self.turns:
            return f"{self.hit.at:.0f}° open" if self.hit.at >= 1 else "as it begins to open"
        out = Telling(self.bench.plan).shown(exact(round(self.hit.at, 3)))
        return f"{out} out" if self.hit.at > TOUCHING else "as it begins to slide"

    def _remedy(self, one: Lying, other: Lying, said: str) -> str:
        if self.turns:
            instead = "plane that edge to a slope" if self.hit.at < EARLY else "let it open less far"
            return f"leave {said} more between {one.copy.mark} and {other.copy.mark}, or {instead}"
        return f"make it {said} smaller on that side, or move {other.copy.mark} out of its way by that much"


def _into_wall(bench: Bench, moving: Moving) -> Iterator[Finding]:
    """A piece that is hung has a wall at its back."""
    motion = motion_of(moving.moves)
    if not isinstance(motion, Turning) or not _hangs(bench.plan):
        return
    wall = max(float(one.reach[1][1]) for one in bench.placed.lying if not one.hardware)
    beyond = {n: _furthest_back(bench, motion, n) - wall for n in moving.copies}
    number = max(beyond, key=lambda n: (round(beyond[n], 4), -n))
    if beyond[number] > TOUCHING:
        by, one = exact(round(beyond[number], 3)), bench.placed.lying[number]
        name, said = _name(bench, moving), Telling(bench.plan).shown(by)
        yield Finding(
            "turns-into-wall",
            "fault",
            Place(("project.yaml", "joints", moving.joint)).key(),
            _subject(bench, moving),
            f"{name[:1].upper()}{name[1:]} can't open {motion.angle:g}°:"
            f" {called(one)} would stand {said} in the wall",
            "let it open less far, or hold it with a stay",
            {"by": by},
            place_sizes(bench.plan, one.copy),
        )


def _hangs(plan: Plan) -> bool:
    return plan.hanging is not None or any(
        job.kind == HANGS and plan.piece in job.assemblies
        for step in plan.steps.values()
        for job in step.does
    )


def _furthest_back(bench: Bench, motion: Turning, number: int) -> float:
    body = bench.shut[number]
    points = bench.placed.solids[body.shape].vertices @ body.turn.T + body.at - motion.point
    angles = np.linspace(0, motion.angle, 1 + int(motion.angle * 4))
    rows = motion.matrices(angles)[:, 1]
    return float((rows @ points.T).max() + motion.point[1])


MOVING: Working[tuple[Moving, ...]] = Working(
    "moving", "Does what moves move freely?", move_all, (HARDWARE, CLASHES)
)
