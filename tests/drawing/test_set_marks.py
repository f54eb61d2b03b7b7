"""The triangle in pictures: on the wood it belongs to, said in words, drawn whole or not."""

from __future__ import annotations

import re
from functools import cache

import numpy as np
import pytest

from benchalong.drawing.drawings import Drawings
from benchalong.drawing.eye import PIECE_EYE
from benchalong.drawing.hidden import Standing, Surface, seen
from benchalong.drawing.set_marks import set_marks
from benchalong.ground.store import MemoryStore
from benchalong.road import Travelled, travel
from benchalong.workings.bodies import Floats
from benchalong.workings.faces import flat_faces
from benchalong.workings.solids import SOLIDS
from benchalong.workings.triangles import TRIANGLES
from conftest import ROOT

WITHIN = 0.3
"""A line runs as far inside what is seen of its own body, in mm, or along its border."""


@cache
def example(name: str) -> Travelled:
    return travel(ROOT / "content" / name)


def drawings(name: str) -> Drawings:
    return Drawings(example(name).plan, example(name).worked, MemoryStore())


@pytest.mark.parametrize("name", ["seed-cupboard", "step-stool", "joint-samples"])
def test_every_line_lies_on_what_is_seen_of_its_own_part(name: str) -> None:
    worked = example(name).worked
    checked = 0
    for within in {triangle.within for triangle in worked[TRIANGLES]}:
        own = [triangle for triangle in worked[TRIANGLES] if triangle.within == within]
        copies = [copy for copy in example(name).plan.copies if copy.mark.startswith(within)]
        standing = {
            copy.mark: Standing(
                flat_faces(worked[SOLIDS][copy.shape]),
                np.array(copy.turn, dtype=float),
                np.array([float(value) for value in copy.at]),
            )
            for copy in copies
        }
        surfaces = seen(list(standing.values()), PIECE_EYE)
        for mark in set_marks(own, standing, surfaces, eye=PIECE_EYE, scale=1.0):
            bodies = [list(standing).index(piece.mark) for piece in mark.triangle.pieces]
            for line in mark.lines:
                for share in (0.2, 0.5, 0.8):
                    spot = line[0] + share * (line[1] - line[0])
                    assert _body_at(spot, surfaces) & set(bodies)
                    checked += 1
    assert checked > 10


def _body_at(spot: Floats, surfaces: tuple[Surface, ...]) -> set[int]:
    """What is seen within WITHIN of a spot of the sheet."""
    around = [spot + WITHIN * np.array(way) for way in ((0, 0), (1, 0), (-1, 0), (0, 1), (0, -1))]
    return {
        surface.body
        for surface in surfaces
        for region in surface.regions
        if any(_holds(region.loops, at) for at in around)
    }


def _holds(loops: tuple[Floats, ...], at: Floats) -> bool:
    crossed = 0
    for loop in loops:
        one, two = loop, np.roll(loop, -1, axis=0)
        spans = (one[:, 1] > at[1]) != (two[:, 1] > at[1])
        run = np.where(one[:, 1] == two[:, 1], 1.0, two[:, 1] - one[:, 1])
        crossed += int(
            (spans & (at[0] < one[:, 0] + (at[1] - one[:, 1]) * (two[:, 0] - one[:, 0]) / run)).sum()
        )
    return crossed % 2 == 1


def test_the_door_shows_its_stiles_and_rails() -> None:
    picture = drawings("seed-cupboard").assembly("door")
    assert picture is not None
    assert len(re.findall('class="triangle"', picture.svg)) == 1
    assert "Triangle: H left half, M right half." in picture.svg
    assert picture.alt.endswith(
        "A triangle runs across their faces, its point up: H left half and M right half. "
        "A triangle runs across their faces, its point up: B base and T point."
    )


def test_what_is_hidden_has_no_half_mark() -> None:
    """The lips are glued over the front edges of the shelves; pulled apart they don't hide them all."""
    picture = drawings("seed-cupboard").assembly("case")
    assert picture is not None
    assert "S1 base" not in picture.svg
    assert "S1 base" not in picture.alt
    assert "Triangle: SL left half, SR right half." in picture.svg


def test_a_step_shows_the_triangles_of_what_it_works_on() -> None:
    travelled = example("seed-cupboard")
    for step in travelled.plan.steps.values():
        picture = drawings("seed-cupboard").step(step.id)
        if picture is not None and "left half" in picture.svg:
            marks = {"hinge_stile", "meeting_stile", "side"}
            assert marks & set(step.parts), step.id


def test_a_part_s_own_drawing_has_its_piece() -> None:
    drawn = drawings("seed-cupboard")
    top, bottom, shelf, back = (drawn.part(part) for part in ("top_rail", "bottom_rail", "shelf", "back"))
    assert top
    assert bottom
    assert shelf
    assert back
    assert 'class="triangle"' in top.svg
    assert 'class="triangle"' in bottom.svg
    assert "Triangle on the face: base." in bottom.alt
    assert 'class="triangle"' in shelf.svg
    assert "as C/S1 carries it: base. Others: C/S2 middle, C/S3 point." in shelf.alt
    assert "riangle" not in back.svg
