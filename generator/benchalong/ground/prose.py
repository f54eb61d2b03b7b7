"""Text with live sizes in it.

Markdown and one-line texts are turned into safe HTML once, when they are read; what is live in them
stays as a hole that is filled when a page is made. So prose can't go stale and is rendered once.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, TypeAlias

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Place


@dataclass(frozen=True)
class Hole:
    """A live size `(=stile)` or a part's name `(=part door_rail)`, as written."""

    kind: Literal["size", "part"]
    text: str
    """The formula, or the part's id."""
    place: Place


@dataclass(frozen=True)
class LiveSize:
    """A live length: shown in the reader's system."""

    formula: str
    length: Length


@dataclass(frozen=True)
class LiveNumber:
    """A live pure number, as text."""

    formula: str
    text: str


@dataclass(frozen=True)
class PartName:
    """A part's name, which leads to its page."""

    part: str
    name: str


WrittenProse: TypeAlias = tuple[str | Hole, ...]
"""As read: pieces of safe HTML and holes."""
Prose: TypeAlias = tuple[str | LiveSize | LiveNumber | PartName, ...]
"""As meant: pieces of safe HTML and what fills the holes."""
