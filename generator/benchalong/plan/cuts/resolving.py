"""The pass that turns every part's written cuts into exact ones."""

from __future__ import annotations

from typing import cast

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Path
from benchalong.plan import model
from benchalong.plan.cuts.given import WORDS, Given
from benchalong.plan.cuts.kinds import KINDS
from benchalong.plan.cuts.where import where
from benchalong.plan.draft import Box, Draft
from benchalong.plan.reckoning import Reckoning
from benchalong.reading import written
from benchalong.reading.written import PROJECT_FILE

ABOVE_ZERO = ("width", "depth", "length", "thickness", "diameter", "takes")
"""Sizes that a cut can't be made with unless they are above zero; the rest are places."""


def resolve_cuts(draft: Draft) -> Draft:
    """Adds `cuts`. One with a size not above zero takes nothing; the plan check says so."""
    sums = Reckoning(draft)
    cuts = {name: _cuts(name, part, sums) for name, part in draft.written.parts.items()}
    return sums.done(cuts=cuts)


def _cuts(name: str, part: written.Part, sums: Reckoning) -> tuple[model.Cut, ...]:
    box = sums.draft.boxes.get(name)
    path: Path = (PROJECT_FILE, "parts", name, "cuts")
    made = (_cut(cut, index, (*path, index), box, sums) for index, cut in enumerate(part.cuts))
    return tuple(cut for cut in made if cut is not None)


def _cut(cut: written.Cut, index: int, path: Path, box: Box | None, sums: Reckoning) -> model.Cut | None:
    before = len(sums.found)
    words = {key: text for key, text in cut.sizes.items() if text in WORDS}
    formulas = {key: text for key, text in cut.sizes.items() if text not in WORDS}
    lengths = {key: sums.length(text, (*path, key)) for key, text in formulas.items()}
    corners = [_corner(corner, (*path, "corners", number), sums) for number, corner in enumerate(cut.corners)]
    if box is None or cut.kind not in KINDS or len(sums.found) > before or sums.draft.is_lost(*path):
        return None
    if (
        None in lengths.values()
        or None in corners
        or any((*path, key) in sums.draft.unreadable for key in _KEYS)
    ):
        return None
    given = Given(
        cut.kind,
        cast(tuple[model.Surface, ...], cut.surfaces),
        box,
        cast(dict[str, Length], lengths),
        words,
        cast(tuple[model.Corner, ...], tuple(corners)),
        cut.removes or "outside",
    )
    return _made(cut, index, given, formulas, sums)


_KEYS = (
    "on",
    "width",
    "depth",
    "length",
    "thickness",
    "diameter",
    "takes",
    "at",
    "across",
    "from",
    "to",
    "corners",
)


def _made(cut: written.Cut, index: int, given: Given, formulas: dict[str, str], sums: Reckoning) -> model.Cut:
    can_be_made = all(given.lengths.get(key, 1) > 0 for key in ABOVE_ZERO)
    sizes = tuple(
        model.CutSize(key, given.lengths[key], sums.follows(text)) for key, text in formulas.items()
    )
    return model.Cut(
        cast(model.CutKind, cut.kind),
        cut.name or cut.kind,
        given.surfaces,
        where(given),
        sizes,
        KINDS[cut.kind](given) if can_be_made else (),
        cut.note,
        index,
        _follows(cut, sizes, sums),
    )


def _follows(cut: written.Cut, sizes: tuple[model.CutSize, ...], sums: Reckoning) -> tuple[str, ...]:
    formulas = [text for corner in cut.corners for text in (corner.along, corner.across, corner.round or "0")]
    names = {name for size in sizes for name in size.sizes}
    return tuple(sorted(names.union(*(sums.follows(text) for text in formulas))))


def _corner(corner: written.Corner, path: Path, sums: Reckoning) -> model.Corner | None:
    at: Path = path if corner.round is None else (*path, "at")
    along = sums.length(corner.along, (*at, 0))
    across = sums.length(corner.across, (*at, 1))
    radius = Length(0) if corner.round is None else sums.length(corner.round, (*path, "round"))
    if along is None or across is None or radius is None:
        return None
    if radius < 0:
        sums.say(
            (*path, "round"), "a corner can't be rounded with a radius below zero", "a radius above zero"
        )
        return None
    return model.Corner((along, across), radius)
