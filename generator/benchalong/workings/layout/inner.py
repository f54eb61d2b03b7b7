"""The order as the search sees it: no kerf, no trim, no names.

A piece and the kerf after it are one rectangle, and so is a board with one kerf added: m pieces with m - 1
kerfs between them fit a length exactly when the m enlarged pieces fit the enlarged length. So the search
needs to know nothing of saws. All sizes are then divided by what they have in common.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from math import gcd

from benchalong.workings.layout.model import Board, MatchSet, NameAndNumber, Order, Piece, Rectangle, Way


@dataclass(frozen=True)
class Kind:
    """What the search places as one rectangle: a piece of some size, or a match set as a block."""

    names: tuple[NameAndNumber, ...]
    """A size: which pieces are of it. A match set: its members in sequence, one each."""
    sizes: tuple[tuple[int, int], ...]
    """Inner length and width of each member; of a size, one."""
    demand: int
    may_turn: bool
    parted: Way | None = None
    """How a match set's members lie."""
    match_set: int | None = None

    @property
    def ways(self) -> tuple[Way | None, ...]:
        """How its members may lie; a match set that only asks for one board may lie either way."""
        if self.match_set is None or self.parted is not None:
            return (self.parted,)
        return (Way.ACROSS, Way.ALONG)

    def size(self, way: Way | None) -> tuple[int, int]:
        """Length and width with its members lying so."""
        lengths, widths = zip(*self.sizes, strict=True)
        if way is Way.ACROSS:
            return sum(lengths), max(widths)
        return max(lengths), sum(widths) if way is Way.ALONG else max(widths)

    @property
    def area(self) -> int:
        """Of the members, without what a block wastes."""
        return sum(length * width for length, width in self.sizes)


@dataclass(frozen=True)
class Sheet:
    """A kind of board, trimmed."""

    board: int
    length: int
    width: int
    number: int
    """How many there are, or as many as could ever be wanted."""
    cost: int
    defects: tuple[Rectangle, ...] = ()
    """From the trimmed corner, in the inner unit, without kerf."""

    @property
    def area(self) -> int:
        return self.length * self.width


@dataclass(frozen=True)
class Inner:
    kinds: tuple[Kind, ...]
    sheets: tuple[Sheet, ...]
    kerf: int
    """In the inner unit; only the edges of defects need it."""
    unit: int
    """How many of the order's units make one of these."""
    turns: int
    first: Way | None
    left_out: tuple[NameAndNumber, ...]
    """Pieces no board is large enough for."""

    @property
    def demand(self) -> tuple[int, ...]:
        return tuple(kind.demand for kind in self.kinds)


def inner_order(order: Order) -> Inner:
    """Raises ValueError for an order that makes no sense: sizes not above zero, names that don't exist."""
    _refuse_nonsense(order)
    kerf = order.rules.kerf
    kinds = _kinds(order)
    wanted = sum(kind.demand for kind in kinds)
    sheets = [_sheet(index, board, kerf, wanted) for index, board in enumerate(order.boards)]
    sheets = [sheet for sheet in sheets if sheet.length > kerf and sheet.width > kerf and sheet.number > 0]
    unit = _common(kinds, sheets, kerf)
    fitting = [kind for kind in kinds if any(_fits(kind, sheet) for sheet in sheets)]
    return Inner(
        kinds=tuple(_kind_in(kind, unit) for kind in fitting),
        sheets=tuple(_sheet_in(sheet, unit) for sheet in sheets),
        kerf=kerf // unit,
        unit=unit,
        turns=order.rules.turns,
        first=order.rules.first,
        left_out=tally(name for kind in kinds if kind not in fitting for name in _all_names(kind)),
    )


def tally(names: Iterable[str]) -> tuple[NameAndNumber, ...]:
    return tuple(sorted(Counter(names).items()))


def _all_names(kind: Kind) -> list[str]:
    return [name for name, number in kind.names for _ in range(number)]


