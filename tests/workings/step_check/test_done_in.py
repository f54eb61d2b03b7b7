"""Which line of the example's steps does which work: the closest that means it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from benchalong.plan.model import DoneTo, Job
from benchalong.workings.step_check.done_in import find_lines
from benchalong.workings.working import Worked
from workings.jobs.shop import jobs_of_example
from workings.step_check.shop import steps_of_example

CUPBOARD = steps_of_example("seed-cupboard")


@pytest.mark.parametrize(
    ("task", "steps"),
    [
        ("cut/side/shelf_dado/1", ["rout-dadoes"]),
        ("cut/side/corner", ["cut-rabbets"]),
        ("cut/shelf/shelf_dado", ["notch-and-lip"]),
        ("cut/top_rail/frame/groove", ["groove"]),
        ("cut/top_rail/frame/tongue", ["tongue"]),
        ("glue-up/shelf", ["glue-boards"]),
        ("glue-up/case/shelf_lip", ["notch-and-lip"]),
        ("glue-up/case/bottom_lip", ["peg-and-flush"]),
        ("glue-up/case", ["glue-case"]),
        ("finish/insides/back", ["fit-back"]),
        ("fit-hardware/butt_hinge", ["hang-doors", "hang-on-wall"]),
        ("make-jig/panel_board", ["notch-and-lip"]),
    ],
)
def test_a_task_is_done_where_a_reader_would_say(task: str, steps: list[str]) -> None:
    assert [CUPBOARD.step(line).id for line in CUPBOARD.lines[task]] == steps


def test_a_part_named_alone_means_what_no_closer_line_means() -> None:
    """`cut: side` first of all takes nothing from the lines that name its joints."""
    job = jobs_of_example("seed-cupboard")
    first, *others = job.plan.steps.values()
    wide = replace(first, does=(Job("cut", ("side",), to=(DoneTo(("side",)),)),))
    plan = replace(job.plan, steps={step.id: step for step in (wide, *others)})
    found = find_lines(plan, Worked({"jobs": job.tasks}))[0].lines
    cuts = [task.id for task in job.tasks.tasks if task.cuts and task.parts == ("side",)]
    assert cuts
    assert all(found[one] == CUPBOARD.lines[one] for one in cuts)
