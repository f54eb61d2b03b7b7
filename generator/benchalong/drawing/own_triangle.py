"""A part's own piece of the triangle on its set, as its drawing shows it.

It is drawn in a clear stretch, since a long part is drawn shortened just where it stands; the end of the part
that it points to is the right one. Where copies of the part carry
different pieces, the drawing shows the first one's, and says in words what the others have.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from benchalong.drawing.board import Lines, Rect
from benchalong.drawing.linework import Strips, placed
from benchalong.drawing.views import LOOKING, ViewName
from benchalong.plan.model import AXES, Surface
from benchalong.workings.bodies import Floats
from benchalong.workings.triangles import Piece

CLEAR, TOUCH, STEP = 3.0, 1.5, 2.0
"""Kept free beside it; how near a line along its edges may come; from one place tried to the next, in px."""
SHARES = (0.3, 0.2, 0.12, 0.07)
"""Of the view that it may take up, tried in turn."""
NOTHING = np.zeros((0, 4))
MOST = 6
"""Of more other copies than this it isn't said which carries which."""


@dataclass(frozen=True)
class OwnTriangle:
    side: Surface
    pieces: tuple[Piece, ...]
    """Of every copy that is in a set."""

    @property
    def is_one(self) -> bool:
        """Whether all copies carry the same piece at the same place."""
        return len({(one.side, frozenset(map(frozenset, one.lines))) for one in self.pieces}) == 1

    @property
    def said(self) -> str:
        """A line below the drawing."""
        if self.is_one:
            return f"Triangle on {_the(self.side)}: {self.pieces[0].carries}."
        first, others = self.pieces[0], self.pieces[1:]
        told = [f"{piece.mark} {piece.carries}" for piece in others[:MOST]]
        more = [f"and {len(others) - MOST} more"] if len(others) > MOST else []
        on = f"Triangle on {_the(self.side)} as {first.mark} carries it: {first.carries}."
        return f"{on} {', '.join(['Others: ' + told[0], *told[1:], *more])}."

    def rows(self, view: ViewName, strips: Strips, visible: Floats, breaks: Floats) -> Floats:
        """(n, 4) in px from the view's corner, clear of those lines, and on the same stretch of the side as
        on the wood; none in a view of another side, or where there is no room."""
        if view != self.side:
            return NOTHING
        lines, broad = self._lines(view, strips), strips[LOOKING[view].right].size
        others, (low, high) = Lines(np.vstack([visible, breaks])), self._stretch(view, strips, visible)
        width = float(np.ptp(lines[:, :, 0])) / broad
        for share in (share for share in SHARES if share <= width or share == SHARES[-1]):
            narrow = lines * np.array([min(1.0, share / width), 1.0])
            half = float(np.ptp(narrow[:, :, 0])) / 2
            for centre in (at for at in _centres(broad) if low <= at - half and at + half <= high):
                moved = narrow + np.array([centre - (narrow[:, :, 0].max() + narrow[:, :, 0].min()) / 2, 0.0])
                if not others.meet(_around(moved)):
                    return np.asarray(moved.reshape(-1, 4))
        return NOTHING

    def _stretch(self, view: ViewName, strips: Strips, visible: Floats) -> tuple[float, float]:
        """Between which upright lines it stands on the wood."""
        right = LOOKING[view].right
        along = np.array(self.pieces[0].lines)[:, :, AXES.index(right)]
        here = placed(view, right, float(along.mean()), strips)
        upright = visible[np.abs(visible[:, 0] - visible[:, 2]) < 0.01, 0]
        before, after = upright[upright <= here], upright[upright > here]
        return float(before.max(initial=0.0)), float(after.min(initial=strips[right].size))

    def _lines(self, view: ViewName, strips: Strips) -> Floats:
        """(n, 2, 2): right from its own middle at the scale of its breadth, and downwards where it is."""
        across = LOOKING[view].downwards
        own = np.array(self.pieces[0].lines)
        along = own[:, :, AXES.index(LOOKING[view].right)]
        down = [
            [placed(view, across, spot[AXES.index(across)], strips) for spot in line] for line in own.tolist()
        ]
        return np.stack([(along - along.mean()) * strips[across].scale, np.array(down)], axis=2)


def own_triangle(pieces: Sequence[Piece]) -> OwnTriangle | None:
    """None for a part in no set."""
    return OwnTriangle(pieces[0].side, tuple(pieces)) if pieces else None


def _the(side: Surface) -> str:
    return f"the {side}" if side in ("face", "back") else side


def _centres(broad: float) -> Iterator[float]:
    """From the middle of a view outwards, to either side in turn."""
    for off in np.arange(0.0, broad / 2, STEP).tolist():
        yield from (broad / 2 + off, broad / 2 - off)


def _around(lines: Floats) -> Rect:
    """What must be free for it: a little beside it; above and below it may touch the wood's own edges."""
    (left, top), (right, bottom) = lines.min(axis=(0, 1)).tolist(), lines.max(axis=(0, 1)).tolist()
    return (left - CLEAR, top + TOUCH, right + CLEAR, bottom - TOUCH)
