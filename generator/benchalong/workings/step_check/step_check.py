"""Can the author's steps be carried out as they are written, and do they do all the work?"""

from __future__ import annotations

from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan
from benchalong.workings.jobs.jobs import JOBS
from benchalong.workings.step_check.broken import broken_needs
from benchalong.workings.step_check.done_in import DONE_IN
from benchalong.workings.step_check.gaps import in_no_step, in_two_steps, nothing_said
from benchalong.workings.step_check.jigs import used_before_made
from benchalong.workings.step_check.made_again import set_again
from benchalong.workings.step_check.rests import short_rests
from benchalong.workings.working import Worked, Working

CHECKS = (broken_needs, short_rests, used_before_made, in_no_step, in_two_steps, set_again)


def check_steps(_: Plan, worked: Worked) -> tuple[None, tuple[Finding, ...]]:
    """A plan whose steps don't say what they do is only told that it wasn't looked at."""
    tasks, done_in = worked[JOBS].by_id, worked[DONE_IN]
    if not done_in.is_said or not tasks:
        return None, tuple(nothing_said(done_in)) if tasks else ()
    return None, tuple(finding for check in CHECKS for finding in check(tasks, done_in))


STEP_CHECK: Working[None] = Working(
    "step check",
    "Can the steps be carried out as they are written, and do they do all the work?",
    check_steps,
    (JOBS, DONE_IN),
)
