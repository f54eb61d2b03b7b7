"""The texts of a site's files, kept between runs as they are before what is put off is put in.

A key says all that the texts are made from: the bare plan, its findings and where they are written, the
templates, the code. So when the words of a step change, every page is found as it is. A hundred texts make a
shelf; a shelf is known by the project and its number, so that a newer site's takes an older one's place.
"""

from __future__ import annotations

from collections.abc import Callable
from hashlib import sha256
from pathlib import Path

from benchalong.ground.store import Shelf, Store
from benchalong.publishing.theme import Theme
from benchalong.reading.written import PROJECT_FILE
from benchalong.road import Travelled

ON_A_SHELF = 100
LINE_END = "\x1e"
"""Stands for a line's end on a shelf, which holds one line for each text; no file of a project has it."""


class KeptTexts:
    """Gives the texts of one site, asked for in the same order by every run."""

    def __init__(self, store: Store, *, name: str, made_from: str) -> None:
        self._store = store
        self._name = name
        self._made_from = made_from
        self._asked = 0
        self._shelf: Shelf | None = None

    def text(self, path: str, make: Callable[[], str]) -> str:
        """The text at this path of the site, made where it isn't in the store."""
        shelf = self._at_hand()
        key = f"{self._made_from}/{path}"
        kept = shelf.get(key)
        if kept is not None:
            return kept.replace(LINE_END, "\n")
        made = make()
        if LINE_END not in made and made:
            shelf.put(key, made.replace("\n", LINE_END))
        return made

    def put_back(self) -> None:
        """Keep them for the next run."""
        if self._shelf:
            self._shelf.put_back()
        self._shelf = None

    def _at_hand(self) -> Shelf:
        if self._shelf is None or self._asked % ON_A_SHELF == 0:
            self.put_back()
            self._shelf = Shelf(self._store, f"{self._name} {self._asked // ON_A_SHELF}")
        self._asked += 1
        return self._shelf


def texts_of(travelled: Travelled, theme: Theme, project: Path, store: Store) -> KeptTexts:
    """Those of the site of this project in this theme."""
    name = f"texts of {project.resolve()} in {theme.name}"
    return KeptTexts(store, name=name, made_from=_made_from(travelled, theme))


def _made_from(travelled: Travelled, theme: Theme) -> str:
    marks = travelled.marks
    found = [(finding, marks.find(finding.place)) for finding in travelled.worked.findings]
    sources = sorted((name, source.file, source.text) for name, source in theme.templates.items())
    said_of_joints = sorted(path for path in marks.values if path[:2] == (PROJECT_FILE, "joints"))
    said = f"{travelled.made_from} {theme.name} {found!r} {sources!r} {said_of_joints!r}"
    return sha256(said.encode()).hexdigest()
