"""A shaped outline rebuilt from its drawing: the listed corners joined in the order in which the drawn line
passes them, rounded as the list says, the holes bored; it must cover what the plan's solid shows of its face.

Only the finished SVG is read. What is measured off the sheet is which corner follows which, and which listed
point is a hole's centre: never a length.
"""

from __future__ import annotations

import xml.etree.ElementTree as ElementTree
from dataclasses import dataclass
from fractions import Fraction
from math import acos, atan2, cos, hypot, pi, sin, tan

import numpy as np
import pytest
from manifold3d import CrossSection, FillRule

from benchalong.drawing.part import part_drawing
from benchalong.drawing.picture import Picture
from benchalong.plan.model import Part
from benchalong.road import travel
from benchalong.workings.bodies import Floats
from benchalong.workings.solids import shaped, solid_of
from conftest import EXAMPLES, ROOT
from drawing.test_rebuilt import SVG, read_sheet, rebuilt, strokes

OFF = 0.03
"""Facets may lie so far off a round line, in mm."""
NEAR = 0.4
"""A place on the sheet is found again within this, px."""


Spot = tuple[float, float]


@dataclass(frozen=True)
class Listed:
    along: Fraction
    across: Fraction
    radius: Fraction


def outlined(project: str) -> list[tuple[Part, Picture]]:
    plan = travel(ROOT / "content" / project).plan
    parts = [shaped(plan, shape) for shape in plan.shapes.values()]
    shown = {"precision": plan.precision, "units": plan.units, "projection": plan.projection}
    chosen = [part for part in parts if any(cut.kind == "outline" for cut in part.cuts)]
    return [(part, part_drawing(part, solid_of(part), **shown)) for part in chosen]  # type: ignore[arg-type]


def listed(picture: Picture) -> list[Listed]:
    """The rows of the list of points, by where their texts stand."""
    texts = [one for one in ElementTree.fromstring(picture.svg) if one.tag == f"{SVG}text"]
    heads = [one for one in texts if (one.text or "") in ("from end a", "from edge a", "round R")]
    rows: dict[str, dict[str, Fraction]] = {}
    for one in texts[texts.index(heads[0]) :]:
        for head in heads:
            if "data-mm" in one.attrib and one.attrib["x"] == head.attrib["x"]:
                rows.setdefault(one.attrib["y"], {})[head.text or ""] = Fraction(one.attrib["data-mm"])
    zero = Fraction(0)
    return [Listed(row["from end a"], row["from edge a"], row.get("round R", zero)) for row in rows.values()]


def face_loops(picture: Picture) -> list[Floats]:
    """The closed lines of the face's view, in px, the largest first."""
    paths = [one.attrib for one in ElementTree.fromstring(picture.svg) if one.tag == f"{SVG}path"]
    data = next(path["d"] for path in paths if path.get("class") == "visible")
    loops = _closed([_walk(piece) for piece in data.split("M") if piece])
    return sorted(loops, key=lambda loop: -float(np.ptp(loop[:, 0])))


def _walk(piece: str) -> list[tuple[float, float]]:
    lines = strokes(f"M{piece}")
    return [(line[0], line[1]) for line in lines] + [(lines[-1][2], lines[-1][3])]


def _closed(walks: list[list[tuple[float, float]]]) -> list[Floats]:
    """Walks that end where another begins are one."""
    closed: list[Floats] = []
    while walks:
        walk = walks.pop(0)
        while walk[0] != walk[-1]:
            other = next((one for one in walks if walk[-1] in (one[0], one[-1])), None)
            if other is None:
                break
            walks.remove(other)
            walk += (other if other[0] == walk[-1] else other[::-1])[1:]
        if walk[0] == walk[-1]:
            closed.append(np.array(walk[:-1]))
    return closed


def built(part: Part, picture: Picture) -> CrossSection:
    points, loops = listed(picture), face_loops(picture)
    face = read_sheet(picture).views[0]
    left, top = loops[0].min(axis=0).tolist()
    scale = float(np.ptp(loops[0][:, 0])) / float(part.length)

    def on_sheet(point: Listed) -> tuple[float, float]:
        return (left + scale * float(point.along), top + scale * float(point.across))

    bored = {
        point
        for point in points
        for x, y, _ in face.circles()
        if not point.radius and hypot(on_sheet(point)[0] - x, on_sheet(point)[1] - y) < NEAR
    }
    (diameter,) = {size for sign, size in face.rounds if sign == "ø"}
    box = [Listed(a, b, Fraction(0)) for a in (Fraction(0), part.length) for b in (Fraction(0), part.width)]
    corners = [point for point in (*points, *box) if point not in bored]
    shape = CrossSection()
    for number, loop in enumerate(
        loop for loop in loops if float(np.ptp(loop[:, 0])) > 4 * float(diameter) * scale
    ):
        own = [
            (at, point)
            for point in corners
            if (at := _passes(loop, on_sheet(point), point, scale)) is not None
        ]
        outline = _rounded([point for _, point in sorted(own, key=lambda one: one[0])])
        cover = CrossSection([outline], FillRule.NonZero)
        shape = cover if not number else shape - cover
    for point in bored:
        centre = (float(point.along), float(point.across))
        shape -= CrossSection.circle(float(diameter) / 2, 128).translate(centre)
    return shape


