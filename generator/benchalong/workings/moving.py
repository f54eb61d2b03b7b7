"""Does what moves move freely? Doors, lids and drawers are taken through their whole travel.

Each is moved while all others are shut. Where it runs into another that moves, too, that one is opened first:
a drawer may wait for its door. Two that each wait for the other bind. At last each two whose ways cross are
tried with one of them wide open and the other on its way.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property
from itertools import combinations

import numpy as np

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding, Level
from benchalong.ground.words import in_sentence
from benchalong.plan.model import Joint, Moves, Plan
from benchalong.workings.blocking import Body, Views, body_of
from benchalong.workings.bodies import Floats
from benchalong.workings.clashes import CLASHES
from benchalong.workings.hardware import HARDWARE
from benchalong.workings.placed import Lying, Placed
from benchalong.workings.pose import floats
from benchalong.workings.sweep import TOUCHING, Hit, Sliding, Sweep, Turning
from benchalong.workings.telling import Telling, called, exact, place_sizes
from benchalong.workings.working import Worked, Working

RIGHT_ANGLE = Fraction(90)
EARLY = 30
"""What binds before it is open so many degrees binds by an edge."""
MOST_PAIRS = 300
"""So many pairs are tried with both open."""
HANGS = "hang"
"""The job after which the back of the piece is against a wall."""


@dataclass(frozen=True)
class Moving:
    """One thing that moves, in one place."""

    joint: str
    goes: str
    """Its mark."""
    moves: Moves
    copies: tuple[int, ...]
    """All that goes with it, by number; what hangs on it, too."""
    first: tuple[str, ...] = ()
    """Marks of what must be open before."""


class _Bench:
    """The piece with everything shut, and any of it open."""

    def __init__(self, plan: Plan, placed: Placed, clashing: frozenset[tuple[int, int]]) -> None:
        self.plan, self.placed = plan, placed
        self.sweep = Sweep(placed, Views(placed.solids))
        self._clashing = clashing
        rooms = [[[float(x) for x in corner] for corner in one.reach] for one in placed.lying]
        self._low, self._high = np.array(rooms).reshape(-1, 2, 3).transpose(1, 0, 2)
        self._reaches: dict[str, tuple[Floats, Floats]] = {}
        self._near: dict[str, frozenset[int]] = {}
        self._seen: dict[tuple[object, ...], list[Hit]] = {}

    @cached_property
    def shut(self) -> tuple[Body, ...]:
        return tuple(body_of(one.copy) for one in self.placed.lying)

    def hits(self, moving: Moving, others: Iterable[int], *, opened: Moving | None = None) -> list[Hit]:
        """What it runs into of these copies, which are all of `opened`'s, if that is opened all the way."""
        motion = motion_of(moving.moves)
        movers = [(n, self.shut[n]) for n in moving.copies if not self._is_empty(n)]
        if opened is None:
            near = [(n, self.shut[n]) for n in sorted(self.near(moving).intersection(others))]
        else:
            still = [(n, _opened(self.shut[n], opened)) for n in others]
            near = [(n, body) for n, body in still if self._comes_near(moving, body)]
        near = [(n, body) for n, body in near if not self._is_empty(n)]
        key = _alike(motion, movers, near)
        if key not in self._seen:
            self._seen[key] = self._swept(motion, movers, near)
        found = [
            replace(hit, mover=movers[hit.mover][0], other=near[hit.other][0]) for hit in self._seen[key]
        ]
        return [
            hit
            for hit in found
            if (min(hit.mover, hit.other), max(hit.mover, hit.other)) not in self._clashing
        ]

    def _swept(
        self, motion: Turning | Sliding, movers: Sequence[tuple[int, Body]], near: Sequence[tuple[int, Body]]
    ) -> list[Hit]:
        """Hits by the places in both lists."""
        one, other = (list(enumerate(body for _, body in bodies)) for bodies in (movers, near))
        if isinstance(motion, Turning):
            return self.sweep.turns_into(motion, one, other)
        return self.sweep.slides_into(motion, one, other)

    def near(self, moving: Moving) -> frozenset[int]:
        """Everything that stands, shut, where it comes by; itself left out."""
        if moving.goes not in self._near:
            low, high = self._reach(moving)
            near = np.flatnonzero((self._low < high).all(axis=1) & (self._high > low).all(axis=1))
            self._near[moving.goes] = frozenset(near.tolist()) - frozenset(moving.copies)
        return self._near[moving.goes]

    def _reach(self, moving: Moving) -> tuple[Floats, Floats]:
        if moving.goes not in self._reaches:
            movers = [self.shut[n] for n in moving.copies]
            self._reaches[moving.goes] = self.sweep.reach(motion_of(moving.moves), movers)
        return self._reaches[moving.goes]

    def cross(self, one: Moving, other: Moving) -> bool:
        """Whether the rooms that the two go through have room in common."""
        (low, high), (other_low, other_high) = self._reach(one), self._reach(other)
        return bool((low < other_high).all() and (other_low < high).all())

    def _comes_near(self, moving: Moving, body: Body) -> bool:
        low, high = self._reach(moving)
        corners = self.sweep.corners(body)
        return bool((corners.min(axis=0) < high).all() and (corners.max(axis=0) > low).all())

    def _is_empty(self, number: int) -> bool:
        return self.placed.solids[self.placed.lying[number].copy.shape].is_empty


