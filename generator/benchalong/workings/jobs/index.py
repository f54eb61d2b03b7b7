"""Tasks looked up by what they are about, for the rules."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import TypeAlias

from benchalong.plan.model import AssemblyId, Job, PartId
from benchalong.workings.jobs.bonds import MOVING, Gluing
from benchalong.workings.jobs.facts import Facts, glue_id
from benchalong.workings.jobs.model import Need, Task, TaskId

Found: TypeAlias = Iterator[tuple[TaskId, Need]]
"""What a rule finds: a task, and something it needs."""


@dataclass(frozen=True, eq=False)
class Index:
    facts: Facts
    by_id: dict[TaskId, Task]

    def there(self, *ids: TaskId) -> Iterator[TaskId]:
        """Those of them that are tasks."""
        return (one for one in ids if one in self.by_id)

    @cached_property
    def cuts(self) -> dict[PartId, tuple[Task, ...]]:
        """By part, the tasks that cut its shapes."""
        found: dict[PartId, tuple[Task, ...]] = {}
        for task in self.by_id.values():
            if task.cuts:
                found[task.parts[0]] = (*found.get(task.parts[0], ()), task)
        return found

    @cached_property
    def cuts_by_joint(self) -> dict[str, tuple[Task, ...]]:
        found: dict[str, tuple[Task, ...]] = {}
        for task in self.by_id.values():
            if task.cuts and task.joint:
                found[task.joint] = (*found.get(task.joint, ()), task)
        return found

    def is_for_what_moves(self, task: Task) -> bool:
        """Whether it cuts a place for a hinge, a slide, a knob: to the hardware in hand, and still in reach
        when the part is glued in."""
        return bool(task.hardware) or (bool(task.joint) and self.facts.plan.joints[task.joint].kind in MOVING)

    @cached_property
    def gluings(self) -> dict[TaskId, Gluing]:
        found: dict[TaskId, Gluing] = {}
        for bonds in self.facts.bonds.values():
            number = 0
            for gluing in bonds.gluings:
                number += not gluing.onto
                found[glue_id(bonds.assembly, gluing.onto, 1 if gluing.onto else number)] = gluing
        return found

    def gluings_in(self, assembly: AssemblyId) -> Iterator[TaskId]:
        """Its own, and those of the assemblies in it."""
        for one, gluing in self.gluings.items():
            if gluing.assembly == assembly or assembly in self.facts.holding(gluing.assembly):
                yield one

    def gluings_of(self, assembly: AssemblyId) -> Iterator[TaskId]:
        return (one for one, gluing in self.gluings.items() if gluing.assembly == assembly)

    def gluings_with(self, marks: Iterable[str]) -> Iterator[TaskId]:
        """Those that bind any of these copies."""
        wanted = frozenset(marks)
        for one, gluing in self.gluings.items():
            if any(copy.mark in wanted for copy in gluing.copies):
                yield one

    def sized(self, part: PartId) -> Iterator[TaskId]:
        """What brings a part to the size that its cuts and its place count on."""
        yield from self.there(f"rip/{part}", f"crosscut/{part}")
        if not self.facts.is_trimmed(part):
            yield from self.there(f"measure-and-fit/{part}")

    def named(self, job: Job) -> Iterator[TaskId]:
        """What an author's job in words stands for. An assembly is glued up when what holds it together is;
        what is glued onto it by itself may come later."""
        for task in self.by_id.values():
            alone = task.id in self.gluings and bool(self.gluings[task.id].onto)
            if job.kind == task.kind and not alone and self._is_about(task, job):
                yield task.id

    def _is_about(self, task: Task, job: Job) -> bool:
        if task.assembly:
            return task.assembly in job.assemblies
        return (
            bool(set(task.parts) & set(job.parts) and (task.cuts or not task.hardware))
            or task.hardware in job.hardware
            or task.jig in job.jigs
        )
