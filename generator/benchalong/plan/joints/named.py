"""Who a joint names, and which side of it: found in its texts, told about where a word leads nowhere."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from benchalong.ground.marks import Path, Place
from benchalong.ground.words import nearest_words
from benchalong.plan.joints.member import Member
from benchalong.plan.joints.scopes import is_called
from benchalong.plan.joints.sides import NotASide, Term, parse_side, split_side
from benchalong.plan.marking import base_mark
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.rows import is_row
from benchalong.reading.written import Project

Members = Mapping[str, tuple[Member, ...]]
"""Every copy in each assembly; none while something that is placed has no place yet."""


@dataclass(frozen=True)
class Named:
    who: str
    """A part, a mark, or marks from an assembly down."""
    terms: tuple[Term, ...]
    """One, for an arris two."""
    at: Place
    """Where its side is written."""


def named_sides(
    texts: tuple[str, ...], path: Path, sums: Reckoning, members: Members, *, ends_only: str = ""
) -> list[Named]:
    """The sides that can be read and lead somewhere. `ends_only`: a kind of joint that enters with an end."""
    found = (_named(text, (*path, index), sums, members, ends_only) for index, text in enumerate(texts))
    return [named for named in found if named is not None]


def _named(text: str, path: Path, sums: Reckoning, members: Members, ends_only: str) -> Named | None:
    who, side = split_side(text)
    begins = len(text) - len(text.lstrip())
    is_known = knows(who, Place(path, start=begins, end=begins + len(who)), sums, members)
    start = text.find(side, begins + len(who)) if side else begins
    place = Place(path, start=start, end=start + len(side or who))
    try:
        terms = parse_side(side)
        if ends_only and not terms[0].is_end:
            raise NotASide(f"a {ends_only} joint enters with an end, not with {side}", "an end")
    except NotASide as wrong:
        _say(wrong, place, sums)
        return None
    return Named(who, terms, place) if is_known else None


def _say(wrong: NotASide, side: Place, sums: Reckoning) -> None:
    place = side
    if wrong.span is not None and side.start is not None:
        place = Place(side.path, start=side.start + wrong.span[0], end=side.start + wrong.span[1])
    sums.say(place, wrong.message, wrong.expected, wrong.meant)


def knows(who: str, place: Place, sums: Reckoning, members: Members) -> bool:
    """Whether somebody is called so; says so when not, unless that can't be told."""
    draft = sums.draft
    if who in draft.written.parts:
        return True
    if any(is_called(member, who, scope) for scope, inside in members.items() for member in inside):
        return True
    if (draft.written.assemblies and not members) or draft.is_lost(*place.path[:1], "parts", who):
        return False
    sums.say(
        place,
        f"no part or copy is called {who}",
        _expected(members),
        nearest_words(who, _known(sums, members)),
    )
    return False


def _expected(members: Members) -> str:
    """With a mark that there is, where there is one."""
    marks = (member.mark for inside in members.values() for member in inside)
    mark = next((mark for mark in marks if "/" in mark), "LD/H")
    return f"a part, or a mark such as {mark}"


def _known(sums: Reckoning, members: Members) -> set[str]:
    """Marks from every assembly down, and from those named."""
    marks = {m.mark for inside in members.values() for m in inside}
    named = {f"{scope}/{m.mark}" for scope, inside in members.items() for m in inside}
    return {*sums.draft.written.parts, *marks, *named}


def part_called(who: str, project: Project) -> str:
    """The part that a name or a mark means, by what is written alone; empty when there is none."""
    if who in project.parts:
        return who
    head, _, mark = who.rpartition("/")
    holder = head.rpartition("/")[2]
    found = sorted(_parts_marked(mark, project), key=lambda pair: holder not in _names_of(pair[0], project))
    return found[0][1] if found else ""


def _parts_marked(mark: str, project: Project) -> Iterator[tuple[str, str]]:
    """(assembly, part) of every place whose mark is this, or may come out as this."""
    for name, assembly in project.assemblies.items():
        for place in assembly.place:
            if place.kind == "part" and place.of in project.parts:
                given = place.mark or base_mark(place, project.parts)
                is_numbered = not place.mark or is_row(place)
                if given == mark or (is_numbered and given == mark.rstrip("0123456789")):
                    yield name, place.of


def _names_of(assembly: str, project: Project) -> set[str]:
    """What an assembly goes by: its name, and its marks where it stands."""
    places = (place for other in project.assemblies.values() for place in other.place)
    standing = (place for place in places if place.kind == "assembly" and place.of == assembly)
    return {assembly, *(place.mark or base_mark(place, project.parts) for place in standing)}
