"""Holes in a finished text, for what is put in last: so the text around them can be kept while that changes.

A hole says in words what goes in. It stands between two characters that the Unicode standard keeps for a
program's own use, and that no file of a project may hold.
"""

from __future__ import annotations

import re
from collections.abc import Callable

OPENS, CLOSES = "\ufdd8", "\ufdd9"
HOLE = re.compile(f"{OPENS}([^{OPENS}{CLOSES}]*){CLOSES}")
BETWEEN = "|"


def put_off(*words: str | int) -> str:
    """A hole that says these words; none holds a bar."""
    return f"{OPENS}{BETWEEN.join(map(str, words))}{CLOSES}"


def put_in(text: str, what: Callable[[tuple[str, ...]], str]) -> str:
    """The text with each hole filled by what its words ask for."""
    if OPENS not in text:
        return text
    return HOLE.sub(lambda found: what(tuple(found[1].split(BETWEEN))), text)
