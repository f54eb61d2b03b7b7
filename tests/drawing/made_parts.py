"""Parts for the drawing tests, their cuts made as the plan makes them from what an author types."""

from __future__ import annotations

from fractions import Fraction
from typing import cast

from benchalong.ground.lengths import Length
from benchalong.plan.cuts.given import Given
from benchalong.plan.cuts.kinds import KINDS
from benchalong.plan.model import Corner, Cut, CutKind, CutSize, Part, Surface

Number = int | Fraction
Size3 = tuple[Number, Number, Number]
"""Length, width, thickness in mm."""


def made_cut(
    box: Size3,
    kind: str,
    on: str,
    *,
    corners: tuple[tuple[Number, Number, Number], ...] = (),
    removes: str = "outside",
    through: bool = False,
    name: str = "",
    **sizes: Number,
) -> Cut:
    """A cut by the keys an author types; `on` names one surface, or two with a comma. `from` is `from_`."""
    surfaces = cast(tuple[Surface, ...], tuple(on.split(", ")))
    lengths = {key.rstrip("_"): Length(size) for key, size in sizes.items()}
    rounded = tuple(Corner((Length(x), Length(y)), Length(radius)) for x, y, radius in corners)
    words = {"depth": "through"} if through else {}
    whole = (Length(box[0]), Length(box[1]), Length(box[2]))
    given = Given(kind, surfaces, whole, lengths, words, rounded, removes)
    told = tuple(CutSize(key, length) for key, length in lengths.items())
    return Cut(cast(CutKind, kind), name or kind, surfaces, "", told, KINDS[kind](given))


def made_part(box: Size3, *cuts: Cut, name: str = "Rail") -> Part:
    length, width, thickness = (Length(size) for size in box)
    return Part("rail", name, "oak", thickness, width, length, 1, (), cuts)
