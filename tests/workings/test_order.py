"""The order of the workings."""

from __future__ import annotations

import pytest

from benchalong.workings.order import WORKINGS
from benchalong.workings.working import Working, work_all
from workings.plans import two_doors


def test_each_working_comes_after_those_it_needs() -> None:
    """So there is no circle either."""
    done: set[str] = set()
    for working in WORKINGS:
        assert {need.name for need in working.needs} <= done, working.name
        done.add(working.name)


def test_each_has_a_name_and_a_question_of_its_own() -> None:
    assert len({working.name for working in WORKINGS}) == len(WORKINGS)
    assert all(working.question.endswith("?") for working in WORKINGS)


def test_all_of_them_can_be_done() -> None:
    worked = work_all(two_doors(), WORKINGS)
    assert set(worked.results) == {working.name for working in WORKINGS}


def test_a_working_sees_only_what_it_named() -> None:
    first: Working[int] = Working("first", "One?", lambda _plan, _worked: (1, ()))
    second: Working[int] = Working("second", "Two?", lambda _plan, worked: (worked[first] + 1, ()))
    with pytest.raises(KeyError):
        work_all(two_doors(), (first, second))
    named: Working[int] = Working("second", "Two?", second.work, (first,))
    assert work_all(two_doors(), (first, named))[named] == 2
