"""Which boards and sheets blanks can be cut from: those that lie there, or what is usually sold."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from benchalong.ground.lengths import Length
from benchalong.plan import rough
from benchalong.plan.model import Plan, Stock
from benchalong.trade.rough import LESS_THAN_CALLED
from benchalong.workings.blanks.model import Blank, Matched
from benchalong.workings.blanks.reckoning import Reckoned
from benchalong.workings.boards.lengths import lengths_sold
from benchalong.workings.boards.model import Spot


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
    thickness: Length | None = None
    """As it measures; None where nobody measured, or where it is bought."""
    cut_from: Length | None = None
    """The length it is sold in, where it is crosscut to go into the car."""

    @property
    def is_there(self) -> bool:
        return self.count is not None


def there(plan: Plan, stock: Stock) -> tuple[Kind, ...]:
    """The project's boards or sheets of a stock."""
    trim = plan.shop.sawing.trim if stock.kind == "board" else Fraction(0)
    return tuple(_kind(board, trim) for board in plan.boards if board.stock == stock.id)


def is_thick_enough(kind: Kind, thickness: Length, *, is_first: bool) -> bool:
    """For blanks of that rough thickness. Where nobody measured how thick a board is, it goes to the first
    group."""
    if kind.thickness is None:
        return is_first
    return thickness - LESS_THAN_CALLED <= kind.thickness


def _kind(board: rough.Board, trim: Length) -> Kind:
    clear = [Spot(each.along, each.across, each.length, each.width) for each in board.defects]
    for wood in board.sapwood:
        y = Fraction(0) if wood.edge == "edge a" else board.width - wood.width
        clear.append(Spot(Fraction(0), y, board.length, wood.width))
    price = board.price.amount if board.price and board.price.per == "each" else None
    return Kind(
        board.length, board.width, board.count, tuple(clear), price, board.note, trim, board.thickness
    )


def sold(
    reckoned: Reckoned, stock: Stock, blanks: Sequence[Blank], matched: Sequence[Matched]
) -> tuple[Kind, ...]:
    """What can be bought for these: sheets of the stock's size; boards in lengths that go into the car, and
    that hold what lies end to end."""
    if stock.kind == "sheet":
        return _sheets(stock)
    width, trim = reckoned.board_width(stock), reckoned.sawing.trim
    price = stock.price.amount if stock.price and stock.price.per == "each" else None
    takes = [blank.length for blank in blanks if not blank.match]
    takes += [block(reckoned.sawing.kerf, blanks, each)[0] for each in matched]
    takes = takes or [blank.length for blank in blanks]
    return tuple(
        Kind(each.length, width, None, price=price, trim=trim, cut_from=each.cut_from)
        for each in lengths_sold(reckoned, stock, [length + 2 * trim for length in takes])
    )


def block(kerf: Length, blanks: Sequence[Blank], matched: Matched) -> tuple[Length, Length]:
    """Long and wide, what matches in one piece. What may lie either way lies side by side."""
    by_id = {blank.id: blank for blank in blanks}
    members = [by_id[name] for name in matched.blanks]
    kerfs = (len(members) - 1) * kerf
    if matched.parted == "across":
        return sum((each.length for each in members), kerfs), max(each.width for each in members)
    return max(each.length for each in members), sum((each.width for each in members), kerfs)


def _sheets(stock: Stock) -> tuple[Kind, ...]:
    if stock.sheet is None:
        return ()
    one, two = stock.sheet
    along = stock.grain_along or max(one, two)
    return (Kind(along, two if along == one else one, None),)
