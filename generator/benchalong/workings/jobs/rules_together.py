"""Rules on putting together: dry, then glue, then the surface."""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.ground.words import the
from benchalong.plan.model import PartId
from benchalong.workings.jobs.bonds import Gluing, Member
from benchalong.workings.jobs.index import Found, Index
from benchalong.workings.jobs.model import DUE, Need, Rule, Task

SHAPED = ("bevel", "taper")
"""Own cuts that can still be made by hand when the part is glued in."""


def dry(index: Index) -> Found:
    """Before parts are put together dry they have their sizes and the cuts of their joints."""
    for bonds in index.facts.bonds.values():
        own = f"dry-assemble/{bonds.assembly}"
        for member in bonds.members if own in index.by_id else ():
            if member.is_part:
                for first in index.there(f"rip/{member.of}", f"crosscut/{member.of}"):
                    yield own, Need(first, "parts are put together when they have their size", "size")
                for cut in _joint_cuts(index, member):
                    yield own, Need(cut.id, "a joint goes together when both its sides are cut", "fit")
            else:
                for first in index.gluings_of(member.of):
                    yield own, Need(first, "inner assemblies are made first", "glue", "should")


def _joint_cuts(index: Index, member: Member) -> Iterator[Task]:
    marks = {copy.mark for copy in member.copies}
    for task in index.cuts.get(member.of, ()):
        if task.joint and marks & set(task.marks) and not index.is_for_what_moves(task):
            yield task


def glue(index: Index) -> Found:
    """Glue shuts things in: sizes, cuts, sanding and finish come before it."""
    for own, gluing in index.gluings.items():
        for member in gluing.members:
            if member.is_part:
                if not gluing.onto or member.of == gluing.onto:
                    yield from ((own, need) for need in _before_glue(index, gluing, member))
                else:
                    yield from (
                        (own, Need(one, "it has its size first", "size")) for one in index.sized(member.of)
                    )
            else:
                yield from ((own, need) for need in _inner_first(index, member))
        if not gluing.onto:
            why = "what goes wrong with glue goes wrong without it first"
            yield own, Need(f"dry-assemble/{gluing.assembly}", why, "glue", "should")


def _before_glue(index: Index, gluing: Gluing, member: Member) -> Iterator[Need]:
    part, marks = member.of, {copy.mark for copy in member.copies}
    name = the(index.facts.plan.parts[part].name)
    for first in index.sized(part):
        yield Need(first, f"{name} has its size before it is glued in", "size")
    for task in index.cuts.get(part, ()):
        if marks & set(task.marks) and not index.is_for_what_moves(task):
            due = _due_before_glue(task)
            if due:
                yield Need(
                    task.id, f"once {name} is glued in, it can't go to the tool any more", "reach", due
                )
    yield Need(f"sand/{part}", "inside faces are sanded while they lie flat", "inside", "should")
    if gluing.onto:
        return
    rule: Rule = "moves" if part in index.facts.floats else "inside"
    why = (
        "a panel that shrinks must not show a bare strip, so it is finished all over before it is shut in"
        if rule == "moves"
        else "a corner inside never takes an even coat, and glue won't hold on spilt finish"
    )
    for finish in index.facts.plan.finish:
        yield Need(f"finish/{finish}/{part}", why, rule)


def _due_before_glue(task: Task) -> DUE | None:
    kind = task.cuts[0].kind
    if kind == "hole" and not task.joint:
        return None
    return "should" if kind in SHAPED and not task.joint else "must"


def _inner_first(index: Index, member: Member) -> Iterator[Need]:
    for first in index.gluings_of(member.of):
        yield Need(first, "inner assemblies are glued first", "glue")
    yield Need(
        f"flush/{member.of}", "it is planed flush while it can still be clamped flat", "glue", "should"
    )
    if not index.facts.is_trimmed(member.of):
        yield Need(f"measure-and-fit/{member.of}", "it has its final size before it is glued in", "measured")


def surfaces(index: Index) -> Found:
    """Flushed, then sanded, then finished; each when what it is done to has been glued and has its size."""
    for task in tuple(index.by_id.values()):
        if task.kind == "flush" and task.assembly:
            for first in index.gluings_of(task.assembly):
                if not index.gluings[first].onto:
                    yield task.id, Need(first, "there is nothing to plane flush before", "glue")
        elif task.kind in ("sand", "finish") and task.assembly:
            for first in index.gluings_in(task.assembly):
                yield task.id, Need(first, "glue comes before the last of the surface", "glue")
            yield from ((task.id, need) for need in _ready_for_finish(index, task))
        elif task.kind in ("sand", "finish"):
            yield from ((task.id, need) for need in _part_ready(index, task))


def _ready_for_finish(index: Index, task: Task) -> Iterator[Need]:
    yield Need(f"flush/{task.assembly}", "what is planed is sanded after", "glue", "should")
    for name in (task.assembly, *index.facts.plan.fitted):
        if name == task.assembly or name in task.parts or _is_in(index, name, task.assembly):
            due: DUE = "must" if task.kind == "finish" else "should"
            yield Need(
                f"measure-and-fit/{name}", "planing to fit takes the finish off again", "measured", due
            )
    if task.kind == "finish":
        yield Need(f"sand/{task.assembly}", "finish shows every scratch", "inside", "should")


def _is_in(index: Index, name: str, assembly: str) -> bool:
    return name in index.facts.plan.assemblies and assembly in index.facts.holding(name)


def _part_ready(index: Index, task: Task) -> Iterator[Need]:
    part: PartId = task.parts[0]
    if task.kind == "finish":
        yield Need(f"sand/{part}", "finish shows every scratch", "inside", "should")
        for first in index.sized(part):
            yield Need(first, "sawing takes the finish off again", "size")
    else:
        for first in index.there(f"mill/{part}"):
            yield Need(first, "it is planed before it is sanded", "wood")
        for first in index.there(f"flush/{part}", f"rip/{part}", f"crosscut/{part}"):
            yield Need(
                first, "grit left in the wood dulls edges, so sawing and planing come first", "wood", "should"
            )
    for cut in index.cuts.get(part, ()):
        if cut.cuts[0].kind != "hole" and not index.is_for_what_moves(cut):
            yield Need(cut.id, "joints are cut on clean, flat wood, and clear of finish", "wood", "should")
