"""Jigs, finish and changes; and the piece's own texts."""

from __future__ import annotations

from collections.abc import Mapping

from benchalong.ground.marks import Path
from benchalong.plan import model
from benchalong.plan.brought_to_size import parts_or_assemblies
from benchalong.plan.draft import Draft
from benchalong.plan.prose import Filling
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.stock import in_words
from benchalong.reading import written
from benchalong.reading.written import PROJECT_FILE

CHANGED_IN: Mapping[str, str] = {"size": "sizes", "stock": "stock", "part": "parts", "assembly": "assemblies"}
"""What a change may be of, and the section that defines it. A joint has none yet: its name is only said."""


def take_things(draft: Draft) -> Draft:
    """Adds `jigs`, `finish` and `changes`."""
    sums = Reckoning(draft)
    filling = Filling(sums)
    project = draft.written
    return sums.done(
        jigs={name: _jig(name, entry, filling) for name, entry in project.jigs.items()},
        finish={name: _finish(name, entry, sums) for name, entry in project.finish.items()},
        changes=tuple(_change(change, index, sums) for index, change in enumerate(project.changes)),
    )


def take_texts(draft: Draft) -> Draft:
    """Adds `title`, `about` and `cautions`."""
    sums = Reckoning(draft)
    filling = Filling(sums)
    project = draft.written
    return sums.done(
        title=filling.fill(project.title),
        about=filling.fill(project.about),
        cautions=filling.fill_all(project.cautions),
    )


def _jig(name: str, entry: written.Jig, filling: Filling) -> model.Jig:
    return model.Jig(
        name, entry.name or in_words(name), entry.purpose, entry.made_from, filling.fill(entry.note)
    )


def _finish(name: str, entry: written.Finish, sums: Reckoning) -> model.Finish:
    path: Path = (PROJECT_FILE, "finish", name, "on")
    on = parts_or_assemblies(entry.on, path, sums)
    return model.Finish(name, entry.what, entry.coats, entry.wait, entry.faces, entry.bare, entry.note, on)


def _change(change: written.Change, index: int, sums: Reckoning) -> model.Change:
    section = CHANGED_IN.get(change.kind)
    if section is not None:
        path = (PROJECT_FILE, "changes", index, change.kind)
        sums.knows(section, change.of, path, among=getattr(sums.draft.written, section))
    return model.Change(change.kind, change.of, change.was, change.why)
