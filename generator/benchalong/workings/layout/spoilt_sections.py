"""The most that a section can be worth where it holds a defect.

Some rows run past the defect on either side, over the whole section; those that meet it are interrupted, with
pieces before it and after it. How wide the interrupted ones are together is tried in every way. Or else a
piece narrower than its row passes beside the defect within the row; that is bounded wherever the defect lies.
Of several defects in a section each alone gives a bound, and the least holds.

`a` is how wide the full rows on the near side are, `b` on the far side, `t` what is left between them.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from benchalong.workings.layout.lies import Ints
from benchalong.workings.layout.model import Rectangle
from benchalong.workings.layout.rows import AN_OPERATION
from benchalong.workings.layout.sections import Sections


@dataclass(frozen=True)
class _Round:
    """One defect: sections that start before cell `starts` and end at cell `ends` or later surely hold it."""

    starts: int
    ends: int
    before: Ints
    """By the start of the section, how many cells long the pieces before the defect may be together."""
    after: Ints
    near: int
    far: int


class SpoiltSections:
    def __init__(self, sections: Sections) -> None:
        self._sections = sections
        cells = sections.cells
        clear = sections.most(sections.width)
        length = np.arange(cells + 1)[None, :] - np.arange(cells + 1)[:, None]
        self._worth = np.where(length >= 0, clear[np.maximum(length, 0)], 0)
        self.size = self._worth.size
        self._rounds = [self._round(defect) for defect in sections.plank.defects]
        for one in self._rounds:
            self._go_round(one)

    def ending_at(self, end: int) -> tuple[Ints, Ints]:
        """Where sections that end here may start, and their worth."""
        return np.arange(end + 1), self._worth[: end + 1, end]

    def add_held(self, start: int, end: int, counts: dict[int, int]) -> None:
        sections, aim = self._sections, self._worth[start, end]
        if aim == sections.most(sections.width)[end - start]:
            sections.add_held(sections.width, end - start, counts)
            return
        for one in self._rounds:
            if start < one.starts and end >= one.ends:
                for t in self._widths_between(one):
                    if self._add_parts(one, t, start, end, aim, counts):
                        return
                if aim == sections.with_narrow(max(one.near, one.far))[end - start]:
                    sections.add_narrow_held(max(one.near, one.far), end - start, counts)
                    return

    def _add_parts(self, one: _Round, t: int, start: int, end: int, aim: int, counts: dict[int, int]) -> bool:
        sections = self._sections
        before, after = int(one.before[start]), int(one.after[end])
        between = sections.most(t)[before] + sections.most(t)[after]
        for a, b in self._beside(one, t):
            if sections.most(a)[end - start] + sections.most(b)[end - start] + between == aim:
                for width, cell in ((a, end - start), (b, end - start), (t, before), (t, after)):
                    sections.add_held(width, cell, counts)
                return True
        return False

    def _round(self, defect: Rectangle) -> _Round:
        sections, kerf = self._sections, self._sections.plank.kerf
        step, edges = sections.step, np.arange(sections.cells + 1) * sections.step
        before = np.maximum(defect.x + kerf - edges, 0) // step
        after = np.maximum(edges + step - 1 - defect.end, 0) // step
        return _Round(
            starts=min(max(0, (defect.end - step) // step + 1), sections.cells + 1),
            ends=(defect.x + kerf) // step + 1,
            before=np.minimum(before, sections.cells),
            after=np.minimum(after, sections.cells),
            near=sections.across(max(0, defect.y + kerf)),
            far=sections.across(max(0, sections.plank.width - defect.far)),
        )

    def _widths_between(self, one: _Round) -> list[int]:
        least = max(0, self._sections.width - one.near - one.far)
        return [least, *(y for y in self._sections.sums if y > least)]

    def _beside(self, one: _Round, t: int) -> list[tuple[int, int]]:
        room = self._sections.width - t
        near = [a for a in self._sections.sums if a <= min(one.near, room)]
        return [(a, min(one.far, room - a)) for a in near]

    def _go_round(self, one: _Round) -> None:
        sections, cells = self._sections, self._sections.cells
        if one.starts <= 0 or one.ends > cells:
            return
        starts, ends = np.arange(one.starts), np.arange(one.ends, cells + 1)
        length = ends[None, :] - starts[:, None]
        best = sections.with_narrow(max(one.near, one.far))[np.maximum(length, 0)]
        for t in self._widths_between(one):
            full = np.maximum.reduce([sections.most(a) + sections.most(b) for a, b in self._beside(one, t)])
            between = sections.most(t)
            self.size += 4 * length.size + 10 * AN_OPERATION
            worth = full[np.maximum(length, 0)] + between[one.before[starts]][:, None]
            np.maximum(best, worth + between[one.after[ends]][None, :], out=best)
        block = self._worth[: one.starts, one.ends :]
        np.minimum(block, np.where(length >= 0, best, block), out=block)
