"""How much glue does each joint take, and how many clamps?

Glue by the area that the parts share, clamps by the length of the joint, both at the project's rates. Boards
glued up into one part (`glued_up:`) are not parts of the plan, so their joints are not in it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from benchalong.ground.lengths import to_nearest
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.plan.model import Joint, PartId, Plan
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.amounts import clamps, glue
from benchalong.trade.moisture import GLUED_APART
from benchalong.workings.across import is_fixed_by_hardware
from benchalong.workings.glue_faces import Met, glue_face
from benchalong.workings.grain import EDGES
from benchalong.workings.placed import PLACED, Placed
from benchalong.workings.working import Worked, Working

SQUARE_CENTIMETRE = Fraction(100)
TENTH = Fraction(1, 10)
GLUED = ("yes", "middle")
"""A dab needs no reckoning."""


@dataclass(frozen=True)
class GlueAmount:
    """Of one joint, all its copies together."""

    joint: str
    area: Fraction
    """Square mm, to a square centimetre."""
    grams: Fraction
    """To a tenth, what is squeezed out included."""
    clamps: int
    """At once, for one assembly: along joints that lie side by side each clamp holds all of them."""
    assemblies: int
    """How many such assemblies there are."""


@dataclass(frozen=True)
class Glue:
    joints: Mapping[str, GlueAmount]
    not_counted: tuple[PartId, ...]
    """Parts glued up from boards, whose joints the plan doesn't know."""

    @property
    def grams(self) -> Fraction:
        return sum((each.grams for each in self.joints.values()), Fraction(0))


def work_out_glue(plan: Plan, worked: Worked) -> tuple[Callable[[], Glue], tuple[Finding, ...]]:
    """Worked out when first asked for, as amounts are."""
    return cache(lambda: _glue(plan, worked[PLACED])), tuple(_damp_with_dry(plan))


def _glue(plan: Plan, placed: Placed) -> Glue:
    amounts = (_amount(plan, joint, placed) for joint in plan.joints.values() if joint.glue in GLUED)
    glued_up = tuple(part.id for part in plan.parts.values() if part.glued_up)
    return Glue({each.joint: each for each in amounts if each.area}, glued_up)


def _amount(plan: Plan, joint: Joint, placed: Placed) -> GlueAmount:
    area = sum((glue_face(joint, meeting, placed) for meeting in joint.meetings), Fraction(0))
    by_assembly = _clamps(plan, joint, placed)
    return GlueAmount(
        joint.id,
        to_nearest(area, SQUARE_CENTIMETRE),
        to_nearest(glue(area, plan.rates), TENTH),
        max(by_assembly.values(), default=0),
        len(by_assembly),
    )


def _clamps(plan: Plan, joint: Joint, placed: Placed) -> dict[str, int]:
    """By mark of the assembly that is glued up: a clamp over a rail holds both its ends; over boards edge to
    edge it holds every joint between them. Screws and nails need none."""
    along: dict[str, dict[str, int]] = {}
    side_by_side: dict[str, int] = {}
    for meeting in joint.meetings:
        takes = meeting.takes
        if takes is None or takes.part in joint.floats:
            continue
        met = Met(joint, meeting, placed.by_mark[meeting.cut_in.copy], placed.by_mark[takes.copy])
        needed, within = clamps(met.run, plan.rates), takes.copy.rpartition("/")[0]
        if takes.surfaces[0] in EDGES and meeting.cut_in.surfaces[0] in EDGES:
            side_by_side[within] = max(side_by_side.get(within, 0), needed)
        else:
            ends = along.setdefault(within, {})
            ends[takes.copy] = max(ends.get(takes.copy, 0), needed)
    within_all = dict.fromkeys([*along, *side_by_side])
    if is_fixed_by_hardware(joint):
        return dict.fromkeys(within_all, 0)
    return {mark: side_by_side.get(mark, 0) + sum(along.get(mark, {}).values()) for mark in within_all}


def _damp_with_dry(plan: Plan) -> Iterator[Finding]:
    """Boards whose moisture was measured, and is too far apart to glue."""
    for joint in plan.joints.values():
        pairs: dict[tuple[str, str], tuple[PartId, PartId]] = {}
        for meeting in joint.meetings if joint.glue == "yes" else ():
            if meeting.takes and meeting.takes.part not in joint.floats:
                parts = (meeting.cut_in.part, meeting.takes.part)
                stocks = (plan.parts[parts[0]].stock, plan.parts[parts[1]].stock)
                pairs.setdefault(stocks, parts)
        for (one_stock, other_stock), (one, other) in pairs.items():
            first, second = plan.stock[one_stock], plan.stock[other_stock]
            if first.moisture is None or second.moisture is None:
                continue
            apart = abs(first.moisture - second.moisture)
            if apart > GLUED_APART:
                said = [
                    f"{plan.parts[part].name} at {float(moisture):g} %"
                    for part, moisture in ((one, first.moisture), (other, second.moisture))
                ]
                yield Finding(
                    "glued-damp-with-dry",
                    "doubt",
                    Place((PROJECT_FILE, "joints", joint.id)).key(),
                    one,
                    f"{said[0]} and {said[1]} are glued to each other, {float(apart):g} points apart; "
                    f"common practice is {float(GLUED_APART):g} at most",
                    "let both lie in one room until a meter shows the same, before they are milled",
                )


GLUE: Working[Callable[[], Glue]] = Working(
    "glue", "How much glue and how many clamps does each joint take?", work_out_glue, (PLACED,)
)
