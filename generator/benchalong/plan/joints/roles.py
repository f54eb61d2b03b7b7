"""Who receives and who enters, where one side of a part is named for both: four equal sides of a frame.

Then where the copies sit tells it. What stands upright receives; of two that lie, the one whose length points
to the right, as a drawer's front does; of two that run the same way, the one further left, front and down.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TypeAlias

from benchalong.plan.joints.member import Side

Pair: TypeAlias = tuple[Side, Side]
Who: TypeAlias = tuple[str, tuple[str, ...]]
RECEIVES = (1, 2, 0)
"""By the axis that the length runs along: right, back, up; the least receives."""


def one_way(pairs: list[Pair]) -> list[Pair]:
    """Without the second of two pairs that are the same two sides the other way round."""
    known = {(_who(one), _who(other)) for one, other in pairs}
    return [
        (one, other) for one, other in pairs if (_who(other), _who(one)) not in known or _receives(one, other)
    ]


def in_their_roles(
    cut_in: list[Side], takes: list[Side], pairs: Iterable[Pair]
) -> tuple[list[Side], list[Side]]:
    """The sides that receive and those that enter. One that is named for both has the role in which it meets
    another; one that meets nobody only receives, so that it is told of once."""
    both = {_who(side) for side in cut_in} & {_who(side) for side in takes}
    if not both:
        return cut_in, takes
    roles = [(_who(one), _who(other)) for one, other in pairs]
    receiving, entering = {one for one, _ in roles}, {other for _, other in roles}
    return (
        [side for side in cut_in if _who(side) not in both or _who(side) not in entering - receiving],
        [side for side in takes if _who(side) not in both or _who(side) in entering],
    )


def _who(side: Side) -> Who:
    return side.member.mark, side.surfaces


def _receives(one: Side, other: Side) -> bool:
    return _rank(one) < _rank(other)


def _rank(side: Side) -> tuple[object, ...]:
    runs = next(n for n in range(3) if side.member.turn[n][0])
    low, high = side.member.room
    middle = tuple(a + b for a, b in zip(low, high, strict=True))
    return RECEIVES[runs], middle, side.member.mark
