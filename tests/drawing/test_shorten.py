"""Stretches cut short: one scale, shapes kept, lines parted at the gap."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchalong.drawing.shorten import GAP, LEAST, WORTH, fitted, least_size, on_sheet

STOPS = st.lists(st.floats(1, 500), min_size=1, max_size=12).map(
    lambda gaps: [0.0, *np.cumsum(gaps).tolist()]
)


def test_what_fits_is_drawn_whole() -> None:
    strip = fitted([0, 100, 200], scale=1, room=250)
    assert strip.breaks == ()
    assert [strip.place(value) for value in (0, 100, 200)] == [0, 100, 200]


def test_the_widest_stretch_is_cut_short() -> None:
    strip = fitted([0, 20, 680, 700], scale=2, room=200)
    assert strip.size == pytest.approx(200)
    assert len(strip.breaks) == 1
    assert strip.place(20) == 40
    assert strip.place(700) - strip.place(680) == pytest.approx(40)


@given(STOPS, st.floats(0.3, 3), st.floats(60, 400))
def test_order_and_scale_are_kept(stops: list[float], scale: float, room: float) -> None:
    strip = fitted(stops, scale=scale, room=room)
    placed = [strip.place(value) for value in stops]
    assert placed == sorted(placed)
    for first, last in pairwise(stops):
        gap = strip.place(last) - strip.place(first)
        true = (last - first) * scale
        assert gap == pytest.approx(true) or LEAST - 0.01 <= gap <= true - WORTH + 0.01
    assert strip.size <= max(room + WORTH * len(stops), least_size(stops, scale) + WORTH * len(stops)) + 0.01


def test_a_line_over_a_gap_is_parted_and_keeps_its_slope() -> None:
    right, downwards = fitted([0, 700], scale=1, room=100), fitted([0, 70], scale=1, room=100)
    rows = on_sheet(np.array([[0.0, 0.0, 700.0, 70.0]]), right, downwards)
    assert len(rows) == 2
    for x0, y0, x1, y1 in rows.tolist():
        assert (y1 - y0) / (x1 - x0) == pytest.approx(0.1)
    assert rows[1, 0] - rows[0, 2] == pytest.approx(GAP)
