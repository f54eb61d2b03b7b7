"""What is put in last, when a page is written: the words of steps, and the edition."""

from __future__ import annotations

import json

from benchalong.ground.put_off import put_in, put_off
from benchalong.pages.prose import AS_HTML, AS_TITLE, FOR_PAPER, PAPER, Fills
from benchalong.pages.shown import Shows
from benchalong.plan.bare import CHECK_KEY, words_at
from benchalong.plan.model import Plan, StepId

EDITION = "edition"
THE_EDITION = put_off(EDITION)
"""Stands in a page that is kept for the edition that it is written with."""


class PutIn:
    """Puts into a text all that was put off in it."""

    def __init__(self, plan: Plan, edition: str) -> None:
        """`plan` is the whole one, with the words of its steps."""
        self._plan = plan
        self._edition = edition
        shows = Shows(plan.units, plan.precision)
        self._fills = {root: Fills(shows, root) for root in ("", "../")}
        self._fills[FOR_PAPER] = Fills(shows, "", places=PAPER)

    def __call__(self, text: str) -> str:
        return put_in(text, self._what)

    def _what(self, asked: tuple[str, ...]) -> str:
        if asked == (EDITION,):
            return self._edition
        if asked[0] == CHECK_KEY:
            return self._plan.steps[asked[1]].checks[int(asked[2])].key
        as_what, fills, headings, step, *where = asked
        return self._words(as_what, self._fills[fills], int(headings), step, where)

    def _words(self, as_what: str, fills: Fills, headings: int, step: StepId, where: list[str]) -> str:
        way = tuple(int(word) if word.isdigit() else word for word in where)
        prose = words_at(self._plan.steps[step], way)
        if as_what == AS_HTML:
            return fills.fill(prose, headings=headings)
        return fills.title(prose) if as_what == AS_TITLE else anywhere(fills.plain(prose))


def anywhere(words: str) -> str:
    """Plain words so that they may stand in a JSON text, and in a script's element or an attribute too: in
    none of them do they end anything."""
    text = json.dumps(words, ensure_ascii=False)[1:-1].replace('\\"', "\\u0022")
    for character in "<>&'\u2028\u2029":
        if character in text:
            text = text.replace(character, f"\\u{ord(character):04x}")
    return text
