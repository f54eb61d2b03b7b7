"""Sag and span: our own worked figures and what must hold for every beam."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchalong.trade.species import woods
from benchalong.trade.strength import (
    Ends,
    Spread,
    lasting,
    longest_span,
    newtons,
    sag,
    second_moment,
    stiffness_of,
)

OAK = second_moment(11.25, 0.75)
"""A shelf of red oak, in inches and pounds: 36 in span, 25 lb per foot, E 1.82 million psi."""
spreads = st.sampled_from(["even", "middle"])
ends = st.sampled_from(["resting", "fixed"])


def test_a_shelf_of_red_oak() -> None:
    assert pytest.approx(0.39551, abs=5e-6) == OAK
    resting = sag(75, 36, stiffness=1.82e6, moment=OAK)
    fixed = sag(75, 36, stiffness=1.82e6, moment=OAK, ends="fixed")
    assert (resting, fixed) == pytest.approx((0.0633, 0.01266), abs=5e-5)
    assert resting / fixed == pytest.approx(5)
    assert sag(75, 36, stiffness=1.82e6, moment=OAK, spread="middle") == pytest.approx(0.1013, abs=5e-5)
    assert longest_span(25 / 12, limit=1 / 600, stiffness=1.82e6, moment=OAK) == pytest.approx(35.4, abs=0.05)


def test_the_same_shelf_in_millimetres() -> None:
    moment = second_moment(285.75, 19.05)
    assert sag(0.36485 * 914.4, 914.4, stiffness=12548, moment=moment) == pytest.approx(1.608, abs=5e-4)


def test_a_panel_on_its_ends() -> None:
    assert sag(0.3 * 800, 800, stiffness=8000, moment=second_moment(300, 18)) == pytest.approx(
        1.372, abs=5e-4
    )


@given(st.floats(1, 2000), st.floats(100, 3000), spreads, ends)
def test_how_sag_grows(load: float, span: float, spread: Spread, end: Ends) -> None:
    def bends(load: float, span: float, thickness: float, width: float = 300) -> float:
        moment = second_moment(width, thickness)
        return sag(load, span, stiffness=10_000, moment=moment, spread=spread, ends=end)

    once = bends(load, span, 20)
    assert bends(load, span, 40) == pytest.approx(once / 8)
    assert bends(load, span, 20, 600) == pytest.approx(once / 2)
    # A load per length grows with the span.
    assert bends(2 * load, 2 * span, 20) == pytest.approx(16 * once)


@given(st.floats(0.01, 5), spreads, ends)
def test_at_the_longest_span_the_sag_is_the_limit(load: float, spread: Spread, end: Ends) -> None:
    moment = second_moment(280, 19)
    longest = longest_span(load, limit=1 / 600, stiffness=10_000, moment=moment, spread=spread, ends=end)
    whole = load * longest if spread == "even" else load
    at = sag(whole, longest, stiffness=10_000, moment=moment, spread=spread, ends=end)
    assert at / longest == pytest.approx(1 / 600)


def test_stiffness_comes_from_the_table_or_not_at_all() -> None:
    oak, iroko = woods().find("northern red oak"), woods().find("iroko")
    assert oak
    assert iroko
    assert stiffness_of(oak) == pytest.approx(12548, abs=1)
    assert stiffness_of(iroko) is None


def test_a_load_that_lasts_doubles_the_sag() -> None:
    assert lasting(1.5) == 3
    assert newtons(10) == pytest.approx(98.0665)
