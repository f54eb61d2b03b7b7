"""The time that ways out and travels take grows as the piece does: 60 and 480 parts, four deep and more."""

from __future__ import annotations

import time
from collections.abc import Callable
from pathlib import Path

import pytest

from bench.scaled import write_scaled
from benchalong.plan.model import Plan
from benchalong.plan.resolve import resolve
from benchalong.reading.project import read_project
from benchalong.workings.clashes import CLASHES
from benchalong.workings.copies import COPIES
from benchalong.workings.hardware import HARDWARE
from benchalong.workings.moving import move_all
from benchalong.workings.placed import PLACED
from benchalong.workings.solids import SOLIDS
from benchalong.workings.ways_out import find_ways_out
from benchalong.workings.working import Worked, work_all
from workings.test_fit_speed import plan_of

TRIES = 3


def cupboards(folder: Path, rows: int) -> Plan:
    write_scaled(folder / "scaled", rows)
    reading = read_project(folder / "scaled")
    plan = resolve(reading.project, reading.unreadable).plan
    assert plan is not None
    return plan


def best_time(plan: Plan) -> float:
    done = work_all(plan, (COPIES, SOLIDS, PLACED, CLASHES, HARDWARE))
    asked: tuple[Callable[[Plan, Worked], object], ...] = (find_ways_out, move_all)
    times = []
    for _ in range(TRIES):
        start = time.process_time()
        for ask in asked:
            ask(plan, done)
        times.append(time.process_time() - start)
    return min(times)


@pytest.mark.parametrize("made", [plan_of, cupboards], ids=["doors", "cupboards"])
def test_eight_times_the_parts_take_at_most_twelve_times_as_long(
    made: Callable[[Path, int], Plan], tmp_path: Path
) -> None:
    small, large = (made(_folder(tmp_path, rows), rows) for rows in (1, 8))
    assert len(large.copies) == 8 * len(small.copies)
    assert best_time(large) <= 12 * best_time(small)


def _folder(within: Path, rows: int) -> Path:
    folder = within / str(rows)
    folder.mkdir()
    return folder


def test_sixty_parts_take_a_fraction_of_a_second(tmp_path: Path) -> None:
    assert best_time(cupboards(tmp_path, 1)) < 0.4
