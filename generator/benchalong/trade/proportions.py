"""Proportions the trade keeps to, and what stands behind each.

Nothing here is a law of wood: the plan check names each as common practice and never calls a breach more
than a doubt. The values are those a maker would give from memory; where a source was found, it is named.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from benchalong.ground.lengths import INCH, Length

NO_SOURCE = "common practice, no source"


@dataclass(frozen=True)
class Least:
    """A least (or greatest) size, as each system rounds it."""

    inch: Length
    millimetre: Length
    standing: str = NO_SOURCE

    def of(self, units: str) -> Length:
        return self.inch if units == "inch" else self.millimetre


@dataclass(frozen=True)
class Share:
    """A share of another size, from least to greatest."""

    least: Fraction
    greatest: Fraction
    standing: str = NO_SOURCE


def _least(inch: Fraction, millimetre: int | Fraction, standing: str = NO_SOURCE) -> Least:
    return Least(inch * INCH, Length(millimetre), standing)


LEAST_HELD = _least(Fraction(1, 8), 3)
"""How deep a panel must still lie in its groove at the driest."""
LEAST_WALL = _least(Fraction(1, 8), 3)
"""Wood beside or under a cut that something fills and backs."""
LEAST_WALL_UNBACKED = _least(Fraction(1, 4), 6)
"""The same where nothing backs it."""
MORTISE_WALL = _least(Fraction(3, 16), Fraction(9, 2))
"""Wood beside a mortise."""
SHORT_GRAIN = _least(Fraction(1, 4), 6)
"""From a channel across the grain to the end of the board: short grain breaks out."""
GLUED_PLAY = _least(Fraction(1, 32), Fraction(4, 5))
"""At most, on each side of a glued joint: what slides with hand pressure has a tenth of that."""
GROOVE_DEPTH = Share(Fraction(0), Fraction(1, 2))
"""Of a groove in a face, of the thickness."""
GROOVE_WIDTH = Share(Fraction(0), Fraction(1, 2))
"""Of a groove or tongue in an edge, of the thickness; a third is usual."""
DADO_DEPTH = Share(Fraction(0), Fraction(1, 2))
"""Of the thickness; a third is usual."""
RABBET_ROOM = _least(Fraction(1, 16), 2)
"""Room left at the edge of a panel in a rabbet: more is likelier a slip."""
RABBET_DEPTH = Share(Fraction(0), Fraction(2, 3))
"""Of the thickness; a half to two thirds is usual."""
TENON_THICKNESS = Share(Fraction(1, 4), Fraction(1, 2))
"""Of the part; a third is usual."""
TENON_WIDTH = Fraction(6)
"""At most so many times its thickness."""
TENON_WIDEST = _least(Fraction(4), 100)
"""Wider tenons are made as two."""
TENON_LENGTH = Fraction(2)
"""At least so many times its thickness, or two thirds of what it goes into."""
TENON_REACH = Fraction(2, 3)
DOVETAIL_SLOPE = Share(Fraction(1, 9), Fraction(1, 5))
"""One in six for softwood, one in eight for hardwood."""
DOVETAIL_SAW = _least(Fraction(1, 32), Fraction(4, 5), "from memory")
"""What a back saw takes, 0.5 to 0.6 mm, and a hair of wood; from memory."""
LAP = _least(Fraction(1, 8), 3)
"""Wood left in front of half-blind dovetails."""
DOWEL = Share(Fraction(1, 3), Fraction(1, 2))
"""A dowel's diameter, of the thinner part."""
SCREW_SPARE = _least(Fraction(1, 8), 3)
"""A screw's hole ends this far below the far surface."""
ACROSS_WIDEST = _least(Fraction(4), 100)
"""Wood held fast across another's grain, glued or screwed, over more than this splits or lets go."""
MIDDLE_GLUED = _least(Fraction(4), 100)
"""Of a board across the end of a panel only so much is glued, in the middle; 2 to 4 in."""
RIDGE = Length(1, 10)
"""A step between two boards glued edge to edge that a hand feels, in mm."""
DAMP_GAP = _least(Fraction(1, 32), Fraction(4, 5))
"""Room left beside a door or drawer at the dampest: less, and it rubs."""
DADO_SLACK = Length(1, 4)
"""What a glued board in a dado swells beyond its play without harm, in mm."""
HAND_FIT = Length(1, 10)
"""What goes in by hand all the same, in mm: sliding fits are 0.05 to 0.15."""
PANEL_CLEAR = _least(Fraction(1, 32), Fraction(4, 5))
"""Room beside each edge of a solid panel at the dampest."""
