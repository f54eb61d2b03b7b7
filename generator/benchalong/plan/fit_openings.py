"""The opening that a fitted part goes into: between which walls, from where, and what it follows from."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Path
from benchalong.plan.draft import Draft
from benchalong.plan.fit_wanted import Spot, Wanted, spots_of
from benchalong.plan.joints.member import Member
from benchalong.plan.joints.named import part_called
from benchalong.plan.joints.openings import (
    Bound,
    Opening,
    axis_of_size,
    bounds_of,
    goes_in,
    grooved_sides,
    opening,
    reach_of,
)
from benchalong.plan.joints.scopes import is_called, members_of
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.refused import Refused
from benchalong.plan.relations import Words, parse_spot
from benchalong.plan.rows import entries
from benchalong.plan.turns import Room, around
from benchalong.plan.walk import walk

PLAYS = ("panel_side_play", "panel_end_play", "end_play", "play")


def opening_of(one: Wanted, spot: Spot, laid_out: Draft) -> Opening:
    axis = axis_of_size(one.key, spot.place)
    members = members_of(spot.assembly, laid_out)
    bounds = list(_bounds(one, spot.assembly, members, axis, laid_out))
    return opening(bounds, axis, at=_begins(spot, axis, laid_out))


def _bounds(
    one: Wanted, scope: str, members: tuple[Member, ...], axis: int, laid_out: Draft
) -> Iterator[Bound]:
    """What may stand at either end of the opening."""
    if one.between:
        called = [m for m in members if any(is_called(m, who, scope) for who in one.between)]
        yield from bounds_of(called, axis)
        return
    joint = laid_out.written.joints[one.joint]
    for side in grooved_sides(joint, one.part, scope, members):
        for surface, way in zip(side.surfaces, side.looks, strict=True):
            inside = goes_in(one.joint, joint, one.part, one.key, laid_out, surface)
            if way[axis]:
                yield Bound(side.member.room[way[axis] > 0][axis], way[axis], inside or Length(0))


def _begins(spot: Spot, axis: int, laid_out: Draft) -> Length | None:
    """Where the part is said to begin; None where that hangs on its own size, or isn't said."""
    if spot.place.at is None:
        return None
    path: Path = (*spot.path, "at", axis)
    try:
        said = parse_spot(spot.place.at[axis], axis)
    except Refused:
        return None
    sums = Reckoning(laid_out)
    if isinstance(said.start, Words):
        return sums.length(said.start.text, path)
    relation, members = said.start, members_of(spot.assembly, laid_out)
    rooms = [_room_called(words.text, spot.assembly, members) for words in relation.whom]
    known = [room for room in rooms if room is not None]
    if len(known) < len(rooms) or relation.is_far or relation.how in ("before", "middle"):
        return None
    if relation.how in ("flush", "inside"):
        return known[0][0][axis]
    far = min(room[1][axis] for room in known)
    reach = (
        reach_of(relation.into.text, laid_out)
        if relation.into and relation.into.text in laid_out.written.joints
        else None
    )
    return far if reach is None or reach.size is None else far - reach.size


def _room_called(who: str, scope: str, members: tuple[Member, ...]) -> Room | None:
    rooms = [m.room for m in members if is_called(m, who, scope) or m.mark.startswith(f"{who}/")]
    return around(rooms) if rooms else None


def _stand_around(one: Wanted, draft: Draft) -> set[str]:
    """The parts that bound its opening."""
    project = draft.written
    if one.between:
        return {part_called(who, project) for who in one.between}
    who = (side.split()[0] for side in project.joints[one.joint].cut_in if side.split())
    return {part_called(name, project) or name for name in who}


def neighbours_stand(one: Wanted, laid_out: Draft, but: set[str]) -> bool:
    """Whether all that bounds its opening, but some, has its place."""
    needed = _stand_around(one, laid_out) - {one.part} - but
    return all(
        _all_stand(spot.assembly, part, laid_out) for spot in spots_of(one.part, laid_out) for part in needed
    )


def _all_stand(assembly: str, part: str, laid_out: Draft) -> bool:
    """Whether every copy of the part in an assembly, or in those that stand in it, has its place and box."""
    waiting, seen = [assembly], set[str]()
    while waiting:
        name = waiting.pop()
        if name in seen or name not in laid_out.assemblies:
            continue
        seen.add(name)
        places = laid_out.written.assemblies[name].place
        inner = [place.of for place in places if place.kind == "assembly"]
        missing = {entry.place.of for entry in entries(places)} & {part, *inner}
        placed = Counter(placed.of for placed in laid_out.assemblies[name].placed)
        wanted = Counter(entry.place.of for entry in entries(places))
        if any(placed[of] < wanted[of] for of in missing):
            return False
        waiting += inner
    return True


def followed(one: Wanted, laid_out: Draft) -> frozenset[str]:
    """All that what stands around it follows from."""
    names = laid_out.names
    beside = _stand_around(one, laid_out) - {one.part}
    found = set[str]()
    for name, known in names.items():
        head, dot, tail = name.partition(".")
        if dot and ((head in beside) or (head == one.joint and tail in ("depth", *PLAYS))):
            found |= known.follows
    for spot in spots_of(one.part, laid_out):
        for standing in walk(laid_out.assemblies, spot.assembly):
            for placed in () if standing.is_part else laid_out.assemblies[standing.of].placed:
                if placed.kind == "assembly" or placed.of in beside:
                    found.update(placed.follows)
    return frozenset(found)
