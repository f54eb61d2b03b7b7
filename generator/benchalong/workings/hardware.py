"""Does the hardware agree with itself: count, place, and was it measured before wood was cut for it?"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding, Level
from benchalong.ground.shown import shown
from benchalong.plan.model import Hardware, Plan
from benchalong.reading.written import PROJECT_FILE
from benchalong.workings.fitted_out import fitted_out
from benchalong.workings.placed import PLACED, Lying, Placed, overlaps, relation
from benchalong.workings.telling import FINE, called, exact, once, place_sizes
from benchalong.workings.working import Worked, Working

TOUCHING = 0.02
"""As for parts that stand still: what lies in each other by no more only touches, mm."""
LET_IN = ("hinge", "slide")
"""Kinds that wood is cut for without a hole."""


@dataclass(frozen=True)
class FittedOut:
    """The piece with its hardware."""

    placed: Placed
    clashing: frozenset[tuple[int, int]]
    """By number, what stands in each other with everything shut."""


def look_at_hardware(plan: Plan, worked: Worked) -> tuple[FittedOut, tuple[Finding, ...]]:
    placed = fitted_out(plan, worked[PLACED])
    found = [finding for thing in plan.hardware.values() for finding in _of_one(plan, thing)]
    clashes = list(_in_the_way(plan, placed))
    clashing = frozenset((min(pair), max(pair)) for pair, _ in clashes)
    return FittedOut(placed, clashing), (*found, *once(finding for _, finding in clashes))


def _of_one(plan: Plan, thing: Hardware) -> Iterator[Finding]:
    yield from _count(thing)
    yield from _measured(plan, thing)
    yield from _off_its_side(plan, thing)


def _finding(
    code: str,
    level: Level,
    thing: Hardware,
    message: str,
    remedy: str,
    sizes: Iterable[str] = (),
    **numbers: Length,
) -> Finding:
    own = {name for size in thing.sizes for name in size.sizes}
    seats = {name for seated in thing.seated for name in seated.follows}
    place = Place((PROJECT_FILE, "hardware", thing.id)).key()
    follows = tuple(sorted({*own, *seats, *sizes}))
    return Finding(code, level, place, thing.id, message, remedy, numbers, follows)


def _shown(plan: Plan, length: Length) -> str:
    """More finely than sizes, since it may be little."""
    return shown(length, plan.units, FINE).text


def _count(thing: Hardware) -> Iterator[Finding]:
    if thing.said is None or thing.needed is None or thing.said == thing.needed:
        return
    fewer = thing.said < thing.needed
    yield _finding(
        "hardware-count",
        "fault" if fewer else "doubt",
        thing,
        f"{thing.name}: the plan says {thing.said}, its places and joints take {thing.needed}",
        f"count: {thing.needed}"
        if fewer
        else f"count: {thing.needed}, or say in its note what the others are for",
    )


def _measured(plan: Plan, thing: Hardware) -> Iterator[Finding]:
    is_cut_for = bool(thing.bores) or (
        thing.kind in LET_IN and any(j.words.get("hardware") == thing.id for j in plan.joints.values())
    )
    if thing.measured == "no" and is_cut_for:
        yield _finding(
            "not-measured",
            "doubt",
            thing,
            f"{thing.name}: wood is cut to its size, and nobody has measured it",
            "have it in your hand, measure it, correct its sizes, then say measured: yes",
        )


def _off_its_side(plan: Plan, thing: Hardware) -> Iterator[Finding]:
    """What it sits on must be under its middle. Its holes are looked at with the other cuts."""
    for seated in () if thing.bores else thing.seated:
        copy = next(copy for copy in plan.copies if copy.mark == seated.mark)
        box = plan.parts[seated.part].box
        corners = [sum((copy.turn[n][m] * box[m] for m in range(3)), copy.at[n] * 1) for n in range(3)]
        over = [
            max(min(at, corner) - middle, middle - max(at, corner), Fraction(0))
            for at, corner, middle in zip(copy.at, corners, seated.middle, strict=True)
        ]
        if max(over) > 0:
            said = _shown(plan, max(over))
            yield _finding(
                "off-its-side",
                "fault",
                thing,
                f"{thing.name}: its middle lies {said} beside the {seated.side} of"
                f" {plan.parts[seated.part].name} {seated.mark}",
                f"move it by {said} and more, so that there is wood under it",
                place_sizes(plan, copy),
                by=max(over),
            )
            return


def _in_the_way(plan: Plan, placed: Placed) -> Iterator[tuple[tuple[int, int], Finding]]:
    """Hardware that stands in wood, or in other hardware, with everything shut."""
    things = [one for one in placed.lying if one.hardware]
    wood = [one for one in placed.lying if not one.hardware]
    pairs = [*((one, other) for one in things for other in wood), *combinations(things, 2)]
    for one, other in pairs:
        finding = _clash(plan, placed, one, other)
        if finding is not None:
            yield (one.number, other.number), finding


def _clash(plan: Plan, placed: Placed, one: Lying, other: Lying) -> Finding | None:
    if not overlaps(one.reach, other.reach):
        return None
    how = relation(one, other)
    both = placed.body(one.copy.shape) ^ placed.second(how)
    if both.is_empty() or 2 * both.volume() <= TOUCHING * both.surface_area():
        return None
    bounds = both.bounding_box()
    by = exact(round(min(bounds[n + 3] - bounds[n] for n in range(3)), 3))
    said = _shown(plan, by)
    thing = next(t for t in plan.hardware.values() if t.name == one.hardware)
    return _finding(
        "hardware-in-wood" if not other.hardware else "hardware-in-hardware",
        "fault",
        thing,
        f"{one.called} stands {said} in {called(other)}",
        f"move it by {said}, or take a smaller one",
        place_sizes(plan, one.copy, other.copy),
        by=by,
    )


HARDWARE: Working[FittedOut] = Working(
    "hardware", "Has the hardware its room, its count and its measure?", look_at_hardware, (PLACED,)
)
