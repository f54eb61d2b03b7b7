"""A small picture to know a part by, beside its name in a list.

At one scale a rail is a line and its tongues can't be seen. So the picture is out of proportion on purpose,
by one rule for all parts: a stretch in which nothing happens (no corner of any cut) and that is longer than
one and a half times the thickness is drawn shorter, by a power less than one; shorter stretches keep their
true proportion. So cuts keep their shape, a stile stays longer than a rail of the same section, a panel
stays broad, and there are no numbers in it.

The length lies to the right. Of the four ways a part can lie like that, the one that shows the most of its
cuts is taken; the face to the front where it makes no difference.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from benchalong.drawing.eye import slanted_eye
from benchalong.drawing.hidden import Standing, Surface, seen
from benchalong.drawing.picture import Picture
from benchalong.drawing.shading import Onto, bounds, shaded
from benchalong.drawing.sheet import svg_root, svg_text
from benchalong.drawing.woods import WOODS
from benchalong.plan.model import Part
from benchalong.workings.bodies import Floats
from benchalong.workings.faces import FlatFaces, flat_faces
from benchalong.workings.solids import Solid

WIDTH = 120.0
HEIGHT = 72.0
"""Of the picture, px."""
EDGE = 3.0
"""Left free round it, px."""
EMPTY = 1.5
"""Stretches longer than this many thicknesses are shortened."""
POWER = 0.6
EYE = slanted_eye(slant=42.0, short=0.75)

LYING = (
    ((1, 0, 0), (0, 0, 1), (0, -1, 0)),
    ((-1, 0, 0), (0, 0, 1), (0, 1, 0)),
    ((1, 0, 0), (0, 0, -1), (0, 1, 0)),
    ((-1, 0, 0), (0, 0, -1), (0, -1, 0)),
)
"""Turns from along, across, down to right, back, up, the length to the right: face in front and edge a on
top; face and edge b; back and edge b; back and edge a."""


def small_picture(part: Part, solid: Solid, *, wood: str = WOODS[0]) -> Picture:
    """The part, about 120 by 72 px. Raises ValueError when its cuts leave nothing."""
    faces = flat_faces(replace(solid, vertices=shortened_vertices(solid.vertices, float(part.thickness))))
    surfaces = max((_lying(faces, np.array(turn, dtype=float)) for turn in LYING), key=_told)
    alt = f"{part.name}, small and not to scale."
    return Picture(_svg(surfaces, wood, alt), alt, WIDTH, HEIGHT)


def shortened_vertices(vertices: Floats, thickness: float) -> Floats:
    """The corners of a part with its long empty stretches shortened, one direction at a time."""
    return np.column_stack([_shortened(column, EMPTY * thickness) for column in vertices.T])


def _shortened(values: Floats, longest: float) -> Floats:
    stops = np.unique(np.round(values, 4))
    gaps = np.diff(stops)
    drawn = np.where(gaps > longest, longest * (gaps / longest) ** POWER, gaps)
    return np.asarray(np.interp(values, stops, np.concatenate([[0.0], np.cumsum(drawn)])))


def _lying(faces: FlatFaces, turn: Floats) -> tuple[Surface, ...]:
    return seen([Standing(faces, turn, np.zeros(3))], EYE)


def _told(surfaces: tuple[Surface, ...]) -> int:
    """How much a view tells: the corners of all outlines that show."""
    return sum(len(loop) for surface in surfaces for loop in surface.outlines)


def _svg(surfaces: tuple[Surface, ...], wood: str, alt: str) -> str:
    low, high = bounds(surfaces)
    wide, tall = (high - low).tolist()
    scale = min((WIDTH - 2 * EDGE) / wide, (HEIGHT - 2 * EDGE) / tall)
    left, top = WIDTH / 2 - scale * (low[0] + high[0]) / 2, HEIGHT / 2 + scale * (low[1] + high[1]) / 2
    svg = svg_root(width=WIDTH, height=HEIGHT, alt=alt, kind="small")
    for path in shaded(surfaces, Onto(scale, float(left), float(top)), lambda _: wood):
        svg.add(path)
    return svg_text(svg)
