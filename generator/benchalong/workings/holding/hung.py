"""How a piece hangs on a wall: what its fixings carry, down and out of the wall, and what they may."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

import numpy as np

from benchalong.ground.lengths import Length
from benchalong.plan.model import Hanging, Plan
from benchalong.trade import fixings as trade
from benchalong.trade.strength import GRAVITY
from benchalong.workings.holding.balance import Mass, masses, together
from benchalong.workings.holding.path import Network, Way, load_on, ways
from benchalong.workings.placed import Lying, Placed
from benchalong.workings.weights import Weights


@dataclass(frozen=True)
class Hung:
    """How it hangs. Weights in kilograms, lengths in mm."""

    hanging: Hanging
    load: Fraction
    """Put in it."""
    is_load_said: bool
    """Else it is the sum of what its parts carry."""
    own: Fraction
    unweighed: tuple[str, ...]
    """Parts that could not be weighed."""
    ways: tuple[Way, ...]
    count: int | None
    down: float | None
    """On each fixing."""
    pull: float | None
    """Out of the wall, on each."""
    may_down: float | None
    """What is let count of what one carries; None where nothing says it."""
    may_pull: float | None
    thread: Length | None
    """In the stud."""
    from_wall: float
    """Where its weight and load act, in front of the wall."""
    above_foot: float
    """The fixings above the lower edge it would turn about."""
    rail: tuple[Length, Length, Length]
    """Length, width, thickness."""
    studs: tuple[int, int]
    """That the rail meets wherever it hangs, and at best."""

    @property
    def total(self) -> Fraction:
        return self.load + self.own

    @property
    def share(self) -> float | None:
        """Of what its fixings may carry, both ways together; over 1 there are too few."""
        if None in (self.down, self.pull, self.may_down, self.may_pull):
            return None
        assert self.down is not None
        assert self.pull is not None
        assert self.may_down
        assert self.may_pull is not None
        return self.down / self.may_down + (self.pull / self.may_pull if self.may_pull > 0 else 0)


class Weighed:
    """Every figure of `Hung`, from the wood where it lies."""

    def __init__(self, plan: Plan, hanging: Hanging, placed: Placed, weights: Weights, net: Network) -> None:
        self.plan, self.hanging, self.placed, self.weights, self.net = plan, hanging, placed, weights, net
        self.wood = [one for one in placed.lying if not one.hardware]
        self.rails = rails_of(hanging, placed)
        self.fixing = plan.hardware[hanging.fixings]

    def hung(self) -> Hung:
        plan, hanging, part = self.plan, self.hanging, self.plan.parts[self.hanging.rail]
        load, own = self._load(), together(masses(plan, self.placed, self.weights).values())
        whole = together([own, Mass(float(load), self._load_acts())])
        count, (thread, shank) = self.fixing.count, self._thread()
        from_wall, above = self._wall() - float(whole.centre[1]), self._height() - self._foot()
        pull = trade.pull_out(whole.kilograms, from_wall=from_wall, above_foot=above) if above > 0 else None
        may_down, may_pull = self._may(shank, thread)
        return Hung(
            hanging,
            load,
            hanging.load is not None,
            Fraction(round(own.kilograms * 1000), 1000),
            tuple(plan.parts[name].name for name in self.weights.unknown),
            tuple(ways(self.net, hanging.rail)),
            count,
            whole.kilograms / count if count else None,
            pull / count if count and pull is not None else None,
            may_down,
            may_pull,
            thread,
            from_wall,
            above,
            part.box,
            trade.studs_met(part.length, hanging.studs),
        )

    def _load(self) -> Fraction:
        if self.hanging.load is not None:
            return self.hanging.load
        return shelves_carry(self.plan)

    def _load_acts(self) -> np.ndarray[tuple[int], np.dtype[np.float64]]:
        """In the middle of what carries something; else in the middle of the piece."""
        carry = [one for one in self.wood if one.copy.part in self.plan.loads] or self.wood
        rooms = np.array([[[float(x) for x in corner] for corner in one.reach] for one in carry])
        return np.asarray((rooms[:, 0].min(axis=0) + rooms[:, 1].max(axis=0)) / 2)

    def _wall(self) -> float:
        return max(float(one.reach[1][1]) for one in self.wood)

    def _foot(self) -> float:
        return min(float(one.reach[0][2]) for one in self.wood)

    def _height(self) -> float:
        """Of the fixings: where they sit, or along the middle of the rail."""
        if self.fixing.seated:
            return float(sum(seated.middle[2] for seated in self.fixing.seated) / len(self.fixing.seated))
        return max(float(one.reach[0][2] + one.reach[1][2]) / 2 for one in self.rails)

    def _thread(self) -> tuple[Length | None, Length | None]:
        """How much of the screw is in the stud, and its shank. A cleat's go through its fellow alone."""
        length, shank = (self.fixing.size_of(key) for key in ("length", "diameter"))
        if self.hanging.into != "studs" or length is None or shank is None:
            return None, shank
        front = max(one.reach[0][1] for one in self.rails)
        wall = max(one.reach[1][1] for one in self.wood)
        through = wall - front if self.hanging.way == "rail" else self.plan.parts[self.hanging.rail].thickness
        return length - through - self.hanging.behind, shank

    def _may(self, shank: Length | None, thread: Length | None) -> tuple[float | None, float | None]:
        """Kilograms across it and out of the wall."""
        holds = self.hanging.each_holds
        if holds is not None:
            return trade.used(float(holds)), trade.used(float(holds))
        if self.hanging.into != "studs" or shank is None or thread is None:
            return None, None
        out = trade.withdrawal(float(shank), max(float(thread), 0.0))
        return trade.used(trade.across(float(shank))) / GRAVITY, trade.used(out) / GRAVITY


def shelves_carry(plan: Plan) -> Fraction:
    """All that its parts are said to carry."""
    return sum((load_on(plan, copy.part) for copy in plan.copies if copy.part in plan.loads), Fraction(0))


def rails_of(hanging: Hanging, placed: Placed) -> list[Lying]:
    return [one for one in placed.lying if not one.hardware and one.copy.part == hanging.rail]
