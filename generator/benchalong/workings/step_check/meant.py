"""Does a line of a step mean a task, and how closely?

Of several lines that mean one task the closest is taken: its own job word before another word for it, a joint
or a kind of cut before the part alone. `cut: side` is every cut in the side that no other line says closer.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeAlias

from benchalong.plan.model import AssemblyId, DoneTo, Job, PartId, Plan
from benchalong.workings.jobs.model import Task

Closeness: TypeAlias = tuple[bool, int]
"""(its own word, how narrow); compared as it stands."""
TOGETHER = ("glue up", "dry-assemble")
"""Jobs that name the parts they bring together."""


@dataclass(frozen=True)
class Inside:
    """What stands in each assembly, itself among the assemblies."""

    parts: Mapping[AssemblyId, frozenset[PartId]]
    assemblies: Mapping[AssemblyId, frozenset[AssemblyId]]


def inside(plan: Plan) -> Inside:
    parts: dict[AssemblyId, set[PartId]] = {name: set() for name in plan.assemblies}
    assemblies: dict[AssemblyId, set[AssemblyId]] = {name: {name} for name in plan.assemblies}
    for copy in plan.copies:
        for depth, name in enumerate(copy.assemblies):
            parts[name].add(copy.part)
            assemblies[name].update(copy.assemblies[depth:])
    return Inside(
        {name: frozenset(held) for name, held in parts.items()},
        {name: frozenset(held) for name, held in assemblies.items()},
    )


@dataclass(frozen=True)
class Meant:
    """One line, ready to be asked about tasks."""

    plan: Plan
    job: Job
    inside: Inside
    opened: frozenset[AssemblyId]
    """Assemblies named that have no work of this kind of their own: what is in them is meant."""

    def closeness(self, task: Task) -> Closeness | None:
        """None where the task isn't meant."""
        if self.job.kind not in task.called:
            return None
        is_own = self.job.kind == task.kind
        if task.usual and not is_own:
            return None
        narrow = max((self._narrow(task, one) for one in self.job.to), default=0)
        if task.kind in TOGETHER:
            narrow = max(narrow, self._by_parts(task))
        return (is_own, narrow) if narrow else None

    def _narrow(self, task: Task, to: DoneTo) -> int:
        """0 where it isn't this; 1 by an assembly or part, 2 by a joint, 3 with what narrows it."""
        about = (
            self._is_about_part(task, to),
            self._is_about_assembly(task, to),
            self._is_about_joint(task, to),
            bool(task.hardware) and task.hardware in to.hardware,
            bool(task.jig) and task.jig in to.jigs,
        )
        said = (to.parts, to.assemblies, to.joints, to.hardware, to.jigs)
        if any(names and not is_it for names, is_it in zip(said, about, strict=True)):
            return 0
        if to.cuts and not set(to.cuts) & cut_kinds(task):
            return 0
        named = sum(map(bool, (*said, to.cuts)))
        return 3 if named > 1 else 2 if to.joints or to.hardware or to.jigs else 1

    def _is_about_part(self, task: Task, to: DoneTo) -> bool:
        return not task.assembly and bool(set(task.parts) & set(to.parts)) and task.kind not in TOGETHER

    def _is_about_assembly(self, task: Task, to: DoneTo) -> bool:
        if task.assembly:
            return any(
                task.assembly in (self.inside.assemblies[name] if name in self.opened else (name,))
                for name in to.assemblies
            )
        return any(self.inside.parts[name] & set(task.parts) for name in to.assemblies if name in self.opened)

    def _is_about_joint(self, task: Task, to: DoneTo) -> bool:
        hardware = {self.plan.joints[joint].words.get("hardware") for joint in to.joints}
        return task.joint in to.joints or (bool(task.hardware) and task.hardware in hardware)

    def _by_parts(self, task: Task) -> int:
        """Glue between parts that are named, or between the boards of each."""
        parts = set(self.job.parts)
        if self.is_of_boards or task.boards:
            return int(task.boards and self.is_of_boards and bool(parts & set(task.parts)))
        return 2 if parts and parts >= set(task.parts) else 0

    @property
    def is_of_boards(self) -> bool:
        """Whether boards are glued to make parts, not parts to each other."""
        job = self.job
        parts = self.plan.parts
        return bool(job.parts) and not job.assemblies and all(parts[name].is_glued_up for name in job.parts)


def meant_by(plan: Plan, job: Job, within: Inside, tasks: tuple[Task, ...]) -> Meant:
    own = {task.assembly for task in tasks if job.kind in task.called and task.assembly}
    return Meant(plan, job, within, frozenset(name for name in job.assemblies if name not in own))


def cut_kinds(task: Task) -> frozenset[str]:
    """Kinds of cut it makes, or tries."""
    if task.kind == "test piece":
        return frozenset((task.id.rpartition("/")[2],))
    return frozenset(cut.kind for cut in task.cuts)
