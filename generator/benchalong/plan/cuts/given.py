"""One written cut with its lengths worked out: what a kind's function gets to work with."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from benchalong.ground.lengths import Length
from benchalong.plan.cuts.surfaces import SURFACES, Directions, Range, extent
from benchalong.plan.draft import Box
from benchalong.plan.model import Axis, Corner, Surface

WORDS = ("centred", "through")


@dataclass(frozen=True)
class Given:
    kind: str
    surfaces: tuple[Surface, ...]
    box: Box
    lengths: Mapping[str, Length]
    """By key as typed; what is left out or is a word is not among them."""
    words: Mapping[str, str]
    """By key: `centred` or `through`."""
    corners: tuple[Corner, ...] = ()
    removes: str = "outside"

    @property
    def on(self) -> Surface:
        return self.surfaces[0]

    @property
    def directions(self) -> Directions:
        return SURFACES[self.on]

    def whole(self, axis: Axis) -> Length:
        return extent(self.box, axis)

    def room(self, key: str, size: Length, axis: Axis) -> Range:
        """Where something of that size lies on the axis: near wall at the length given, else centred."""
        start = self.lengths.get(key)
        if start is None:
            start = (self.whole(axis) - size) / 2
        return (start, start + size)

    def middle(self, key: str, axis: Axis) -> Length:
        """The centre at the length given, else in the middle."""
        return self.lengths.get(key, self.whole(axis) / 2)

    def stretch(self, axis: Axis) -> Range:
        """From `from` to `to`, else from end to end."""
        return (self.lengths.get("from", Length(0)), self.lengths.get("to", self.whole(axis)))

    def depth(self) -> Length:
        """How deep, right through when it says so."""
        return self.lengths.get("depth", self.whole(self.directions.inward))
