"""How promising fillings are: which of those with equally many pieces a beam search follows.

By what their pieces are worth for the room they use up (such guides on guillotine layouts: Libralesso &
Fontan 2021); by the same less what room is usually worth; or by what the rest of their board may still come
to (`guiding`), which finds far better fillings at uneven prices and takes longer.
"""

from __future__ import annotations

from typing import Protocol

import numpy as np

from benchalong.workings.layout.guiding import Guide
from benchalong.workings.layout.levels import Level
from benchalong.workings.layout.lies import Floats, Ints, Lies


class Judge(Protocol):
    weight: int
    """What judging a filling costs, in placings."""

    def __call__(self, level: Level, used: Ints) -> Floats:
        """The more, the better. `used`: how much room each uses up."""
        ...


class ByRate:
    """By worth for room used; with a lean, the more by worth alone."""

    weight = 1

    def __init__(self, lean: float) -> None:
        self._power = 1 + lean

    def __call__(self, level: Level, used: Ints) -> Floats:
        rate: Floats = level.worth**self._power / used
        return rate


class ByGain:
    """By worth less what the room used is usually worth."""

    weight = 1

    def __init__(self, worth: Floats, lies: Lies) -> None:
        self._fair = float(np.quantile(worth[lies.kind] / (lies.length * lies.width), 0.75))

    def __call__(self, level: Level, used: Ints) -> Floats:
        gain: Floats = level.worth - self._fair * used
        return gain


class ByGuide:
    """By worth and what the rest may come to, but room counts no more than `cap` for its area: a guide may
    promise one dear piece many times over."""

    weight = 2

    def __init__(self, guide: Guide, *, length: int, width: int, boards: int, cap: float) -> None:
        self._guide, self._length, self._cap = guide, length, cap
        self._board, self._all = length * width, length * width * boards

    def __call__(self, level: Level, used: Ints) -> Floats:
        at = level.x0 // self._length
        begin = at * self._length
        rest = self._guide.rest(
            x0=level.x0 - begin,
            x1=level.x1 - begin,
            y0=level.y0,
            y1=level.y1,
            x=np.minimum(level.x, level.x1) - begin,
        )
        room = (at + 1) * self._board - used
        later = self._cap * (self._all - (at + 1) * self._board)
        promise: Floats = level.worth + np.minimum(rest, self._cap * room) + later
        return promise
