"""What to buy and rough sizes, as the pages say them."""

from __future__ import annotations

import csv
import io
from fractions import Fraction
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from benchalong.drawing.drawings import Drawings
from benchalong.ground.store import MemoryStore
from benchalong.pages.buy import BuyPage, buy_page
from benchalong.pages.buying import thing_amount
from benchalong.pages.cut_list import cut_list_page
from benchalong.pages.makings import Makings
from benchalong.pages.part import part_page
from benchalong.publishing.cut_list_csv import cut_list_csv
from benchalong.publishing.purchases_csv import purchases_csv
from benchalong.road import Travelled, travel
from benchalong.workings.cut_list import CUT_LIST
from benchalong.workings.purchases.model import Thing
from benchalong.workings.purchases.purchases import PURCHASES

PROJECT = """
title: Rack
units: inch
currency: USD
shop: {car: 9 ft}
stock:
  oak: {kind: board, name: Oak, species: white oak, sawn: quarter, buy: 4/4, thickness: 3/4 in,
        sold_in: [8 ft, 10 ft], waste: 25 %, moisture: 7 %, price: 8 per board foot}
  ply: {kind: sheet, name: Ply, thickness: 1/4 in, measured: 5.2 mm, sheet: 48 in x 96 in}
parts:
  rail: {name: Rail, stock: oak, width: 2 in, length: 9 in, count: 3, mark: R}
  front: {name: Front, stock: oak, width: 5 in, length: 14 in, count: 2, mark: F, for: "<b>the</b> front"}
  back: {name: Back, stock: ply, width: 20 in, length: 30 in, count: 1}
spares: {rail: 1}
test_pieces: {stick: {name: Stick, stock: oak, width: 2 in, length: 18 in, count: 2, for: tongues}}
matches: {fronts: {parts: [front], how: end to end, show_side: face}}
boards: [{stock: oak, length: 45 in, width: 6 in, thickness: 1 in}]
hardware:
  knob: {name: =Knob, count: 3, on_hand: 1, price: 4 each}
  hook: {name: Hook}
  peg: {name: Peg, count: 4, on_hand: 5, price: 1 each}
"""


@cache
def rack() -> Travelled:
    with TemporaryDirectory() as folder:
        (Path(folder) / "project.yaml").write_text(PROJECT, encoding="utf-8")
        return travel(Path(folder))


@cache
def makings() -> Makings:
    return Makings(rack(), Drawings(rack().plan, rack().worked, MemoryStore()))


@cache
def page() -> BuyPage:
    return buy_page(makings())


def text(markup: object) -> str:
    from bs4 import BeautifulSoup

    return BeautifulSoup(str(markup), "html.parser").get_text()


def test_boards_say_how_much_how_long_and_what_they_measure() -> None:
    (line,) = page().groups[0].lines
    assert line.name == "Oak, 4/4"
    assert text(line.amount) == "4 board feet (0.01 m³)"
    said = [text(each) for each in line.details]
    assert said[0].startswith("About 1 board of 8 ft")
    assert "planed on both faces it measures 13/16 in" in said[2]
    assert said[3] == (
        "1.1 board feet in rough sizes, with 25 % for waste 1.4 board feet (as the plan says); the boards "
        "they are sawn from are more, and these are bought"
    )
    assert line.cost == "USD 32.00"


def test_needed_there_and_to_buy_stand_side_by_side_where_something_is_there() -> None:
    tallies = {
        line.name: [text(said) for _, said in line.tally] for group in page().groups for line in group.lines
    }
    assert tallies["Oak, 4/4"] == ["2.2 board feet", "1.1 board feet from 1 board", "4 board feet"]
    assert tallies["=Knob"] == ["3", "1", "2"]
    assert tallies["Ply"] == tallies["Hook"] == []


def test_what_is_there_stands_apart_from_what_is_bought() -> None:
    (peg,) = page().there
    assert (peg.name, text(peg.amount), peg.cost, peg.price) == ("Peg", "4", "", "")
    assert [text(said) for _, said in peg.tally] == ["4", "5", "nothing"]


def test_the_card_for_the_yard_begins_with_what_must_match() -> None:
    said = [text(each.text) for each in page().yard]
    assert said[0].startswith("First front (F1, F2): one long board, so that the grain runs on")
    assert said[1].startswith(
        "Oak, 4/4: 4 board feet (0.01 m³); 1.1 board feet more are there already. About 1 board"
    )
    assert "rings stand upright" in said[2]
    assert "at most 7 %" in said[3]
    assert said[4].startswith("Ply, sold as 1/4 in, is measured with a calliper in four places before a dado")
    assert said[4].endswith("1 sheet to buy.")
    assert said[5].startswith("Nothing longer than 108 in goes into the car")


def test_the_total_says_what_it_leaves_out() -> None:
    assert page().total == "USD 40.00"
    assert page().unpriced == ("Ply", "Hook")


def test_glue_is_weighed_and_finish_measured_in_both_systems() -> None:
    glue = Thing("glue", "edges", "Glue", "", None, Fraction("25.56"), None, None)
    assert text(thing_amount(makings(), glue)) == "about 0.9 oz26 g"
    oil = Thing("finish", "oil", "Oil", "", None, Fraction("1.314"), None, None)
    assert text(thing_amount(makings(), oil)) == "at most 1.4 quarts1.4 litres"


def test_every_tick_has_a_key_of_its_own() -> None:
    keys = [line.key for group in page().groups for line in group.lines]
    keys += [line.key for line in page().yard]
    assert len(set(keys)) == len(keys)


def test_the_cut_list_has_spares_test_pieces_and_rough_sizes() -> None:
    shown = cut_list_page(makings())
    (oak, _) = shown.stocks
    assert [line.spares for line in oak.thicknesses[0].lines] == [0, 1]
    assert [piece.name for piece in shown.test_pieces] == ["Stick"]
    assert [blank.name for blank in shown.rough.stocks[0].blanks] == [
        "Rail, 4 end to end, 1 of them spare", "Stick", "Front",
    ]  # fmt: skip
    assert any("ripped on a table saw" in text(caution) for caution in shown.rough.cautions)
    assert all(each.is_assumed for each in shown.rough.reckoned)


def test_a_parts_page_says_what_is_cut_out_for_it() -> None:
    (blank,) = part_page(makings(), rack().plan.parts["rail"]).blanks
    assert text(blank.size) == "37 3/8 in × 2 1/8 in from 4/4"
    assert "too short for jointer and planer" in text(blank.why[0])


def test_the_lists_as_tables_agree_with_the_page_and_run_nothing() -> None:
    rows = list(
        csv.DictReader(io.StringIO(purchases_csv(rack().plan, rack().worked[PURCHASES]())), strict=True)
    )
    assert [row["Kind"] for row in rows] == ["board", "sheet", *["hardware"] * 3, "total"]
    counts = [(row["Needed"], row["There"], row["To buy"]) for row in rows[:-1]]
    assert counts == [
        ("2.21", "1.11", "4"),
        ("0.39", "0", "1"),
        ("3", "1", "2"),
        ("", "", ""),
        ("4", "5", "0"),
    ]
    assert rows[0]["Boards to buy"] == "1 of 96 x 6"
    assert rows[0]["Cost (USD)"] == "32.00"
    assert rows[2]["What"] == "'=Knob"
    assert rows[-1]["Cost (USD)"] == "40.00"
    cut = list(csv.DictReader(io.StringIO(cut_list_csv(rack().plan, rack().worked[CUT_LIST], "inch"))))
    assert {row["Part"]: row["Spares"] for row in cut} == {"Rail": "1", "Front": "0", "Back": "0"}
