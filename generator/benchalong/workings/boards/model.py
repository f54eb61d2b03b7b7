"""Boards with what is cut from them. Lengths are exact millimetres.

x and lengths run along the grain from a board's end a; y and widths run across it from its edge a.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from typing import Literal, TypeAlias

from benchalong.ground.lengths import Length
from benchalong.plan.model import StockId

BlankId: TypeAlias = str
Way: TypeAlias = Literal["across", "along"]
"""across: a crosscut, at one x. along: a rip cut, at one y."""
Counts: TypeAlias = Literal["boards", "area", "price"]
"""What a layout has as little as possible of."""


@dataclass(frozen=True)
class Spot:
    """A rectangle on a board."""

    x: Length
    y: Length
    length: Length
    width: Length

    @property
    def area(self) -> Fraction:
        return self.length * self.width


@dataclass(frozen=True)
class Laid:
    """One blank where it lies; length and width as it lies."""

    blank: BlankId
    at: Spot
    is_turned: bool = False
    match: str = ""
    """The match it belongs to."""


@dataclass(frozen=True)
class SawCut:
    """One cut from edge to edge of what is left of the board."""

    number: int
    way: Way
    at: Length
    """From end a of a crosscut, from edge a of a rip cut, to the nearer side of the saw's cut."""
    of: Spot
    """What is cut, as it lies on the whole board."""
    frees: tuple[BlankId, ...] = ()
    """Blanks that are whole once it is made."""
    is_trim: bool = False
    """Whether it only takes waste off."""

    @property
    def off(self) -> Length:
        """From where what is cut begins: what the stop or the fence is set to."""
        return self.at - (self.of.x if self.way == "across" else self.of.y)


@dataclass(frozen=True)
class Sawn:
    """One board or sheet with what is cut from it."""

    number: int
    """From 1, among those of its group."""
    length: Length
    width: Length
    is_there: bool
    """Whether it is one the project names; else one of the size that is usually sold."""
    laid: tuple[Laid, ...]
    cuts: tuple[SawCut, ...]
    left_over: tuple[Spot, ...]
    """Worth keeping, the largest first."""
    keep_clear: tuple[Spot, ...] = ()
    """Defects and sapwood."""
    note: str = ""
    cut_from: Length | None = None
    """The length it is sold in, where it is crosscut to go into the car."""

    @property
    def used(self) -> Fraction:
        """The share of its area that becomes blanks."""
        return sum((laid.at.area for laid in self.laid), Fraction(0)) / (self.length * self.width)


@dataclass(frozen=True)
class Unused:
    """Boards alike that are there and that nothing is cut from."""

    length: Length
    width: Length
    thickness: Length | None
    count: int
    note: str = ""


@dataclass(frozen=True)
class Group:
    """All that is cut from one stock of one thickness."""

    id: str
    """`cherry`, or with a second thickness `cherry-8-4`."""
    stock: StockId
    called: str
    """The thickness as it is sold: `4/4`."""
    thickness: Length
    """Rough."""
    boards: tuple[Sawn, ...]
    least: int
    """No layout needs fewer, or by the measure of `counts` costs less."""
    reached: int
    """What this one needs, by the same measure."""
    counts: Counts
    """What was to be as little as possible."""
    is_proven: bool
    ended_early: bool = False
    """Whether a clock ended the search."""
    left_out: tuple[tuple[BlankId, int], ...] = ()
    """Blanks for which the boards don't suffice."""
    too_large: tuple[BlankId, ...] = ()
    """Those of them that no such board is large enough for."""
    more: tuple[Sawn, ...] = ()
    """Boards to buy for what was left out, as usually sold."""
    turns: int = 3
    """How often the direction of cutting may change on one board; the bound holds within that."""
    by_area: bool = False
    """Whether area alone shows that no fewer do, whichever way they are cut."""
    is_own: bool = False
    """Whether the project names boards for it; else it is laid out on what is usually sold."""
    are_all_tried: bool = True
    """False where it is short, its boards could be shared out otherwise, and not all ways were tried."""
    unused: tuple[Unused, ...] = ()
    """Boards of the stock that nothing is cut from; told with its last group."""

    @cached_property
    def on_none(self) -> tuple[tuple[BlankId, int], ...]:
        """Blanks that were left out, and that no board as it is sold is large enough for either."""
        if not self.is_own:
            return self.left_out
        laid = Counter(each.blank for board in self.more for each in board.laid)
        return tuple((blank, count - laid[blank]) for blank, count in self.left_out if count > laid[blank])

    @property
    def bought(self) -> tuple[Sawn, ...]:
        """Boards that still have to be bought."""
        return self.more if self.is_own else self.boards

    @property
    def used(self) -> tuple[Sawn, ...]:
        """Boards that are there and that something is cut from."""
        return self.boards if self.is_own else ()


@dataclass(frozen=True)
class Boards:
    groups: tuple[Group, ...]
    kerf: Length

    @cached_property
    def by_blank(self) -> Mapping[BlankId, tuple[tuple[Group, Sawn], ...]]:
        """Where the blanks of a kind come from, each board once."""
        found: dict[BlankId, list[tuple[Group, Sawn]]] = {}
        for group in self.groups:
            for board in (*group.boards, *group.more):
                for blank in dict.fromkeys(laid.blank for laid in board.laid):
                    found.setdefault(blank, []).append((group, board))
        return {blank: tuple(boards) for blank, boards in found.items()}


LaidOut: TypeAlias = Callable[[], Boards]
