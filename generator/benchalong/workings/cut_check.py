"""Can each cut be made in its part, and does it leave wood?

Judged on the exact room that cuts take up, part by part. Whether a cut meets its partner in another part
is a question for the joints.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import combinations
from typing import TypeAlias

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Path, Place
from benchalong.ground.problems import Finding, Level
from benchalong.ground.shown import shown
from benchalong.plan.cuts.resolving import ABOVE_ZERO
from benchalong.plan.model import Axis, Cut, Part, Plan
from benchalong.plan.reckoning import LONGEST, THINNEST
from benchalong.reading.written import PROJECT_FILE
from benchalong.workings.cut_bounds import (
    SIDES,
    SQUARE,
    bounds,
    holds,
    is_empty,
    length_of,
    meets,
    reach_beyond,
    spanned,
    whole,
)  # fmt: skip
from benchalong.workings.working import Worked, Working

PART_SIZES: dict[Axis, str] = {"along": "length", "across": "width", "down": "thickness"}


def check_cuts(plan: Plan, _: Worked) -> tuple[None, tuple[Finding, ...]]:
    """Only findings: a part without cuts has none."""
    return None, tuple(finding for part in plan.parts.values() for finding in _check_part(_Bench(plan, part)))


@dataclass(frozen=True)
class _Bench:
    """A part and the words to speak of its cuts with."""

    plan: Plan
    part: Part

    def shown(self, length: Length) -> str:
        return shown(length, self.plan.units, self.plan.precision).text

    def called(self, cut: Cut) -> str:
        return (
            f"the {cut.kind} {cut.where.split(',')[0]}"
            if cut.name == cut.kind
            else f"the {cut.kind} {cut.name}"
        )

    def finding(
        self,
        code: str,
        level: Level,
        cut: Cut,
        message: str,
        remedy: str,
        *,
        key: str = "",
        also: tuple[str, ...] = (),
    ) -> Finding:
        """A finding about a cut. `also` names the part's own sizes it hangs on."""
        path: Path = (PROJECT_FILE, "parts", self.part.id, "cuts", cut.index, *([key] if key else []))
        numbers = {size.name: size.length for size in cut.sizes} | {
            f"part {name}": getattr(self.part, name) for name in also
        }
        return Finding(
            code,
            level,
            Place(path),
            self.part.id,
            f"{self.part.name}: {message}",
            remedy,
            numbers,
            self.sizes(cut, also),
        )

    def sizes(self, cut: Cut, also: tuple[str, ...]) -> tuple[str, ...]:
        own = {name for size in cut.sizes for name in size.sizes}
        return tuple(sorted(own.union(*(self.part.follows.get(name, ()) for name in also))))


Check: TypeAlias = Callable[[_Bench, Cut], Iterator[Finding]]


def _check_part(bench: _Bench) -> Iterator[Finding]:
    for cut in bench.part.cuts:
        found = next((found for check in CHECKS if (found := tuple(check(bench, cut)))), ())
        yield from found
    for one, other in combinations(bench.part.cuts, 2):
        yield from _check_pair(bench, one, other)


def _sizes_above_zero(bench: _Bench, cut: Cut) -> Iterator[Finding]:
    for size in cut.sizes:
        if size.name in ABOVE_ZERO and size.length <= 0:
            message = f"{bench.called(cut)} has a {size.name} of {bench.shown(size.length)}"
            remedy = f"make the {size.name} greater by more than {bench.shown(-size.length)}"
            yield bench.finding("cut-size-not-above-zero", "fault", cut, message, remedy, key=size.name)


def _sizes_sensible(bench: _Bench, cut: Cut) -> Iterator[Finding]:
    for size in cut.sizes:
        if abs(size.length) > LONGEST or (size.name in ABOVE_ZERO and size.length < THINNEST):
            message = f"{bench.called(cut)} has a {size.name} of {float(size.length):g} mm"
            yield bench.finding(
                "cut-size-absurd", "fault", cut, message, "is a unit missing or wrong?", key=size.name
            )


