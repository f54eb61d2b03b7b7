"""Does the cut lie in the part's wood, and is any wood left beside it?"""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.ground.problems import Finding, Level
from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.model import AXES, SPAN, Axis, Cut, Outline
from benchalong.workings.cut_checks.bench import Bench
from benchalong.workings.cut_checks.bounds import (
    SIDES,
    SQUARE,
    length_of,
    meets,
    reach_beyond,
    spanned,
    whole,
)
from benchalong.workings.cut_checks.shape import trouble_with


def lies_inside(bench: Bench, cut: Cut) -> Iterator[Finding]:
    """The first body that leaves the wood is reported. Holes may break out of an edge on purpose."""
    for prism in cut.takes:
        beyond = reach_beyond(prism, bench.part)
        also = tuple(axis for axis in AXES if set(SIDES[axis]) & set(beyond))
        if beyond and not meets(prism.room, whole(bench.part)):
            message = f"{bench.called(cut)} lies outside the wood"
            remedy = f"the part is {_measures(bench)}; bring it inside"
            yield bench.finding("cut-outside-part", "fault", cut, message, remedy, also=also)
            return
        if beyond:
            said = " and ".join(f"{bench.shown(over)} beyond {side}" for side, over in beyond.items())
            remedy = f"make it smaller or move it, by {bench.shown(max(beyond.values()))}"
            level: Level = "doubt" if cut.kind == "hole" else "fault"
            message = f"{bench.called(cut)} reaches {said}"
            yield bench.finding("cut-partly-outside", level, cut, message, remedy, also=also)
            return


def _measures(bench: Bench) -> str:
    return " x ".join(bench.shown(bench.whole(axis)) for axis in AXES)


def leaves_wood(bench: Bench, cut: Cut) -> Iterator[Finding]:
    """A square cut as large as the part in two directions severs it; in three it leaves nothing."""
    for prism in cut.takes if cut.kind in SQUARE else ():
        across = spanned(prism.room, bench.part)
        if len(across) == 3:
            message = f"{bench.called(cut)} leaves nothing of the part"
            remedy = f"the part is {_measures(bench)}; take less"
            yield bench.finding("cut-leaves-nothing", "fault", cut, message, remedy, also=across)
            return
        if len(across) == 2:
            said = " and ".join(f"{SPAN[axis]} of {bench.shown(bench.whole(axis))}" for axis in across)
            message = f"{bench.called(cut)} takes the part's whole {said}, so nothing is left beside it"
            remedy = f"take less than {bench.shown(min(bench.whole(axis) for axis in across))} one way"
            yield bench.finding("cut-severs-part", "fault", cut, message, remedy, also=across)
            return


def stops_inside(bench: Bench, cut: Cut) -> Iterator[Finding]:
    """A depth that is the whole wood: for a mortise or hole there is a word for going through."""
    if cut.kind not in ("groove", "dado", "mortise", "hole") or length_of(cut, "depth") is None:
        return
    axis: Axis = SURFACES[cut.surfaces[0]].inward
    if axis in spanned(cut.takes[0].room, bench.part):
        message = f"{bench.called(cut)} is as deep as there is wood, {bench.shown(bench.whole(axis))}"
        remedy = (
            "write depth: through, or make it less deep"
            if cut.kind in ("mortise", "hole")
            else "make it less deep"
        )
        yield bench.finding("cut-goes-through", "doubt", cut, message, remedy, key="depth", also=(axis,))


def can_be_followed(bench: Bench, cut: Cut) -> Iterator[Finding]:
    """A shaped outline that a saw can follow."""
    for prism in cut.takes if cut.kind == "outline" else ():
        trouble = trouble_with(prism.shape) if isinstance(prism.shape, Outline) else None
        if trouble is not None:
            message, remedy = trouble
            yield bench.finding(
                "outline-unsound", "fault", cut, f"{bench.called(cut)} {message}", remedy, key="corners"
            )
