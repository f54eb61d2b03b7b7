"""Channels run along a fence: where the fence stands so that the cutter meets both walls, exactly.

A centred channel is cut with both faces against the fence, the piece turned end for end between: width = 2 x
(fence to the cutter's far side) - thickness. So it is centred whatever the fence reads. All other channels
keep one face to the fence; a cutter narrower than the channel starts at the wall next to the fence and the
fence moves away from the cutter, so that a router's cutter always works on the side that faces the one who
feeds.
"""

from __future__ import annotations

from dataclasses import dataclass

from benchalong.ground.lengths import Length
from benchalong.trade.ways.asked import length
from benchalong.trade.ways.model import Setting, Work


@dataclass(frozen=True)
class Fenced:
    """Fence settings for one channel and one cutter."""

    settings: tuple[Setting, ...]
    strokes: int
    is_turned: bool


def can_turn(work: Work) -> bool:
    """Whether the piece may run past the cutter either way round: centred, from end to end."""
    return work.is_centred and not work.is_stopped


def fenced(work: Work, cutter: Length) -> Fenced:
    """`cutter` is no wider than the channel."""
    if cutter < work.width and can_turn(work):
        return _turned(work, cutter)
    return _one_face(work, cutter)


def _turned(work: Work, cutter: Length) -> Fenced:
    half, far = work.width / 2, work.near + work.width
    strokes = -(-half // cutter)
    settings = [
        length("fence", "Fence to the cutter", far - cutter),
        length("fence_far", "Fence to the cutter's far side", far),
    ]
    if strokes > 1:
        settings.append(length("fence_first", "Fence to the cutter, first stroke", work.near + half))
    return Fenced(tuple(settings), int(strokes), is_turned=True)


def _one_face(work: Work, cutter: Length) -> Fenced:
    settings = [length("fence", "Fence to the cutter", work.near)]
    strokes = -(-work.width // cutter)
    if strokes > 1:
        last = work.near + work.width - cutter
        settings.append(length("fence_last", "Fence to the cutter, last stroke", last))
    return Fenced(tuple(settings), int(strokes), is_turned=False)
