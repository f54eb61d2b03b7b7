"""The pass that puts parts and assemblies in their places.

`at` is the left, front, bottom corner of the room something takes up once it is turned and mirrored,
so an assembly's room must be known before it can be placed in another: the innermost come first.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import cast

from benchalong.ground.lengths import ORIGIN, Point3
from benchalong.ground.marks import Path, Place
from benchalong.plan import model
from benchalong.plan.circles import in_order, shortened
from benchalong.plan.draft import Draft, Known
from benchalong.plan.leaning import leaning
from benchalong.plan.marking import marks_in
from benchalong.plan.play import FITS
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.refused import Refused
from benchalong.plan.relating import NOTHING, Around, Follows, Found, Laid, Own, Stands, place_on
from benchalong.plan.relations import Spot, parse_spot
from benchalong.plan.rows import Entry, entries, how_many, is_row
from benchalong.plan.standing_by import Spotted, order_of
from benchalong.plan.stock import in_words
from benchalong.plan.turns import (
    MIRRORS,
    WAYS,
    Room,
    after,
    are_square,
    moved,
    room_of,
    turn_of_part,
    way_through,
)
from benchalong.plan.turns import around as around_all
from benchalong.reading import written
from benchalong.reading.language import PLACE
from benchalong.reading.written import PROJECT_FILE

AT = PLACE.by_name["at"].meaning.partition(";")[0]


def place_assemblies(draft: Draft) -> Draft:
    """Adds `assemblies`, in the order written."""
    sums = Reckoning(draft)
    assemblies = draft.written.assemblies
    ordered = in_order({name: _inner(assembly) for name, assembly in assemblies.items()})
    for circle in ordered.circles:
        _report_circle(circle, assemblies[circle[0]], sums)
    laid: dict[str, Laid] = {}
    for name in ordered.order:
        laid[name] = _Laying(name, assemblies[name], laid, sums).lay_out()
    made = {
        name: model.Assembly(
            name,
            a.name or in_words(name),
            tuple(stands.placed for stands in laid[name].stands.values()),
            a.note,
        )
        for name, a in assemblies.items()
    }
    return sums.done(assemblies=made)


def _inner(assembly: written.Assembly) -> tuple[str, ...]:
    return tuple(place.of for place in assembly.place if place.kind == "assembly")


class _Laying:
    """One assembly while it is laid out; those that stand in it have been."""

    def __init__(
        self, name: str, assembly: written.Assembly, laid: Mapping[str, Laid], sums: Reckoning
    ) -> None:
        self.assembly, self.laid, self.sums = assembly, laid, sums
        self.path: Path = (PROJECT_FILE, "assemblies", name, "place")
        self.name = name

    def lay_out(self) -> Laid:
        """Everything in it, and the room it takes up, where that can be known."""
        copies = tuple(entries(self.assembly.place))
        marks = marks_in(self.name, self.assembly.place, self.sums)
        if not copies and not self.sums.draft.is_lost(*self.path):
            message = f"nothing stands in the assembly {self.name}"
            self.sums.say(self.path[:-1], message, "places under place:")
        around = Around(
            {mark: entry.place.of for entry, mark in zip(copies, marks, strict=True)}, self.laid, self.sums
        )
        spotted = {mark: self._spotted(entry, mark) for entry, mark in zip(copies, marks, strict=True)}
        made: dict[str, Stands | None] = {}
        for mark in order_of(spotted, around, self.sums):
            made[mark] = stands = self._place(spotted[mark], around)
            if stands is not None:
                around.stands[mark] = stands
        known = {mark: stands for mark in marks if (stands := made.get(mark)) is not None}
        whole = around_all([stands.room for stands in known.values()]) if known else None
        follows = frozenset[str]().union(*(part for stands in known.values() for part in stands.follows))
        return Laid(known, whole if len(known) == len(copies) else None, follows)

    def _spotted(self, entry: Entry, mark: str) -> Spotted:
        path: Path = (*self.path, entry.index)
        at = entry.place.at
        if at is None:
            return Spotted(entry, mark, path, None)
        a, b, c = (self._spot(text, (*path, "at", axis), axis, entry.nth) for axis, text in enumerate(at))
        return Spotted(entry, mark, path, (a, b, c))

    def _spot(self, text: str, path: Path, axis: int, nth: int) -> Spot | None:
        try:
            return parse_spot(text, axis)
        except Refused as refused:
            if nth == 0:
                self.sums.found.append(refused.problem(path))
            return None

    # one copy

    def _place(self, one: Spotted, around: Around) -> Stands | None:
        place, draft = one.entry.place, self.sums.draft
        sums = self.sums if one.entry.nth == 0 else Reckoning(draft, self.sums.directory)  # told once
        turn = _turn(place, one.path, sums)
        room = _room(place, one.path, self.laid, sums)
        turned_room = None if turn is None or room is None else room_of(room, turn)
        sizes = self._sizes_follow(place, turn)
        found = self._corner(one, turned_room, sizes, around)
        if found is None or turn is None or turned_room is None or draft.is_lost(*one.path, "at"):
            return None
        wanted, follows = found
        by = moved(wanted, cast(Point3, tuple(-value for value in turned_room[0])))
        touches = tuple(self._touched(one, around))
        placed = model.Placed(
            place.kind,
            place.of,
            one.mark,
            turn,
            by,
            tuple(sorted(frozenset[str]().union(*follows))),
            touches=touches,
            index=one.entry.index,
        )
        a, b, c = (one | other for one, other in zip(follows, sizes, strict=True))
        stands = Stands(placed, (wanted, moved(turned_room[1], by)), (a, b, c))
        return leaning(stands, one, self.laid, sums) if place.turned is not None else stands

    def _sizes_follow(
        self, place: written.Place, turn: model.Turn | None
    ) -> tuple[Follows, Follows, Follows]:
        """What its size follows from, in each direction."""
        if place.kind == "assembly":
            whole = self.laid[place.of].follows if place.of in self.laid else NOTHING
            return (whole, whole, whole)
        if turn is None:
            return (NOTHING, NOTHING, NOTHING)
        names = self.sums.draft.names
        own = [names.get(f"{place.of}.{size}") for size in ("length", "width", "thickness")]
        a, b, c = (next(own[n] for n in range(3) if row[n]) for row in turn)
        return (_followed(a), _followed(b), _followed(c))

    def _corner(
        self,
        one: Spotted,
        room: Room | None,
        sizes: tuple[Follows, Follows, Follows],
        around: Around,
    ) -> tuple[Point3, tuple[Follows, Follows, Follows]] | None:
        """As written; of a part that fits its opening, as measured there."""
        place = one.entry.place
        if one.spots is None:
            return self._fitted_corner(one)
        if is_row(place) and one.entry.nth == 0 and None not in one.spots:
            self._look_at_row(one)
        found = []
        for axis, spot in enumerate(one.spots):
            size = None if room is None else room[1][axis] - room[0][axis]
            own = Own(size, sizes[axis], one.entry.nth, how_many(place))
            path = (*one.path, "at", axis)
            found.append(Found(None) if spot is None else place_on(spot, path, axis, own, around))
        x, y, z = found
        if x.at is None or y.at is None or z.at is None:
            return None
        return (x.at, y.at, z.at), (x.follows, y.follows, z.follows)

    def _look_at_row(self, one: Spotted) -> None:
        if not any(spot is not None and spot.is_row for spot in one.spots or ()):
            self.sums.say(
                (*one.path, "count"),
                f"{how_many(one.entry.place)} stand here in one and the same place",
                "in at: `spread between SL and SR`, or a place and `every 10 in` or `leaving 1 in`",
            )

    def _fitted_corner(self, one: Spotted) -> tuple[Point3, tuple[Follows, Follows, Follows]] | None:
        place, draft = one.entry.place, self.sums.draft
        part = draft.written.parts.get(place.of)
        fits = part is not None and FITS.match(part.width or "") and FITS.match(part.length or "")
        if is_row(place) and one.entry.nth == 0:
            self.sums.say((*one.path, "count"), "a row has no at to begin with", f"at: {AT}")
        elif not fits and not draft.is_lost(*one.path, "at"):
            self.sums.say(Place(one.path).key(), "this place has no at", f"at: {AT}")
        corner = draft.fitted_at.get(one.path)
        return None if corner is None else (corner, (NOTHING, NOTHING, NOTHING))

    def _touched(self, one: Spotted, around: Around) -> Iterator[str]:
        """The marks it is said to stand against."""
        for number, who in enumerate(one.entry.place.touches):
            place = Place((*one.path, "touches", number))
            if around.mark_of(who) is not None and around.mark_of(who) != one.mark:
                yield "/".join((around.mark_of(who) or "", *who.split("/")[1:]))
            elif one.entry.nth == 0 and around.mark_of(who) is None:
                around.knows(who, place)


def _followed(known: Known | None) -> Follows:
    return known.follows if known is not None else NOTHING


def _room(place: written.Place, path: Path, laid: Mapping[str, Laid], sums: Reckoning) -> Room | None:
    """The room it takes up before it is turned."""
    draft = sums.draft
    if place.kind == "assembly":
        sums.knows("assemblies", place.of, (*path, "assembly"), among=draft.written.assemblies)
        return laid[place.of].room if place.of in laid else None
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
