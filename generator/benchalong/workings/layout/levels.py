"""Fillings with equally many pieces, side by side in arrays: what a beam search carries from piece to
piece."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from benchalong.workings.layout.lies import Floats, Ints


@dataclass
class Level:
    """One filling an entry.

    `x0`, `x1`: where the section starts and ends; `y0`, `y1`: the row; `x`: how far the row is filled;
    `slot`, `y`: the length of the last piece's slot and how far up it is filled.
    """

    x0: Ints
    x1: Ints
    y0: Ints
    y1: Ints
    x: Ints
    slot: Ints
    y: Ints
    worth: Floats
    left: Ints
    mark: Ints
    """A number that is the same for the same pieces."""
    came_from: Ints
    put: Ints
    lie: Ints
    at_x: Ints
    at_y: Ints

    @staticmethod
    def empty(left: Ints) -> Level:
        """One filling without any piece."""
        names = [name for name in Level.__dataclass_fields__ if name not in ("worth", "left")]
        zero = {name: np.zeros(1, dtype=np.int64) for name in names}
        return Level(**zero, worth=np.zeros(1), left=left[None, :].copy())

    def only(self, chosen: Ints, kinds: Ints, before: Ints) -> Level:
        """Some of them; `before`: what was left of every kind before the last piece, by filling."""
        columns = {name: column[chosen] for name, column in vars(self).items() if name != "left"}
        left = before[columns["came_from"]]
        left[np.arange(chosen.size), kinds[columns["lie"]]] -= 1
        return Level(**columns, left=left)

    def used(self, width: int) -> Ints:
        """How much of a board so wide they use up, waste and all."""
        used: Ints = self.x0 * width + (self.x1 - self.x0) * self.y0
        used += (np.minimum(self.x, self.x1) - self.x0) * (self.y1 - self.y0)
        return used

    def outline(self) -> Ints:
        """A number that is the same for the same outline."""
        outline: Ints = self.x0 * 3 + self.x1 * 1_000_003 + self.y0 * 7_368_787 + self.y1 * 15_485_863
        return outline + self.x * 32_452_843 + self.y * 49_979_687
