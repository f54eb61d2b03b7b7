"""What a house's year does to panels, tops, doors and shelves, worked out beside the program's own way."""

from __future__ import annotations

import re
from fractions import Fraction
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.ground.problems import Finding
from benchalong.plan.moistures import Moistures
from benchalong.road import Travelled, travel
from benchalong.trade.moisture import CLIMATES
from benchalong.workings.across import ACROSS
from benchalong.workings.floating import FLOATING, floating_in
from benchalong.workings.gaps import GAPS
from benchalong.workings.houses import HOUSES
from benchalong.workings.movement import NO_CHANGE, Shares
from faults.catalogue import BASES

F = Fraction
CODES = re.compile("panel-|held-|caught-|mixed-|sticks-|tight-|swells-")
DRY, DAMP = F("-0.00496"), F("0.00992")
"""Cherry, flat-sawn, C 0.00248: from 8 percent to 6, and to 12."""


def made(base: str, *changes: tuple[str, str]) -> Travelled:
    text = (BASES / f"{base}.yaml").read_text(encoding="utf-8")
    for old, new in changes:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    with TemporaryDirectory() as name:
        (Path(name) / "project.yaml").write_text(text, encoding="utf-8")
        return travel(Path(name))


@cache
def panelled() -> Travelled:
    return made("panelled")


def found(travelled: Travelled) -> list[Finding]:
    return [finding for finding in travelled.worked.findings if CODES.match(finding.code)]


def test_a_panel_of_cherry_over_the_year() -> None:
    """300 mm between the stiles, grooves 12 deep, 3 mm of room at each edge: 318 mm wide."""
    (panel,) = panelled().worked[FLOATING]
    assert (panel.frame.sight, panel.frame.opening, panel.width) == (F(300), F(324), F(318))
    assert panel.room.at_dampest == 324 - 318 * (1 + DAMP)
    assert panel.held == 318 * (1 + DRY) - 312
    assert panel.pinned.held_at_driest == (318 * (1 + DRY) - 300) / 2
    assert panel.widths.most == 324 / (1 + DAMP)
    assert panel.widths.least == 315 / (1 + DRY)


def test_copies_in_like_frames_are_said_once() -> None:
    (panel,) = travel(Path(__file__).parents[2] / "content" / "seed-cupboard").worked[FLOATING]
    assert panel.marks == ("LD/P", "RD/P")


@given(
    st.fractions(F(-8, 100), 0, max_denominator=1000),
    st.fractions(0, F(8, 100), max_denominator=1000),
    st.fractions(0, F(4, 100), max_denominator=1000),
)
def test_a_panel_that_moves_more_never_has_more_room(dry: Fraction, damp: Fraction, more: Fraction) -> None:
    (panel,) = panelled().worked[FLOATING]
    calm = floating_in(panel, Shares(dry, damp))
    restless = floating_in(panel, Shares(dry - more, damp + more))
    assert restless.room.at_dampest <= calm.room.at_dampest
    assert restless.held <= calm.held
    still = floating_in(panel, NO_CHANGE)
    assert still.room.at_dampest == panel.frame.opening - panel.width


@settings(max_examples=12, deadline=None)
@given(st.integers(0, 60), st.integers(8, 20))
def test_room_below_zero_is_never_passed_over(tenths: int, dampest: int) -> None:
    """Whatever the room and the house: a panel that would push its frame apart is a fault."""
    travelled = made(
        "panelled",
        ("room: 3 mm", f"room: {tenths / 10} mm"),
        ("climate: temperate house", f"moisture: 8 % to {dampest} %"),
    )
    (panel,) = travelled.worked[FLOATING]
    faults = [finding.code for finding in found(travelled) if finding.level == "fault"]
    assert (panel.room.at_dampest < 0) == (bool({"panel-tight-when-damp", "panel-tight"} & set(faults)))


def test_a_house_without_a_year_asks_for_nothing() -> None:
    travelled = made(
        "topped", ("climate: temperate house", "moisture: 8 % to 8 %"), ("glue: middle", "glue: yes")
    )
    assert found(travelled) == []
    assert travelled.worked[ACROSS] == ()


def test_a_breadboard_end_glued_in_the_middle_says_how_far_its_slots_go() -> None:
    """White oak, C 0.00365, 20 in: half of it 4 points either way, the damp one larger."""
    top = next(one for one in made("topped").worked[ACROSS] if one.joint == "bread")
    assert not top.is_held
    assert float(top.over) == pytest.approx(508)
    assert float(top.each_way) == pytest.approx(254 * 0.00365 * 4, abs=0.005)
    assert float(top.moves) == pytest.approx(508 * 0.00365 * 6, abs=0.005)


