"""How hard a wood screw may be pulled, against the example of a public table.

Source: engineeringtoolbox.com, "Wood Screws - Withdrawal Force", seen: 2850 * G^2 * D, and its example for
Canadian spruce (0.45) and a No. 10 screw (0.190 in): 109 lb for each inch.
"""

from __future__ import annotations

import pytest

from benchalong.trade.fixings import NEWTONS_PER_POUND, withdrawal


def test_a_number_ten_in_spruce() -> None:
    pounds = withdrawal(0.190 * 25.4, 25.4, 0.45) / NEWTONS_PER_POUND
    # The page prints 109: it cuts the fraction off, 109.66 to two places.
    assert 109 <= pounds < 110
    assert pounds == pytest.approx(2850 * 0.45**2 * 0.190)
