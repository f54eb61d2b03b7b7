"""Lines of views: what is seen, what is hidden, checked against the wood itself point by point."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.drawing.strokes import joined
from benchalong.drawing.views import LOOKING, Flags, ViewName, view_lines
from benchalong.plan.model import AXES, Part
from benchalong.workings.bodies import Floats
from benchalong.workings.solids import solid_of
from drawing.made_parts import made_cut, made_part

Row = tuple[float, ...]
BOX = (300, 60, 20)
VIEWS: tuple[ViewName, ...] = ("face", "edge a", "edge b", "end a", "end b")

MORTISE = {"at": 90, "length": 40, "width": 8, "depth": 60}
COUNTS = [
    # kind of part, cuts, view, visible lines, hidden lines
    ("plain", (), "face", 4, 0),
    ("plain", (), "end b", 4, 0),
    ("groove, in edge a", (("groove", "edge a", {"width": 8, "depth": 10}),), "face", 4, 1),
    ("groove, from edge a", (("groove", "edge a", {"width": 8, "depth": 10}),), "edge a", 6, 0),
    ("groove, from edge b", (("groove", "edge a", {"width": 8, "depth": 10}),), "edge b", 4, 2),
    # the profile: the outline parted by the groove, its two walls and its floor
    ("groove, from end b", (("groove", "edge a", {"width": 8, "depth": 10}),), "end b", 8, 0),
    ("dado in the back", (("dado", "back", {"at": 100, "width": 19, "depth": 6}),), "face", 4, 2),
    ("through mortise", (("mortise", "edge a", MORTISE),), "face", 4, 2),
    # two hidden ends of the mortise, and its two cheeks seen along the length
    ("through mortise, end", (("mortise", "edge a", MORTISE),), "end b", 4, 2),
]  # fmt: skip


@pytest.mark.parametrize(
    ("cuts", "view", "visible", "hidden"), [c[1:] for c in COUNTS], ids=[c[0] for c in COUNTS]
)
def test_number_of_lines(
    cuts: Sequence[tuple[str, str, dict[str, int]]], view: ViewName, visible: int, hidden: int
) -> None:
    part = made_part(BOX, *(made_cut(BOX, kind, on, **sizes) for kind, on, sizes in cuts))  # type: ignore[arg-type]
    lines = view_lines(solid_of(part), view)
    assert (len(lines.visible), len(lines.hidden)) == (visible, hidden)


def test_a_round_surface_shows_no_seams_from_the_side() -> None:
    part = made_part(BOX, made_cut(BOX, "hole", "face", at=100, across=30, diameter=12, through=True))
    lines = view_lines(solid_of(part), "edge a")
    assert len(lines.visible) == 4
    assert len(lines.hidden) == 2, "only the two outlines of the hole"


def test_a_round_corner_runs_into_its_sides_without_a_line() -> None:
    corners = ((0, 0, 0), (300, 0, 30), (300, 60, 0), (0, 60, 0))
    part = made_part(BOX, made_cut(BOX, "outline", "face", corners=corners))
    assert len(view_lines(solid_of(part), "edge a").visible) == 4


SIZE = st.integers(2, 18)


@st.composite
def grooved_parts(draw: st.DrawFn) -> Part:
    """Boxes with up to three square cuts."""
    cuts = []
    for _ in range(draw(st.integers(1, 3))):
        kind, on = draw(
            st.sampled_from(
                [
                    ("groove", "edge a"),
                    ("groove", "edge b"),
                    ("groove", "end a"),
                    ("groove", "face"),
                    ("dado", "face"),
                    ("dado", "back"),
                    ("rabbet", "edge a, back"),
                    ("rabbet", "end b, face"),
                    ("tongue", "end a"),
                    ("mortise", "edge b"),
                ]
            )
        )
        sizes = {"width": draw(SIZE), "depth": draw(SIZE), "length": draw(SIZE), "thickness": draw(SIZE)}
        if kind in ("dado", "mortise"):
            sizes["at"] = draw(st.integers(0, 250))
        cuts.append(made_cut(BOX, kind, on, **sizes))  # type: ignore[arg-type]
    return made_part(BOX, *cuts)


def has_wood(part: Part, spots: Floats) -> Flags:
    """Whether points lie inside the part, straight from its box and its cuts' own ranges."""
    box = np.array([float(size) for size in part.box])
    wood = ((spots > 0) & (spots < box)).all(axis=1)
    for prism in (prism for cut in part.cuts for prism in cut.takes):
        flat = [axis for axis in AXES if axis != prism.axis]
        corners = np.array([[float(v) for v in corner.at] for corner in prism.shape.corners])  # type: ignore[union-attr]
        ranges = {flat[0]: corners[:, 0], flat[1]: corners[:, 1]}
        ranges[prism.axis] = np.array([float(prism.start), float(prism.end)])
        low = np.array([ranges[axis].min() for axis in AXES])
        high = np.array([ranges[axis].max() for axis in AXES])
        wood &= ~((spots > low) & (spots < high)).all(axis=1)
    return np.asarray(wood)


