"""Projects with steps, worked out as far as which step does what, and what is found out about their order."""

from __future__ import annotations

from functools import cache

from benchalong.workings.step_check.done_in import DoneIn, find_lines
from benchalong.workings.working import Worked
from workings.jobs.shop import jobs_of_example


@cache
def steps_of_example(name: str) -> DoneIn:
    job = jobs_of_example(name)
    return find_lines(job.plan, Worked({"jobs": job.tasks}))[0]
