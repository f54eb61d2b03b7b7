"""The pass that measures what is cut to fit: a panel to the grooves around it, a shelf to its dadoes.

Such a size hangs on where its neighbours stand, and they on other sizes. So the plan is laid out as far as it
goes without the fitted parts, what has an opening by then is measured, and so on in rounds until nothing is
left. What is left then, though nothing else is wrong, stands around itself: a circle.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import reduce

from benchalong.ground.lengths import Length, Point3
from benchalong.ground.marks import Path, Place
from benchalong.ground.words import nearest_words
from benchalong.plan.boxes import measure_boxes
from benchalong.plan.draft import Draft, Known
from benchalong.plan.joints.member import Member
from benchalong.plan.joints.named import part_called
from benchalong.plan.joints.openings import (
    GOES_IN,
    RABBET,
    Bound,
    NoOpening,
    Opening,
    axis_of_size,
    bounds_of,
    goes_in,
    grooved_sides,
    is_known,
    opening,
    reach_of,
    thick_start,
)
from benchalong.plan.joints.scopes import is_called, members_of
from benchalong.plan.names import BETWEEN, THICK_IN, work_out_names
from benchalong.plan.piece import are_nested
from benchalong.plan.placing import place_assemblies
from benchalong.plan.play import (
    BY_MOVEMENT,
    FITS,
    SIDE_PLAY,
    fitted_panels,
    is_by_movement,
    play_in,
    swells,
)
from benchalong.plan.quantity import Quantity
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.refused import Refused
from benchalong.plan.relations import Words, parse_spot
from benchalong.plan.rows import entries
from benchalong.plan.stock import take_stock
from benchalong.plan.turns import WAYS, Room, around
from benchalong.plan.walk import walk
from benchalong.reading import written
from benchalong.reading.written import PROJECT_FILE

KEYS = ("width", "length")
LAID_OUT_BY = (work_out_names, take_stock, measure_boxes, place_assemblies)
"""What must be known before an opening can be measured."""


@dataclass(frozen=True)
class Wanted:
    """A size that says which joint it fits, or between whom it is measured."""

    part: str
    key: str
    joint: str
    """None is empty."""
    at: Place
    between: tuple[str, ...] = ()
    """A part, or the two that it stands between."""

    @property
    def name(self) -> str:
        return f"{self.part}.{self.key}"


@dataclass(frozen=True)
class Spot:
    """One place where a fitted part stands."""

    assembly: str
    index: int
    place: written.Place

    @property
    def path(self) -> Path:
        return (PROJECT_FILE, "assemblies", self.assembly, "place", self.index)


def fit_parts(draft: Draft) -> Draft:
    """Adds `fitted` and `fitted_at`."""
    sums = Reckoning(draft)
    _look_at_thicknesses(draft, sums)
    left = [one for one in _wanted(draft) if _makes_sense(one, sums)]
    everything, found = tuple(left), draft
    plays = list(_by_movement(draft, sums))
    while everything and are_nested(draft):
        laid_out = reduce(lambda so_far, step: step(so_far), LAID_OUT_BY, found)
        found = replace(found, fitted_at=dict(_places(everything, laid_out)))
        measured = (
            _plays(plays, left, laid_out, patient=True)
            or _measured(left, laid_out, sums, patient=True)
            or _plays(plays, left, laid_out, patient=False)
            or _measured(left, laid_out, sums, patient=False)
        )
        if not measured:
            _say_circle(left, laid_out, sums)
            break
        found = replace(found, fitted={**found.fitted, **measured})
        left = [one for one in left if one.name not in measured]
        plays = [joint for joint in plays if f"{joint}.{SIDE_PLAY}" not in measured]
    return sums.done(fitted=found.fitted, fitted_at=found.fitted_at)


# what is wanted


def _wanted(draft: Draft) -> Iterator[Wanted]:
    for name, part in draft.written.parts.items():
        for key in KEYS:
            text: str | None = getattr(part, key)
            path = (PROJECT_FILE, "parts", name, key)
            if found := FITS.match(text or ""):
                yield Wanted(name, key, found[1], Place(path, start=found.start(1), end=found.end(1)))
            elif found := BETWEEN.match(text or ""):
                last = 2 if found[2] else 1
                at = Place(path, start=found.start(1), end=found.end(last))
                yield Wanted(name, key, "", at, tuple(who for who in found.groups() if who))


def _look_at_thicknesses(draft: Draft, sums: Reckoning) -> None:
    """A thickness that fits a joint follows from its sizes alone; says so where it can't."""
    for name, part in draft.written.parts.items():
        path, text = (PROJECT_FILE, "parts", name, "thickness"), part.thickness or ""
        found = FITS.match(text)
        place = Place(path, start=found.start(1), end=found.end(1)) if found else Place(path)
        if BETWEEN.match(text):
            sums.say(place, "a thickness isn't measured between others", "a size, or fits and a joint")
        elif found and sums.knows("joints", found[1], place, among=draft.written.joints):
            joint = draft.written.joints[found[1]]
            if joint.kind not in THICK_IN and not draft.is_lost(PROJECT_FILE, "joints", found[1]):
                message = f"how thick it must be doesn't follow from {found[1]}, which is a {joint.kind}"
                sums.say(place, message, "a tongue and groove or a dado; or a size")