def _refuse_nonsense(order: Order) -> None:
    sizes = [(b.length, b.width) for b in order.boards] + [(p.length, p.width) for p in order.pieces]
    if any(length <= 0 or width <= 0 for length, width in sizes):
        raise ValueError("sizes must be above zero")
    if order.rules.turns < 1 or order.rules.kerf < 0:
        raise ValueError("at least one turn, and a kerf of zero or more")
    if any(board.cost < 0 for board in order.boards):
        raise ValueError("a board can't cost less than nothing")
    names = [piece.name for piece in order.pieces]
    if len(set(names)) < len(names):
        raise ValueError("two pieces have one name")
    in_sets = Counter(name for match in order.match_sets for name in match.pieces)
    numbers = {piece.name: piece.number for piece in order.pieces}
    if any(count > numbers.get(name, 0) for name, count in in_sets.items()):
        raise ValueError("a match set asks for more pieces than there are")
    if any(not match.pieces for match in order.match_sets):
        raise ValueError("a match set is empty")


def _kinds(order: Order) -> list[Kind]:
    """Largest first, so that equal orders written differently are searched alike."""
    kerf, in_sets = order.rules.kerf, Counter(name for match in order.match_sets for name in match.pieces)
    by_size: dict[tuple[int, int, bool], list[NameAndNumber]] = {}
    for piece in order.pieces:
        number = piece.number - in_sets[piece.name]
        if number > 0:
            may_turn = piece.may_turn and piece.length != piece.width
            size = (piece.length + kerf, piece.width + kerf, may_turn)
            by_size.setdefault(size, []).append((piece.name, number))
    singles = [
        Kind(tuple(sorted(names)), ((length, width),), sum(n for _, n in names), may_turn)
        for (length, width, may_turn), names in by_size.items()
    ]
    singles.sort(key=lambda kind: (-kind.area, -kind.sizes[0][0], kind.may_turn))
    pieces = {piece.name: piece for piece in order.pieces}
    blocks = [_block(index, match, pieces, kerf) for index, match in enumerate(order.match_sets)]
    return blocks + singles


def _block(index: int, match: MatchSet, pieces: dict[str, Piece], kerf: int) -> Kind:
    members = [pieces[name] for name in match.pieces]
    return Kind(
        names=tuple((member.name, 1) for member in members),
        sizes=tuple((member.length + kerf, member.width + kerf) for member in members),
        demand=1,
        may_turn=all(member.may_turn for member in members),
        parted=match.parted,
        match_set=index,
    )


def _sheet(index: int, board: Board, kerf: int, wanted: int) -> Sheet:
    trim = board.trim
    length = board.length - trim.start - trim.end
    width = board.width - trim.near - trim.far
    room = Rectangle(0, 0, length, width)
    moved = [Rectangle(d.x - trim.start, d.y - trim.near, d.length, d.width) for d in board.defects]
    return Sheet(
        board=index,
        length=length + kerf,
        width=width + kerf,
        number=wanted if board.number is None else min(board.number, wanted),
        cost=board.cost,
        defects=tuple(_clipped(defect, room) for defect in moved if defect.area and defect.overlaps(room)),
    )


def _clipped(defect: Rectangle, room: Rectangle) -> Rectangle:
    x, y = max(defect.x, room.x), max(defect.y, room.y)
    return Rectangle(x, y, min(defect.end, room.end) - x, min(defect.far, room.far) - y)


def _common(kinds: list[Kind], sheets: list[Sheet], kerf: int) -> int:
    numbers = [number for kind in kinds for size in kind.sizes for number in size]
    numbers += [number for sheet in sheets for number in (sheet.length, sheet.width)]
    for sheet in sheets:
        for defect in sheet.defects:
            numbers += [kerf, defect.x, defect.y, defect.length, defect.width]
    return gcd(*numbers) or 1


def _kind_in(kind: Kind, unit: int) -> Kind:
    sizes = tuple((length // unit, width // unit) for length, width in kind.sizes)
    return Kind(kind.names, sizes, kind.demand, kind.may_turn, kind.parted, kind.match_set)


def _sheet_in(sheet: Sheet, unit: int) -> Sheet:
    defects = tuple(
        Rectangle(d.x // unit, d.y // unit, d.length // unit, d.width // unit) for d in sheet.defects
    )
    length, width = sheet.length // unit, sheet.width // unit
    return Sheet(sheet.board, length, width, sheet.number, sheet.cost, defects)


def _fits(kind: Kind, sheet: Sheet) -> bool:
    for length, width in map(kind.size, kind.ways):
        if length <= sheet.length and width <= sheet.width:
            return True
        if kind.may_turn and length <= sheet.width and width <= sheet.length:
            return True
    return False
