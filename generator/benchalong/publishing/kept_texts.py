"""The texts of a site's files, kept between runs as they are before what is put off is put in.

A key says all that the texts are made from: the bare plan, its findings and where they are written, the
templates, the code. So when the words of a step change, every page is found as it is. A hundred texts make a
shelf; a shelf is known by the project and its number, so that a newer site's takes an older one's place.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Sequence
from dataclasses import astuple
from hashlib import sha256
from pathlib import Path

from benchalong.ground.marks import Marks
from benchalong.ground.store import Shelf, Store
from benchalong.publishing.theme import Theme
from benchalong.reading.written import PROJECT_FILE
from benchalong.road import Travelled

ON_A_SHELF = 100
HEAD_ENDS = "---"
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
    sources = sorted((name, source.file, source.text) for name, source in theme.templates.items())
    found, written = travelled.worked.findings, as_written(travelled, store)
    said = (travelled.made_from, theme.name, sources, found, written)
    return KeptTexts(store, name=name, made_from=_digest(said))


def as_written(travelled: Travelled, store: Store) -> str:
    """What pages say of how the plan is written: where findings stand, which sizes of joints are typed.

    Kept too: to find a line, its file is read once more, and a large plan may have findings in each of a
    thousand notes.
    """
    marks = travelled.marks
    places = [finding.place for finding in travelled.worked.findings]
    sizes = [
        (PROJECT_FILE, "joints", joint.id, size.name)
        for joint in travelled.plan.joints.values()
        for size in joint.sizes
    ]
    paths = [path for path in (*(place.path for place in places), *sizes) if path]
    inside = {path[0] for path in paths if "note" in path or not str(path[0]).endswith(".md")}
    files = sorted({str(path[0]) for path in paths})
    texts = [_head(marks, file, whole=file in inside) for file in files]
    key = f"as written {_digest((places, sizes, files, texts))}"
    kept = store.get(key)
    if kept is None:
        typed = [path for path in sizes if path in marks.values]
        kept = json.dumps([[astuple(marks.find(place)) for place in places], typed])
        store.put(key, kept)
    return kept


def _head(marks: Marks, file: str, *, whole: bool) -> Sequence[str]:
    """The lines above a note; the whole file where none ends them."""
    lines = marks.lines.get(file, ())
    try:
        return lines if whole else lines[: lines.index(HEAD_ENDS, 1)]
    except ValueError:
        return lines


def _digest(said: object) -> str:
    return sha256(repr(said).encode()).hexdigest()
