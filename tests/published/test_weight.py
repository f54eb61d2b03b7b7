"""Weight against the Wood Handbook's chapter 4, as a public forestry script quotes it.

Not held against anything here: the most water wood can hold, 100 (1.54 - G) / (1.54 G). The equation gives
268.4 and 46.2 percent where the Handbook is said to print 267 and 44, and nothing of ours uses it.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from benchalong.trade.amounts import density_from


def test_gravity_of_four_tenths() -> None:
    """1000 * G * (1 + M / 100) kg per cubic metre is 62.43 * G * (1 + M / 100) pounds per cubic foot: the
    formula and its inputs were seen, the answer is ours."""
    metric = float(density_from(Fraction("0.40"), Fraction(12)))
    assert metric == pytest.approx(448)
    assert metric * 0.45359237**-1 * 0.3048**3 == pytest.approx(62.43 * 0.40 * 1.12, rel=1e-4)
