"""Arithmetic on behalf of one pass: formulas worked out against the plan's names, problems gathered."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Literal

from benchalong.ground.lengths import METRE, Length
from benchalong.ground.marks import Path, Place
from benchalong.ground.problems import Problem
from benchalong.ground.shown import shown
from benchalong.ground.words import nearest_words
from benchalong.plan.draft import SECTIONS, Draft
from benchalong.plan.evaluate import as_length, evaluate
from benchalong.plan.formula import parse
from benchalong.plan.quantity import Quantity
from benchalong.plan.refused import Poisoned, Refused, Unnamed
from benchalong.plan.tree import Name, Tree, names_in
from benchalong.plan.unknown import ONE_OF, Directory
from benchalong.reading.written import PROJECT_FILE

LONGEST: Length = 100 * METRE
"""No part is longer; what is, has a slip in it."""
THINNEST: Length = METRE / 100_000
"""A hundredth of a millimetre; no part is thinner."""


class Reckoning:
    def __init__(self, draft: Draft, directory: Directory | None = None) -> None:
        self.draft = draft
        self.found: list[Problem] = []
        self.used: set[str] = set()
        self.directory = directory or Directory(draft.names.keys(), sections_of(draft))

    # problems

    def say(self, place: Path | Place, message: str, expected: str = "", meant: tuple[str, ...] = ()) -> None:
        self.found.append(
            Problem(place if isinstance(place, Place) else Place(place), message, expected, meant)
        )

    def knows(
        self,
        section: str,
        name: str,
        path: Path | Place,
        *,
        among: Mapping[str, object],
        on: Literal["value", "key"] = "value",
    ) -> bool:
        """Whether the section defines the name; says so when not, unless its definition could not be read."""
        if name in among:
            return True
        if name and not self._may_be_defined(section, name):
            place = path if isinstance(path, Place) else Place(path, on)
            other = self.directory.sections.get(name)
            if other and other != section:
                self.say(
                    place,
                    f"{name} is {ONE_OF[other]}, not {ONE_OF[section]}",
                    meant=nearest_words(name, among),
                )
            else:
                self.unknown(_noun(section), name, place, among)
        return False

    def knows_dotted(self, name: str, path: Path) -> None:
        """Says so when a name such as `door_rail.length` leads nowhere."""
        if name not in self.draft.names and not name_is_lost(name, self.draft):
            refused = self.directory.refuse(Name(name, (0, len(name))), name)
            self.say(Place(path, "key"), refused.message, refused.expected, refused.meant)

    def unknown(self, noun: str, name: str, place: Path | Place, among: Mapping[str, object]) -> None:
        self.say(place, f"there is no {noun} called {name}", meant=nearest_words(name, among))

    def _may_be_defined(self, section: str, name: str) -> bool:
        """Whether its definition may be among what could not be read."""
        if section in FOLDERS:
            return any(
                len(path) == 1 and str(path[0]).startswith(f"{section}/") for path in self.draft.unreadable
            )
        return self.draft.is_lost(PROJECT_FILE, section, name)

    # formulas

    def quantity(self, text: str, place: Path | Place) -> Quantity | None:
        """What the formula comes to; None when it can't be worked out."""
        try:
            tree = parse(text)
            return self._evaluate(tree) if self.knows_names_in(tree, text, place) else None
        except Refused as refused:
            self._refuse(refused, place)
        except Poisoned:
            pass
        return None

    def knows_names_in(self, tree: Tree, text: str, place: Path | Place) -> bool:
        """Whether each name in a formula leads somewhere; says so of every one that doesn't."""
        names = names_in(tree)
        self.used.update(name.name for name in names)
        unknown = [name for name in names if name.name not in self.directory.values]
        for name in unknown:
            if not name_is_lost(name.name, self.draft):
                self._refuse(self.directory.refuse(name, text), place)
        return not unknown

    def length(self, text: str, path: Path | Place) -> Length | None:
        """The length the formula comes to, of either sign; None when it can't be worked out."""
        quantity = self.quantity(text, path)
        if quantity is None:
            return None
        try:
            return as_length(quantity, parse(text), self.draft.unit)
        except Refused as refused:
            self._refuse(refused, path)
            return None

    def size_of_wood(self, text: str, path: Path, what: str) -> Length | None:
        """A length above zero that wood can have."""
        length = self.length(text, path)
        if length is None or self.is_size_of_wood(length, text, path, what):
            return length
        return None

    def is_size_of_wood(self, length: Length, text: str, path: Path, what: str) -> bool:
        """Whether wood can be so long; says so when it can't."""
        if length <= 0:
            self.say(
                path, f"{what} comes to {self.shown(length)}{self._because(text)}", "a length above zero"
            )
        elif length > LONGEST:
            self.say(
                path,
                f"{what} comes to {self.shown(length)}{self._because(text)}",
                "at most 100 m; is a unit missing?",
            )
        elif length < THINNEST:
            self.say(
                path, f"{what} comes to less than 0.01 mm{self._because(text)}", "a length that can be sawn"
            )
        else:
            return True
        return False

    def follows(self, text: str) -> tuple[str, ...]:
        """The named sizes a formula follows from, in alphabetical order."""
        try:
            return tuple(sorted(followed(parse(text), self.draft)))
        except Refused:
            return ()

    def shown(self, length: Length) -> str:
        return shown(length, self.draft.written.units, self.draft.precision).text

    def _because(self, text: str) -> str:
        follows = self.follows(text)
        return f"; it follows from {', '.join(follows)}" if follows else ""

    def _evaluate(self, tree: Tree) -> Quantity:
        return evaluate(tree, self._look_up, self.draft.unit)

    def _look_up(self, name: Name) -> Quantity:
        known = self.draft.names.get(name.name)
        if known is None or known.value is None:
            raise Poisoned
        return known.value

    def _refuse(self, refused: Refused, place: Path | Place) -> None:
        told = self.directory.explain(refused) if isinstance(refused, Unnamed) else refused
        self.found.append(told.problem(place))

    # the pass's end

    def done(self, **made: object) -> Draft:
        """The draft with what the pass made, and its problems."""
        problems, used = self.draft.problems + tuple(self.found), self.draft.used | self.used
        return replace(self.draft, problems=problems, used=used, **made)  # type: ignore[arg-type]


def followed(tree: Tree, draft: Draft) -> frozenset[str]:
    """The named sizes a tree follows from, directly or not."""
    found: set[str] = set()
    for name in names_in(tree):
        known = draft.names.get(name.name)
        found |= known.follows if known else frozenset()
        if "." not in name.name:
            found.add(name.name)
    return frozenset(found)


def sections_of(draft: Draft) -> dict[str, str]:
    """Each id and the section that defines it; where two do, the first."""
    return {name: section for section in reversed(SECTIONS) for name in getattr(draft.written, section)}


def name_is_lost(name: str, draft: Draft) -> bool:
    """Whether the name may be one whose definition could not be read."""
    head, dot, _ = name.partition(".")
    sections = ("parts", "stock", "joints", "hardware") if dot else ("sizes",)
    return any(draft.is_lost(PROJECT_FILE, section, head) for section in sections)


FOLDERS = ("steps", "questions", "pictures")
"""Sections that are folders of files, not tables in the project's own."""


def _noun(section: str) -> str:
    return ONE_OF[section].partition(" ")[2]
