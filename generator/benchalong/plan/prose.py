"""What is live in a text: holes filled with what the plan says."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Literal, cast

from benchalong.ground.marks import Place
from benchalong.ground.prose import Address, Hole, LiveNumber, LiveSize, PartName, Prose, WrittenProse
from benchalong.ground.shown import decimal
from benchalong.plan.draft import Draft
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.stock import in_words

Filled = LiveSize | LiveNumber | PartName | Address


class Filling:
    """Fills texts, and reports the names in them that lead nowhere."""

    def __init__(self, sums: Reckoning) -> None:
        self.sums = sums
        self.pages: Mapping[str, frozenset[str]] = _pages(sums.draft)

    def fill(self, prose: WrittenProse) -> Prose:
        """What could not be filled is left out; that has been reported."""
        pieces = (piece if isinstance(piece, str) else self.filled(piece) for piece in prose)
        return tuple(piece for piece in pieces if piece is not None)

    def fill_all(self, proses: Sequence[WrittenProse]) -> tuple[Prose, ...]:
        return tuple(self.fill(prose) for prose in proses)

    def filled(self, hole: Hole) -> Filled | None:
        if hole.kind == "size":
            return self._size(hole)
        if hole.kind in ("part", "name"):
            return self._part(hole)
        if hole.kind == "picture":
            return self._picture(hole)
        return self._page(hole)

    def _size(self, hole: Hole) -> LiveSize | LiveNumber | None:
        quantity = self.sums.quantity(hole.text, formula_place(hole))
        if quantity is None:
            return None
        if quantity.dimension == 1:
            return LiveSize(hole.text, quantity.value)
        if quantity.dimension == 0:
            return LiveNumber(hole.text, decimal(quantity.value))
        self.sums.say(hole.place, f"this comes to {quantity.called}", "a length or a pure number")
        return None

    def _part(self, hole: Hole) -> PartName | None:
        parts = self.sums.draft.written.parts
        if not self.sums.knows("parts", hole.text, hole.place, among=parts):
            return None
        return PartName(hole.text, parts[hole.text].name or in_words(hole.text), leads=hole.kind == "part")

    def _picture(self, hole: Hole) -> Address | None:
        pictures = self.sums.draft.written.pictures
        return (
            Address("picture", hole.text)
            if self.sums.knows("pictures", hole.text, hole.place, among=dict.fromkeys(pictures))
            else None
        )

    def _page(self, hole: Hole) -> Address | None:
        kind, _, of = hole.text.partition(":")
        known = self.pages.get(kind, frozenset())
        if not self.sums.knows(f"{kind}s", of, hole.place, among=dict.fromkeys(known)):
            return None
        return Address(cast(Literal["step", "part", "question"], kind), of)


def _pages(draft: Draft) -> Mapping[str, frozenset[str]]:
    project = draft.written
    return {
        "step": frozenset(step.id for step in project.steps),
        "part": frozenset(project.parts),
        "question": frozenset(question.id for question in project.questions),
    }


def formula_place(hole: Hole) -> Place:
    """Where the formula inside `(=…)` stands; the whole hole when spaces make that uncertain."""
    place = hole.place
    if place.start is None or place.end is None or place.end - place.start != len(hole.text) + 3:
        return place
    return Place(place.path, start=place.start + 2, end=place.end - 1, mark=place.mark)
