"""The pass that puts hardware where it sits: the room it takes, its holes, and how many there are."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import product

from benchalong.ground.lengths import Length, Point3
from benchalong.ground.marks import Path, Place
from benchalong.plan import model
from benchalong.plan.cuts.given import Given as CutGiven
from benchalong.plan.cuts.kinds import KINDS
from benchalong.plan.cuts.surfaces import SURFACES, Range, extent
from benchalong.plan.cuts.where import where
from benchalong.plan.draft import Draft
from benchalong.plan.hardware.counting import counted
from benchalong.plan.joints.joining import is_whole
from benchalong.plan.joints.member import Member
from benchalong.plan.joints.named import Members, Named, knows, named_sides
from benchalong.plan.joints.scopes import is_called, members_of, smallest
from benchalong.plan.joints.sides import NotASide, find_surfaces, outward
from benchalong.plan.model import AXES, Axis
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.turns import around, moved, room_of, turned
from benchalong.plan.walk import Standing, walk
from benchalong.reading import written
from benchalong.reading.written import PROJECT_FILE

WORDS = (None, "centred")


def seat_hardware(draft: Draft) -> Draft:
    """Adds to `hardware` where it sits and how many are needed, and its holes to `joint_cuts`."""
    sums = Reckoning(draft)
    members = {name: members_of(name, draft) for name in draft.assemblies} if is_whole(draft) else {}
    cuts = defaultdict(tuple, draft.joint_cuts)
    hardware = dict(draft.hardware)
    for name, thing in draft.hardware.items():
        seats = _Seating(thing, draft.written.hardware[name], sums, members)
        hardware[name] = replace(thing, seated=tuple(seats.seat(cuts)))
    return sums.done(hardware=counted(hardware, draft.joints), joint_cuts=dict(cuts))


@dataclass(frozen=True)
class _Spot:
    """On one side of a part, in the part's own directions."""

    middle: Mapping[Axis, Length]
    ranges: Mapping[Axis, Range] | None
    """None where the sizes of the thing don't say what it takes."""


