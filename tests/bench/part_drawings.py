"""Processor time to draw one part, solid and sheet apart, over the parts of a project.

    python tests/bench/part_drawings.py content/seed-cupboard

The median of five rounds for each part; the store is not used.
"""

from __future__ import annotations

import statistics
import sys
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "generator")]

from benchalong.drawing.dimensions import chosen_views  # noqa: E402
from benchalong.drawing.part import part_drawing  # noqa: E402
from benchalong.drawing.views import ViewName, view_lines  # noqa: E402
from benchalong.road import travel  # noqa: E402
from benchalong.workings.solids import Solid, solid_of  # noqa: E402

ROUNDS = 5


def milliseconds(work: Callable[[], object]) -> float:
    times = []
    for _ in range(ROUNDS):
        start = time.process_time()
        work()
        times.append((time.process_time() - start) * 1000)
    return statistics.median(times)


def _lines(solid: Solid, views: tuple[ViewName, ...]) -> None:
    for view in views:
        view_lines(solid, view)


def main(folder: Path) -> None:
    plan = travel(folder).plan
    print(f"{'part':20} {'solid':>7} {'lines':>7} {'all':>7}  ms")
    for name, part in plan.parts.items():
        solid = solid_of(part)
        views = chosen_views(part)
        draw = partial(part_drawing, precision=plan.precision, units=plan.units, projection=plan.projection)
        figures = (
            milliseconds(partial(solid_of, part)),
            milliseconds(partial(_lines, solid, views)),
            milliseconds(partial(draw, part, solid)),
        )
        print(f"{name:20} {figures[0]:7.1f} {figures[1]:7.1f} {figures[2]:7.1f}")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
