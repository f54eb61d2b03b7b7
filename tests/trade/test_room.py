"""Room for a floating panel: worked by hand, and what must hold for every one."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from benchalong.trade.movement import across_width
from benchalong.trade.room import HOLD, Frame, deeper_by, room, widths_today
from benchalong.trade.species import woods

F = Fraction
lengths = st.fractions(50, 900, max_denominator=8)
depths = st.fractions(5, 15, max_denominator=8)
shrinks = st.fractions(F(-5, 100), 0, max_denominator=1000)
swells = st.fractions(0, F(5, 100), max_denominator=1000)


def cherry(after: int) -> Fraction:
    """From 8 percent moisture, flat-sawn."""
    species = woods().find("black cherry")
    assert species
    change = across_width(species, "flat", before=F(8), after=F(after))
    assert change
    return change.share


def test_a_panel_of_cherry_in_a_frame() -> None:
    """240 mm between the frame's edges, grooves 11 mm deep, a panel of 256 that swells by 0.992 % and
    shrinks by 0.496 %."""
    frame = Frame(F(240), (F(11), F(11)))
    found = room(frame, F(256), to_driest=cherry(6), to_dampest=cherry(12))
    assert found.at_dampest == 262 - F(256) * (1 + F("0.00992"))
    assert found.held_at_driest == F(256) * (1 - F("0.00496")) - 251
    assert found.held_at_driest > HOLD
    pinned = room(frame, F(256), to_driest=cherry(6), to_dampest=cherry(12), is_pinned=True)
    assert pinned.held_at_driest == (F(256) * (1 - F("0.00496")) - 240) / 2


def test_a_wide_panel_in_shallow_grooves_has_no_width_that_does() -> None:
    frame = Frame(F(600), (F(5), F(5)))
    widths = widths_today(frame, to_driest=F("-0.02"), to_dampest=F("0.02"))
    assert widths.too_shallow_by > 0
    deeper = Frame(F(600), (F(30), F(30)))
    assert widths_today(deeper, to_driest=F("-0.02"), to_dampest=F("0.02")).too_shallow_by == 0


@given(lengths, depths, depths, shrinks, swells, st.booleans())
def test_at_the_widest_the_room_is_the_play_and_at_the_narrowest_the_hold(
    sight: Fraction, one: Fraction, other: Fraction, dry: Fraction, damp: Fraction, is_pinned: bool
) -> None:
    frame = Frame(sight, (one, other))
    widths = widths_today(frame, to_driest=dry, to_dampest=damp, play=F(1), is_pinned=is_pinned)
    widest = room(frame, widths.most, to_driest=dry, to_dampest=damp, is_pinned=is_pinned)
    narrowest = room(frame, widths.least, to_driest=dry, to_dampest=damp, is_pinned=is_pinned)
    assert widest.at_dampest == 1
    assert narrowest.held_at_driest == HOLD


@given(lengths, depths, shrinks, swells, swells)
def test_what_moves_more_leaves_less_choice(
    sight: Fraction, depth: Fraction, dry: Fraction, damp: Fraction, more: Fraction
) -> None:
    frame = Frame(sight, (depth, depth))
    calm = widths_today(frame, to_driest=dry, to_dampest=damp)
    restless = widths_today(frame, to_driest=dry - more, to_dampest=damp + more)
    assert restless.least >= calm.least
    assert restless.most <= calm.most


@given(lengths, depths, shrinks, swells)
def test_grooves_made_so_much_deeper_take_some_width_all_year(
    sight: Fraction, depth: Fraction, dry: Fraction, damp: Fraction
) -> None:
    moving = {"to_driest": dry, "to_dampest": damp}
    deeper = depth + deeper_by(Frame(sight, (depth, depth)), **moving)
    widths = widths_today(Frame(sight, (deeper, deeper)), **moving, is_pinned=True)
    assert widths.too_shallow_by == 0
    if deeper > depth:
        assert widths.least == widths.most


@given(lengths, depths, shrinks, swells, swells)
def test_a_wider_swing_never_leaves_more_room_nor_holds_more(
    sight: Fraction, depth: Fraction, dry: Fraction, damp: Fraction, more: Fraction
) -> None:
    frame, width = Frame(sight, (depth, depth)), sight + depth
    calm = room(frame, width, to_driest=dry, to_dampest=damp)
    restless = room(frame, width, to_driest=dry - more, to_dampest=damp + more)
    assert restless.at_dampest <= calm.at_dampest
    assert restless.held_at_driest <= calm.held_at_driest


@given(lengths, depths)
def test_where_nothing_changes_nothing_moves(sight: Fraction, depth: Fraction) -> None:
    frame, width = Frame(sight, (depth, depth)), sight + depth
    still = room(frame, width, to_driest=F(0), to_dampest=F(0), is_pinned=True)
    assert (still.at_dampest, still.held_at_driest) == (depth, depth / 2)
