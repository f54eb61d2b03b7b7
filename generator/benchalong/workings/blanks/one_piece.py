"""Parts that were to stay in one piece until they are milled (`rough_with`), and can't."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.ground.words import in_sentence
from benchalong.plan.model import Part, PartId, Plan
from benchalong.reading.written import PROJECT_FILE
from benchalong.workings.blanks.model import Blanks
from benchalong.workings.blanks.stacks import Stack
from benchalong.workings.telling import Telling


def not_one_piece(plan: Plan, blanks: Blanks, stacks: Mapping[PartId, list[Stack]]) -> Iterator[Finding]:
    held = [set(blank.parts) for blank in blanks.blanks]
    for part in plan.parts.values():
        own, others = stacks.get(part.id), stacks.get(part.rough_with)
        if own and others and not any({part.id, part.rough_with} <= parts for parts in held):
            yield _parted(plan, part, own[0], others[0])


def _parted(plan: Plan, part: Part, own: Stack, other: Stack) -> Finding:
    leader = plan.parts[part.rough_with]
    why, remedy = _why(plan, part, own, other)
    follows = (*part.follows.values(), *leader.follows.values())
    return Finding(
        "not-one-piece",
        "doubt",
        Place((PROJECT_FILE, "parts", part.id, "rough_with")).key(),
        part.id,
        f"{part.name} can't stay in one piece with {in_sentence(leader.name)} until both are milled: {why}",
        remedy,
        {"thickness": part.thickness, "other": leader.thickness},
        tuple(sorted({name for names in follows for name in names})),
    )


def _why(plan: Plan, part: Part, own: Stack, other: Stack) -> tuple[str, str]:
    """Why not, and what to do about it."""
    leader, shown = plan.parts[part.rough_with], Telling(plan).shown
    if own.rough.size != other.rough.size:
        one, two = (each.rough.size.called or shown(each.rough.size.thickness) for each in (own, other))
        why = f"it comes from {one}, the other from {two}"
        return why, f"make both {shown(leader.thickness)} thick, or take `rough_with` out"
    if own.rough.leaves != other.rough.leaves:
        why = f"it is sawn into {own.rough.leaves} leaves, the other into {other.rough.leaves}"
        return why, f"say `resaw: {leader.resaw}` of both, or take `rough_with` out"
    if any({part.id, leader.id} & set(match.parts) for match in plan.matches.values()):
        return "one of them has its place under matches:", "say either `rough_with` or a match"
    return "no board is large enough for both", "name larger boards, or take `rough_with` out"
