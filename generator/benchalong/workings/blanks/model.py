"""What blanks are: pieces as they are first cut out of boards and sheets, larger than finished.

Lengths are exact millimetres, rounded up to what is chalked on a board. A blank maps onto one piece of a
layout's order, `Piece(blank.id, blank.length, blank.width, blank.count, may_turn=blank.grain == "free")`, and
a `Matched` with `parted` onto one of its match sets.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property
from typing import Literal, TypeAlias

from benchalong.ground.lengths import Length
from benchalong.plan.model import PartId, StockId
from benchalong.plan.rough import How

Grain: TypeAlias = Literal["along", "free"]
Lie: TypeAlias = Literal["alone", "end to end", "side by side"]


@dataclass(frozen=True)
class Reason:
    """Why a blank is as it is: words, with `{}` where a length goes."""

    words: str
    lengths: tuple[Length, ...] = ()


@dataclass(frozen=True)
class Gives:
    """What comes out of all blanks of one kind together."""

    part: PartId
    """Empty for a test piece."""
    name: str
    count: int
    """Copies of the part, spares among them; for a part glued up from strips, the strips."""
    marks: tuple[str, ...] = ()
    """The copies, where they have marks; alike until they are chosen at the bench."""
    spares: int = 0
    strips: int = 1
    """So many are glued up into one."""
    test_piece: str = ""
    """Its name in the plan, where it is one."""


@dataclass(frozen=True)
class Blank:
    """A kind of piece to cut out; several alike are one blank with a count."""

    id: str
    """The part's id; of a second kind for the same part `side-2`."""
    stock: StockId
    length: Length
    """Rough, along the grain."""
    width: Length
    thickness: Length
    """Rough, as the board is sold: 4/4 is 1 in."""
    called: str
    """What the trade calls that thickness: `4/4`, `27 mm`, `1x6`; empty where it has no name."""
    quarters: Fraction | None
    """Of an inch, by which it is sold; None where it isn't."""
    count: int
    gives: tuple[Gives, ...]
    why: tuple[Reason, ...] = ()
    grain: Grain = "along"
    lie: Lie = "alone"
    """How the pieces in it lie until they are cut apart."""
    pieces: int = 1
    """So many lie end to end or side by side in one blank."""
    leaves: int = 1
    """So many it is sawn into, face to back."""
    match: str = ""
    """The match it belongs to."""

    @property
    def parts(self) -> tuple[PartId, ...]:
        return tuple(dict.fromkeys(each.part for each in self.gives if each.part))


@dataclass(frozen=True)
class Matched:
    """Blanks that come from one board."""

    id: str
    """The match's name in the plan."""
    how: How
    blanks: tuple[str, ...]
    """Their ids in sequence; one may stand there more than once, and counts among its count."""
    parted: Literal["across", "along", ""]
    """across: end to end, so that the grain runs on; along: side by side; empty: anywhere on one board."""


@dataclass(frozen=True)
class Blanks:
    blanks: tuple[Blank, ...]
    """By stock in the order of the plan, the thickest first, then the longest."""
    matched: tuple[Matched, ...] = ()
    rough_of: Mapping[PartId, tuple[str, ...]] = field(default_factory=dict)
    """The ids of the blanks that each part comes from."""

    @cached_property
    def by_id(self) -> Mapping[str, Blank]:
        return {blank.id: blank for blank in self.blanks}

    def by_thickness(self, stock: StockId) -> tuple[tuple[Blank, ...], ...]:
        """Those of a stock, in groups that are bought and laid out together: of one rough thickness, called
        the same; the thickest first."""
        groups: dict[tuple[Length, str], list[Blank]] = {}
        for blank in self.of_stock(stock):
            groups.setdefault((blank.thickness, blank.called), []).append(blank)
        return tuple(tuple(group) for group in groups.values())

    def of_stock(self, stock: StockId) -> tuple[Blank, ...]:
        return tuple(blank for blank in self.blanks if blank.stock == stock)
