"""The nouns of sawing wood up: what the shop reckons with, boards, spares, test pieces, matches.

Lengths are exact millimetres. What the author left unsaid stands at the trade's usual value, and its name is
among `assumed`, so that pages can say so.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal, TypeAlias

from benchalong.ground.lengths import Length
from benchalong.ground.names import NO_NAMES, Names
from benchalong.trade import rough as usual

Edge: TypeAlias = Literal["edge a", "edge b"]
How: TypeAlias = Literal["book match", "end to end", "side by side", "same board", "show side"]


@dataclass(frozen=True)
class Price:
    amount: Fraction
    per: str
    """board foot, sheet, foot, metre, square metre, square foot, cubic metre, each."""


@dataclass(frozen=True)
class Allowance:
    """How much larger than finished something is cut out; None where nobody said."""

    length: Length | None = None
    width: Length | None = None
    thickness: Length | None = None

    def over(self, other: Allowance) -> Allowance:
        """This one, and the other's where this says nothing."""
        return Allowance(
            other.length if self.length is None else self.length,
            other.width if self.width is None else self.width,
            other.thickness if self.thickness is None else self.thickness,
        )


@dataclass(frozen=True)
class Jointer:
    width: Length
    """The widest it takes."""
    shortest: Length
    narrowest: Length


@dataclass(frozen=True)
class Planer:
    width: Length
    shortest: Length
    thinnest: Length


@dataclass(frozen=True)
class Sawing:
    """What a shop reckons with when boards are cut up."""

    kerf: Length
    trim: Length
    """Off each end of a board."""
    resaw_kerf: Length
    clean_up: Length
    """Off each face of a resawn leaf."""
    jointer: Jointer
    planer: Planer
    turns: int | None = None
    """How often the direction of cutting may change on one board, the first direction counted; None where
    nobody said."""
    car: Length | None = None
    """The longest board that goes in; None where nobody said."""
    allowances: Mapping[str, Allowance] = field(default_factory=dict)
    """By `all`, `board`, `sheet`, `turned`, `glued_up`: what the author said."""
    assumed: Names = NO_NAMES
    """Which of the above are the trade's usual: `kerf`, `jointer.width`."""

    @property
    def shortest(self) -> Length:
        """Nothing shorter goes over the jointer and through the planer."""
        return max(self.jointer.shortest, self.planer.shortest)


def usual_sawing(units: str = "inch") -> Sawing:
    """The trade's own, with all of it assumed."""
    return Sawing(
        kerf=usual.KERF.of(units),
        trim=usual.TRIM.of(units),
        resaw_kerf=usual.RESAW_KERF.of(units),
        clean_up=usual.CLEAN_UP.of(units),
        jointer=Jointer(
            usual.JOINTER_WIDTH.of(units),
            usual.JOINTER_SHORTEST.of(units),
            usual.JOINTER_NARROWEST.of(units),
        ),
        planer=Planer(
            usual.PLANER_WIDTH.of(units), usual.PLANER_SHORTEST.of(units), usual.PLANER_THINNEST.of(units)
        ),
        assumed=Names(ASSUMED),
    )


ASSUMED = (
    "kerf", "trim", "resaw.kerf", "resaw.clean_up", "jointer.width", "jointer.shortest", "jointer.narrowest",
    "planer.width", "planer.shortest", "planer.thinnest",
)  # fmt: skip
"""What the trade has a usual value for, by the keys of `shop:`."""


@dataclass(frozen=True)
class Strips:
    """How a part is glued up."""

    is_glued: bool
    most: Length | None = None
    """No strip is wider."""
    count: int | None = None
    """At least so many."""


@dataclass(frozen=True)
class Defect:
    """A rectangle of a board to keep clear of."""

    along: Length
    """From end a to where it begins."""
    across: Length
    """From edge a."""
    length: Length
    width: Length
    what: str = ""


@dataclass(frozen=True)
class Sapwood:
    edge: Edge
    width: Length


@dataclass(frozen=True)
class Board:
    """A board or sheet that is there already."""

    stock: str
    length: Length
    width: Length
    thickness: Length | None
    """As it measures; None where nobody measured."""
    count: int = 1
    defects: tuple[Defect, ...] = ()
    sapwood: tuple[Sapwood, ...] = ()
    price: Price | None = None
    note: str = ""


@dataclass(frozen=True)
class TestPiece:
    """A piece milled with the parts, to try settings on."""

    __test__ = False  # its name makes pytest think it were a test

    id: str
    name: str
    stock: str
    thickness: Length
    width: Length
    length: Length
    count: int
    purpose: str = ""


@dataclass(frozen=True)
class Match:
    """Parts that come from one board, or match."""

    id: str
    how: How
    parts: tuple[str, ...]
    """Parts, in the order written; one may stand there more than once."""
    marks: tuple[str, ...]
    """The copies, in their order; fewer than the parts have where copies have no marks."""
    show_side: str = ""
    note: str = ""
