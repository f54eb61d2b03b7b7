"""The pass that makes joints: what meets what, and what each copy loses by it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from itertools import product

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Path
from benchalong.ground.words import nearest_words
from benchalong.plan import model
from benchalong.plan.cuts.given import Given as CutGiven
from benchalong.plan.cuts.kinds import KINDS
from benchalong.plan.cuts.resolving import ABOVE_ZERO
from benchalong.plan.cuts.where import where
from benchalong.plan.draft import Draft
from benchalong.plan.joints.families import FAMILIES
from benchalong.plan.joints.family import Given, Loss, Rule
from benchalong.plan.joints.member import Member, Side, meet
from benchalong.plan.joints.scopes import is_called, members_of, smallest
from benchalong.plan.joints.sides import NotASide, Term, find_surfaces, parse_side, split_side
from benchalong.plan.joints.sizes import JOINT_SIZES
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.stock import in_words
from benchalong.plan.turns import Room, around
from benchalong.plan.walk import walk
from benchalong.reading import written
from benchalong.reading.written import PROJECT_FILE

DEFAULT_GLUE = {"hinge": "no", "slide": "no", "stay": "no"}
Named = tuple[str, tuple[Term, ...], Path]
"""Who, which side of it in words, and where that is written."""


def join_parts(draft: Draft) -> Draft:
    """Adds `joints` and `joint_cuts`."""
    sums = Reckoning(draft)
    members = {name: members_of(name, draft) for name in draft.assemblies} if _is_whole(draft) else {}
    joints: dict[str, model.Joint] = {}
    cuts: defaultdict[str, tuple[model.Cut, ...]] = defaultdict(tuple)
    for name, joint in draft.written.joints.items():
        if draft.is_lost(PROJECT_FILE, "joints", name) or joint.kind not in FAMILIES:
            continue
        making = _Making(name, joint, sums, members)
        joints[name] = making.make(cuts)
    return sums.done(joints=joints, joint_cuts=dict(cuts))


def _is_whole(draft: Draft) -> bool:
    """Whether everything that is placed has a place and a box, so that it can be looked at."""
    return draft.piece is not None and all(
        placed.kind == "assembly" or placed.of in draft.boxes
        for assembly in draft.assemblies.values()
        for placed in assembly.placed
    )


class _Making:
    """One joint on its way."""

    def __init__(
        self, name: str, joint: written.Joint, sums: Reckoning, members: Mapping[str, tuple[Member, ...]]
    ) -> None:
        self.name, self.joint, self.sums, self.members = name, joint, sums, members
        self.path: Path = (PROJECT_FILE, "joints", name)
        self.given = Given(name, joint.kind, self._sizes(), joint.words)

    def make(self, cuts: defaultdict[str, tuple[model.Cut, ...]]) -> model.Joint:
        """The joint, its cuts added to those of each copy by its mark from the piece down."""
        sides = {key: self._named(key) for key in ("cut_in", "takes")}
        meetings: list[model.Meeting] = []
        for scope in self._scopes([who for named in sides.values() for who, _, _ in named], sides):
            cut_in, takes = (self._sides(sides[key], scope) for key in ("cut_in", "takes"))
            for prefix in self._prefixes(scope):
                meetings.extend(self._meetings(scope, prefix, cut_in, takes))
                self._give(cuts, prefix, cut_in, takes)
        return self._joint(tuple(meetings))

    def _joint(self, meetings: tuple[model.Meeting, ...]) -> model.Joint:
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
        )

    # what is named

    def _sizes(self) -> dict[str, Length]:
        names = self.sums.draft.names
        known = {key: names.get(f"{self.name}.{key}") for key in JOINT_SIZES[self.joint.kind]}
        return {
            key: name.value.value
            for key, name in known.items()
            if name is not None and name.value is not None
        }

    def _follows(self, key: str) -> tuple[str, ...]:
        known = self.sums.draft.names.get(f"{self.name}.{key}")
        return tuple(sorted(known.follows)) if known else ()

    def _named(self, key: str) -> list[Named]:
        found: list[Named] = []
        for index, text in enumerate(getattr(self.joint, key)):
            path: Path = (*self.path, key, index)
            who, side = split_side(text)
            try:
                terms = parse_side(side)
            except NotASide as wrong:
                self.sums.say(path, wrong.message, wrong.expected)
                continue
            if self._knows(who, path):
                found.append((who, terms, path))
        return found

    def _knows(self, who: str, path: Path) -> bool:
        """Whether somebody is called so; a part that isn't placed yet is known, too."""
        if who in self.sums.draft.written.parts:
            return True
        if not self.members or any(
            is_called(member, who, scope) for scope, inside in self.members.items() for member in inside
        ):
            return bool(self.members)
        known = {
            *self.sums.draft.written.parts,
            *(m.mark for inside in self.members.values() for m in inside),
        }
        self.sums.say(
            path,
            f"no part or copy is called {who}",
            "a part, or a mark such as LD/H",
            nearest_words(who, known),
        )
        return False

    # where it is worked out

    def _scopes(self, who: list[str], sides: Mapping[str, list[Named]]) -> list[str]:
        def holds(scope: str) -> bool:
            return all(
                any(
                    self._is_meant(member, name, scope)
                    for name, _, _ in named
                    for member in self.members[scope]
                )
                for named in sides.values()
                if named
            )

        return list(
            smallest(
                {scope: bool(who) and holds(scope) for scope in self.members}, self.sums.draft.assemblies
            )
        )

    def _is_meant(self, member: Member, who: str, scope: str) -> bool:
        only = self.joint.only
        return is_called(member, who, scope) and (
            not only or any(is_called(member, mark, scope) for mark in only)
        )

    def _prefixes(self, scope: str) -> list[str]:
        """Where the scope stands in the piece: what goes before the marks in it."""
        draft = self.sums.draft
        standing = walk(draft.assemblies, draft.piece) if draft.piece else ()
        return [f"{s.mark}/" if s.mark else "" for s in standing if not s.is_part and s.of == scope]

    def _sides(self, named: list[Named], scope: str) -> list[Side]:
        members = self.members[scope]
        whole = around([member.room for member in members])
        return [
            side
            for who, terms, path in named
            for member in members
            if self._is_meant(member, who, scope)
            for side in self._sides_of(member, terms, whole, path)
        ]

    def _sides_of(self, member: Member, terms: tuple[Term, ...], whole: Room, path: Path) -> Iterable[Side]:
        try:
            surfaces = [find_surfaces(term, member.turn, member.room, whole) for term in terms]
        except NotASide as wrong:
            self.sums.say(path, f"{member.mark}: {wrong.message}", wrong.expected)
            return ()
        return [Side(member, chosen) for chosen in product(*surfaces)]

    # what it makes

    def _meetings(
        self, scope: str, prefix: str, cut_in: list[Side], takes: list[Side]
    ) -> Iterable[model.Meeting]:
        for side in cut_in:
            for partner in _partners(side, takes):
                yield model.Meeting(scope, _side_of(side, prefix), _side_of(partner, prefix))

    def _give(
        self,
        cuts: defaultdict[str, tuple[model.Cut, ...]],
        prefix: str,
        cut_in: list[Side],
        takes: list[Side],
    ) -> None:
        family = FAMILIES[self.joint.kind]
        for side in cut_in:
            self._give_side(cuts, prefix, family.cut_in, side, _partners(side, takes))
        for side in takes:
            self._give_side(cuts, prefix, family.takes, side, _partners_of_taker(side, cut_in))

    def _give_side(
        self,
        cuts: defaultdict[str, tuple[model.Cut, ...]],
        prefix: str,
        rule: Rule,
        side: Side,
        partners: tuple[Side, ...],
    ) -> None:
        for loss in rule(self.given, side, partners):
            cuts[prefix + side.member.mark] += (self._cut(loss, side),)

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


def _partners(side: Side, takes: list[Side]) -> tuple[Side, ...]:
    return tuple(other for other in takes if other.member != side.member and meet(side, other))


def _partners_of_taker(side: Side, cut_in: list[Side]) -> tuple[Side, ...]:
    return tuple(other for other in cut_in if other.member != side.member and meet(other, side))


def _side_of(side: Side, prefix: str) -> model.SideOf:
    return model.SideOf(prefix + side.member.mark, side.member.part, side.surfaces)
