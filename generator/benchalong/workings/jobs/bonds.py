"""What holds together what, assembly by assembly: glued, put in afterwards, or moving.

It follows from the joints: members that a glued joint brings together are glued up in one go, with what
floats loose between them. What no joint mentions and lies against another part is taken as glued onto that
by itself, as a lip is onto a shelf. What meets the rest only in joints without glue is put in afterwards.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from benchalong.ground.lengths import Length
from benchalong.plan.model import AssemblyId, Copy, Joint, PartId, Plan
from benchalong.workings.closing import joined
from benchalong.workings.placed import Lying, Placed

MOVING = ("hinge", "slide", "stay")
"""Kinds of joint that hold something that moves; nothing of theirs is glued."""


@dataclass(frozen=True)
class Member:
    """What an assembly is put together from: a part, or an inner assembly."""

    mark: str
    """Its own, within the assembly."""
    of: str
    copies: tuple[Copy, ...]
    """Of all the assembly's places."""
    is_part: bool


@dataclass(frozen=True)
class Gluing:
    """Members glued to each other in one go."""

    assembly: AssemblyId
    onto: str
    """Of what is glued on by itself: the part; empty for the assembly's own glue-up."""
    members: tuple[Member, ...]

    @property
    def copies(self) -> tuple[Copy, ...]:
        return tuple(copy for member in self.members for copy in member.copies)


@dataclass(frozen=True)
class Bonds:
    """How one assembly holds together."""

    assembly: AssemblyId
    places: tuple[str, ...]
    """The marks of its places, from the piece down."""
    members: tuple[Member, ...]
    gluings: tuple[Gluing, ...]
    afterwards: tuple[Member, ...]
    """What joints hold that isn't glued in any of them."""
    fixed: bool
    """Whether anything in it is joined so that it stays: there is something to try dry."""
    loose: frozenset[PartId] = field(default_factory=frozenset)
    """Parts that float in it."""


def bonds_of(
    plan: Plan, placed: Placed, later: Mapping[AssemblyId, frozenset[str]]
) -> dict[AssemblyId, Bonds]:
    """By assembly, the inner ones first. `later` names what is fitted to an assembly only once it is
    glued."""
    inside = _inside(plan)
    return {
        assembly: _bonds(plan, placed, assembly, places, later.get(assembly, frozenset()))
        for assembly, places in sorted(inside.items(), key=lambda each: -_depth(each[1]))
    }


def _inside(plan: Plan) -> dict[AssemblyId, dict[str, list[Copy]]]:
    """By assembly and by the mark of its place, the copies in it."""
    found: dict[AssemblyId, dict[str, list[Copy]]] = {}
    for copy in plan.copies:
        marks = copy.mark.split("/")
        for depth, assembly in enumerate(copy.assemblies):
            found.setdefault(assembly, {}).setdefault("/".join(marks[:depth]), []).append(copy)
    return found


def _depth(places: Mapping[str, list[Copy]]) -> int:
    """How deep its deepest place lies: an assembly is always deeper than what holds it."""
    return max(mark.count("/") + 1 if mark else 0 for mark in places)


def _bonds(
    plan: Plan, placed: Placed, assembly: AssemblyId, places: Mapping[str, list[Copy]], later: frozenset[str]
) -> Bonds:
    members = _members(plan, assembly, places)
    by_copy = {copy.mark: number for number, member in enumerate(members) for copy in member.copies}
    links = list(_links(plan, assembly, by_copy))
    fixed = [link for link in links if link.joint.kind not in MOVING]
    glued = [link for link in fixed if link.joint.glue != "no"]
    is_later = {number for number, member in enumerate(members) if member.of in later}
    at_once = [{link.one, link.other} for link in glued if not is_later & {link.one, link.other}]
    held = {number for link in links for number in (link.one, link.other)}
    onto = _contacts(placed, members, by_copy, held)
    if not links:
        at_once, onto = [{one, other} for one, other in onto.items()], {}
    onto |= {n: other for link in glued for n, other in link.both if n in is_later and other not in is_later}
    gluings = (*_together(assembly, members, at_once), *_one_by_one(assembly, members, onto))
    bound = {member.mark for gluing in gluings for member in gluing.members}
    return Bonds(
        assembly,
        tuple(places),
        members,
        gluings,
        tuple(m for n, m in enumerate(members) if n in held and m.mark not in bound),
        bool(fixed or gluings),
        frozenset(members[link.other].of for link in links if link.is_loose),
    )


