"""Every copy of every part, from the whole piece down."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from benchalong.ground.lengths import ORIGIN, Point3
from benchalong.plan.circles import in_order
from benchalong.plan.model import Assembly, AssemblyId, PartId, Tilt, Turn
from benchalong.plan.tilts import after_tilt, carried
from benchalong.plan.turns import UNTURNED, after, moved, turned


@dataclass(frozen=True)
class Standing:
    """A part or assembly where it stands in the piece: point -> turn * point + at."""

    of: PartId | AssemblyId
    is_part: bool
    mark: str
    """From the piece down: `LD/H`; of the piece itself nothing."""
    assemblies: tuple[AssemblyId, ...]
    """It stands in, from the piece down."""
    turn: Turn
    at: Point3
    tilt: Tilt | None = None
    """How it is turned from there; None for what stands square."""


def walk(assemblies: Mapping[AssemblyId, Assembly], piece: AssemblyId) -> Iterator[Standing]:
    """Everything that stands in the piece, itself first, in the order written. There must be no circles."""
    waiting = [Standing(piece, False, "", (), UNTURNED, ORIGIN)]
    while waiting:
        here = waiting.pop()
        yield here
        if not here.is_part:
            waiting.extend(reversed(list(_inside(here, assemblies[here.of]))))


def _inside(here: Standing, assembly: Assembly) -> Iterator[Standing]:
    for placed in assembly.placed:
        yield Standing(
            placed.of,
            placed.kind == "part",
            f"{here.mark}/{placed.mark}" if here.mark else placed.mark,
            (*here.assemblies, here.of),
            after(placed.turn, here.turn),
            moved(turned(placed.at, here.turn), here.at),
            after_tilt(carried(placed.tilt, here.turn, here.at), here.tilt),
        )


def copies_of(contents: Mapping[str, Sequence[str]], piece: str) -> Counter[str]:
    """How many copies of each part and assembly stand in the piece, without going to each one.

    `contents` says what is placed in each assembly, as often as it is; there must be no circles.
    """
    counts: Counter[str] = Counter({piece: 1})
    for assembly in reversed(in_order(contents).order):
        for of in contents[assembly]:
            counts[of] += counts[assembly]
    return counts
