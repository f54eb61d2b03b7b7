"""What pages are made from, and what several of them share: made once, kept while the site is made."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from functools import cached_property
from typing import Protocol, TypeVar

from markupsafe import Markup

from benchalong.drawing.picture import Picture
from benchalong.ground.marks import Marks
from benchalong.pages.prose import PAPER, Fills
from benchalong.pages.shell import Link
from benchalong.pages.shown import Shows
from benchalong.plan.model import AssemblyId, Joint, Part, PartId, Plan, Shape, Step, StepId
from benchalong.trade.ways.model import Way, Work
from benchalong.workings.working import Worked

T = TypeVar("T")


class Travelled(Protocol):
    """A plan that has gone down the whole road."""

    @property
    def plan(self) -> Plan: ...
    @property
    def worked(self) -> Worked: ...
    @property
    def edition(self) -> str: ...
    @property
    def marks(self) -> Marks: ...


class Drawn(Protocol):
    """Where pictures come from; None where there is nothing to see."""

    def part(self, shape: str) -> Picture | None: ...
    def small(self, part: PartId) -> Picture | None: ...
    def piece(self) -> Picture | None: ...
    def assembly(self, assembly: AssemblyId) -> Picture | None: ...
    def year(self, part: PartId) -> Picture | None: ...
    def sawn(self, group: str, number: int) -> Picture | None: ...
    def in_grooves(self, joint: str, part: PartId) -> Picture | None: ...
    def step(self, step: StepId) -> Picture | None: ...
    def apart(self, assembly: AssemblyId) -> Picture | None: ...
    def piece_apart(self) -> Picture | None: ...
    def section(self, joint: str) -> Picture | None: ...
    def setup(self, work: Work, way: Way) -> Picture | None: ...


class Makings:
    """The plan and what follows from it, with the ways to show them."""

    def __init__(self, travelled: Travelled, drawings: Drawn) -> None:
        self.plan = travelled.plan
        self.worked = travelled.worked
        self.edition = travelled.edition
        self.marks = travelled.marks
        self.drawings = drawings
        self.shows = Shows(self.plan.units, self.plan.precision)
        self.inner = Fills(self.shows, "../")
        """For pages in a folder: stages, steps, parts."""
        self.outer = Fills(self.shows, "")
        """For pages at the site's root."""
        self.paper = Fills(self.shows, "", places=PAPER)
        self._kept: dict[tuple[str, str], object] = {}

    def once(self, what: str, of: str, make: Callable[[], T]) -> T:
        """What `make` gives, made the first time only."""
        key = (what, of)
        if key not in self._kept:
            self._kept[key] = make()
        return self._kept[key]  # type: ignore[return-value]

    def section(self, joint: Joint) -> Markup:
        """The joint sawn through; empty where it brings nothing together."""
        return self.once("section", joint.id, lambda: drawn(self.drawings.section(joint.id)))

    @cached_property
    def title(self) -> str:
        return self.outer.plain(self.plan.title)

    @cached_property
    def order(self) -> tuple[Step, ...]:
        """Every step, in the order of work."""
        return tuple(self.plan.steps.values())

    @cached_property
    def number(self) -> Mapping[StepId, int]:
        """Which step it is, from 1."""
        return {step.id: index for index, step in enumerate(self.order, start=1)}

    @cached_property
    def step_titles(self) -> Mapping[StepId, Markup]:
        return {step.id: self.inner.title(step.title) for step in self.order}

    @cached_property
    def stage_titles(self) -> Mapping[str, Markup]:
        return {stage.id: self.inner.title(stage.title) for stage in self.plan.stages.values()}

    def note_words(self, step: Step) -> str:
        """The step's note as plain text."""
        return self.once("note words", step.id, lambda: self.outer.plain(step.note))

    def step_link(self, step: StepId) -> Link:
        return Link(f"steps/{step}.html", self.step_titles[step])

    def stage_link(self, stage: str) -> Link:
        return Link(f"stages/{stage}.html", self.stage_titles[stage])

    def part_link(self, part: Part) -> Link:
        return Link(f"parts/{part.id}.html", part.name)

    def joint_link(self, joint: Joint) -> Link:
        return Link(f"joints/{joint.id}.html", joint_name(joint))

    @cached_property
    def shapes(self) -> Mapping[PartId, tuple[Shape, ...]]:
        """What each part is made as: one, or several that differ in their cuts."""
        found: dict[PartId, list[Shape]] = {part: [] for part in self.plan.parts}
        for shape in self.plan.shapes.values():
            found[shape.part].append(shape)
        return {part: tuple(shapes) for part, shapes in found.items()}

    @cached_property
    def part_of_mark(self) -> Mapping[str, PartId]:
        return {copy.mark: copy.part for copy in self.plan.copies}

    @cached_property
    def joined(self) -> Mapping[str, tuple[PartId, ...]]:
        """By joint: the parts it joins or cuts, in the order of the plan."""
        return {joint.id: self._joined(joint) for joint in self.plan.joints.values()}

    def _joined(self, joint: Joint) -> tuple[PartId, ...]:
        sides = [side for meeting in joint.meetings for side in (meeting.cut_in, meeting.takes) if side]
        cut = [
            shape.part for shape in self.plan.shapes.values() for cut in shape.cuts if cut.joint == joint.id
        ]
        among = {*(side.part for side in sides), *cut, *joint.floats}
        return tuple(part for part in self.plan.parts if part in among)

    def joints_of(self, parts: Iterable[PartId]) -> tuple[Joint, ...]:
        """The joints that any of these parts takes part in, in the order of the plan."""
        among = set(parts)
        return tuple(
            joint for joint in self.plan.joints.values() if among.intersection(self.joined[joint.id])
        )

    @cached_property
    def assemblies_in_piece(self) -> frozenset[AssemblyId]:
        inside = {of for copy in self.plan.copies for of in copy.assemblies}
        return frozenset(inside)


def joint_name(joint: Joint) -> str:
    """As a heading has it; an author need not have named it."""
    return joint.name[:1].upper() + joint.name[1:]


def drawn(picture: Picture | None) -> Markup:
    """The picture as it goes into a page; empty where there is none."""
    return Markup(picture.svg) if picture else Markup("")


def duration(minutes: int | None) -> str:
    """`35 min`, `1 h`, `1 h 35 min`; empty where nobody said."""
    if minutes is None:
        return ""
    hours, rest = divmod(minutes, 60)
    return " ".join(
        part for part in (f"{hours} h" if hours else "", f"{rest} min" if rest or not hours else "") if part
    )


def marks_in_short(marks: tuple[str, ...], most: int = 6) -> str:
    """The first few marks, and how many more there are."""
    shown = ", ".join(marks[:most])
    return f"{shown} and {len(marks) - most} more" if len(marks) > most else shown
