"""The table of woods: whole, every value with its standing, and found by the names a shop uses."""

from __future__ import annotations

from fractions import Fraction

import pytest

from benchalong.trade.species import SAID, Species, Value, woods

WOODS = woods()
VALUES = (
    "radial", "tangential", "volumetric", "c_radial", "c_tangential", "gravity_12", "gravity_green",
    "stiffness",
)  # fmt: skip


def named(name: str) -> Species:
    found = WOODS.find(name)
    assert found is not None, name
    return found


def test_all_are_there_each_value_with_its_standing() -> None:
    assert len(WOODS.by_name) == 87
    values = [getattr(species, key) for species in WOODS.by_name.values() for key in VALUES]
    there = [value for value in values if value is not None]
    assert len(there) == 563
    assert {value.standing for value in there} == set(SAID) - {"stated"}
    assert all(value.source for value in there if value.standing == "seen")


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("black cherry", "black cherry"),
        ("cherry", "black cherry"),
        ("Cherry, black", "black cherry"),
        ("HARD MAPLE", "sugar maple"),
        ("tulipwood", "yellow-poplar"),
        ("yellow poplar", "yellow-poplar"),
        ("red oak", "northern red oak"),
        ("mahogany", "true mahogany"),
        ("sipo", "utile"),
        ("linden", "European lime"),
        ("walnut", "black walnut"),
    ],
)
def test_a_wood_is_found_by_name_and_synonym(typed: str, name: str) -> None:
    assert named(typed).name == name


@pytest.mark.parametrize("name", ["oak", "pine", "whitewood", "ash", "redwood"])
def test_a_name_several_woods_share_finds_none_and_offers_them(name: str) -> None:
    assert WOODS.find(name) is None
    assert len(WOODS.nearest(name)) > 1
    assert all(WOODS.find(offered) for offered in WOODS.nearest(name))


@pytest.mark.parametrize(
    ("typed", "offered"), [("blak cherry", "black cherry"), ("chery", "black cherry"), ("teek", "teak")]
)
def test_a_slip_is_offered_the_nearest_wood(typed: str, offered: str) -> None:
    assert WOODS.find(typed) is None
    assert offered in WOODS.nearest(typed)


def test_every_name_leads_to_its_own_wood() -> None:
    assert all(WOODS.find(name) is species for name, species in WOODS.by_name.items())


def test_what_no_table_gives_is_none() -> None:
    assert named("iroko").stiffness is None
    assert named("sapele").c_tangential is None
    assert named("European oak").gravity_12 is None


def test_a_borrowed_coefficient_is_marked() -> None:
    oak = named("northern red oak")
    assert oak.c_of == "red oak, commercial"
    assert oak.c_tangential
    assert oak.c_tangential.standing == "group value"


def test_an_authors_value_lies_over_the_tables() -> None:
    own = Species("cherry", tangential=Value(Fraction(8), "stated", "measured here"))
    found = WOODS.with_own([own]).find("black cherry")
    assert found
    assert found.tangential == own.tangential
    assert found.radial == named("cherry").radial
    # Printed coefficients would no longer follow from it.
    assert found.c_tangential is None


def test_an_author_adds_a_wood() -> None:
    own = Species("field maple", tangential=Value(Fraction(8), "stated", "a table of ours"))
    assert WOODS.with_own([own]).find("Field-Maple") == own
    assert WOODS.find("field maple") is None
