"""Which pieces of wood lie in each other, how deep and where?

Every two copies are looked at, joined or not: a joint takes away what its parts need, so what is left must
not overlap. Pairs of the same parts with the same trouble are one finding.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from benchalong.ground.problems import Finding
from benchalong.plan.model import SPAN, Joint, Plan
from benchalong.workings.clash_words import ClashTelling, Told
from benchalong.workings.overlap import Clash, Region, regions
from benchalong.workings.placed import PLACED, Placed, Relation, relation
from benchalong.workings.telling import Telling, likewise
from benchalong.workings.working import Worked, Working


@dataclass(frozen=True)
class Clashes:
    looked_at: int
    """How many pairs lie so near that they had to be compared."""
    clashes: tuple[Clash, ...]


def find_clashes(plan: Plan, worked: Worked) -> tuple[Clashes, tuple[Finding, ...]]:
    placed = worked[PLACED]
    seen: dict[Relation, tuple[Region, ...]] = {}
    clashes: list[Clash] = []
    for one, other in placed.overlapping:
        how = relation(one, other)
        if how not in seen:
            seen[how] = regions(placed, how)
        if seen[how]:
            clashes.append(Clash(one, other, how, seen[how]))
    return Clashes(len(placed.overlapping), tuple(clashes)), tuple(_findings(plan, placed, clashes))


def _findings(plan: Plan, placed: Placed, clashes: list[Clash]) -> Iterator[Finding]:
    """What goes for several pairs is told of the first, and the others named."""
    joints = joints_by_pair(plan)
    joined = {mark for pair in joints for mark in pair}
    told: dict[Relation, Told] = {}
    alike: dict[object, list[tuple[Told, Clash]]] = {}
    for clash in clashes:
        if clash.how not in told:
            told[clash.how] = ClashTelling(plan, placed, clash, joints.get(clash.marks)).told()
        alike.setdefault(told[clash.how].alike, []).append((told[clash.how], clash))
    for same in alike.values():
        first = same[0][0]
        also = likewise(f"{c.other.copy.mark} and {c.one.copy.mark}" for _, c in same[1:])
        finding = replace(first.finding, message=first.finding.message + also)
        yield finding if same[0][1].other.copy.mark in joined else _too_long(plan, finding, same)


def _too_long(plan: Plan, finding: Finding, same: list[tuple[Told, Clash]]) -> Finding:
    """One copy that stands in something at both its ends is too long rather than out of its place."""
    first = same[0][0]
    if first.out is None:
        return finding
    for told, clash in same[1:]:
        if told.out and clash.other is same[0][1].other and told.out[1:] == (first.out[1], -first.out[2]):
            depth = 2 * finding.numbers["depth"]
            span = SPAN[first.out[1]]
            remedy = (
                f"take {Telling(plan).shown(depth)} in all off its {span}, or give what it meets "
                "a cut to take it in"
            )
            return replace(finding, remedy=remedy, numbers={**finding.numbers, "in all": depth})
    return finding


def joints_by_pair(plan: Plan) -> Mapping[frozenset[str], Joint]:
    """The joint that brings two copies together, by their marks."""
    return {
        meeting.marks: joint
        for joint in plan.joints.values()
        for meeting in joint.meetings
        if meeting.takes is not None
    }


CLASHES: Working[Clashes] = Working(
    "clashes", "Do any two pieces of wood lie in each other, and how deep?", find_clashes, (PLACED,)
)
