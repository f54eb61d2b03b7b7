"""What must hold of movement for every wood, and our own worked figures."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchalong.trade.moisture import OutOfRange
from benchalong.trade.movement import (
    Change,
    Sawn,
    across_thickness,
    across_width,
    along_grain,
    by_coefficient,
    by_shrinkage,
)
from benchalong.trade.species import Species, Value, woods

WOODS = woods()
F = Fraction
wood = st.sampled_from(list(WOODS.by_name.values()))
sawn = st.sampled_from(["flat", "quarter", "rift"])
moisture = st.fractions(0, 30, max_denominator=20)


def named(name: str) -> Species:
    found = WOODS.find(name)
    assert found is not None
    return found


def moved(species: Species, way: Sawn, before: Fraction, after: Fraction) -> Change:
    change = across_width(species, way, before=before, after=after)
    assert change is not None
    return change


@given(wood, sawn, moisture)
def test_nothing_moves_without_a_change_in_moisture(species: Species, way: Sawn, at: Fraction) -> None:
    assert moved(species, way, at, at).share == 0


@given(wood, sawn, moisture, moisture)
def test_it_swells_when_damper_and_shrinks_when_drier(
    species: Species, way: Sawn, before: Fraction, after: Fraction
) -> None:
    share = moved(species, way, before, after).share
    if min(before, species.starts_at) != min(after, species.starts_at):
        assert (share > 0) == (after > before)


@given(wood, sawn, moisture, st.lists(moisture, min_size=2, max_size=4))
def test_a_wider_range_never_moves_less(
    species: Species, way: Sawn, before: Fraction, after: list[Fraction]
) -> None:
    damper = [moved(species, way, before, at).share for at in sorted(after) if at >= before]
    drier = [-moved(species, way, before, at).share for at in sorted(after, reverse=True) if at <= before]
    assert all(one <= other for row in (damper, drier) for one, other in pairwise(row))


@given(wood, moisture, moisture)
def test_quarter_moves_less_than_flat_and_rift_lies_between(
    species: Species, before: Fraction, after: Fraction
) -> None:
    flat, rift, quarter = (
        abs(moved(species, way, before, after).share) for way in ("flat", "rift", "quarter")
    )
    assert quarter <= rift <= flat
    if flat:
        assert quarter < flat


@given(wood, moisture, moisture)
def test_the_thickness_moves_as_the_rings_lie(species: Species, before: Fraction, after: Fraction) -> None:
    assert across_thickness(species, "flat", before=before, after=after) == moved(
        species, "quarter", before, after
    )
    assert across_thickness(species, "quarter", before=before, after=after) == moved(
        species, "flat", before, after
    )


@given(moisture, moisture)
def test_along_the_grain_no_more_than_the_published_share(before: Fraction, after: Fraction) -> None:
    assert abs(along_grain(Fraction(1000), before=before, after=after)) <= 2
    assert along_grain(Fraction(1000), before=before, after=before) == 0


@pytest.mark.parametrize(("before", "after"), [("-1", "8"), ("8", "30.1")])
def test_the_limits_of_the_equations_are_kept(before: str, after: str) -> None:
    with pytest.raises(OutOfRange):
        across_width(named("cherry"), "flat", before=Fraction(before), after=Fraction(after))
    with pytest.raises(OutOfRange):
        along_grain(Fraction(1), before=Fraction(before), after=Fraction(after))


@pytest.mark.parametrize(
    ("before", "after", "by"),
    [
        ("6", "14", "coefficient"),
        ("14", "6", "coefficient"),
        ("4", "12", "shrinkage"),
        ("8", "16", "shrinkage"),
    ],
)
def test_which_equation_is_used(before: str, after: str, by: str) -> None:
    assert moved(named("cherry"), "flat", Fraction(before), Fraction(after)).by == by


def test_cherry_12_to_6() -> None:
    """Our own arithmetic on the Handbook's data: 300 mm, flat-sawn."""
    dry = {"before": Fraction(12), "after": Fraction(6)}
    assert float(by_coefficient(Fraction(300), Fraction("0.00248"), **dry)) == pytest.approx(-4.46, abs=0.005)
    other = by_shrinkage(Fraction(300), Fraction("7.1"), starts_at=Fraction(30), **dry)
    assert float(other) == pytest.approx(-4.45, abs=0.005)


def test_white_oak_6_to_12() -> None:
    """Our own: the two differ by the group's coefficient, not by an error."""
    wet = {"before": Fraction(6), "after": Fraction(12)}
    assert float(by_coefficient(Fraction(14), Fraction("0.00365"), **wet)) == pytest.approx(0.307, abs=5e-4)
    other = by_shrinkage(Fraction(14), Fraction("10.5"), starts_at=Fraction(30), **wet)
    assert float(other) == pytest.approx(0.321, abs=5e-4)


def test_a_coefficient_far_below_the_woods_own_shrinkage_is_passed_over() -> None:
    change = moved(named("black oak"), "flat", Fraction(8), Fraction(12))
    assert change.by == "shrinkage"
    assert float(change.share) == pytest.approx(4 / (3000 / 11.1 - 30 + 8))


def test_without_shrinkage_the_coefficient_stands_in_for_it() -> None:
    own = Species("ours", c_tangential=Value(Fraction("0.00248"), "stated"))
    share = moved(own, "flat", Fraction(4), Fraction(12)).share
    assert float(share) == pytest.approx(
        float(moved(named("cherry"), "flat", Fraction(4), Fraction(12)).share), rel=0.005
    )


def test_nothing_known_is_nothing_said() -> None:
    assert across_width(Species("ours"), "flat", before=Fraction(8), after=Fraction(12)) is None
    half = Species("ours", tangential=Value(Fraction(8), "stated"))
    assert across_width(half, "rift", before=Fraction(8), after=Fraction(12)) is None


def test_white_oak_part_of_the_way_from_green() -> None:
    """Our own numbers in the Handbook's equation 4-9: 100 mm green, 10.5 percent, at 8 percent moisture."""
    shrunk = by_shrinkage(F(100), F("10.5"), before=F(30), after=F(8), starts_at=F(30))
    assert float(100 + shrunk) == pytest.approx(92.30)
