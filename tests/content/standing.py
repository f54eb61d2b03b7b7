"""What stands where, as boxes in the room: the arithmetic of these tests, apart from the plan's formulas.

A copy's box and the boxes of its cuts are turned into the room here, from the copies as they were worked
out. An outline or a hole counts with the smallest box around it, so these boxes never take too little wood;
cuts that aren't boxes (an outline that keeps its inside, a bevel) are left out, so that no clash is missed.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations, pairwise, product
from typing import TypeAlias

from benchalong.plan.model import AXES, Circle, Cut, Part, Prism, Shape
from benchalong.road import Travelled
from benchalong.workings.copies import COPIES, Copy

Span: TypeAlias = tuple[Fraction, Fraction]
Box: TypeAlias = tuple[Span, Span, Span]
"""From and to: to the right, to the back, up; in mm."""

INCH = Fraction(254, 10)
SQUARE_CUTS = ("groove", "dado", "rabbet", "tongue", "tenon", "mortise", "notch")


@dataclass(frozen=True)
class Stand:
    """One copy of a part where it stands."""

    mark: str
    part: str
    box: Box
    cuts: tuple[tuple[str, Box], ...]
    """The room each square cut takes away, by the cut's name, with its kind where a joint gives it: `door
    frame, tongue`. A tongue has two."""

    def cut(self, name: str, *, reaching: Box | None = None) -> Box:
        """The only room a cut of this name takes away, or the only one that reaches into a box."""
        (found,) = self.all_cuts(name, reaching=reaching)
        return found

    def all_cuts(self, name: str, *, reaching: Box | None = None) -> list[Box]:
        return [
            box for called, box in self.cuts if called == name and (reaching is None or shared(box, reaching))
        ]


Stands: TypeAlias = Mapping[str, Stand]


def stands(travelled: Travelled) -> Stands:
    """Every copy by its mark, LD/H and the like."""
    plan = travelled.plan
    return {
        copy.mark: _stand(copy, plan.parts[copy.part], plan.shapes[copy.shape])
        for copy in travelled.worked[COPIES]
    }


def _stand(copy: Copy, part: Part, shape: Shape) -> Stand:
    whole: Box = ((Fraction(0), part.length), (Fraction(0), part.width), (Fraction(0), part.thickness))
    cuts = tuple((_called(cut), _in_room(copy, room)) for cut in shape.cuts for room in _rooms(cut))
    return Stand(copy.mark, copy.part, _in_room(copy, whole), cuts)


def _called(cut: Cut) -> str:
    return f"{cut.name}, {cut.kind}" if cut.joint else cut.name


def _rooms(cut: Cut) -> Iterator[Box]:
    if cut.kind in SQUARE_CUTS:
        yield from (_room(prism) for prism in cut.takes)


def _room(prism: Prism) -> Box:
    assert not isinstance(prism.shape, Circle), "a square cut is made of corners"
    spans: dict[str, Span] = {prism.axis: (prism.start, prism.end)}
    for place, axis in enumerate(axis for axis in AXES if axis != prism.axis):
        values = [corner.at[place] for corner in prism.shape.corners]
        spans[axis] = (min(values), max(values))
    return (spans["along"], spans["across"], spans["down"])


def _in_room(copy: Copy, box: Box) -> Box:
    corners = [
        [sum(row[i] * point[i] for i in range(3)) + at for row, at in zip(copy.turn, copy.at, strict=True)]
        for point in product(*box)
    ]
    x, y, z = ([Fraction(corner[i]) for corner in corners] for i in range(3))
    return ((min(x), max(x)), (min(y), max(y)), (min(z), max(z)))


def shared(one: Box, other: Box) -> Box | None:
    """The room both take up, or None where they only touch."""
    spans = [(max(a[0], b[0]), min(a[1], b[1])) for a, b in zip(one, other, strict=True)]
    return (spans[0], spans[1], spans[2]) if all(low < high for low, high in spans) else None


def holds(outer: Box, inner: Box) -> bool:
    return all(a[0] <= b[0] and b[1] <= a[1] for a, b in zip(outer, inner, strict=True))


def both_solid(one: Stand, other: Stand) -> list[Box]:
    """Every room where both have wood: what can't be put together."""
    common = shared(one.box, other.box)
    if common is None:
        return []
    taken = [room for _, cut in (*one.cuts, *other.cuts) if (room := shared(cut, common))]
    edges = [sorted({*common[i], *(end for room in taken for end in room[i])}) for i in range(3)]
    cells = product(pairwise(edges[0]), pairwise(edges[1]), pairwise(edges[2]))
    return [cell for cell in cells if not any(holds(room, cell) for room in taken)]


def clashes(standing: Stands) -> list[tuple[str, str]]:
    """The marks of all copies that want the same wood."""
    return [(a.mark, b.mark) for a, b in combinations(standing.values(), 2) if both_solid(a, b)]


def reach(one: Stand, other: Stand, direction: int) -> Fraction:
    """How far they go into each other, in mm; 0 is to the right, 1 to the back, 2 up."""
    common = shared(one.box, other.box)
    assert common is not None, f"{one.mark} doesn't reach {other.mark}"
    low, high = common[direction]
    return high - low
