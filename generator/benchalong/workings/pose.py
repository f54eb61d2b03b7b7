"""Where a copy lies, in floating numbers: with what it was turned by after it was placed."""

from __future__ import annotations

import numpy as np

from benchalong.plan.model import Copy, Tilt
from benchalong.workings.bodies import Floats


def pose(copy: Copy) -> tuple[Floats, Floats]:
    """Turn (3, 3) and place (3,): a point of the shape -> turn @ point + place, in mm."""
    turn, at = np.array(copy.turn, dtype=float), np.array([float(value) for value in copy.at])
    if copy.tilt is None:
        return turn, at
    rows, by = floats(copy.tilt)
    return rows @ turn, rows @ at + by


def floats(tilt: Tilt) -> tuple[Floats, Floats]:
    """As `pose`, of the turn alone."""
    return np.array(tilt.turn, dtype=float), np.array([float(value) for value in tilt.at])
