"""What stands free: does it tip with its doors and drawers open, and does it carry who stands on it?

All that opens is opened at once, each as far as it brings its weight furthest out; empty, except for what a
part that goes with it is said to carry. Then a child hangs on what stands out furthest.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from benchalong.ground.problems import Finding
from benchalong.ground.words import in_sentence
from benchalong.plan.model import Plan, StandsFree
from benchalong.trade import fixings as trade
from benchalong.trade.bearing import breaking_stress, middle_stress, thickness_for
from benchalong.trade.strength import GRAVITY
from benchalong.workings.bodies import Floats
from benchalong.workings.holding.balance import Mass, masses, together
from benchalong.workings.holding.path import load_on
from benchalong.workings.holding.words import far, finding, heavy, sizes_of_part, sizes_of_piece
from benchalong.workings.placed import Placed
from benchalong.workings.pose import pose
from benchalong.workings.sweep import Sliding, Turning
from benchalong.workings.weights import Weights
from benchalong.workings.what_moves import Moving, motion_of
from benchalong.workings.woods import Woods

ON_FLOOR = 0.05
"""Mm above the lowest point that still stand on the floor."""
OPENS = 10.0
"""Mm by which something must come out to be hung on."""
TO = {"front": (1, -1), "back": (1, 1), "left": (0, -1), "right": (0, 1)}
"""Axis and sign of each way it may tip."""
ANGLES = 37
"""Positions a door is tried in."""


@dataclass(frozen=True)
class Tips:
    """One way it may go over. Kilograms and mm."""

    way: str
    weight: float
    behind: float
    """How far its weight acts behind the line its feet turn over, with all that opens this way open."""
    before: float
    """How far what is pulled on stands out before that line; 0 where nothing does."""
    pulled: str
    """What it is: its mark."""
    needs: float
    """How much further out the feet must stand for the child not to tip it; 0 when they needn't."""
    opened: tuple[str, ...]


@dataclass(frozen=True)
class Carries:
    """A part that is stood on."""

    part: str
    stress: float
    """N/mm2 at the middle."""
    may: float
    thick: float
    """The thickness at which the one comes to the other, mm."""


@dataclass(frozen=True)
class Stands:
    standing: StandsFree
    weight: float
    unweighed: tuple[str, ...]
    height: float
    tips: tuple[Tips, ...]
    carries: tuple[Carries, ...]


def stand(
    plan: Plan, standing: StandsFree, placed: Placed, moving: Sequence[Moving], weights: Weights, woods: Woods
) -> tuple[Stands | None, tuple[Finding, ...]]:
    """None while nothing is placed, or nothing could be weighed."""
    weighed = masses(plan, placed, weights)
    if not weighed:
        message = "nothing is known of its weight, so whether it tips can't be said"
        remedy = "a species for its stock"
        return None, (finding("weight-not-known", "note", ("standing",), plan.piece or "", message, remedy),)
    room = _Room(plan, placed, moving, weighed)
    tips = tuple(room.tips(way, float(standing.pull)) for way in TO)
    carries = tuple(_carries(plan, standing, woods))
    stands = Stands(
        standing,
        together(weighed.values()).kilograms,
        tuple(plan.parts[name].name for name in weights.unknown),
        float(max(one.reach[1][2] for one in placed.lying) - min(one.reach[0][2] for one in placed.lying)),
        tips,
        carries,
    )
    return stands, (*_tipping(plan, stands), *_stood_on(plan, room, stands), *_weak(plan, stands))


