"""What to buy, by example, and that totals add up."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.ground.lengths import FOOT
from benchalong.plan.model import Plan
from benchalong.reading import written
from benchalong.trade.boards import board_feet
from benchalong.workings.blanks.blanks import BLANKS
from benchalong.workings.order import WORKINGS
from benchalong.workings.purchases.model import Lumber, Purchases
from benchalong.workings.purchases.purchases import PURCHASES
from benchalong.workings.working import work_all
from workings.blanks.shop import inches, oak, part, plan


def bought(**given: object) -> Purchases:
    return work_all(plan(**given), WORKINGS)[PURCHASES]()


def lumber(**given: object) -> Lumber:
    (line,) = bought(**given).lumber
    return line


def test_board_feet_are_rounded_up_once_when_the_waste_is_on() -> None:
    line = lumber(stock=oak(buy="4/4", waste=Fraction(20)), parts={"rail": part("4", "23", 6)})
    assert line.board_feet == 6 * board_feet(inches("1"), inches("4 1/4"), inches("24"))  # 4.25
    assert line.buy_board_feet == 6  # 4.25 and a fifth are 5.1
    assert line.waste.standing == "said"


def test_what_is_priced_by_the_board_foot_and_by_the_cubic_metre() -> None:
    parts = {"rail": part("4", "23", 6)}
    by_foot = lumber(stock=oak(buy="4/4", waste=Fraction(20), price="9.80 per board foot"), parts=parts)
    assert by_foot.cost == 6 * Fraction("9.80")
    by_metre = lumber(stock=oak(buy="4/4", waste=Fraction(20), price="2000 per cubic metre"), parts=parts)
    assert by_metre.cost == 2000 * by_metre.buy_cubic_metres
    assert by_metre.buy_cubic_metres == Fraction(13, 1000)


def test_softwood_is_bought_by_the_board() -> None:
    stock = oak(buy="1x6", waste=Fraction(0), sold_in=("6 ft", "8 ft"), price="2 per foot")
    line = lumber(stock=stock, parts={"shelf": part("5", "30", 5)})
    assert (line.boards, line.lengths[-1]) == (2, 8 * FOOT)  # five of 31 in and their kerfs are 155 5/8 in
    assert line.buy_board_feet == 8
    assert line.cost == 2 * 16


def test_lengths_that_go_into_the_car() -> None:
    shop = written.Shop(sawing=written.Sawing(car="9 ft"))
    stock = oak(sold_in=("3 ft", "8 ft", "10 ft", "6 ft"))
    line = lumber(shop=shop, stock=stock, parts={"rail": part("4", "40")})
    assert line.lengths == (6 * FOOT, 8 * FOOT)


PLY = {"oak": written.Stock(kind="sheet", thickness="1/4 in", sheet=("48 in", "96 in"), price="42 per sheet")}


@pytest.mark.parametrize(
    ("width", "length", "sheets"),
    [
        ("22", "46", 1),  # two beside two, with the saw's cuts between
        ("24", "48", 4),  # a half of a sheet each way, but the saw takes its share: one on each
    ],
)
def test_sheets_are_counted_by_where_parts_lie_and_priced(width: str, length: str, sheets: int) -> None:
    (line,) = bought(stock=PLY, parts={"side": part(width, length, 4)}).sheets
    assert (line.count, line.by, line.rack) == (sheets, "layout", "empty")
    assert line.cost == 42 * sheets


def test_sheets_on_which_a_part_does_not_fit_are_counted_by_area() -> None:
    (line,) = bought(stock=PLY, parts={"side": part("50", "60", 1)}).sheets
    assert (line.count, line.by) == (1, "area")


@pytest.mark.parametrize(("boards", "rack"), [(1, "short"), (3, "suffices")])
def test_the_rack_is_said_to_suffice_or_not(boards: int, rack: str) -> None:
    there = (written.Board(stock="oak", length="60 in", width="6 in", count=boards),)
    line = lumber(boards=there, parts={"rail": part("4", "40", 3)})
    assert line.rack == rack
    assert line.laid_on is None


def test_hardware_is_counted_and_what_has_no_price_is_said() -> None:
    found = bought(
        parts={"rail": part("4", "20", 1)},
        hardware={
            "hinge": written.Hardware(name="Hinge", count=4, price="6 each"),
            "knob": written.Hardware(name="Knob", count=2),
        },
    )
    assert found.total == 24
    assert found.unpriced == ("Oak", "Knob")


def test_spares_are_bought_too() -> None:
    one = lumber(parts={"rail": part("4", "20", 1)})
    two = lumber(parts={"rail": part("4", "20", 1)}, spares={"rail": 1})
    assert two.board_feet == 2 * one.board_feet


def test_glue_for_edges_and_finish_for_every_face() -> None:
    found = bought(parts={"top": part("10", "40")}, finish={"oil": written.Finish(what="oil", coats=2)})
    kinds = {thing.kind: thing for thing in found.things}
    assert kinds["glue"].amount is not None
    assert kinds["glue"].amount > 0
    assert kinds["finish"].amount is not None
    assert {thing.count for thing in found.things if thing.kind == "abrasive"} == {
        ceil(Fraction("25.4") ** 2 * (2 * 400 + 2 * Fraction(30) + 2 * Fraction("7.5")) / 1_000_000 * 2)
    }


@settings(max_examples=25, deadline=None)
@given(st.lists(st.tuples(st.integers(1, 20), st.integers(2, 70), st.integers(1, 4)), min_size=1, max_size=5))
def test_totals_add_up(sizes: list[tuple[int, int, int]]) -> None:
    parts = {f"p{n}": part(str(wide), str(long), count) for n, (wide, long, count) in enumerate(sizes)}
    made = plan(parts=parts, stock=oak(price="3.50 per board foot"))
    worked = work_all(made, WORKINGS)
    found = worked[PURCHASES]()
    blanks = worked[BLANKS].blanks
    assert sum(line.board_feet for line in found.lumber) == sum(
        blank.count * board_feet(blank.thickness, blank.width, blank.length) for blank in blanks
    )
    assert found.total == sum(line.buy_board_feet for line in found.lumber) * Fraction("3.50")
    assert all(line.buy_board_feet >= line.board_feet * (1 + line.waste.added) for line in found.lumber)
    _enough(made, found)


def _enough(made: Plan, found: Purchases) -> None:
    """What is bought holds at least what ends up in the piece."""
    finished = sum(p.count * p.thickness * p.width * p.length for p in made.parts.values())
    assert sum(line.buy_cubic_metres for line in found.lumber) * 1_000_000_000 > finished


@pytest.mark.parametrize("units", ["inch", "millimetre"])
def test_nothing_to_buy_is_nothing(units: str) -> None:
    found = bought(units=units)
    assert not found.lines
    assert found.total == 0
