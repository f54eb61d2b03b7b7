"""The plan check's time grows as the piece does: copies four deep, 60, 240 and 480 parts."""

from __future__ import annotations

import time
from pathlib import Path

import pytest

from benchalong.plan.model import Plan
from benchalong.plan.resolve import resolve
from benchalong.reading.project import read_project
from benchalong.workings.order import WORKINGS
from benchalong.workings.working import Working, work_all

BASES = Path(__file__).parent.parent / "faults" / "bases"
CHECKS = ("placed", "clashes", "meetings", "groove ends", "left wood", "placing check", "proportions")
"""What this is about; ways out and travel have their own."""


def needed(working: Working[object], found: dict[str, Working[object]]) -> None:
    for need in working.needs:
        needed(need, found)
    found.setdefault(working.name, working)


def checks() -> tuple[Working[object], ...]:
    found: dict[str, Working[object]] = {}
    for working in WORKINGS:
        if working.name in CHECKS:
            needed(working, found)
    return tuple(found.values())


def room_of_doors(walls: int) -> str:
    """Doors of 5 parts, 4 to a bank, 3 banks to a wall: 60 parts a wall, four deep in the room."""
    text = (
        (BASES / "door.yaml").read_text(encoding="utf-8").replace("title: Door", "title: Room\npiece: room")
    )
    before, after = text.split("stages:")
    banks = "".join(
        f"      - {{assembly: door, mark: D{n}, at: [{400 * n} mm, 0, 0]"
        f"{', mirror: left to right' * (n % 2)}}}\n"
        for n in range(4)
    )
    rows = "".join(f"      - {{assembly: bank, mark: K{n}, at: [0, 0, {600 * n} mm]}}\n" for n in range(3))
    many = "".join(f"      - {{assembly: wall, mark: W{n}, at: [0, {20 * n} mm, 0]}}\n" for n in range(walls))
    nested = f"  bank:\n    place:\n{banks}  wall:\n    place:\n{rows}  room:\n    place:\n{many}"
    return f"{before}{nested}stages:{after}"


def plan_of(folder: Path, walls: int) -> Plan:
    (folder / "project.yaml").write_text(room_of_doors(walls), encoding="utf-8")
    reading = read_project(folder)
    resolved = resolve(reading.project, reading.unreadable)
    assert resolved.plan is not None, (reading.problems, resolved.problems)
    return resolved.plan


def best_time(plan: Plan, tries: int = 3) -> float:
    times = []
    for _ in range(tries):
        start = time.process_time()
        work_all(plan, checks())
        times.append(time.process_time() - start)
    return min(times)


@pytest.fixture(scope="module")
def times(tmp_path_factory: pytest.TempPathFactory) -> dict[int, float]:
    plans = {n: plan_of(tmp_path_factory.mktemp("room"), walls) for n, walls in ((60, 1), (240, 4), (480, 8))}
    assert {n: len(plan.copies) for n, plan in plans.items()} == {60: 60, 240: 240, 480: 480}
    best_time(plans[60], tries=1)
    return {n: best_time(plan) for n, plan in plans.items()}


def test_sixty_parts_are_checked_in_well_under_half_a_second(times: dict[int, float]) -> None:
    assert times[60] < 0.5


def test_eight_times_the_parts_take_at_most_twelve_times_as_long(times: dict[int, float]) -> None:
    assert times[480] <= 12 * times[60], times
