"""What hangs on what, put in order; and the circles where things hang on themselves."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass


@dataclass(frozen=True)
class Ordered:
    order: tuple[str, ...]
    """Each name after everything it hangs on, circles apart."""
    circles: tuple[tuple[str, ...], ...]
    """Each once; begins with the member that was defined first."""


def in_order(hangs_on: Mapping[str, Sequence[str]]) -> Ordered:
    """Without recursion, so that a chain of thousands is no trouble. Unknown names are passed over."""
    rank = {name: number for number, name in enumerate(hangs_on)}
    finished: dict[str, None] = {}
    circles: dict[tuple[str, ...], None] = {}
    for first in hangs_on:
        if first not in finished:
            _follow(first, hangs_on, rank, finished, circles)
    return Ordered(tuple(finished), tuple(circles))


def shortened(names: Sequence[str], most: int = 12) -> tuple[str, ...]:
    """The names, those in the middle left out where there are too many to be read."""
    if len(names) <= most:
        return tuple(names)
    return (*names[: most // 2], f"… {len(names) - most // 2 - 2} more …", *names[-2:])


def _follow(
    first: str,
    hangs_on: Mapping[str, Sequence[str]],
    rank: Mapping[str, int],
    finished: dict[str, None],
    circles: dict[tuple[str, ...], None],
) -> None:
    """Everything that `first` hangs on, then `first` itself."""
    trail: dict[str, Iterator[str]] = {first: iter(hangs_on[first])}
    while trail:
        name = next(reversed(trail))
        following = next(trail[name], None)
        if following is None:
            finished[name] = None
            del trail[name]
        elif following in trail:
            names = list(trail)
            circles[_from_first(names[names.index(following) :], rank)] = None
        elif following in rank and following not in finished:
            trail[following] = iter(hangs_on[following])


def _from_first(circle: list[str], rank: Mapping[str, int]) -> tuple[str, ...]:
    start = circle.index(min(circle, key=lambda name: rank[name]))
    return tuple(circle[start:] + circle[:start])
