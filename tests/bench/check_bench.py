"""Processor time to read, check and draw the first example scaled to 61, 244 and 488 parts.

    python tests/bench/check_bench.py

Each size in a process of its own, the best of three rounds. `read` is from files to the plan, `check` all
of the plan check, `pictures` the piece as it stands and pulled apart, drawn anew.
"""

from __future__ import annotations

import json
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import TypeAlias, TypeVar

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "generator"), str(ROOT / "tests")]

PAIRS = (1, 4, 8)
ROUNDS = 3
KINDS = ("read", "check", "pictures", "checked and drawn")
Figures: TypeAlias = dict[str, float]
Made = TypeVar("Made")


def measure(pairs: int, rounds: int = ROUNDS) -> Figures:
    """Seconds for each kind of work, in this process; and how many parts there were."""
    from bench.scaled import write_scaled
    from benchalong.drawing.drawings import Drawings, drawing_code
    from benchalong.ground.store import MemoryStore
    from benchalong.plan.resolve import resolve
    from benchalong.reading.project import read_project
    from benchalong.workings.order import WORKINGS
    from benchalong.workings.working import work_all

    drawing_code()
    taken: list[Figures] = []
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name) / "scaled"
        write_scaled(folder, pairs)
        for _ in range(rounds):
            reading, read = seconds(lambda: read_project(folder))
            resolving, resolved = seconds(lambda: resolve(read.project, read.unreadable))  # noqa: B023
            plan = resolved.plan
            assert plan is not None
            checking, worked = seconds(lambda: work_all(plan, WORKINGS))  # noqa: B023
            drawings = Drawings(plan, worked, MemoryStore())
            drawing, shown = seconds(lambda: (drawings.piece(), drawings.piece_apart()))  # noqa: B023
            assert all(shown), "there are both pictures"
            figures = (reading + resolving, checking, drawing, checking + drawing)
            taken.append({"parts": len(plan.copies), **dict(zip(KINDS, figures, strict=True))})
    return {kind: min(one[kind] for one in taken) for kind in taken[0]}


def seconds(work: Callable[[], Made]) -> tuple[float, Made]:
    start = time.process_time()
    made = work()
    return time.process_time() - start, made


def in_own_process(pairs: int, rounds: int = ROUNDS) -> Figures:
    words = [sys.executable, __file__, str(pairs), str(rounds)]
    done = subprocess.run(words, capture_output=True, text=True, check=True)
    figures: Figures = json.loads(done.stdout)
    return figures


def main() -> None:
    if len(sys.argv) > 1:
        print(json.dumps(measure(*map(int, sys.argv[1:]))))
        return
    found = [in_own_process(pairs) for pairs in PAIRS]
    for figures in found:
        print("  ".join(f"{kind} {value:.3f}" for kind, value in figures.items()))
    for kind in KINDS:
        print(f"{kind}: largest / smallest {found[-1][kind] / found[0][kind]:.1f}")


if __name__ == "__main__":
    main()
