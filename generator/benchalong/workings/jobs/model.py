"""The nouns of the jobs: a task, what it needs, what it closes, and the setup it is done with.

A task is the least piece of work that is ordered by itself: one part's boards milled, one kind of cut made
in one shape, one assembly glued up. It covers all copies it names at once. Tasks with equal setups make one
run. All lengths are exact, in mm.

An id is readable and follows from the plan's own names (`cut/side/shelf_dado/2`, `glue-up/case`): it stays
the same while what it is about is called the same, whatever tools there are and in whatever order things
are written.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property
from hashlib import sha256
from typing import Literal, TypeAlias

from benchalong.ground.lengths import Length
from benchalong.plan.model import AssemblyId, CutKind, PartId, Surface
from benchalong.trade.ways.model import Refusal, Way, Words, Work

TaskId: TypeAlias = str
Rule: TypeAlias = Literal[
    "wood",
    "size",
    "marks",
    "fit",
    "test",
    "measured",
    "reach",
    "inside",
    "moves",
    "glue",
    "jig",
    "hardware",
    "last",
]
"""What kind of reason a need has:
wood: rough cut, then milled, then sized. size: cut to size before a joint is cut in it. marks: marked
before the cuts. fit: one side is fitted to the other (grooves, then tongues, then panels). test: tried in
scrap first. measured: the author's `cut_when`. reach: can't be got at once something is glued. inside:
faces sanded and finished while they lie flat. moves: wood that must move, finished all over before it is
shut in. glue: inner assemblies first, dry before glue, set before it is worked on. jig: made before it is
used. hardware: its holes and gains first. last: hanging or placing comes last."""

DUE: TypeAlias = Literal["must", "should"]
"""must: the other way round it can't be done, or spoils the work. should: shops do it so, and it can be done
otherwise; an order keeps it where it can, and steps that don't are a doubt at most."""


@dataclass(frozen=True)
class Need:
    """Something that is to be done first, and why."""

    first: TaskId
    why: str
    """A clause in plain words, without its full stop: `the groove takes the tongue; fit the tongue to it`."""
    rule: Rule
    due: DUE = "must"


@dataclass(frozen=True)
class Closes:
    """What can't be done any more once a task is done."""

    shut: tuple[TaskId, ...]
    """Each of these needs to have been done; the same thing as their being among its needs, seen from
    here."""
    why: str
    """`once the rail is glued in, its groove can't be reached`."""


@dataclass(frozen=True)
class CutOf:
    """One cut of one shape."""

    shape: str
    number: int
    """Its place among `Shape.cuts`, from 0."""
    kind: CutKind
    name: str
    surfaces: tuple[Surface, ...]


@dataclass(frozen=True)
class Number:
    """One number of a setup, to set a machine to: a number to start from, since the test piece decides."""

    key: str
    """The same word for the same thing everywhere: `fence`, `height`, `stop`, `angle`."""
    name: str
    """As a page says it: `Fence to the cutter`."""
    length: Length | None = None
    degrees: Fraction | None = None
    count: int | None = None


@dataclass(frozen=True)
class Setup:
    """One machine with one cutter at one setting. Two tasks share it exactly when all of this is equal."""

    machine: str
    """A tool by the trade's name: `table saw`, `router table`, `bench` for what needs no machine."""
    cutter: str = ""
    cutter_width: Length | None = None
    settings: tuple[Number, ...] = ()
    guide: str = ""
    """What runs along the fence or guide: `face`; `face, then back`."""
    table: str = ""
    """What lies on the table, or under the tool's sole."""
    needs: tuple[str, ...] = ()
    """What it takes in addition: `sacrificial fence`."""

    @cached_property
    def id(self) -> str:
        """The machine and eight digits that say all the rest: equal exactly for equal setups."""
        cutter, held = (self.cutter, self.cutter_width, self.settings), (self.guide, self.table, self.needs)
        said = repr((self.machine, cutter, held))
        return f"{self.machine.replace(' ', '-')}/{sha256(said.encode()).hexdigest()[:8]}"

    @property
    def angle(self) -> Fraction | None:
        return next((one.degrees for one in self.settings if one.key == "angle"), None)

    @property
    def stop(self) -> Length | None:
        return next((one.length for one in self.settings if one.key == "stop"), None)


