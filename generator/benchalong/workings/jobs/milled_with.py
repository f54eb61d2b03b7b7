"""What is cut out and milled beside a part's own copies: spares of it, and test pieces of its stock and
thickness."""

from __future__ import annotations

from dataclasses import replace

from benchalong.plan.model import Part
from benchalong.plan.rough import TestPiece
from benchalong.workings.jobs.facts import Facts
from benchalong.workings.jobs.model import Task


def with_spares(facts: Facts, task: Task, part: Part) -> Task:
    return replace(task, spares=facts.plan.spares.get(part.id, 0))


def with_more(facts: Facts, task: Task, part: Part) -> Task:
    """With its spares, and with the test pieces that go through the machines when it does."""
    return replace(
        with_spares(facts, task, part), test_pieces=tuple(one.id for one in tests_with(facts, part))
    )


def tests_with(facts: Facts, part: Part) -> tuple[TestPiece, ...]:
    """Test pieces of its stock and thickness go with the first such part of the plan."""
    if carrier(facts, part) != part.id:
        return ()
    alike = (part.stock, part.thickness)
    return tuple(one for one in facts.plan.test_pieces.values() if (one.stock, one.thickness) == alike)


def carrier(facts: Facts, part: Part) -> str:
    """The part that test pieces of this one's stock and thickness are cut out and milled with."""
    alike = (part.stock, part.thickness)
    parts = (facts.plan.parts[name] for name in facts.sawn)
    return next((one.id for one in parts if (one.stock, one.thickness) == alike), part.id)


def many(facts: Facts, task: Task, part: Part) -> int:
    """Pieces that go over the machine."""
    tests = sum(facts.plan.test_pieces[one].count for one in task.test_pieces)
    return max(1, part.count + task.spares + tests)