class _Room:
    def __init__(
        self, plan: Plan, placed: Placed, moving: Sequence[Moving], weighed: Mapping[int, Mass]
    ) -> None:
        self.plan, self.placed, self.moving, self.weighed = plan, placed, moving, weighed
        self.points = {one.number: _points(placed, one.number) for one in placed.lying}
        lowest = min(points[:, 2].min() for points in self.points.values() if len(points))
        feet = np.concatenate([points[points[:, 2] < lowest + ON_FLOOR] for points in self.points.values()])
        self.low, self.high = feet.min(axis=0), feet.max(axis=0)

    def line(self, way: str) -> float:
        """Where it tips over, along the axis of the way and positive outwards."""
        axis, sign = TO[way]
        return float(self.high[axis] if sign > 0 else -self.low[axis])

    def tips(self, way: str, pull: float) -> Tips:
        axis, sign = TO[way]
        line, parts, opened = self.line(way), dict(self.weighed), []
        before, pulled = 0.0, ""
        for one in self.moving:
            motion = motion_of(one.moves)
            at, reach = max(self._out(motion, one, axis, sign, where) for where in _positions(motion))
            shut = self._out(motion, one, axis, sign, 0.0)[0]
            if at - shut < OPENS:
                continue
            opened.append(one.goes)
            for number in one.copies:
                held = self._held(number)
                if number in parts or held:
                    parts[number] = self._moved(motion, axis, sign, one, number, held)
            if reach - line > before:
                before, pulled = reach - line, one.goes
        whole = together(parts.values())
        behind = line - sign * float(whole.centre[axis])
        needs = trade.feet_forward(
            whole.kilograms, behind=behind, pull=pull if pulled else 0.0, before=before
        )
        return Tips(way, whole.kilograms, behind, before, pulled, needs, tuple(opened))

    def _out(
        self, motion: Turning | Sliding, one: Moving, axis: int, sign: int, where: float
    ) -> tuple[float, float]:
        """How far out its weight acts, and how far it reaches, at a position."""
        mass = together(self.weighed[n] for n in one.copies if n in self.weighed)
        points = np.concatenate([self.points[n] for n in one.copies])
        centre = mass.centre if mass.kilograms else points.mean(axis=0)
        at = float(sign * _at(motion, centre[None], where)[0, axis])
        return at, float((sign * _at(motion, points, where)[:, axis]).max())

    def _moved(
        self, motion: Turning | Sliding, axis: int, sign: int, one: Moving, number: int, held: float
    ) -> Mass:
        """A copy with what it carries, where the thing it goes with is furthest out."""
        where = max(_positions(motion), key=lambda w: self._out(motion, one, axis, sign, w))
        own = self.weighed.get(number, Mass(0.0, np.zeros(3)))
        middle = self.points[number].mean(axis=0)
        both = together([own, Mass(held, middle)])
        return Mass(both.kilograms, _at(motion, both.centre[None], where)[0])

    def _held(self, number: int) -> float:
        lying = self.placed.lying[number]
        is_loaded = not lying.hardware and lying.copy.part in self.plan.loads
        return float(load_on(self.plan, lying.copy.part)) if is_loaded else 0.0


def _positions(motion: Turning | Sliding) -> list[float]:
    """From shut to open: degrees, or mm."""
    most = motion.angle if isinstance(motion, Turning) else motion.travel
    return np.linspace(0.0, most, ANGLES).tolist() if isinstance(motion, Turning) else [0.0, most]


def _at(motion: Turning | Sliding, points: Floats, where: float) -> Floats:
    if isinstance(motion, Sliding):
        return np.asarray(points + where * np.array(motion.way))
    return np.asarray((points - motion.point) @ motion.matrices(np.array([where]))[0].T + motion.point)


def _points(placed: Placed, number: int) -> Floats:
    one = placed.lying[number]
    turn, at = pose(one.copy)
    return np.asarray(placed.solids[one.copy.shape].vertices @ turn.T + at)