def _makes_sense(one: Wanted, sums: Reckoning) -> bool:
    """Whether there is such a joint, and the part belongs between its sides."""
    draft = sums.draft
    if one.between:
        return _makes_sense_between(one, sums)
    if not sums.knows("joints", one.joint, one.at, among=draft.written.joints):
        return False
    joint = draft.written.joints[one.joint]
    goes = joint.kind in GOES_IN or joint.kind == RABBET
    enters = goes and any(
        part_called(side.split()[0], draft.written) == one.part for side in joint.takes if side.split()
    )
    if one.part not in joint.floats and not enters:
        if not draft.is_lost(PROJECT_FILE, "joints", one.joint):
            message = f"{one.part} neither floats in {one.joint} nor goes into it at its ends"
            sums.say(one.at, message, f"floats: [{one.part}] in {one.joint}")
        return False
    return _stands_somewhere(one, sums)


def _stands_somewhere(one: Wanted, sums: Reckoning) -> bool:
    if not list(_spots(one.part, sums.draft)) and not sums.draft.unreadable:
        sums.say(one.at, f"{one.part} stands nowhere, so there is no opening to measure", "a place for it")
        return False
    return True


def _makes_sense_between(one: Wanted, sums: Reckoning) -> bool:
    """Whether there are such parts or marks, and the part stands somewhere."""
    project = sums.draft.written
    for who in one.between:
        if not part_called(who, project):
            if not sums.draft.unreadable:
                marks = {place.mark for a in project.assemblies.values() for place in a.place if place.mark}
                start = (one.at.start or 0) + (
                    _text(one, project).find(who, one.at.start or 0) - (one.at.start or 0)
                )
                at = replace(one.at, start=start, end=start + len(who))
                meant = nearest_words(who, {*project.parts, *marks})
                sums.say(
                    at, f"no part or copy is called {who}", "a part, or the marks of two: SL and SR", meant
                )
            return False
    return _stands_somewhere(one, sums)


def _text(one: Wanted, project: written.Project) -> str:
    text: str = getattr(project.parts[one.part], one.key)
    return text


def _spots(part: str, draft: Draft) -> Iterator[Spot]:
    for name, assembly in draft.written.assemblies.items():
        for index, place in enumerate(assembly.place):
            if place.kind == "part" and place.of == part and {place.along, place.face} <= WAYS.keys():
                yield Spot(name, index, place)


# what is measured


def _measured(wanted: list[Wanted], laid_out: Draft, sums: Reckoning, *, patient: bool) -> dict[str, Known]:
    """What can be by now. The patient wait for neighbours that fit somewhere themselves."""
    waits_for = {one.part for one in wanted} if patient else set()
    found: dict[str, Known] = {}
    for one in wanted:
        if _is_ready(one, laid_out, waits_for, all_wanted={other.part for other in wanted}):
            found[one.name] = _measure(one, laid_out, sums)
    return found


def _is_ready(one: Wanted, laid_out: Draft, waits_for: set[str], *, all_wanted: set[str]) -> bool:
    """Whether all of the neighbours in the joint stand in their places."""
    if not one.between:
        joint = laid_out.written.joints[one.joint]
        if not is_known(one.joint, joint, one.part, one.key, laid_out):
            return False
    return _neighbours_stand(one, laid_out, waits_for, all_wanted=all_wanted)


def _neighbours_stand(one: Wanted, laid_out: Draft, waits_for: set[str], *, all_wanted: set[str]) -> bool:
    needed = _stand_around(one, laid_out) - {one.part}
    needed -= all_wanted - waits_for
    return all(
        _all_stand(spot.assembly, part, laid_out) for spot in _spots(one.part, laid_out) for part in needed
    )


def _stand_around(one: Wanted, draft: Draft) -> set[str]:
    """The parts that bound its opening."""
    project = draft.written
    if one.between:
        return {part_called(who, project) for who in one.between}
    who = (side.split()[0] for side in project.joints[one.joint].cut_in if side.split())
    return {part_called(name, project) or name for name in who}


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


def _measure(one: Wanted, laid_out: Draft, sums: Reckoning) -> Known:
    sizes = set[Length]()
    for spot in _spots(one.part, laid_out):
        try:
            sizes.add(_opening(one, spot, laid_out).size)
        except NoOpening as wrong:
            what = f"fitted to {one.joint}" if one.joint else f"measured between {' and '.join(one.between)}"
            sums.say(one.at, f"{one.part} can't be {what}: {wrong.message}", wrong.expected)
            return Known(None)
    if len(sizes) > 1:
        shown = " and ".join(sums.shown(size) for size in sorted(sizes))
        sums.say(one.at, f"{one.part} stands in openings of different size: {shown}", "a part for each")
        return Known(None)
    return Known(Quantity(sizes.pop(), 1), _followed(one, laid_out))


