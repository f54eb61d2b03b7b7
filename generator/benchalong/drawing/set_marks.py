"""The triangles on sets, as a picture of the piece shows them: each part's piece on its own side, wherever
the picture has the part, and only where no wood is in front of it.

A triangle of which any piece is hidden, or that would be too small to read, is left out: half a mark says
less than none.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from benchalong.drawing.alt import listed
from benchalong.drawing.eye import Eye
from benchalong.drawing.hidden import Standing, Surface
from benchalong.drawing.threads import visible_parts
from benchalong.workings.bodies import Floats
from benchalong.workings.triangles import Piece, Triangle

SHOWS = 0.98
"""So much of every piece must be seen."""
LEAST = 7.0
"""Of a piece on the sheet, its longer way, px."""


@dataclass(frozen=True, eq=False)
class SetMark:
    """One triangle that a picture shows."""

    triangle: Triangle
    lines: tuple[Floats, ...]
    """(2, 2) each: right and up on the sheet, mm."""

    @property
    def legend(self) -> str:
        """A line below the picture."""
        return f"Triangle: {', '.join(self._each())}."

    @property
    def said(self) -> str:
        """For who can't see it."""
        sides, point = self.triangle.sides, self.triangle.points
        return f"A triangle runs across {sides}, its point {point}: {listed(self._each())}."

    def _each(self) -> list[str]:
        return [
            f"{mark} {piece.carries}"
            for mark, piece in zip(self.triangle.marks, self.triangle.pieces, strict=True)
        ]


def set_marks(
    triangles: Sequence[Triangle],
    standing: Mapping[str, Standing],
    surfaces: Sequence[Surface],
    *,
    eye: Eye,
    scale: float,
) -> tuple[SetMark, ...]:
    """`standing` has every body of the picture by its copy's mark, in the order of `surfaces`; `scale` is px
    per mm."""
    found = []
    for triangle in triangles:
        each = [_drawn(piece, standing, surfaces, eye, scale) for piece in triangle.pieces]
        if all(each):
            found.append(SetMark(triangle, tuple(line for lines in each for line in lines)))
    return tuple(found)


def _drawn(
    piece: Piece, standing: Mapping[str, Standing], surfaces: Sequence[Surface], eye: Eye, scale: float
) -> list[Floats]:
    """Empty where it is hidden or too small."""
    body = standing.get(piece.mark)
    if body is None:
        return []
    room = np.array(piece.lines) @ body.turn.T + body.at
    flat = room @ np.array(eye.rows)[:2].T
    shown = visible_parts(list(room), list(standing.values()), surfaces, eye)
    whole, seen = (sum(float(np.hypot(*(line[1] - line[0]))) for line in lines) for lines in (flat, shown))
    reach = float((flat.max(axis=(0, 1)) - flat.min(axis=(0, 1))).max()) * scale
    return shown if seen >= SHOWS * whole and reach >= LEAST else []
