"""Are the cut's sizes ones that a cut can have?"""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.ground.problems import Finding
from benchalong.plan.cuts.resolving import ABOVE_ZERO
from benchalong.plan.model import Axis, Cut
from benchalong.plan.reckoning import LONGEST, THINNEST
from benchalong.workings.cut_checks.bench import Bench
from benchalong.workings.cut_checks.bounds import is_empty, length_of

RUNNING = ("groove", "dado", "rabbet", "taper")
"""Kinds that go from one place to another."""


def above_zero(bench: Bench, cut: Cut) -> Iterator[Finding]:
    for size in cut.sizes:
        if size.name in ABOVE_ZERO and size.length <= 0:
            message = f"{bench.called(cut)} has a {size.name} of {bench.shown(size.length)}"
            remedy = f"make its {size.name} greater by more than {bench.shown(-size.length)}"
            yield bench.finding("cut-size-not-above-zero", "fault", cut, message, remedy, key=size.name)


def sensible(bench: Bench, cut: Cut) -> Iterator[Finding]:
    for size in cut.sizes:
        if abs(size.length) > LONGEST or (size.name in ABOVE_ZERO and size.length < THINNEST):
            message = f"{bench.called(cut)} has a {size.name} of {float(size.length):g} mm"
            remedy = "between 0.01 mm and 100 m; is a unit missing or wrong?"
            yield bench.finding("cut-size-absurd", "fault", cut, message, remedy, key=size.name)


def runs_forward(bench: Bench, cut: Cut) -> Iterator[Finding]:
    """`from` before `to`; a taper may run either way but not stand still."""
    if cut.kind not in RUNNING:
        return
    if cut.kind == "taper":
        is_nowhere = length_of(cut, "from") == length_of(cut, "to")
    else:
        is_nowhere = any(is_empty(prism.room) for prism in cut.takes)
    if is_nowhere:
        message = f"{bench.called(cut)} ends where it begins or before, so it takes no wood"
        key = "to" if length_of(cut, "to") is not None else "from"
        axis: Axis = "across" if cut.kind == "dado" or cut.surfaces[0].startswith("end") else "along"
        yield bench.finding(
            "cut-takes-no-wood",
            "fault",
            cut,
            message,
            "let it end beyond the place where it begins",
            key=key,
            also=(axis,),
        )