def _opening(one: Wanted, spot: Spot, laid_out: Draft) -> Opening:
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


def _followed(one: Wanted, laid_out: Draft) -> frozenset[str]:
    """All that what stands around it follows from."""
    names = laid_out.names
    beside = _stand_around(one, laid_out) - {one.part}
    found = set[str]()
    for name, known in names.items():
        head, dot, tail = name.partition(".")
        if dot and ((head in beside) or (head == one.joint and tail in ("depth", *_PLAYS))):
            found |= known.follows
    for spot in _spots(one.part, laid_out):
        for standing in walk(laid_out.assemblies, spot.assembly):
            for placed in () if standing.is_part else laid_out.assemblies[standing.of].placed:
                if placed.kind == "assembly" or placed.of in beside:
                    found.update(placed.follows)
    return frozenset(found)


_PLAYS = ("panel_side_play", "panel_end_play", "end_play", "play")


# what play it needs


def _by_movement(draft: Draft, sums: Reckoning) -> Iterator[str]:
    """The joints whose play beside their panels is worked out, where there is a panel to work it out from."""
    for name, joint in draft.written.joints.items():
        if is_by_movement(name, joint, draft.written):
            if fitted_panels(name, joint, draft.written):
                yield name
            elif not draft.unreadable:
                path = (PROJECT_FILE, "joints", name, SIDE_PLAY)
                message = f"{BY_MOVEMENT} needs a solid panel of a known wood whose width fits {name}"
                sums.say(
                    path, message, f"width: fits {name} at the panel and species: at its stock, or a length"
                )


def _plays(plays: list[str], left: list[Wanted], laid_out: Draft, *, patient: bool) -> dict[str, Known]:
    """Of those joints whose panels have all their neighbours around them."""
    waits_for = {one.part for one in left} if patient else set()
    all_wanted = {one.part for one in left}
    found: dict[str, Known] = {}
    for name in plays:
        panels = fitted_panels(name, laid_out.written.joints[name], laid_out.written)
        own = [one for one in left if one.joint == name and one.key == "width" and one.part in panels]
        depth = laid_out.names[f"{name}.depth"].value
        if depth and all(_neighbours_stand(one, laid_out, waits_for, all_wanted=all_wanted) for one in own):
            needed = [play for one in own for play in _needed(one, depth.value, laid_out)]
            follows = frozenset[str]().union(*(_followed(one, laid_out) for one in own))
            found[f"{name}.{SIDE_PLAY}"] = Known(Quantity(max(needed, default=Length(0)), 1), follows)
    return found


def _needed(one: Wanted, depth: Length, laid_out: Draft) -> Iterator[Length]:
    """What each place asks for; a place without an opening is told of when the part is measured. While the
    play isn't known, nothing is taken to go into the grooves."""
    share = swells(one.part, laid_out.written)
    for spot in _spots(one.part, laid_out) if share is not None else ():
        with suppress(NoOpening):
            whole = _opening(one, spot, laid_out).size + 2 * depth
            yield play_in(whole, share or Fraction(0), laid_out.written.units)


# where it stands


def _places(wanted: tuple[Wanted, ...], laid_out: Draft) -> Iterator[tuple[Path, Point3]]:
    """In the middle of its opening, and of its groove, for every place that doesn't say where."""
    for part in dict.fromkeys(one.part for one in wanted):
        own = [one for one in wanted if one.part == part]
        if len(own) == len(KEYS) and part in laid_out.boxes:
            for spot in _spots(part, laid_out):
                if spot.place.at is None and all(one.joint for one in own):
                    yield spot.path, _corner(own, spot, laid_out)


def _corner(own: list[Wanted], spot: Spot, laid_out: Draft) -> Point3:
    openings = [_opening(one, spot, laid_out) for one in own]
    found = {lies.axis: lies.start for lies in openings}
    thick = 3 - sum(found)
    joint, thickness = own[0].joint, laid_out.boxes[own[0].part][2]
    members = members_of(spot.assembly, laid_out)
    sides = grooved_sides(laid_out.written.joints[joint], own[0].part, spot.assembly, members)
    side = next(one for one in sides if not one.is_arris or any(way[thick] for way in one.looks))
    found[thick] = thick_start(side, joint, laid_out, thick, thickness)
    return (found[0], found[1], found[2])


def _say_circle(left: list[Wanted], laid_out: Draft, sums: Reckoning) -> None:
    """What could not be measured, unless something else is wrong that explains it."""
    if laid_out.problems or laid_out.unreadable or sums.found:
        return
    for one in left:
        where = f"around it in {one.joint}" if one.joint else f"beside it ({' and '.join(one.between)})"
        message = f"{one.name} follows from itself: what stands {where} follows from it"
        sums.say(one.at, message, "sizes around it that don't come back to it")
