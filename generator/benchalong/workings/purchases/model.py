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
"""What a number of sheets was found by: their area alone, or where each part lies."""
Rack: TypeAlias = Literal["empty", "short", "suffices"]
"""What the boards that are there give: nothing, not all that is needed, or all of it."""
ThingKind: TypeAlias = Literal["turned", "bought", "hardware", "glue", "finish", "abrasive"]


@dataclass(frozen=True)
class ToBuy:
    """Boards alike that are to be bought."""

    length: Length
    """As they are sold."""
    width: Length
    count: int
    cut_to: Length | None = None
    """What they are crosscut to at the yard, so that they go into the car."""


@dataclass(frozen=True)
class Lumber:
    """Boards of one stock and one rough thickness: what is needed, what is there, what is to be bought."""

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
    there_board_feet: Fraction
    """Of these the blanks that come out of boards that are there."""
    there_volume: Fraction
    there_boards: int
    """So many boards that are there are sawn for it."""
    waste: Waste
    anew_board_feet: int
    """What it comes to with its waste for who has none of it; rounded up as the rest is."""
    anew_cubic_metres: Fraction
    to_buy: tuple[ToBuy, ...]
    """Boards that hold the rest, the longest first."""
    for_waste: int
    """So many of them are there for the waste alone."""
    buy_board_feet: int
    """Of the rest with the waste on it, or of the boards that hold it where that is more; rounded up once to
    a whole board foot."""
    buy_cubic_metres: Fraction
    """The same, rounded up to a thousandth."""
    longest: Length
    """A board must give this much of what is to be bought, its ends trimmed off; nothing where none is."""
    widest: Length
    """The widest blank of it."""
    must_match: tuple[str, ...]
    """The plan's matches that come out of what is to be bought."""
    price: Price | None
    cost: Fraction | None
    """Of what is to be bought. None where no price is said, or one that boards aren't counted by."""

    @property
    def boards(self) -> int:
        """About so many are to be bought."""
        return sum(each.count for each in self.to_buy)

    @property
    def is_there(self) -> bool:
        """Whether nothing is to be bought."""
        return not self.to_buy

    @property
    def rack(self) -> Rack:
        return _rack(is_there=self.is_there, used=self.there_boards)


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
    there_area: Fraction
    """Of the parts that come out of pieces that are there."""
    there_pieces: int
    """So many sheets or pieces that are there are sawn for it."""
    waste: Waste
    count: int | None
    """To buy. None where the sheet's size isn't said."""
    by: By
    price: Price | None
    cost: Fraction | None
    """Of what is to be bought."""

    @property
    def is_there(self) -> bool:
        return self.count == 0

    @property
    def rack(self) -> Rack:
        return _rack(is_there=self.is_there, used=self.there_pieces)


def _rack(*, is_there: bool, used: int) -> Rack:
    if is_there:
        return "suffices"
    return "short" if used else "empty"


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
    """Of what is to be bought."""
    note: str = ""
    there: int = 0
    """So many are there already."""

    @property
    def to_buy(self) -> int | None:
        """None where it is not known how many it takes."""
        return None if self.count is None else max(self.count - self.there, 0)

    @property
    def is_there(self) -> bool:
        return self.to_buy == 0


Line: TypeAlias = Lumber | Sheets | Thing


@dataclass(frozen=True)
class Purchases:
    lumber: tuple[Lumber, ...]
    sheets: tuple[Sheets, ...]
    things: tuple[Thing, ...]
    currency: str

    @cached_property
    def total(self) -> Fraction:
        """Of all that is to be bought and has a price."""
        return sum((each.cost for each in self.lines if each.cost is not None), Fraction(0))

    @cached_property
    def unpriced(self) -> tuple[str, ...]:
        """The names of what is not in the total."""
        return tuple(dict.fromkeys(each.name for each in self.lines if each.cost is None))

    @cached_property
    def lines(self) -> tuple[Line, ...]:
        return (*self.lumber, *self.sheets, *self.things)
