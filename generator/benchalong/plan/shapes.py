"""The pass that finds out which copies of a part are one and the same piece of wood to make.

Whether they are is a result, not something typed: copies whose cuts are equal as they lie, or after a
half turn, are one shape. A mirrored copy is one of the other hand, unless a half turn makes it the same.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import Literal, TypeAlias

from benchalong.ground.lengths import Length, Point3
from benchalong.ground.names import Names
from benchalong.plan.draft import Draft
from benchalong.plan.flips import (
    HALF_TURNS,
    MIRRORED,
    UNFLIPPED,
    Flip,
    flipped_cut,
    flipped_place,
    flipped_prism,
    is_mirrored,
)
from benchalong.plan.model import Circle, Copy, Cut, Part, Prism, Shape
from benchalong.plan.walk import Standing, walk

Hand: TypeAlias = Literal["", "left", "right"]
Key: TypeAlias = frozenset[Prism]
"""What is taken away, whatever the order it is written in."""


@dataclass
class _Making:
    """A shape while its copies are being gathered."""

    part: Part
    cuts: tuple[Cut, ...]
    key: Key
    copies: list[Copy] = field(default_factory=list)
    turned: list[str] = field(default_factory=list)
    middles: list[Length] = field(default_factory=list)
    """Where its copies stand, from left to right."""


def find_shapes(draft: Draft) -> Draft:
    """Adds `shapes` and `copies`, and gives each part the cuts of its first shape."""
    made: dict[str, list[_Making]] = {name: [] for name in draft.parts}
    order: list[tuple[_Making, int]] = []
    for standing in walk(draft.assemblies, draft.piece) if draft.piece else ():
        if standing.is_part and standing.of in draft.parts:
            making = _put(standing, draft.parts[standing.of], made[standing.of], draft.joint_cuts)
            order.append((making, len(making.copies) - 1))
    for name, makings in made.items():
        if not makings:
            part = draft.parts[name]
            makings.append(_Making(part, part.cuts, key_of(part.cuts)))
    named = {id(making): shape for makings in made.values() for making, shape in _named(makings)}
    parts = {name: replace(draft.parts[name], cuts=makings[0].cuts) for name, makings in made.items()}
    copies = tuple(replace(making.copies[n], shape=named[id(making)].id) for making, n in order)
    return replace(draft, parts=parts, shapes={shape.id: shape for shape in named.values()}, copies=copies)


def _put(
    standing: Standing, part: Part, makings: list[_Making], joint_cuts: Mapping[str, tuple[Cut, ...]]
) -> _Making:
    """Puts a copy to the shape it has, a new one if need be."""
    cuts = part.cuts + joint_cuts.get(standing.mark, ())
    mirror = MIRRORED if is_mirrored(standing.turn) else UNFLIPPED
    for making in makings:
        for half_turn in HALF_TURNS:
            flip = mirror ^ half_turn
            if key_of(cuts, part.box, flip) == making.key:
                _add(making, standing, part.box, flip, is_turned=bool(half_turn))
                return making
    physical = tuple(flipped_cut(cut, part.box, mirror) for cut in cuts)
    makings.append(_Making(part, physical, key_of(physical)))
    _add(makings[-1], standing, part.box, mirror, is_turned=False)
    return makings[-1]


def _add(making: _Making, standing: Standing, box: Point3, flip: Flip, *, is_turned: bool) -> None:
    turn, at = flipped_place(standing.turn, standing.at, box, flip)
    copy = Copy(standing.of, "", standing.mark, standing.assemblies, turn, at, standing.tilt)
    making.copies.append(copy)
    making.middles.append(at[0] + sum((turn[0][n] * box[n] for n in range(3)), start=Length(0)) / 2)
    if is_turned:
        making.turned.append(standing.mark)


def _named(makings: list[_Making]) -> Iterable[tuple[_Making, Shape]]:
    hands = _hands(makings)
    for number, making in enumerate(makings):
        marks = tuple(copy.mark for copy in making.copies) or making.part.marks
        name = making.part.id if number == 0 else f"{making.part.id}-{number + 1}"
        yield (
            making,
            Shape(name, making.part.id, hands.get(number, ""), making.cuts, marks, Names(making.turned)),
        )


def _hands(makings: list[_Making]) -> dict[int, Hand]:
    """Shapes that are each other's mirror image: the one that stands further left is the left hand."""
    hands: dict[int, Hand] = {}
    for first, making in enumerate(makings):
        for second in range(first + 1, len(makings)):
            other = makings[second]
            if any(key_of(making.cuts, making.part.box, MIRRORED ^ half) == other.key for half in HALF_TURNS):
                left, right = (
                    (first, second) if min(making.middles) <= min(other.middles) else (second, first)
                )
                hands |= {left: "left", right: "right"}
    return hands


def key_of(cuts: tuple[Cut, ...], box: Point3 | None = None, flip: Flip = UNFLIPPED) -> Key:
    """What cuts take away, of a part of this box flipped so: equal for what is the same wood to make."""
    prisms = (prism for cut in cuts for prism in cut.takes)
    if box is None or not flip:
        return frozenset(_canonical(prism) for prism in prisms)
    return frozenset(_canonical(flipped_prism(prism, box, flip)) for prism in prisms)


def _canonical(prism: Prism) -> Prism:
    """The same body with its outline begun at its least corner and run through the one way round."""
    if isinstance(prism.shape, Circle):
        return prism
    corners = prism.shape.corners
    least = min(range(len(corners)), key=lambda n: corners[n].at)
    onward = corners[least:] + corners[:least]
    backward = onward[:1] + onward[:0:-1]
    ways = sorted((onward, backward), key=lambda way: [(corner.at, corner.radius) for corner in way])
    return replace(prism, shape=replace(prism.shape, corners=ways[0]))
