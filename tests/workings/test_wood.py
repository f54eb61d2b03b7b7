"""How the wood of a small project moves, weighs and sags, and what is found against it."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from benchalong.ground.problems import Finding
from benchalong.road import Travelled, travel
from benchalong.workings.amounts import AMOUNTS
from benchalong.workings.climate import CLIMATE
from benchalong.workings.movement import MOVEMENT
from benchalong.workings.sag import SAG
from benchalong.workings.weights import WEIGHTS

PROJECT = """\
title: Shelf
units: millimetre
{more}
stock:
  wood: {{kind: board, species: {species}, {sawn}thickness: 20 mm}}
  sheet: {{kind: sheet, name: {sheet}, thickness: 18 mm}}
parts:
  board: {{stock: wood, width: 300, length: {length}{load}}}
  back: {{stock: sheet, width: 300, length: 900, count: 2}}
assemblies:
  shelf: {{place: [{{part: board, at: [0, 0, 0], along: right, face: {face}}}]}}
finish: {{oil: {{what: oil, coats: 2}}}}
"""
CODES = {
    "species-unknown",
    "climate-outside-equation",
    "worked-too-damp",
    "worked-too-dry",
    "sags",
    "sag-not-known",
}


def made(folder: Path, more: str = "", **said: str) -> Travelled:
    usual = {
        "species": "black cherry", "sawn": "sawn: flat, ", "sheet": "Birch plywood", "length": "900",
        "load": "", "face": "up",
    }  # fmt: skip
    (folder / "project.yaml").write_text(PROJECT.format(more=more, **usual | said), encoding="utf-8")
    return travel(folder)


def found(travelled: Travelled) -> list[Finding]:
    return [finding for finding in travelled.worked.findings if finding.code in CODES]


def test_a_board_over_the_year(tmp_path: Path) -> None:
    """300 mm of flat-sawn cherry, C 0.00248, from 8 percent to 6 and to 12."""
    movement = made(tmp_path).worked[MOVEMENT]
    moves = movement.parts["board"]
    assert moves.width.to_driest == Fraction("-1.49")
    assert moves.width.to_dampest == Fraction("2.98")
    assert moves.width.swing == moves.width.dampest - moves.width.driest
    assert moves.as_quarter.swing == Fraction("0.76") + Fraction("1.51")
    assert moves.thickness.to_dampest == Fraction("0.10")
    assert (moves.by, moves.standing, moves.is_sawn_assumed) == ("coefficient", "seen", False)
    assert movement.still == ("back",)


def test_in_dry_winters_by_the_other_equation(tmp_path: Path) -> None:
    """8 to 4 percent, S 7.1: 300 * -4 / (3000 / 7.1 - 30 + 8)."""
    moves = made(tmp_path, "house: {climate: dry winters}").worked[MOVEMENT].parts["board"]
    assert float(moves.width.to_driest) == pytest.approx(300 * -4 / (3000 / 7.1 - 22), abs=0.005)
    assert moves.by == "shrinkage"


def test_quarter_sawn_moves_as_it_would(tmp_path: Path) -> None:
    moves = made(tmp_path, sawn="sawn: quarter, ").worked[MOVEMENT].parts["board"]
    assert moves.width == moves.as_quarter


def test_what_is_not_said_is_assumed_and_says_so(tmp_path: Path) -> None:
    travelled = made(tmp_path, sawn="")
    climate, moves = travelled.worked[CLIMATE], travelled.worked[MOVEMENT].parts["board"]
    assert [climate.made_at, climate.driest, climate.dampest] == [Fraction(at) for at in (8, 6, 12)]
    assert climate.is_shop_assumed
    assert climate.is_house_assumed
    assert moves.is_sawn_assumed
    assert moves.sawn == "flat"


def test_humidity_of_shop_and_house(tmp_path: Path) -> None:
    more = "shop: {humidity: 50 %}\nhouse: {humidity: 30 % to 65 %, temperature: 21 C}"
    climate = made(tmp_path, more).worked[CLIMATE]
    assert (climate.made_at, climate.driest, climate.dampest) == (
        Fraction("9.3"), Fraction("6.2"), Fraction("12"),
    )  # fmt: skip
    assert "30 to 65 % humidity at 21 °C" in climate.house
    assert not climate.is_shop_assumed


def test_measured_moisture_goes_before_humidity(tmp_path: Path) -> None:
    more = "shop: {made_at: 7 %, humidity: 50 %}\nhouse: {moisture: 5 % to 10 %, climate: damp coast}"
    climate = made(tmp_path, more).worked[CLIMATE]
    assert [climate.made_at, climate.driest, climate.dampest] == [Fraction(at) for at in (7, 5, 10)]


def test_weights_of_part_assembly_and_piece(tmp_path: Path) -> None:
    """Cherry at 8 percent is 549 kg/m3, birch plywood is taken as 680."""
    weights = made(tmp_path).worked[WEIGHTS]()
    full = 11.5
    gravity = 0.5 * (100 - full * 0.6) / (100 - full * 22 / 30)
    board = 0.3 * 0.9 * 0.02 * 1000 * gravity * 1.08
    assert float(weights.parts["board"]) == pytest.approx(board, abs=0.001)
    assert float(weights.assemblies["shelf"]) == pytest.approx(board, abs=0.001)
    assert weights.piece == weights.parts["board"] + 2 * weights.parts["back"]
    assert not weights.is_for_two
    assert made(tmp_path, "rates: {lift: 5 kg}").worked[WEIGHTS]().is_for_two


def test_what_can_not_be_weighed_is_named(tmp_path: Path) -> None:
    weights = made(tmp_path, species="iroko", sheet="Panel").worked[WEIGHTS]()
    assert weights.unknown == ("board", "back")
    assert weights.piece is None


def test_finish_by_surface(tmp_path: Path) -> None:
    amounts = made(tmp_path).worked[AMOUNTS]()
    board = 2 * (0.3 * 0.9 + 0.3 * 0.02 + 0.9 * 0.02)
    back = 2 * (0.3 * 0.9 + 0.3 * 0.018 + 0.9 * 0.018)
    surface = board + 2 * back
    assert float(amounts.surface) == pytest.approx(surface * 1e6, abs=100)
    assert float(amounts.finish["oil"].litres) == pytest.approx(surface * 2 / 8.5 * 1.1, abs=0.001)
    own = made(tmp_path, "rates: {finish: 10, wasted: 0 %}").worked[AMOUNTS]()
    assert float(own.finish["oil"].litres) == pytest.approx(surface * 2 / 10, abs=0.001)


def test_a_shelf_that_holds_says_how_far_it_bends(tmp_path: Path) -> None:
    travelled = made(tmp_path, load=", load: 10 kg")
    assert found(travelled) == []
    sag = travelled.worked[SAG]["board"]
    stiffness = 1.49 * 6894.757
    assert float(sag.at_once) == pytest.approx(
        5 / 384 * 98.0665 * 900**3 / (stiffness * 300 * 20**3 / 12), abs=0.005
    )
    assert float(sag.after_years) == pytest.approx(2 * float(sag.at_once), abs=0.015)
    assert sag.most == Fraction(3, 2)


def test_a_rail_on_edge_bends_over_its_width(tmp_path: Path) -> None:
    flat = made(tmp_path, load=", load: 100 kg").worked[SAG]["board"]
    edge = made(tmp_path, load=", load: 100 kg", face="front").worked[SAG]["board"]
    assert edge.is_on_edge
    assert float(flat.at_once / edge.at_once) == pytest.approx((300 / 20) ** 2, rel=0.1)


def test_a_sagging_shelf_is_a_doubt_with_the_span_that_would_do(tmp_path: Path) -> None:
    (finding,) = found(made(tmp_path, length="1200", load=", load: 35 kg per m"))
    assert (finding.code, finding.level, finding.subject) == ("sags", "doubt", "board")
    load = 35 * 9.80665 / 1000
    stiff = 1.49 * 6894.757 * 300 * 20**3 / 12
    assert float(finding.numbers["sag"]) == pytest.approx(5 / 384 * load * 1200**4 / stiff, abs=0.01)
    assert float(finding.numbers["longest span"]) == pytest.approx(
        (384 * stiff / (5 * 600 * load)) ** (1 / 3), abs=0.01
    )
    assert found(made(tmp_path, length="1200", load=", load: {is: 35 kg per m, span: 600}")) == []


PLANTED = [
    ({"species": "blak cherry"}, "", "species-unknown", "doubt", "black cherry"),
    ({"species": "oak"}, "", "species-unknown", "note", "white oak"),
    ({"species": "spaceship"}, "", "species-unknown", "doubt", "species:"),
    ({}, "house: {humidity: 2 % to 60 %}", "climate-outside-equation", "doubt", "5 to 95 %"),
    ({}, "house: {humidity: 30 % to 99 %}", "climate-outside-equation", "doubt", "5 to 95 %"),
    ({}, "house: {humidity: 30 % to 60 %, temperature: -20 C}", "climate-outside-equation", "doubt", "room"),
    ({}, "shop: {made_at: 45 %}", "climate-outside-equation", "doubt", "dry"),
    ({}, "shop: {made_at: 14 %}\nhouse: {climate: dry winters}", "worked-too-damp", "doubt", "9 %"),
    ({}, "shop: {made_at: 6 %}\nhouse: {climate: damp coast}", "worked-too-dry", "doubt", "8 %"),
    ({"load": ", load: 300 kg"}, "", "sags", "doubt", "a span of"),
    ({"load": ", load: {is: 60 kg, at: middle}"}, "", "sags", "doubt", "a span of"),
    ({"load": ", load: {is: 20 kg, limit: 1/5000}"}, "", "sags", "doubt", "a span of"),
    ({"species": "iroko", "load": ", load: 5 kg"}, "", "sag-not-known", "note", "stiffness"),
]


@pytest.mark.parametrize(("said", "more", "code", "level", "remedy"), PLANTED)
def test_what_was_planted_is_found(
    tmp_path: Path, said: dict[str, str], more: str, code: str, level: str, remedy: str
) -> None:
    (finding,) = found(made(tmp_path, more, **said))
    assert (finding.code, finding.level) == (code, level)
    assert remedy in finding.remedy


def test_an_upright_has_nothing_to_sag(tmp_path: Path) -> None:
    made(tmp_path, load=", load: 5 kg")
    text = (tmp_path / "project.yaml").read_text(encoding="utf-8")
    (tmp_path / "project.yaml").write_text(text.replace("along: right, face: up", "along: up, face: front"))
    assert [finding.code for finding in found(travel(tmp_path))] == ["sag-not-known"]


def test_an_authors_own_wood_is_used(tmp_path: Path) -> None:
    own = "species: {field_maple: {tangential: 8, radial: 4, gravity: 0.6, stiffness: 11, source: ours}}"
    travelled = made(tmp_path, own, species="field maple", load=", load: 5 kg")
    assert found(travelled) == []
    moves = travelled.worked[MOVEMENT].parts["board"]
    assert moves.standing == "stated"
    assert float(moves.width.to_dampest) == pytest.approx(300 * 4 / (3000 / 8 - 22), abs=0.005)
    assert travelled.worked[WEIGHTS]().parts["board"] > 0
    assert travelled.worked[SAG]["board"].at_once > 0


def test_a_correction_lies_over_the_table(tmp_path: Path) -> None:
    own = "species: {cherry: {name: black cherry, moves_tangential: 0.003, source: our own boards}}"
    moves = made(tmp_path, own).worked[MOVEMENT].parts["board"]
    assert moves.width.to_dampest == Fraction("3.6")
    assert moves.standing == "stated"
