"""Text with live sizes in it.

Markdown and one-line texts are turned into safe HTML once, when they are read; what is live in them
stays as a hole that is filled when a page is made. So prose can't go stale and is rendered once.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal, TypeAlias

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Place

HoleKind: TypeAlias = Literal["size", "part", "name", "link", "picture"]
"""size: `(=stile)`. part: `(=part door_rail)`, its name, leading to its page. name: the same inside the
text of a link, where no second link can stand. link and picture fill an attribute: the address of one of the
site's own pages, `step:mill-all`, `part:door_rail`, `question:wet-glue`; that of a picture file,
`pictures/glue-up.jpg`."""


@dataclass(frozen=True)
class Hole:
    """What is live in a text, as written."""

    kind: HoleKind
    text: str
    """The formula; the part's id; `step:ID`; the file."""
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
    """A part's name, which leads to its page unless it stands in a link already."""

    part: str
    name: str
    leads: bool = True


@dataclass(frozen=True)
class Address:
    """Where one of the site's own pages or pictures is found; stands inside an `href` or `src`."""

    kind: Literal["step", "part", "question", "picture"]
    of: str
    """The id, or the picture's file: `pictures/glue-up.jpg`."""


@dataclass(frozen=True)
class Later:
    """A stretch of a step's own words that is put in last, when a page is written: what is made around it
    can be kept while the words change."""

    step: str
    where: tuple[str | int, ...]
    """The way to it in the step: `("note",)`, `("amiss", 0, "cure")`."""
    live: tuple[LiveSize, ...]
    """The live sizes in it, in their order."""


WrittenProse: TypeAlias = tuple[str | Hole, ...]
"""As read: pieces of safe HTML and holes."""
Prose: TypeAlias = tuple[str | LiveSize | LiveNumber | PartName | Address | Later, ...]
"""As meant: pieces of safe HTML and what fills the holes."""


def live_sizes(prose: Prose) -> Iterator[LiveSize]:
    """Those in it, in their order, put off or not."""
    for piece in prose:
        if isinstance(piece, LiveSize):
            yield piece
        elif isinstance(piece, Later):
            yield from piece.live
