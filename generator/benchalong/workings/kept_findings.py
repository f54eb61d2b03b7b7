"""What a check found, kept in the store: a plan that says the same is not gone over again."""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass
from typing import Any

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Mark, Place
from benchalong.ground.problems import Finding
from benchalong.ground.store import Store
from benchalong.workings.working import Results


@dataclass(frozen=True)
class Checked:
    """What going over a plan gives."""

    findings: tuple[Finding, ...]
    questions: tuple[str, ...]
    """That were asked of it."""


def checked(results: Results, store: Store | None, made_from: str) -> Checked:
    """From the store; found and put there where they aren't. `made_from` says all that they follow from."""
    key = f"findings {made_from}"
    text = store.get(key) if store else None
    if text is not None:
        return from_text(text)
    found = Checked(results.findings(), results.questions())
    if store:
        text = as_text(found)
        if from_text(text) == found:
            store.put(key, text)
    return found


def as_text(found: Checked) -> str:
    return json.dumps(asdict(found), ensure_ascii=False, default=str)


def from_text(text: str) -> Checked:
    """What `as_text` was given, lengths exact."""
    said = json.loads(text)
    return Checked(tuple(_finding(each) for each in said["findings"]), tuple(said["questions"]))


def _finding(said: dict[str, Any]) -> Finding:
    numbers = {name: Length(value) for name, value in said["numbers"].items()}
    given = {"place": _place(said["place"]), "numbers": numbers, "sizes": tuple(said["sizes"])}
    return Finding(**{**said, **given})


def _place(said: dict[str, Any]) -> Place:
    mark = said["mark"] and Mark(**said["mark"])
    return Place(**{**said, "path": tuple(said["path"]), "mark": mark})
