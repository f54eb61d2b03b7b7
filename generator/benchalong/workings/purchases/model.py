"""What a shopping list says. Amounts are exact; where one is rounded up to what is sold, that is said."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from typing import Literal, TypeAlias

from benchalong.ground.lengths import Length
from benchalong.plan.model import Price, StockId
from benchalong.trade.lumber import Nominal
from benchalong.trade.waste import Waste

By: TypeAlias = Literal["area", "layout"]
"""What a number of boards or sheets was found by: their area alone, or where each part lies."""
Rack: TypeAlias = Literal["empty", "short", "suffices"]
"""What the boards that are there give: none are, not all that is needed, or all of it."""
ThingKind: TypeAlias = Literal["turned", "bought", "hardware", "glue", "finish", "abrasive"]


@dataclass(frozen=True)
class Lumber:
    """Boards of one stock and one rough thickness."""

    stock: StockId
    name: str
    called: str
    """`4/4`, `27 mm`, `1x6`; empty where the trade has no name for it."""
    thickness: Length
    """Rough; of softwood as it measures dressed."""
    nominal: Nominal | None
    board_feet: Fraction
    """Of all blanks, exactly."""
    volume: Fraction
    """Of all blanks, in cubic mm, by the same thickness."""
    waste: Waste
    buy_board_feet: int
    """With the waste on it, rounded up once to a whole board foot."""
    buy_cubic_metres: Fraction
    """With the waste on it, rounded up to a thousandth."""
    longest: Length
    """A board must give this much, its ends trimmed off."""
    widest: Length
    """The widest blank."""
    lengths: tuple[Length, ...]
    """It is sold in these and they go into the car, the shortest first; none of them too short for every
    blank."""
    board_width: Length
    boards: int
    """About so many of the longest of these lengths and this width."""
    by: By
    must_match: tuple[str, ...]
    """The plan's matches that come out of it."""
    on_hand: Fraction
    """Board feet of boards that are there already; not taken off."""
    price: Price | None
    cost: Fraction | None
    """None where no price is said, or one that boards aren't counted by."""
    rack: Rack = "empty"
    laid_on: int | None = None
    """So many clear boards of the usual size in the layout; None where there is none on such."""


@dataclass(frozen=True)
class Sheets:
    stock: StockId
    name: str
    thickness: Length | None
    """As it measures, where that is known."""
    called: Length | None
    """What it is sold as, where that differs."""
    sheet: tuple[Length, Length] | None
    area: Fraction
    """Of all parts, in square mm."""
    waste: Waste
    count: int | None
    """None where the sheet's size isn't said."""
    by: By
    on_hand: int
    """Pieces that are there already; not taken off."""
    price: Price | None
    cost: Fraction | None
    rack: Rack = "empty"


@dataclass(frozen=True)
class Thing:
    """Anything else."""

    kind: ThingKind
    id: str
    name: str
    size: str
    count: int | None
    """None where it is not known, or not counted."""
    amount: Fraction | None
    """Litres of finish, grams of glue."""
    price: Price | None
    cost: Fraction | None
    note: str = ""


@dataclass(frozen=True)
class Purchases:
    lumber: tuple[Lumber, ...]
    sheets: tuple[Sheets, ...]
    things: tuple[Thing, ...]
    currency: str

    @cached_property
    def total(self) -> Fraction:
        """Of all that has a price."""
        return sum((each.cost for each in self.lines if each.cost is not None), Fraction(0))

    @cached_property
    def unpriced(self) -> tuple[str, ...]:
        """The names of what is not in the total."""
        return tuple(dict.fromkeys(each.name for each in self.lines if each.cost is None))

    @cached_property
    def lines(self) -> tuple[Lumber | Sheets | Thing, ...]:
        return (*self.lumber, *self.sheets, *self.things)
