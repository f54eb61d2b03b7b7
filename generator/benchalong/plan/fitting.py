"""The pass that measures what is cut to fit: a panel to the grooves around it, a shelf to its dadoes.

Such a size hangs on where its neighbours stand, and they on other sizes. So the plan is laid out as far as it
goes without the fitted parts, what has an opening by then is measured, and so on in rounds until nothing is
left. What is left then, though nothing else is wrong, stands around itself: a circle.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import reduce

from benchalong.ground.lengths import Length, Point3
from benchalong.ground.marks import Path, Place
from benchalong.plan.boxes import measure_boxes
from benchalong.plan.draft import Draft, Known
from benchalong.plan.joints.openings import (
    GOES_IN,
    NoOpening,
    Opening,
    axis_of_size,
    goes_in,
    grooved_sides,
    middle_of_groove,
    opening,
)
from benchalong.plan.joints.scopes import members_of
from benchalong.plan.names import work_out_names
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
from benchalong.plan.stock import take_stock
from benchalong.plan.turns import WAYS
from benchalong.reading import written
from benchalong.reading.written import PROJECT_FILE

KEYS = ("width", "length")
LAID_OUT_BY = (work_out_names, take_stock, measure_boxes, place_assemblies)
"""What must be known before an opening can be measured."""


@dataclass(frozen=True)
class Wanted:
    """A size that says which joint it fits."""

    part: str
    key: str
    joint: str
    at: Place

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
            found = FITS.match(text or "")
            if found:
                path = (PROJECT_FILE, "parts", name, key)
                yield Wanted(name, key, found[1], Place(path, start=found.start(1), end=found.end(1)))


def _makes_sense(one: Wanted, sums: Reckoning) -> bool:
    """Whether there is such a joint, and the part belongs between its sides."""
    draft = sums.draft
    if not sums.knows("joints", one.joint, one.at, among=draft.written.joints):
        return False
    joint = draft.written.joints[one.joint]
    enters = any(side.split()[:1] == [one.part] for side in joint.takes) and joint.kind in GOES_IN
    if one.part not in joint.floats and not enters:
        if not draft.is_lost(PROJECT_FILE, "joints", one.joint):
            message = f"{one.part} neither floats in {one.joint} nor goes into it at its ends"
            sums.say(one.at, message, f"floats: [{one.part}] in {one.joint}")
        return False
    if not list(_spots(one.part, draft)) and not draft.unreadable:
        sums.say(one.at, f"{one.part} stands nowhere, so there is no opening to measure", "a place for it")
        return False
    return True


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
    joint = laid_out.written.joints[one.joint]
    if goes_in(one.joint, joint, one.part, one.key, laid_out) is None:
        return False
    return _neighbours_stand(one, laid_out, waits_for, all_wanted=all_wanted)


def _neighbours_stand(one: Wanted, laid_out: Draft, waits_for: set[str], *, all_wanted: set[str]) -> bool:
    joint = laid_out.written.joints[one.joint]
    needed = {side.split()[0] for side in joint.cut_in if side.split()} - {one.part}
    needed -= all_wanted - waits_for
    return all(
        _count(spot.assembly, part, laid_out) == _written(spot.assembly, part, laid_out)
        for spot in _spots(one.part, laid_out)
        for part in needed
    )


def _count(assembly: str, part: str, laid_out: Draft) -> int:
    return sum(placed.of == part for placed in laid_out.assemblies[assembly].placed)


def _written(assembly: str, part: str, laid_out: Draft) -> int:
    return sum(place.of == part for place in laid_out.written.assemblies[assembly].place)


def _measure(one: Wanted, laid_out: Draft, sums: Reckoning) -> Known:
    sizes = set[Length]()
    for spot in _spots(one.part, laid_out):
        try:
            sizes.add(_opening(one, spot, laid_out).size)
        except NoOpening as wrong:
            sums.say(one.at, f"{one.part} can't be fitted to {one.joint}: {wrong.message}", wrong.expected)
            return Known(None)
    if len(sizes) > 1:
        shown = " and ".join(sums.shown(size) for size in sorted(sizes))
        sums.say(one.at, f"{one.part} stands in openings of different size: {shown}", "a part for each")
        return Known(None)
    return Known(Quantity(sizes.pop(), 1), _followed(one, laid_out))


def _opening(one: Wanted, spot: Spot, laid_out: Draft, *, inside: Length | None = None) -> Opening:
    """Where it goes as deep as the joint lets it, or `inside`."""
    joint = laid_out.written.joints[one.joint]
    axis = axis_of_size(one.key, spot.place)
    members = members_of(spot.assembly, laid_out)
    sides = list(grooved_sides(joint, one.part, spot.assembly, members))
    if inside is None:
        inside = goes_in(one.joint, joint, one.part, one.key, laid_out)
    at = None if spot.place.at is None else Reckoning(laid_out).length(spot.place.at[axis], spot.path)
    return opening(sides, axis, goes_in=inside or Length(0), at=at)


def _followed(one: Wanted, laid_out: Draft) -> frozenset[str]:
    """All that what stands around it follows from."""
    sums, names = Reckoning(laid_out), laid_out.names
    around = {side.split()[0] for side in laid_out.written.joints[one.joint].cut_in} - {one.part}
    found = set[str]()
    for name, known in names.items():
        head, dot, tail = name.partition(".")
        if dot and ((head in around) or (head == one.joint and tail in ("depth", *_PLAYS))):
            found |= known.follows
    for spot in _spots(one.part, laid_out):
        for place in laid_out.written.assemblies[spot.assembly].place:
            if place.of in around:
                found.update(name for text in place.at or () for name in sums.follows(text))
    return frozenset(found)


_PLAYS = ("panel_side_play", "panel_end_play", "end_play")


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
    """What each place asks for; a place without an opening is told of when the part is measured."""
    share = swells(one.part, laid_out.written)
    for spot in _spots(one.part, laid_out) if share is not None else ():
        with suppress(NoOpening):
            whole = _opening(one, spot, laid_out, inside=depth).size
            yield play_in(whole, share or Fraction(0), laid_out.written.units)


# where it stands


def _places(wanted: tuple[Wanted, ...], laid_out: Draft) -> Iterator[tuple[Path, Point3]]:
    """In the middle of its opening, and of its groove, for every place that doesn't say where."""
    for part in dict.fromkeys(one.part for one in wanted):
        own = [one for one in wanted if one.part == part]
        if len(own) == len(KEYS) and part in laid_out.boxes:
            for spot in _spots(part, laid_out):
                if spot.place.at is None:
                    yield spot.path, _corner(own, spot, laid_out)


def _corner(own: list[Wanted], spot: Spot, laid_out: Draft) -> Point3:
    openings = [_opening(one, spot, laid_out) for one in own]
    found = {lies.axis: lies.start for lies in openings}
    thick = 3 - sum(found)
    joint, thickness = own[0].joint, laid_out.boxes[own[0].part][2]
    members = members_of(spot.assembly, laid_out)
    side = next(grooved_sides(laid_out.written.joints[joint], own[0].part, spot.assembly, members))
    found[thick] = middle_of_groove(side, joint, laid_out, thick) - thickness / 2
    return (found[0], found[1], found[2])


def _say_circle(left: list[Wanted], laid_out: Draft, sums: Reckoning) -> None:
    """What could not be measured, unless something else is wrong that explains it."""
    if laid_out.problems or laid_out.unreadable or sums.found:
        return
    for one in left:
        message = f"{one.name} follows from itself: what stands around it in {one.joint} follows from it"
        sums.say(one.at, message, "sizes around it that don't come back to it")
