"""Do two cuts of one part leave wood between them, and does each take wood of its own?"""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.ground.problems import Finding, Level
from benchalong.plan.model import SPAN, Axis, Cut, Surface
from benchalong.workings.cut_checks.bench import Bench
from benchalong.workings.cut_checks.bounds import SQUARE, Bounds, holds, length_of, meets

OPPOSITE: dict[Axis, frozenset[Surface]] = {
    "along": frozenset(("end a", "end b")),
    "across": frozenset(("edge a", "edge b")),
    "down": frozenset(("face", "back")),
}


def wood_between(bench: Bench, one: Cut, other: Cut) -> Iterator[Finding]:
    """Cuts from opposite sides that run into each other. Two mortises may be meant to."""
    if not (_stops(one) and _stops(other)):
        return
    for axis, pair in OPPOSITE.items():
        if any({a, b} == pair for a in one.surfaces for b in other.surfaces) and _run_together(
            one, other, axis
        ):
            message = f"{bench.called(other)} meets {bench.called(one)}, so nothing is left between them"
            level: Level = "doubt" if one.kind == other.kind == "mortise" else "fault"
            remedy = f"the part's {SPAN[axis]} is {bench.shown(bench.whole(axis))}; take less from one side"
            yield bench.finding("cuts-meet", level, other, message, remedy, also=(axis,))
            return


def _stops(cut: Cut) -> bool:
    """Whether it goes into the wood from one side only, with square walls."""
    return (
        cut.kind in SQUARE
        and cut.kind != "notch"
        and not (cut.kind == "mortise" and length_of(cut, "depth") is None)
    )


def _run_together(one: Cut, other: Cut, axis: Axis) -> bool:
    return any(_overlap(a.room, b.room, axis) for a in one.takes for b in other.takes)


def _overlap(one: Bounds, other: Bounds, axis: Axis) -> bool:
    """Whether they have room in common, or touch along the axis."""
    low, high = sorted((one[axis], other[axis]))
    joined = {**one, axis: (low[0], max(low[1], high[1]))}
    return high[0] <= low[1] and meets(joined, other)


def own_wood(bench: Bench, one: Cut, other: Cut) -> Iterator[Finding]:
    """A cut all of whose wood the other one takes."""
    if one.kind not in SQUARE or other.kind not in SQUARE:
        return
    for inner, outer in ((other, one), (one, other)):
        if inner.takes and all(any(holds(b.room, a.room) for b in outer.takes) for a in inner.takes):
            message = f"{bench.called(inner)} takes no wood that {bench.called(outer)} does not take"
            yield bench.finding(
                "cut-takes-no-wood", "doubt", inner, message, "leave one of the two out, or move it"
            )
            return