@settings(max_examples=40, deadline=None)
@given(grooved_parts(), st.sampled_from(VIEWS), st.integers(0, 10_000))
def test_visible_means_no_wood_before_it(part: Part, view: ViewName, seed: int) -> None:
    """Wood begins at different depths on the two sides of a visible line, and only there."""
    looking = LOOKING[view]
    columns = [AXES.index(axis) for axis in (looking.right, looking.downwards, looking.into)]
    lines = view_lines(solid_of(part), view)
    rng = np.random.default_rng(seed)
    for rows, is_seen in ((lines.visible, True), (lines.hidden, False)):
        for x0, y0, x1, y1 in rows.tolist():
            share = rng.uniform(0.1, 0.9)
            at, run = np.array([x0, y0]) + share * np.array([x1 - x0, y1 - y0]), np.array([x1 - x0, y1 - y0])
            aside = np.array([-run[1], run[0]]) / np.hypot(*run) * 1e-3
            fronts = [_first_wood(part, at + aside * way, columns, looking.near_is_high) for way in (1, -1)]
            differs = fronts[0] != pytest.approx(fronts[1], abs=0.05)
            assert differs == is_seen, (view, (x0, y0, x1, y1), fronts)


def _first_wood(part: Part, at: Floats, columns: list[int], near_is_high: bool) -> float:
    """How far into the picture the first wood is; -1 when there is none. Sizes are whole mm or halves."""
    deep = float(part.box[columns[2]])
    steps = np.arange(0.125, deep, 0.25)
    spots = np.zeros((len(steps), 3))
    spots[:, columns[0]], spots[:, columns[1]] = at
    spots[:, columns[2]] = deep - steps if near_is_high else steps
    wood = has_wood(part, spots)
    return float(steps[wood.argmax()]) if wood.any() else -1.0


LINES = [
    ("two that overlap are one", [(0, 0, 10, 0), (5, 0, 20, 0)], [], [(0, 0, 20, 0)]),
    ("backwards too", [(20, 0, 5, 0), (0, 0, 10, 0)], [], [(0, 0, 20, 0)]),
    ("a gap stays", [(0, 0, 4, 0), (6, 0, 9, 0)], [], [(0, 0, 4, 0), (6, 0, 9, 0)]),
    ("what is covered goes", [(0, 0, 10, 0)], [(4, 0, 6, 0)], [(0, 0, 4, 0), (6, 0, 10, 0)]),
    ("upright", [(3, 0, 3, 10)], [(3, 5, 3, 20)], [(3, 0, 3, 5)]),
    ("another straight covers nothing", [(0, 0, 10, 0)], [(0, 0.01, 10, 0.01)], [(0, 0, 10, 0)]),
    ("slanting", [(0, 0, 6, 8), (3, 4, 9, 12)], [], [(0, 0, 9, 12)]),
]


@pytest.mark.parametrize(("lines", "less", "left"), [c[1:] for c in LINES], ids=[c[0] for c in LINES])
def test_lines_joined(lines: list[Row], less: list[Row], left: list[Row]) -> None:
    rows = joined(np.array(lines, dtype=float), less=np.array(less, dtype=float).reshape(-1, 4))
    assert rows.tolist() == [pytest.approx(row, abs=1e-9) for row in left]


def test_shop_fractions_never_fall_between_two_straights() -> None:
    """3.96875 mm lies on the border of a decimal grid; a hair of rounding must not make two lines of one."""
    for count in range(1, 2000):
        at = float(Fraction(127, 5) * count / 64)
        lines = np.array([(0, at, 10, at), (10, at + 1e-10, 20, at - 1e-10)])
        assert len(joined(lines)) == 1, count
