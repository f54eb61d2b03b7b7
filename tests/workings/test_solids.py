"""Solids against volumes worked out by hand, for each kind of cut."""

from __future__ import annotations

import math
from fractions import Fraction

import numpy as np
import pytest

from benchalong.plan.model import Circle, Corner, Cut, Outline, Part, Prism
from benchalong.workings.bodies import CHORD
from benchalong.workings.shapes import Solids
from benchalong.workings.solids import neighbours, solid_of

BOX = (300, 60, 20)
WHOLE = 300 * 60 * 20


def shape(*corners: tuple[int, ...]) -> Outline:
    """Corners as (first, second) or (first, second, radius)."""
    return Outline(
        tuple(Corner((Fraction(c[0]), Fraction(c[1])), Fraction(c[2] if len(c) > 2 else 0)) for c in corners)
    )


def square(first: tuple[int, int], second: tuple[int, int]) -> Outline:
    return shape((first[0], second[0]), (first[1], second[0]), (first[1], second[1]), (first[0], second[1]))


def part(*takes: Prism) -> Part:
    cuts = tuple(Cut("groove", "groove", ("face",), "", (), (prism,)) for prism in takes)
    length, width, thickness = (Fraction(size) for size in BOX)
    return Part("rail", "Rail", "oak", thickness, width, length, 1, (), cuts)


def prism(axis: str, outline: Outline | Circle, start: int, end: int, *, outside: bool = False) -> Prism:
    return Prism(axis, outline, Fraction(start), Fraction(end), outside)  # type: ignore[arg-type]


ROUND = 4 - math.pi
"""What four corners rounded with radius 1 take from a square's area."""

VOLUMES = [
    ("nothing taken", (), WHOLE),
    ("groove along edge a", (prism("along", square((0, 10), (6, 14)), 0, 300),), WHOLE - 300 * 10 * 8),
    ("stopped groove", (prism("along", square((0, 10), (6, 14)), 50, 250),), WHOLE - 200 * 10 * 8),
    ("dado across the face", (prism("across", square((100, 119), (0, 6)), 0, 60),), WHOLE - 19 * 6 * 60),
    ("rabbet at end b", (prism("across", square((290, 300), (12, 20)), 0, 60),), WHOLE - 10 * 8 * 60),
    (
        "tongue on end a",
        (prism("across", square((0, 9), (0, 6)), 0, 60), prism("across", square((0, 9), (14, 20)), 0, 60)),
        WHOLE - 9 * 12 * 60,
    ),
    (
        "tenon on end b",
        (
            prism("along", square((0, 60), (0, 6)), 270, 300),
            prism("along", square((0, 60), (14, 20)), 270, 300),
            prism("along", square((0, 10), (6, 14)), 270, 300),
            prism("along", square((50, 60), (6, 14)), 270, 300),
        ),
        WHOLE - 30 * (60 * 20 - 40 * 8),
    ),
    ("mortise right through", (prism("across", square((100, 140), (6, 14)), 0, 60),), WHOLE - 40 * 8 * 60),
    ("notch", (prism("down", square((0, 12), (0, 15)), 0, 20),), WHOLE - 12 * 15 * 20),
    ("bevel along edge a", (prism("along", shape((0, 0), (8, 0), (0, 5)), 0, 300),), WHOLE - 20 * 300),
    (
        "taper on edge b, full beyond",
        (prism("down", shape((100, 60), (250, 48), (300, 48), (300, 60)), 0, 20),),
        WHOLE - (150 * 12 / 2 + 50 * 12) * 20,
    ),
    ("groove and dado that cross", (
        prism("along", square((20, 30), (0, 5)), 0, 300), prism("across", square((100, 120), (0, 8)), 0, 60),
    ), WHOLE - 300 * 10 * 5 - 20 * 60 * 8 + 20 * 10 * 5),
    ("hole right through", (prism("down", Circle((Fraction(50), Fraction(30)), Fraction(12)), 0, 20),),
     WHOLE - math.pi * 36 * 20),
    ("blind hole in end b", (prism("along", Circle((Fraction(30), Fraction(10)), Fraction(8)), 260, 300),),
     WHOLE - math.pi * 16 * 40),
    ("hand hole", (prism("down", shape((50, 20, 5), (150, 20, 5), (150, 40, 5), (50, 40, 5)), 0, 20),),
     WHOLE - (100 * 20 - ROUND * 25) * 20),
    ("hand hole, corners the other way round",
     (prism("down", shape((50, 40, 5), (150, 40, 5), (150, 20, 5), (50, 20, 5)), 0, 20),),
     WHOLE - (100 * 20 - ROUND * 25) * 20),
    ("outline, what lies outside is taken",
     (prism("down", shape((0, 0), (300, 0), (280, 60, 10), (20, 60, 10)), 0, 20, outside=True),),
     None),
    ("outline that leaves a round plate",
     (prism("down", Circle((Fraction(30), Fraction(30)), Fraction(50)), 0, 20, outside=True),),
     math.pi * 625 * 20),
    ("everything taken", (prism("down", square((-1, 301), (-1, 61)), -1, 21),), 0.0),
]  # fmt: skip


