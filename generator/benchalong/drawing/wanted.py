"""What a drawing must say, as data, and a cut looked at within its part.

Everything is exact and in mm. Where a size ends up on the sheet is no matter here.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeAlias

from benchalong.drawing.views import LOOKING, ViewName
from benchalong.ground.lengths import ZERO, Length
from benchalong.plan.model import AXES, Axis, Circle, Cut, Outline, Part, Prism

Range: TypeAlias = tuple[Length, Length]
WHOLE, SHOULDERS = ("part",), ("shoulders",)
"""What the sizes of the part itself are asked of."""


@dataclass(frozen=True)
class Box:
    """From and to on each of the part's directions."""

    along: Range
    across: Range
    down: Range

    def on(self, axis: Axis) -> Range:
        return (self.along, self.across, self.down)[AXES.index(axis)]


@dataclass(frozen=True)
class Span:
    """A straight size: between two planes square to an axis."""

    what: str
    """`groove: depth`, without numbers."""
    axis: Axis
    start: Length
    end: Length
    views: tuple[ViewName, ...]
    """Where it may stand, best first."""
    feature: Box
    """What it belongs to: its extension lines begin here."""
    asked_of: tuple[object, ...] = ()
    """What makes it another size than one over the same stretch; nothing for positions, which are shared."""

    @property
    def length(self) -> Length:
        return self.end - self.start


@dataclass(frozen=True)
class RoundSize:
    """The size of a circle or a round corner, told by a leader."""

    what: str
    sign: str
    """`ø` or `R`."""
    length: Length
    view: ViewName
    centre: tuple[float, float]
    """What the leader points at, in mm in the view's own order: right, downwards."""
    radius: float
    """How far from there the leader begins, in mm."""


@dataclass(frozen=True)
class Point:
    """A corner of an outline or the centre of a hole, told by its two distances in the list."""

    along: Length
    """From end a."""
    across: Length
    """From edge a."""
    radius: Length
    """With which the corner is rounded; 0 for a sharp one and for a hole."""


@dataclass(frozen=True)
class Wanted:
    """Everything the drawing must say."""

    views: tuple[ViewName, ...]
    spans: tuple[Span, ...]
    rounds: tuple[RoundSize, ...]
    points: tuple[Point, ...]
    """What would need too many size lines; in order of their letters."""
    loose: tuple[tuple[str, Length], ...]
    """Sizes of cuts that have no shape to stand at."""
    notes: tuple[str, ...]
    """Sentences without sizes."""


@dataclass(frozen=True)
class Within:
    """A cut within its part, with what is asked of it again and again."""

    part: Part
    cut: Cut
    views: tuple[ViewName, ...]

    @property
    def boxes(self) -> list[Box]:
        return [prism_box(prism, self.part) for prism in self.cut.takes]

    @property
    def box(self) -> Box:
        return around_all(self.boxes)

    @property
    def edge(self) -> ViewName:
        return self.views[1]

    @property
    def end(self) -> ViewName:
        return self.views[2]

    @property
    def called(self) -> str:
        cut = self.cut
        return cut.name if cut.kind in cut.name else f"{cut.name} ({cut.kind})"

    def whole(self, axis: Axis) -> Length:
        return self.part.box[AXES.index(axis)]

    def lies_on(self, kind: str) -> bool:
        """Whether one of its surfaces is a face, an edge, an end."""
        return any(surface.startswith(kind) for surface in self.cut.surfaces)

    def reaches(self, view: ViewName) -> bool:
        """Whether the cut runs out where this view looks at it."""
        axis = LOOKING[view].into
        low, high = self.box.on(axis)
        return low == 0 if view in ("face", "edge a", "end a") else high == self.whole(axis)

    def own(
        self, word: str, axis: Axis, span: Range, *, best: ViewName, box: Box | None = None
    ) -> list[Span]:
        """A size of the cut itself, unless there is nothing to measure."""
        name = f"{self.called}: {word}"
        return [self._span(name, axis, span, best, box, (self.cut.kind, word))] if span[0] < span[1] else []

    def position(
        self, word: str, axis: Axis, value: Length, *, best: ViewName, box: Box | None = None
    ) -> list[Span]:
        """Where something is, from where its axis counts from; nothing when it is there."""
        name = f"{self.called}: {word}"
        return [self._span(name, axis, (ZERO, value), best, box, ())] if value > 0 else []

    def stops(self, axis: Axis, *, best: ViewName) -> list[Span]:
        """Where a run begins and ends, unless it runs out."""
        low, high = self.box.on(axis)
        start = {"along": "end a", "across": "edge a", "down": "the face"}[axis]
        spans = self.position(f"begins, from {start}", axis, low, best=best)
        if high < self.whole(axis):
            spans += self.position(f"ends, from {start}", axis, high, best=best)
        return spans

    def _span(
        self,
        name: str,
        axis: Axis,
        span: Range,
        best: ViewName,
        box: Box | None,
        asked_of: tuple[object, ...],
    ) -> Span:
        """In its best view, else in the other one that shows its direction."""
        both = [view for view in self.views if axis in (LOOKING[view].right, LOOKING[view].downwards)]
        order = tuple(sorted(both, key=lambda view: view != best))
        return Span(name, axis, span[0], span[1], order, box or self.box, asked_of)


def prism_box(prism: Prism, part: Part) -> Box:
    """The room a prism takes within the part."""
    low, high = shape_room(prism.shape)
    flat = [axis for axis in AXES if axis != prism.axis]
    ranges = {flat[0]: (low[0], high[0]), flat[1]: (low[1], high[1]), prism.axis: (prism.start, prism.end)}
    return Box(*(_within(ranges[axis], whole) for axis, whole in zip(AXES, part.box, strict=True)))


def shape_room(shape: Outline | Circle) -> tuple[Range, Range]:
    """The least and the greatest corner of what a shape takes up."""
    if isinstance(shape, Circle):
        half, (x, y) = shape.diameter / 2, shape.centre
        return (x - half, y - half), (x + half, y + half)
    xs = [corner.at[0] for corner in shape.corners]
    ys = [corner.at[1] for corner in shape.corners]
    return (min(xs), min(ys)), (max(xs), max(ys))


def around_all(boxes: Sequence[Box]) -> Box:
    """The smallest box that holds all."""
    return Box(
        *((min(box.on(axis)[0] for box in boxes), max(box.on(axis)[1] for box in boxes)) for axis in AXES)
    )


def _within(span: Range, whole: Length) -> Range:
    return (min(max(span[0], ZERO), whole), max(ZERO, min(span[1], whole)))


def left_standing(inside: Within) -> Box:
    """What a tongue or tenon keeps of its part's section."""
    (left, right), (top, bottom) = (ZERO, inside.part.width), (ZERO, inside.part.thickness)
    for box in inside.boxes:
        at_face, at_back = box.down[0] == 0, box.down[1] == inside.part.thickness
        at_a, at_b = box.across[0] == 0, box.across[1] == inside.part.width
        if at_face != at_back:
            top, bottom = (max(top, box.down[1]), bottom) if at_face else (top, min(bottom, box.down[0]))
        elif at_a != at_b:
            left, right = (max(left, box.across[1]), right) if at_a else (left, min(right, box.across[0]))
    return Box(inside.box.along, (left, right), (top, bottom))
