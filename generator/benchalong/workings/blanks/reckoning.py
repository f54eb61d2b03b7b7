"""What one plan's blanks are reckoned with: allowances, machines, boards; the author's before the trade's."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from math import ceil

from benchalong.ground.lengths import Length
from benchalong.plan.model import Part, Plan, Stock
from benchalong.plan.rough import Allowance, Sawing
from benchalong.trade import rough as usual
from benchalong.trade.sizes import TradeSize, trade_size

NOTHING = Length(0)


@dataclass(frozen=True)
class Reckoned:
    plan: Plan

    @property
    def units(self) -> str:
        return self.plan.units

    @property
    def sawing(self) -> Sawing:
        return self.plan.shop.sawing

    @cached_property
    def sizes(self) -> dict[str, TradeSize | None]:
        """What each stock is bought as; None where it doesn't say, or in no words of the trade."""
        return {stock.id: trade_size(stock.buy) for stock in self.plan.stock.values()}

    def up(self, length: Length) -> Length:
        """Rounded up to what is chalked on a board."""
        step = usual.ROUNDED_UP.of(self.units)
        return step * ceil(length / step)

    def allowance(self, stock: Stock, *, width: Length, is_glued: bool = False) -> Allowance:
        """With nothing left open: the stock's own, that of its kind, that for all, the trade's."""
        own = self.sawing.allowances
        kind = own.get("glued_up" if is_glued else stock.kind, Allowance())
        said = stock.allowance.over(kind)
        if stock.kind != "sheet":
            said = said.over(own.get("all", Allowance()))
        return said.over(self._usual(stock, width, is_glued))

    def _usual(self, stock: Stock, width: Length, is_glued: bool) -> Allowance:
        units = self.units
        if stock.kind == "sheet":
            return Allowance(NOTHING, NOTHING, NOTHING)
        thicker = usual.THICKER.of(units) if stock.kind == "board" else NOTHING
        if is_glued:
            return Allowance(usual.GLUED_LONGER.of(units), usual.GLUED_WIDER.of(units), thicker)
        is_narrow = width < usual.NARROW.of(units)
        wider = (usual.WIDER_NARROW if is_narrow else usual.WIDER).of(units)
        if stock.kind != "board":
            wider = NOTHING
        return Allowance(usual.LONGER.of(units), wider, thicker)

    def restless(self, stock: Stock) -> Length:
        """How much wider what is restless is split."""
        return usual.RESTLESS.of(self.units) if stock.is_restless else NOTHING

    def board_width(self, stock: Stock) -> Length:
        """How wide its boards are."""
        size = self.sizes[stock.id]
        if size is not None and size.nominal is not None:
            return size.nominal.width
        return stock.board_width or usual.BOARD_WIDTH.of(self.units)

    def board_length(self, stock: Stock) -> Length:
        """The longest it is sold in, as far as the car takes it."""
        longest = max(stock.sold_in, default=usual.BOARD_LENGTH.of(self.units))
        return min(longest, self.sawing.car or longest)

    def usable_length(self, stock: Stock) -> Length:
        """The same with its ends trimmed."""
        return self.board_length(stock) - 2 * self.sawing.trim

    @property
    def easy_length(self) -> Length:
        """Up to which a board is easily kept straight."""
        return usual.LONG.of(self.units)

    def is_long(self, length: Length) -> bool:
        return length > self.easy_length

    def first_size(self, part: Part) -> tuple[Length, Length]:
        """(length, width) that it is cut to first."""
        fitted = self.plan.fitted.get(part.id)
        return (fitted and fitted.first_size(part)) or (part.length, part.width)
