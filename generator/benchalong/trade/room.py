"""Room for a panel that floats in grooves: how much is left when it is dampest, how far it still reaches into
its grooves when it is driest, and between which widths it may be cut today.

Lengths in mm. Shares are changes from the moisture it is cut at, as `movement.Change.share`: below zero where
it shrinks. What holds of a panel's width holds of a door between two others, with no groove to hold it.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from benchalong.ground.lengths import Length

HOLD: Final = Length(3)
"""What a groove must still hold at the driest: 1/8 in, common practice."""
NO_PLAY: Final = Length(0)
GLUED_ACROSS: Final = Length(100)
"""Wood glued across another's grain over more than 75 to 100 mm splits or lets go: common practice."""


@dataclass(frozen=True)
class Frame:
    """Two grooves that face each other."""

    sight: Length
    """From the edge of one to the edge of the other."""
    depths: tuple[Length, Length]

    @property
    def opening(self) -> Length:
        """From the bottom of one to the bottom of the other."""
        return self.sight + sum(self.depths)


@dataclass(frozen=True)
class Room:
    at_dampest: Length
    """Left between panel and groove bottoms, both sides together; below zero where it pushes the
    frame apart."""
    held_at_driest: Length
    """How far it reaches into the groove it has drawn away from; below zero where a gap shows."""


@dataclass(frozen=True)
class Widths:
    """Between these it may be cut today. Where the least is above the most, the grooves are too shallow."""

    least: Length
    most: Length

    @property
    def too_shallow_by(self) -> Length:
        """How much the two say against each other; 0 where some width does."""
        return max(self.least - self.most, Length(0))


def room(
    frame: Frame, width: Length, *, to_driest: Fraction, to_dampest: Fraction, is_pinned: bool = False
) -> Room:
    """Of a panel of that width today. One pinned in the middle draws away from both sides alike; a loose one
    may lie against the bottom of the deeper groove, and is looked at so."""
    beyond = width * (1 + to_driest) - frame.sight
    held = beyond / 2 if is_pinned else beyond - max(frame.depths)
    return Room(frame.opening - width * (1 + to_dampest), held)


def widths_today(
    frame: Frame,
    *,
    to_driest: Fraction,
    to_dampest: Fraction,
    play: Length = NO_PLAY,
    hold: Length = HOLD,
    is_pinned: bool = False,
) -> Widths:
    """The widths that leave `play` (both sides together) at the dampest, `hold` in a groove at the driest."""
    beyond = 2 * hold if is_pinned else max(frame.depths) + hold
    return Widths((frame.sight + beyond) / (1 + to_driest), (frame.opening - play) / (1 + to_dampest))


def deeper_by(
    frame: Frame, *, to_driest: Fraction, to_dampest: Fraction, play: Length = NO_PLAY, hold: Length = HOLD
) -> Length:
    """How much deeper both grooves must be before some width, fixed in its middle, does all year; 0 where one
    does already."""
    least = widths_today(
        frame, to_driest=to_driest, to_dampest=to_dampest, play=play, hold=hold, is_pinned=True
    ).least
    return max(least * (1 + to_dampest) + play - frame.opening, Length(0)) / 2


def side_play(opening: Length, to_dampest: Fraction, clear: Length) -> Length:
    """What to leave beside each edge of a panel today so that `clear` is left there at the dampest: the
    opening counts from groove bottom to groove bottom."""
    return (opening - (opening - 2 * clear) / (1 + to_dampest)) / 2
