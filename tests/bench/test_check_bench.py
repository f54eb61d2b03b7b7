"""The whole plan check and the piece's pictures take time as the piece grows, and little for a small one.

A ratio holds on any machine, given a few tries; seconds only on one that has nothing else to do, so they are
asked for with `BENCHALONG_QUIET=1`. `check_bench.py` gives the figures.
"""

from __future__ import annotations

import os

import pytest

from bench.check_bench import KINDS, in_own_process

GROWS = 12.0
"""What eight times the parts may take, against once."""
SMALL = 1.0
"""Seconds of one processor to check about 60 parts and draw the piece whole and pulled apart."""


TRIES = 3


def test_eight_times_the_parts_take_at_most_twelve_times_as_long() -> None:
    ratios: list[dict[str, float]] = []
    for _ in range(TRIES):
        small, large = in_own_process(1), in_own_process(8)
        assert (small["parts"], large["parts"]) == (61, 488)
        ratios.append({kind: large[kind] / small[kind] for kind in KINDS})
        if all(ratios[-1][kind] <= GROWS for kind in ("check", "checked and drawn")):
            return
    pytest.fail(f"each of {TRIES} tries took longer: {ratios}")


@pytest.mark.skipif(os.environ.get("BENCHALONG_QUIET") != "1", reason="seconds count on a quiet machine only")
def test_sixty_parts_are_checked_and_drawn_within_a_second() -> None:
    figures = in_own_process(1)
    assert figures["checked and drawn"] < SMALL, figures
