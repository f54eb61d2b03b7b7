"""Limits and allowances that shops keep to: common practice, no source; the manual of the tool at hand goes
before.

A limit has a figure in each system; a piece at either keeps it.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from benchalong.ground.lengths import INCH, Length
from benchalong.trade.ways.model import Limit, Tool


def _limit(inch: str, millimetre: str) -> Limit:
    return Limit(Fraction(inch) * INCH, Fraction(millimetre))


ACCURACY: Mapping[Tool, Length] = {
    "table saw with a stacked cutter": Length(1, 5),
    "table saw": Length(2, 5),
    "router table": Length(1, 5),
    "router": Length(3, 10),
    "hand tools": Length(2, 5),
    "track saw": Length(1, 2),
    "band saw": Length(4, 5),
    "mitre saw": Length(2, 5),
    "jointer": Length(1, 10),
    "planer": Length(1, 10),
    "drill press": Length(1, 4),
    "drill": Length(1, 2),
    "jigsaw": Length(1),
    "bench": Length(1, 5),
}
"""What a width or place comes out within, mm; some work of a tool comes out otherwise and says so."""

# How small a piece may be

PLANER_SHORTEST = _limit("12", "300")
"""Or the spacing of the rollers and 2 in (50 mm), if that is more."""
PLANER_THINNEST = _limit("1/4", "6")
JOINTER_SHORTEST = _limit("12", "300")
JOINTER_NARROWEST = _limit("3/4", "19")
JOINTER_THINNEST = _limit("1/2", "12")
"""Face down."""
RIP_SHORTEST = _limit("12", "300")
"""And longer than wide."""
NARROW_STRIP = _limit("3/4", "19")
"""A narrower strip is cut on the free side of the blade."""
PUSH_STICK = _limit("6", "150")
"""From the fence to the cutter: nearer than this, a push stick goes where a hand would."""
MITRE_SAW_SHORTEST = _limit("8", "200")
MITRE_SAW_CLAMPED = _limit("12", "300")
"""Below this it is clamped, not held."""
HANDS = _limit("6", "150")
"""Hands keep this far from any cutter, so this much wood is needed to hold on to."""
TABLE_SHORTEST = _limit("8", "200")
"""Run along a router table's fence."""
TABLE_PUSHED = _limit("12", "300")
"""Below this it takes push block and featherboards, so that both hands keep their distance from the
cutter."""

# How large

JOINTER_WIDEST = _limit("8", "200")
PLANER_WIDEST = _limit("12", "300")
MITRE_SAW_WIDEST = _limit("12", "300")
"""A saw that slides; without slides about half."""
MITRE_SAW_PLAIN = _limit("6", "150")
RESAW_WIDEST = _limit("10", "250")
HAND_RESAW_WIDEST = _limit("8", "200")
BLADE_HIGHEST = _limit("3", "75")
"""What a table saw's blade rises to."""
TRACK_DEEPEST = _limit("2", "50")
JIGSAW_DEEPEST = _limit("3/2", "38")
STAND_TALLEST = _limit("24", "600")
"""A piece stood on its end at a table, against a tall fence."""
LONG_PIECE = _limit("60", "1500")
WHOLE_SHEET = _limit("36", "900")
"""A sheet that is wider and longer than this is carried by two."""
FENCE_REACH = _limit("24", "600")
"""Across from a table saw's fence to the cutter."""
ROUTER_FENCE_REACH = _limit("12", "300")
ROUTER_DEEPEST = _limit("2", "50")
"""What usual straight cutters reach."""
DRILL_DEEPEST = _limit("3", "75")
"""What a drill press's spindle goes down."""
PRESS_TALLEST = _limit("12", "300")
"""A piece stood on its end under a drill press."""
DRILL_REACH = _limit("6", "150")
"""From a drill press's column to the chuck's middle."""
HAND_ROUTER_CUTTER = _limit("3/2", "38")
"""Wider cutters run in a table only, slowly."""

# How a cut is taken

BLADE_ABOVE = _limit("1/8", "3")
"""How far a blade stands above the wood in a cut that goes through."""
HEAVY_DEEP = _limit("3/8", "10")
HEAVY_WIDE = _limit("1/2", "12")
"""Deeper or wider than this in hardwood, a channel takes two passes or more."""
SOFT_DEEP = _limit("3/4", "19")
"""The same in softwood and sheets."""
GUARD_ABOVE = _limit("1/4", "6")
"""A band saw's guard above the wood."""
STACK_WIDER = _limit("1/16", "1.5")
"""A cutter that is buried in a sacrificial fence is at least this much wider than the cut."""
ROUTER_SHARE = Fraction(1, 2)
"""Of a cutter's diameter: the most a router takes in one pass."""
JOINTER_PASS = _limit("1/16", "1.5")
PLANER_PASS = _limit("1/16", "1.5")
LAST_PASS = _limit("1/32", "0.8")
SAW_SMOOTH = _limit("1/32", "0.8")
"""Left on a sawn edge for the plane."""
LEFT_THICK = (_limit("1/8", "3"), _limit("3/16", "5"))
"""Least and greatest: what stays on the thickness of wood that lies half milled."""
SANDING_STEP = _limit("1/32", "0.8")
"""A step larger than this is planed, not sanded, flush."""

EUROPE_NAMES = (
    "austria, belgium, bulgaria, croatia, cyprus, czechia, czech republic, denmark, estonia, finland, "
    "france, germany, greece, hungary, iceland, ireland, italy, latvia, liechtenstein, lithuania, "
    "luxembourg, malta, netherlands, the netherlands, norway, poland, portugal, romania, slovakia, "
    "slovenia, spain, sweden, switzerland, united kingdom, great britain, northern ireland, england, "
    "scotland, wales, europe, at, be, bg, hr, cy, cz, dk, ee, fi, fr, de, gr, hu, ie, is, it, lv, li, lt, "
    "lu, mt, nl, no, pl, pt, ro, sk, si, es, se, ch, uk, gb, eu"
)
EUROPE = frozenset(EUROPE_NAMES.split(", "))
"""Where most saws sold take no stacked cutter (common practice, no source)."""


def takes_stacks(country: str) -> bool | None:
    """Whether stacked cutters are usual where the shop stands; None where that isn't known."""
    name = country.strip().lower()
    if not name:
        return None
    if name in EUROPE:
        return False
    return True if name in NORTH_AMERICA else None


NORTH_AMERICA = frozenset({"us", "usa", "united states", "united states of america", "canada", "ca"})


def in_passes(depth: Length, most: Length, step: Length, *, at_least: int = 1) -> tuple[Length, ...]:
    """A depth in passes that sum to it: no pass takes more than `most`, all but the last a whole number of
    `step`s where that fits, the last the lightest."""
    if depth <= 0:
        return ()
    count = max(at_least, -(-depth // most))
    even = depth / count
    each = min(most, -(-even // step) * step)
    if each * (count - 1) >= depth:
        each = even
    return (*[each] * (count - 1), depth - each * (count - 1))