def _together(assembly: AssemblyId, members: tuple[Member, ...], pairs: list[set[int]]) -> Iterator[Gluing]:
    for group in sorted(joined(pairs), key=min):
        yield Gluing(assembly, "", tuple(members[n] for n in sorted(group)))


def _members(plan: Plan, assembly: AssemblyId, places: Mapping[str, list[Copy]]) -> tuple[Member, ...]:
    found: dict[str, list[Copy]] = {}
    for mark, copies in places.items():
        depth = mark.count("/") + 1 if mark else 0
        for copy in copies:
            found.setdefault(copy.mark.split("/")[depth], []).append(copy)
    placed = {each.mark: each for each in plan.assemblies[assembly].placed}
    return tuple(
        Member(mark, placed[mark].of, tuple(copies), placed[mark].kind == "part")
        for mark, copies in found.items()
    )


@dataclass(frozen=True)
class _Link:
    """A joint between two members, by number."""

    joint: Joint
    one: int
    other: int
    is_loose: bool
    """Whether the other lies loose in it."""

    @property
    def both(self) -> tuple[tuple[int, int], tuple[int, int]]:
        return (self.one, self.other), (self.other, self.one)


def _links(plan: Plan, assembly: AssemblyId, by_copy: Mapping[str, int]) -> Iterator[_Link]:
    """Each joint between two members, once."""
    for joint in plan.joints.values():
        told: set[tuple[int, int]] = set()
        for meeting in joint.meetings:
            if meeting.assembly != assembly or meeting.takes is None:
                continue
            pair = (by_copy[meeting.cut_in.copy], by_copy[meeting.takes.copy])
            if pair not in told:
                told.add(pair)
                yield _Link(joint, *pair, meeting.takes.part in joint.floats)


def _contacts(
    placed: Placed, members: tuple[Member, ...], by_copy: Mapping[str, int], held: set[int]
) -> dict[int, int]:
    """By member that no joint holds, the part that it lies against most."""
    found: dict[int, int] = {}
    for number, member in enumerate(members):
        lying = placed.by_mark.get(member.copies[0].mark)
        if lying is None or number in held or not member.is_part:
            continue
        near = [other for other in placed.beside[lying.number] if other.copy.mark in by_copy]
        against = [(_contact(lying, other), -by_copy[other.copy.mark]) for other in near]
        area, other_number = max(
            (each for each in against if members[-each[1]].is_part), default=(Length(0), 0)
        )
        if area > 0:
            found[number] = -other_number
    return found


def _contact(one: Lying, other: Lying) -> Length:
    """How much of their rooms lies against each other, in mm2; 0 where they only share an edge."""
    spans = [min(one.room[1][n], other.room[1][n]) - max(one.room[0][n], other.room[0][n]) for n in range(3)]
    if min(spans) < 0:
        return Length(0)
    flat = min(range(3), key=lambda n: spans[n])
    area = Length(1)
    for n in range(3):
        if n != flat:
            area *= spans[n]
    return area


def _one_by_one(assembly: AssemblyId, members: tuple[Member, ...], onto: Mapping[int, int]) -> list[Gluing]:
    """What is glued on by itself; all copies of one part in one go."""
    by_part: dict[str, set[int]] = {}
    for number, other in onto.items():
        by_part.setdefault(members[number].of, set()).update((number, other))
    return [
        Gluing(assembly, part, tuple(members[n] for n in sorted(numbers)))
        for part, numbers in by_part.items()
    ]