def _tipping(plan: Plan, stands: Stands) -> Iterator[Finding]:
    for tips in stands.tips:
        if tips.behind <= 0:
            opened = f" with {_listed(tips.opened)} open" if tips.opened else ""
            yield finding(
                "tips-over",
                "fault",
                ("standing",),
                plan.piece or "",
                f"it falls to the {tips.way} by itself{opened}: its weight acts"
                f" {far(plan, -tips.behind)} outside its feet",
                f"set its feet {far(plan, -tips.behind)} and more further to the {tips.way}, let less come"
                " out, or fix it to the wall and let one thing open at a time",
                {"outside": -tips.behind},
                sizes_of_piece(plan),
            )
        elif tips.needs > 0 and not stands.standing.restrained:
            pull = heavy(plan, float(stands.standing.pull))
            yield finding(
                "tips-when-pulled",
                "fault",
                ("standing",),
                plan.piece or "",
                f"{pull} on {tips.pulled} tip it to the {tips.way} with {_listed(tips.opened)} open: they act"
                f" {far(plan, tips.before)} outside its feet, and its {heavy(plan, tips.weight)} only"
                f" {far(plan, tips.behind)} inside",
                f"fix it to the wall and say restrained: yes, or set its feet {far(plan, tips.needs)}"
                f" further to the {tips.way}",
                {"before": tips.before, "behind": tips.behind, "feet": tips.needs},
                sizes_of_piece(plan),
            )


def _stood_on(plan: Plan, room: _Room, stands: Stands) -> Iterator[Finding]:
    """Somebody on the very edge of what is stood on."""
    person = float(stands.standing.carries or 0)
    whole = together(room.weighed.values())
    for one in room.placed.lying if person else ():
        if one.hardware or one.copy.part not in stands.standing.on:
            continue
        for way, (axis, sign) in TO.items():
            line = room.line(way)
            edge = float(one.reach[1][axis] if sign > 0 else -one.reach[0][axis])
            behind = line - sign * float(whole.centre[axis])
            needs = trade.feet_forward(whole.kilograms, behind=behind, pull=person, before=edge - line)
            if edge > line and needs > 0:
                yield finding(
                    "tips-when-stood-on",
                    "fault",
                    ("standing",),
                    one.copy.part,
                    f"{heavy(plan, person)} on the {way} edge of {in_sentence(one.part.name)} {one.copy.mark}"
                    f" tip it: that edge is {far(plan, edge - line)} outside its feet",
                    f"set its feet {far(plan, needs)} further to the {way}, or make that part narrower by it",
                    {"outside": edge - line, "feet": needs},
                    sizes_of_piece(plan),
                )


def _carries(plan: Plan, standing: StandsFree, woods: Woods) -> Iterator[Carries]:
    for name in standing.on if standing.carries else ():
        part, load = plan.parts[name], plan.loads.get(name)
        may = breaking_stress(woods.solid.get(part.stock), woods.sheets.get(part.stock))
        if may is None:
            continue
        span = float((load.span if load else None) or part.length)
        force = float(standing.carries or 0) * GRAVITY
        wide, thick = float(part.width), float(part.thickness)
        stress = middle_stress(force, span, width=wide, thickness=thick)
        yield Carries(name, stress, may, thickness_for(force, span, width=wide, stress=may))


def _weak(plan: Plan, stands: Stands) -> Iterator[Finding]:
    for one in stands.carries:
        if one.stress > one.may:
            part = plan.parts[one.part]
            person = heavy(plan, float(stands.standing.carries or 0))
            yield finding(
                "tread-weak",
                "fault",
                ("parts", one.part),
                one.part,
                f"{part.name} is too thin for {person} at its middle: {one.stress:.1f} N/mm² of {one.may:.1f}"
                " that its wood is let bear (an estimate, a quarter of what breaks it)",
                f"{far(plan, one.thick)} thick, a shorter span, or a rail under it",
                {"thickness": float(part.thickness), "needed": one.thick},
                sizes_of_part(plan, one.part),
            )


def _listed(marks: Sequence[str]) -> str:
    return " and ".join(marks) if len(marks) < 3 else f"{', '.join(marks[:-1])} and {marks[-1]}"