@pytest.mark.parametrize(
    ("takes", "volume"), [case[1:] for case in VOLUMES], ids=[case[0] for case in VOLUMES]
)
def test_the_volume_is_that_of_the_box_less_the_cuts(takes: tuple[Prism, ...], volume: float | None) -> None:
    if volume is None:
        volume = _trapezium_with_two_round_corners()
    assert solid_of(part(*takes)).volume == pytest.approx(volume, rel=1e-9, abs=1e-9)


def _trapezium_with_two_round_corners() -> float:
    """Sides 300 and 260, 60 high; two corners rounded with radius 10: each tip less its sector."""
    opening = math.pi - math.atan2(60, 20)
    lost = 100 / math.tan(opening / 2) - (math.pi - opening) / 2 * 100
    return ((300 + 260) / 2 * 60 - 2 * lost) * 20


@pytest.mark.parametrize("takes", [case[1] for case in VOLUMES], ids=[case[0] for case in VOLUMES])
def test_every_edge_belongs_to_two_triangles_and_the_mesh_holds_its_volume(takes: tuple[Prism, ...]) -> None:
    solid = solid_of(part(*takes))
    pairs = neighbours(solid.triangles)
    assert 2 * len(pairs) == 3 * len(solid.triangles)
    corners = solid.vertices[solid.triangles]
    held = np.einsum("ij,ij->i", corners[:, 0], np.cross(corners[:, 1], corners[:, 2])).sum() / 6
    assert held == pytest.approx(solid.volume, rel=1e-9, abs=1e-9)


def test_triangles_of_one_plane_that_hang_together_are_one_face() -> None:
    dado = solid_of(part(prism("across", square((100, 119), (0, 6)), 0, 60)))
    assert dado.faces.max() + 1 == 6 + 3 + 1, "the face falls into two, and the dado has three sides"
    rabbet_both = solid_of(part(*(prism("across", square(s, (0, 6)), 0, 60) for s in ((0, 9), (291, 300)))))
    assert rabbet_both.faces.max() + 1 == 6 + 4


def test_normals_stand_square_on_their_triangles_and_point_outwards() -> None:
    solid = solid_of(part(prism("down", Circle((Fraction(50), Fraction(30)), Fraction(12)), 0, 20)))
    corners = solid.vertices[solid.triangles]
    turned = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    turned /= np.linalg.norm(turned, axis=1)[:, None]
    assert np.abs(turned - solid.normals).max() < 1e-6


def test_facets_of_a_hole_are_one_surface_within_a_chord_of_the_true_one() -> None:
    solid = solid_of(part(prism("down", Circle((Fraction(50), Fraction(30)), Fraction(12)), 0, 20)))
    assert solid.surfaces.max() + 1 == 6 + 1
    assert solid.faces.max() + 1 > 6 + 20
    rim = solid.vertices[(np.abs(solid.vertices[:, 0] - 50) < 10)]
    ahead = np.hypot(rim[:, 0] - 50, rim[:, 1] - 30)
    assert np.abs(ahead - 6).max() < CHORD


def test_round_corners_of_one_outline_are_surfaces_of_their_own() -> None:
    solid = solid_of(part(prism("down", shape((50, 20, 5), (150, 20, 5), (150, 40, 5), (50, 40, 5)), 0, 20)))
    assert solid.surfaces.max() + 1 == 6 + 4 + 4


def test_nothing_left_is_an_empty_solid() -> None:
    assert solid_of(part(prism("down", square((-1, 301), (-1, 61)), -1, 21))).is_empty
    assert not solid_of(part()).is_empty


def test_a_solid_is_made_once_and_only_when_asked_for() -> None:
    parts = {"rail": part(), "other": part()}
    solids = Solids(parts)
    assert list(solids) == ["rail", "other"]
    assert solids["rail"] is solids["rail"]
    with pytest.raises(KeyError):
        solids["shelf"]
