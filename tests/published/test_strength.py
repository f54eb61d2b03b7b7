"""Sag against a beam worked out another way: finite differences, the ends as springs of numbers and nothing
taken from the closed formulas. And against a textbook of 1914.
"""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray

from benchalong.trade.strength import Ends, Spread, sag, second_moment

PIECES = 800
Row = NDArray[np.float64]


def middle_by_differences(
    load: float, span: float, stiffness: float, moment: float, spread: Spread, ends: Ends
) -> float:
    """EI w'''' = q on a grid of equal pieces, with one made-up point beyond each end: w = 0 at both ends, and
    there w'' = 0 where they rest, w' = 0 where they are fixed."""
    step = span / PIECES
    points = PIECES + 3
    matrix: Row = np.zeros((points, points))
    right: Row = np.zeros(points)
    for row, at in enumerate(range(1, points - 1)):
        if 2 <= at <= points - 3:
            matrix[row, at - 2 : at + 3] = (1, -4, 6, -4, 1)
            right[row] = _load(load, span, step, at - 1, spread) * step**4 / (stiffness * moment)
        else:
            matrix[row, at] = 1
    for row, end, inward in ((points - 2, 1, 2), (points - 1, points - 2, points - 3)):
        outward = 2 * end - inward
        matrix[row, [outward, end, inward]] = (1, -2, 1) if ends == "resting" else (1, 0, -1)
    return float(np.linalg.solve(matrix, right)[1 + PIECES // 2])


def _load(load: float, span: float, step: float, point: int, spread: Spread) -> float:
    if spread == "even":
        return load / span
    return load / step if point == PIECES // 2 else 0.0


@pytest.mark.parametrize("ends", ["resting", "fixed"])
@pytest.mark.parametrize("spread", ["even", "middle"])
@pytest.mark.parametrize(
    ("load", "span", "width", "thickness", "stiffness"),
    [
        (333.6, 914.4, 285.75, 19.05, 12548.0),
        (240.0, 800.0, 300.0, 18.0, 8000.0),
        (60.0, 450.0, 60.0, 12.0, 9000.0),
    ],
)
def test_within_a_thousandth(
    load: float, span: float, width: float, thickness: float, stiffness: float, spread: Spread, ends: Ends
) -> None:
    moment = second_moment(width, thickness)
    ours = sag(load, span, stiffness=stiffness, moment=moment, spread=spread, ends=ends)
    other = middle_by_differences(load, span, stiffness, moment, spread, ends)
    assert ours == pytest.approx(other, rel=1e-3)


def test_a_textbook_of_1914() -> None:
    """The Mechanical Properties of Wood: E = P l^3 / (4 D b h^3) for a load at the middle. Seen at
    https://chestofbooks.com, Stiffness of Beams."""
    load, span, width, thickness, stiffness = 75.0, 36.0, 11.25, 0.75, 1.82e6
    theirs = load * span**3 / (4 * stiffness * width * thickness**3)
    ours = sag(load, span, stiffness=stiffness, moment=second_moment(width, thickness), spread="middle")
    assert ours == pytest.approx(theirs)
