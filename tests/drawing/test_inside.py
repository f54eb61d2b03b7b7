"""The point a mark leads to."""

from __future__ import annotations

import numpy as np
import pytest

from benchalong.drawing.inside import Around, well_inside
from benchalong.workings.bodies import Floats

AROUND = Around(np.array([0.0, 0.0]), np.array([100.0, 100.0]))


def box(left: float, bottom: float, right: float, top: float) -> Floats:
    return np.array([[left, bottom], [right, bottom], [right, top], [left, top]])


@pytest.mark.parametrize(
    ("loops", "room"),
    [
        ([box(0, 0, 100, 100)], 50),
        ([box(10, 10, 90, 14)], 2),
        ([box(0, 0, 100, 100), box(10, 10, 90, 90)[::-1]], 5),
        ([box(0, 0, 10, 10), box(40, 40, 90, 90)], 25),
        ([np.array([[0.0, 0.0], [90.0, 0.0], [0.0, 90.0]])], 26.3),
    ],
)
def test_it_has_nearly_as_much_room_as_there_can_be(loops: list[Floats], room: float) -> None:
    found = well_inside(loops, AROUND, enough=1000)
    assert 0.7 * room <= found.room <= room + 0.1


def test_where_there_is_ample_room_it_stays_near_the_side_of_the_drawing() -> None:
    found = well_inside([box(0, 0, 100, 100)], AROUND, enough=10)
    assert 10 <= found.room < 20


def test_it_lies_in_the_wood_not_in_a_hole() -> None:
    found = well_inside([box(0, 0, 100, 100), box(20, 20, 80, 80)[::-1]], AROUND, enough=1000)
    x, y = found.point
    assert not (20 < x < 80 and 20 < y < 80)
    assert 8 <= found.room <= 14.2


def test_a_strip_too_thin_for_the_points_tried_has_no_room() -> None:
    """It is then listed as not shown."""
    strip = np.array([[0.0, 0.0], [90.0, 80.0], [90.0, 80.0001], [0.0, 0.0001]])
    assert well_inside([strip], AROUND, enough=10).room < 0.01
