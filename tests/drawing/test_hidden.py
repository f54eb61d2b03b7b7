"""What shows of solids, against a z-buffer that knows nothing of how the picture is worked out."""

from __future__ import annotations

import os
from dataclasses import dataclass
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from benchalong.drawing.eye import PIECE_EYE, Eye, slanted_eye, turned_eye
from benchalong.drawing.hidden import Loop, Standing, Surface, seen
from benchalong.plan.model import Prism
from benchalong.workings.faces import flat_faces
from benchalong.workings.solids import Solid, solid_of
from drawing.shop import bore, part, slot, turn

SCENES = int(os.environ.get("BENCHALONG_SCENES") or (200 if os.environ.get("CI") == "true" else 60))
"""How many random scenes; set BENCHALONG_SCENES for a longer look."""
PIXELS = 90
EQUAL = 0.02
"""Faces whose depths differ by less, in mm, may hide one another either way."""
FRONT = Eye((1.0, 0.0, 0.0), (0.0, 0.0, 1.0), (0.0, 1.0, 0.0))
EYES = (
    PIECE_EYE,
    FRONT,
    turned_eye(aside=45, above=35.26),
    turned_eye(aside=-30, above=10),
    slanted_eye(slant=45, short=0.5),
)

Image = NDArray[np.int64]


@dataclass(frozen=True, eq=False)
class Thing:
    solid: Solid
    standing: Standing

    def __repr__(self) -> str:
        return f"Thing({self.solid.box}, {self.standing.turn.tolist()}, {self.standing.at.tolist()})"


# The z-buffer


def z_buffer(things: list[Thing], eye: Eye, xs: NDArray[np.float64], ys: NDArray[np.float64]) -> Image:
    """For each pixel 1000 * body + face of what is nearest, -1 for nothing, -2 where two are equally near."""
    rows = np.array(eye.rows)
    depth = np.full((len(ys), len(xs)), np.inf)
    second = depth.copy()
    label = np.full(depth.shape, -1)
    for body, thing in enumerate(things):
        solid, standing = thing.solid, thing.standing
        points = (solid.vertices @ standing.turn.T + standing.at) @ rows.T
        for triangle, face in zip(solid.triangles, solid.faces, strict=True):
            _paint(points[triangle], 1000 * body + int(face), xs, ys, depth, second, label)
    return np.where((label >= 0) & (second < depth + EQUAL), -2, label)


def _paint(
    corners: NDArray[np.float64],
    number: int,
    xs: NDArray[np.float64],
    ys: NDArray[np.float64],
    depth: NDArray[np.float64],
    second: NDArray[np.float64],
    label: Image,
) -> None:
    (ax, ay, az), (bx, by, bz), (cx, cy, cz) = corners.tolist()
    area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
    if abs(area) < 1e-9:
        return
    x, y = xs[None, :], ys[:, None]
    b = ((x - ax) * (cy - ay) - (y - ay) * (cx - ax)) / area
    c = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / area
    z = az + b * (bz - az) + c * (cz - az)
    inside = (b >= 0) & (c >= 0) & (b + c <= 1)
    nearer = inside & (z < depth)
    other = label != number
    np.copyto(second, np.where(nearer & other, depth, second))
    np.copyto(second, np.where(inside & ~nearer & other, np.minimum(second, z), second))
    depth[nearer] = z[nearer]
    label[nearer] = number


def painted(surfaces: tuple[Surface, ...], xs: NDArray[np.float64], ys: NDArray[np.float64]) -> Image:
    """The regions found, on the same pixels; -3 where two regions lie over one another."""
    label = np.full((len(ys), len(xs)), -1)
    for surface in surfaces:
        for region in surface.regions:
            inside = _even_odd(region.loops, xs, ys)
            label[inside] = np.where(label[inside] == -1, 1000 * region.body + region.face, -3)
    return label


def _even_odd(loops: tuple[Loop, ...], xs: NDArray[np.float64], ys: NDArray[np.float64]) -> NDArray[np.bool_]:
    inside = np.zeros((len(ys), len(xs)), dtype=bool)
    for loop in loops:
        for (ax, ay), (bx, by) in zip(loop.tolist(), np.roll(loop, -1, axis=0).tolist(), strict=True):
            rows = np.flatnonzero((ay > ys) != (by > ys))
            at = ax + (ys[rows] - ay) / ((by - ay) or 1) * (bx - ax)
            inside[rows] ^= xs[None, :] < at[:, None]
    return inside


def uniform(image: Image) -> NDArray[np.bool_]:
    """Pixels whose eight neighbours are the same as they are."""
    edged = np.pad(image, 1, mode="edge")
    same = np.ones(image.shape, dtype=bool)
    for dy in range(3):
        for dx in range(3):
            same &= edged[dy : dy + image.shape[0], dx : dx + image.shape[1]] == image
    return same


def wrong_pixels(things: list[Thing], eye: Eye, pixels: int = PIXELS) -> int:
    points = (
        np.concatenate([t.solid.vertices @ t.standing.turn.T + t.standing.at for t in things])
        @ np.array(eye.rows)[:2].T
    )
    (left, bottom), (right, top) = points.min(axis=0) - 1, points.max(axis=0) + 1
    step = max(right - left, top - bottom) / pixels
    xs, ys = np.arange(left + 0.137 * step, right, step), np.arange(bottom + 0.291 * step, top, step)
    truth = z_buffer(things, eye, xs, ys)
    found = painted(seen([thing.standing for thing in things], eye), xs, ys)
    return int((uniform(truth) & (truth != -2) & (truth != found)).sum())


# Scenes


