"""How a part is glued up, in the author's words: `true`, `strips of at most 5 in`, `two boards`."""

from __future__ import annotations

import re

from benchalong.ground.marks import Path
from benchalong.ground.words import nearest_words
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.rough import Strips

_NUMBERS = {"two": 2, "three": 3, "four": 4, "five": 5, "six": 6}
_COUNT = re.compile(
    r"(?P<count>[2-9]|two|three|four|five|six)\b(?: or (?:[3-9]|three|four|five|six)\b)?"
    r" (?:narrow )?(?:boards|strips|leaves|pieces)\b"
)
_PIECES = ("boards", "strips", "leaves", "pieces")
_NUMBER = re.compile(r"(?:[0-9]+|two|three|four|five|six) (?P<what>\S+)")
_MOST = re.compile(r"(?:in )?strips of at most (?P<most>.+)")
NOT_GLUED = ("no", "false", "never")


def strips(words: str, path: Path, sums: Reckoning) -> Strips | None:
    """None where nothing is said. Words that say no number say that it is glued up, and no more."""
    words = " ".join(words.split())
    if not words:
        return None
    if words.lower() in NOT_GLUED:
        return Strips(is_glued=False)
    most, count = _MOST.fullmatch(words), _COUNT.match(words.lower())
    if most is not None:
        return Strips(True, most=sums.size_of_wood(most["most"], path, "the widest strip"))
    if count is not None:
        number = count["count"]
        return Strips(True, count=_NUMBERS.get(number) or int(number))
    began = _NUMBER.match(words.lower())
    if began is not None:
        meant = nearest_words(began["what"], _PIECES)
        sums.say(
            path,
            f"this does not say how it is glued up: {words}",
            "a number of boards or strips: two boards",
            meant,
        )
        return None
    return Strips(True)
