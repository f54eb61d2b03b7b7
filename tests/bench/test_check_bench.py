"""The whole plan check and the piece's pictures take time as the piece grows, and little for a small one.

Both bounds leave room for a busy machine; `check_bench.py` gives the figures.
"""

from __future__ import annotations

import pytest

from bench.check_bench import KINDS, Figures, in_own_process

GROWS = 12.0
"""What eight times the parts may take, against once."""
SMALL = 1.0
"""Seconds of one processor to check about 60 parts and draw the piece whole and pulled apart."""


@pytest.fixture(scope="module")
def figures() -> tuple[Figures, Figures]:
    return in_own_process(1), in_own_process(8, rounds=2)


def test_eight_times_the_parts_take_at_most_twelve_times_as_long(figures: tuple[Figures, Figures]) -> None:
    small, large = figures
    assert (small["parts"], large["parts"]) == (61, 488)
    ratios = {kind: large[kind] / small[kind] for kind in KINDS}
    assert ratios["checked and drawn"] <= GROWS, ratios
    assert ratios["check"] <= GROWS, ratios


def test_sixty_parts_are_checked_and_drawn_within_a_second(figures: tuple[Figures, Figures]) -> None:
    assert figures[0]["checked and drawn"] < SMALL, figures[0]
