"""How long work takes: common practice, no source, and an author's to change.

A setup takes its minutes once. Each stroke takes handling and the length fed at the tool's speed; by hand a
cut takes minutes for its length and the wood taken away.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from benchalong.ground.lengths import METRE, Length
from benchalong.trade.ways.model import Family, Tool

SETTING: Mapping[Tool, Fraction] = {
    "table saw with a stacked cutter": Fraction(15),
    "table saw": Fraction(5),
    "router table": Fraction(10),
    "router": Fraction(8),
    "hand tools": Fraction(3),
    "track saw": Fraction(5),
    "band saw": Fraction(6),
    "mitre saw": Fraction(4),
    "jointer": Fraction(3),
    "planer": Fraction(3),
    "drill press": Fraction(6),
    "drill": Fraction(4),
    "jigsaw": Fraction(3),
    "bench": Fraction(2),
}
HANDLING: Mapping[Tool, Fraction] = {
    "table saw with a stacked cutter": Fraction(1, 2),
    "table saw": Fraction(1, 2),
    "router table": Fraction(1, 2),
    "router": Fraction(3),
    "hand tools": Fraction(1),
    "track saw": Fraction(3, 2),
    "band saw": Fraction(1, 2),
    "mitre saw": Fraction(1, 2),
    "jointer": Fraction(1, 2),
    "planer": Fraction(1, 2),
    "drill press": Fraction(1),
    "drill": Fraction(1),
    "jigsaw": Fraction(2),
    "bench": Fraction(1),
}
"""Each stroke: taking up, placing, clamping where the tool goes to the work, putting down."""
FEED: Mapping[Tool, Fraction] = {
    "table saw with a stacked cutter": Fraction(2),
    "table saw": Fraction(3),
    "router table": Fraction(3, 2),
    "router": Fraction(1),
    "hand tools": Fraction(1, 4),
    "track saw": Fraction(2),
    "band saw": Fraction(3, 2),
    "mitre saw": Fraction(2),
    "jointer": Fraction(3),
    "planer": Fraction(5),
    "drill press": Fraction(1, 4),
    "drill": Fraction(1, 4),
    "jigsaw": Fraction(1, 2),
    "bench": Fraction(1, 2),
}
"""Metres a minute."""
TO_THE_WORK: frozenset[Tool] = frozenset({"router", "track saw", "drill", "jigsaw"})
AGAIN = Fraction(1, 10)
"""Minutes between one stroke and the next."""
BY_HAND: Mapping[Family, Fraction] = {
    "rough crosscut": Fraction(2),
    "split rough": Fraction(3),
    "rip": Fraction(5),
    "crosscut to length": Fraction(5),
    "groove": Fraction(5),
    "dado": Fraction(12),
    "stopped dado": Fraction(15),
    "rabbet": Fraction(6),
    "tongue": Fraction(10),
    "tenon": Fraction(12),
    "mortise": Fraction(15),
    "pilot hole": Fraction(1),
    "tails": Fraction(25),
    "pins": Fraction(30),
    "fingers": Fraction(25),
    "hinge gain": Fraction(8),
    "flush": Fraction(2),
}
"""Marking out, sawing and paring one by hand, besides what the wood taken away costs; 5 where not said."""


@dataclass(frozen=True)
class Minutes:
    """The rates that times are reckoned with."""

    setting: Mapping[Tool, Fraction] = field(default_factory=lambda: SETTING)
    handling: Mapping[Tool, Fraction] = field(default_factory=lambda: HANDLING)
    feed: Mapping[Tool, Fraction] = field(default_factory=lambda: FEED)
    each: Mapping[Family, Fraction] = field(default_factory=lambda: BY_HAND)
    test_cut: Fraction = Fraction(4)
    """To cut a test piece and try its fit."""
    sacrificial_fence: Fraction = Fraction(5)
    """To fix a sacrificial fence and raise the cutter into it."""
    jig: Fraction = Fraction(20)
    """To make and tune a simple jig: a sled, a finger jig, a cradle."""
    cubic: Fraction = Fraction(1, 4)
    """Minutes for each cubic centimetre taken away by hand in hardwood; half of that in softwood."""
    sanding: Fraction = Fraction(20)
    """Minutes for a square metre, through all grits."""
    glue_line: Fraction = Fraction(4)
    """Minutes for each metre of a glued edge: spreading, clamping, cleaning."""
    pace: Fraction = Fraction(1)
    """Everything times this: 1 1/2 for who does it the first time."""

    def setup(self, tool: Tool, *, with_test: bool, extra: Fraction) -> Fraction:
        return self.pace * (self.setting[tool] + extra + (self.test_cut if with_test else 0))

    def strokes(self, tool: Tool, fed: Length, *, strokes: int, placed: int) -> Fraction:
        """Strokes of a length in mm each; where the tool goes to the work, that is placed and clamped only
        `placed` times."""
        handled = placed if tool in TO_THE_WORK else strokes
        fed_for = strokes * (AGAIN + fed / METRE / self.feed[tool])
        return self.pace * (handled * self.handling[tool] + fed_for)

    def by_hand(self, family: Family, taken: Fraction, *, is_soft: bool) -> Fraction:
        """For one, `taken` cubic mm taken away."""
        return self.pace * (
            self.each.get(family, Fraction(5)) + self.cubic * taken / 1000 / (2 if is_soft else 1)
        )


def rounded(minutes: Fraction) -> int:
    """As a page says it: whole minutes up to ten, then fives; never none."""
    step = 1 if minutes <= 10 else 5
    return max(1, int(-(-minutes // step)) * step)