def _alike(
    motion: Turning | Sliding, movers: Sequence[tuple[int, Body]], near: Sequence[tuple[int, Body]]
) -> tuple[object, ...]:
    """Equal for things that move, and lie to each other, in the same way somewhere else in the piece."""
    origin = motion.point if isinstance(motion, Turning) else movers[0][1].at
    how = (*motion.way, motion.angle if isinstance(motion, Turning) else motion.travel)
    bodies = [
        (body.shape, np.rint(body.turn * 1e6).tobytes(), np.rint((body.at - origin) * 1e6).tobytes())
        for _, body in (*movers, *near)
    ]
    return (type(motion).__name__, how, len(movers), *bodies)


def motion_of(moves: Moves) -> Turning | Sliding:
    assert moves.way is not None
    rows, by = floats(moves.tilt) if moves.tilt is not None else (np.eye(3), np.zeros(3))
    way = rows @ np.array(moves.way, dtype=float)
    if moves.how == "turns":
        assert moves.at is not None
        at = rows @ np.array([float(x) for x in moves.at]) + by
        return Turning(at, way, float(moves.angle or RIGHT_ANGLE))
    x, y, z = way.tolist()
    return Sliding((x, y, z), float(moves.travel or 0))


def _opened(body: Body, moving: Moving) -> Body:
    motion = motion_of(moving.moves)
    if isinstance(motion, Turning):
        return motion.turned(body, motion.angle)
    return replace(body, at=body.at + motion.travel * np.array(motion.way))


def movings(plan: Plan, placed: Placed) -> tuple[Moving, ...]:
    """Each thing that moves once, however many hinges it has; a stay says how far it opens."""
    held = {
        m.goes: m.angle
        for joint in plan.joints.values()
        for m in joint.moves
        if m.how == "is held" and m.angle
    }
    found: dict[str, tuple[Joint, Moves]] = {}
    for joint in plan.joints.values():
        for moves in joint.moves:
            if moves.how != "is held" and moves.way is not None:
                angle = min(filter(None, (moves.angle, held.get(moves.goes))), default=None)
                found.setdefault(moves.goes, (joint, replace(moves, angle=angle)))
    groups = {goes: _group(goes, found, placed) for goes in found}
    return tuple(
        Moving(joint.id, goes, moves, tuple(sorted(groups[goes])))
        for goes, (joint, moves) in found.items()
        if groups[goes]
    )


def _group(goes: str, found: Mapping[str, tuple[Joint, Moves]], placed: Placed) -> set[int]:
    """Its copies, and those of what is fixed to it and moves by itself."""
    marks, todo = {goes}, [goes]
    while todo:
        here = todo.pop()
        hanging = [m for m, (_, moves) in found.items() if _is_in(moves.stays, here) and m not in marks]
        marks.update(hanging)
        todo += hanging
    return {one.number for one in placed.lying if any(_is_in(one.copy.mark, mark) for mark in marks)}


def _is_in(mark: str, of: str) -> bool:
    return mark == of or mark.startswith(f"{of}/")


def move_all(plan: Plan, worked: Worked) -> tuple[tuple[Moving, ...], tuple[Finding, ...]]:
    fitted = worked[HARDWARE]
    placed = fitted.placed
    clashing = frozenset((c.one.number, c.other.number) for c in worked[CLASHES].clashes)
    clashing |= fitted.clashing
    bench, moving = _Bench(plan, placed, clashing), movings(plan, placed)
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
    bench: _Bench, moving: Sequence[Moving], waits: Mapping[str, Mapping[str, Hit]]
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
    plan: Plan, bench: _Bench, moving: Sequence[Moving], waits: Mapping[str, Mapping[str, Hit]]
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


def _name(bench: _Bench, moving: Moving) -> str:
    """`door LD`."""
    lying = bench.placed.lying[moving.copies[0]]
    depth = moving.goes.count("/") + 1
    if len(lying.copy.assemblies) <= depth:
        return called(lying)
    name = bench.plan.assemblies[lying.copy.assemblies[depth]].name
    return f"{in_sentence(name)} {moving.goes}"


def _subject(bench: _Bench, moving: Moving) -> str:
    lying = bench.placed.lying[moving.copies[0]]
    depth = moving.goes.count("/") + 1
    return lying.copy.part if len(lying.copy.assemblies) <= depth else lying.copy.assemblies[depth]


class _Told:
    """A hit on its way to words."""

    def __init__(self, bench: _Bench, moving: Moving, hit: Hit) -> None:
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


def _into_wall(bench: _Bench, moving: Moving) -> Iterator[Finding]:
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


def _furthest_back(bench: _Bench, motion: Turning, number: int) -> float:
    body = bench.shut[number]
    points = bench.placed.solids[body.shape].vertices @ body.turn.T + body.at - motion.point
    angles = np.linspace(0, motion.angle, 1 + int(motion.angle * 4))
    rows = motion.matrices(angles)[:, 1]
    return float((rows @ points.T).max() + motion.point[1])


MOVING: Working[tuple[Moving, ...]] = Working(
    "moving", "Does what moves move freely?", move_all, (HARDWARE, CLASHES)
)
