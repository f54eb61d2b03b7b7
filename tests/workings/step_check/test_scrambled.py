"""The cupboard's steps in other orders: what breaks a precedence is found, and nothing else is a fault."""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import pytest

from benchalong.ground.problems import Finding
from benchalong.workings.step_check.done_in import find_lines
from benchalong.workings.step_check.step_check import check_steps
from benchalong.workings.working import Worked
from workings.jobs.shop import jobs_of_example

CUPBOARD = jobs_of_example("seed-cupboard")
STEPS = tuple(CUPBOARD.plan.steps)


def by_hand() -> dict[str, tuple[tuple[str, ...], ...]]:
    """By step, what must come before it, with what may stand for it."""
    text = (Path(__file__).parent / "cupboard_precedences.txt").read_text(encoding="utf-8")
    lines = [line.split(": ") for line in text.splitlines() if not line.startswith("#")]
    return {step: tuple(tuple(one.split("|")) for one in firsts.split()) for step, firsts in lines}


BEFORE = by_hand()


def found(order: Sequence[str]) -> tuple[Finding, ...]:
    plan = replace(CUPBOARD.plan, steps={step: CUPBOARD.plan.steps[step] for step in order})
    worked = Worked({"jobs": CUPBOARD.tasks})
    done_in, _ = find_lines(plan, worked)
    return check_steps(plan, Worked({"jobs": CUPBOARD.tasks, "done in": done_in}))[1]


def too_early(order: Sequence[str]) -> set[str]:
    place = {step: number for number, step in enumerate(order)}
    return {
        step
        for step, firsts in BEFORE.items()
        if any(min(place[one] for one in either) > place[step] for either in firsts)
    }


def faults(order: Sequence[str]) -> list[Finding]:
    return [finding for finding in found(order) if finding.level == "fault"]


def test_the_table_names_every_step_there_is() -> None:
    named = {one for firsts in BEFORE.values() for either in firsts for one in either} | set(BEFORE)
    assert named == set(STEPS)


def test_as_written_nothing_is_found() -> None:
    assert not found(STEPS)


@pytest.mark.parametrize("seed", range(30))
def test_shuffled_steps_are_faults_and_each_too_early_step_is_named(seed: int) -> None:
    order = list(STEPS)
    random.Random(seed).shuffle(order)
    told = faults(order)
    assert too_early(order)
    assert told
    named = {finding.message.split()[0].partition("-")[2] for finding in told}
    assert len(named & too_early(order)) >= len(too_early(order)) // 2


@pytest.mark.parametrize("step", STEPS)
def test_a_step_moved_anywhere_is_a_fault_exactly_when_it_breaks_a_precedence(step: str) -> None:
    """600 scrambles: every step put in every other place."""
    rest = [one for one in STEPS if one != step]
    for place in range(len(STEPS)):
        order = [*rest[:place], step, *rest[place:]]
        assert bool(faults(order)) == bool(too_early(order)), (step, place, faults(order), too_early(order))


@pytest.mark.parametrize("seed", range(40))
def test_an_order_that_keeps_to_the_table_has_no_fault(seed: int) -> None:
    rng, left = random.Random(seed), list(STEPS)
    order: list[str] = []
    while left:
        can = [step for step in left if all(set(either) & {*order, step} for either in BEFORE.get(step, ()))]
        order.append(rng.choice(can))
        left.remove(order[-1])
    assert not too_early(order)
    assert not faults(order)
