"""Can the dovetails and fingers of every corner be made, and if not, which size must change by how much?

Wood between two cuts can't be narrower than the saw is thick: it would be gone with the second cut. So no
pin, no narrow side of a tail and no finger may be. Fingers are reckoned with the shop's `kerf`, dovetails
with a fine back saw. Tails that can't be made get no cuts, so the two parts clash as well.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import floor

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.ground.words import in_sentence
from benchalong.plan.model import Joint, Meeting, Part, Plan
from benchalong.plan.turns import axis_of
from benchalong.reading.written import PROJECT_FILE
from benchalong.trade.proportions import DOVETAIL_SAW
from benchalong.workings.placed import PLACED, Placed
from benchalong.workings.telling import Telling
from benchalong.workings.working import Worked, Working

NOTHING = Length(0)
USUAL_LAP = 4
"""A lap is at most this part of what it is left in; common practice, no source."""


@dataclass(frozen=True)
class _Corner:
    """What two parts share at a corner."""

    breadth: Length
    """Along the corner: what tails and pins, or fingers, share."""
    deep: Length
    """How far the tails reach."""
    front: Part
    """What is cut in."""
    side: Part


@dataclass(frozen=True)
class _Wrong:
    code: str
    said: str
    cure: str
    numbers: dict[str, Length]


def check_corners(plan: Plan, worked: Worked) -> tuple[None, tuple[Finding, ...]]:
    placed = worked[PLACED]
    rules = {"dovetail": _dovetails, "box joint": _fingers}
    found: list[Finding] = []
    for joint in plan.joints.values():
        if joint.kind in rules:
            corners = [corner for meeting in joint.meetings if (corner := _corner(plan, placed, meeting))]
            wrong = [one for corner in corners for one in rules[joint.kind](plan, joint, corner)]
            found += [_finding(joint, one) for one in _once(wrong)]
    return None, tuple(found)


def _once(found: Sequence[_Wrong]) -> list[_Wrong]:
    """The first of each kind: the corners of one joint are mostly alike."""
    return list({wrong.code: wrong for wrong in reversed(found)}.values())[::-1]


def _corner(plan: Plan, placed: Placed, meeting: Meeting) -> _Corner | None:
    if meeting.takes is None:
        return None
    one, other = placed.by_mark[meeting.cut_in.copy], placed.by_mark[meeting.takes.copy]
    ways = [
        one.way(one.surface(meeting.cut_in.surfaces[0])),
        other.way(other.surface(meeting.takes.surfaces[0])),
    ]
    into, tips = (axis_of(way) for way in ways)
    if into == tips:
        return None
    run = 3 - into - tips
    shared = [min(one.room[1][n], other.room[1][n]) - max(one.room[0][n], other.room[0][n]) for n in range(3)]
    front, side = plan.parts[meeting.cut_in.part], plan.parts[meeting.takes.part]
    return _Corner(shared[run], shared[tips], front, side)


# Dovetails


def _dovetails(plan: Plan, joint: Joint, corner: _Corner) -> Iterator[_Wrong]:
    sizes = {size.name: size.length for size in joint.sizes}
    pin, slope, lap = sizes.get("pin", NOTHING), sizes.get("slope", NOTHING), sizes.get("lap", NOTHING)
    kerf, telling = DOVETAIL_SAW.of(plan.units), Telling(plan)
    if joint.words.get("dovetail") == "half-blind" and lap >= corner.front.thickness:
        yield _lap(joint, corner, lap, telling)
    elif slope < 0:
        said = f"slopes by {slope}, so that its tails are narrowest at their ends"
        yield _Wrong("dovetail-slope-below-zero", said, f"write {joint.id}.slope as 1/8 or 1/6", {})
    elif pin < kerf:
        said = f"has pins {telling.shown(pin)} wide, and a fine saw takes {telling.shown(kerf)}"
        cure = f"make {joint.id}.pin {telling.shown(kerf - pin)} more, {telling.shown(kerf)} at least"
        yield _Wrong("dovetail-pin-narrow", said, cure, {"pin": pin, "more": kerf - pin})
    else:
        yield from _tails(joint, corner, (pin, slope, kerf), telling)


def _lap(joint: Joint, corner: _Corner, lap: Length, telling: Telling) -> _Wrong:
    thick = corner.front.thickness
    less = lap - thick / USUAL_LAP
    said = (
        f"leaves a lap of {telling.shown(lap)} in front, and {in_sentence(corner.front.name)} is "
        f"{telling.shown(thick)} thick: nothing is left for the tails"
    )
    cure = f"make {joint.id}.lap {telling.shown(less)} less, a quarter of the thickness"
    return _Wrong("dovetail-lap-deep", said, cure, {"lap": lap, "less": less})


def _tails(
    joint: Joint, corner: _Corner, sizes: tuple[Length, Length, Length], telling: Telling
) -> Iterator[_Wrong]:
    pin, slope, kerf = sizes
    word = joint.words.get("tails")
    count = max(1, int(word) if word else round(corner.breadth / (2 * corner.deep)) if corner.deep else 1)
    lost = 2 * slope * corner.deep
    narrow = (corner.breadth - (count + 1) * pin) / count - lost
    if narrow >= kerf:
        return
    tails = f"{count} tails" if count > 1 else "one tail"
    said = (
        f"has {tails} in {telling.shown(corner.breadth)}, which leaves each "
        f"{telling.shown(max(NOTHING, narrow))} at its narrow side; a fine saw takes {telling.shown(kerf)}"
    )
    yield _Wrong(
        "dovetail-tail-narrow",
        said,
        _fewer(joint, corner, (pin, lost, kerf), telling),
        {"narrow": narrow},
    )


def _fewer(joint: Joint, corner: _Corner, sizes: tuple[Length, Length, Length], telling: Telling) -> str:
    """Fewer tails if any number of them goes, else narrower pins, else a broader part."""
    pin, lost, kerf = sizes
    most = floor((corner.breadth - pin) / (pin + lost + kerf))
    if most >= 1:
        return f"write tails: {most} at most in {joint.id}"
    widest = (corner.breadth - lost - kerf) / 2
    if widest >= kerf:
        less = pin - widest
        return (
            f"make {joint.id}.pin {telling.shown(less)} less, {telling.shown(widest)} at most, with one tail"
        )
    more = 2 * kerf + lost + kerf - corner.breadth
    name = in_sentence(corner.side.name)
    return f"make {name} {telling.shown(more)} wider, or {joint.id}.slope less"


# Fingers


def _fingers(plan: Plan, joint: Joint, corner: _Corner) -> Iterator[_Wrong]:
    finger = next((size.length for size in joint.sizes if size.name == "finger"), NOTHING)
    kerf, telling = plan.shop.sawing.kerf, Telling(plan)
    if finger < kerf:
        said = f"has fingers {telling.shown(finger)} wide, and the saw takes {telling.shown(kerf)}"
        cure = f"make {joint.id}.finger {telling.shown(kerf - finger)} more, {telling.shown(kerf)} at least"
        yield _Wrong("finger-narrow", said, cure, {"finger": finger, "more": kerf - finger})
    elif 2 * finger > corner.breadth:
        less = finger - corner.breadth / 3
        said = (
            f"has fingers {telling.shown(finger)} wide on {telling.shown(corner.breadth)} of width, so "
            "the two have no whole finger each"
        )
        cure = (
            f"make {joint.id}.finger {telling.shown(less)} less: a third of the width, or an odd part of it"
        )
        yield _Wrong("finger-wide", said, cure, {"finger": finger, "less": less})
    elif 0 < (rest := corner.breadth % finger) < kerf:
        yield _last_finger(joint, corner, (finger, rest, kerf), telling)


def _last_finger(
    joint: Joint, corner: _Corner, sizes: tuple[Length, Length, Length], telling: Telling
) -> _Wrong:
    finger, rest, kerf = sizes
    more = Fraction(rest / (corner.breadth // finger))
    said = (
        f"leaves {telling.shown(rest)} for its last finger, and the saw takes {telling.shown(kerf)}: that "
        "one is gone with its cut"
    )
    cure = f"make {joint.id}.finger {telling.shown(more)} more, so that the last is as wide as the others"
    return _Wrong("finger-last-narrow", said, cure, {"last": rest, "more": more})


def _finding(joint: Joint, wrong: _Wrong) -> Finding:
    place = Place((PROJECT_FILE, "joints", joint.id)).key()
    sizes = tuple(sorted({name for size in joint.sizes for name in size.sizes}))
    message = f"The joint {joint.id} {wrong.said}"
    return Finding(wrong.code, "fault", place, joint.id, message, wrong.cure, wrong.numbers, sizes)


CORNER_FINGERS: Working[None] = Working(
    "corner_fingers", "Can the dovetails and fingers of each corner be made?", check_corners, (PLACED,)
)
