"""What a kind of joint is: what each side loses, told in the same few words as a part's own cuts."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import TypeAlias

from benchalong.ground.lengths import Length
from benchalong.plan.joints.member import Side
from benchalong.plan.model import Bore, CutKind, Moves, Prism, Surface


@dataclass(frozen=True)
class Given:
    """A joint with its sizes worked out."""

    id: str
    kind: str
    sizes: Mapping[str, Length]
    """By key; what may be left out and was, isn't there. Pure numbers too."""
    words: Mapping[str, str]
    bores: tuple[Bore, ...] = ()
    """The holes its hardware takes on each side."""

    def __getitem__(self, key: str) -> Length:
        return self.sizes[key]


@dataclass(frozen=True)
class Loss:
    """One cut that a joint gives a side, in the language of a part's own cuts (`plan/cuts`)."""

    kind: CutKind
    surfaces: tuple[Surface, ...]
    lengths: Mapping[str, Length]
    """As in a part's own cut: width, depth, across, at, from, to …"""
    words: Mapping[str, str] = field(default_factory=dict)
    takes: tuple[Prism, ...] | None = None
    """Given when the kind's own rule doesn't say what goes: a dovetail's socket, a mitre."""
    name: str = ""


Rule: TypeAlias = Callable[[Given, Side, tuple[Side, ...]], Iterable[Loss]]
"""What one side loses, given the sides it meets on the other part; called once for each side."""


Motion: TypeAlias = Callable[[Given, Side, Side], Moves]
"""How what enters moves against what it is fixed to, in the directions of the assembly they meet in; its
marks are filled in later. Raises CantMove."""


class CantMove(Exception):
    """What the author says of a moving partner doesn't agree with how the two stand."""

    def __init__(self, key: str, message: str, expected: str) -> None:
        super().__init__(message)
        self.key, self.message, self.expected = key, message, expected


@dataclass(frozen=True)
class Family:
    cut_in: Rule
    takes: Rule
    takes_ends: bool = False
    """Whether what enters can do so only with an end."""
    apart: str = ""
    """The size that says how far its two sides stand apart, where they do."""
    faces: bool = True
    """Whether its two sides must look at each other; else it is enough that the parts touch."""
    moves: Motion | None = None
    """For a joint that lets one side move."""
    pieces: Callable[[Given, Side, Side], int] | None = None
    """How much hardware it takes where two sides meet; None where it takes none."""


def nothing(_: Given, __: Side, ___: tuple[Side, ...]) -> Iterable[Loss]:
    """For a side that keeps all its wood."""
    return ()
