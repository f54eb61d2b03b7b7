"""Each part's copies, spares among them, as pieces that can be cut out: in strips where it is glued up,
several in one where they are resawn.

A stack is what is cut out together and sawn apart face to back; of what is not resawn it holds one piece.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from benchalong.ground.lengths import Length
from benchalong.plan.model import Part, PartId, Stock
from benchalong.plan.rough import TestPiece
from benchalong.trade.sizes import TradeSize
from benchalong.workings.blanks.model import Grain, Reason
from benchalong.workings.blanks.reckoning import NOTHING, Reckoned
from benchalong.workings.blanks.strips import strips_of
from benchalong.workings.blanks.thickness import Rough, rough_thickness

SPARE = "*"
"""In place of the mark of a copy that the piece doesn't need."""


@dataclass(frozen=True)
class Piece:
    """One copy, or one strip of it."""

    part: PartId
    """Empty for a test piece."""
    mark: str
    """Empty where copies have none."""
    strips: int = 1
    test_piece: str = ""


@dataclass(frozen=True)
class Stack:
    stock: Stock
    rough: Rough
    length: Length
    """As the piece is cut to first, without allowance."""
    width: Length
    longer: Length
    """The allowance on it."""
    wider: Length
    pieces: tuple[Piece, ...]
    why: tuple[Reason, ...] = ()
    grain: Grain = "along"

    @property
    def is_board(self) -> bool:
        return self.stock.kind == "board"


def stacks_of(reckoned: Reckoned, part: Part, book: Sequence[str]) -> list[Stack]:
    """Every stack of one part; `book` holds the marks that are opened like a book, in their order."""
    copies = copies_of(reckoned, part, book)
    if reckoned.plan.stock[part.stock].kind != "board":
        return [_plain(reckoned, part, Piece(part.id, mark)) for mark in copies]
    return list(_sawn(reckoned, part, copies, is_book=bool(book)))


def copies_of(reckoned: Reckoned, part: Part, first: Sequence[str] = ()) -> list[str]:
    """The marks of all copies, spares last; those of a match lie beside each other, in its order."""
    unmarked = [""] * (part.count - len(part.marks))
    rest = [mark for mark in part.marks if mark not in first]
    return [*first, *rest, *unmarked, *[SPARE] * reckoned.plan.spares.get(part.id, 0)]


def _sawn(reckoned: Reckoned, part: Part, copies: list[str], *, is_book: bool) -> Iterator[Stack]:
    stock = reckoned.plan.stock[part.stock]
    length, width = reckoned.first_size(part)
    strip = strips_of(reckoned, part, stock, width, leaves=part.resaw if is_book else 1)
    pieces = [Piece(part.id, mark, strip.count) for mark in copies for _ in range(strip.count)]
    number = len(pieces) + _others(reckoned, part)
    rough = rough_thickness(reckoned, part, stock, length=length, pieces=number, must_match=is_book)
    more = reckoned.allowance(stock, width=width, is_glued=strip.count > 1)
    wider = (reckoned.allowance(stock, width=strip.width).width or NOTHING) + reckoned.restless(stock)
    for some in (pieces[at : at + rough.leaves] for at in range(0, len(pieces), rough.leaves)):
        why = (*strip.why, *rough.why)
        yield Stack(stock, rough, length, strip.width, more.length or NOTHING, wider, tuple(some), why)


def _others(reckoned: Reckoned, part: Part) -> int:
    """Copies of other parts that may be leaves of the same board, since they stay in one piece with it."""
    leader = part.rough_with or part.id
    return sum(
        other.count
        for other in reckoned.plan.parts.values()
        if other.id != part.id
        and leader in (other.id, other.rough_with)
        and (other.thickness, other.resaw) == (part.thickness, part.resaw)
    )


def _plain(reckoned: Reckoned, part: Part, piece: Piece) -> Stack:
    """Of a sheet, or turned: as thick as it is bought."""
    stock = reckoned.plan.stock[part.stock]
    length, width = reckoned.first_size(part)
    more = reckoned.allowance(stock, width=width)
    rough = Rough(reckoned.sizes[stock.id] or TradeSize("", part.thickness))
    grain: Grain = "free" if stock.kind == "sheet" and stock.grain_along is None else "along"
    wider, longer = more.width or NOTHING, more.length or NOTHING
    return Stack(stock, rough, length, width, longer, wider, (piece,), grain=grain)


def test_stacks(reckoned: Reckoned, piece: TestPiece) -> list[Stack]:
    """Every test piece of one kind, as if it were a part."""
    like = Part("", piece.name, piece.stock, piece.thickness, piece.width, piece.length, piece.count, ())
    named = Piece("", "", test_piece=piece.id)
    stock = reckoned.plan.stock[piece.stock]
    if stock.kind != "board":
        return [_plain(reckoned, like, named)] * piece.count
    rough = rough_thickness(reckoned, like, stock, length=piece.length, pieces=1, must_match=False)
    more = reckoned.allowance(stock, width=piece.width)
    longer, wider = more.length or NOTHING, (more.width or NOTHING) + reckoned.restless(stock)
    why = (Reason("test pieces, milled with the parts"), *rough.why)
    return [Stack(stock, rough, piece.length, piece.width, longer, wider, (named,), why)] * piece.count
