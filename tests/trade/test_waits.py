"""Glue, finish and clamps: common practice, no source."""

from __future__ import annotations

from fractions import Fraction

import pytest

from benchalong.ground.lengths import INCH
from benchalong.trade.waits import GLUES, USUAL_GLUE, Glue, clamp_spacing, clamps_for, drying


@pytest.mark.parametrize("glue", GLUES.values(), ids=list(GLUES))
def test_a_glue_is_open_before_it_sets(glue: Glue) -> None:
    one = glue
    assert 0 < one.open[0] <= one.open[1] <= one.assembly[1]
    assert one.assembly[0] <= one.assembly[1]
    assert one.clamped[1] / 60 <= one.loaded


def test_the_usual_glue() -> None:
    assert [*USUAL_GLUE.open] == [5, 10]
    assert [*USUAL_GLUE.assembly] == [10, 20]
    assert [*USUAL_GLUE.clamped, USUAL_GLUE.loaded] == [30, 60, 24]
    assert USUAL_GLUE.coldest == 10


@pytest.mark.parametrize(
    ("what", "hours"),
    [
        ("Danish oil", 24),
        ("waterborne varnish", 24),
        ("dewaxed shellac, 2 lb cut", 2),
        ("beeswax", 1),
        ("tung", 24),
    ],
)
def test_from_coat_to_coat(what: str, hours: int) -> None:
    assert drying(what) == hours


def test_clamps() -> None:
    """One more than the spacings; pressure spreads at half a right angle."""
    assert clamps_for(48 * INCH, 12 * INCH) == 5
    assert clamps_for(49 * INCH, 12 * INCH) == 6
    assert [clamp_spacing(width * INCH) / INCH for width in (2, 4, 9)] == [6, 8, 12]
    with pytest.raises(ValueError, match="above zero"):
        clamps_for(INCH, Fraction(0))