def _passes(loop: Floats, at: tuple[float, float], point: Listed, scale: float) -> float | None:
    """How far round the loop it comes nearest to a corner; None for one that it doesn't pass. A round corner
    stays off its sharp one, by half its radius at a right angle."""
    run = np.roll(loop, -1, axis=0) - loop
    far = np.hypot(*run.T)
    share = np.clip(((np.array(at) - loop) * run).sum(axis=1) / np.maximum(far, 1e-9) ** 2, 0, 1)
    off = np.hypot(*(loop + share[:, None] * run - np.array(at)).T)
    nearest = int(off.argmin())
    if off[nearest] > NEAR + float(point.radius) * scale / 2:
        return None
    return float(far[:nearest].sum() + share[nearest] * far[nearest])


def _rounded(corners: list[Listed]) -> Floats:
    spots: list[tuple[float, float]] = []
    for number, corner in enumerate(corners):
        here = (float(corner.along), float(corner.across))
        before, after = corners[number - 1], corners[(number + 1) % len(corners)]
        spots += _arc(here, before, after, float(corner.radius)) if corner.radius else [here]
    return np.array(spots)


def _arc(
    here: tuple[float, float], before: Listed, after: Listed, radius: float
) -> list[tuple[float, float]]:
    """The round of a corner: touching both its sides."""
    x, y = here
    ways = [(float(one.along) - x, float(one.across) - y) for one in (before, after)]
    (ax, ay), (bx, by) = ((u / hypot(u, v), v / hypot(u, v)) for u, v in ways)
    angle = acos(max(-1.0, min(1.0, ax * bx + ay * by)))
    away = radius / tan(angle / 2)
    middle = radius / sin(angle / 2) / hypot(ax + bx, ay + by)
    centre = (x + (ax + bx) * middle, y + (ay + by) * middle)
    first = atan2(y + ay * away - centre[1], x + ax * away - centre[0])
    last = atan2(y + by * away - centre[1], x + bx * away - centre[0])
    turn = (last - first + pi) % (2 * pi) - pi
    steps = [first + turn * step / 48 for step in range(49)]
    return [(centre[0] + radius * cos(step), centre[1] + radius * sin(step)) for step in steps]


def face_of(part: Part) -> CrossSection:
    """What the plan's solid has in the plane of its face."""
    solid = solid_of(part)
    corners = solid.vertices[solid.triangles]
    flat = (solid.normals[:, 2] < -0.999) & (np.abs(corners[:, :, 2]).max(axis=1) < 1e-6)
    return CrossSection([triangle[::-1, :2] for triangle in corners[flat]], FillRule.NonZero)


@pytest.mark.parametrize("project", EXAMPLES)
def test_the_numbers_of_an_outline_give_the_plans_face(project: str) -> None:
    parts = outlined(project)
    assert len(parts) == {"seed-cupboard": 0, "step-stool": 2}[project]
    for part, picture in parts:
        drawn, meant = built(part, picture), face_of(part)
        around = sum(
            float(np.hypot(*(np.roll(loop, -1, axis=0) - loop).T).sum()) for loop in meant.to_polygons()
        )
        assert ((drawn - meant) + (meant - drawn)).area() < OFF * around
        assert drawn.area() == pytest.approx(meant.area(), rel=1e-4)


def test_dadoes_beside_an_outline_are_told_too() -> None:
    for part, picture in outlined("step-stool"):
        along, _, down = rebuilt(picture)
        for cut in (cut for cut in part.cuts if cut.kind == "dado"):
            sizes = {size.name: size.length for size in cut.sizes}
            assert {sizes["at"], sizes["at"] + sizes["width"]} <= along
            assert {part.thickness - sizes["depth"], sizes["depth"]} & down


def test_a_wrong_number_would_be_seen() -> None:
    part, picture = outlined("step-stool")[0]
    number = str(next(point.along for point in listed(picture) if point.radius == 20))
    wrong = picture.svg.replace(f'data-mm="{number}"', f'data-mm="{Fraction(number) + 2}"')
    assert wrong != picture.svg
    drawn = built(part, Picture(wrong, picture.alt, picture.width, picture.height))
    assert drawn.area() != pytest.approx(face_of(part).area(), rel=1e-4)
