"""What to say when something can't be put together: who has no way in, what is in its way, what would help.

Of things locked together the one is named that is nearest to getting out: with the fewest pieces of wood in
its way, and of these the smallest.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.ground.words import in_sentence
from benchalong.plan.model import Assembly, Plan
from benchalong.workings.assembled import Assembled
from benchalong.workings.blocking import DEEP, Way
from benchalong.workings.closing import Gluing
from benchalong.workings.placed import Lying, Placed
from benchalong.workings.telling import Telling, called, exact, led, place_sizes, placed_at, way_in


@dataclass(frozen=True)
class Shut:
    """Something that can't get out, on the way where least hinders it."""

    member: int
    """In the order of the assembly."""
    way: Way
    hinder: int
    """The number of the first copy in its way."""
    gets: float
    """How far it gets, in mm."""
    others: tuple[int, ...]
    """What else is in its way there."""


def nearest_out(assembled: Assembled, locked: Sequence[int]) -> Shut:
    """Raises ValueError when nothing is in anything's way."""
    found = [
        shut
        for number in range(len(assembled.ways))
        for shut in _shut(assembled, locked, assembled.ways[number])
    ]
    return min(
        found,
        key=lambda s: (len(s.others), assembled.volume[list(assembled.members[s.member])].sum(), -s.gets),
    )


def _shut(assembled: Assembled, locked: Sequence[int], way: Way) -> list[Shut]:
    copies = [copy for member in locked for copy in assembled.members[member]]
    look = assembled.blocking.look(way, copies)
    reach = look.reach()
    owner = {copy: member for member in locked for copy in assembled.members[member]}
    found = []
    for member in locked:
        rooms: dict[int, float] = {}
        hindering: set[int] = set()
        for i, mover in enumerate(copies):
            for j, hinder in enumerate(copies):
                if owner[mover] == member != owner[hinder] and reach[i, j] > DEEP and look.hinders(i, j):
                    hindering.add(hinder)
                    room = look.room_before(i, j)
                    if room is not None:
                        rooms[hinder] = min(room, rooms.get(hinder, room))
        if rooms:
            first = min(rooms, key=lambda hinder: (round(rooms[hinder], 3), hinder))
            found.append(Shut(member, way, first, max(0.0, rooms[first]), tuple(sorted(hindering - {first}))))
    return found


@dataclass(frozen=True)
class Words:
    """Speaks of the members of one assembly in one of its places."""

    plan: Plan
    placed: Placed
    assembly: Assembly
    mark: str
    assembled: Assembled

    def member(self, number: int) -> str:
        """`panel P`, `Frame F`."""
        first = self.first(number)
        depth = self.mark.count("/") + 1 if self.mark else 0
        if len(first.copy.assemblies) == depth + 1:
            return self.wood(first)
        mark = "/".join(first.copy.mark.split("/")[: depth + 1])
        return f"{in_sentence(self.plan.assemblies[first.copy.assemblies[depth + 1]].name)} {mark}"

    def first(self, number: int) -> Lying:
        return self.placed.lying[self.assembled.members[number][0]]

    def wood(self, lying: Lying) -> str:
        return called(lying)

    def where(self, way: Way) -> str:
        """A way in words, as typed in this assembly; one that isn't square by those it runs between."""
        parts = [(abs(value), n, 1 if value > 0 else -1) for n, value in enumerate(way) if abs(value) > 1e-6]
        words = []
        for _, axis, sign in sorted(parts, key=lambda part: (-round(part[0], 6), part[1])):
            x, y, z = (sign * int(n == axis) for n in range(3))
            words.append(led(way_in(self.placed, self.mark, (x, y, z))))
        return words[0] if len(words) == 1 else f"aslant {' and '.join(words)}"

    def got_to(self, shut: Shut) -> str:
        telling = Telling(self.plan)
        hinder = self.wood(self.placed.lying[shut.hinder])
        gets = f"after {telling.shown(exact(round(shut.gets, 4)))}" if shut.gets > 0.05 else "at once"
        return f"going {self.where(shut.way)}, {hinder} is in its way {gets}"


def no_way_in(words: Words, locked: Sequence[int]) -> Finding:
    """A fault at the place of the member that has no way in."""
    shut = nearest_out(words.assembled, locked)
    who, hinder = words.first(shut.member), words.placed.lying[shut.hinder]
    name = words.member(shut.member)
    message = (
        f"{words.assembly.name}: {name} has no straight way into its place, or out of it."
        f" The nearest: {words.got_to(shut)}"
    )
    return Finding(
        "no-way-in",
        "fault",
        placed_at(words.plan, who.copy, words.mark),
        who.copy.part
        if len(words.assembled.members[shut.member]) == 1
        else who.copy.assemblies[_depth(words) + 1],
        message,
        _remedy(words, name, hinder),
        {"gets": exact(round(shut.gets, 4))},
        place_sizes(words.plan, who.copy, hinder.copy),
    )


def _remedy(words: Words, name: str, hinder: Lying) -> str:
    depth = _depth(words)
    wood = words.wood(hinder)
    if len(hinder.copy.assemblies) > depth + 1:
        inner = words.plan.assemblies[hinder.copy.assemblies[-1]]
        return (
            f"put {name} in before {wood} is fixed: place it in the assembly {inner.id} with the rest,"
            f" or leave a way for it, such as a groove that runs out at one end"
        )
    return (
        "leave one of the two a way: a groove that runs out at one end,"
        f" a tongue that ends short of {wood}, or a part in two"
    )


def closed_too_soon(words: Words, gluing: Gluing, locked: Sequence[frozenset[int]]) -> Finding:
    """A fault at the line of the step that makes too much one body; `locked` are bodies by their members."""
    drawn = replace(
        words.assembled,
        members=tuple(
            tuple(copy for member in sorted(group) for copy in words.assembled.members[member])
            for group in locked
        ),
    )
    shut = nearest_out(drawn, range(len(locked)))
    glued = replace(words, assembled=drawn)
    left_out = glued.member(shut.member)
    wood = words.wood(words.placed.lying[shut.hinder])
    message = (
        f"{words.assembly.name}: once this is glued, {left_out} has no straight way into its place."
        f" The nearest: {glued.got_to(shut)}"
    )
    who, hinder = glued.first(shut.member), words.placed.lying[shut.hinder]
    return Finding(
        "closed-too-soon",
        "fault",
        Place((gluing.step.file, "does", gluing.line)),
        gluing.step.id,
        message,
        f"put {left_out} in at this step, before {wood} is glued",
        {"gets": exact(round(shut.gets, 4))},
        place_sizes(words.plan, who.copy, hinder.copy),
    )


def _depth(words: Words) -> int:
    return words.mark.count("/") + 1 if words.mark else 0
