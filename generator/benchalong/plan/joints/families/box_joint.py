"""Square fingers on both ends, one side's between the other's.

The first finger, counted from the left, front or bottom end of the corner, is that of the part that is
cut in. The last one is what the width leaves.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import count, takewhile

from benchalong.ground.lengths import Length
from benchalong.plan.cuts.surfaces import Range
from benchalong.plan.joints.families.bites import bite
from benchalong.plan.joints.families.corner import Corner, corners
from benchalong.plan.joints.family import Family, Given, Loss
from benchalong.plan.joints.member import Side

MOST_FINGERS = 500
"""More than this on one corner is a slip in the finger's width: nothing is cut."""


def second_fingers(joint: Given, side: Side, partners: tuple[Side, ...]) -> Iterable[Loss]:
    """Where the partner's fingers go: the second place and every other from there."""
    return _slots(joint, side, partners, first=1)


def first_fingers(joint: Given, side: Side, partners: tuple[Side, ...]) -> Iterable[Loss]:
    """Where the fingers of what is cut in go: the first place and every other from there."""
    return _slots(joint, side, partners, first=0)


def _slots(joint: Given, side: Side, partners: tuple[Side, ...], *, first: int) -> Iterator[Loss]:
    for corner in corners(side, partners):
        for place in _places(corner, joint["finger"])[first::2]:
            yield bite(
                side, side.clipped({**corner.room, corner.run: _with_play(place, corner, joint["play"])})
            )


def _places(corner: Corner, finger: Length) -> list[Range]:
    """Where the fingers stand, one after another from the corner's first end."""
    low, high = corner.room[corner.run]
    if finger <= 0 or (high - low) / finger > MOST_FINGERS:
        return []
    if corner.counts_up:
        starts = takewhile(lambda start: start < high, (low + n * finger for n in count()))
        return [(start, min(start + finger, high)) for start in starts]
    ends = takewhile(lambda end: end > low, (high - n * finger for n in count()))
    return [(max(end - finger, low), end) for end in ends]


def _with_play(place: Range, corner: Corner, play: Length) -> Range:
    """Both sides give half the play at each wall; at the corner's own ends there is no other to give any."""
    low, high = corner.room[corner.run]
    return (
        place[0] - (play if place[0] == low else play / 2),
        place[1] + (play if place[1] == high else play / 2),
    )


FAMILY = Family(cut_in=second_fingers, takes=first_fingers)
