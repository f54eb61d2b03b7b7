"""Whether a joint's parts close where they should, and keep clear where they shouldn't."""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.ground.lengths import Length
from benchalong.ground.problems import Finding
from benchalong.plan.model import Plan, Surface
from benchalong.plan.turns import Way, axis_of
from benchalong.trade.proportions import RABBET_ROOM
from benchalong.workings.joined.look import JointLook, Open
from benchalong.workings.overlap import TOUCHING
from benchalong.workings.placed import Lying
from benchalong.workings.telling import called, likewise, start, the

CLOSES = (
    "tongue and groove",
    "mortise and tenon",
    "half lap",
    "mitre",
    "box joint",
    "dovetail",
    "butt",
    "rabbet",
)
"""Kinds that have a shoulder, or a face, that must touch."""
BOTTOMS = ("tongue and groove", "mortise and tenon", "dado")
"""Kinds whose end stays clear of the bottom."""
FLUSH = ("mitre", "box joint")
CUTS = ("half lap", "mitre", "box joint", "dovetail")
"""Kinds whose cuts are what the parts lie in each other by."""
NONE = Length(1, 50)
"""Mm: less room than this is none, more than was meant by this is more."""


def closes(look: JointLook) -> Iterator[Finding]:
    if look.joint.kind in CLOSES:
        yield from _left_open(look)
    if look.joint.kind == "dado":
        yield from _reaches(look)
    if look.joint.kind == "rabbet":
        yield from _fills_rabbet(look)
    if look.joint.kind in BOTTOMS:
        yield from _bottoms_out(look)
    if look.joint.kind in FLUSH:
        yield from _flush(look)
    if look.joint.kind in CUTS:
        yield from _cuts_nothing(look)


def _left_open(look: JointLook) -> Iterator[Finding]:
    held = _held_otherwise(look.plan) if look.joint.kind == "butt" else frozenset()
    found = [
        look.opening(fit, fit.shoulder)
        for fit in look.fits
        if fit.shoulder is not None and fit.shoulder > TOUCHING and fit.marks not in held
    ]
    yield from look.gaps(found, "joint-gap", "leaves {by} open against {into} where it should close")


def _reaches(look: JointLook) -> Iterator[Finding]:
    """A dado has no shoulder: what enters must reach to its bottom less the room meant to be there."""
    meant, depth = look.joint.length_of("end_play"), look.joint.length_of("depth")
    found = [
        look.opening(fit, fit.end) for fit in look.fits if fit.end is not None and fit.end > meant + NONE
    ]
    out = [one for one in found if one.by >= depth]
    said = "stands {by} away from the bottom of its dado in {into}, so it is out of it"
    yield from look.gaps(out, "joint-gap", said, more=-meant)
    short = [one for one in found if one.by < depth]
    said = "leaves {by} at the bottom of its dado in {into}, more than was meant"
    yield from look.gaps(short, "joint-short", said, level="doubt", more=-meant)


def _fills_rabbet(look: JointLook) -> Iterator[Finding]:
    """It touches one floor, which has been looked at; more room at the other than is left for a panel.

    What is glued and from a board is meant to fill its rabbet; a sheet may be a back with room round it.
    """
    most = 2 * look.joint.length_of("play") + RABBET_ROOM.of(look.plan.units)
    open_here = [
        look.opening(fit, fit.end)
        for fit in look.fits
        if fit.end is not None and fit.end > most and (fit.shoulder or 0) <= TOUCHING
    ]
    boards = [one for one in open_here if _is_glued_board(look, one)]
    others = [one for one in open_here if one not in boards]
    said = "leaves {by} open in its rabbet in {into}"
    yield from look.gaps(boards, "joint-gap", said)
    yield from look.gaps(others, "joint-short", said, level="doubt")


def _is_glued_board(look: JointLook, one: Open) -> bool:
    part = look.plan.parts[one.side.part]
    return look.joint.glue == "yes" and look.plan.stock[part.stock].kind == "board"


def _bottoms_out(look: JointLook) -> Iterator[Finding]:
    if look.joint.words.get("tenon") == "through":
        return
    found = [fit.meeting for fit in look.fits if fit.end is not None and fit.end < NONE]
    marks = [meeting.takes.copy for meeting in found if meeting.takes]
    if not marks:
        return
    one, other = look.placed.by_mark[found[0].cut_in.copy], look.placed.by_mark[marks[0]]
    message = (
        f"{start(called(other))} touches the bottom of its cut in {called(one)}: no room "
        "for glue, and a shoulder may stay open"
    )
    yield look.finding(
        "joint-bottoms-out",
        "doubt",
        message + likewise(mark for mark in marks if mark != marks[0]),
        f"leave {look.telling.shown(Length(4, 5))} there: {look.joint.id}.end_play",
        copies=(one, other),
    )


def _flush(look: JointLook) -> Iterator[Finding]:
    """At a corner of fingers or a mitre each part ends where the other's outside is."""
    found: dict[Length, list[tuple[Lying, Surface, Lying]]] = {}
    for meeting in look.joint.meetings:
        if meeting.takes is None:
            continue
        pair = (look.placed.by_mark[meeting.cut_in.copy], look.placed.by_mark[meeting.takes.copy])
        for (one, side), other in zip(
            zip(pair, (meeting.cut_in, meeting.takes), strict=True), pair[::-1], strict=True
        ):
            surface = one.surface(side.surfaces[0])
            past = _past(one, other, one.way(surface))
            if abs(past) > TOUCHING:
                found.setdefault(past, []).append((one, surface, other))
    for past, same in found.items():
        one, surface, other = same[0]
        by = look.telling.shown(abs(past))
        stands = "stands past" if past > 0 else "ends short of"
        also = likewise(f"{ended.named(side)} of {ended.copy.mark}" for ended, side, _ in same[1:])
        message = (
            f"{start(the(one.named(surface)))} of {called(one)} {stands} the outside of "
            f"{called(other)} by {by}{also}"
        )
        remedy = f"make it {by} {'shorter' if past > 0 else 'longer'}, or move one of the two"
        yield look.finding(
            "corner-not-flush", "doubt", message, remedy, numbers={"by": abs(past)}, copies=(one, other)
        )


def _cuts_nothing(look: JointLook) -> Iterator[Finding]:
    cuts = (cut for shape in look.plan.shapes.values() for cut in shape.cuts)
    if look.joint.meetings and not any(cut.joint == look.joint.id for cut in cuts):
        yield look.finding(
            "joint-cuts-nothing",
            "doubt",
            f"{look.name} takes no wood: its parts lie against each other, not in each other",
            "move them into each other, or say butt if they should only touch",
        )


def _held_otherwise(plan: Plan) -> frozenset[frozenset[str]]:
    """Pairs that another joint than a butt brings together: their screws don't say where they close."""
    return frozenset(
        meeting.marks
        for joint in plan.joints.values()
        for meeting in joint.meetings
        if joint.kind != "butt" and meeting.takes is not None
    )


def _past(one: Lying, other: Lying, way: Way) -> Length:
    """How far the first ends beyond the other, that way."""
    n = axis_of(way)
    return one.room[1][n] - other.room[1][n] if way[n] > 0 else other.room[0][n] - one.room[0][n]
