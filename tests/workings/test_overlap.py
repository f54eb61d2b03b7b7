"""Two solids that lie in each other, and two that only touch."""

from __future__ import annotations

import manifold3d
import pytest

from benchalong.workings.overlap import lie_in_each_other


def block(
    size: tuple[float, float, float], at: tuple[float, float, float] = (0, 0, 0)
) -> manifold3d.Manifold:
    return manifold3d.Manifold.cube(size).translate(at)


@pytest.mark.parametrize(
    ("deep", "is_overlap"), [(-0.1, False), (0, False), (0.01, False), (0.03, True), (5, True)]
)
def test_deeper_than_a_touch_counts(deep: float, is_overlap: bool) -> None:
    assert lie_in_each_other(block((100, 60, 20)), block((100, 60, 20), (100 - deep, 0, 0))) == is_overlap


def test_a_touching_shoulder_does_not_water_down_what_lies_in_it() -> None:
    """A tongue 0.1 mm too thick beside shoulders that close: the sheets where they touch weigh nothing."""
    grooved = block((20, 400, 60)) - block((11, 400, 10), (9, 0, 25))
    rail = block((300, 400, 60), (20, 0, 0)) + block((10, 400, 10.1), (10, 0, 25))
    assert lie_in_each_other(grooved, rail)


def test_a_tongue_that_fills_its_groove_only_touches() -> None:
    grooved = block((20, 400, 60)) - block((10, 400, 10), (10, 0, 25))
    rail = block((300, 400, 60), (20, 0, 0)) + block((10, 400, 10), (10, 0, 25))
    assert not lie_in_each_other(grooved, rail)
