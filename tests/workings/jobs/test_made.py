"""Jobs of pieces made by rule: no circles, every cut once, every need there, whatever is fitted."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from drawing.made_pieces import made_piece
from pages.every_kind import project_text
from workings.jobs.shop import Job, jobs_of


def is_sound(job: Job) -> None:
    made = [(cut.shape, cut.number) for task in job.tasks.tasks for cut in task.cuts]
    there = [(shape.id, n) for shape in job.plan.shapes.values() for n in range(len(shape.cuts))]
    assert sorted(made) == sorted(there)
    graph = job.graph
    assert set(graph.ids) == set(job.by_id)
    for task in job.tasks.tasks:
        assert graph.must_before[task.id] <= graph.before[task.id]
        assert all(need.why and not need.why.endswith(".") for need in task.needs)
        assert {one for closes in task.closes for one in closes.shut} <= task.must


@settings(max_examples=25, deadline=None, derandomize=True)
@given(seed=some.integers(0, 10_000))
def test_pieces_made_by_rule_have_jobs_without_circles(seed: int) -> None:
    is_sound(jobs_of(made_piece(seed)))


AFTER = (
    "glue up piece", "dry-assemble piece", "cut PART", "crosscut PART", "measure and fit PART", "sand PART",
)  # fmt: skip
UNTIL = ("fitted", "glued", "hung", "glue up piece", "cut PART")


@settings(max_examples=40, deadline=None, derandomize=True)
@given(data=some.data(), seed=some.integers(0, 400))
def test_circles_of_what_is_fitted_are_told_and_taken_out(data: some.DataObject, seed: int) -> None:
    text = made_piece(seed)
    parts = re.findall(r"^  (\w+): \{stock: ", text, re.MULTILINE)
    for part in data.draw(some.lists(some.sampled_from(parts), unique=True, min_size=1)):
        others = [one for one in parts if one != part] or ["piece"]
        measured = data.draw(some.sampled_from([*others, "piece"]))
        after = data.draw(some.sampled_from(AFTER)).replace("PART", data.draw(some.sampled_from(parts)))
        until = data.draw(some.sampled_from(UNTIL)).replace("PART", data.draw(some.sampled_from(parts)))
        said = f"cut_when: {{measured: {measured}, after: {after}}}, leave: 1 mm until {until}"
        text = text.replace(f"  {part}: {{stock: ", f"  {part}: {{{said}, stock: ")
    job = jobs_of(text)
    is_sound(job)
    for finding in job.findings:
        assert finding.code in ("fitted-goes-round", "fitted-too-late")
        assert finding.subject in parts


def test_a_joint_of_every_kind() -> None:
    job = jobs_of(project_text())
    is_sound(job)
    assert not job.tasks.undone


@pytest.mark.parametrize("count", [1, 40])
def test_a_bare_cut_list_has_jobs(count: int) -> None:
    parts = "\n".join(
        f"  part_{n}: {{stock: oak, width: {40 + n}, length: {300 + n}, count: 2}}" for n in range(count)
    )
    job = jobs_of(
        "title: List\nunits: millimetre\nstages: {all: {title: All}}\n"
        "stock: {oak: {kind: board, thickness: 20}}"
        f"\nparts:\n{parts}\n"
    )
    is_sound(job)
    assert len(job.tasks.tasks) == 6 * count
