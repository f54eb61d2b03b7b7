"""Rules on what is fitted rather than cut to a number, and on hardware, which is fitted too."""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.workings.jobs.bonds import MOVING
from benchalong.workings.jobs.finishing import glued
from benchalong.workings.jobs.index import Found, Index
from benchalong.workings.jobs.model import DUE, Need, Task, TaskId

BEFORE_HANGING = (
    "rip", "crosscut", "cut", "drill", "dry-assemble", "glue up", "flush", "measure and fit", "sand",
    "finish", "fit hardware",
)  # fmt: skip


def fitted(index: Index) -> Found:
    """What is measured on something waits for it; the author says for what."""
    facts = index.facts
    for name in facts.fit_alone:
        told, own = facts.plan.fitted[name], f"measure-and-fit/{name}"
        for first in (
            *index.there(f"rip/{name}", f"crosscut/{name}", f"mill/{name}"),
            *_put_together(index, name),
        ):
            yield own, Need(first, "it has its first size before it is brought to its final one", "size")
        for job in facts.measurable_after(name):
            for first in index.named(job):
                if first != own:
                    yield own, Need(first, "it is measured on what is there then", "measured")
        for first in _until(index, name):
            why = (
                f"wood stays on until it is {told.until}"
                if not told.until_job
                else "wood stays on until then"
            )
            yield own, Need(first, why, "measured")
        if facts.is_trimmed(name):
            for cut in index.cuts.get(name, ()):
                yield (
                    own,
                    Need(cut.id, "what is left on comes off when it has its cuts", "measured", "should"),
                )


def _put_together(index: Index, name: str) -> Iterator[TaskId]:
    return index.gluings_of(name) if name in index.facts.plan.assemblies else iter(())


def _until(index: Index, name: str) -> Iterator[TaskId]:
    told, plan = index.facts.plan.fitted[name], index.facts.plan
    if told.until_job:
        yield from index.named(told.until_job)
        return
    marks = [copy.mark for copy in plan.copies if name in (copy.part, *copy.assemblies)]
    if told.until == "glued":
        inner = set(index.gluings_in(name)) if name in plan.assemblies else set()
        yield from (one for one in index.gluings_with(marks) if one not in inner)
    elif told.until == "hung":
        yield from (
            task.id
            for task in index.by_id.values()
            if task.kind == "fit hardware" and set(marks) & set(task.marks)
        )


def hardware(index: Index) -> Found:
    """Gains are cut when what turns has been glued and fitted; hardware goes in its gains and holes."""
    facts = index.facts
    for joint in facts.plan.joints.values():
        gains = index.cuts_by_joint.get(joint.id, ()) if joint.kind in MOVING else ()
        for gain in gains:
            for first in index.gluings_with(gain.marks):
                why = "a gain is cut to the hardware in hand, where what turns really hangs"
                yield gain.id, Need(first, why, "measured", "should")
            for first in _fits_of(index, gain.marks):
                yield gain.id, Need(first, "where hardware goes follows from what was fitted", "measured")
        for hole in (gain for gain in gains if gain.kind == "drill"):
            for seat in (gain for gain in gains if gain.kind == "cut" and gain.shape == hole.shape):
                yield (
                    hole.id,
                    Need(seat.id, "screw holes are pricked through the leaf in its gain", "hardware"),
                )
    for hardware_id in facts.plan.hardware:
        own = f"fit-hardware/{hardware_id}"
        if own in index.by_id:
            yield from _fitting(index, index.by_id[own])


def _fits_of(index: Index, marks: tuple[str, ...]) -> Iterator[TaskId]:
    """The fitting of these copies and of the assemblies they are in, unless it comes only when they hang."""
    facts = index.facts
    names = {
        name for copy in facts.plan.copies if copy.mark in marks for name in (copy.part, *copy.assemblies)
    }
    for name in facts.fit_alone:
        if name in names and not facts.is_trimmed(name):
            yield f"measure-and-fit/{name}"


def _fitting(index: Index, task: Task) -> Found:
    plan = index.facts.plan
    joints = [joint for joint in plan.joints.values() if joint.words.get("hardware") == task.hardware]
    for joint in joints:
        for cut in index.cuts_by_joint.get(joint.id, ()):
            yield task.id, Need(cut.id, "its gains and holes come first", "hardware")
        if joint.kind in MOVING:
            for first in index.gluings_with(task.marks):
                yield task.id, Need(first, "it holds what has been glued", "hardware")
            for first in _fits_of(index, task.marks):
                yield task.id, Need(first, "what moves has its final size before it hangs", "hardware")
        else:
            for part in task.parts:
                for first in index.sized(part):
                    yield task.id, Need(first, "it holds parts that have their size", "hardware")
    hanging = plan.hanging
    if hanging and hanging.fixings == task.hardware:
        yield task.id, Need(f"hang/{plan.piece}", "it goes in when the piece is held in its place", "last")
    elif not joints:
        called = {task.hardware, plan.hardware[task.hardware].name.lower()}
        for cuts in index.cuts.values():
            for cut in cuts:
                if cut.hardware == task.hardware or (not cut.joint and cut.cuts[0].name.lower() in called):
                    yield task.id, Need(cut.id, "its hole comes first", "hardware")
        for assembly in glued(index.facts):
            for first in index.gluings_of(assembly):
                if not index.gluings[first].onto:
                    yield task.id, Need(first, "hardware goes on when the glue is set", "hardware", "should")


def hang(index: Index) -> Found:
    """Hanging is the last of it; what it is held by goes in then."""
    hanging = index.facts.plan.hanging
    held_by = f"fit-hardware/{hanging.fixings}" if hanging else ""
    for task in tuple(index.by_id.values()):
        marks = set(task.marks)
        for other in index.by_id.values() if task.kind == "hang" else ():
            if other.kind in BEFORE_HANGING and other.id != held_by and marks & set(other.marks):
                due: DUE = "should" if other.usual or other.kind == "fit hardware" else "must"
                yield task.id, Need(other.id, "it hangs when it is made", "last", due)
