"""The examples' jobs, against precedences written by hand."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import networkx
import pytest

from workings.jobs.shop import Job, jobs_of_example

HERE = Path(__file__).parent
EXAMPLES = ("seed-cupboard", "step-stool", "joint-samples")


def by_hand(example: str) -> list[tuple[str, str, str]]:
    """(one, sign, other) of each line."""
    text = (HERE / f"{example}.txt").read_text(encoding="utf-8")
    lines = [line.split() for line in text.splitlines() if line and not line.startswith("#")]
    return [(one, sign, other) for one, sign, other in lines]


LINES = [(example, *line) for example in ("seed-cupboard", "step-stool") for line in by_hand(example)]


def reached(job: Job, *, musts_alone: bool) -> Any:
    """The closure of the needs, by an independent library."""
    graph: Any = networkx.DiGraph()
    graph.add_nodes_from(job.by_id)
    for task in job.tasks.tasks:
        graph.add_edges_from(
            (need.first, task.id) for need in task.needs if need.due == "must" or not musts_alone
        )
    return networkx.transitive_closure_dag(graph)


@pytest.fixture(scope="module")
def closures() -> dict[tuple[str, bool], Any]:
    return {
        (example, alone): reached(jobs_of_example(example), musts_alone=alone)
        for example in ("seed-cupboard", "step-stool")
        for alone in (True, False)
    }


@pytest.mark.parametrize(("example", "one", "sign", "other"), LINES)
def test_what_comes_before_what(
    example: str, one: str, sign: str, other: str, closures: dict[tuple[str, bool], Any]
) -> None:
    job = jobs_of_example(example)
    assert one in job.by_id
    assert other in job.by_id
    must, any_need = closures[example, True], closures[example, False]
    if sign == "|":
        assert not any_need.has_edge(one, other)
        assert not any_need.has_edge(other, one)
    elif sign == "<~":
        assert any_need.has_edge(one, other)
        assert not must.has_edge(one, other)
    else:
        assert must.has_edge(one, other)


@pytest.mark.parametrize("example", EXAMPLES)
def test_every_cut_of_every_shape_is_made_by_one_task(example: str) -> None:
    job = jobs_of_example(example)
    made = [(cut.shape, cut.number) for task in job.tasks.tasks for cut in task.cuts]
    there = [(shape.id, n) for shape in job.plan.shapes.values() for n in range(len(shape.cuts))]
    assert sorted(made) == sorted(there)


@pytest.mark.parametrize("example", EXAMPLES)
def test_needs_come_before_in_the_list_and_are_there(example: str) -> None:
    seen: set[str] = set()
    for task in jobs_of_example(example).tasks.tasks:
        assert task.first <= seen
        assert task.id not in seen
        seen.add(task.id)


@pytest.mark.parametrize("example", EXAMPLES)
def test_every_line_of_the_authors_steps_is_a_task(example: str) -> None:
    """What an author names is there to be done, and called by the word the author uses."""
    job = jobs_of_example(example)
    for step in job.plan.steps.values():
        for line in step.does:
            for part in line.parts:
                found = [
                    task.id for task in job.tasks.tasks if line.kind in task.called and part in task.parts
                ]
                assert found or (line.kind, part) in NOT_FROM_THE_PLAN, (step.id, line.kind, part)
            for hardware in line.hardware:
                assert job.by_id[f"fit-hardware/{hardware}"].kind == line.kind
            for assembly in line.assemblies:
                assert any(task.kind == line.kind and task.assembly == assembly for task in job.tasks.tasks)


NOT_FROM_THE_PLAN = {
    ("drill", "side"),  # of the cupboard: pegs in its corners, which the plan draws no holes for
    ("drill", "case_end"),
    ("drill", "nail_lath"),
}


def test_the_case_is_put_together_from_the_inside_out() -> None:
    rows = jobs_of_example("seed-cupboard").by_id["glue-up/case"].rows
    place = {mark: number for number, row in enumerate(rows) for mark in row}
    assert place["C/S2"] < place["C/SL"]
    assert place["C/HR"] < place["C/CT"]
    assert "C/BK" not in place


def test_hands_are_told_apart_and_tongues_at_both_ends_are_one_task() -> None:
    job = jobs_of_example("seed-cupboard")
    assert job.by_id["cut/side/corner"].title == "Cut the rabbet of the corner in the side, left hand"
    assert job.by_id["cut/side-2/corner"].marks == ("C/SR",)
    assert len(job.by_id["cut/top_rail/frame/tongue"].cuts) == 2
    assert (
        job.by_id["cut/hinge_stile/hinges/mortise"].title == "Cut the gain for the hinge in the hinge stile"
    )


def test_the_same_plan_gives_the_same_jobs() -> None:
    from conftest import ROOT
    from workings.jobs.shop import jobs_in

    again = jobs_in(ROOT / "content" / "seed-cupboard")
    assert again.tasks == jobs_of_example("seed-cupboard").tasks
