"""Findings kept in the store: a plan that says the same is not gone over again."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import asdict
from typing import Any

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Mark, Place
from benchalong.ground.problems import Finding
from benchalong.ground.store import Store


def kept_findings(
    store: Store | None, made_from: str, find: Callable[[], tuple[Finding, ...]]
) -> tuple[Finding, ...]:
    """From the store; found and put there where they aren't. `made_from` says all that they follow from."""
    key = f"findings {made_from}"
    text = store.get(key) if store else None
    if text is not None:
        return from_text(text)
    found = find()
    if store:
        text = as_text(found)
        if from_text(text) == found:
            store.put(key, text)
    return found


def as_text(findings: tuple[Finding, ...]) -> str:
    return json.dumps([asdict(finding) for finding in findings], ensure_ascii=False, default=str)


def from_text(text: str) -> tuple[Finding, ...]:
    """What `as_text` was given, lengths exact."""
    return tuple(_finding(said) for said in json.loads(text))


def _finding(said: dict[str, Any]) -> Finding:
    numbers = {name: Length(value) for name, value in said["numbers"].items()}
    given = {"place": _place(said["place"]), "numbers": numbers, "sizes": tuple(said["sizes"])}
    return Finding(**{**said, **given})


def _place(said: dict[str, Any]) -> Place:
    mark = said["mark"] and Mark(**said["mark"])
    return Place(**{**said, "path": tuple(said["path"]), "mark": mark})
