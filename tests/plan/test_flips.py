"""A flipped cut says its places anew: made again from what it says, it takes the same wood."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as some

from benchalong.ground.lengths import Length
from benchalong.plan.cuts.given import Given
from benchalong.plan.cuts.kinds import KINDS
from benchalong.plan.cuts.where import where
from benchalong.plan.flips import HALF_TURNS, MIRRORED, Flip, flipped_cut
from benchalong.plan.model import Cut, CutKind, CutSize, Prism, Surface

BOX = (Fraction(400), Fraction(90), Fraction(20))
CUTS: tuple[tuple[CutKind, Surface, dict[str, int]], ...] = (
    ("groove", "face", {"width": 6, "depth": 7, "across": 11, "from": 30}),
    ("groove", "edge a", {"width": 6, "depth": 7, "across": 3, "to": 350}),
    ("dado", "back", {"at": 40, "width": 20, "depth": 6, "from": 10}),
    ("mortise", "edge b", {"at": 50, "length": 40, "width": 6, "depth": 25, "across": 5}),
    ("mortise", "face", {"at": 50, "length": 40, "width": 6, "depth": 5, "across": 12}),
    ("tenon", "end b", {"thickness": 6, "width": 50, "length": 30, "at": 10, "across": 4}),
    ("tongue", "end a", {"thickness": 6, "length": 9, "across": 4}),
    ("hole", "face", {"diameter": 5, "depth": 9, "at": 33, "across": 21}),
)
FLIPS = tuple(flip ^ mirror for flip in HALF_TURNS for mirror in (frozenset(), MIRRORED))


def made(kind: CutKind, surfaces: tuple[Surface, ...], lengths: dict[str, Length]) -> Cut:
    said = Given(kind, surfaces, BOX, lengths, {})
    sizes = tuple(CutSize(name, length) for name, length in lengths.items())
    return Cut(kind, kind, surfaces, where(said), sizes, KINDS[kind](said))


def extents(takes: tuple[Prism, ...]) -> set[tuple[object, ...]]:
    """Each body whatever corner its outline begins at."""
    return {
        (prism.axis, prism.start, prism.end, frozenset(getattr(prism.shape, "corners", (prism.shape,))))
        for prism in takes
    }


@pytest.mark.parametrize("flip", FLIPS, ids=lambda flip: "-".join(sorted(flip)))
@pytest.mark.parametrize(("kind", "on", "lengths"), CUTS)
def test_made_again_from_what_it_says_it_is_the_same(
    kind: CutKind, on: Surface, lengths: dict[str, int], flip: Flip
) -> None:
    cut = made(kind, (on,), {name: Fraction(length) for name, length in lengths.items()})
    flipped = flipped_cut(cut, BOX, flip)
    again = made(kind, flipped.surfaces, {size.name: size.length for size in flipped.sizes})
    assert extents(again.takes) == extents(flipped.takes)
    assert again.where == flipped.where


@given(some.sampled_from(CUTS), some.sampled_from(FLIPS))
def test_flipped_twice_it_says_what_it_said(
    case: tuple[CutKind, Surface, dict[str, int]], flip: Flip
) -> None:
    kind, on, lengths = case
    cut = made(kind, (on,), {name: Fraction(length) for name, length in lengths.items()})
    twice = flipped_cut(flipped_cut(cut, BOX, flip), BOX, flip)
    assert twice.sizes == cut.sizes
