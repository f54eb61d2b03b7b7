"""Does the order of the steps close anything before all is in?

Each gluing makes one body of what it names, for good; a dry assembly comes apart again and binds nothing.
After each gluing what is left must still have a way in. That is asked of the same table as taking apart, with
glued members drawn together, so no wood is compared again.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from benchalong.plan.model import AssemblyId, Job, PartId, Plan, Step
from benchalong.workings.placed import Placed
from benchalong.workings.taking_apart import Table, bits

BINDS = "glue up"
COMES = ("glue up", "measure and fit")
"""What a later step does to a part by name, when the part is put in only then."""


@dataclass(frozen=True)
class Gluing:
    """One line of a step's work that makes bodies of copies."""

    step: Step
    line: int
    """Of the step's `does`, from 0."""
    bodies: tuple[frozenset[int], ...]
    """Copies by number."""


def gluings(plan: Plan, placed: Placed) -> Iterator[Gluing]:
    """In the order of work."""
    jobs = [(step, line, job) for step in plan.steps.values() for line, job in enumerate(step.does)]
    for number, (step, line, job) in enumerate(jobs):
        if job.kind == BINDS and not _is_of_boards(job, plan):
            later = {
                part for _, _, other in jobs[number + 1 :] if other.kind in COMES for part in other.parts
            }
            also = frozenset(step.parts) - later if job.parts else frozenset()
            bodies = tuple(body for body in _bodies(job, also, later, placed) if len(body) > 1)
            if bodies:
                yield Gluing(step, line, bodies)


def _is_of_boards(job: Job, plan: Plan) -> bool:
    """Whether boards are glued to make parts, not parts to each other."""
    return not job.assemblies and bool(job.parts) and all(plan.parts[part].is_glued_up for part in job.parts)


def _bodies(
    job: Job, also: frozenset[PartId], later: set[PartId], placed: Placed
) -> Iterator[frozenset[int]]:
    """Each assembly named is one body in each of its places, without what is put in later; parts named are
    bound where they touch each other, or an assembly named with them. A part the step only mentions (a
    panel that floats) is in as well."""
    inner = [body for name in job.assemblies for body in _places(name, later, placed)]
    if not job.parts:
        yield from inner
        return
    named = {one.number for one in placed.lying if one.copy.part in also.union(job.parts)}
    yield from _hanging_together(named, inner, placed)


def _places(assembly: AssemblyId, later: set[PartId], placed: Placed) -> Iterator[frozenset[int]]:
    found: dict[str, set[int]] = {}
    for one in placed.lying:
        if assembly in one.copy.assemblies and one.copy.part not in later:
            depth = one.copy.assemblies.index(assembly)
            found.setdefault("/".join(one.copy.mark.split("/")[:depth]), set()).add(one.number)
    yield from map(frozenset, found.values())


def _hanging_together(
    named: set[int], inner: Sequence[frozenset[int]], placed: Placed
) -> Iterator[frozenset[int]]:
    groups: list[set[int]] = [{one} for one in sorted(named)] + [set(body) for body in inner]
    chosen = set().union(*groups)
    pairs = [(a.number, b.number) for a, b in placed.touching if a.number in chosen and b.number in chosen]
    yield from map(frozenset, joined([*map(set, groups), *({a, b} for a, b in pairs)]))


def joined(groups: Iterable[set[int]]) -> list[set[int]]:
    """Groups that share a member made one."""
    found: list[set[int]] = []
    for group in groups:
        apart = [other for other in found if not other & group]
        together = set(group).union(*(other for other in found if other & group))
        found = [*apart, together]
    return found


def drawn_together(table: Table, members: Sequence[frozenset[int]]) -> Table:
    """The same table for members that are one body from now on, each given by its old members."""
    of = {old: new for new, group in enumerate(members) for old in group}
    hinders = [
        [_of_group(row, group, of) & ~(1 << new) for new, group in enumerate(members)]
        for row in table.hinders
    ]
    picked = [sorted(group) for group in members]
    reach = np.array([[[way[np.ix_(a, b)].max() for b in picked] for a in picked] for way in table.reach])
    outward = np.array([[way[group].mean() for group in picked] for way in table.outward])
    return Table(hinders, reach, outward, [sum(table.size[old] for old in group) for group in picked])


def _of_group(row: Sequence[int], group: Iterable[int], of: Mapping[int, int]) -> int:
    found = 0
    for old in group:
        for other in bits(row[old]):
            found |= 1 << of[other]
    return found
