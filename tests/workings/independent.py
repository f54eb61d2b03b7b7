"""The volume of a part worked out without any mesh: box cells for square cuts, slices for what isn't square.

Shares nothing with the solids but the plan itself. Square cuts: the cells between all planes of the box and
its prisms, kept or taken, added up. Otherwise the part is sliced square to its length; in each slice what
prisms take is a set of rectangles (of a shape drawn along the length thin strips), whose union is measured
by a sweep. Between the places where something begins or ends, slices stand where Gauss and Legendre put them.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise
from typing import TypeAlias

import numpy as np

from benchalong.plan.model import AXES, Circle, Corner, Outline, Part, Prism

Span: TypeAlias = tuple[float, float]
Exact: TypeAlias = tuple[Fraction, Fraction]
Rectangle: TypeAlias = tuple[Span, Span]
Points: TypeAlias = list[tuple[float, float]]
SLICES, STRIPS, CHORDS = 16, 400, 64
POINTS, WEIGHTS = np.polynomial.legendre.leggauss(SLICES)


def volume_of(part: Part) -> float:
    """In mm3."""
    prisms = [prism for cut in part.cuts for prism in cut.takes]
    return _by_cells(part, prisms) if all(map(_is_square, prisms)) else _by_slices(part, prisms)


# square cuts


def _is_square(prism: Prism) -> bool:
    if isinstance(prism.shape, Circle) or prism.outside or any(c.radius for c in prism.shape.corners):
        return False
    spots = [corner.at for corner in prism.shape.corners]
    return len(spots) == 4 and len({x for x, _ in spots}) == 2 and len({y for _, y in spots}) == 2


def _by_cells(part: Part, prisms: list[Prism]) -> float:
    spans = [_box(prism) for prism in prisms]
    planes = []
    for n, whole in enumerate(part.box):
        inside = {value for span in spans for value in span[n] if 0 < value < whole}
        planes.append(sorted({*inside, Fraction(0), whole}))
    kept = np.ones([len(axis) - 1 for axis in planes], dtype=bool)
    for span in spans:
        here = [
            [low <= plane < high for plane in axis[:-1]]
            for (low, high), axis in zip(span, planes, strict=True)
        ]
        kept[np.ix_(*here)] = False
    sides = [np.diff([float(plane) for plane in axis]) for axis in planes]
    return float(np.einsum("ijk,i,j,k", kept.astype(float), *sides))


def _box(prism: Prism) -> list[Exact]:
    assert isinstance(prism.shape, Outline)
    first, second = zip(*(corner.at for corner in prism.shape.corners), strict=True)
    spans = [(min(first), max(first)), (min(second), max(second))]
    spans.insert(AXES.index(prism.axis), (prism.start, prism.end))
    return spans


# what isn't square


def _by_slices(part: Part, prisms: list[Prism]) -> float:
    length, width, thickness = map(float, part.box)
    paths = [(prism, _path(prism.shape)) for prism in prisms]
    breaks = sorted({0.0, length, *(x for one in prisms for x in _breaks(one) if 0 < x < length)})
    total = 0.0
    for low, high in pairwise(breaks):
        for point, weight in zip(POINTS, WEIGHTS, strict=True):
            x = (low + high) / 2 + (high - low) / 2 * float(point)
            taken = _union([r for prism, path in paths for r in _in_slice(prism, path, x, width, thickness)])
            total += float(weight) * (high - low) / 2 * (width * thickness - taken)
    return total


def _breaks(prism: Prism) -> list[float]:
    """Where along the part something begins, ends or bends."""
    if prism.axis == "along":
        return [float(prism.start), float(prism.end)]
    if isinstance(prism.shape, Circle):
        middle, radius = float(prism.shape.centre[0]), float(prism.shape.diameter) / 2
        return [middle - radius, middle, middle + radius]
    bends = [point for bend in _bends(prism.shape) for point in (bend[0], bend[len(bend) // 2], bend[-1])]
    extremes = [max(bend, key=lambda p: p[0]) for bend in _bends(prism.shape)]
    extremes += [min(bend, key=lambda p: p[0]) for bend in _bends(prism.shape)]
    return [point[0] for point in (*bends, *extremes)]


def _in_slice(prism: Prism, path: Points, x: float, width: float, thickness: float) -> Iterator[Rectangle]:
    """(across, down) rectangles that the prism takes at this place along the part."""
    ends = (float(prism.start), float(prism.end))
    if prism.axis == "along":
        if ends[0] <= x <= ends[1]:
            yield from _strips(path, width, thickness)
        return
    whole = width if prism.axis == "down" else thickness
    chords = _chords(path, x)
    for chord in _outside(chords, whole) if prism.outside else chords:
        yield (chord, ends) if prism.axis == "down" else (ends, chord)


def _strips(path: Points, width: float, thickness: float) -> Iterator[Rectangle]:
    turns = sorted({0.0, width, *(y for y, _ in path if 0 < y < width)})
    for low, high in pairwise(turns):
        steps = max(1, math.ceil((high - low) / width * STRIPS))
        edges = np.linspace(low, high, steps + 1)
        for start, end in pairwise(edges):
            for chord in _chords(path, (start + end) / 2):
                yield (start, end), (max(chord[0], 0.0), min(chord[1], thickness))


def _chords(path: Points, x: float) -> list[Span]:
    """Where a line at x runs inside the path."""
    crossings = []
    for (x0, y0), (x1, y1) in zip(path, path[1:] + path[:1], strict=True):
        if (x0 <= x) != (x1 <= x):
            crossings.append(y0 + (y1 - y0) * (x - x0) / (x1 - x0))
    crossings.sort()
    return list(zip(crossings[::2], crossings[1::2], strict=True))


def _outside(chords: list[Span], whole: float) -> list[Span]:
    edges = [0.0, *(value for chord in chords for value in chord), whole]
    return [(low, high) for low, high in zip(edges[::2], edges[1::2], strict=True) if low < high]


def _union(rectangles: list[Rectangle]) -> float:
    """The area of all of them together, those that overlap counted once."""
    edges = sorted({value for across, _ in rectangles for value in across})
    total = 0.0
    for low, high in pairwise(edges):
        downs = sorted(down for across, down in rectangles if across[0] <= low and high <= across[1])
        reached, covered = -math.inf, 0.0
        for start, end in downs:
            covered += max(0.0, end - max(start, reached))
            reached = max(reached, end)
        total += covered * (high - low)
    return total


def _path(shape: Outline | Circle) -> Points:
    if isinstance(shape, Circle):
        radius, (x, y) = float(shape.diameter) / 2, map(float, shape.centre)
        steps = np.arange(20 * CHORDS) * (2 * math.pi / (20 * CHORDS))
        return [(x + radius * math.cos(a), y + radius * math.sin(a)) for a in steps]
    return [point for bend in _bends(shape) for point in bend]


def _bends(shape: Outline) -> list[Points]:
    """Each corner: a point, or the points of its arc from where it leaves one side to the next."""
    corners = shape.corners
    return [
        _bend(corners[n - 1], corner, corners[(n + 1) % len(corners)]) for n, corner in enumerate(corners)
    ]


def _bend(before: Corner, corner: Corner, after: Corner) -> Points:
    at, back, ahead = (np.array([float(v) for v in one.at]) for one in (corner, before, after))
    radius = float(corner.radius)
    if not radius:
        return [(float(at[0]), float(at[1]))]
    one, other = ((side - at) / np.linalg.norm(side - at) for side in (back, ahead))
    half = math.acos(float(one @ other)) / 2
    middle = (one + other) / np.linalg.norm(one + other)
    centre = at + middle * radius / math.sin(half)
    foot = at + one * radius / math.tan(half) - centre
    turn = (math.pi - 2 * half) * math.copysign(
        1.0, float(foot[0] * (at - centre)[1] - foot[1] * (at - centre)[0])
    )
    steps = [turn * n / CHORDS for n in range(CHORDS + 1)]
    return [
        (
            float(centre[0] + foot[0] * math.cos(a) - foot[1] * math.sin(a)),
            float(centre[1] + foot[0] * math.sin(a) + foot[1] * math.cos(a)),
        )
        for a in steps
    ]