class _Seating:
    """One piece of hardware on its way."""

    def __init__(
        self, thing: model.Hardware, entry: written.Hardware, sums: Reckoning, members: Members
    ) -> None:
        self.thing, self.entry, self.sums, self.members = thing, entry, sums, members

    def seat(self, cuts: defaultdict[str, tuple[model.Cut, ...]]) -> Iterator[model.Seated]:
        for index, seat in enumerate(self.entry.sits):
            path: Path = (PROJECT_FILE, "hardware", self.thing.id, "sits", index)
            for standing, surface, spot in self._places(seat, path):
                box = self.sums.draft.boxes[standing.of]
                for bore in self.thing.bores:
                    cuts[standing.mark] += (self._hole(bore, surface, box, spot, seat),)
                yield self._seated(standing, surface, spot, seat)

    def _places(self, seat: written.Seat, path: Path) -> Iterator[tuple[Standing, model.Surface, _Spot]]:
        named = named_sides(seat.on, (*path, "on"), self.sums, self.members)
        known = [
            knows(who, Place((*path, "only", index)), self.sums, self.members)
            for index, who in enumerate(seat.only)
        ]
        at, across = (self._place_of(seat, key, path) for key in ("at", "across"))
        if not all(known) or (at is None and seat.at not in WORDS):
            return
        if across is None and seat.across not in WORDS:
            return
        standing = {one.mark: one for one in self._walk() if one.is_part}
        for one in named:
            if len(one.terms) > 1:
                self.sums.say(one.at, "hardware sits on one side, not on an arris", "one side: face, edge a")
                continue
            for mark, member, surface in self._sides(one, seat):
                spot = self._spot(member, surface, at, across, lies_along=seat.lies == "along")
                yield standing[mark], surface, spot

    def _walk(self) -> Iterator[Standing]:
        draft = self.sums.draft
        return walk(draft.assemblies, draft.piece) if draft.piece else iter(())

    def _place_of(self, seat: written.Seat, key: str, path: Path) -> Length | None:
        text = seat.at if key == "at" else seat.across
        return None if text is None or text in WORDS else self.sums.length(text, (*path, key))

    def _sides(self, named: Named, seat: written.Seat) -> Iterator[tuple[str, Member, model.Surface]]:
        """Each with the mark of its copy from the piece down."""

        def is_meant(member: Member, scope: str) -> bool:
            called = not seat.only or any(is_called(member, mark, scope) for mark in seat.only)
            return called and is_called(member, named.who, scope)

        held = {
            scope: any(is_meant(member, scope) for member in inside) for scope, inside in self.members.items()
        }
        for scope in smallest(held, self.sums.draft.assemblies):
            stands = [one for one in self._walk() if not one.is_part and one.of == scope]
            whole = around([member.room for member in self.members[scope]])
            for member in self.members[scope]:
                if not is_meant(member, scope):
                    continue
                try:
                    surfaces = find_surfaces(named.terms[0], member.turn, member.room, whole)
                except NotASide as wrong:
                    self.sums.say(named.at, f"{member.mark}: {wrong.message}", wrong.expected)
                    continue
                for surface, one in product(surfaces, stands):
                    yield f"{one.mark}/{member.mark}" if one.mark else member.mark, member, surface

    # what it takes

    def _spot(
        self,
        member: Member,
        surface: model.Surface,
        at: Length | None,
        across: Length | None,
        *,
        lies_along: bool,
    ) -> _Spot:
        lies, box = SURFACES[surface], member.box
        whole = extent(box, lies.inward)
        middle = {
            lies.run: extent(box, lies.run) / 2 if at is None else at,
            lies.across: extent(box, lies.across) / 2 if across is None else across,
            lies.inward: whole if lies.is_far else Length(0),
        }
        flat, deep = self._flat(), self.thing.size_of("depth")
        if flat is None or deep is None:
            return _Spot(middle, None)
        long, wide = flat if lies_along else (flat[1], flat[0])
        return _Spot(
            middle,
            {
                lies.run: (middle[lies.run] - long / 2, middle[lies.run] + long / 2),
                lies.across: (middle[lies.across] - wide / 2, middle[lies.across] + wide / 2),
                lies.inward: (whole, whole + deep) if lies.is_far else (-deep, Length(0)),
            },
        )

    def _flat(self) -> tuple[Length, Length] | None:
        """What it takes of the side, along its length and across."""
        size = self.thing.size_of
        long, wide, across = size("length"), size("width"), size("diameter")
        if long is not None and wide is not None:
            return long, wide
        return None if across is None else (across, across)

    def _seated(
        self, standing: Standing, surface: model.Surface, spot: _Spot, seat: written.Seat
    ) -> model.Seated:
        x, y, z = (spot.middle[axis] for axis in AXES)
        room = None
        if spot.ranges is not None:
            near, far = zip(*(spot.ranges[axis] for axis in AXES), strict=True)
            least, greatest = room_of((near, far), standing.turn)
            room = (moved(least, standing.at), moved(greatest, standing.at))
        return model.Seated(
            standing.mark,
            standing.of,
            surface,
            outward(surface, standing.turn),
            moved(turned((x, y, z), standing.turn), standing.at),
            room,
            self.thing.size_of("length") is None,
            tuple(sorted({name for text in self._formulas(seat) for name in self.sums.follows(text)})),
        )

    @staticmethod
    def _formulas(seat: written.Seat) -> tuple[str, ...]:
        return tuple(text for text in (seat.at, seat.across) if text not in WORDS and text is not None)

    def _hole(
        self,
        bore: model.Bore,
        surface: model.Surface,
        box: Point3,
        spot: _Spot,
        seat: written.Seat,
    ) -> model.Cut:
        lies = SURFACES[surface]
        along, across = (bore.along, bore.across) if seat.lies == "along" else (bore.across, bore.along)
        lengths = {
            "diameter": bore.diameter,
            "at": spot.middle[lies.run] + along,
            "across": spot.middle[lies.across] + across,
        }
        words = {"depth": "through"} if bore.depth is None else {}
        if bore.depth is not None:
            lengths["depth"] = bore.depth
        given = CutGiven("hole", (surface,), box, lengths, words)
        follows = {key: self._follows(key, seat) for key in lengths}
        return model.Cut(
            "hole",
            self.thing.name,
            (surface,),
            where(given),
            tuple(model.CutSize(key, size, follows[key]) for key, size in lengths.items()),
            KINDS["hole"](given),
            follows=tuple(sorted({name for names in follows.values() for name in names})),
            hardware=self.thing.id,
        )

    def _follows(self, key: str, seat: written.Seat) -> tuple[str, ...]:
        """The named sizes behind a number of its hole."""
        texts = {"at": (seat.at,), "across": (seat.across,)}.get(key, ())
        holes = [getattr(hole, key, None) for hole in self.entry.holes] if not texts else []
        said = [text for text in (*texts, *holes) if text and text not in ("centred", "through")]
        return tuple(sorted({name for text in said for name in self.sums.follows(text)}))
