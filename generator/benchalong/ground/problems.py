"""What went wrong and what was found out.

Two nouns. A *problem* keeps the project from being understood (exit code 2). A *finding* is one
result of the plan check on a project that was understood: `fault`, `doubt` or `note`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal, TypeAlias

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Marks, Place

Level: TypeAlias = Literal["fault", "doubt", "note"]
LEVELS: tuple[Level, ...] = ("fault", "doubt", "note")


@dataclass(frozen=True)
class Problem:
    """One thing that can't be read, or a name that leads nowhere."""

    place: Place
    message: str
    """What was found, in one sentence without its full stop."""
    expected: str = ""
    """What would be right, to follow the word "expected"."""
    meant: tuple[str, ...] = ()
    """The nearest right words, best first."""


@dataclass(frozen=True)
class Finding:
    """One result of the plan check. `code` is a promise: it never changes its meaning."""

    code: str
    """Words joined by hyphens: `cut-outside-part`."""
    level: Level
    place: Place
    subject: str
    """The part, joint, assembly, step or size it is about, by its name in the plan."""
    message: str
    remedy: str
    """What to change and by how much."""
    numbers: Mapping[str, Length] = field(default_factory=dict)
    """Lengths the message speaks of, by name."""
    sizes: tuple[str, ...] = ()
    """The named sizes it follows from."""


class Unreadable(Exception):
    """The project can't go further down the road; holds every problem found up to here, in order."""

    def __init__(self, problems: tuple[Problem, ...], marks: Marks) -> None:
        super().__init__(f"{len(problems)} problem(s)")
        self.problems = problems
        self.marks = marks
