"""Boards to buy: what the boards that are there don't give, in board feet and cubic metres.

How many are bought follows from two things: the boards that the layout saws the rest from, and what the rest
comes to with the usual waste on it. The larger of the two is bought.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil, floor

from benchalong.ground.lengths import FOOT, METRE, Length
from benchalong.plan.model import Plan, Price, Stock
from benchalong.trade.boards import CUBIC_METRE, board_feet
from benchalong.trade.lumber import Nominal
from benchalong.trade.waste import Waste, waste
from benchalong.workings.blanks.model import Blank, Blanks, Matched
from benchalong.workings.blanks.reckoning import NOTHING, Reckoned
from benchalong.workings.boards.kinds import block
from benchalong.workings.boards.model import Boards, Group
from benchalong.workings.purchases.model import Lumber, ToBuy
from benchalong.workings.purchases.rack import missing, not_laid

THOUSANDTH = Fraction(1, 1000)


def lumber_of(reckoned: Reckoned, blanks: Blanks, boards: Boards) -> Iterator[Lumber]:
    """By stock in the order of the plan, the thickest first."""
    groups = {(group.stock, group.thickness, group.called): group for group in boards.groups}
    for stock in reckoned.plan.stock.values():
        if stock.kind == "board":
            for some in blanks.by_thickness(stock.id):
                yield _lumber(
                    reckoned, stock, some, groups[stock.id, some[0].thickness, some[0].called], blanks.matched
                )


def _lumber(
    reckoned: Reckoned, stock: Stock, blanks: Sequence[Blank], group: Group, matched: Sequence[Matched]
) -> Lumber:
    first, size = blanks[0], reckoned.sizes[stock.id]
    nominal = size.nominal if size and size.thickness == first.thickness else None
    wasted = waste(
        kind="board",
        species=stock.species or stock.name,
        sawn=stock.sawn,
        grade=stock.grade,
        said=stock.waste,
    )
    left = missing(blanks, group)
    to_buy, extra = _with_waste(_to_buy(reckoned, stock, left, group, matched), left, wasted)
    buy = _Buy(to_buy, extra, left, wasted, first.thickness, nominal)
    return Lumber(
        stock=stock.id,
        name=stock.name,
        called=first.called,
        thickness=first.thickness,
        nominal=nominal,
        board_feet=_feet(blanks),
        volume=_volume(blanks),
        there_board_feet=_feet(blanks) - _feet(left),
        there_volume=_volume(blanks) - _volume(left),
        there_boards=len(group.used),
        waste=wasted,
        anew_board_feet=ceil(_feet(blanks) * (1 + wasted.added)),
        anew_cubic_metres=_up(_volume(blanks) * (1 + wasted.added)),
        to_buy=to_buy,
        for_waste=extra,
        buy_board_feet=buy.board_feet,
        buy_cubic_metres=buy.cubic_metres,
        longest=max((each.length + 2 * reckoned.sawing.trim for each in left), default=NOTHING),
        widest=max((each.width for each in left), default=NOTHING),
        must_match=tuple(dict.fromkeys(_matches(reckoned.plan, left))),
        price=stock.price,
        cost=buy.cost(stock.price),
    )


def _feet(blanks: Sequence[Blank]) -> Fraction:
    return sum((each.count * board_feet(each.thickness, each.width, each.length) for each in blanks), NOTHING)


def _volume(blanks: Sequence[Blank]) -> Fraction:
    return sum((each.count * each.thickness * each.width * each.length for each in blanks), NOTHING)


# boards


def _to_buy(
    reckoned: Reckoned, stock: Stock, left: Sequence[Blank], group: Group, matched: Sequence[Matched]
) -> tuple[ToBuy, ...]:
    """Those of the layout; and for a blank that no board as sold is large enough for, one of its own."""
    kinds = Counter((board.length, board.width, board.cut_from) for board in group.bought)
    found = [_bought(*kind, number) for kind, number in kinds.items()]
    wide, trim = reckoned.board_width(stock), reckoned.sawing.trim
    for length, width, number in _on_none(reckoned, not_laid(left, group), matched):
        found.append(ToBuy(length + 2 * trim, max(wide, width), number))
    return tuple(sorted(found, key=lambda each: (-each.length, -each.width)))


def _on_none(
    reckoned: Reckoned, rest: Sequence[Blank], matched: Sequence[Matched]
) -> Iterator[tuple[Length, Length, int]]:
    """Length, width and number of what no board as sold is large enough for; what matches in one piece."""
    counts = {each.id: each.count for each in rest}
    for each in matched:
        if set(each.blanks) <= counts.keys():
            counts.update({name: counts[name] - each.blanks.count(name) for name in set(each.blanks)})
            yield (*block(reckoned.sawing.kerf, rest, each), 1)
    yield from ((each.length, each.width, counts[each.id]) for each in rest if counts[each.id] > 0)


def _bought(length: Length, width: Length, cut_from: Length | None, number: int) -> ToBuy:
    if cut_from is None:
        return ToBuy(length, width, number)
    return ToBuy(cut_from, width, ceil(Fraction(number, floor(cut_from / length))), length)


def _with_waste(
    boards: tuple[ToBuy, ...], left: Sequence[Blank], wasted: Waste
) -> tuple[tuple[ToBuy, ...], int]:
    """With more of the longest, where the usual waste asks for them; and how many more."""
    if not boards:
        return (), 0
    wanted = sum((each.count * each.length * each.width for each in left), NOTHING) * (1 + wasted.added)
    have = sum((each.count * each.length * each.width for each in boards), NOTHING)
    longest = boards[0]
    extra = max(ceil((wanted - have) / (longest.length * longest.width)), 0)
    return (replace(longest, count=longest.count + extra), *boards[1:]), extra


@dataclass(frozen=True)
class _Buy:
    """Softwood by whole boards, since each has its size; the rest by what it measures."""

    boards: tuple[ToBuy, ...]
    extra: int
    left: Sequence[Blank]
    wasted: Waste
    thickness: Length
    nominal: Nominal | None

    @property
    def board_feet(self) -> int:
        if self.nominal is not None:
            return ceil(sum(each.count * self.nominal.board_feet(each.length) for each in self.boards))
        laid = sum((number * board_feet(self.thickness, each.width, each.length)
                    for each, number in self._laid()), NOTHING)  # fmt: skip
        return ceil(max(laid, _feet(self.left) * (1 + self.wasted.added)))

    @property
    def cubic_metres(self) -> Fraction:
        if self.nominal is not None:
            return _up(
                sum((each.count * each.length * each.width for each in self.boards), NOTHING) * self.thickness
            )
        laid = sum((number * each.width * each.length for each, number in self._laid()), NOTHING)
        return _up(max(laid * self.thickness, _volume(self.left) * (1 + self.wasted.added)))

    def _laid(self) -> Iterator[tuple[ToBuy, int]]:
        """Without those for the waste alone."""
        return ((each, each.count - (0 if index else self.extra)) for index, each in enumerate(self.boards))

    def cost(self, price: Price | None) -> Fraction | None:
        if not self.boards:
            return NOTHING
        if price is None:
            return None
        length = sum((each.count * each.length for each in self.boards), NOTHING)
        area = sum((each.count * each.length * each.width for each in self.boards), NOTHING)
        counted: dict[str, Fraction] = {
            "board foot": Fraction(self.board_feet),
            "cubic metre": self.cubic_metres,
            "each": Fraction(sum(each.count for each in self.boards)),
            "foot": length / FOOT,
            "metre": length / METRE,
            "square metre": area / METRE**2,
            "square foot": area / FOOT**2,
        }
        number = counted.get(price.per)
        return None if number is None else price.amount * number


def _up(volume: Fraction) -> Fraction:
    return ceil(volume / CUBIC_METRE / THOUSANDTH) * THOUSANDTH


def _matches(plan: Plan, blanks: Sequence[Blank]) -> Iterator[str]:
    parts = {part for blank in blanks for part in blank.parts}
    return (match.id for match in plan.matches.values() if parts.intersection(match.parts))