def test_doors_that_meet_share_one_gap() -> None:
    """Hard maple, quarter-sawn, C 0.00165: two doors of 300 mm, 4 points damper."""
    gaps = {(gap.goes, gap.beside): gap for gap in made("inset").worked[GAPS]}
    gap = gaps["LD", "RD/B"]
    assert gap.made == 5
    assert float(gap.grows) == pytest.approx(2 * 300 * 0.00165 * 4, abs=0.005)


def test_framed_doors_grow_by_four_stiles_and_no_panel() -> None:
    """The seed cupboard: stiles of 2 1/4 in, a gap of 1/8 in."""
    gaps = travel(Path(__file__).parents[2] / "content" / "seed-cupboard").worked[GAPS]
    gap = next(gap for gap in gaps if gap.goes == "LD" and gap.beside.startswith("RD/"))
    assert float(gap.grows) == pytest.approx(4 * 57.15 * 0.00992, abs=0.005)
    assert gap.at_dampest > 0.8


@pytest.mark.parametrize("name", ["seed-cupboard", "step-stool", "joint-samples"])
def test_the_examples_stand_the_year(name: str) -> None:
    assert found(travel(Path(__file__).parents[2] / "content" / name)) == []


def test_boards_of_two_woods_edge_to_edge_part_in_thickness() -> None:
    """Flat-sawn oak beside quarter-sawn, C 0.00180 and 0.00365 in thickness: 4 points on 3/4 in."""
    travelled = made(
        "topped",
        (
            "  bread_end: {name: Breadboard end, stock: oak,",
            "  bread_end: {name: Breadboard end, stock: other,",
        ),
        (
            "parts:\n",
            "  other: {kind: board, species: white oak, sawn: quarter, thickness: 19 mm}\nparts:\n",
        ),
        ("    takes: [top both ends]\n    glue: middle", "    takes: [top both edges]"),
        (
            'mark: EL, at: [-over, "0", tall], along: back',
            'mark: EL, at: ["0", -end_width + bread.tongue_length, tall], along: right',
        ),
        (
            'mark: ER, at: [long + over - end_width, "0", tall], along: back',
            'mark: ER, at: ["0", deep - bread.tongue_length, tall], along: right',
        ),
    )
    ridge = next(finding for finding in found(travelled) if finding.code == "mixed-wood-ridge")
    assert ridge.level == "note"
    assert float(ridge.numbers["ridge"]) == pytest.approx(19 * 0.00185 * 4, abs=0.006)


def test_every_named_house_is_looked_at_and_this_one_is_marked() -> None:
    houses = panelled().worked[HOUSES]
    assert [house.said for house in houses] == [climate.said for climate in CLIMATES.values()]
    here = next(house for house in houses if house.is_here)
    assert here.panels == panelled().worked[FLOATING]
    coast = next(house for house in houses if "coast" in house.said)
    assert (coast.moistures.driest, coast.moistures.dampest) == (F(8), F(12))
    assert coast.panels[0].held == 318 - 312


BUILDER = """\
name: Robin
{}
"""


@pytest.mark.parametrize(
    ("says", "made_at", "driest", "dampest"),
    [
        ("house: {moisture: 9 % to 16 %}", "8", "9", "16"),
        ("humidity: 50 % in the shop", "9.3", "6", "12"),
        ("humidity: '50 % in the shop, 30 % to 65 % in the house'", "9.3", "6.2", "12"),
        ("humidity: 60 % in the shed", "8", "11", "11"),
        ("{humidity: 60 % in the shed, house: {climate: damp coast}}", "8", "8", "12"),
    ],
)
def test_a_builders_own_house(tmp_path: Path, says: str, made_at: str, driest: str, dampest: str) -> None:
    travelled = built(tmp_path, says)
    own = travelled.worked[HOUSES][-1]
    assert (own.builder, own.name) == ("robin", "robin" if says.startswith("{") else "Robin")
    assert own.moistures == Moistures(F(made_at), F(driest), F(dampest))


def built(folder: Path, says: str) -> Travelled:
    (folder / "project.yaml").write_text(
        (BASES / "panelled.yaml").read_text(encoding="utf-8"), encoding="utf-8"
    )
    (folder / "builders").mkdir()
    text = says if says.startswith("{") else BUILDER.format(says)
    (folder / "builders" / "robin.yaml").write_text(text, encoding="utf-8")
    return travel(folder)


def test_a_house_too_damp_for_a_panel_is_told_of_its_builder(tmp_path: Path) -> None:
    travelled = built(tmp_path, "house: {moisture: 9 % to 20 %}")
    (finding,) = found(travelled)
    assert (finding.code, finding.level, finding.subject) == ("panel-tight-at-builder", "doubt", "panel")
    assert travelled.marks.find(finding.place).file == "builders/robin.yaml"
    assert finding.numbers["less"] > 0


def test_builders_who_say_nothing_of_their_air_are_not_looked_at(tmp_path: Path) -> None:
    travelled = built(tmp_path, "tools: [plane]")
    assert all(not house.builder for house in travelled.worked[HOUSES])