def _runs_forward(bench: _Bench, cut: Cut) -> Iterator[Finding]:
    """`from` before `to`; a taper may run either way but not stand still."""
    start, stop = length_of(cut, "from"), length_of(cut, "to")
    empty = any(is_empty(bounds(prism)) for prism in cut.takes)
    if (start is not None or stop is not None) and (empty or (start == stop and start is not None)):
        remedy = "let it end beyond the place where it begins"
        message = f"{bench.called(cut)} ends before it begins, so it takes no wood"
        yield bench.finding(
            "cut-takes-no-wood",
            "fault",
            cut,
            message,
            remedy,
            key="from" if start is not None else "to",
            also=("length",),
        )


def _stands_inside(bench: _Bench, cut: Cut) -> Iterator[Finding]:
    """Tongues and tenons: what stands must be of the part's own wood."""
    for key, axis in (("thickness", "down"), ("width", "across")) if cut.kind in ("tongue", "tenon") else ():
        size, room = length_of(cut, key), bench.part.box[{"along": 0, "across": 1, "down": 2}[axis]]
        if size is None:
            continue
        own = PART_SIZES["down" if axis == "down" else "across"]
        if size > room:
            message = (
                f"{bench.called(cut)} has a {key} of {bench.shown(size)}, and the part {bench.shown(room)}"
            )
            remedy = f"make it {bench.shown(size - room)} less"
            yield bench.finding(
                f"{cut.kind}-thicker-than-part", "fault", cut, message, remedy, key=key, also=(own,)
            )
            continue
        yield from _stands_within(bench, cut, "across" if axis == "down" else "at", size, room, own)


def _stands_within(
    bench: _Bench, cut: Cut, key: str, size: Length, room: Length, own: str
) -> Iterator[Finding]:
    start = length_of(cut, key)
    if start is None:
        return
    over = max(-start, start + size - room)
    if over > 0:
        message = f"{bench.called(cut)} would stand {bench.shown(over)} outside the wood"
        remedy = f"move it by {bench.shown(over)}"
        yield bench.finding("cut-outside-part", "fault", cut, message, remedy, key=key, also=(own,))


def _takes_wood(bench: _Bench, cut: Cut) -> Iterator[Finding]:
    if not cut.takes:
        message = f"{bench.called(cut)} takes no wood: it is as thick as the part"
        yield bench.finding(
            "cut-takes-no-wood",
            "doubt",
            cut,
            message,
            "make it thinner, or leave it out",
            key="thickness",
            also=("thickness",),
        )


def _lies_inside(bench: _Bench, cut: Cut) -> Iterator[Finding]:
    box = whole(bench.part)
    for prism in cut.takes:
        beyond = reach_beyond(prism, bench.part)
        if not beyond:
            continue
        also = tuple(PART_SIZES[axis] for axis, sides in SIDES.items() if set(sides) & set(beyond))
        if not meets(bounds(prism), box):
            message, remedy = f"{bench.called(cut)} lies outside the wood", "bring it into the part"
            yield bench.finding("cut-outside-part", "fault", cut, message, remedy, also=also)
        else:
            said = " and ".join(f"{bench.shown(over)} beyond {side}" for side, over in beyond.items())
            remedy = f"make it smaller or move it, by {bench.shown(max(beyond.values()))}"
            level: Level = "doubt" if cut.kind == "hole" else "fault"
            yield bench.finding(
                "cut-partly-outside", level, cut, f"{bench.called(cut)} reaches {said}", remedy, also=also
            )
        return


