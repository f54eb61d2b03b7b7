"""How the piece is held, as plain data. Weights in kilograms, told to a gram."""

from __future__ import annotations

from fractions import Fraction

from benchalong.plan.model import Plan
from benchalong.publishing.plain import Json, Plain
from benchalong.workings.holding.held import Held
from benchalong.workings.holding.hung import Hung
from benchalong.workings.holding.lids import Lid
from benchalong.workings.holding.path import Way
from benchalong.workings.holding.standing import Carries, Stands, Tips
from benchalong.workings.holding.words import measured


def held_json(plan: Plan, held: Held) -> Json:
    says = _Says(plan)
    return {
        "hanging": says.hung(held.hung) if held.hung else None,
        "standing": says.stands(held.stands) if held.stands else None,
        "lids": [says.lid(lid) for lid in held.lids],
    }


class _Says:
    def __init__(self, plan: Plan) -> None:
        self.plain = Plain(plan.units, plan.precision)

    def hung(self, hung: Hung) -> Json:
        hanging = hung.hanging
        return {
            "rail": hanging.rail,
            "way": hanging.way,
            "fixings": hanging.fixings,
            "into": hanging.into,
            "studs": self.plain.length(hanging.studs),
            "studs_assumed": hanging.is_studs_assumed,
            "behind": self.plain.length(hanging.behind),
            "behind_assumed": hanging.is_behind_assumed,
            "load": _kg(hung.load),
            "load_said": hung.is_load_said,
            "own": _kg(hung.own),
            "not_weighed": list(hung.unweighed),
            "ways": [_way(way) for way in hung.ways],
            "count": hung.count,
            "each_down": _or_none(hung.down),
            "each_pull": _or_none(hung.pull),
            "may_down": _or_none(hung.may_down),
            "may_pull": _or_none(hung.may_pull),
            "thread": None if hung.thread is None else self.plain.length(hung.thread),
            "studs_met": list(hung.studs),
            "note": hanging.note,
        }

    def stands(self, stands: Stands) -> Json:
        standing = stands.standing
        return {
            "carries": _or_none(standing.carries),
            "on": list(standing.on),
            "restrained": standing.restrained,
            "pull": _kg(standing.pull),
            "weight": _kg(stands.weight),
            "not_weighed": list(stands.unweighed),
            "height": self.plain.length(measured(stands.height)),
            "tips": [self._tips(tips) for tips in stands.tips],
            "treads": [self._carries(carries) for carries in stands.carries],
            "note": standing.note,
        }

    def _tips(self, tips: Tips) -> Json:
        length = self.plain.length
        return {
            "way": tips.way,
            "opened": list(tips.opened),
            "behind": length(measured(tips.behind)),
            "before": length(measured(tips.before)),
            "pulled": tips.pulled,
            "needs": length(measured(tips.needs)),
        }

    def _carries(self, carries: Carries) -> Json:
        return {
            "part": carries.part,
            "stress": round(carries.stress, 2),
            "may": round(carries.may, 2),
            "thickness": self.plain.length(measured(carries.thick)),
        }

    def lid(self, lid: Lid) -> Json:
        length = self.plain.length
        return {
            "goes": lid.goes,
            "joint": lid.joint,
            "inside": [length(measured(side)) for side in lid.inside],
            "is_hiding_place": lid.is_hiding_place,
            "is_held": lid.is_held,
            "openings": lid.openings,
            "weight": _kg(lid.kilograms),
            "finger_room": length(measured(lid.finger_room)),
        }


def _way(way: Way) -> Json:
    return {
        "part": way.part,
        "weight": _kg(way.kilograms),
        "marks": list(way.marks),
        "joints": list(way.joints),
        "through": list(way.through),
        "sides": way.sides,
    }


def _kg(kilograms: float | Fraction) -> float:
    return round(float(kilograms), 3)


def _or_none(kilograms: float | Fraction | None) -> float | None:
    return None if kilograms is None else _kg(kilograms)
