"""How long what was put on must set or dry, from an author's own words: `2 hours between coats`,
`overnight`."""

from __future__ import annotations

import re

from benchalong.plan.model import Finish
from benchalong.trade.waits import USUAL_GLUE, drying

HOUR, DAY = 60, 24 * 60
NIGHT = 12 * HOUR
WORDS = {
    "a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "eight": 8, "twelve": 12,
}  # fmt: skip
UNITS = {"minute": 1, "hour": HOUR, "night": NIGHT, "day": DAY, "week": 7 * DAY}
_WAIT = re.compile(rf"\b(\d+|{'|'.join(WORDS)})\s+({'|'.join(UNITS)})s?\b")
_OVERNIGHT = re.compile(r"\bover\s?night\b")

IN_CLAMPS = int(USUAL_GLUE.clamped[1])
"""Minutes until what was glued up may be taken out of its clamps."""
UNTIL_PLANED = int(USUAL_GLUE.loaded * HOUR)
"""Minutes until a glued panel is planed or sawn."""


def minutes_in(text: str) -> int:
    """The first wait a text names, in minutes; 0 where it names none. A night is reckoned as twelve hours."""
    found, night = _WAIT.search(text.lower()), _OVERNIGHT.search(text.lower())
    if night and (not found or night.start() < found.start()):
        return NIGHT
    if not found:
        return 0
    return (WORDS.get(found[1]) or int(found[1])) * UNITS[found[2]]


def finish_waits(finish: Finish) -> int:
    """Minutes that all its coats take to dry: as the author says, or as the trade has it for what goes on."""
    return (finish.coats or 1) * (minutes_in(finish.wait) or int(drying(finish.what) * HOUR))