@dataclass(frozen=True, kw_only=True)
class Task:
    """One piece of work."""

    id: TaskId
    kind: str
    """A job word of the plan language: mill, cut, glue up …"""
    title: str
    """In a few words, with the names of the plan: `Shelf dado in the side`."""
    called: tuple[str, ...]
    """The job words an author may mean it by, its own first: a hole is drilled, and a hole is a cut."""
    parts: tuple[PartId, ...] = ()
    """In the order of the plan. Of an assembly, all parts in it."""
    marks: tuple[str, ...] = ()
    """The copies it is done to, from the piece down, in the order of the plan; none where copies have no
    marks."""
    count: int = 0
    """How many copies; for an assembly, in how many places it stands."""
    shape: str = ""
    """Of a cut or a test piece: the shape it is in."""
    joint: str = ""
    """The joint whose cut it makes, or tries."""
    assembly: AssemblyId = ""
    cuts: tuple[CutOf, ...] = ()
    """The cuts it makes: alike in everything but where they are. Every cut of every shape is in one task."""
    sizes: tuple[tuple[str, Length], ...] = ()
    """Its numbers as a person sets them: length, width, depth."""
    hardware: str = ""
    jig: str = ""
    finish: str = ""
    boards: bool = False
    """Of a glue-up: boards are glued to make one part, not parts to each other."""
    rows: tuple[tuple[str, ...], ...] = ()
    """Of putting together: marks (of parts or inner assemblies) in the order in which they go in, as far as
    it follows from the ways out; those in one row in any order."""
    needs: tuple[Need, ...] = ()
    closes: tuple[Closes, ...] = ()
    usual: bool = False
    """Good practice rather than work without which the piece isn't made: marking, test pieces, a dry
    assembly, flushing and sanding. Several steps may do it; none doing it is a note at most."""
    one_session: bool = False
    """To be done at one go with all other tasks of its setup: what is planed at a second setting is never
    quite as thick."""
    lies: bool = False
    """Milled wood moves: what follows, up to this part's joinery, is due within a few days."""
    waits: int = 0
    """Minutes that must pass after it before the next work on the same wood: glue sets, finish dries."""
    rests: Words = ()
    """How long the wood lies after it, and how: a whole sentence."""
    spares: int = 0
    """Of wood that is cut out and milled: so many more than `count`."""
    test_pieces: tuple[str, ...] = ()
    """Test pieces of the plan that are cut out or milled with it."""
    takes_off_marks: str = ""
    """Which pencil marks it takes off, to be made again after it; empty where none."""
    setup: Setup | None = None
    """How it is done with the tools at hand; None where there is nothing to set, or no tool for it."""
    minutes_to_set: Fraction = Fraction(0)
    """Once for the setup, however many tasks share it."""
    minutes: Fraction = Fraction(0)
    """For this task's copies, the machine being set."""
    cautions: tuple[Words, ...] = ()
    """What can hurt, to be said before it; lengths in them are shown in the reader's system."""
    works: tuple[Work, ...] = ()
    """What is asked of a tool: of a cut one, of milling the planing and before it the face and the edge.
    Empty where no tool is asked. `trade.ways.table.ways` answers for any other set of tools."""
    ways: tuple[Way, ...] = ()
    """How it is done with the tools at hand, one for each of `works`; empty when one of them can't be."""
    too_small: tuple[Refusal, ...] = ()
    """Machines at hand that are refused because the piece is too small for safe hands, and what to do
    instead."""
    laid_out: tuple[Number, ...] = ()
    """Numbers that are marked on the wood, not set on the machine: where a guide or a line goes."""

    @property
    def first(self) -> frozenset[TaskId]:
        """All that is to be done before it."""
        return frozenset(need.first for need in self.needs)

    @property
    def must(self) -> frozenset[TaskId]:
        """What must be done before it."""
        return frozenset(need.first for need in self.needs if need.due == "must")


@dataclass(frozen=True)
class Tasks:
    """All of the plan's work, in an order that can be carried out, though not the best one."""

    tasks: tuple[Task, ...]
    undone: Mapping[TaskId, tuple[Refusal, ...]] = field(default_factory=dict)
    """Tasks that none of the tools at hand can do, and what each of them says to it."""

    final: Mapping[PartId | AssemblyId, TaskId] = field(default_factory=dict)
    """By part or assembly that is fitted, not just cut: the task that brings it to its final size. A part
    that only has wood left on gets it where what it stands in is fitted."""

    @cached_property
    def by_id(self) -> Mapping[TaskId, Task]:
        return {task.id: task for task in self.tasks}

    def makes_final(self, name: PartId | AssemblyId) -> Task | None:
        """None for what is simply cut to its size."""
        return self.by_id.get(self.final.get(name, ""))
