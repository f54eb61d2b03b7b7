"""Sides of a joint that meet nothing, or that nothing goes into."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from benchalong.ground.lengths import Length
from benchalong.ground.problems import Finding
from benchalong.ground.words import in_sentence
from benchalong.plan.cuts.surfaces import SURFACES
from benchalong.plan.model import SideOf, Surface
from benchalong.plan.turns import is_nearer, opposite
from benchalong.workings.joined.look import JointLook, Open
from benchalong.workings.placed import Lying, ahead, reaches
from benchalong.workings.telling import called, likewise, start, the

CORNERS = ("mitre", "box joint", "dovetail")
MOVES = ("hinge", "slide", "stay")


def unmet(look: JointLook) -> Iterator[Finding]:
    yield from _never_meets(look)
    yield from _unmet(look)


def _never_meets(look: JointLook) -> Iterator[Finding]:
    if look.plan.copies and not (look.joint.meetings or look.joint.unmet or look.joint.unfilled):
        message = f"{look.name}: nothing that it names stands in one assembly yet, so nothing was compared"
        yield look.finding(
            "joint-not-placed", "note", message, "place the parts it joins, or leave the joint out"
        )


def _unmet(look: JointLook) -> Iterator[Finding]:
    open_sides = [found for side in look.joint.unmet if (found := _short_of(look, side)) is not None]
    told = {(one.side.copy, one.side.surfaces) for one in open_sides}
    yield from look.gaps(
        open_sides,
        "joint-side-unmet",
        "stops {by} short of {into}, so the two don't meet",
        more=_enters(look),
    )
    alike: dict[tuple[str, ...], list[Finding]] = {}
    for side in look.joint.unmet:
        if (side.copy, side.surfaces) not in told:
            finding = _meets_nothing(look, side)
            alike.setdefault((finding.code, side.part, finding.remedy), []).append(finding)
    for same in alike.values():
        others = likewise(_subject(finding) for finding in same[1:])
        yield replace(same[0], message=same[0].message + others)


def _short_of(look: JointLook, side: SideOf) -> Open | None:
    """How far it ends from what it should go into, straight ahead."""
    lying = look.placed.by_mark[side.copy]
    surface = lying.surface(side.surfaces[0])
    way = lying.way(surface)
    found = [
        (gap, other)
        for other, looks in look.receivers(lying)
        if opposite(way) in looks and (gap := ahead(lying, other, way)) is not None and gap > 0
    ]
    if not found:
        return None
    gap, other = min(found, key=lambda pair: pair[0])
    return Open(side, surface, other, gap)


def _meets_nothing(look: JointLook, side: SideOf) -> Finding:
    lying = look.placed.by_mark[side.copy]
    surface = lying.surface(side.surfaces[0])
    what = f"{the(lying.named(surface))} of {called(lying)}"
    if _is_aslant(look, lying):
        message = (
            f"{start(what)} isn't square to anything that {look.name} cuts: "
            "no cut was given, and nothing was compared"
        )
        remedy = "put what it joins into one assembly and turn that, or give each its own cut"
        return look.finding("joint-not-square", "doubt", message, remedy, copies=(lying,))
    for other, looks in look.receivers(lying):
        faced = next((s for s in SURFACES if other.way(s) == opposite(lying.way(surface))), None)
        if faced and look.joint.kind not in CORNERS and _ends_in(lying, surface, other):
            cut = next((s for s in SURFACES if other.way(s) in looks), faced)
            message = (
                f"{start(what)} goes into {the(other.named(faced))} of {called(other)}, but "
                f"{look.name} cuts {the(other.named(cut))}"
            )
            noun = cut.split()[0].replace("back", "face")
            remedy = (
                f"let the joint cut {in_sentence(other.part.name)} on its inner {noun}, which is "
                f"found wherever that is, or turn {in_sentence(other.part.name)}"
            )
            return look.finding("joint-wrong-side", "fault", message, remedy, copies=(lying, other))
    message = f"{start(what)} meets nothing that {look.name} cuts"
    remedy = "move it to what it should go into, or name in `only:` the copies the joint is for"
    return look.finding("joint-side-unmet", "fault", message, remedy, copies=(lying,))


def _is_aslant(look: JointLook, lying: Lying) -> bool:
    """Whether it is turned against everything that the joint cuts."""
    others = [look.placed.by_mark[side.copy] for side in look.joint.receivers]
    return bool(others) and all(other.copy.tilt != lying.copy.tilt for other in others)


def unfilled(look: JointLook) -> Iterator[Finding]:
    """Grooves that take nothing; what is next to fitting has been told from the other side."""
    if look.joint.unmet or look.joint.floats or look.joint.kind in MOVES or not look.joint.meetings:
        return
    sides = [
        f"{side.surfaces[0]} of {called(look.placed.by_mark[side.copy])}" for side in look.joint.unfilled
    ]
    if sides:
        message = f"{look.name} cuts {sides[0]}, and nothing goes in there{likewise(sides[1:])}"
        yield look.finding(
            "joint-side-unfilled",
            "doubt",
            message,
            "name only the sides that receive, or say in `floats:` what lies in them",
        )


def _enters(look: JointLook) -> Length:
    """How far what enters should stand in."""
    return max(look.joint.length_of(key) for key in ("tongue_length", "tenon_length", "reach"))


def _ends_in(lying: Lying, surface: Surface, other: Lying) -> bool:
    """Whether the two touch, and this side lies as near to the other as the side behind it."""
    return reaches(lying.room, other.room) and is_nearer(lying.room, lying.way(surface), other.room)


def _subject(finding: Finding) -> str:
    """What a message is about: `end a of shelf S1`."""
    said = finding.message.split(" goes into ")[0].split(" meets ")[0].split(" isn't square ")[0]
    return said[:1].lower() + said[1:]
