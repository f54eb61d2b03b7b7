"""What a layout is made from, and what it is: boards, pieces, rules, cuts.

All lengths are whole numbers in one unit the caller chose (`scaling` makes them from fractions, exactly).
x and lengths run along the grain from the board's start; y and widths run across it from its near edge.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum
from typing import TypeAlias


class Way(Enum):
    """Which way a cut runs, or a row of pieces."""

    ACROSS = "across"
    """A crosscut: it stands at one x and runs across the grain. Pieces parted by it lie end to end."""
    ALONG = "along"
    """A rip cut: it stands at one y and runs along the grain. Pieces parted by it lie side by side."""

    @property
    def other(self) -> Way:
        return Way.ALONG if self is Way.ACROSS else Way.ACROSS


@dataclass(frozen=True)
class Rectangle:
    x: int
    y: int
    length: int
    width: int

    @property
    def end(self) -> int:
        return self.x + self.length

    @property
    def far(self) -> int:
        return self.y + self.width

    @property
    def area(self) -> int:
        return self.length * self.width

    def overlaps(self, other: Rectangle) -> bool:
        return self.x < other.end and other.x < self.end and self.y < other.far and other.y < self.far


@dataclass(frozen=True)
class Trim:
    """How much is taken off each side before anything else, the saw's own width included."""

    start: int = 0
    end: int = 0
    near: int = 0
    far: int = 0


@dataclass(frozen=True)
class Board:
    """A kind of board or sheet; several alike are one `Board` with a number of them."""

    name: str
    length: int
    width: int
    number: int | None = None
    """How many there are; None: as many as wanted."""
    cost: int = 1
    """What one costs. All alike: the fewest boards are sought."""
    trim: Trim = Trim()
    defects: tuple[Rectangle, ...] = ()
    """Where no piece may lie, measured on the board before it is trimmed."""


@dataclass(frozen=True)
class Piece:
    """A kind of piece; several alike are one `Piece` with a number of them."""

    name: str
    length: int
    """Along the grain."""
    width: int
    number: int = 1
    may_turn: bool = False
    """Whether the grain may run either way."""


@dataclass(frozen=True)
class MatchSet:
    """Pieces that come from one board, in this order where the grain is to run on from one to the next."""

    pieces: tuple[str, ...]
    """Names in sequence, from the start or the near edge. They count among the pieces' numbers."""
    parted: Way | None
    """ACROSS: end to end, one after the other from one strip. ALONG: side by side. None: only from one board;
    they are cut as a block all the same, whichever way suits."""


@dataclass(frozen=True)
class Rules:
    kerf: int = 0
    turns: int = 3
    """How often the direction of cutting may change, the first direction counted: 3 is strips, lengths of
    strips, pieces. A last cut that only takes the waste off a single piece is allowed beyond it."""
    first: Way | None = None
    """Which way the first cuts run; None: whichever turns out better, board by board. A board that needs no
    cut that way has used up a turn all the same."""
    seed: int = 1
    effort: int = 50_000_000
    """How many placings may be weighed before the search is content with what it has."""


@dataclass(frozen=True)
class Order:
    """One question: all of it that has an answer."""

    boards: tuple[Board, ...]
    pieces: tuple[Piece, ...]
    match_sets: tuple[MatchSet, ...] = ()
    rules: Rules = field(default_factory=Rules)


@dataclass(frozen=True)
class Placed:
    """One piece on one board. `length` and `width` are as it lies: swapped when it is turned."""

    piece: str
    at: Rectangle
    is_turned: bool = False
    match_set: int | None = None
    """Which of the order's match sets it belongs to."""


@dataclass(frozen=True)
class Cut:
    """One edge-to-edge cut. It parts `of` in two, and takes the kerf from what lies beyond `at`."""

    number: int
    """Its place in the order of cutting, from 1."""
    stage: int
    """How often the direction has changed up to here, from 1; trimming cuts at the board's edges are stage
    0."""
    way: Way
    at: int
    """x of a crosscut, y of a rip cut: the side of the kerf that is nearer to the start or the near edge."""
    of: Rectangle
    """What is cut, as it lies on the whole board."""
    after: int | None
    """The cut that freed `of`; None: it is the whole board."""
    is_trim: bool = False
    """Whether it only takes waste off a single piece or off the board's edge."""


@dataclass(frozen=True)
class CutBoard:
    """One board with what is cut from it."""

    board: str
    length: int
    width: int
    placed: tuple[Placed, ...]
    cuts: tuple[Cut, ...]
    left_over: tuple[Rectangle, ...]
    """What remains when the last cut is made, largest first; slivers too."""


NameAndNumber: TypeAlias = tuple[str, int]


@dataclass(frozen=True)
class Layout:
    boards: tuple[CutBoard, ...]
    left_out: tuple[NameAndNumber, ...]
    """Pieces for which there was no room."""
    cost: int
    lower_bound: int
    """No layout of all pieces within the rules costs less."""
    is_proven: bool
    """Whether all pieces are placed and the cost equals the bound: no layout can do better."""
    ended_early: bool = False
    """Whether a clock ended the search."""

    @property
    def cuts(self) -> int:
        return sum(len(board.cuts) for board in self.boards)
