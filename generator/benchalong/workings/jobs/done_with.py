"""With which tool is each task done, at which setting, how long does it take, and what can hurt?

The shop's tools choose: of the ways they know, the best by the trade. Where an author names no tools, every
tool is taken to be there. A task that none of them does is named in a finding.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.plan.model import Part, Plan, StockId
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.bench import minutes_at_bench
from benchalong.trade.proportions import Least
from benchalong.trade.rough import JOINTER_SHORTEST, LONGER, PLANER_SHORTEST, THICKER, WIDER
from benchalong.trade.ways.minutes import TO_THE_WORK
from benchalong.trade.ways.model import TOOLS, Piece, Refusal, Setting, Tool, Way, Wood, Words, Work
from benchalong.trade.ways.said import said
from benchalong.trade.ways.table import ways
from benchalong.trade.ways.tools import at_hand
from benchalong.workings.jobs.alike import Alike
from benchalong.workings.jobs.facts import Facts
from benchalong.workings.jobs.milled_with import many
from benchalong.workings.jobs.model import Number, Setup, Task, TaskId
from benchalong.workings.jobs.sawn_open import ON_ROUGH_WOOD, open_works
from benchalong.workings.jobs.works import each_work, wood_of, work_of

NOTHING_SET: frozenset[Tool] = frozenset(("hand tools", "bench"))
"""What is done with these is laid out each time; there is nothing that stays set."""
MARKED = ("wall", "begins", "ends", "shift", "mark", "shoulder", "stop")
"""Settings that are pencil lines where the tool goes to the work: its guide is put to each line anew."""
BY_EYE = "by eye"
"""So begins what guides a tool that follows a line; nothing of that stays set."""
JOINTED_OFF = Fraction(1, 2)
"""The share of the extra thickness that the jointer takes off one face before the planer takes the rest."""


@dataclass(frozen=True)
class Shop:
    """Where and with what it is made."""

    plan: Plan

    @cached_property
    def tools(self) -> tuple[Tool, ...]:
        return at_hand(self.plan.shop.tools).tools if self.plan.shop.tools else TOOLS

    def ask(self, work: Work, tools: tuple[Tool, ...] = ()) -> tuple[Way | None, tuple[Refusal, ...]]:
        answer = ways(work, tools or self.tools, self.plan.shop.country, units=self.plan.units)
        return answer.best, answer.refusals

    @cached_property
    def _woods(self) -> Mapping[StockId, Wood]:
        return {name: wood_of(self.plan, stock) for name, stock in self.plan.stock.items()}

    def piece(self, part: Part) -> Piece:
        """A part as wood at its own size."""
        return Piece(
            length=part.length, width=part.width, thickness=part.thickness, wood=self._woods[part.stock]
        )

    def usual(self, least: Least) -> Length:
        return least.inch if self.plan.units == "inch" else least.millimetre

    def said(self, words: Words) -> str:
        return said(words, self.plan.units, self.plan.precision)


@dataclass(frozen=True)
class Done:
    """A task with its ways, or with what every tool says against it."""

    task: Task
    refusals: tuple[Refusal, ...] = ()


def done_with(facts: Facts, shop: Shop, task: Task) -> Done:
    works = tuple(works_of(facts, shop, task))
    answers = [shop.ask(work) for work in works]
    task = replace(task, works=works)
    refused = [refusals for best, refusals in answers if best is None]
    if refused:
        return Done(replace(task, minutes=_at_bench(facts, task)), refused[0])
    found = tuple(best for best, _ in answers if best is not None)
    if not found:
        return Done(replace(task, minutes=_at_bench(facts, task)))
    alike = _alike(facts, task)
    each = each_work(facts.plan, alike, works[0].piece) if alike and len(task.cuts) > 1 else works[:1]
    setup = setup_of(shop, each, found[0])
    by_hand = _at_bench(facts, task) if task.kind in ("glue up", "rough cut") else Fraction(0)
    return Done(
        replace(
            task,
            ways=found,
            setup=setup,
            laid_out=tuple(map(_number, _laid_out(found[0]))) if len(task.cuts) < 2 else (),
            minutes_to_set=found[0].to_set,
            minutes=sum((way.for_all + way.to_set for way in found), by_hand) - found[0].to_set,
            too_small=_too_small(answers),
            cautions=tuple(dict.fromkeys(caution for way in found for caution in way.cautions)),
        )
    )


def _too_small(answers: list[tuple[Way | None, tuple[Refusal, ...]]]) -> tuple[Refusal, ...]:
    """Machines at hand that this piece is too small for."""
    return tuple(
        dict.fromkeys(refusal for _, refusals in answers for refusal in refusals if refusal.is_safety)
    )


def setup_of(shop: Shop, works: tuple[Work, ...], way: Way) -> Setup | None:
    """What the machine is set to; of works alike in all but place, what holds for all of them. Which of two
    like sides lies where changes no setting, so that a left hand part and a right hand part share it."""
    if is_laid_out(way):
        return None
    plain = [_unnamed(shop, work, way) for work in works]
    own = plain[0]
    marked = _laid_out(own)
    settings = tuple(
        _number(one) for one in own.settings if one not in marked and all(one in p.settings for p in plain)
    )
    if not settings:
        return None
    return Setup(own.tool, own.cutter.name, own.cutter.width, settings, own.guide, own.table, own.needs)


def _unnamed(shop: Shop, work: Work, way: Way) -> Way:
    """The same way with the tool, for a part whose sides have no names of their own."""
    found, _ = shop.ask(replace(work, cut_in="", near_side=""), (way.tool,))
    return found if found is not None and found.tool == way.tool else way


def is_laid_out(way: Way) -> bool:
    """Whether every piece is worked to its own lines."""
    return way.tool in NOTHING_SET or way.guide.startswith(BY_EYE)


def _laid_out(way: Way) -> tuple[Setting, ...]:
    if is_laid_out(way):
        return way.settings
    if way.tool in TO_THE_WORK:
        return tuple(one for one in way.settings if one.key in MARKED)
    return ()


def _number(setting: Setting) -> Number:
    return Number(setting.key, setting.name, setting.length, setting.degrees, setting.count)


def _at_bench(facts: Facts, task: Task) -> Fraction:
    many = sum(map(len, task.rows)) * max(1, task.count) if task.rows else task.count
    is_small = bool(task.hardware) and facts.plan.hardware[task.hardware].kind in DRIVEN
    return minutes_at_bench("drive" if is_small else task.kind, count=many)


DRIVEN = ("screw", "nail", "dowel", "plug")
"""Hardware that is driven in, one like the other."""


def works_of(facts: Facts, shop: Shop, task: Task) -> Iterator[Work]:
    """What a task asks of tools; the one whose setting counts first."""
    part = facts.plan.parts[task.parts[0]] if len(task.parts) == 1 and not task.assembly else None
    alike = _alike(facts, task)
    if task.kind in ON_ROUGH_WOOD:
        yield from _of_rough_wood(facts, shop, task)
    elif alike is not None:
        yield work_of(facts.plan, alike, shop.piece(alike.part))
    elif part is not None and task.kind in OF_WOOD:
        yield from (
            replace(work, count=many(facts, task, part)) for work in _of_wood(facts, shop, task, part)
        )


def _of_rough_wood(facts: Facts, shop: Shop, task: Task) -> Iterator[Work]:
    board = shop.piece(facts.plan.parts[task.parts[0]])
    face, edge = shop.usual(THICKER) * JOINTED_OFF, shop.usual(WIDER) / 2
    yield from open_works(facts, task, board, face=face, edge=edge)


def _alike(facts: Facts, task: Task) -> Alike | None:
    if not task.cuts:
        return None
    return next(one for one in facts.alike[task.shape] if one.numbers[0] == task.cuts[0].number)


OF_WOOD = ("rough cut", "mill", "rip", "crosscut", "sand", "glue up", "flush")


def _of_wood(facts: Facts, shop: Shop, task: Task, part: Part) -> Iterator[Work]:
    plan = facts.plan
    longer, wider, thicker = shop.usual(LONGER), shop.usual(WIDER), shop.usual(THICKER)
    finished = shop.piece(part)
    least = max(shop.usual(PLANER_SHORTEST), shop.usual(JOINTER_SHORTEST))
    is_sheet = plan.stock[part.stock].kind == "sheet"
    blank = facts.blank_of(part.id)
    stick = replace(
        finished,
        length=blank.length if blank else max(part.length + longer, least),
        width=blank.width if blank else part.width + wider,
    )
    rough = stick if is_sheet else replace(stick, thickness=part.thickness + thicker)
    if task.kind == "rough cut":
        yield Work(family="rough crosscut", piece=rough, run="width", length=rough.length, through=True)
    elif task.kind == "mill":
        yield Work(family="plane to thickness", piece=rough, depth=thicker)
        yield Work(family="joint a face", piece=rough, depth=thicker * JOINTED_OFF)
        yield Work(family="joint an edge", piece=rough, surface="edge", depth=wider / 2)
    elif task.kind == "rip":
        yield Work(family="rip", piece=stick, width=dict(task.sizes)["width"])
    elif task.kind == "crosscut":
        kept = replace(stick, width=part.width)
        length = dict(task.sizes)["length"]
        yield Work(family="crosscut to length", piece=kept, run="width", length=length, through=True)
    elif task.kind == "glue up":
        yield Work(family="glue up a panel", piece=rough)
    else:
        yield Work(family="flush" if task.kind == "flush" else "sand", piece=finished, depth=STEP)


STEP = Length(2, 5)
"""What stands proud at a glued joint, mm: a guess at what careful clamping leaves."""


def cant(shop: Shop, task: Task, refusals: tuple[Refusal, ...]) -> Finding:
    """No tool at hand does it: which job, why, and what would."""
    work = next((work for work in task.works if shop.ask(work)[0] is None), task.works[0])
    other, _ = shop.ask(work, TOOLS)
    reasons = [refusal for refusal in refusals if refusal.is_safety] or list(refusals)
    why = "; ".join(f"{one.tool}: {shop.said(one.reason).rstrip('.')}" for one in reasons[:2])
    instead = f"it takes {article(other.tool)}" if other else shop.said(reasons[0].instead).rstrip(".")
    return Finding(
        "no-tool-for-it",
        "doubt",
        Place((PROJECT_FILE, "shop", "tools")),
        task.parts[0] if task.parts else task.id,
        f"none of the shop's tools can do this: {task.title[0].lower()}{task.title[1:]} ({why})",
        f"{instead}; name it among the shop's tools where it is there",
    )


def article(tool: str) -> str:
    return tool if tool == "hand tools" else f"a {tool}"


def take_ways(
    facts: Facts, tasks: tuple[Task, ...]
) -> tuple[tuple[Task, ...], dict[TaskId, tuple[Refusal, ...]]]:
    """The tasks with their ways; and by task that none of the tools does, what each of them says."""
    shop = Shop(facts.plan)
    done = [done_with(facts, shop, task) for task in tasks]
    return tuple(one.task for one in done), {one.task.id: one.refusals for one in done if one.refusals}
