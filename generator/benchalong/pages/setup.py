"""A setup's page: what to set, which side goes where, what goes over the machine, and what can hurt."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from markupsafe import Markup

from benchalong.ground.words import in_sentence
from benchalong.pages.makings import Makings, drawn
from benchalong.pages.milled_beside import rests_of
from benchalong.pages.shell import Link, Shell
from benchalong.pages.trade_words import SetTo, each_once, is_of_one_size, set_to, words_in
from benchalong.plan.model import PartId, StepId
from benchalong.trade.ways.cautions import DEFERS
from benchalong.trade.ways.model import TOOLS, Answer, Way, Words, Work
from benchalong.trade.ways.table import ways
from benchalong.workings.jobs.jobs import JOBS
from benchalong.workings.jobs.model import Setup, Task
from benchalong.workings.jobs.sawn_open import ON_ROUGH_WOOD
from benchalong.workings.step_check.done_in import DONE_IN
from benchalong.workings.work_order.model import Run, WorkOrder
from benchalong.workings.work_order.work_order import ORDER


@dataclass(frozen=True)
class TickLine:
    """A piece that goes over the machine."""

    key: str
    mark: str
    """Empty where copies have no marks."""
    name: str


@dataclass(frozen=True)
class TaskLine:
    title: str
    parts: tuple[Link, ...]
    steps: tuple[Link, ...]
    """Where the author has it done."""
    marked: tuple[SetTo, ...]
    """What is marked on the wood for it."""
    ticks: tuple[TickLine, ...]
    rests: tuple[Markup, ...] = ()
    """How long the wood lies after it."""


@dataclass(frozen=True)
class RunShown:
    id: str
    number: int
    tasks: tuple[TaskLine, ...]


@dataclass(frozen=True)
class TestShown:
    make: Markup
    fit: Markup
    __test__ = False
    """It is no test of pytest's."""


@dataclass(frozen=True)
class BeforeShown:
    """Work on the same wood at another machine, just before."""

    tool: str
    settings: tuple[SetTo, ...]
    does: tuple[Markup, ...]


@dataclass(frozen=True)
class OtherWay:
    tool: str
    needs: str


@dataclass(frozen=True)
class RefusedShown:
    tool: str
    why: Markup
    instead: Markup


@dataclass(frozen=True)
class SetupPage:
    shell: Shell
    machine: str
    cutter: Markup
    settings: tuple[SetTo, ...]
    guide: str
    table: str
    needs: tuple[str, ...]
    cautions: tuple[Markup, ...]
    before: tuple[BeforeShown, ...]
    does: tuple[Markup, ...]
    why: tuple[Markup, ...]
    picture: Markup
    drawn_for: str
    """What the picture shows the piece of."""
    tests: tuple[TestShown, ...]
    passes: tuple[Markup, ...]
    """What each takes of the depth; one alone isn't told."""
    is_turned: bool
    accuracy: Markup
    runs: tuple[RunShown, ...]
    again: str
    """Why it is made more than once; empty where it isn't."""
    others: tuple[OtherWay, ...]
    refused: tuple[RefusedShown, ...]
    previous: Link | None
    next: Link | None


def order_of(makings: Makings) -> WorkOrder:
    return makings.once("order of work", "", lambda: makings.worked[ORDER]())


def setups_of(makings: Makings) -> tuple[Setup, ...]:
    """Every setup, in the order in which they are first made."""
    return tuple(runs[0].setup for runs in runs_by_setup(makings).values())


def runs_by_setup(makings: Makings) -> Mapping[str, tuple[Run, ...]]:
    """By the setup's id, in the order in which setups are first made."""
    return makings.once("runs by setup", "", lambda: _runs_by_setup(makings))


def _runs_by_setup(makings: Makings) -> Mapping[str, tuple[Run, ...]]:
    found: dict[str, list[Run]] = {}
    for run in order_of(makings).runs:
        found.setdefault(run.setup.id, []).append(run)
    return {setup: tuple(runs) for setup, runs in found.items()}


def setup_path(setup: Setup) -> str:
    return f"setups/{safe_id(setup)}.html"


def safe_id(setup: Setup) -> str:
    """For a file's name and a place on a page."""
    return setup.id.replace("/", "-")


def setup_title(setup: Setup) -> str:
    """`Table saw, blade`."""
    return ", ".join(filter(None, (setup.machine[:1].upper() + setup.machine[1:], setup.cutter)))


