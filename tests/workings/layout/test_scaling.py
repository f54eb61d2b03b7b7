"""Exact lengths survive the way to whole numbers and back."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchalong.workings.layout.scaling import exact, parts_per_unit, whole


@given(st.lists(st.fractions(max_denominator=640), min_size=1, max_size=20))
def test_nothing_is_lost(lengths: list[Fraction]) -> None:
    per_unit = parts_per_unit(lengths)
    assert [exact(whole(length, per_unit), per_unit) for length in lengths] == lengths


def test_what_is_not_whole_is_refused() -> None:
    with pytest.raises(ValueError, match="not a whole number"):
        whole(Fraction(1, 3), 64)
