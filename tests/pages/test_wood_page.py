"""The page of the wood: panels, other houses, gaps, and where the numbers come from."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from bs4 import BeautifulSoup

from benchalong.publishing.publish import publish
from benchalong.road import travel

CUPBOARD = Path(__file__).parents[2] / "content" / "seed-cupboard"
OWN_WOOD = """\
title: Door
units: millimetre
species:
  plum: {radial: 5, tangential: 9, source: own oven test of May}
stock:
  plum: {kind: board, species: plum, thickness: 20 mm}
  odd: {kind: board, species: unheard of, thickness: 20 mm}
  bare: {kind: board, thickness: 20 mm}
parts:
  board: {stock: plum, width: 200, length: 900, count: 1}
  other: {stock: odd, width: 200, length: 900, count: 1}
  third: {stock: bare, width: 200, length: 900, count: 1}
"""


def page(folder: Path, path: str = "wood.html") -> BeautifulSoup:
    with TemporaryDirectory() as name:
        publish(travel(folder), Path(name) / "site", project=folder)
        return BeautifulSoup((Path(name) / "site" / path).read_text(encoding="utf-8"), "html.parser")


@cache
def cupboard() -> BeautifulSoup:
    return page(CUPBOARD)


def words(soup: BeautifulSoup, heading: str) -> str:
    title = soup.find(id=heading)
    assert title is not None
    assert title.parent is not None
    return " ".join(title.parent.get_text(" ").split())


def test_the_panel_says_what_to_cut_it_to_and_how_it_fares() -> None:
    said = words(cupboard(), "panels")
    assert "from 10 in to 10 1/8 in wide; the plan says 10 in" in said
    assert "≈ 5/32 in of room left, both sides together" in said
    assert "quarter-sawn it would be ≈ 1/16 in , about half as much" in said


def test_it_says_what_other_houses_would_do_and_each_builders_own() -> None:
    said = words(cupboard(), "panels")
    assert "A house on a damp coast 8 to 12 %: fits" in said
    assert "A temperate house, heated in winter 6 to 12 %, as here: fits" in said
    assert "At Mossback's: air of 60 % humidity at 20 °C 11 %: fits" in said


def test_only_gaps_that_wood_grows_into_are_shown() -> None:
    rows = cupboard().select("#gaps ~ div tbody tr")
    assert [row.get_text(" ").split()[:6] for row in rows] == [["LD", "and", "meeting", "stile", "RD/M", "≈"]]


def test_sources_of_an_authors_own_wood_are_shown_and_what_is_missing_is_said(tmp_path: Path) -> None:
    (tmp_path / "project.yaml").write_text(OWN_WOOD, encoding="utf-8")
    said = words(page(tmp_path), "woods")
    assert "Movement Stated by the author of this plan: own oven test of May" in said
    assert "Missing: what it weighs, how far it sags can't be said" in said
    assert "No single wood of the table is called unheard of" in said
    assert "The stock names no species" in said
    assert "how it moves, what it weighs, how far it sags can't be said" in said


def test_glue_says_what_it_is_reckoned_at() -> None:
    said = words(cupboard(), "glue")
    assert "reckoned at 0.59 oz a square foot 180 g a square metre of joint, and 33 % on top" in said
    assert "a clamp every 10 in" in said
    assert "Door frame 0.13 oz 3.6 g 4 for each of 2" in said
    assert "only in what to buy: Side, Top or bottom, Shelf, Door panel" in said
