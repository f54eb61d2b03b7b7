"""Which copies a picture shows: those of an assembly in one of its places."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property

from benchalong.plan.model import AssemblyId, PartId
from benchalong.workings.copies import Copy


@dataclass(frozen=True)
class Place:
    """An assembly in one of its places in the piece."""

    of: AssemblyId
    copies: tuple[Copy, ...]
    """In the order of the piece; those in assemblies inside it too."""

    @cached_property
    def parts(self) -> frozenset[PartId]:
        return frozenset(copy.part for copy in self.copies)


def places(copies: Iterable[Copy]) -> tuple[Place, ...]:
    """Every assembly in each of its places, in the order in which its first copy comes."""
    held: dict[tuple[AssemblyId, tuple[str, ...]], list[Copy]] = defaultdict(list)
    for copy in copies:
        marks = copy.mark.split("/")
        for depth, assembly in enumerate(copy.assemblies):
            held[assembly, tuple(marks[:depth])].append(copy)
    return tuple(Place(assembly, tuple(inside)) for (assembly, _), inside in held.items())


def smallest_with(parts: frozenset[PartId], among: Sequence[Place]) -> Place | None:
    """The place with the fewest copies that holds a copy of each of these parts; the first where equal."""
    holding = [place for place in among if parts <= place.parts]
    return min(holding, key=lambda place: len(place.copies), default=None)
