"""Tongues and tenons: is what stands made of the part's own wood?"""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.ground.lengths import Length
from benchalong.ground.problems import Finding
from benchalong.plan.model import SPAN, Axis, Cut
from benchalong.workings.cut_checks.bench import Bench
from benchalong.workings.cut_checks.bounds import length_of

STANDS: dict[str, tuple[tuple[str, str, Axis], ...]] = {
    "tongue": (("thickness", "across", "down"),),
    "tenon": (("thickness", "across", "down"), ("width", "at", "across")),
}
"""By kind: the size that stands, the key of its place, and the axis both lie on."""
LARGER = {"thickness": "thicker", "width": "wider"}


def stands_inside(bench: Bench, cut: Cut) -> Iterator[Finding]:
    for key, place, axis in STANDS.get(cut.kind, ()):
        size = length_of(cut, key)
        if size is not None and size > bench.whole(axis):
            yield _too_large(bench, cut, key, size, axis)
        elif size is not None:
            yield from _beside_the_wood(bench, cut, place, size, axis)


def _too_large(bench: Bench, cut: Cut, key: str, size: Length, axis: Axis) -> Finding:
    room = f"{SPAN[axis]} of {bench.shown(bench.whole(axis))}"
    message = f"{bench.called(cut)} has a {key} of {bench.shown(size)}, and the part a {room}"
    remedy = f"make it less by {bench.shown(size - bench.whole(axis))} or more"
    return bench.finding(
        f"{cut.kind}-{LARGER[key]}-than-part", "fault", cut, message, remedy, key=key, also=(axis,)
    )


def _beside_the_wood(bench: Bench, cut: Cut, place: str, size: Length, axis: Axis) -> Iterator[Finding]:
    start = length_of(cut, place)
    over = Length(0) if start is None else max(-start, start + size - bench.whole(axis))
    if over > 0:
        message = f"{bench.called(cut)} would stand {bench.shown(over)} outside the wood"
        remedy = f"move it by {bench.shown(over)}"
        yield bench.finding("cut-outside-part", "fault", cut, message, remedy, key=place, also=(axis,))


def takes_wood(bench: Bench, cut: Cut) -> Iterator[Finding]:
    """As thick as the part, and for a tenon as wide: then there is no shoulder."""
    if cut.kind in STANDS and not cut.takes:
        message = f"{bench.called(cut)} is as large as the part, so it takes no wood and has no shoulder"
        axes = tuple(axis for _, _, axis in STANDS[cut.kind])
        yield bench.finding(
            "cut-takes-no-wood",
            "doubt",
            cut,
            message,
            "make it smaller, or leave it out",
            key="thickness",
            also=axes,
        )
