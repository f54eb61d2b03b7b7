"""All 4,096 sets of a dozen tools over the cupboard's jobs: a way, or a finding that names the job.

Works that every tool answers alike are asked once. Sixty sets are worked to a full order.
"""

from __future__ import annotations

import itertools
import random
from collections.abc import Iterator
from dataclasses import replace

from benchalong.plan.model import Plan
from benchalong.trade.ways.model import TOOLS, Answer, Tool, Work
from benchalong.trade.ways.table import ways
from benchalong.trade.ways.tools import with_all
from benchalong.workings.blanks.blanks import BLANKS
from benchalong.workings.jobs.done_with import Shop, cant, take_ways
from benchalong.workings.jobs.facts import Facts
from benchalong.workings.placed import PLACED
from benchalong.workings.sequence.put_in_order import put_in_order
from benchalong.workings.step_check.done_in import DoneIn
from benchalong.workings.ways_out import WAYS_OUT
from benchalong.workings.work_order.todos import todos_of
from benchalong.workings.working import work_all
from workings.jobs.shop import NEEDED, jobs_of_example
from workings.sequence.checker import amiss

DOZEN: tuple[Tool, ...] = (
    "table saw with a stacked cutter", "table saw", "router table", "router", "hand tools", "track saw",
    "band saw", "mitre saw", "jointer", "planer", "drill press", "drill",
)  # fmt: skip
UNSAID = DoneIn(steps=(), lines={}, needs={}, mentioned=frozenset())


def every_set() -> Iterator[tuple[Tool, ...]]:
    for chosen in itertools.product((False, True), repeat=len(DOZEN)):
        yield tuple(tool for tool, on in zip(DOZEN, chosen, strict=True) if on)


def asked(plan: Plan, work: Work, tools: tuple[Tool, ...]) -> Answer:
    return ways(work, tools, plan.shop.country, units=plan.units)


def unlike(plan: Plan, works: set[Work]) -> list[tuple[Work, Answer]]:
    """One work of each kind that the tools answer unlike, with all that any tool says to it."""
    found: dict[frozenset[object], tuple[Work, Answer]] = {}
    for work in works:
        answer = asked(plan, work, TOOLS)
        found.setdefault(frozenset((way.tool, way.with_tools) for way in answer.ways), (work, answer))
    return list(found.values())


def test_every_set_gives_a_way_or_says_why_not() -> None:
    job = jobs_of_example("seed-cupboard")
    kinds = unlike(job.plan, {work for task in job.tasks.tasks for work in task.works})
    assert len(kinds) > 10
    sets = list(every_set())
    assert len(sets) == 4096
    yes = 0
    for tools in sets:
        have = set(with_all(tools))
        for work, whole in kinds:
            answer = asked(job.plan, work, tools)
            can = any(have.issuperset((way.tool, *way.with_tools)) for way in whole.ways)
            assert (answer.best is not None) == can
            assert can or (answer.refusals and all(one.reason and one.instead for one in answer.refusals))
            yes += can
    assert 0 < yes < len(sets) * len(kinds)


def test_sixty_sets_are_worked_to_a_full_order() -> None:
    job = jobs_of_example("seed-cupboard")
    worked = work_all(job.plan, NEEDED)
    outcomes = set()
    for tools in random.Random(5).sample(list(every_set()), 60):
        # An author's empty list means every tool; a bench alone is said by its name.
        plan = replace(job.plan, shop=replace(job.plan.shop, tools=tools or ("bench",)))
        facts = Facts(plan, worked[PLACED], worked[WAYS_OUT], worked[BLANKS])
        tasks, undone = take_ways(facts, job.tasks.tasks)
        have = set(with_all(tools))
        for task in tasks:
            if task.id in undone:
                title = f"{task.title[:1].lower()}{task.title[1:]}"
                assert title in cant(Shop(plan), task, undone[task.id]).message
            elif task.works:
                assert have.issuperset(way.tool for way in task.ways)
                assert len(task.ways) == len(task.works)
        todos = todos_of(tasks, UNSAID)
        assert not amiss(todos, put_in_order(todos, looks=0).order)
        outcomes.add(bool(undone))
    assert outcomes == {True, False}