def setup_link(makings: Makings, setup: Setup) -> Link:
    """With what it does, so that two of one machine are told apart."""
    return makings.once("setup link", setup.id, lambda: Link(setup_path(setup), _called(makings, setup)))


def _called(makings: Makings, setup: Setup) -> Markup:
    numbers = [str(run.number) for run in runs_by_setup(makings)[setup.id]]
    return Markup("Setup {}: {}").format(" and ".join(numbers), setup_title(setup))


def setup_page(makings: Makings, setup: Setup) -> SetupPage:
    return _Shown(makings, setup).page()


def done_at(task: Task) -> tuple[Work, Way] | None:
    """What is asked of the machine that is set, and how it answers."""
    if task.setup is None:
        return None
    pairs = list(zip(task.works, task.ways, strict=False))
    return next((pair for pair in pairs if pair[1].tool == task.setup.machine), pairs[-1] if pairs else None)


def steps_of(makings: Makings, task: Task) -> tuple[StepId, ...]:
    return makings.once("steps of work", task.id, lambda: _steps_of(makings, task))


def _steps_of(makings: Makings, task: Task) -> tuple[StepId, ...]:
    found = makings.worked[DONE_IN]
    return tuple(dict.fromkeys(found.step(line).id for line in found.lines.get(task.id, ())))


def _is_rough(task: Task) -> bool:
    """Whether whole boards go over the machine, not copies of parts yet."""
    return task.kind in ON_ROUGH_WOOD


def _numbered(key: str, what: str, count: int) -> Iterator[TickLine]:
    for number in range(1, count + 1):
        yield TickLine(f"{key}/{number}", "", f"{what}, {number} of {count}" if count > 1 else what)


