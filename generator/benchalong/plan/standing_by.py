"""In which order the copies in an assembly get their places: each after those that it stands by."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from benchalong.ground.marks import Path, Place
from benchalong.plan.circles import in_order, shortened
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.relating import Around, names_in_spots
from benchalong.plan.relations import Spot
from benchalong.plan.rows import Entry


@dataclass(frozen=True)
class Spotted:
    """A copy and what is said of its place."""

    entry: Entry
    mark: str
    path: Path
    spots: tuple[Spot | None, Spot | None, Spot | None] | None
    """None for what has no `at`; None within for what can't be read, which has been said."""


def order_of(spotted: Mapping[str, Spotted], around: Around, sums: Reckoning) -> tuple[str, ...]:
    """Each after what it stands by; without those that stand by each other in a circle, which is said."""
    by = {mark: tuple(_stands_by(one, around)) for mark, one in spotted.items()}
    if not any(by.values()):
        return tuple(spotted)
    ordered = in_order(by)
    for circle in ordered.circles:
        _say_circle(circle, spotted, around, sums)
    circling = {mark for circle in ordered.circles for mark in circle}
    return tuple(mark for mark in ordered.order if mark not in circling)


def _stands_by(one: Spotted, around: Around) -> Iterator[str]:
    for axis, spot in enumerate(one.spots or ()):
        for words in names_in_spots([spot]):
            place = Place((*one.path, "at", axis), start=words.span[0], end=words.span[1])
            is_known = bool(one.entry.nth) or around.knows(words.text, place)  # told once of a row
            mark = around.mark_of(words.text) if is_known else None
            if mark is not None:
                yield mark


def _say_circle(
    circle: tuple[str, ...], spotted: Mapping[str, Spotted], around: Around, sums: Reckoning
) -> None:
    first = spotted[circle[0]]
    following = circle[1] if len(circle) > 1 else circle[0]
    for axis, spot in enumerate(first.spots or ()):
        for words in names_in_spots([spot]):
            if around.mark_of(words.text) == following:
                shown = " -> ".join(shortened((*circle, circle[0])))
                sums.say(
                    Place((*first.path, "at", axis), start=words.span[0], end=words.span[1]),
                    f"{circle[0]} stands by itself: {shown}",
                    "a size for one of them, so that something is fixed",
                )
                return
