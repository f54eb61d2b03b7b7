"""Does what is said to stand against something touch it?

Read from boxes first, exactly; where two boxes touch or lie in each other, from the wood itself. What lies
in each other is told by the clashes.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.plan.model import Assembly, Plan
from benchalong.reading.written import PROJECT_FILE
from benchalong.workings.overlap import TOUCHING
from benchalong.workings.placed import PLACED, Lying, relation
from benchalong.workings.placed import Placed as Lies
from benchalong.workings.telling import Telling, called, exact, led, likewise, place_sizes, start, way_in
from benchalong.workings.working import Worked, Working

FURTHEST = 2_000.0
"""In mm: further apart isn't measured on the wood."""
WAYS = ((1, 0, 0), (0, 1, 0), (0, 0, 1))


@dataclass(frozen=True)
class _Gap:
    """What is open between two copies, the nearest of those that should touch."""

    one: Lying
    other: Lying
    by: Length
    axis: int | None
    """Along which it is open; None when it isn't along just one."""
    sign: int = 1
    """Which way the first must go."""


def check_touching(plan: Plan, worked: Worked) -> tuple[None, tuple[Finding, ...]]:
    lies = worked[PLACED]
    return None, tuple(
        finding for assembly in plan.assemblies.values() for finding in _in_assembly(plan, lies, assembly)
    )


def _in_assembly(plan: Plan, lies: Lies, assembly: Assembly) -> Iterator[Finding]:
    """Looked at once, wherever the assembly stands; copies of a row with the same gap together."""
    within = _first_standing(lies, assembly)
    found: dict[tuple[int, str, Length], list[_Gap]] = {}
    for placed in assembly.placed if within is not None else ():
        for who in placed.touches:
            gap = _gap(lies, _under(lies, within, placed.mark), _under(lies, within, who))
            if gap is not None:
                found.setdefault((placed.index, who, gap.by), []).append(gap)
    for (index, who, _), gaps in found.items():
        yield _finding(plan, lies, (assembly, index, who), gaps)


def _first_standing(lies: Lies, assembly: Assembly) -> str | None:
    """The mark where the assembly stands first in the piece; of the piece itself nothing."""
    for lying in lies.lying:
        if assembly.id in lying.copy.assemblies:
            depth = lying.copy.assemblies.index(assembly.id)
            return "/".join(lying.copy.mark.split("/")[:depth])
    return None


def _under(lies: Lies, within: str | None, mark: str) -> list[Lying]:
    whole = f"{within}/{mark}" if within else mark
    return [one for one in lies.lying if one.copy.mark == whole or one.copy.mark.startswith(f"{whole}/")]


def _gap(lies: Lies, ones: list[Lying], others: list[Lying]) -> _Gap | None:
    """None where any two of them touch."""
    gaps = [_between(lies, one, other) for one in ones for other in others]
    if not gaps or any(gap is None for gap in gaps):
        return None
    known = [gap for gap in gaps if gap is not None]
    return min(known, key=lambda gap: (gap.axis is None, gap.by, gap.one.number, gap.other.number))


def _between(lies: Lies, one: Lying, other: Lying) -> _Gap | None:
    if one.copy.tilt != other.copy.tilt:
        return _between_wood(lies, one, other)
    apart = [(max(one.room[0][n] - other.room[1][n], other.room[0][n] - one.room[1][n]), n) for n in range(3)]
    opened = [(by, n) for by, n in apart if by > 0]
    if len(opened) > 1:
        return _Gap(one, other, max(opened)[0], None)
    if opened:
        by, axis = opened[0]
        return _Gap(one, other, by, axis, 1 if one.room[1][axis] < other.room[0][axis] else -1)
    return _between_wood(lies, one, other)


def _between_wood(lies: Lies, one: Lying, other: Lying) -> _Gap | None:
    how = relation(one, other)
    open_by = float(lies.body(how.first).min_gap(lies.second(how), FURTHEST))
    return None if open_by <= TOUCHING else _Gap(one, other, exact(round(open_by, 4)), None)


def _finding(plan: Plan, lies: Lies, said: tuple[Assembly, int, str], gaps: list[_Gap]) -> Finding:
    assembly, index, who = said
    first, telling = gaps[0], Telling(plan)
    by = telling.shown(first.by)
    also = likewise(gap.one.copy.mark for gap in gaps[1:])
    remedy = (
        f"move {first.one.copy.mark} {_towards(lies, first, assembly, by)}, or leave {who} out of touches:"
    )
    message = f"{start(called(first.one))} should stand against {called(first.other)}, and {by} is open{also}"
    return Finding(
        "not-against",
        "fault",
        Place((PROJECT_FILE, "assemblies", assembly.id, "place", index, "touches")),
        first.one.copy.part,
        message,
        remedy,
        {"open": first.by},
        place_sizes(plan, first.one.copy, first.other.copy),
    )


def _towards(lies: Lies, gap: _Gap, assembly: Assembly, by: str) -> str:
    """How far and which way, as the author sees it who placed it."""
    if gap.axis is None:
        return f"against {gap.other.copy.mark}"
    x, y, z = (gap.sign * part for part in WAYS[gap.axis])
    within = "/".join(gap.one.copy.mark.split("/")[: _depth(gap.one, assembly)])
    return f"{by} {led(way_in(lies, within, (x, y, z)))}"


def _depth(lying: Lying, assembly: Assembly) -> int:
    """How many assemblies inside the piece hold this one, itself counted."""
    return lying.copy.assemblies.index(assembly.id)


TOUCHING_CHECK: Working[None] = Working(
    "touching", "Does what should stand against something touch it?", check_touching, (PLACED,)
)
