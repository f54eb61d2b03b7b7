"""How many strips make up a part's width: where the author says so, and where boards are too narrow.

A strip fits the boards and the jointer, with room to true both its edges.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

from benchalong.ground.lengths import Length
from benchalong.plan.model import Part, Stock
from benchalong.plan.rough import Strips
from benchalong.workings.blanks.model import Reason
from benchalong.workings.blanks.reckoning import NOTHING, Reckoned


@dataclass(frozen=True)
class Strip:
    count: int
    width: Length
    """Of one, without allowance for its edges; with its share of what the whole is left wider."""
    why: tuple[Reason, ...] = ()


def strips_of(reckoned: Reckoned, part: Part, stock: Stock, width: Length, *, leaves: int) -> Strip:
    """One strip for a part that isn't glued up. Of leaves that are opened like a book, all of one board's."""
    said = part.strips or Strips(is_glued=False)
    board = reckoned.board_width(stock)
    wider = reckoned.allowance(stock, width=width).width or NOTHING
    is_too_wide = width + wider > board
    if not said.is_glued and (part.strips is not None or not is_too_wide):
        return Strip(1, width)
    whole = width + (reckoned.allowance(stock, width=width, is_glued=True).width or NOTHING)
    count = max(said.count or 2, ceil(whole / _widest(reckoned, stock, said)))
    count += -count % leaves
    return Strip(count, whole / count, (_why(count, stock, reckoned, is_said=said.is_glued),))


def _widest(reckoned: Reckoned, stock: Stock, said: Strips) -> Length:
    """Of a strip, without its allowance. At least half of what there is, however large the allowance."""
    most = min(reckoned.board_width(stock), reckoned.sawing.jointer.width)
    wider = reckoned.allowance(stock, width=most).width or NOTHING
    left = max(most - wider - reckoned.restless(stock), most / 2)
    return min(left, said.most or left)


def _why(count: int, stock: Stock, reckoned: Reckoned, *, is_said: bool) -> Reason:
    words = f"{count} strips, glued side by side"
    if is_said:
        return Reason(words)
    return Reason(f"{words}: wider than boards of {{}}", (reckoned.board_width(stock),))
