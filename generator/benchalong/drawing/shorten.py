"""From millimetres to the sheet, one direction at a time, with empty stretches cut short.

A part 700 mm long and 19 mm thick shows nothing at a scale at which it fits a phone. So all that has
shape is drawn at one scale, and stretches in which nothing happens are interrupted (ISO 128): their
middle is left out between two break lines. Slopes and circles keep their shape; sizes stay the true ones.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from benchalong.workings.bodies import Floats

GAP = 6.0
"""Between the two break lines, in px."""
WORTH = 10.0
"""A stretch is interrupted only if that saves this much, in px."""
LEAST = 26.0
"""The shortest an interrupted stretch may become, in px."""


@dataclass(frozen=True)
class Kept:
    """A stretch that is drawn: from and to in mm, and where it begins on the sheet, in px."""

    start: float
    end: float
    at: float


@dataclass(frozen=True)
class Strip:
    """One direction of a part on the sheet."""

    kept: tuple[Kept, ...]
    scale: float
    """px per mm."""
    size: float
    """Of the whole, in px."""

    @property
    def breaks(self) -> tuple[float, ...]:
        """The middle of each interruption, in px."""
        return tuple(piece.at - GAP / 2 for piece in self.kept[1:])

    def place(self, value: float) -> float:
        """Where a coordinate in mm comes to lie, in px; what was left out comes to lie in the gap."""
        for piece in self.kept:
            if value <= piece.end + 1e-6:
                return (
                    piece.at + max(0.0, value - piece.start) * self.scale
                    if value >= piece.start
                    else piece.at - GAP / 2
                )
        last = self.kept[-1]
        return last.at + (value - last.start) * self.scale


def fitted(stops: Sequence[float], *, scale: float, room: float) -> Strip:
    """The stops (sorted, mm) at `scale`; the widest empty stretches shortened to fit `room` px."""
    gaps = np.diff(np.asarray(stops, dtype=float)) * scale
    most = _longest_stretch(gaps, room)
    kept = [Kept(stops[0], stops[0], 0.0)]
    for start, end, gap in zip(stops, stops[1:], gaps.tolist(), strict=False):
        piece = kept[-1]
        if gap <= most + WORTH:
            kept[-1] = Kept(piece.start, end, piece.at)
            continue
        stub = (most - GAP) / 2 / scale
        kept[-1] = Kept(piece.start, start + stub, piece.at)
        kept.append(Kept(end - stub, end, kept[-1].at + (start + stub - piece.start) * scale + GAP))
    last = kept[-1]
    return Strip(tuple(kept), scale, last.at + (last.end - last.start) * scale)


def _longest_stretch(gaps: Floats, room: float) -> float:
    """How long an empty stretch may stay, in px, so that the sum is `room`."""
    if gaps.sum() <= room:
        return float("inf")
    ordered = np.sort(gaps)
    short = np.concatenate([[0.0], np.cumsum(ordered)])
    for count in range(len(gaps)):
        most = (room - short[count]) / (len(gaps) - count)
        if most <= ordered[count]:
            return max(LEAST, float(most))
    return LEAST


def least_size(stops: Sequence[float], scale: float) -> float:
    """What the stops need at least at this scale, in px."""
    gaps = np.diff(np.asarray(stops, dtype=float)) * scale
    return float(np.where(gaps > LEAST + WORTH, LEAST, gaps).sum())


def on_sheet(lines: Floats, right: Strip, downwards: Strip) -> Floats:
    """Rows (x, y, x, y) in mm as rows in px, parted where an interruption lies between."""
    pieces = [
        _moved(_clipped(_clipped(lines, 0, across), 1, down), across, down, (right.scale, downwards.scale))
        for across in right.kept
        for down in downwards.kept
    ]
    return np.vstack(pieces) if pieces else np.zeros((0, 4))


def _clipped(lines: Floats, column: int, piece: Kept) -> Floats:
    """What of each line lies between two coordinates."""
    start, run = lines[:, column], lines[:, column + 2] - lines[:, column]
    flat = np.abs(run) < 1e-9
    safe = np.where(flat, 1.0, run)
    one, two = (piece.start - start) / safe, (piece.end - start) / safe
    first = np.where(flat, 0.0, np.clip(np.minimum(one, two), 0, 1))
    last = np.where(flat, 1.0, np.clip(np.maximum(one, two), 0, 1))
    inside = np.where(flat, (start > piece.start - 1e-6) & (start < piece.end + 1e-6), last - first > 1e-9)
    away = np.column_stack([lines[:, 2:] - lines[:, :2]] * 2)
    base = np.column_stack([lines[:, :2]] * 2)
    share = np.column_stack([first, first, last, last])
    return np.asarray((base + away * share)[inside])


def _moved(lines: Floats, right: Kept, downwards: Kept, scales: tuple[float, float]) -> Floats:
    origin = np.array([right.start, downwards.start] * 2)
    return np.asarray((lines - origin) * np.array(scales * 2) + np.array([right.at, downwards.at] * 2))
