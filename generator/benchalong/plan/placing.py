"""The pass that puts parts and assemblies in their places.

`at` is the left, front, bottom corner of the room something takes up once it is turned and mirrored,
so an assembly's room must be known before it can be placed in another: the innermost come first.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import cast

from benchalong.ground.lengths import Length, Point3
from benchalong.ground.marks import Path, Place
from benchalong.plan import model
from benchalong.plan.circles import in_order, shortened
from benchalong.plan.draft import Draft
from benchalong.plan.marking import marks_in
from benchalong.plan.play import FITS
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.stock import in_words
from benchalong.plan.turns import (
    MIRRORS,
    WAYS,
    Room,
    after,
    are_square,
    around,
    moved,
    room_of,
    turn_of_part,
    way_through,
)
from benchalong.reading import written
from benchalong.reading.language import PLACE
from benchalong.reading.written import PROJECT_FILE

AT = PLACE.by_name["at"].meaning.partition(";")[0]
ORIGIN: Point3 = (Length(0), Length(0), Length(0))


def place_assemblies(draft: Draft) -> Draft:
    """Adds `assemblies`, in the order written."""
    sums = Reckoning(draft)
    assemblies = draft.written.assemblies
    ordered = in_order({name: _inner(assembly) for name, assembly in assemblies.items()})
    for circle in ordered.circles:
        _report_circle(circle, assemblies[circle[0]], sums)
    rooms: dict[str, Room | None] = {}
    placed: dict[str, tuple[model.Placed, ...]] = {}
    for name in ordered.order:
        placed[name], rooms[name] = _place_all(name, assemblies[name], rooms, sums)
    made = {
        name: model.Assembly(name, a.name or in_words(name), placed[name], a.note)
        for name, a in assemblies.items()
    }
    return sums.done(assemblies=made)


def _inner(assembly: written.Assembly) -> tuple[str, ...]:
    return tuple(place.of for place in assembly.place if place.kind == "assembly")


def _place_all(
    name: str, assembly: written.Assembly, rooms: Mapping[str, Room | None], sums: Reckoning
) -> tuple[tuple[model.Placed, ...], Room | None]:
    """Everything in an assembly, and the room it takes up; None when that can't be known."""
    marks = marks_in(name, assembly.place, sums)
    path: Path = (PROJECT_FILE, "assemblies", name, "place")
    made = [
        _place(place, mark, (*path, index), rooms, sums)
        for index, (place, mark) in enumerate(zip(assembly.place, marks, strict=True))
    ]
    if not made and not sums.draft.is_lost(*path):
        sums.say(path[:-1], f"nothing stands in the assembly {name}", "places under place:")
    known = [entry for entry in made if entry is not None]
    whole = around([room for _, room in known]) if known and len(known) == len(made) else None
    return tuple(placed for placed, _ in known), whole


def _place(
    place: written.Place, mark: str, path: Path, rooms: Mapping[str, Room | None], sums: Reckoning
) -> tuple[model.Placed, Room] | None:
    wanted = _corner(place, path, sums)
    turn = _turn(place, path, sums)
    room = _room(place, path, rooms, sums)
    if sums.draft.is_lost(*path, "at") or turn is None or room is None or wanted is None:
        return None
    turned_room = room_of(room, turn)
    by = moved(wanted, cast(Point3, tuple(-value for value in turned_room[0])))
    return (
        model.Placed(place.kind, place.of, mark, turn, by, _follows(place, sums)),
        (wanted, moved(turned_room[1], by)),
    )


def _follows(place: written.Place, sums: Reckoning) -> tuple[model.SizeName, ...]:
    return tuple(sorted({name for text in place.at or () for name in sums.follows(text)}))


def _corner(place: written.Place, path: Path, sums: Reckoning) -> Point3 | None:
    """As written; of a part that fits its opening, as measured there."""
    if place.at is not None:
        corner = [sums.length(text, (*path, "at", axis)) for axis, text in enumerate(place.at)]
        return None if None in corner else cast(Point3, tuple(corner))
    part = sums.draft.written.parts.get(place.of)
    fits = part is not None and FITS.match(part.width or "") and FITS.match(part.length or "")
    if not fits and not sums.draft.is_lost(*path, "at"):
        sums.say(Place(path).key(), "this place has no at", f"at: {AT}")
    return sums.draft.fitted_at.get(path)


def _room(place: written.Place, path: Path, rooms: Mapping[str, Room | None], sums: Reckoning) -> Room | None:
    """The room it takes up before it is turned."""
    draft = sums.draft
    if place.kind == "assembly":
        sums.knows("assemblies", place.of, (*path, "assembly"), among=draft.written.assemblies)
        return rooms.get(place.of)
    sums.knows("parts", place.of, (*path, "part"), among=draft.written.parts)
    box = draft.boxes.get(place.of)
    return None if box is None else (ORIGIN, box)


def _turn(place: written.Place, path: Path, sums: Reckoning) -> model.Turn | None:
    mirror = MIRRORS.get(place.mirror)
    if place.kind == "assembly":
        return mirror
    if place.along not in WAYS or place.face not in WAYS or mirror is None:
        return None
    if not are_square(place.along, place.face):
        others = [way for way in WAYS if are_square(place.along, way)]
        message = f"the length can't point {place.along} while the face looks {place.face}"
        sums.say((*path, "face"), message, f"a face that looks {', '.join(others[:-1])} or {others[-1]}")
        return None
    before = (way_through(way, mirror) for way in (place.along, place.face))
    return after(turn_of_part(*before), mirror)


def _report_circle(circle: tuple[str, ...], first: written.Assembly, sums: Reckoning) -> None:
    following = circle[1] if len(circle) > 1 else circle[0]
    index = _inner(first).index(following)
    place = [number for number, entry in enumerate(first.place) if entry.kind == "assembly"][index]
    around_it = " -> ".join(shortened((*circle, circle[0])))
    path = (PROJECT_FILE, "assemblies", circle[0], "place", place, "assembly")
    sums.say(
        path,
        f"{circle[0]} stands in itself: {around_it}",
        "assemblies that hold each other in one direction only",
    )