def _leaves_wood(bench: _Bench, cut: Cut) -> Iterator[Finding]:
    """A square cut that spans the part in two directions severs it; in three it leaves nothing."""
    for prism in cut.takes if cut.kind in SQUARE else ():
        across = spanned(bounds(prism), bench.part)
        also = tuple(PART_SIZES[axis] for axis in across)
        if len(across) == 3:
            remedy = f"leave some of the {bench.shown(bench.part.thickness)} there are"
            yield bench.finding(
                "cut-leaves-nothing",
                "fault",
                cut,
                f"{bench.called(cut)} leaves nothing of the part",
                remedy,
                also=also,
            )
            return
        if len(across) == 2:
            message = f"{bench.called(cut)} goes right through, so nothing is left beside it"
            room = min(bench.part.box[("along", "across", "down").index(axis)] for axis in across)
            remedy = f"cut less deep than {bench.shown(room)}"
            yield bench.finding("cut-severs-part", "fault", cut, message, remedy, also=also)
            return


def _stops_inside(bench: _Bench, cut: Cut) -> Iterator[Finding]:
    """A mortise or hole whose depth is the whole wood is meant to go through, and may say so."""
    if cut.kind not in ("mortise", "hole") or length_of(cut, "depth") is None:
        return
    axis: Axis = {"f": "down", "b": "down", "e": "across"}.get(cut.surfaces[0][0], "down")  # type: ignore[assignment]
    if cut.surfaces[0].startswith("end"):
        axis = "along"
    if axis in spanned(bounds(cut.takes[0]), bench.part):
        message = f"{bench.called(cut)} is as deep as the part is thick there"
        yield bench.finding(
            "cut-goes-through",
            "doubt",
            cut,
            message,
            "write depth: through, or make it less deep",
            key="depth",
            also=(PART_SIZES[axis],),
        )


CHECKS: tuple[Check, ...] = (
    _sizes_above_zero,
    _sizes_sensible,
    _runs_forward,
    _stands_inside,
    _takes_wood,
    _lies_inside,
    _leaves_wood,
    _stops_inside,
)
"""In this order; of each cut only the first kind of trouble is reported."""


def _check_pair(bench: _Bench, one: Cut, other: Cut) -> Iterator[Finding]:
    if one.kind in SQUARE and other.kind in SQUARE:
        yield from _meeting(bench, one, other)
        yield from _taken_already(bench, one, other)


OPPOSITE = ({"face", "back"}, {"edge a", "edge b"}, {"end a", "end b"})


def _meeting(bench: _Bench, one: Cut, other: Cut) -> Iterator[Finding]:
    """Cuts from opposite sides that run into each other."""
    sides = [{a, b} for a in one.surfaces for b in other.surfaces if {a, b} in OPPOSITE]
    if (
        not sides
        or "notch" in (one.kind, other.kind)
        or any(cut.kind == "mortise" and length_of(cut, "depth") is None for cut in (one, other))
    ):
        return
    if any(meets(bounds(a), bounds(b)) for a in one.takes for b in other.takes):
        message = f"{bench.called(other)} and {bench.called(one)} meet, so nothing is left between them"
        level: Level = "doubt" if "mortise" in (one.kind, other.kind) else "fault"
        axis: Axis = next(
            axis for axis, names in SIDES.items() if {name.removeprefix("the ") for name in names} == sides[0]
        )
        remedy = f"make them less deep: there are {bench.shown(whole(bench.part)[axis][1])} of wood for both"
        yield bench.finding("cuts-meet", level, other, message, remedy, also=(PART_SIZES[axis],))


def _taken_already(bench: _Bench, one: Cut, other: Cut) -> Iterator[Finding]:
    """A cut all of whose wood an earlier or later one takes."""
    for inner, outer in ((other, one), (one, other)):
        if inner.takes and all(any(holds(bounds(b), bounds(a)) for b in outer.takes) for a in inner.takes):
            message = f"{bench.called(inner)} takes no wood that {bench.called(outer)} does not take"
            yield bench.finding(
                "cut-takes-no-wood", "doubt", inner, message, "leave one of the two out, or move it"
            )
            return


CUT_CHECK: Working[None] = Working("cut check", "Can each cut be made, and does it leave wood?", check_cuts)
