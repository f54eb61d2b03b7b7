"""Which group of a stock gets which of the boards that are there: each board goes to one.

Thin parts can come from thick boards, not the other way round. So the thickest group chooses first, and the
next takes boards of its own thickness before it planes down thicker ones. Where a thinner group is short
then, other ways of sharing are tried, those with the fewest boards first, until one suffices for all.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Protocol, TypeAlias

Numbers: TypeAlias = tuple[int, ...]
"""How many of each kind of board."""

MOST_ASKED = 60
"""So many layouts are made while other ways of sharing are tried."""
MOST_LOOKED_AT = 20_000
"""So many ways for one group are looked at for that."""


class Ask(Protocol):
    """Lays a group out on boards."""

    def __call__(self, group: int, boards: Numbers, /) -> tuple[Numbers, bool]:
        """The boards it uses, and whether they suffice."""

    def may_suffice(self, group: int, boards: Numbers, /) -> bool:
        """Whether they might, by a look at lengths and areas alone."""


@dataclass(frozen=True)
class Shared:
    offers: tuple[Numbers, ...]
    """What each group is laid out on."""
    are_all_tried: bool = True
    """False: some group is short, and there are ways to share that nobody tried."""


def share(there: Numbers, may_use: Sequence[Sequence[bool]], ask: Ask) -> Shared:
    """`may_use`: for each group, the thickest first, which kinds are thick enough."""
    first = _in_turn(there, may_use, ask)
    groups = range(len(may_use))
    if all(ask(group, first[group])[1] for group in groups):
        return Shared(first)
    if not all(ask(group, _only(there, may_use[group]))[1] for group in groups):
        return Shared(first)
    trying = _Trying(may_use, ask)
    found = trying.from_group(0, there)
    return Shared(found or first, are_all_tried=found is not None or trying.are_all_tried)


def _in_turn(there: Numbers, may_use: Sequence[Sequence[bool]], ask: Ask) -> tuple[Numbers, ...]:
    left, offers = there, list[Numbers]()
    for group, usable in enumerate(may_use):
        offer = _only(left, usable)
        own = _only(offer, [not any(other[kind] for other in may_use[:group]) for kind in range(len(there))])
        if own != offer and ask.may_suffice(group, own) and ask(group, own)[1]:
            offer = own
        offers.append(offer)
        left = _less(left, ask(group, offer)[0])
    return tuple(offers)


class _Trying:
    def __init__(self, may_use: Sequence[Sequence[bool]], ask: Ask) -> None:
        self._may_use, self._ask = may_use, ask
        self._asked, self.are_all_tried = 0, True

    def from_group(self, group: int, there: Numbers) -> tuple[Numbers, ...] | None:
        """Offers that suffice from this group on; None where none was found."""
        if group == len(self._may_use):
            return ()
        offer = _only(there, self._may_use[group])
        if group == len(self._may_use) - 1:
            return (offer,) if self._suffices(group, offer) else None
        for number, some in enumerate(_some_of(offer)):
            if number == MOST_LOOKED_AT:
                self.are_all_tried = False
                break
            rest = _less(there, some)
            if not self._may_all_suffice(group + 1, rest) or not self._suffices(group, some):
                continue
            found = self.from_group(group + 1, rest)
            if found is not None:
                return (some, *found)
        return None

    def _may_all_suffice(self, first: int, there: Numbers) -> bool:
        return all(
            self._ask.may_suffice(group, _only(there, self._may_use[group]))
            for group in range(first, len(self._may_use))
        )

    def _suffices(self, group: int, boards: Numbers) -> bool:
        if not self._ask.may_suffice(group, boards):
            return False
        if self._asked == MOST_ASKED:
            self.are_all_tried = False
            return False
        self._asked += 1
        return self._ask(group, boards)[1]


def _some_of(counts: Numbers) -> Iterator[Numbers]:
    """Every choice among them, the fewest boards first."""
    for total in range(sum(counts) + 1):
        yield from _adding_up_to(counts, total)


def _adding_up_to(counts: Numbers, total: int) -> Iterator[Numbers]:
    if not counts:
        if total == 0:
            yield ()
        return
    for number in range(min(counts[0], total), max(0, total - sum(counts[1:])) - 1, -1):
        for others in _adding_up_to(counts[1:], total - number):
            yield (number, *others)


def _only(counts: Numbers, usable: Sequence[bool]) -> Numbers:
    return tuple(count if may else 0 for count, may in zip(counts, usable, strict=True))


def _less(counts: Numbers, used: Numbers) -> Numbers:
    return tuple(count - taken for count, taken in zip(counts, used, strict=True))
