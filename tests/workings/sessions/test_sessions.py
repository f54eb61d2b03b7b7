"""The order against the clock: small cases reckoned by hand, and the examples gone over again."""

from __future__ import annotations

from fractions import Fraction

import pytest

from benchalong.ground.spans import session_minutes
from benchalong.road import travel
from benchalong.workings.jobs.jobs import JOBS
from benchalong.workings.sessions.into_sessions import DAY, into_sessions
from benchalong.workings.sessions.model import Unit
from benchalong.workings.sessions.sessions import SESSIONS
from benchalong.workings.work_order.work_order import ORDER
from conftest import ROOT


def unit(name: str, minutes: int, *needs: str, waits: int = 0, run: int = 0, to_set: int = 0) -> Unit:
    machine = "saw" if run else ""
    return Unit((name,), frozenset(needs), Fraction(minutes), waits, run, machine, Fraction(to_set))


def told(units: list[Unit], length: int) -> list[list[tuple[str, int, int]]]:
    """By session: each job with its start and minutes."""
    return [
        [(doing.tasks[0], int(doing.start), int(doing.minutes)) for doing in session.doings]
        for session, _ in into_sessions(tuple(units), Fraction(length))
    ]


def test_what_fits_is_done_and_the_rest_comes_tomorrow() -> None:
    assert told([unit("a", 40), unit("b", 30, "a")], 60) == [[("a", 0, 40)], [("b", 0, 30)]]


def test_glue_sets_while_other_work_is_done() -> None:
    units = [unit("glue", 20, waits=60), unit("flush", 10, "glue"), unit("sand", 15)]
    ((session, _),) = into_sessions(tuple(units), Fraction(120))
    assert [(d.tasks[0], int(d.start), d.meanwhile) for d in session.doings] == [
        ("glue", 0, ""), ("sand", 20, "glue"), ("flush", 80, ""),
    ]  # fmt: skip
    assert session.minutes == 45


def test_a_wait_of_a_day_and_a_half_skips_a_session() -> None:
    units = [unit("finish", 20, waits=36 * 60), unit("hang", 10, "finish")]
    found = into_sessions(tuple(units), Fraction(60))
    assert [day for _, day in found] == [0, 2]
    assert found[0][0].sets == ("finish",)


def test_what_is_longer_than_a_session_goes_on_in_the_next() -> None:
    assert told([unit("mill", 130)], 60) == [[("mill", 0, 60)], [("mill", 0, 60)], [("mill", 0, 10)]]


def test_setting_is_counted_once_for_a_run_and_never_out_of_turn() -> None:
    units = [
        unit("one", 10, run=1, to_set=5),
        unit("two", 10, run=1, to_set=5),
        unit("wet", 10, waits=30),
        unit("three", 10, "wet", run=2, to_set=5),
        unit("four", 10, run=3, to_set=5),
    ]
    assert told(units, 200) == [
        [("one", 0, 15), ("two", 15, 10), ("wet", 25, 10), ("three", 65, 15), ("four", 80, 15)]
    ]


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("3 hours", 180), ("90 minutes", 90), ("2 1/2 hours", 150), ("1.5 h", 90), ("an evening", 180),
        ("2 hours 30 minutes", 150), ("A day", 480),
        ("long", None), ("3", None), ("0 hours", None), ("40 hours", None), ("2 5 hours", None),
    ],
)  # fmt: skip
def test_a_session_in_an_authors_words(text: str, minutes: int | None) -> None:
    assert session_minutes(text) == minutes


@pytest.mark.parametrize("example", ["seed-cupboard", "step-stool", "joint-samples"])
def test_the_examples_keep_needs_waits_sessions_and_setups(example: str) -> None:
    worked = travel(ROOT / "content" / example).worked
    found, jobs, order = worked[SESSIONS](), worked[JOBS], worked[ORDER]()
    done: dict[str, Fraction] = {}
    machines: dict[str, list[int]] = {}
    for number, session in enumerate(found.sessions):
        assert session.minutes <= found.length
        for doing in session.doings:
            begins = number * DAY + doing.start
            for task in (jobs.by_id[one] for one in doing.tasks):
                for first in task.first - set(doing.tasks):
                    assert doing.goes_on or first in done, (task.id, first)
                    # Days without work only lengthen a wait, so this is the strictest it can be.
                    if found.days == len(found.sessions):
                        assert doing.goes_on or done[first] + jobs.by_id[first].waits <= begins
                if run := order.run_of.get(task.id):
                    machines.setdefault(run.setup.machine, []).append(run.number)
            done |= dict.fromkeys(doing.tasks, begins + doing.minutes)
    assert set(done) == set(order.order)
    assert all(numbers == sorted(numbers) for numbers in machines.values())
