"""The pass that makes joints: what meets what, and what each copy loses by it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import product
from typing import TypeAlias

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Path, Place
from benchalong.plan import model
from benchalong.plan.cuts.given import Given as CutGiven
from benchalong.plan.cuts.kinds import KINDS
from benchalong.plan.cuts.resolving import ABOVE_ZERO
from benchalong.plan.cuts.where import where
from benchalong.plan.draft import Draft
from benchalong.plan.hardware.sizes import from_hardware
from benchalong.plan.joints.families import FAMILIES
from benchalong.plan.joints.families.stops import stops_anything
from benchalong.plan.joints.family import CantMove, Family, Given, Loss, Rule
from benchalong.plan.joints.floating import floats_in
from benchalong.plan.joints.member import Member, Side, meet
from benchalong.plan.joints.moving import in_piece
from benchalong.plan.joints.named import Members, Named, named_sides
from benchalong.plan.joints.roles import in_their_roles, one_way
from benchalong.plan.joints.scopes import is_called, members_of, smallest
from benchalong.plan.joints.sides import NotASide, find_surfaces
from benchalong.plan.joints.sizes import JOINT_SIZES
from benchalong.plan.joints.words import look_over_words
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.rows import entries
from benchalong.plan.stock import in_words
from benchalong.plan.turns import Room, around
from benchalong.plan.walk import Standing, walk
from benchalong.reading import written
from benchalong.reading.joint_language import JOINTS
from benchalong.reading.written import PROJECT_FILE

DEFAULT_GLUE = {"hinge": "no", "slide": "no", "stay": "no"}
Cuts: TypeAlias = defaultdict[str, tuple[model.Cut, ...]]
"""What joints take from each copy, by its mark from the piece down."""
Pair: TypeAlias = tuple[Side, Side]
"""A side that is cut in, and the side that it takes."""


@dataclass(frozen=True)
class _Made:
    """What a joint makes in one assembly."""

    pairs: tuple[Pair, ...]
    moves: tuple[tuple[model.Moves, Pair], ...]
    unfilled: tuple[Side, ...]
    """Sides that are cut though nothing goes into them."""
    unmet: tuple[Side, ...]
    """Sides that should go into something and reach nothing."""
    cuts: tuple[tuple[str, model.Cut], ...]
    """Each with the mark of its copy within the assembly."""
    pieces: int
    """Of its hardware."""


def join_parts(draft: Draft) -> Draft:
    """Adds `joints` and `joint_cuts`."""
    sums = Reckoning(draft)
    members = {name: members_of(name, draft) for name in draft.assemblies} if is_whole(draft) else {}
    joints: dict[str, model.Joint] = {}
    cuts: Cuts = defaultdict(tuple)
    for name, joint in draft.written.joints.items():
        if not draft.is_lost(PROJECT_FILE, "joints", name) and joint.kind in FAMILIES:
            joints[name] = _Making(name, joint, sums, members).make(cuts)
    return sums.done(joints=joints, joint_cuts=dict(cuts))


def is_whole(draft: Draft) -> bool:
    """Whether everything that is placed has a place and a box, so that it can be looked at."""
    return draft.piece is not None and all(
        len(assembly.placed) == len(tuple(entries(draft.written.assemblies[name].place)))
        and all(placed.kind == "assembly" or placed.of in draft.boxes for placed in assembly.placed)
        for name, assembly in draft.assemblies.items()
    )


class _Making:
    """One joint on its way."""

    def __init__(self, name: str, joint: written.Joint, sums: Reckoning, members: Members) -> None:
        self.name, self.joint, self.sums, self.members = name, joint, sums, members
        self.path: Path = (PROJECT_FILE, "joints", name)
        self.family: Family = FAMILIES[joint.kind]
        hardware = sums.draft.hardware.get(joint.words.get("hardware", ""))
        bores = hardware.bores if hardware else ()
        self.given = Given(name, joint.kind, self._sizes(), joint.words, bores)

    def make(self, cuts: Cuts) -> model.Joint:
        """The joint, its cuts added to those of each copy."""
        makes_sense = look_over_words(self.joint, self.path, self.sums, self.members)
        cut_in, takes = self._named("cut_in"), self._named("takes")
        makes_sense = makes_sense and self._all_sizes_known()
        made = [
            (standing, inside)
            for scope in (self._scopes(cut_in, takes) if makes_sense else ())
            for inside in (self._in_scope(scope, self._sides(cut_in, scope), self._sides(takes, scope)),)
            for standing in self._standing(scope)
        ]
        for standing, inside in made:
            for mark, cut in inside.cuts:
                cuts[_in_piece(mark, standing)] += (cut,)
        return self._joint(made)

    def _in_scope(self, scope: str, cut_in: list[Side], takes: list[Side]) -> _Made:
        """All that comes of it in one assembly, wherever that stands."""
        pairs = one_way([(side, other) for side in cut_in for other in takes if self._do_meet(side, other)])
        floating = [pair for side in cut_in for pair in self._floating(side, scope)]
        self._look_at_stops((*cut_in, *takes))
        receives, enters = in_their_roles(cut_in, takes, pairs)
        return _Made(
            (*pairs, *floating),
            tuple(self._moves(pairs)),
            tuple(side for side in receives if all(side is not one for one, _ in (*pairs, *floating))),
            tuple(side for side in enters if all(side is not other for _, other in pairs)),
            tuple(self._cuts(receives, enters, pairs)),
            self._pieces(pairs),
        )

    def _joint(self, made: list[tuple[Standing, _Made]]) -> model.Joint:
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
            tuple(_meeting(pair, standing) for standing, inside in made for pair in inside.pairs),
            joint.floats,
            joint.note,
            tuple(
                in_piece(moves, *_marks(pair), standing)
                for standing, inside in made
                for moves, pair in inside.moves
            ),
            tuple(_side_of(side, standing) for standing, inside in made for side in inside.unfilled),
            tuple(_side_of(side, standing) for standing, inside in made for side in inside.unmet),
            sum(inside.pieces for _, inside in made),
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
            elif size.is_required and key not in self.joint.sizes and not self._hardware_may_say(key):
                meaning = JOINTS[self.joint.kind].by_name[key].meaning
                place = Place(self.path, on="key")
                self.sums.say(place, f"the {self.joint.kind} {self.name} has no {key}", f"{key}: {meaning}")
        return found

    def _hardware_may_say(self, key: str) -> bool:
        """Whether it is there and only can't be worked out, which has been said."""
        draft, name = self.sums.draft, self.joint.words.get("hardware", "")
        lost = draft.is_lost(*self.path, key) or draft.is_lost(PROJECT_FILE, "hardware", name)
        return lost or bool(from_hardware(self.joint, key, draft.written))

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

    def _floating(self, side: Side, scope: str) -> list[Pair]:
        """What lies loose in a side's groove, with the side it lies in."""
        tilt = side.member.tilt
        loose = [m for m in self.members[scope] if m.part in self.joint.floats and m.tilt == tilt]
        return [(side, floats) for member in loose for floats in floats_in(side, member)]

    def _moves(self, pairs: list[Pair]) -> Iterator[tuple[model.Moves, Pair]]:
        for side, partner in pairs:
            if self.family.moves is not None:
                try:
                    yield self.family.moves(self.given, side, partner), (side, partner)
                except CantMove as wrong:
                    self.sums.say((*self.path, wrong.key), wrong.message, wrong.expected)
                    return

    def _pieces(self, pairs: list[Pair]) -> int:
        rule = self.family.pieces if self.joint.words.get("hardware") else None
        return sum(rule(self.given, *pair) for pair in pairs) if rule else 0

    def _cuts(
        self, cut_in: list[Side], takes: list[Side], pairs: list[Pair]
    ) -> Iterator[tuple[str, model.Cut]]:
        """Each with the mark of its copy within the assembly."""
        for side in cut_in:
            partners = tuple(other for one, other in pairs if one is side)
            yield from self._cuts_in(side, self.family.cut_in, partners)
        for side in takes:
            partners = tuple(one for one, other in pairs if other is side)
            yield from self._cuts_in(side, self.family.takes, partners)

    def _cuts_in(self, side: Side, rule: Rule, partners: tuple[Side, ...]) -> Iterator[tuple[str, model.Cut]]:
        for loss in rule(self.given, side, partners):
            yield side.member.mark, self._cut(loss, side)

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
            follows=tuple(sorted({name for key in loss.lengths for name in self._follows(key)})),
            joint=self.name,
        )

    def _do_meet(self, cut_in: Side, takes: Side) -> bool:
        apart = self.given.sizes.get(self.family.apart, Length(0))
        if cut_in.member.tilt != takes.member.tilt:
            return False
        return cut_in.member != takes.member and meet(cut_in, takes, apart=apart, faces=self.family.faces)


def _meeting(pair: Pair, standing: Standing) -> model.Meeting:
    return model.Meeting(standing.of, *(_side_of(side, standing) for side in pair))


def _side_of(side: Side, standing: Standing) -> model.SideOf:
    return model.SideOf(_in_piece(side.member.mark, standing), side.member.part, side.surfaces)


def _marks(pair: Pair) -> tuple[str, str]:
    return pair[0].member.mark, pair[1].member.mark


def _in_piece(mark: str, standing: Standing) -> str:
    """From the piece down."""
    return f"{standing.mark}/{mark}" if standing.mark else mark
