"""How two joined parts fit: what closes, what room is left at the end, how much play each side has."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

import numpy as np

from benchalong.ground.lengths import Length
from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.model import AXES, SPAN, Meeting, Surface
from benchalong.workings.bodies import Floats
from benchalong.workings.facing import Faces, Facing
from benchalong.workings.placed import Lying, Placed, relation
from benchalong.workings.telling import exact

WIDEST = 12.0
"""In mm: sides further apart than this are no play."""
SAME = 1e-6


@dataclass(frozen=True)
class Fit:
    """One meeting, measured. None where nothing looks at each other there."""

    meeting: Meeting
    shoulder: Length | None
    """What stays open where the two should close: 0 when they touch."""
    end: Length | None
    """Room beyond the end of what enters."""
    play: Mapping[str, tuple[Length | None, Length | None]] = field(default_factory=dict)
    """Of what enters, by `thickness`, `width`, `length`: towards face and back, edge a and b, end a and b."""
    slope: Length | None = None
    """The least room between sloping faces, square to them."""

    @property
    def marks(self) -> frozenset[str]:
        """Of the two copies."""
        return self.meeting.marks

    @property
    def in_all(self) -> Mapping[str, Length]:
        """Both sides together, where there are two."""
        return {key: a + b for key, (a, b) in self.play.items() if a is not None and b is not None}


def fit_of(meeting: Meeting, placed: Placed, faces: Faces, *, has_shoulder: bool) -> Fit | None:
    """None for a joint with nothing that enters. Without a shoulder the end itself should close.

    In a rabbet, which is open on two sides, one of its two floors must be touched; room at the other is
    what is left beyond the end.
    """
    if meeting.takes is None:
        return None
    one, other = placed.by_mark[meeting.cut_in.copy], placed.by_mark[meeting.takes.copy]
    looking = faces.between(relation(one, other))
    turn = relation(one, other).matrix[:, :3]
    into = [_outward(one.surface(side)) for side in meeting.cut_in.surfaces]
    tips = [other.surface(side) for side in meeting.takes.surfaces]
    ways = [*into, *(way for tip in tips if not _any((way := -(turn @ _outward(tip))), into))]
    ahead = [facing for facing in looking if _any(facing.normal, ways)]
    at_tip = [facing for facing in ahead if any(_is_tip(facing, tip, other) for tip in tips)]
    shoulders = [facing for facing in ahead if facing not in at_tip] if has_shoulder else ahead
    aside = [facing for facing in looking if not _any(facing.normal, ways)]
    opens = [gap for way in ways if (gap := _least(_looking(shoulders, way))) is not None]
    is_arris = len(into) == 2
    shoulder = min(opens, default=None) if is_arris else max(opens, default=None)
    end = max(opens, default=None) if is_arris else _least(at_tip)
    return Fit(meeting, shoulder, end, _play(aside), _least(_sloping(aside)))


def _looking(facings: Iterable[Facing], way: Floats) -> list[Facing]:
    return [one for one in facings if _any(one.normal, [way])]


def _least(facings: Iterable[Facing]) -> Length | None:
    gap = min((facing.gap for facing in facings), default=None)
    return None if gap is None else max(Length(0), exact(gap))


def _play(aside: list[Facing]) -> dict[str, tuple[Length | None, Length | None]]:
    found: dict[str, tuple[Length | None, Length | None]] = {}
    for n, axis in enumerate(AXES):
        near, far = (_least(_close(aside, n, sign)) for sign in (-1, 1))
        if near is not None or far is not None:
            found[SPAN[axis]] = (near, far)
    return found


def _close(aside: list[Facing], n: int, sign: int) -> list[Facing]:
    return [one for one in aside if sign * one.second[n] > 1 - SAME and one.gap <= WIDEST]


def _sloping(aside: list[Facing]) -> list[Facing]:
    return [one for one in aside if float(np.abs(one.second).max()) < 1 - SAME and one.gap <= WIDEST]


def _outward(surface: Surface) -> Floats:
    """In the part's own directions."""
    lies = SURFACES[surface]
    way = np.zeros(3)
    way[AXES.index(lies.inward)] = 1.0 if lies.is_far else -1.0
    return way


def _any(normal: Floats, ways: Iterable[Floats]) -> bool:
    return any(float(normal @ way) > 1 - SAME for way in ways)


def _is_tip(facing: Facing, tip: Surface, lying: Lying) -> bool:
    """Whether the second part's face is its named side itself, not a shoulder behind it."""
    lies = SURFACES[tip]
    whole = float(lying.part.box[AXES.index(lies.inward)]) if lies.is_far else 0.0
    return _any(facing.second, [_outward(tip)]) and abs(facing.second_distance - whole) < 1e-4
