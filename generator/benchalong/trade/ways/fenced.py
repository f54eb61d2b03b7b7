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
from benchalong.trade.cutters import Sizes, narrowest, widest
from benchalong.trade.ways.asked import Asked
from benchalong.trade.ways.model import Setting, Work
from benchalong.trade.ways.practice import STACK_WIDER
from benchalong.trade.ways.settings import length


@dataclass(frozen=True)
class Fenced:
    """Fence settings for one channel and one cutter."""

    settings: tuple[Setting, ...]
    strokes: int
    guide: str
    is_turned: bool = False


def can_turn(work: Work) -> bool:
    """Whether the piece may run past the cutter either way round: centred, from end to end."""
    return work.is_centred and not work.is_stopped


def turning_cutter(asked: Asked, sizes: Sizes) -> Length | None:
    """Of a centred channel, the widest cutter narrower than it that makes it in two passes."""
    work = asked.work
    narrow = widest(sizes, asked.units, work.width, below=work.width)
    return narrow if can_turn(work) and narrow is not None and narrow * 2 >= work.width else None


def fenced(work: Work, cutter: Length) -> Fenced:
    """`cutter` is no wider than the channel."""
    if cutter < work.width and can_turn(work):
        return _turned(work, cutter)
    return Fenced(near_and_far(work, cutter), strokes(work.width, cutter), work.from_side)


def _turned(work: Work, cutter: Length) -> Fenced:
    half, far = work.width / 2, work.near + work.width
    count = strokes(half, cutter)
    settings = [
        length("fence", "Fence to the cutter", far - cutter),
        length("fence_far", "Fence to the cutter's far side", far),
    ]
    if count > 1:
        settings.append(length("fence_first", "Fence to the cutter, first stroke", work.near + half))
    return Fenced(tuple(settings), count, f"{work.from_side}, then {work.far_side}", is_turned=True)


def near_and_far(
    work: Work, cutter: Length, key: str = "fence", name: str = "Fence to the cutter"
) -> tuple[Setting, ...]:
    """To the near wall, and for the last stroke to the far one where the cutter is narrower than the cut."""
    near = length(key, name, work.near)
    if cutter >= work.width:
        return (near,)
    return near, length(f"{key}_last", f"{name}, last stroke", work.near + work.width - cutter)


def strokes(width: Length, cutter: Length) -> int:
    """How often a cutter passes to take a width."""
    return int(-(-width // cutter))


@dataclass(frozen=True)
class Buried:
    """A cutter wider than the cut, the rest of it inside the fence, which so sets the width alone."""

    cutter: Length
    settings: tuple[Setting, ...]
    strokes: int
    """More than one where no cutter is wide enough: then it is the widest."""


def buried(asked: Asked, sizes: Sizes, width: Length, fence: str) -> Buried:
    far = length("fence_far", "Fence to the cutter's far side", width)
    cutter = narrowest(sizes, asked.units, width + asked.limit(STACK_WIDER))
    if cutter is None:
        largest = sizes[asked.units][-1]
        return Buried(largest, (far,), strokes(width, largest))
    return Buried(cutter, (far, length("buried", f"Cutter inside {fence}", cutter - width)), 1)
