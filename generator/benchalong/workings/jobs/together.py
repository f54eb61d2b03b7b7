"""Tasks on assemblies: put together dry, glued up, flushed; and what is measured and fitted."""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.ground.words import the
from benchalong.plan.model import Copy
from benchalong.workings.jobs.bonds import Bonds, Gluing
from benchalong.workings.jobs.facts import Facts, glue_id
from benchalong.workings.jobs.model import Task
from benchalong.workings.jobs.waits import IN_CLAMPS


def dry_tasks(facts: Facts) -> Iterator[Task]:
    for bonds in facts.bonds.values():
        if bonds.fixed and len(bonds.members) > 1:
            copies = tuple(copy for member in bonds.members for copy in member.copies)
            yield _on_assembly(facts, bonds, copies, "dry-assemble", "Put {} together dry", usual=True)


def glue_tasks(facts: Facts) -> Iterator[Task]:
    """Inner assemblies first; what is glued onto an assembly by itself before and after the rest."""
    for bonds in facts.bonds.values():
        number = 0
        for gluing in bonds.gluings:
            number += not gluing.onto
            yield _glue(facts, bonds, gluing, number)


def _glue(facts: Facts, bonds: Bonds, gluing: Gluing, number: int) -> Task:
    title = f"Glue {_name(facts, gluing.onto)} in its place" if gluing.onto else "Glue up {}"
    return _on_assembly(
        facts,
        bonds,
        gluing.copies,
        "glue up",
        title,
        id=glue_id(bonds.assembly, gluing.onto, 1 if gluing.onto else number),
        waits=IN_CLAMPS,
        rows=rows(facts, bonds, gluing),
    )


def _on_assembly(
    facts: Facts, bonds: Bonds, copies: tuple[Copy, ...], kind: str, title: str, **given: object
) -> Task:
    told: dict[str, object] = {"id": f"{kind.replace(' ', '-')}/{bonds.assembly}"} | given
    return Task(
        kind=kind,
        title=title.format(the(facts.plan.assemblies[bonds.assembly].name)),
        called=(kind,),
        parts=facts.parts_in(copies),
        marks=tuple(copy.mark for copy in copies),
        count=len(bonds.places),
        assembly=bonds.assembly,
        **told,  # type: ignore[arg-type]
    )


def rows(facts: Facts, bonds: Bonds, gluing: Gluing) -> tuple[tuple[str, ...], ...]:
    """Members in the order in which they can go in: the way they come out, backwards. Marks are those of the
    assembly's first place."""
    apart = facts.apart.get(bonds.assembly)
    start = f"{bonds.places[0]}/" if bonds.places[0] else ""
    marks = [start + member.mark for member in gluing.members]
    if gluing.onto:
        last = {start + member.mark for member in gluing.members if member.of == gluing.onto}
        return tuple(mark for mark in marks if mark not in last), tuple(m for m in marks if m in last)
    if apart is None or apart.locked:
        return (tuple(marks),)
    level: dict[str, int] = {}
    depth: list[int] = []
    for move in apart.moves:
        depth.append(1 + max((depth[number] for number in move.after), default=0))
        for mark in move.goes:
            level[mark] = max(level.get(mark, 0), depth[-1])
    stays = len(depth) + 1
    levels = sorted({level.get(mark, stays) for mark in marks}, reverse=True)
    return tuple(tuple(mark for mark in marks if level.get(mark, stays) == one) for one in levels)


def flush_tasks(facts: Facts) -> Iterator[Task]:
    for bonds in facts.bonds.values():
        together = [gluing for gluing in bonds.gluings if not gluing.onto]
        if together:
            copies = tuple(copy for gluing in together for copy in gluing.copies)
            off = "Planing joints flush takes off the marks on the outside."
            yield _on_assembly(
                facts, bonds, copies, "flush", "Plane the joints of {} flush", usual=True, takes_off_marks=off
            )


def fit_tasks(facts: Facts) -> Iterator[Task]:
    plan = facts.plan
    for name in facts.fit_alone:
        measured = _and([_name(facts, one) for one in plan.fitted[name].measured])
        to = f" to {measured}" if measured else " to its final size"
        copies = tuple(copy for copy in plan.copies if name in (copy.part, *copy.assemblies))
        part = plan.parts.get(name)
        yield Task(
            id=f"measure-and-fit/{name}",
            kind="measure and fit",
            title=f"{'Measure and fit' if measured else 'Bring'} {_name(facts, name)}{to}",
            called=("measure and fit", "cut") if part else ("measure and fit",),
            parts=(name,) if part else facts.parts_in(copies),
            marks=part.marks if part else tuple(copy.mark for copy in copies),
            count=part.count if part else len(facts.bonds[name].places) if name in facts.bonds else 0,
            assembly="" if part else name,
            sizes=(("length", part.length), ("width", part.width)) if part else (),
        )


def _name(facts: Facts, name: str) -> str:
    plan = facts.plan
    named = plan.parts.get(name) or plan.assemblies.get(name)
    return the(named.name) if named else name


def _and(names: list[str]) -> str:
    return " and ".join((", ".join(names[:-1]), names[-1])) if len(names) > 1 else "".join(names)
