"""A plan with the words of its steps put off, and the digest of what such a plan says.

What follows from a plan (workings, drawings, nearly all of every page) reads what a step does and never how
it is told. Made from the bare plan, all that stays as it is when only words were changed; the words
themselves are put in when a page is written.
"""

from __future__ import annotations

import re
from dataclasses import replace
from hashlib import sha256
from typing import TypeAlias

from benchalong.ground.prose import Later, Prose, live_sizes
from benchalong.ground.put_off import put_off
from benchalong.plan.model import Amiss, Check, Picture, Plan, Step

Where: TypeAlias = tuple[str | int, ...]

CHECK_KEY = "check-key"
"""The hole that stands for a check's key, with its step and its number from 0: a key is made from words."""
WORDS = re.compile(r"(?:^|>)\s*[^<\s]")
"""Safe HTML that holds more than tags."""


def bare(plan: Plan) -> Plan:
    """The same plan; each stretch of its steps' words, titles apart, is one `Later`."""
    return replace(plan, steps={name: _bare(step) for name, step in plan.steps.items()})


def words_at(step: Step, where: Where) -> Prose:
    """What a `Later` stands for, in the step as it is in the whole plan."""
    found: object = step
    for key in where:
        found = found[key] if isinstance(key, int) else getattr(found, key)  # type: ignore[index]
    return found  # type: ignore[return-value]


def meaning(plan: Plan) -> str:
    """A digest of all that a plan says, the same in every process."""
    return sha256(repr(plan).encode()).hexdigest()


def _bare(step: Step) -> Step:
    def later(prose: Prose, *where: str | int) -> Prose:
        return (Later(step.id, where, tuple(live_sizes(prose))),) if _has_words(prose) else prose

    return replace(
        step,
        why=later(step.why, "why"),
        cautions=tuple(later(each, "cautions", at) for at, each in enumerate(step.cautions)),
        checks=tuple(
            Check(put_off(CHECK_KEY, step.id, at), later(each.text, "checks", at, "text"))
            for at, each in enumerate(step.checks)
        ),
        amiss=tuple(
            Amiss(
                later(each.sign, "amiss", at, "sign"),
                later(each.cause, "amiss", at, "cause"),
                later(each.cure, "amiss", at, "cure"),
            )
            for at, each in enumerate(step.amiss)
        ),
        ask=tuple(later(each, "ask", at) for at, each in enumerate(step.ask)),
        pictures=tuple(
            Picture(each.file, each.alt, later(each.caption, "pictures", at, "caption"))
            for at, each in enumerate(step.pictures)
        ),
        note=later(step.note, "note"),
    )


def _has_words(prose: Prose) -> bool:
    return any(not isinstance(piece, str) or WORDS.search(piece) for piece in prose)
