"""Boards to buy: board feet and cubic metres out of rough sizes, in lengths that go into the car."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from benchalong.ground.lengths import FOOT, INCH, METRE, Length
from benchalong.plan.model import Plan, Price, Stock
from benchalong.trade.boards import CUBIC_METRE, board_feet, strips_from
from benchalong.trade.lumber import Nominal
from benchalong.trade.waste import Waste, waste
from benchalong.workings.blanks.model import Blank, Blanks
from benchalong.workings.blanks.reckoning import Reckoned
from benchalong.workings.purchases.model import Lumber

THOUSANDTH = Fraction(1, 1000)


def lumber_of(reckoned: Reckoned, blanks: Blanks) -> Iterator[Lumber]:
    """By stock in the order of the plan, the thickest first."""
    for stock in reckoned.plan.stock.values():
        if stock.kind == "board":
            for some in blanks.by_thickness(stock.id):
                yield _lumber(reckoned, stock, some)


def _lumber(reckoned: Reckoned, stock: Stock, blanks: Sequence[Blank]) -> Lumber:
    plan, first = reckoned.plan, blanks[0]
    size = reckoned.sizes[stock.id]
    nominal = size.nominal if size and size.thickness == first.thickness else None
    wasted = waste(
        kind="board",
        species=stock.species or stock.name,
        sawn=stock.sawn,
        grade=stock.grade,
        said=stock.waste,
    )
    feet = sum(
        (each.count * board_feet(each.thickness, each.width, each.length) for each in blanks), Fraction(0)
    )
    volume = sum((each.count * each.thickness * each.width * each.length for each in blanks), Fraction(0))
    longest = max(each.length for each in blanks) + 2 * reckoned.sawing.trim
    lengths = lengths_sold(reckoned, stock, longest)
    wide = reckoned.board_width(stock)
    boards = _boards(reckoned, blanks, lengths[-1], wide, nominal, wasted, volume)
    buy = _to_buy(feet, volume, wasted, nominal, boards, lengths[-1])
    cost = _cost(stock.price, buy, boards, lengths[-1], wide)
    return Lumber(
        stock=stock.id,
        name=stock.name,
        called=first.called,
        thickness=first.thickness,
        nominal=nominal,
        board_feet=feet,
        volume=volume,
        waste=wasted,
        buy_board_feet=buy.board_feet,
        buy_cubic_metres=buy.cubic_metres,
        longest=longest,
        widest=max(each.width for each in blanks),
        lengths=lengths,
        board_width=wide,
        boards=boards,
        by="area",
        must_match=tuple(dict.fromkeys(_matches(plan, blanks))),
        on_hand=_on_hand(plan, stock, first),
        price=stock.price,
        cost=cost,
    )


def lengths_sold(reckoned: Reckoned, stock: Stock, longest: Length) -> tuple[Length, ...]:
    """Those that go into the car and give the longest blank; the longest there is where none does."""
    most = reckoned.board_length(stock)
    fitting = [length for length in stock.sold_in if longest <= length <= most]
    return tuple(fitting) or (max(most, longest),)


@dataclass(frozen=True)
class _Buy:
    board_feet: int
    cubic_metres: Fraction


def _to_buy(
    feet: Fraction, volume: Fraction, wasted: Waste, nominal: Nominal | None, boards: int, length: Length
) -> _Buy:
    """Softwood by whole boards, since each has its size; the rest by what it measures."""
    if nominal is not None:
        whole = boards * nominal.thickness * nominal.width * length
        return _Buy(ceil(boards * nominal.board_feet(length)), _up(whole / CUBIC_METRE))
    more = 1 + wasted.added
    return _Buy(ceil(feet * more), _up(volume * more / CUBIC_METRE))


def _up(cubic_metres: Fraction) -> Fraction:
    return ceil(cubic_metres / THOUSANDTH) * THOUSANDTH


def _boards(
    reckoned: Reckoned,
    blanks: Sequence[Blank],
    length: Length,
    width: Length,
    nominal: Nominal | None,
    wasted: Waste,
    volume: Fraction,
) -> int:
    """About so many. Softwood by the length its blanks take up; what is random in width by its area."""
    if nominal is None:
        area = volume / blanks[0].thickness
        return ceil(area * (1 + wasted.added) / (length * width))
    kerf = reckoned.sawing.kerf
    run = Fraction(0)
    for blank in blanks:
        beside = max(strips_from(width, blank.width, kerf), 1)
        run += ceil(Fraction(blank.count, beside)) * (blank.length + kerf)
    return ceil(run * (1 + wasted.added) / (length - 2 * reckoned.sawing.trim))


def _cost(price: Price | None, buy: _Buy, boards: int, length: Length, width: Length) -> Fraction | None:
    if price is None:
        return None
    counted: dict[str, Fraction] = {
        "board foot": Fraction(buy.board_feet),
        "cubic metre": buy.cubic_metres,
        "each": Fraction(boards),
        "foot": boards * length / FOOT,
        "metre": boards * length / METRE,
        "square metre": boards * length * width / METRE**2,
        "square foot": boards * length * width / FOOT**2,
    }
    number = counted.get(price.per)
    return None if number is None else price.amount * number


def _matches(plan: Plan, blanks: Sequence[Blank]) -> Iterator[str]:
    parts = {part for blank in blanks for part in blank.parts}
    return (match.id for match in plan.matches.values() if parts.intersection(match.parts))


def _on_hand(plan: Plan, stock: Stock, blank: Blank) -> Fraction:
    """Board feet that are there, of boards at least as thick."""
    found = Fraction(0)
    for board in plan.boards:
        thick = board.thickness or blank.thickness
        if board.stock == stock.id and thick >= min(blank.thickness, _near(blank)):
            found += board.count * board_feet(blank.thickness, board.width, board.length)
    return found


def _near(blank: Blank) -> Length:
    """A sixteenth under its name still passes for it."""
    return blank.thickness - INCH / 16
