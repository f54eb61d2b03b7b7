"""How many sessions does it take, and what is done in each?

Minutes are common practice, adjusted by the author's `shop.pace`. Worked out when first asked for, from the
order of work.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fractions import Fraction
from functools import cache
from itertools import groupby

from benchalong.ground.problems import Finding
from benchalong.ground.spans import session_minutes
from benchalong.plan.model import Plan
from benchalong.workings.jobs.jobs import JOBS
from benchalong.workings.jobs.model import Task
from benchalong.workings.sessions.into_sessions import into_sessions
from benchalong.workings.sessions.model import ZERO, Sessions, Unit
from benchalong.workings.work_order.model import Run, WorkOrder
from benchalong.workings.work_order.work_order import ORDER
from benchalong.workings.working import Worked, Working

USUAL_SESSION = Fraction(180)
"""Minutes, where the author says nothing: an evening."""
TEST_PIECE = Fraction(5)
"""Minutes for a test cut that no setup counts. *Common practice, no source.*"""


def plan_sessions(plan: Plan, worked: Worked) -> tuple[Callable[[], Sessions], tuple[Finding, ...]]:
    return cache(lambda: _planned(plan, worked)), ()


def _planned(plan: Plan, worked: Worked) -> Sessions:
    length = session_minutes(plan.shop.session) or USUAL_SESSION
    by_id = worked[JOBS].by_id
    order = worked[ORDER]()
    units = tuple(_units([by_id[one] for one in order.order], order, plan.shop.pace))
    found = into_sessions(units, length)
    days = found[-1][1] - found[0][1] + 1 if found else 0
    return Sessions(length, tuple(session for session, _ in found), days)


def _units(tasks: list[Task], order: WorkOrder, pace: Fraction) -> Iterator[Unit]:
    to_set = {
        run.number: max(task.minutes_to_set for task in tasks if task.id in run.tasks) for run in order.runs
    }
    place = order.place
    for key, group in groupby(tasks, lambda task: _at_one_go(task, order)):
        found = tuple(group)
        together = [found] if key else [(task,) for task in found]
        for each in together:
            run = order.run_of.get(each[0].id)
            own = tuple(task.id for task in each)
            needs = frozenset(one for task in each for one in task.first if one in place) - set(own)
            yield Unit(
                own,
                needs,
                pace * sum((_minutes(task, run) for task in each), ZERO),
                max(task.waits for task in each),
                run.number if run else 0,
                run.setup.machine if run else "",
                pace * to_set[run.number] if run else ZERO,
            )


def _at_one_go(task: Task, order: WorkOrder) -> str:
    run = order.run_of.get(task.id)
    return str(run.number) if run and task.one_session else ""


def _minutes(task: Task, run: Run | None) -> Fraction:
    """What stays set is counted once for the run, its test cut with it; everything else with its task."""
    if run:
        return task.minutes
    return TEST_PIECE if task.kind == "test piece" else task.minutes + task.minutes_to_set


SESSIONS: Working[Callable[[], Sessions]] = Working(
    "sessions", "How many sessions does it take, and what is done in each?", plan_sessions, (JOBS, ORDER)
)
