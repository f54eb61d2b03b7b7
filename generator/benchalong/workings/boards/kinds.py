"""Which boards and sheets blanks can be cut from: those that lie there, or the size that is usually sold."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from benchalong.ground.lengths import INCH, Length
from benchalong.plan import rough
from benchalong.plan.model import Plan, Stock
from benchalong.trade import rough as usual
from benchalong.workings.boards.model import Spot

SLACK = INCH / 16
"""A board may measure this much less than it is called: sawn and dried, 4/4 is rarely a full inch."""


@dataclass(frozen=True)
class Kind:
    """Boards alike."""

    length: Length
    """Along the grain."""
    width: Length
    count: int | None
    """How many there are; None: as many as are bought."""
    keep_clear: tuple[Spot, ...] = ()
    price: Fraction | None = None
    """Of one."""
    note: str = ""
    trim: Length = Fraction(0)
    """Off each end."""

    @property
    def is_there(self) -> bool:
        return self.count is not None


def there(plan: Plan, stock: Stock, thickness: Length, *, is_first: bool) -> tuple[Kind, ...]:
    """The project's boards of a stock for blanks of a rough thickness. Where nobody measured how thick a
    board is, it goes to the first group."""
    own = (board for board in plan.boards if board.stock == stock.id)
    fit = (board for board in own if _is_thick_enough(board, thickness, is_first=is_first))
    return tuple(
        _kind(board, plan.shop.sawing.trim if stock.kind == "board" else Fraction(0)) for board in fit
    )


def _is_thick_enough(board: rough.Board, thickness: Length, *, is_first: bool) -> bool:
    if board.thickness is None:
        return is_first
    return thickness - SLACK <= board.thickness


def _kind(board: rough.Board, trim: Length) -> Kind:
    clear = [Spot(each.along, each.across, each.length, each.width) for each in board.defects]
    for wood in board.sapwood:
        y = Fraction(0) if wood.edge == "edge a" else board.width - wood.width
        clear.append(Spot(Fraction(0), y, board.length, wood.width))
    price = board.price.amount if board.price and board.price.per == "each" else None
    return Kind(board.length, board.width, board.count, tuple(clear), price, board.note, trim)


def sold(plan: Plan, stock: Stock) -> tuple[Kind, ...]:
    """What is usually sold: sheets of the stock's size; boards in the lengths it is sold in that go into the
    car, else as common practice has them."""
    if stock.kind == "sheet":
        return _sheets(stock)
    units, sawing = plan.units, plan.shop.sawing
    width = stock.board_width or usual.BOARD_WIDTH.of(units)
    lengths = stock.sold_in or (usual.BOARD_LENGTH.of(units),)
    in_car = [length for length in lengths if sawing.car is None or length <= sawing.car]
    return tuple(Kind(length, width, None, trim=sawing.trim) for length in in_car or lengths[:1])


def _sheets(stock: Stock) -> tuple[Kind, ...]:
    if stock.sheet is None:
        return ()
    one, two = stock.sheet
    along = stock.grain_along or max(one, two)
    return (Kind(along, two if along == one else one, None),)
