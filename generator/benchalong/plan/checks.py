"""What a step gives to tick, and the keys that ticks are kept under.

A key is made from the words as typed, the formulas in them left out: so a tick stays when a size
changes, and a check that says something else is a new one.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from hashlib import sha256

from benchalong.ground.prose import Hole, Prose, WrittenProse
from benchalong.plan.model import Check
from benchalong.reading.written import Step


def checks_of(step: Step, texts: tuple[Prose, ...]) -> tuple[Check, ...]:
    return tuple(Check(key, text) for key, text in zip(_keys(step), texts, strict=True))


def _keys(step: Step) -> Iterator[str]:
    """One for each check; the same words a second time get a number."""
    seen: Counter[str] = Counter()
    for index, written in enumerate(step.checks):
        source = step.check_sources[index] if index < len(step.check_sources) else ""
        key = sha256(_words(source, written).encode()).hexdigest()[:10]
        seen[key] += 1
        yield key if seen[key] == 1 else f"{key}-{seen[key]}"


def _words(source: str, written: WrittenProse) -> str:
    """The words as typed, live sizes left out."""
    words = source or "".join(piece if isinstance(piece, str) else f"(={piece.text})" for piece in written)
    for piece in written:
        if isinstance(piece, Hole) and piece.kind == "size":
            words = words.replace(f"(={piece.text})", "(=)")
    return " ".join(words.split())
