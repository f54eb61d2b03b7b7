"""Visible surfaces as SVG: each filled in a tone for the way it looks, with its outline.

The light comes from above and in front. A tone is a class, so that the theme chooses the colours:
`wood-a`, `wood-b` or `wood-c` for the wood, with `top`, `front` or `side`. Outlines have the class `visible`;
what is filled without one (the tones of a rounding) has `inner`.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal, TypeAlias

import numpy as np
from svgwrite.path import Path

from benchalong.drawing.hidden import Loop, Surface, joined
from benchalong.workings.bodies import Floats

Tone: TypeAlias = Literal["top", "front", "side"]
TONES: tuple[Tone, ...] = ("top", "front", "side")

SKIPPED = 0.06
"""Points closer than this to a straight walk are left out, px."""


@dataclass(frozen=True)
class Onto:
    """From mm right and up on the sheet to px right and down in the picture."""

    scale: float
    left: float
    top: float

    def points(self, loop: Floats) -> Floats:
        return np.column_stack([self.left + self.scale * loop[:, 0], self.top - self.scale * loop[:, 1]])

    def point(self, point: tuple[float, float]) -> tuple[float, float]:
        return (self.left + self.scale * point[0], self.top - self.scale * point[1])


def tone(normal: tuple[float, float, float]) -> Tone:
    """The tone of a surface that looks this way in the room."""
    right, back, up = normal
    if up > 0.6:
        return "top"
    return "front" if -back >= right else "side"


def bounds(surfaces: Iterable[Surface]) -> tuple[Floats, Floats]:
    """The least and the greatest right and up on the sheet."""
    points = np.concatenate([loop for surface in surfaces for loop in surface.outlines])
    return points.min(axis=0), points.max(axis=0)


def shaded(surfaces: Iterable[Surface], onto: Onto, dress: Callable[[int], str]) -> list[Path]:
    """The surfaces as few long paths; `dress` gives a body's classes."""
    flat: dict[str, list[Loop]] = defaultdict(list)
    inner: dict[str, list[Loop]] = defaultdict(list)
    round_outlines: list[Loop] = []
    for surface in surfaces:
        classes = dress(surface.body)
        if len(surface.regions) == 1:
            flat[f"visible {classes} {tone(surface.regions[0].normal)}"] += surface.outlines
            continue
        for shade in TONES:
            parts = [region.loops for region in surface.regions if tone(region.normal) == shade]
            if parts:
                inner[f"inner {classes} {shade}"] += joined(parts)
        round_outlines += surface.outlines
    found = [*sorted(inner.items()), *sorted(flat.items()), ("visible", round_outlines)]
    drawn = [(classes, path_data([onto.points(loop) for loop in loops])) for classes, loops in found]
    return [Path(d=data, class_=classes, debug=False) for classes, data in drawn if data]


def path_data(loops: Sequence[Floats], *, closed: bool = True) -> str:
    """SVG path data to a tenth of a px, each step from the last point; empty for nothing."""
    return "".join(_walk(np.rint(loop * 10).astype(int).tolist(), closed) for loop in loops)


def _walk(points: list[list[int]], closed: bool) -> str:
    kept = [point for i, point in enumerate(points) if not i or point != points[i - 1]]
    if closed:
        kept = _corners(kept[:-1] if kept[0] == kept[-1] else kept)
        if len(kept) < 3:
            return ""
    said = [f"M{_tenths(kept[0][0])} {_tenths(kept[0][1])}l"]
    steps = [
        f"{_tenths(here[0] - before[0])} {_tenths(here[1] - before[1])}" for before, here in pairwise(kept)
    ]
    return said[0] + " ".join(steps).replace(" -", "-") + ("z" if closed else "")


def _corners(points: list[list[int]]) -> list[list[int]]:
    """Without the points that lie in a straight walk."""
    kept: list[list[int]] = []
    for i, here in enumerate(points):
        before, after = kept[-1] if kept else points[-1], points[(i + 1) % len(points)]
        ax, ay, bx, by = here[0] - before[0], here[1] - before[1], after[0] - here[0], after[1] - here[1]
        far = max(ax * ax + ay * ay, bx * bx + by * by)
        if (ax * by - ay * bx) ** 2 > (10 * SKIPPED) ** 2 * far:
            kept.append(here)
    return kept


def _tenths(value: int) -> str:
    whole, rest = divmod(abs(value), 10)
    sign = "-" if value < 0 else ""
    if not rest:
        return f"{sign}{whole}"
    return f"{sign}{whole or ''}.{rest}"
