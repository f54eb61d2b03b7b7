"""What the plan check says of matches: nothing to match with, not resawn, longer than a board or the car."""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.ground.marks import Place
from benchalong.ground.problems import Finding
from benchalong.ground.words import in_sentence
from benchalong.plan.rough import Match
from benchalong.reading.written import PROJECT_FILE
from benchalong.workings.blanks.model import Blanks, Matched
from benchalong.workings.blanks.reckoning import Reckoned
from benchalong.workings.telling import Telling


def look_at_matches(reckoned: Reckoned, blanks: Blanks) -> Iterator[Finding]:
    return _Matches(reckoned, blanks).all()


class _Matches:
    def __init__(self, reckoned: Reckoned, blanks: Blanks) -> None:
        self.plan, self.sawing, self.blanks = reckoned.plan, reckoned.sawing, blanks
        self.shown = Telling(reckoned.plan).shown

    def all(self) -> Iterator[Finding]:
        for match in self.plan.matches.values():
            if match.how == "book match":
                yield from self._not_resawn(match)
            yield from self._of_one(match)
        for matched in {each.id: each for each in self.blanks.matched}.values():
            yield from self._too_long(matched)

    def _of_one(self, match: Match) -> Iterator[Finding]:
        """What has nothing to match with. Strips of one panel may match among themselves."""
        parts = [self.plan.parts[part] for part in dict.fromkeys(match.parts)]
        copies = len(match.marks) or sum(part.count for part in parts)
        strips = [
            each.strips for blank in self.blanks.blanks for each in blank.gives if each.part in match.parts
        ]
        if match.how == "show side" or copies > 1 or max(strips, default=1) > 1:
            return
        message = (
            f"{match.id}: only {in_sentence(parts[0].name)} is named, and one piece has nothing to match"
        )
        remedy = "name the pieces that it matches, or take the match out"
        yield Finding("match-of-one", "doubt", _of_match(match.id), match.id, message, remedy)

    def _not_resawn(self, match: Match) -> Iterator[Finding]:
        for part in dict.fromkeys(match.parts):
            if self.plan.parts[part].resaw == 1:
                called = self.plan.parts[part].name.lower()
                message = f"{match.id}: {called} can't be opened like a book unless it is resawn"
                remedy = f"say `resaw: 2` of {part}, or `how: same board`"
                yield Finding("match-not-resawn", "doubt", _of_match(match.id), match.id, message, remedy)

    def _too_long(self, matched: Matched) -> Iterator[Finding]:
        blanks = [self.blanks.by_id[name] for name in matched.blanks]
        sold = max(self.plan.stock[blanks[0].stock].sold_in, default=None)
        kerfs = (len(blanks) - 1) * self.sawing.kerf
        takes = sum((blank.length for blank in blanks), kerfs + 2 * self.sawing.trim)
        if matched.parted != "across":
            return
        said = f"{matched.id}: end to end they take a board of {self.shown(takes)}"
        place, car = _of_match(matched.id), self.sawing.car
        if sold is not None and takes > sold:
            message = f"{said}, and the longest sold is {self.shown(sold)}"
            remedy = "let the grain run on over fewer parts, or find a longer board"
            numbers = {"takes": takes, "sold": sold}
            yield Finding("match-too-long", "doubt", place, matched.id, message, remedy, numbers)
        elif car is not None and takes > car:
            message = f"{said}, and {self.shown(car)} go into the car"
            remedy = "have it brought, or let the grain run on over fewer parts"
            numbers = {"takes": takes, "car": car}
            yield Finding("match-longer-than-car", "doubt", place, matched.id, message, remedy, numbers)


def _of_match(match: str) -> Place:
    return Place((PROJECT_FILE, "matches", match)).key()
