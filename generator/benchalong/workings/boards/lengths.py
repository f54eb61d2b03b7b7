"""The lengths boards are bought in: what is sold, as far as a car carries it.

What is sold longer than the car takes is crosscut at the yard. Where a part itself is longer than the car,
the car is no measure any more: the board is brought.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from benchalong.ground.lengths import FOOT, Length
from benchalong.plan.model import Stock
from benchalong.trade import rough as usual
from benchalong.workings.blanks.reckoning import Reckoned


@dataclass(frozen=True)
class Sold:
    length: Length
    """As it comes home."""
    cut_from: Length | None = None
    """The length it is sold in, where that is longer."""


def lengths_sold(reckoned: Reckoned, stock: Stock, takes: Sequence[Length]) -> tuple[Sold, ...]:
    """The shortest first; each gives at least one of the lengths that are asked for, and the longest gives
    them all, where such a length is sold."""
    longest, car = max(takes), reckoned.sawing.car
    if car is not None and longest > car:
        car = None
    said = sorted(stock.sold_in) or _usual(reckoned, longest)
    found = [Sold(length) for length in said if car is None or length <= car]
    if car is not None and not any(each.length >= longest for each in found):
        longer = next((length for length in said if length > car), None)
        found += [Sold(car, longer)] if longer is not None else []
    if reckoned.sawing.car is not None and car is None:
        found = _to_be_brought(found, longest, reckoned.sawing.car)
    useful = tuple(each for each in found if each.length >= min(takes))
    return useful or tuple(found[-1:])


def _usual(reckoned: Reckoned, longest: Length) -> list[Length]:
    """What common practice has, and where that is too short the next whole foot or 300 mm."""
    length = usual.BOARD_LENGTH.of(reckoned.units)
    if longest <= length:
        return [length]
    step = FOOT if reckoned.units == "inch" else Length(300)
    return [length, step * ceil(longest / step)]


def _to_be_brought(found: list[Sold], longest: Length, car: Length) -> list[Sold]:
    """No board is longer than it has to be once it doesn't go into the car."""
    enough = next((each.length for each in found if each.length >= longest), None)
    return [each for each in found if each.length <= car or enough is None or each.length == enough]
