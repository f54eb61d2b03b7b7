"""The pass that makes joints: what meets what, and what each copy loses by it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from itertools import product
from typing import TypeAlias

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Path
from benchalong.plan import model
from benchalong.plan.cuts.given import Given as CutGiven
from benchalong.plan.cuts.kinds import KINDS
from benchalong.plan.cuts.resolving import ABOVE_ZERO
from benchalong.plan.cuts.where import where
from benchalong.plan.draft import Draft
from benchalong.plan.joints.families import FAMILIES
from benchalong.plan.joints.families.stops import stops_anything
from benchalong.plan.joints.family import CantMove, Family, Given, Loss, Rule
from benchalong.plan.joints.floating import floats_in
from benchalong.plan.joints.member import Member, Side, meet
from benchalong.plan.joints.moving import in_piece
from benchalong.plan.joints.named import Members, Named, named_sides
from benchalong.plan.joints.scopes import is_called, members_of, smallest
from benchalong.plan.joints.sides import NotASide, find_surfaces
from benchalong.plan.joints.sizes import JOINT_SIZES
from benchalong.plan.joints.words import look_over_words
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.stock import in_words
from benchalong.plan.turns import Room, around
from benchalong.plan.walk import Standing, walk
from benchalong.reading import written
from benchalong.reading.written import PROJECT_FILE

DEFAULT_GLUE = {"hinge": "no", "slide": "no", "stay": "no"}
Cuts: TypeAlias = defaultdict[str, tuple[model.Cut, ...]]
"""What joints take from each copy, by its mark from the piece down."""


def join_parts(draft: Draft) -> Draft:
    """Adds `joints` and `joint_cuts`."""
    sums = Reckoning(draft)
    members = {name: members_of(name, draft) for name in draft.assemblies} if _is_whole(draft) else {}
    joints: dict[str, model.Joint] = {}
    cuts: Cuts = defaultdict(tuple)
    for name, joint in draft.written.joints.items():
        if not draft.is_lost(PROJECT_FILE, "joints", name) and joint.kind in FAMILIES:
            joints[name] = _Making(name, joint, sums, members).make(cuts)
    return sums.done(joints=joints, joint_cuts=dict(cuts))


def _is_whole(draft: Draft) -> bool:
    """Whether everything that is placed has a place and a box, so that it can be looked at."""
    return draft.piece is not None and all(
        len(assembly.placed) == len(draft.written.assemblies[name].place)
        and all(placed.kind == "assembly" or placed.of in draft.boxes for placed in assembly.placed)
        for name, assembly in draft.assemblies.items()
    )


class _Making:
    """One joint on its way."""

    def __init__(self, name: str, joint: written.Joint, sums: Reckoning, members: Members) -> None:
        self.name, self.joint, self.sums, self.members = name, joint, sums, members
        self.path: Path = (PROJECT_FILE, "joints", name)
        self.family: Family = FAMILIES[joint.kind]
        self.given = Given(name, joint.kind, self._sizes(), joint.words)

    def make(self, cuts: Cuts) -> model.Joint:
        """The joint, its cuts added to those of each copy."""
        makes_sense = look_over_words(self.joint, self.path, self.sums, self.members)
        cut_in, takes = self._named("cut_in"), self._named("takes")
        makes_sense = makes_sense and self._all_sizes_known()
        meetings: list[model.Meeting] = []
        moves: list[model.Moves] = []
        unfilled: list[model.SideOf] = []
        unmet: list[model.SideOf] = []
        for scope in self._scopes(cut_in, takes) if makes_sense else ():
            sides = (self._sides(cut_in, scope), self._sides(takes, scope))
            floating = [floats for side in sides[0] for floats in self._floating(side, scope)]
            for standing in self._standing(scope):
                meetings += self._meetings(standing, *sides, floating)
                moves += self._moves(standing, *sides)
                unfilled += self._unfilled(standing, *sides, floating)
                unmet += self._unmet(standing, *sides)
                self._give(cuts, standing, *sides)
            self._look_at_stops((*sides[0], *sides[1]))
        return self._joint(tuple(meetings), tuple(moves), tuple(unfilled), tuple(unmet))

    def _joint(
        self,
        meetings: tuple[model.Meeting, ...],
        moves: tuple[model.Moves, ...],
        unfilled: tuple[model.SideOf, ...],
        unmet: tuple[model.SideOf, ...],
    ) -> model.Joint:
        joint = self.joint
        sizes = tuple(
            model.CutSize(key, size, self._follows(key)) for key, size in self.given.sizes.items() if size
        )
        return model.Joint(
            self.name,
            joint.kind,
            joint.name or in_words(self.name),
            sizes,
            joint.words,
            joint.glue or DEFAULT_GLUE.get(joint.kind, "yes"),
            meetings,
            joint.floats,
            joint.note,
            moves,
            unfilled,
            unmet,
        )

    # what is named

    def _sizes(self) -> dict[str, Length]:
        """Those that are known; says so of what can't be."""
        names = self.sums.draft.names
        found: dict[str, Length] = {}
        for key, size in JOINT_SIZES[self.joint.kind].items():
            known = names.get(f"{self.name}.{key}")
            if known is not None and known.value is not None:
                found[key] = known.value.value
                self._look_at_size(key, found[key], size.must_be)
        return found

    def _look_at_size(self, key: str, size: Length, must_be: str) -> None:
        if (must_be and size < 0) or (must_be == "above zero" and size == 0):
            follows = ", ".join(self._follows(key))
            because = f"; it follows from {follows}" if follows else ""
            message = f"{key} of {self.name} comes to {self.sums.shown(size)}{because}"
            self.sums.say((*self.path, key), message, f"a size {must_be}")

    def _all_sizes_known(self) -> bool:
        """Whether none is missing that it has; why one is has been said."""
        names = self.sums.draft.names
        known = [names.get(f"{self.name}.{key}") for key in JOINT_SIZES[self.joint.kind]]
        return all(name is None or name.value is not None for name in known)

    def _follows(self, key: str) -> tuple[str, ...]:
        known = self.sums.draft.names.get(f"{self.name}.{key}")
        return tuple(sorted(known.follows)) if known else ()

    def _named(self, key: str) -> list[Named]:
        ends_only = self.joint.kind if key == "takes" and self.family.takes_ends else ""
        texts = getattr(self.joint, key)
        return named_sides(texts, (*self.path, key), self.sums, self.members, ends_only=ends_only)

    # where it is worked out

    def _scopes(self, *named_sides: list[Named]) -> list[str]:
        """The smallest assemblies that hold somebody on each side."""

        def holds(scope: str) -> bool:
            return all(
                any(self._is_meant(member, one.who, scope) for one in named for member in self.members[scope])
                for named in named_sides
                if named
            )

        held = {scope: any(named_sides) and holds(scope) for scope in self.members}
        return list(smallest(held, self.sums.draft.assemblies))

    def _is_meant(self, member: Member, who: str, scope: str) -> bool:
        only = self.joint.only
        return is_called(member, who, scope) and (
            not only or any(is_called(member, mark, scope) for mark in only)
        )

    def _standing(self, scope: str) -> list[Standing]:
        """Where the scope stands in the piece."""
        draft = self.sums.draft
        standing = walk(draft.assemblies, draft.piece) if draft.piece else ()
        return [one for one in standing if not one.is_part and one.of == scope]

    def _sides(self, named: list[Named], scope: str) -> list[Side]:
        members = self.members[scope]
        whole = around([member.room for member in members])
        return [
            side
            for one in named
            for member in members
            if self._is_meant(member, one.who, scope)
            for side in self._sides_of(member, one, whole)
        ]

    def _sides_of(self, member: Member, named: Named, whole: Room) -> Iterable[Side]:
        try:
            surfaces = [find_surfaces(term, member.turn, member.room, whole) for term in named.terms]
        except NotASide as wrong:
            self.sums.say(named.at, f"{member.mark}: {wrong.message}", wrong.expected)
            return ()
        return [Side(member, chosen) for chosen in product(*surfaces)]

    def _look_at_stops(self, sides: tuple[Side, ...]) -> None:
        said = self.joint.words.get("stopped", "")
        if said and sides and not any(stops_anything(self.given, side) for side in sides):
            message = f"nothing of this joint runs to a {said.removeprefix('both ')}"
            self.sums.say((*self.path, "stopped"), message, "a side that its channel runs to")

    # what it makes

    def _floating(self, side: Side, scope: str) -> list[tuple[Side, Side]]:
        """What lies loose in a side's groove, with the side it lies in."""
        loose = [member for member in self.members[scope] if member.part in self.joint.floats]
        return [(side, floats) for member in loose for floats in floats_in(side, member)]

    def _meetings(
        self, standing: Standing, cut_in: list[Side], takes: list[Side], floating: list[tuple[Side, Side]]
    ) -> Iterable[model.Meeting]:
        pairs = [(side, partner) for side in cut_in for partner in self._partners(side, takes)]
        for side, partner in (*pairs, *floating):
            yield model.Meeting(standing.of, _side_of(side, standing), _side_of(partner, standing))

    def _unfilled(
        self, standing: Standing, cut_in: list[Side], takes: list[Side], floating: list[tuple[Side, Side]]
    ) -> Iterable[model.SideOf]:
        """Sides that are cut though nothing goes into them."""
        holding = [side for side, _ in floating]
        empty = (side for side in cut_in if side not in holding and not self._partners(side, takes))
        return (_side_of(side, standing) for side in empty)

    def _unmet(self, standing: Standing, cut_in: list[Side], takes: list[Side]) -> Iterable[model.SideOf]:
        """Sides that should go into something and reach nothing."""
        idle = (side for side in takes if not any(self._do_meet(other, side) for other in cut_in))
        return (_side_of(side, standing) for side in idle)

    def _moves(self, standing: Standing, cut_in: list[Side], takes: list[Side]) -> Iterable[model.Moves]:
        for side in cut_in if self.family.moves else ():
            for partner in self._partners(side, takes):
                try:
                    assert self.family.moves is not None
                    moves = self.family.moves(self.given, side, partner)
                except CantMove as wrong:
                    self.sums.say((*self.path, wrong.key), wrong.message, wrong.expected)
                    return
                yield in_piece(moves, side.member.mark, partner.member.mark, standing)

    def _give(self, cuts: Cuts, standing: Standing, cut_in: list[Side], takes: list[Side]) -> None:
        for side in cut_in:
            self._give_side(cuts, standing, self.family.cut_in, side, self._partners(side, takes))
        for side in takes:
            partners = tuple(other for other in cut_in if self._do_meet(other, side))
            self._give_side(cuts, standing, self.family.takes, side, partners)

    def _give_side(
        self, cuts: Cuts, standing: Standing, rule: Rule, side: Side, partners: tuple[Side, ...]
    ) -> None:
        mark = _mark_of(side, standing)
        for loss in rule(self.given, side, partners):
            cuts[mark] += (self._cut(loss, side),)

    def _cut(self, loss: Loss, side: Side) -> model.Cut:
        given = CutGiven(loss.kind, loss.surfaces, side.box, loss.lengths, loss.words)
        can_be_made = all(loss.lengths.get(key, 1) > 0 for key in ABOVE_ZERO)
        takes = loss.takes if loss.takes is not None else KINDS[loss.kind](given) if can_be_made else ()
        return model.Cut(
            loss.kind,
            loss.name or self.joint.name or in_words(self.name),
            loss.surfaces,
            where(given),
            tuple(model.CutSize(key, size, self._follows(key)) for key, size in loss.lengths.items()),
            takes,
            joint=self.name,
        )

    def _partners(self, side: Side, takes: list[Side]) -> tuple[Side, ...]:
        return tuple(other for other in takes if self._do_meet(side, other))

    def _do_meet(self, cut_in: Side, takes: Side) -> bool:
        apart = self.given.sizes.get(self.family.apart, Length(0))
        return cut_in.member != takes.member and meet(cut_in, takes, apart=apart, faces=self.family.faces)


def _side_of(side: Side, standing: Standing) -> model.SideOf:
    return model.SideOf(_mark_of(side, standing), side.member.part, side.surfaces)


def _mark_of(side: Side, standing: Standing) -> str:
    """From the piece down."""
    return f"{standing.mark}/{side.member.mark}" if standing.mark else side.member.mark
