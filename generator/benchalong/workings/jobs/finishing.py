"""Tasks on surfaces, and with what is bought or made for the work: sanding, finish, hardware, jigs,
hanging."""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.ground.words import the
from benchalong.plan.model import Finish, Part
from benchalong.workings.jobs.bonds import MOVING
from benchalong.workings.jobs.facts import Facts
from benchalong.workings.jobs.model import Task
from benchalong.workings.jobs.of_part import part_task
from benchalong.workings.jobs.waits import finish_waits


def sand_part_tasks(facts: Facts) -> Iterator[Task]:
    """Before the glue, while faces lie flat."""
    for name in facts.sawn:
        part = facts.plan.parts[name]
        off = "Sanding takes off pencil marks. Leave them where no finish goes."
        yield part_task("sand", part, f"Sand {the(part.name)}", usual=True, takes_off_marks=off)


def sand_assembly_tasks(facts: Facts) -> Iterator[Task]:
    for assembly in glued(facts):
        name = the(facts.plan.assemblies[assembly].name)
        yield _assembly_task(facts, "sand", assembly, f"sand/{assembly}", f"Sand {name}", usual=True)


def glued(facts: Facts) -> tuple[str, ...]:
    """Assemblies that are glued up, and stand in no other that is: as they are when all glue is set."""
    together = {bonds.assembly for bonds in facts.bonds.values() if any(not g.onto for g in bonds.gluings)}
    return tuple(
        one
        for one in facts.bonds
        if one in together and not any(other in together for other in facts.holding(one) if other != one)
    )


def finish_tasks(facts: Facts) -> Iterator[Task]:
    """What goes on parts before they are glued, then what goes on assemblies."""
    tasks = [task for finish in facts.plan.finish.values() for task in _of_finish(facts, finish)]
    yield from sorted(tasks, key=lambda task: bool(task.assembly))


def _of_finish(facts: Facts, finish: Finish) -> Iterator[Task]:
    plan = facts.plan
    for name in finish.on or _everywhere(facts):
        title = f"Finish {finish.id.replace('_', ' ')}: {{}}"
        if name in plan.parts:
            yield _on_part(finish, plan.parts[name], title)
        else:
            yield _assembly_task(
                facts,
                "finish",
                name,
                f"finish/{finish.id}/{name}",
                title.format(the(plan.assemblies[name].name)),
                finish=finish.id,
                waits=finish_waits(finish),
            )


def _on_part(finish: Finish, part: Part, title: str) -> Task:
    return part_task(
        "finish",
        part,
        title.format(the(part.name)),
        id=f"finish/{finish.id}/{part.id}",
        finish=finish.id,
        waits=finish_waits(finish),
    )


def _everywhere(facts: Facts) -> tuple[str, ...]:
    """Where the author doesn't say: what floats by itself, then the whole piece; parts where there is
    none."""
    said = {name for finish in facts.plan.finish.values() for name in finish.on}
    floating = tuple(part for part in facts.floats if part not in said)
    return (*floating, facts.plan.piece) if facts.plan.piece else facts.sawn


def _assembly_task(facts: Facts, kind: str, assembly: str, id_: str, title: str, **given: object) -> Task:
    copies = facts.copies_in(assembly)
    return Task(
        id=id_,
        kind=kind,
        title=title,
        called=(kind,),
        parts=facts.parts_in(copies),
        marks=tuple(copy.mark for copy in copies),
        count=len(facts.bonds[assembly].places) if assembly in facts.bonds else 0,
        assembly=assembly,
        **given,  # type: ignore[arg-type]
    )


def hardware_tasks(facts: Facts) -> Iterator[Task]:
    """One for each piece of hardware that isn't driven home while glue is wet, nor holds other hardware."""
    plan = facts.plan
    holding = {hardware.held_by for hardware in plan.hardware.values()}
    for hardware in plan.hardware.values():
        if hardware.id in holding and not hardware.seated:
            continue
        joints = [joint for joint in plan.joints.values() if joint.words.get("hardware") == hardware.id]
        if joints and all(joint.kind not in MOVING and joint.glue != "no" for joint in joints):
            continue
        copies = {
            side.copy
            for joint in joints
            for meeting in joint.meetings
            for side in (meeting.cut_in, meeting.takes)
            if side
        } | {seated.mark for seated in hardware.seated}
        inside = tuple(copy for copy in plan.copies if copy.mark in copies)
        yield Task(
            id=f"fit-hardware/{hardware.id}",
            kind="fit hardware",
            title=f"Fit {the(hardware.name)}",
            called=("fit hardware", "hang") if any(j.kind in MOVING for j in joints) else ("fit hardware",),
            parts=facts.parts_in(inside),
            marks=tuple(copy.mark for copy in inside),
            count=hardware.count or 0,
            hardware=hardware.id,
        )


def jig_tasks(facts: Facts) -> Iterator[Task]:
    for jig in facts.plan.jigs.values():
        yield Task(
            id=f"make-jig/{jig.id}",
            kind="make jig",
            title=f"Make {the(jig.name)}",
            called=("make jig",),
            jig=jig.id,
        )


def hang_tasks(facts: Facts) -> Iterator[Task]:
    """What the plan or its author says is hung; a piece that stands needs no job for it."""
    plan = facts.plan
    hung = {
        one for step in plan.steps.values() for job in step.does for one in _hung(job.kind, job.assemblies)
    }
    if plan.hanging and plan.piece:
        hung.add(plan.piece)
    for assembly in plan.assemblies:
        if assembly in hung:
            title = f"Hang {the(plan.assemblies[assembly].name)}"
            yield _assembly_task(facts, "hang", assembly, f"hang/{assembly}", title)


def _hung(kind: str, assemblies: tuple[str, ...]) -> tuple[str, ...]:
    return assemblies if kind == "hang" else ()
