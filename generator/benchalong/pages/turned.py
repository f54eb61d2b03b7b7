"""Which copies are the same piece of wood turned round, and how."""

from __future__ import annotations

from collections.abc import Mapping

from benchalong.drawing.alt import listed
from benchalong.pages.makings import Makings
from benchalong.plan.flips import is_mirrored
from benchalong.plan.model import AXES, Shape, Turn
from benchalong.plan.walk import walk

HOW: Mapping[frozenset[str], str] = {
    frozenset(("along", "across")): "turned end for end",
    frozenset(("along", "down")): "turned end for end and over, face for back",
    frozenset(("across", "down")): "turned over, face for back",
}
"""By the directions that point the other way than the place in the plan says."""


def turned_words(makings: Makings, shape: Shape) -> tuple[str, ...]:
    """`RD/H is the same piece, turned end for end.`: one sentence for each way of turning."""
    if not shape.turned:
        return ()
    by_way: dict[str, list[str]] = {}
    for copy in makings.plan.copies:
        if copy.shape == shape.id and copy.mark in shape.turned:
            how = HOW[_turned_round(written_turns(makings)[copy.mark], copy.turn)]
            by_way.setdefault(how, []).append(copy.mark)
    return tuple(_sentence(marks, how) for how, marks in by_way.items())


def _sentence(marks: list[str], how: str) -> str:
    is_one = len(marks) == 1
    return f"{listed(marks)} {'is' if is_one else 'are'} the same {'piece' if is_one else 'pieces'}, {how}."


def written_turns(makings: Makings) -> Mapping[str, Turn]:
    """How each copy lies by what the plan says of its place, by its mark."""
    return makings.once("written turns", "", lambda: _walked(makings))


def _walked(makings: Makings) -> dict[str, Turn]:
    plan = makings.plan
    standing = walk(plan.assemblies, plan.piece) if plan.piece else ()
    return {one.mark: one.turn for one in standing if one.is_part}


def _turned_round(written: Turn, made: Turn) -> frozenset[str]:
    """The directions in which the wood lies the other way round. A mirror, which no wood can follow, is read
    as the one across."""
    other_way = {
        axis for n, axis in enumerate(AXES) if [row[n] for row in written] != [row[n] for row in made]
    }
    return frozenset(other_way ^ {"across"} if is_mirrored(written) else other_way)
