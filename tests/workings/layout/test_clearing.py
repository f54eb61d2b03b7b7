"""The rectangles a board is cleared into hold no defect and fill the board."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.workings.layout.clearing import Clear, Clearing, Pair, clearings
from benchalong.workings.layout.model import Rectangle, Way

defects = st.builds(Rectangle, st.integers(0, 90), st.integers(0, 30), st.integers(1, 10), st.integers(1, 10))


def spread(clearing: Clearing, x: int, y: int) -> list[tuple[Rectangle, bool]]:
    """Where each rectangle lies, and whether it is clear."""
    if isinstance(clearing, Pair):
        near = spread(clearing.near, x, y)
        length = sum(at.length for at, _ in near if at.y == y)
        width = sum(at.width for at, _ in near if at.x == x)
        far = (x + length, y) if clearing.way is Way.ACROSS else (x, y + width)
        return near + spread(clearing.far, *far)
    return [(Rectangle(x, y, clearing.length, clearing.width), isinstance(clearing, Clear))]


@settings(deadline=None)
@given(st.lists(defects, max_size=3), st.integers(0, 3), st.integers(1, 4))
def test_clear_rectangles_are_clear(found: list[Rectangle], kerf: int, turns: int) -> None:
    for clearing in clearings(100 + kerf, 40 + kerf, tuple(found), kerf=kerf, turns=turns, first=None):
        rooms = spread(clearing, 0, 0)
        assert sum(at.area for at, _ in rooms) == (100 + kerf) * (40 + kerf)
        for at, is_clear in rooms:
            wood = Rectangle(at.x, at.y, at.length - kerf, at.width - kerf)
            assert not is_clear or not any(wood.overlaps(defect) for defect in found)
