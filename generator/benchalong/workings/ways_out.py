"""Can it be put together?

Each assembly is taken apart as it is put together: inner ones are made first and move as one body. What
comes out along a straight clear way goes in the same way backwards. The result is a partial order that knows
no steps; the pictures of things pulled apart are drawn from it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

import numpy as np

from benchalong.ground.problems import Finding
from benchalong.plan.model import AssemblyId, Plan
from benchalong.plan.turns import WAYS
from benchalong.workings.assembled import Assembled
from benchalong.workings.blocking import Blocking, Way, body_of
from benchalong.workings.bodies import Floats
from benchalong.workings.clashes import CLASHES
from benchalong.workings.closing import Gluing, drawn_together, gluings, joined
from benchalong.workings.no_way_in import Words, closed_too_soon, no_way_in
from benchalong.workings.oblique import oblique_ways
from benchalong.workings.placed import PLACED, Lying, Placed
from benchalong.workings.taking_apart import Apart, take_apart
from benchalong.workings.working import Worked, Working

SQUARE_WAYS: tuple[Way, ...] = tuple((float(x), float(y), float(z)) for x, y, z in WAYS.values())


@dataclass(frozen=True)
class Move:
    """A part or assembly, or several that go as one, on their way out; backwards, into its place."""

    goes: tuple[str, ...]
    """Marks from the piece down: `LD/H`; of an inner assembly its own: `LD`."""
    way: Way
    """In the room."""
    travel: float
    """In mm, until it is past all that is left."""
    after: tuple[int, ...]
    """Places in the list of the moves that must be made before."""


@dataclass(frozen=True)
class TakenApart:
    """One assembly in the first of its places."""

    assembly: AssemblyId
    mark: str
    """Of that place, from the piece down; of the piece itself nothing."""
    members: Mapping[str, tuple[str, ...]]
    """What it is put together from, by marks from the piece down, in the order written; and the marks of
    the copies that each is made of."""
    moves: tuple[Move, ...]
    """Going apart; put together from the last to the first. What never moves is what the rest is put to."""
    locked: tuple[tuple[str, ...], ...] = ()
    """Members of which none can leave the others; none in a piece that can be put together."""


def find_ways_out(plan: Plan, worked: Worked) -> tuple[Mapping[AssemblyId, TakenApart], tuple[Finding, ...]]:
    """By assembly; those of a single member are left out, and those that aren't in the piece."""
    placed = worked[PLACED]
    taking = Taking.of(placed, frozenset((c.one.number, c.other.number) for c in worked[CLASHES].clashes))
    glued = tuple(gluings(plan, placed))
    found: dict[AssemblyId, TakenApart] = {}
    findings: list[Finding] = []
    for assembly, mark, members in _places(placed):
        if len(members) > 1:
            assembled = taking.assembled(members)
            apart = take_apart(assembled.table)
            found.setdefault(assembly, taking.told(assembly, mark, members, assembled, apart))
            words = Words(plan, placed, plan.assemblies[assembly], mark, assembled)
            findings += [no_way_in(words, sorted(group)) for group in apart.locked]
            if not apart.locked:
                findings += _closed_too_soon(words, glued)
    return found, tuple({(finding.code, finding.place): finding for finding in reversed(findings)}.values())[
        ::-1
    ]


def _closed_too_soon(words: Words, glued: tuple[Gluing, ...]) -> Iterator[Finding]:
    """At the first gluing after which something has no way in any more."""
    assembled = words.assembled
    member_of = {copy: number for number, copies in enumerate(assembled.members) for copy in copies}
    bound: list[set[int]] = [{number} for number in range(len(assembled.members))]
    for gluing in glued:
        bodies = [{member_of[copy] for copy in body if copy in member_of} for body in gluing.bodies]
        before, bound = bound, joined([*bound, *(body for body in bodies if body)])
        if len(bound) == len(before):
            continue
        groups = sorted((frozenset(group) for group in bound), key=min)
        locked = take_apart(drawn_together(assembled.table, groups)).locked
        if locked:
            yield closed_too_soon(words, gluing, [groups[number] for number in sorted(locked[0])])
            return


@dataclass(frozen=True, eq=False)
class Taking:
    """What is needed to take any set of copies apart."""

    blocking: Blocking
    low: Floats
    high: Floats
    volume: Floats
    marks: tuple[str, ...]

    @classmethod
    def of(cls, placed: Placed, clashing: frozenset[tuple[int, int]]) -> Taking:
        lying = placed.lying
        bodies = [body_of(one.copy) for one in lying]
        rooms = np.array([[[float(x) for x in corner] for corner in one.reach] for one in lying]).reshape(
            -1, 2, 3
        )
        volume = np.array([placed.solids[one.copy.shape].volume for one in lying])
        return cls(
            Blocking(bodies, placed.solids, apart=clashing),
            rooms[:, 0],
            rooms[:, 1],
            volume,
            tuple(one.copy.mark for one in lying),
        )

    def assembled(self, members: Mapping[str, tuple[int, ...]]) -> Assembled:
        chosen = [copy for copies in members.values() for copy in copies]
        ways = (*SQUARE_WAYS, *oblique_ways(self.blocking, chosen, self.low, self.high))
        return Assembled(self.blocking, tuple(members.values()), ways, self.low, self.high, self.volume)

    def told(
        self,
        assembly: AssemblyId,
        mark: str,
        members: Mapping[str, tuple[int, ...]],
        assembled: Assembled,
        apart: Apart,
    ) -> TakenApart:
        names = list(members)
        copies = {name: tuple(self.marks[number] for number in own) for name, own in members.items()}
        moves = tuple(
            Move(tuple(names[one] for one in sorted(t.group)), assembled.ways[t.way], t.travel, t.after)
            for t in apart.taken
        )
        locked = tuple(tuple(names[one] for one in sorted(group)) for group in apart.locked)
        return TakenApart(assembly, mark, copies, moves, locked)


def _places(placed: Placed) -> Iterator[tuple[AssemblyId, str, dict[str, tuple[int, ...]]]]:
    """Each assembly where it comes first, and where joints make other shapes of its parts, with its members:
    by mark, the copies in each."""
    held: dict[tuple[AssemblyId, str], list[Lying]] = {}
    for one in placed.lying:
        if not placed.solids[one.copy.shape].is_empty:
            marks = one.copy.mark.split("/")
            for depth, assembly in enumerate(one.copy.assemblies):
                held.setdefault((assembly, "/".join(marks[:depth])), []).append(one)
    told: set[tuple[object, ...]] = set()
    for (assembly, mark), inside in held.items():
        shapes = (assembly, *(one.copy.shape for one in inside))
        if shapes not in told:
            told.add(shapes)
            yield assembly, mark, _members(mark, inside)


def _members(within: str, inside: list[Lying]) -> dict[str, tuple[int, ...]]:
    depth = within.count("/") + 2 if within else 1
    members: dict[str, list[int]] = {}
    for one in inside:
        members.setdefault("/".join(one.copy.mark.split("/")[:depth]), []).append(one.number)
    return {mark: tuple(copies) for mark, copies in members.items()}


WAYS_OUT: Working[Mapping[AssemblyId, TakenApart]] = Working(
    "ways out", "Can it be put together?", find_ways_out, (PLACED, CLASHES)
)
