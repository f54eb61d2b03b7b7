"""What stops a formula, or anything else that hangs on one.

Exception
├── Refused        the author's text can't be read or worked out; becomes a problem
│   └── Unnamed    a word stands where only a unit can; who knows the names says what was meant
└── Poisoned       it hangs on something that has been reported already; stays silent
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TypeAlias

from benchalong.ground.marks import Path, Place
from benchalong.ground.problems import Problem

Span: TypeAlias = tuple[int, int]
"""First character and one past the last, counted from 0 in the formula's text."""


@dataclass(eq=False)
class Refused(Exception):
    message: str
    span: Span | None = None
    expected: str = ""
    meant: tuple[str, ...] = ()

    def problem(self, place: Path | Place) -> Problem:
        """The problem it becomes, in a formula that stands at the place."""
        around = place if isinstance(place, Place) else Place(place)
        return Problem(self._within(around), self.message, self.expected, self.meant)

    def _within(self, around: Place) -> Place:
        if self.span is None:
            return around
        first = around.start or 0
        return replace(around, start=first + self.span[0], end=first + self.span[1])


@dataclass(eq=False)
class Unnamed(Refused):
    """`2 stile`: a word right after a number that is no unit of length."""

    number: str = ""
    word: str = ""


class Poisoned(Exception):
    """Something it needs could not be worked out, which has been said where that something stands."""