class _Shown:
    def __init__(self, makings: Makings, setup: Setup) -> None:
        self._makings, self._setup = makings, setup
        self._order = order_of(makings)
        by_id = makings.worked[JOBS].by_id
        self._runs = runs_by_setup(makings)[setup.id]
        self._tasks = tuple(by_id[one] for run in self._runs for one in run.tasks)
        self._pairs = [(task, pair) for task in self._tasks if (pair := done_at(task))]

    def page(self) -> SetupPage:
        makings, setup, shows = self._makings, self._setup, self._makings.shows
        previous, following = self._neighbours()
        found = [way for _, (_, way) in self._pairs]
        first = self._pairs[0] if self._pairs else None
        answer = self._anyhow()
        return SetupPage(
            shell=Shell("setup", setup_path(setup), str(_called(makings, setup))),
            machine=setup.machine[:1].upper() + setup.machine[1:],
            cutter=self._cutter(),
            settings=tuple(set_to(shows, one) for one in setup.settings),
            guide=setup.guide,
            table=setup.table,
            needs=setup.needs,
            cautions=self._cautions(),
            before=tuple(self._before()),
            does=each_once(shows, (said for way in found for said in way.does)),
            why=each_once(shows, (way.why for way in found if way.why)),
            picture=drawn(makings.drawings.setup(*first[1])) if first else Markup(""),
            drawn_for=self._name(first[0]) if first else "",
            tests=self._tests(),
            passes=self._passes(),
            is_turned=any(way.is_turned for way in found),
            accuracy=shows.fine(max(way.accuracy for way in found)) if found else Markup(""),
            runs=tuple(self._run(run) for run in self._runs),
            again=next((each.why for each in self._order.again if each.setup == setup), ""),
            others=tuple(self._others(answer)),
            refused=self._refused(answer),
            previous=previous,
            next=following,
        )

    def _neighbours(self) -> tuple[Link | None, Link | None]:
        """The setups before and after it."""
        makings = self._makings
        every = makings.once("setups in order", "", lambda: (None, *setups_of(makings), None))
        places = makings.once(
            "places of setups", "", lambda: {setup.id: at for at, setup in enumerate(every) if setup}
        )
        at = places[self._setup.id]
        before, after = every[at - 1], every[at + 1]
        return (
            setup_link(makings, before) if before else None,
            setup_link(makings, after) if after else None,
        )

    def _cautions(self) -> tuple[Markup, ...]:
        """What is said of a piece's own size names the piece; who knows better comes last."""
        said: dict[Words, None] = {}
        for task in self._tasks:
            for words in task.cautions:
                said[(f"{self._name(task)}: ", *words) if is_of_one_size(words) else words] = None
        general = sorted(said, key=lambda words: words == DEFERS)
        return each_once(self._makings.shows, general)

    def _cutter(self) -> Markup:
        setup, shows = self._setup, self._makings.shows
        if setup.cutter_width is None or setup.cutter == "blade":
            return Markup.escape(setup.cutter)
        return Markup("{}, {}").format(setup.cutter, shows.size(setup.cutter_width))

    def _tests(self) -> tuple[TestShown, ...]:
        shows = self._makings.shows
        tests = dict.fromkeys(way.test for _, (_, way) in self._pairs if way.test)
        return tuple(TestShown(words_in(shows, one.make), words_in(shows, one.fit)) for one in tests)

    def _passes(self) -> tuple[Markup, ...]:
        found = max((way.passes for _, (_, way) in self._pairs), key=len, default=())
        return tuple(map(self._makings.shows.size, found)) if len(found) > 1 else ()

    def _before(self) -> Iterator[BeforeShown]:
        """Told once for all pieces that are alike in it."""
        shows = self._makings.shows
        told = dict.fromkeys(
            way for task, (_, at) in self._pairs for way in (*task.ways[1:], *task.ways[:1]) if way is not at
        )
        found: dict[BeforeShown, None] = {}
        for way in told:
            settings = tuple(set_to(shows, one) for one in way.settings)
            does = tuple(words_in(shows, said) for said in way.does)
            found[BeforeShown(way.tool[:1].upper() + way.tool[1:], settings, does)] = None
        return iter(found)

    def _name(self, task: Task) -> str:
        return ", ".join(self._makings.plan.parts[part].name for part in task.parts)

    def _run(self, run: Run) -> RunShown:
        by_id = self._makings.worked[JOBS].by_id
        id = f"{safe_id(run.setup)}-{run.number}"
        return RunShown(id, run.number, tuple(self._task(by_id[one]) for one in run.tasks))

    def _task(self, task: Task) -> TaskLine:
        makings = self._makings
        marked = (
            set_to(makings.shows, one)
            for one in task.laid_out
            if one.key not in {number.key for number in self._setup.settings}
        )
        return TaskLine(
            task.title,
            tuple(makings.part_link(makings.plan.parts[part]) for part in task.parts),
            tuple(makings.step_link(step) for step in steps_of(makings, task)),
            tuple(marked),
            tuple(self._ticks(task)),
            rests_of(makings, (task,)),
        )

    def _ticks(self, task: Task) -> Iterator[TickLine]:
        if task.kind == "test piece":
            yield TickLine(task.id, "", "Fits in scrap")
            return
        names = self._makings.part_of_mark
        for mark in task.marks:
            yield TickLine(f"{task.id}/{mark}", mark, self._part(names.get(mark, "")))
        if not task.marks:
            what = f"Board for {in_sentence(self._name(task))}" if _is_rough(task) else self._name(task)
            yield from _numbered(task.id, what, task.count)
        yield from self._ticks_beside(task)

    def _ticks_beside(self, task: Task) -> Iterator[TickLine]:
        """Spares and test pieces go over the machine too."""
        yield from _numbered(f"{task.id}/spare", f"{self._name(task)}, spare", task.spares)
        for one in task.test_pieces:
            piece = self._makings.plan.test_pieces[one]
            yield from _numbered(f"{task.id}/{one}", piece.name, piece.count)

    def _part(self, part: PartId) -> str:
        found = self._makings.plan.parts.get(part)
        return found.name if found else ""

    def _anyhow(self) -> Answer:
        """Whatever tools there are, for the first piece of work."""
        plan = self._makings.plan
        if not self._pairs:
            return Answer((), ())
        return ways(self._pairs[0][1][0], TOOLS, plan.shop.country, units=plan.units)

    def _others(self, answer: Answer) -> Iterator[OtherWay]:
        for way in answer.ways:
            if way.tool != self._setup.machine:
                yield OtherWay(way.tool[:1].upper() + way.tool[1:], ", ".join(way.needs))

    def _refused(self, answer: Answer) -> tuple[RefusedShown, ...]:
        """Only what a reader might try and be hurt by."""
        shows = self._makings.shows
        return tuple(
            RefusedShown(
                one.tool[:1].upper() + one.tool[1:],
                words_in(shows, one.reason),
                words_in(shows, one.instead),
            )
            for one in answer.refusals
            if one.is_safety
        )
