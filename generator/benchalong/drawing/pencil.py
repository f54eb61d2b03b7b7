"""Slanting strokes over a shape, as from a pencil: what stands out is told apart without colour."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from benchalong.workings.bodies import Floats

SPACING = 6.0
"""Between strokes, px."""
SHORTEST = 3.0
"""Shorter strokes are left out, px."""
FREE = 1.5
"""Between a stroke's end and the outline, px."""
SLANT = np.array([np.sqrt(0.5), -np.sqrt(0.5)])
"""Up to the right, px running down."""


def pencil_strokes(loops: Sequence[Floats]) -> list[Floats]:
    """Lines within the loops (even-odd), each two points, on one grid for the whole sheet."""
    starts = np.concatenate(loops)
    ends = np.concatenate([np.roll(loop, -1, axis=0) for loop in loops])
    square = np.array([-SLANT[1], SLANT[0]])
    from_, to = starts @ square, ends @ square
    first, last = int(np.ceil(from_.min() / SPACING)), int(np.floor(from_.max() / SPACING))
    strokes = []
    for number in range(first, last + 1):
        level = number * SPACING
        crossed = (from_ > level) != (to > level)
        part = (level - from_[crossed]) / (to[crossed] - from_[crossed])
        met = starts[crossed] + part[:, None] * (ends[crossed] - starts[crossed])
        strokes += _between(np.sort(met @ SLANT), level * square)
    return strokes


def _between(met: Floats, foot: Floats) -> list[Floats]:
    """The strokes on one line, from every first to every second place where it meets the outline."""
    spans = met[: len(met) // 2 * 2].reshape(-1, 2) + np.array([FREE, -FREE])
    return [foot + span[:, None] * SLANT for span in spans if span[1] - span[0] >= SHORTEST]
