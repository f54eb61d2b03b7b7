"""Lines on one straight, joined into as few as possible, and freed of what other lines already cover."""

from __future__ import annotations

from typing import TypeAlias

import numpy as np

from benchalong.workings.bodies import Floats

Span: TypeAlias = tuple[float, float]
Straight: TypeAlias = tuple[int, int, int]
"""Direction and offset, counted in steps of TURN and GRID."""

GRID = 0.000_713_1
"""How finely straights are told apart, in mm; an odd number, so that no shop size falls on the border."""
TURN = 0.000_013_7
"""How finely directions are told apart."""
TOUCH = 1e-4
"""Pieces of one straight with less than this between them, in mm, are one."""


def joined(segments: Floats, *, less: Floats | None = None) -> Floats:
    """Rows (x, y, x, y): the fewest lines that cover the same without what `less` covers, in fixed order."""
    pieces, exact = _by_straight(segments)
    taken, _ = _by_straight(less) if less is not None else ({}, {})
    rows: list[tuple[float, float, float, float]] = []
    for straight in sorted(pieces):
        x, y, off = exact[straight]
        for first, last in _without(_union(pieces[straight]), _union(taken.get(straight, []))):
            rows.append((x * first - y * off, y * first + x * off, x * last - y * off, y * last + x * off))
    return np.array(rows, dtype=float).reshape(-1, 4)


def _by_straight(
    segments: Floats,
) -> tuple[dict[Straight, list[Span]], dict[Straight, tuple[float, float, float]]]:
    """Spans by straight, and each straight as unit direction and offset."""
    run = segments[:, 2:] - segments[:, :2]
    unit = run / np.hypot(run[:, 0], run[:, 1])[:, None] if len(run) else run
    back = (unit[:, 0] < -1e-9) | ((np.abs(unit[:, 0]) <= 1e-9) & (unit[:, 1] < 0))
    unit = np.where(back[:, None], -unit, unit)
    unit = np.where(np.abs(unit) < 1e-9, 0.0, np.where(np.abs(unit) > 1 - 1e-12, 1.0, unit))
    off = unit[:, 0] * segments[:, 1] - unit[:, 1] * segments[:, 0]
    ends = np.column_stack([(unit * segments[:, :2]).sum(axis=1), (unit * segments[:, 2:]).sum(axis=1)])
    keys = np.column_stack([np.floor(unit / TURN + 0.37), np.floor(off / GRID + 0.37)]).astype(np.int64)
    pieces: dict[Straight, list[Span]] = {}
    exact: dict[Straight, tuple[float, float, float]] = {}
    rows = zip(keys.tolist(), unit.tolist(), off.tolist(), np.sort(ends, axis=1).tolist(), strict=True)
    for (a, b, c), (x, y), offset, (first, last) in rows:
        pieces.setdefault((a, b, c), []).append((first, last))
        exact.setdefault((a, b, c), (x, y, offset))
    return pieces, exact


def _union(spans: list[Span]) -> list[Span]:
    whole: list[Span] = []
    for first, last in sorted(spans):
        if whole and first <= whole[-1][1] + TOUCH:
            whole[-1] = (whole[-1][0], max(whole[-1][1], last))
        else:
            whole.append((first, last))
    return whole


def _without(spans: list[Span], taken: list[Span]) -> list[Span]:
    left: list[Span] = []
    for first, last in spans:
        at = first
        for start, end in taken:
            if end <= at or start >= last:
                continue
            if start > at + TOUCH:
                left.append((at, start))
            at = max(at, end)
        if last > at + TOUCH:
            left.append((at, last))
    return left
