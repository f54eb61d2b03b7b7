"""From blanks and boards to a layout's question, and from its answer back to exact lengths."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import gcd

from benchalong.ground.lengths import INCH
from benchalong.workings.blanks.model import Blank, Matched
from benchalong.workings.boards.kinds import Kind
from benchalong.workings.boards.model import Counts, Laid, SawCut, Sawn, Spot
from benchalong.workings.layout import model as whole
from benchalong.workings.layout.scaling import exact, parts_per_unit
from benchalong.workings.layout.scaling import whole as whole_number

WAYS = {"across": whole.Way.ACROSS, "along": whole.Way.ALONG, "": None}
WORTH_KEEPING = (12 * INCH, 2 * INCH)
"""Left-overs at least so long and wide are worth a place in the rack. Common practice, no source."""


@dataclass(frozen=True)
class Question:
    """What is to be cut from what, and by which rules."""

    kinds: tuple[Kind, ...]
    blanks: tuple[Blank, ...]
    matched: tuple[Matched, ...]
    kerf: Fraction
    turns: int
    crosscut_first: bool

    @property
    def per_unit(self) -> int:
        sizes = [self.kerf]
        for kind in self.kinds:
            sizes += [kind.length, kind.width, kind.trim]
            sizes += [side for spot in kind.keep_clear for side in (spot.x, spot.y, spot.length, spot.width)]
        sizes += [side for blank in self.blanks for side in (blank.length, blank.width)]
        return parts_per_unit(sizes)

    @property
    def counts(self) -> tuple[Counts, tuple[int, ...]]:
        """What is to be as little as possible, and what each kind counts of it."""
        if self.kinds and all(kind.price is not None for kind in self.kinds):
            return "price", _smallest([kind.price or Fraction(0) for kind in self.kinds])
        if all(kind.is_there for kind in self.kinds) or len(self.kinds) == 1:
            return "boards", (1,) * len(self.kinds)
        return "area", _smallest([kind.length * kind.width for kind in self.kinds])


def least_by_area(question: Question) -> Fraction:
    """What boards of so much area must cost at least, by the measure of `counts`, however they are cut."""
    _, costs = question.counts
    left = sum((blank.count * blank.length * blank.width for blank in question.blanks), Fraction(0))
    least = Fraction(0)
    kinds = [
        (Fraction(cost) / (kind.length * kind.width), kind)
        for kind, cost in zip(question.kinds, costs, strict=True)
    ]
    for rate, kind in sorted(kinds, key=lambda pair: pair[0]):
        area = kind.length * kind.width
        taken = left if kind.count is None else min(left, kind.count * area)
        least, left = least + rate * taken, left - taken
    return least


def order_of(question: Question) -> whole.Order:
    per = question.per_unit

    def of(length: Fraction) -> int:
        return whole_number(length, per)

    _, costs = question.counts
    boards = tuple(
        whole.Board(
            str(index),
            of(kind.length),
            of(kind.width),
            kind.count,
            cost,
            whole.Trim(start=of(kind.trim), end=of(kind.trim)),
            tuple(whole.Rectangle(of(s.x), of(s.y), of(s.length), of(s.width)) for s in kind.keep_clear),
        )
        for index, (kind, cost) in enumerate(zip(question.kinds, costs, strict=True))
    )
    pieces = tuple(
        whole.Piece(blank.id, of(blank.length), of(blank.width), blank.count, blank.grain == "free")
        for blank in question.blanks
    )
    sets = tuple(whole.MatchSet(each.blanks, WAYS[each.parted]) for each in question.matched)
    first = whole.Way.ACROSS if question.crosscut_first else None
    return whole.Order(boards, pieces, sets, whole.Rules(of(question.kerf), question.turns, first))


def sawn_of(question: Question, layout: whole.Layout, *, first: int = 1) -> tuple[Sawn, ...]:
    """The boards of an answer, numbered from `first`."""
    back = _Back(question)
    return tuple(back.board(number, board) for number, board in enumerate(layout.boards, first))


class _Back:
    def __init__(self, question: Question) -> None:
        self._question, self._per = question, question.per_unit

    def board(self, number: int, board: whole.CutBoard) -> Sawn:
        kind = self._question.kinds[int(board.board)]
        laid = tuple(self._laid(placed) for placed in board.placed)
        return Sawn(
            number,
            kind.length,
            kind.width,
            kind.is_there,
            laid,
            self._cuts(board),
            tuple(spot for spot in map(self._spot, board.left_over) if is_worth_keeping(spot)),
            kind.keep_clear,
            kind.note,
            kind.cut_from,
        )

    def _laid(self, placed: whole.Placed) -> Laid:
        matched = self._question.matched
        match = matched[placed.match_set].id if placed.match_set is not None else ""
        return Laid(placed.piece, self._spot(placed.at), placed.is_turned, match)

    def _spot(self, at: whole.Rectangle) -> Spot:
        return Spot(*(exact(number, self._per) for number in (at.x, at.y, at.length, at.width)))

    def _cuts(self, board: whole.CutBoard) -> tuple[SawCut, ...]:
        frees = _freed(board)
        return tuple(
            SawCut(
                cut.number,
                "across" if cut.way is whole.Way.ACROSS else "along",
                exact(cut.at, self._per),
                self._spot(cut.of),
                frees.get(cut.number, ()),
                cut.is_trim,
            )
            for cut in board.cuts
        )


def is_worth_keeping(spot: Spot) -> bool:
    return spot.length >= WORTH_KEEPING[0] and spot.width >= WORTH_KEEPING[1]


def _freed(board: whole.CutBoard) -> Mapping[int, tuple[str, ...]]:
    """For each cut the pieces that no later one touches."""
    last: dict[int, int] = {}
    for cut in board.cuts:
        for index, placed in enumerate(board.placed):
            if placed.at.overlaps(cut.of):
                last[index] = cut.number
    freed: dict[int, list[str]] = {}
    for index, number in last.items():
        freed.setdefault(number, []).append(board.placed[index].piece)
    return {number: tuple(pieces) for number, pieces in freed.items()}


def fits_none(kinds: Iterable[Kind], blank: Blank) -> bool:
    """Whether no board of these is large enough."""
    sizes = [(blank.length, blank.width)]
    if blank.grain == "free":
        sizes.append((blank.width, blank.length))
    return not any(
        length <= kind.length - 2 * kind.trim and width <= kind.width
        for kind in kinds
        for length, width in sizes
    )


def _smallest(amounts: Sequence[Fraction]) -> tuple[int, ...]:
    """The same amounts as the smallest whole numbers that keep their ratios."""
    per = parts_per_unit(amounts)
    numbers = [whole_number(amount, per) for amount in amounts]
    common = gcd(*numbers) or 1
    return tuple(number // common for number in numbers)
