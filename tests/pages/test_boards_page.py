"""The boards' page: what is left, what is to be bought, what isn't needed, and how each piece matches."""

from __future__ import annotations

import csv
import io
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from bs4 import BeautifulSoup

from benchalong.drawing.drawings import Drawings
from benchalong.ground.store import MemoryStore
from benchalong.pages.boards import BoardsPage, boards_of, boards_page
from benchalong.pages.makings import Makings
from benchalong.publishing.purchases_csv import purchases_csv
from benchalong.road import travel
from benchalong.workings.purchases.purchases import PURCHASES

PROJECT = """
title: Shelf
units: millimetre
shop: {car: 1.5 m}
stock:
  ash: {kind: board, name: Ash, species: white ash, buy: 27 mm, thickness: 20 mm, sold_in: [2 m]}
parts:
  leg: {name: Leg, stock: ash, thickness: 40 mm, width: 40 mm, length: 400 mm, count: 2}
  side: {name: Side, stock: ash, width: 120 mm, length: 1200 mm, count: 3, mark: S}
  board: {name: Long shelf, stock: ash, width: 120 mm, length: 2500 mm, count: 1}
matches: {sides: {parts: [side], how: show side, show_side: face}}
boards:
  - {stock: ash, length: 600 mm, width: 120 mm, thickness: 52 mm, note: oily}
  - {stock: ash, length: 300 mm, width: 50 mm, thickness: 27 mm, count: 2, note: offcuts}
  - stock: ash
    length: 2000 mm
    width: 160 mm
    thickness: 27 mm
    defects: [{at: [1500 mm, 40 mm], length: 30 mm, width: 30 mm, what: a knot}]
"""


@cache
def made() -> tuple[Makings, BoardsPage, str]:
    with TemporaryDirectory() as folder:
        (Path(folder) / "project.yaml").write_text(PROJECT, encoding="utf-8")
        travelled = travel(Path(folder))
    makings = Makings(travelled, Drawings(travelled.plan, travelled.worked, MemoryStore()))
    return makings, boards_page(makings), purchases_csv(travelled.plan, travelled.worked[PURCHASES]())


def text(markup: object) -> str:
    return BeautifulSoup(str(markup), "html.parser").get_text()


def test_it_says_what_is_left_and_what_no_board_that_is_sold_gives() -> None:
    _, page, _ = made()
    thick, thin = page.groups
    assert (thick.left_out, thick.more, thick.good) == (
        (), (), "1 board. No layout can do with fewer, however it is cut"
    )  # fmt: skip
    assert thin.good == "1 board that is there, and it doesn't suffice"
    assert thin.left_out == ("1 of long shelf", "2 of side")
    assert thin.on_none == ("1 of long shelf",)
    assert [text(board.title) for board in thin.more] == [
        "Board 2: 2000 mm × 150 mm", "Board 3: 2000 mm × 150 mm"
    ]  # fmt: skip


def test_what_is_not_needed_is_said_once_with_its_note() -> None:
    _, page, _ = made()
    thick, thin = page.groups
    assert thick.unused == ()
    assert [text(said) for said in thin.unused] == ["2 boards, 300 mm × 50 mm, 27 mm thick (offcuts)"]


def test_a_piece_says_how_it_matches_and_a_left_over_what_spoils_it() -> None:
    _, page, _ = made()
    (board,) = page.groups[1].boards
    assert [piece.match for piece in board.pieces] == ["show side from the best board"]
    assert text(board.left_over[0]).endswith("with a defect in it")


def test_a_parts_page_says_which_of_its_boards_are_to_be_bought() -> None:
    makings, _, _ = made()
    assert [link.words for link in boards_of(makings, "side")] == [
        "Board 1 of Ash, 27 mm", "Board 2 of Ash, 27 mm, to buy", "Board 3 of Ash, 27 mm, to buy"
    ]  # fmt: skip


def test_a_metric_list_is_counted_in_cubic_metres() -> None:
    rows = list(csv.DictReader(io.StringIO(made()[2]), strict=True))
    thick, thin = rows[0], rows[1]
    assert (thick["Needed"], thick["There"], thick["To buy"]) == (thick["There"], thick["Needed"], "0")
    assert (thin["In"], thin["Boards to buy"]) == ("cubic metres", "1 of 2575 x 150; 2 of 2000 x 150")