def standing(solid: Solid, way: NDArray[np.float64], at: tuple[float, float, float]) -> Thing:
    return Thing(solid, Standing(flat_faces(solid), way, np.array(at)))


TENS = st.integers(1, 6).map(lambda n: 10 * n)


@st.composite
def solids(draw: st.DrawFn) -> Solid:
    length, width, thickness = draw(TENS), draw(TENS), draw(TENS)
    takes = []
    if draw(st.booleans()):
        takes.append(
            slot(
                "along", (0, width // 2), (0, thickness // 2), 0, draw(st.sampled_from([length, length // 2]))
            )
        )
    if draw(st.booleans()):
        third = Fraction(thickness, 3)
        takes.append(slot("across", (length // 4, length // 2), (third, 2 * third), 0, width))
    if draw(st.booleans()):
        half = Fraction(min(length, width), 2)
        takes.append(
            bore(
                "down",
                (Fraction(length, 2), Fraction(width, 2)),
                half,
                0,
                draw(st.sampled_from([thickness, 4])),
            )
        )
    return solid_of(part("p", length, width, thickness, *takes))


def rotation(angles: tuple[float, float, float]) -> NDArray[np.float64]:
    (ca, cb, cc), (sa, sb, sc) = np.cos(np.radians(angles)), np.sin(np.radians(angles))
    one = np.array([[ca, -sa, 0], [sa, ca, 0], [0, 0, 1]])
    two = np.array([[cb, 0, sb], [0, 1, 0], [-sb, 0, cb]])
    three = np.array([[1, 0, 0], [0, cc, -sc], [0, sc, cc]])
    return np.asarray(one @ two @ three)


SQUARE = st.sampled_from(
    [("right", "up"), ("up", "front"), ("back", "left"), ("down", "right"), ("left", "down")]
)
TURNS = st.one_of(
    SQUARE.map(lambda words: np.array(turn(*words), dtype=float)),
    SQUARE.map(lambda words: np.array(turn(*words), dtype=float) @ np.diag([1.0, -1.0, 1.0])),
    st.tuples(*[st.floats(-80, 80, width=16)] * 3).map(rotation),
)
PLACES = st.tuples(*[st.integers(-5, 5).map(lambda n: 10.0 * n)] * 3)
SCENE = st.lists(st.builds(standing, solids(), TURNS, PLACES), min_size=1, max_size=7)


@settings(max_examples=SCENES, deadline=None)
@given(things=SCENE, eye=st.sampled_from(EYES))
def test_every_pixel_away_from_a_border_agrees_with_a_z_buffer(things: list[Thing], eye: Eye) -> None:
    assert wrong_pixels(things, eye) == 0


# Lines


def one_thing(*takes: Prism) -> tuple[Surface, ...]:
    solid = solid_of(part("p", 100, 60, 20, *takes))
    return seen([standing(solid, np.eye(3), (0.0, 0.0, 0.0)).standing], PIECE_EYE)


def test_a_plain_board_shows_three_faces_of_four_corners() -> None:
    surfaces = one_thing()
    assert [[len(loop) for loop in surface.outlines] for surface in surfaces] == [[4]] * 3
    assert sorted(surface.regions[0].normal for surface in surfaces) == [(0, -1, 0), (0, 0, 1), (1, 0, 0)]


def test_there_is_no_line_within_a_plane() -> None:
    """A notch makes the front an L: six corners, however many triangles it is made of."""
    surfaces = one_thing(slot("across", (0, 50), (10, 20), 0, 60))
    front = [surface for surface in surfaces if surface.regions[0].normal == (0, -1, 0)]
    assert [[len(loop) for loop in surface.outlines] for surface in front] == [[6]]


def test_a_hole_is_outlined_as_one_surface() -> None:
    solid = solid_of(part("p", 100, 60, 20, bore("down", (50, 30), 30, 0, 20)))
    above = turned_eye(aside=0, above=60)
    surfaces = seen([standing(solid, np.eye(3), (0.0, 0.0, 0.0)).standing], above)
    walls = [surface for surface in surfaces if len(surface.regions) > 1]
    assert len(walls) == 1
    assert len(walls[0].outlines) == 1
    top = next(surface for surface in surfaces if surface.regions[0].normal == (0, 0, 1))
    assert len(top.outlines) == 2


@pytest.mark.parametrize("overlap", [0.0, 0.3])
def test_parts_that_meet_in_one_plane_keep_the_line_between_them(overlap: float) -> None:
    """Side by side, touching or overlapping a little: two faces in front, no wood drawn twice."""
    solid = solid_of(part("p", 50, 60, 20))
    two = [standing(solid, np.eye(3), (x, 0.0, 0.0)).standing for x in (0.0, 50.0 - overlap)]
    surfaces = [surface for surface in seen(two, FRONT) if surface.regions[0].normal == (0, -1, 0)]
    assert [surface.body for surface in surfaces] == [0, 1]
    widths = [float(np.ptp(surface.outlines[0][:, 0])) for surface in surfaces]
    assert widths == pytest.approx([50.0, 50.0 - overlap])


def test_a_board_behind_another_is_not_seen() -> None:
    wide, small = solid_of(part("p", 100, 60, 20)), solid_of(part("q", 40, 20, 10))
    two = [standing(wide, np.eye(3), (0.0, 0.0, 0.0)), standing(small, np.eye(3), (30.0, 80.0, 5.0))]
    assert {surface.body for surface in seen([one.standing for one in two], FRONT)} == {0}


def test_nothing_is_seen_of_nothing() -> None:
    assert seen([], PIECE_EYE) == ()
