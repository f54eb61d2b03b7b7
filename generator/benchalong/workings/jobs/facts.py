"""What the makers of tasks and the rules look up again and again, worked out once."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from benchalong.plan.model import AssemblyId, Copy, Fitted, Job, PartId, Plan
from benchalong.workings.blanks.model import Blank, Blanks
from benchalong.workings.jobs.alike import Alike, alike_cuts
from benchalong.workings.jobs.bonds import Bonds, bonds_of
from benchalong.workings.jobs.model import TaskId
from benchalong.workings.placed import Placed
from benchalong.workings.ways_out import TakenApart

SAWN = ("board", "sheet")
"""Kinds of stock that parts are sawn out of; turned and bought things come as they are."""
TRIMMED = ("glued", "hung")
"""What is left on until then comes off a part that has all its cuts and stands in its place."""


@dataclass(frozen=True, eq=False)
class Facts:
    plan: Plan
    placed: Placed
    apart: Mapping[AssemblyId, TakenApart]
    blanks: Blanks

    @cached_property
    def sawn(self) -> tuple[PartId, ...]:
        parts, stock = self.plan.parts, self.plan.stock
        return tuple(name for name, part in parts.items() if stock[part.stock].kind in SAWN)

    @cached_property
    def of_boards(self) -> frozenset[PartId]:
        """Parts of solid wood that is milled."""
        parts, stock = self.plan.parts, self.plan.stock
        return frozenset(name for name in self.sawn if stock[parts[name].stock].kind == "board")

    @cached_property
    def floats(self) -> Mapping[PartId, tuple[str, ...]]:
        """Parts that lie loose in joints, and the joints."""
        found: dict[PartId, tuple[str, ...]] = {}
        for joint in self.plan.joints.values():
            for part in joint.floats:
                found[part] = (*found.get(part, ()), joint.id)
        return found

    @cached_property
    def alike(self) -> Mapping[str, tuple[Alike, ...]]:
        """By shape, its cuts as tasks make them."""
        return {name: alike_cuts(self.plan, shape) for name, shape in self.plan.shapes.items()}

    @cached_property
    def bonds(self) -> Mapping[AssemblyId, Bonds]:
        return bonds_of(self.plan, self.placed, self.later)

    @cached_property
    def later(self) -> Mapping[AssemblyId, frozenset[str]]:
        """By assembly, what is fitted to it only once it is glued up."""
        found: dict[AssemblyId, set[str]] = {}
        for name in self.plan.fitted:
            for job in self.measurable_after(name):
                for assembly in job.assemblies if job.kind == "glue up" else ():
                    found.setdefault(assembly, set()).add(name)
        return {assembly: frozenset(names) for assembly, names in found.items()}

    def measurable_after(self, name: str) -> tuple[Job, ...]:
        """The jobs after which a fitted part or assembly can be measured: the author's, or what is measured
        has been glued up; a part by itself, once it has its size and its cuts."""
        fitted = self.plan.fitted[name]
        if fitted.after is not None:
            return (fitted.after,)
        assemblies = tuple(one for one in fitted.measured if one in self.plan.assemblies)
        parts = tuple(one for one in fitted.measured if one in self.plan.parts)
        jobs = (Job("glue up", (), assemblies), *(Job(kind, parts) for kind in ("crosscut", "cut")))
        return tuple(job for job in jobs if job.assemblies or job.parts)

    @cached_property
    def fit_alone(self) -> tuple[str, ...]:
        """What is brought to its final size by a task of its own. A part that only has wood left on until
        it is fitted gets it where the assembly it stands in is fitted."""
        return tuple(name for name in self.plan.fitted if self.made_final(name) == name)

    def made_final(self, name: str) -> str:
        """What is fitted when this part or assembly comes to its final size: itself, or what it stands in."""
        fitted = self.plan.fitted[name]
        if fitted.measured or fitted.until_job or fitted.until != "fitted":
            return name
        around = (one for one in reversed(self.holding(name)) if one in self.plan.fitted)
        return next((one for one in around if self.plan.fitted[one].measured), name)

    def blank_of(self, part: PartId) -> Blank | None:
        """The piece it is first cut out as, several in one where it is too short alone; the shortest of
        them."""
        own = [self.blanks.by_id[one] for one in self.blanks.rough_of.get(part, ())]
        return min(own, key=lambda blank: (blank.length, blank.id), default=None)

    def fitted(self, name: str) -> Fitted | None:
        return self.plan.fitted.get(name)

    def is_trimmed(self, name: str) -> bool:
        """Whether it has its cuts and stands in its place before what was left on comes off."""
        fitted = self.plan.fitted.get(name)
        if fitted is None:
            return False
        job = fitted.until_job
        return job.kind in ("glue up", "fit hardware", "hang") if job else fitted.until in TRIMMED

    def is_cut_before(self, part: PartId) -> bool:
        """Whether it is sawn to some width and length before it is measured."""
        fitted = self.plan.fitted.get(part)
        return fitted is None or fitted.wider is not None

    def copies_in(self, assembly: AssemblyId) -> tuple[Copy, ...]:
        return tuple(copy for copy in self.plan.copies if assembly in copy.assemblies)

    def parts_in(self, copies: tuple[Copy, ...]) -> tuple[PartId, ...]:
        """Each part once, in the order of the plan."""
        inside = {copy.part for copy in copies}
        return tuple(part for part in self.plan.parts if part in inside)

    def holding(self, name: str) -> tuple[AssemblyId, ...]:
        """The assemblies that a part or assembly stands in, itself among them, the piece first."""
        return self._holding.get(name, ())

    @cached_property
    def _holding(self) -> Mapping[str, tuple[AssemblyId, ...]]:
        found: dict[str, dict[AssemblyId, None]] = {}
        for copy in self.plan.copies:
            for depth, assembly in enumerate(copy.assemblies):
                found.setdefault(assembly, {}).update(dict.fromkeys(copy.assemblies[: depth + 1]))
            found.setdefault(copy.part, {}).update(dict.fromkeys(copy.assemblies))
        return {name: tuple(assemblies) for name, assemblies in found.items()}


def glue_id(assembly: AssemblyId, onto: str = "", number: int = 1) -> TaskId:
    return "/".join(
        ("glue-up", assembly, *((onto,) if onto else ()), *((str(number),) if number > 1 else ()))
    )
