"""From how thick a board must a part come?

What surfacing leaves decides: 4/4 gives 3/4 in. What is long or restless needs a quarter more. Leaves that
are sawn from one board need their kerf and cleaning up, and are only sawn so where it saves wood.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil

from benchalong.ground.lengths import INCH, Length
from benchalong.plan.model import Part, Stock
from benchalong.trade import rough as usual
from benchalong.trade.boards import QUARTERS, SAWN, from_leaf
from benchalong.trade.sizes import TradeSize, in_millimetres, in_quarters
from benchalong.workings.blanks.model import Reason
from benchalong.workings.blanks.reckoning import NOTHING, Reckoned


@dataclass(frozen=True)
class Rough:
    size: TradeSize
    leaves: int = 1
    why: tuple[Reason, ...] = ()
    short: Length = NOTHING
    """How much the thickness that the stock is bought in falls short of what common practice asks."""
    needs: Length = NOTHING
    """What common practice asks."""


def rough_thickness(
    reckoned: Reckoned, part: Part, stock: Stock, *, length: Length, pieces: int, must_match: bool
) -> Rough:
    """For `pieces` that each take one blank of that length, or share one as leaves."""
    size = reckoned.sizes[stock.id]
    whole = _whole(reckoned, part, stock, length)
    if part.resaw == 1 or (pieces == 1 and not must_match) or (size and size.is_dressed):
        return whole
    leaves = min(part.resaw, pieces) if pieces > 1 else part.resaw
    sawn = _sawn(reckoned, part, stock, leaves)
    if sawn is None:
        return whole
    saves = ceil(pieces / leaves) * sawn.size.thickness < pieces * whole.size.thickness
    return sawn if saves or must_match else _not_sawn(whole, sawn)


def _whole(reckoned: Reckoned, part: Part, stock: Stock, length: Length) -> Rough:
    size = reckoned.sizes[stock.id]
    if size is not None and size.is_dressed:
        return Rough(size, short=max(part.thickness - size.thickness, NOTHING), needs=part.thickness)
    if size is not None and size.quarters is None and size.thickness == part.thickness:
        return Rough(size, why=(Reason("bought planed to its thickness"),), needs=part.thickness)
    more = reckoned.allowance(stock, width=part.width).thickness or NOTHING
    needs, why = part.thickness + more, _thin(reckoned, part)
    if stock.is_restless or reckoned.is_long(length):
        needs += usual.ONE_QUARTER.of(reckoned.units)
        why = (*why, _thicker(reckoned, stock))
    if size is not None and size.thickness >= needs:
        return Rough(size, why=why, needs=needs)
    found = next((each for each in sizes(reckoned.units) if each.thickness >= needs), None)
    if size is None:
        return Rough(found or TradeSize("", reckoned.up(needs)), why=why, needs=needs)
    short = needs - size.thickness
    if part.thickness < size.thickness:
        return Rough(size, why=_thin(reckoned, part), short=short, needs=needs)
    return Rough(found or TradeSize("", reckoned.up(needs)), why=why, short=short, needs=needs)


def _thin(reckoned: Reckoned, part: Part) -> tuple[Reason, ...]:
    least = reckoned.sawing.planer.thinnest
    words = "the last of it on a carrier board or by hand: it ends up under {}"
    return (Reason(words, (least,)),) if part.thickness < least else ()


def _thicker(reckoned: Reckoned, stock: Stock) -> Reason:
    if stock.is_restless:
        return Reason("a quarter thicker, since this stock moves when it is cut")
    return Reason("a quarter thicker, since it is longer than {}", (usual.LONG.of(reckoned.units),))


def _sawn(reckoned: Reckoned, part: Part, stock: Stock, leaves: int) -> Rough | None:
    """From the thinnest board that gives so many leaves; the one it is bought in before others."""
    size, sawing = reckoned.sizes[stock.id], reckoned.sawing
    for each in ([size] if size else []) + list(sizes(reckoned.units)):
        if thickest_leaf(reckoned, each, leaves) >= part.thickness:
            words = "sawn into {} leaves face to back, kerf {{}}, and {{}} off each face to clean up"
            why = Reason(words.format(leaves), (sawing.resaw_kerf, sawing.clean_up))
            why_thin = _thin(reckoned, part)
            short = each.thickness - size.thickness if size else NOTHING
            return Rough(each, leaves, (why, *why_thin), max(short, NOTHING), each.thickness)
    return None


def thickest_leaf(reckoned: Reckoned, size: TradeSize, leaves: int) -> Length:
    """What a leaf ends up as. Where nobody said what cleaning up takes, two from a quarter-sized board are no
    thicker than common practice has them."""
    sawing = reckoned.sawing
    left = from_leaf(size.thickness, leaves, sawing.resaw_kerf, sawing.clean_up)
    known = usual.RESAWN_IN_TWO.get(size.quarters) if size.quarters else None
    if leaves == 2 and known is not None and "resaw.clean_up" in sawing.assumed:
        return min(left, known * INCH)
    return left


def _not_sawn(whole: Rough, sawn: Rough) -> Rough:
    words = f"not resawn: {sawn.leaves} from {sawn.size.called} take as much wood"
    return Rough(whole.size, 1, (*whole.why, Reason(words)), whole.short, whole.needs)


def sizes(units: str) -> Iterator[TradeSize]:
    """What boards are sold in, the thinnest first."""
    return map(in_quarters, QUARTERS) if units == "inch" else map(in_millimetres, SAWN)
