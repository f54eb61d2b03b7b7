"""Cuts that are told together: those that differ in one size at most."""

from __future__ import annotations

from fractions import Fraction

from bs4 import BeautifulSoup

from benchalong.pages.cuts import told_together
from benchalong.plan.model import Cut, CutSize
from conftest import ROOT


def cut(name: str = "Dado", where: str = "in the back", **sizes: int) -> Cut:
    told = tuple(CutSize(key, Fraction(value)) for key, value in sizes.items())
    return Cut("dado", name, (), where, told, ())


def counts(*cuts: Cut) -> list[int]:
    return [len(group) for group in told_together(cuts)]


def test_alike_but_for_where_they_lie() -> None:
    assert counts(cut(width=19, at=100), cut(width=19, at=200), cut(width=19, at=300)) == [3]


def test_a_second_size_that_differs_begins_another() -> None:
    assert counts(cut(width=19, at=100), cut(width=19, at=200), cut(width=12, at=200)) == [2, 1]


def test_the_size_that_differs_stays_the_same_one() -> None:
    assert counts(cut(width=19, at=100), cut(width=12, at=100), cut(width=12, at=200)) == [2, 1]


def test_another_place_name_or_set_of_sizes_begins_another() -> None:
    assert counts(cut(at=1), cut(at=1, where="in the face")) == [1, 1]
    assert counts(cut(at=1), cut(at=1, name="Housing")) == [1, 1]
    assert counts(cut(at=1), cut(depth=1)) == [1, 1]


def test_only_neighbours_are_told_together() -> None:
    assert counts(cut(at=1), cut(at=1, where="in the face"), cut(at=2)) == [1, 1, 1]


def test_none() -> None:
    assert counts() == []


def test_the_dadoes_of_three_shelves_are_told_as_one() -> None:
    """And a screw's hole as finely as drills come: 5/64 in, not the nearest 32nd."""
    page = (ROOT / "site_example" / "parts" / "side.html").read_text(encoding="utf-8")
    soup = BeautifulSoup(page, "html.parser")
    for rounding in soup.select(".rounding"):
        rounding.extract()
    cuts = soup.select(".cut-words > li")
    said = [" ".join(each.get_text(" ", strip=True).split()) for each in cuts]
    dadoes = next(each for each in said if each.startswith("Dado × 3"))
    assert "to its near wall 6 3/4 in 13 1/2 in 20 1/4 in" in dadoes
    assert any("Screw hole × 3" in each and "Diameter 5/64 in" in each for each in said)
