"""Can each cut be made in its part, and does it leave wood?

Judged on the exact room that cuts take up, part by part. Whether a cut meets its partner in another part
is a question for the joints.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from benchalong.ground.problems import Finding
from benchalong.plan.model import Cut, Plan
from benchalong.workings.cut_checks.bench import Bench, Check, PairCheck
from benchalong.workings.cut_checks.pairs import own_wood, wood_between
from benchalong.workings.cut_checks.room import can_be_followed, leaves_wood, lies_inside, stops_inside
from benchalong.workings.cut_checks.sizes import above_zero, runs_forward, sensible
from benchalong.workings.cut_checks.standing import stands_inside, takes_wood
from benchalong.workings.working import Worked, Working

CHECKS: tuple[Check, ...] = (
    above_zero,
    sensible,
    runs_forward,
    stands_inside,
    takes_wood,
    can_be_followed,
    lies_inside,
    leaves_wood,
    stops_inside,
)
"""Of each cut only the first trouble in this order is reported: the later ones mostly follow from it."""
PAIR_CHECKS: tuple[PairCheck, ...] = (wood_between, own_wood)
"""Of two cuts that are sound by themselves."""


def check_cuts(plan: Plan, _: Worked) -> tuple[None, tuple[Finding, ...]]:
    """Only findings; a part without cuts has none."""
    return None, tuple(finding for part in plan.parts.values() for finding in _check_part(Bench(plan, part)))


def _check_part(bench: Bench) -> Iterator[Finding]:
    sound: list[Cut] = []
    for cut in bench.part.cuts:
        found = _first(tuple(check(bench, cut)) for check in CHECKS)
        yield from found
        if not any(finding.level == "fault" for finding in found):
            sound.append(cut)
    for one, other in combinations(sound, 2):
        yield from _first(tuple(check(bench, one, other)) for check in PAIR_CHECKS)


def _first(found: Iterator[tuple[Finding, ...]]) -> tuple[Finding, ...]:
    return next((findings for findings in found if findings), ())


CUT_CHECK: Working[None] = Working("cut check", "Can each cut be made, and does it leave wood?", check_cuts)
