"""Notes that were read before, so that a project of a thousand is not rendered anew for one that changed.

What is kept is the step a note was read as, under the note's own text and all else that reading it looks
at. Only a note without a problem is kept: the others are read again, and their problems told again.
"""

from __future__ import annotations

import json
from dataclasses import fields
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import Any

from benchalong.ground import marks, prose
from benchalong.ground.store import Shelf, code_digest, library_state
from benchalong.reading import notes
from benchalong.reading.notes import split_front
from benchalong.reading.tally import Tally
from benchalong.reading.written import Amiss, Does, Picture, Step

KINDS: dict[str, Any] = {
    kind.__name__: kind for kind in (Step, Does, Amiss, Picture, prose.Hole, marks.Place, marks.Mark)
}
"""What a step is made of, besides texts, numbers and tuples."""
LIBRARIES = ("markdown_it", "nh3", "yaml")


class KeptNotes:
    """Reads a note only when it isn't on the shelf."""

    def __init__(self, shelf: Shelf) -> None:
        self._shelf = shelf

    def step(self, file: str, text: str, tally: Tally) -> Step:
        key = _key(file, text, tally)
        kept = self._shelf.get(key)
        if kept is not None:
            split_front(file, text, tally)  # messages of later rooms point into the note
            return from_text(kept)
        told = len(tally.problems), len(tally.unreadable)
        read = notes.step(file, text, tally)
        if told == (len(tally.problems), len(tally.unreadable)):
            self._shelf.put(key, as_text(read))
        return read


def as_text(step: Step) -> str:
    """One line of JSON."""
    return _ENCODER.encode(step)


def from_text(text: str) -> Step:
    """The step that was made into this text."""
    step: Step = _DECODER.decode(text)
    return step


def _said(value: Any) -> dict[str, list[Any]]:
    """A class as `{name: values of the fields in their order}`; its tuples become lists by themselves."""
    name = type(value).__name__
    return {name: [getattr(value, field) for field in _fields(name)]}


def _made(said: dict[str, Any]) -> Any:
    ((name, values),) = said.items()
    return KINDS[name](*[_tuples(value) if type(value) is list else value for value in values])


def _tuples(values: list[Any]) -> tuple[Any, ...]:
    return tuple([_tuples(value) if type(value) is list else value for value in values])


_ENCODER = json.JSONEncoder(ensure_ascii=False, separators=(",", ":"), default=_said)
_DECODER = json.JSONDecoder(object_hook=_made)


@cache
def _fields(name: str) -> tuple[str, ...]:
    return tuple(field.name for field in fields(KINDS[name]))


def _key(file: str, text: str, tally: Tally) -> str:
    return sha256(f"{reading_code()} {_digest(tally.pictures)} {file} {text}".encode()).hexdigest()


@cache
def _digest(pictures: frozenset[str]) -> str:
    return sha256(repr(sorted(pictures)).encode()).hexdigest()


@cache
def reading_code() -> str:
    """A digest of the modules that read, and of which libraries they read with."""
    modules = [*sorted(Path(__file__).parent.glob("*.py")), Path(prose.__file__), Path(marks.__file__)]
    libraries = "".join(map(library_state, LIBRARIES))
    return code_digest(modules, libraries)
