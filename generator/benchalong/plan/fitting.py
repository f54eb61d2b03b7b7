"""The pass that measures what is cut to fit: a panel to the grooves around it, a shelf to its dadoes.

Such a size hangs on where its neighbours stand, and they on other sizes. So the plan is laid out as far as it
goes without the fitted parts, what has an opening by then is measured, and so on in rounds until nothing is
left. What is left then, though nothing else is wrong, stands around itself: a circle.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import replace
from fractions import Fraction
from functools import reduce

from benchalong.ground.lengths import Length, Point3
from benchalong.ground.marks import Path
from benchalong.plan.boxes import measure_boxes
from benchalong.plan.draft import Draft, Known
from benchalong.plan.fit_openings import followed, neighbours_stand, opening_of
from benchalong.plan.fit_wanted import (
    KEYS,
    Spot,
    Wanted,
    look_at_thicknesses,
    makes_sense,
    spots_of,
    wanted_in,
)
from benchalong.plan.joints.openings import NoOpening, grooved_sides, is_known, thick_start
from benchalong.plan.joints.scopes import members_of
from benchalong.plan.names import work_out_names
from benchalong.plan.piece import are_nested
from benchalong.plan.placing import place_assemblies
from benchalong.plan.play import BY_MOVEMENT, SIDE_PLAY, fitted_panels, is_by_movement, play_in, swells
from benchalong.plan.quantity import Quantity
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.stock import take_stock
from benchalong.reading.written import PROJECT_FILE

LAID_OUT_BY = (work_out_names, take_stock, measure_boxes, place_assemblies)
"""What must be known before an opening can be measured."""


def fit_parts(draft: Draft) -> Draft:
    """Adds `fitted` and `fitted_at`."""
    sums = Reckoning(draft)
    look_at_thicknesses(draft, sums)
    left = [one for one in wanted_in(draft) if makes_sense(one, sums)]
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


# what is measured


def _measured(wanted: list[Wanted], laid_out: Draft, sums: Reckoning, *, patient: bool) -> dict[str, Known]:
    """What can be by now. The patient wait for neighbours that fit somewhere themselves."""
    but = _not_waited_for(wanted, patient=patient)
    return {one.name: _measure(one, laid_out, sums) for one in wanted if _is_ready(one, laid_out, but)}


def _not_waited_for(wanted: list[Wanted], *, patient: bool) -> set[str]:
    return set() if patient else {one.part for one in wanted}


def _is_ready(one: Wanted, laid_out: Draft, but: set[str]) -> bool:
    """Whether all of the neighbours in the joint, but some, stand in their places."""
    if not one.between:
        joint = laid_out.written.joints[one.joint]
        if not is_known(one.joint, joint, one.part, one.key, laid_out):
            return False
    return neighbours_stand(one, laid_out, but)


def _measure(one: Wanted, laid_out: Draft, sums: Reckoning) -> Known:
    sizes = set[Length]()
    for spot in spots_of(one.part, laid_out):
        try:
            sizes.add(opening_of(one, spot, laid_out).size)
        except NoOpening as wrong:
            what = f"fitted to {one.joint}" if one.joint else f"measured between {' and '.join(one.between)}"
            sums.say(one.at, f"{one.part} can't be {what}: {wrong.message}", wrong.expected)
            return Known(None)
    if len(sizes) > 1:
        shown = " and ".join(sums.shown(size) for size in sorted(sizes))
        sums.say(one.at, f"{one.part} stands in openings of different size: {shown}", "a part for each")
        return Known(None)
    return Known(Quantity(sizes.pop(), 1), followed(one, laid_out))


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
    but = _not_waited_for(left, patient=patient)
    found: dict[str, Known] = {}
    for name in plays:
        panels = fitted_panels(name, laid_out.written.joints[name], laid_out.written)
        own = [one for one in left if one.joint == name and one.key == "width" and one.part in panels]
        depth = laid_out.names[f"{name}.depth"].value
        if depth and all(neighbours_stand(one, laid_out, but) for one in own):
            needed = [play for one in own for play in _needed(one, depth.value, laid_out)]
            follows = frozenset[str]().union(*(followed(one, laid_out) for one in own))
            found[f"{name}.{SIDE_PLAY}"] = Known(Quantity(max(needed, default=Length(0)), 1), follows)
    return found


def _needed(one: Wanted, depth: Length, laid_out: Draft) -> Iterator[Length]:
    """What each place asks for; a place without an opening is told of when the part is measured. While the
    play isn't known, nothing is taken to go into the grooves."""
    share = swells(one.part, laid_out.written)
    for spot in spots_of(one.part, laid_out) if share is not None else ():
        with suppress(NoOpening):
            whole = opening_of(one, spot, laid_out).size + 2 * depth
            yield play_in(whole, share or Fraction(0), laid_out.written.units)


# where it stands


def _places(wanted: tuple[Wanted, ...], laid_out: Draft) -> Iterator[tuple[Path, Point3]]:
    """In the middle of its opening, and of its groove, for every place that doesn't say where."""
    for part in dict.fromkeys(one.part for one in wanted):
        own = [one for one in wanted if one.part == part]
        if len(own) == len(KEYS) and part in laid_out.boxes:
            for spot in spots_of(part, laid_out):
                if spot.place.at is None and all(one.joint for one in own):
                    yield spot.path, _corner(own, spot, laid_out)


def _corner(own: list[Wanted], spot: Spot, laid_out: Draft) -> Point3:
    openings = [opening_of(one, spot, laid_out) for one in own]
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
